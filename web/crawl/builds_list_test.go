package crawl_test

// amateurBuilds are builds as people make them, each with what physics and the references say will go wrong; the figures
// of the comments are worked by hand.
func amateurBuilds() []build {
	return []build{
		{
			// 40 kg over a top and a foot pulley of .85, the foot pulley on the base: T at the drum m·g/.7225 = 543 N, beyond
			// the foot pulley m·g/.85 = 461.5 N. That pulls the base up, and it starts with a jerk: at .32 m/s and no class φ =
			// 1.2 + .68·.32 = 1.418, 1.2·1.418·461.5 N = 785 N = 80.1 kg. 20 kg stand on it, 15 of them loose.
			name: "printed planetary drill on plywood",
			typed: `
	mass[0].name = sandbag
	mass[0].mass_kg = 40
	travel_m = 2.5
	rope.kind = nylon
	rope.diameter_m = 4 mm
	rope.ending = other_knot
	reeving.rope_parts = 1
	reeving.lead_sheaves = 2
	reeving.sheave_efficiency = 85 %
	reeving.sheaves[0].name = foot pulley
	reeving.sheaves[0].on_base = yes
	drum.diameter_m = 40 mm
	machine.name = drill motor
	machine.k_vs_rad = 0.0055
	machine.r_ohm = 0.12
	machine.i0_a = 2
	train.stages[0].kind = planetary
	train.stages[0].ratio = 4
	train.stages[0].efficiency = 85
	train.stages[0].tooth.material = printed
	train.stages[1].kind = planetary
	train.stages[1].ratio = 4
	train.stages[1].efficiency = 85
	train.stages[1].tooth.material = printed
	train.stages[2].kind = planetary
	train.stages[2].ratio = 4
	train.stages[2].efficiency = 85
	train.stages[2].tooth.material = printed
	raise.feed = relay
	raise.voltage_v = 12
	base.where = on_ground
	base.mass_kg = 20
	base.weights_fixed = no
	base.loose_mass_kg = 15
`,
			ready: "no", words: "base_uplift=gives_way gear_tooth=not_known rope=not_known holds=gives_way ground=not_known",
			says: []string{"It needs 80.1 kg in all", "The idle torque is not known", "fastened so that nobody can remove it", "Nothing is named that holds the mass"},
		},
		{
			// λ = 4°, μ = .08: forward (.9397 − .0056)/(.9397 + 1.144) = .448, backward (.9397 − 1.144)/… < 0: it locks.
			name: "worm wiper motor",
			typed: steady + `
	mass[0].mass_kg = 30
	machine.k_vs_rad = 0.037
	machine.r_ohm = 0.4
	machine.i0_a = 2.5
	train.stages[0].kind = worm
	train.stages[0].ratio = 60
	train.stages[0].efficiency =
	train.stages[0].lead_angle_rad = 4
	train.stages[0].friction = 0.08
`,
			ready: "no", says: []string{"It will not come down by itself", "gear stage 1 locks", "above 55 %, is needed"},
		},
		{
			// K = (12 − .3)/1571 = .00745; drum torque 10·g/.87·8 mm = .902 N·m, /(20·.8) = .0564: 8.6 A, 1265 rad/s, .51 m/s.
			// D/d = 3 is under 4; without a class φ = 1.2 + .68·.51 and more on the way down.
			name: "15,000 rpm model motor on a tiny drum",
			typed: steady + `
	mass[0].mass_kg = 10
	rope.diameter_m = 4 mm
	drum.diameter_m = 12 mm
	machine.k_vs_rad =
	machine.r_ohm =
	machine.i0_a = 1
	machine.sheet_voltage_v = 12
	machine.sheet_no_load_speed_rad_s = 15000 rpm
	machine.sheet_stall_current_a = 40
	machine.max_speed_rad_s = 15000 rpm
	train.stages[0].ratio = 20
	train.stages[0].efficiency = 80
`,
			ready: "no", words: "bend_ratio=gives_way", says: []string{"It is 3 rope diameters wide", "the hardest one, HC4", "flies apart before that"},
		},
		{
			// paracord of 250 kg, knot .45, nylon outdoors .544: 600 N left; 25 kg over one pulley of .83 pull 295 N, times
			// 1.25: had 1.6, wanted 7
			name: "knots in paracord over a printed pulley",
			typed: steady + `
	mass[0].mass_kg = 25
	rope.kind = nylon
	rope.diameter_m = 4 mm
	rope.breaking_load_n = 250 kg
	rope.ending = other_knot
	rope.outdoors = yes
	reeving.sheave_efficiency = 83
	reeving.sheaves[0].name = printed pulley
	reeving.sheaves[0].diameter_m = 20 mm
`,
			ready: "no", words: "knot=gives_way rope=gives_way head_sheave=not_known bend_ratio=tight", says: []string{"Splice it, or use a stronger rope", "look for that rating on its label"},
		},
		{
			name: "eye screwed sideways into a softwood beam",
			typed: steady + `
	mass[0].mass_kg = 30
	structure.hanger_kind = plain_eyebolt
	structure.hanger_working_load_n = 340 kg
	structure.hanger_angle_rad = 60
	structure.hanger_fixing = screwed_into_wood
	structure.beam.kind = timber
	structure.beam.class = C16
`,
			ready: "no", words: "hanger=gives_way", says: []string{"may not be pulled this far off its own axis", "What a thread carries in wood is not known"},
		},
		{
			name: "the same eye straight, with a known label",
			typed: steady + `
	mass[0].mass_kg = 30
	structure.hanger_kind = plain_eyebolt
	structure.hanger_working_load_n = 340 kg
	structure.hanger_angle_rad = 0
	structure.hanger_fixing = screwed_into_wood
`,
			ready: "no", words: "hanger=not_known", says: []string{"hang the pulley from a sling round the beam"},
		},
		{
			// lowering over raising .75^(2·2 + 2) = .178: the pulleys alone take 82 %
			name: "three-part tackle of poor pulleys",
			typed: steady + `
	mass[0].mass_kg = 100
	reeving.rope_parts = 3
	reeving.lead_sheaves = 2
	reeving.sheave_efficiency = 75
`,
			ready: "no", words: "redirect_sheave=not_known", says: []string{"The pulleys alone use 82 % of the energy", "what holds extra pulley 1"},
		},
		{
			// 30 turns a minute make K = (12 − .72)/3.14 = 3.59: no motor of this size, but one with its gearbox
			name: "geared motor with a label only",
			typed: steady + `
	mass[0].mass_kg = 20
	machine.k_vs_rad =
	machine.r_ohm =
	machine.i0_a = 0.3
	machine.max_speed_rad_s =
	machine.sheet_voltage_v = 12
	machine.sheet_no_load_speed_rad_s = 30 rpm
	machine.sheet_stall_current_a = 5
	train.stages[0].ratio = 1
	train.stages[0].efficiency =
`,
			ready: "no", words: "gear_tooth=not_known", says: []string{"30 revolutions a minute is slow for a motor's own shaft", "If there is a gearbox on it, find the gearbox's ratio", "Add its gearbox as a stage of ratio 1 with its efficiency"},
		},
		{
			// drum torque down 20·g·.87·44 mm = 7.5 N·m, /5·.947 = 1.42; /.5 − .3 = 2.5 A through 38 Ω and two diodes: 76 V, 196 rad/s, 1.724 m/s,
			// 1.72²/(2·g) = 150 mm
			name: "stepper with a resistor",
			typed: steady + `
	mass[0].mass_kg = 20
	machine.k_vs_rad = 0.5
	machine.r_ohm = 8
	machine.i0_a = 0.3
	machine.brush_drop_v = 1.4
	raise.voltage_v = 48
	train.stages[0].kind = spur
	train.stages[0].ratio = 5
	train.stages[0].efficiency = 95
	lower.loads[0].kind = resistor
	lower.loads[0].resistance_ohm = 30
	lower.loads[0].rated_current_a = 2
	lower.loads[0].permanent = yes
`,
			ready: "no", says: []string{"above 60 V direct current", "lands as if dropped from 152 mm", "It burns out, and then nothing holds the mass"},
		},
		{
			// one row of 350 mA for a current of 1.9 A
			name: "too few lamps",
			typed: steady + `
	mass[0].mass_kg = 80
	train.stages[0].idle_torque_nm = 0.001 N·m
	reeving.rope_parts = 2
	lower.loads[0].slope_ohm = 2.8
	lower.loads[0].rated_current_a = 0.35
`,
			ready: "no", says: []string{"rated 0.35 A", "More rows side by side share the current", "If one of these opens, the mass runs away"},
		},
		{
			// 5.73 A; the converter wants 9 V, with 15 % to spare 10.35 V: 10.35/(5.73 − 8/10.35) = 2.09 Ω
			name: "a converter on the motor",
			typed: steady + `
	mass[0].mass_kg = 80
	lower.loads[0].kind = constant_power
	lower.loads[0].power_w = 8
	lower.loads[0].min_voltage_v = 9
`,
			ready: "no", says: []string{"It never settles", "a resistor of at least 2.09 Ω", "a clamp that conducts at", "keeps the motor's speed"},
		},
		{
			name: "one hold",
			typed: steady + `
	mass[0].mass_kg = 40
	holds.holds[0].kind = ratchet
	holds.holds[0].on_drum = yes
	holds.holds[0].torque_nm = 60
	holds.upper_stops[0].kind = timer
`,
			ready: "no", words: "holds=gives_way stops=gives_way", says: []string{"Only one thing is named that holds the mass", "A timer, a rope mark or a current limit does not count"},
		},
		{
			// a printed wheel at the drum: the jerk of joined wires
			name: "wires joined at speed, printed teeth",
			typed: steady + `
	mass[0].mass_kg = 80
	train.stages[0].kind = spur
	train.stages[0].ratio = 100
	train.stages[0].efficiency = 85
	train.stages[0].tooth.module_m = 3 mm
	train.stages[0].tooth.teeth = 40
	train.stages[0].tooth.face_width_m = 60 mm
	train.stages[0].tooth.material = printed
	train.stages[0].tooth.strength_pa = 50 MPa
	train.stages[0].tooth.layers = in_plane
`,
			ready: "no", words: "gear_tooth=gives_way rope=gives_way", says: []string{"wires joined while it runs away", "Wire a resistor or clamp to the motor for good"},
		},
		{
			// tubes of 48.3 × 3.2 mm that lean 25° on slabs: tan 25° = .47 of the load pushes out, .3 holds in the wet
			name: "scaffold tripod",
			typed: steady + `
	mass[0].mass_kg = 60
	structure.rests_on = own_posts_on_ground
	structure.beam.kind = none
	structure.head_height_m = 3.5
	structure.posts[0].kind = steel_round_tube
	structure.posts[0].width_m = 48.3 mm
	structure.posts[0].wall_m = 3.2 mm
	structure.posts[0].yield_pa = 235 MPa
	structure.posts[0].height_m = 3.6
	structure.posts[0].fixing = pinned_both
	structure.posts[0].load_share = 34
	structure.posts[0].lean_rad = 25
	structure.posts[0].foot_tied = no
	structure.posts[1].kind = steel_round_tube
	structure.posts[1].load_share = 33
	structure.posts[1].lean_rad = 25
	structure.posts[2].kind = steel_round_tube
	structure.posts[2].load_share = 33
	structure.posts[2].lean_rad = 25
`,
			ready: "no", words: "post=gives_way beam=absent", says: []string{"Tie all feet together"},
		},
		{
			// 12.5 A through .346 Ω are 54 W, 650 K settled at 12 K/W; a lift of 29 s of a time constant of 900 s warms by a
			// thirtieth of it, some 21 K: three stay under the 120 − 25 − 20 = 75 K that it may, the fourth does not
			name: "too hot after three lifts",
			typed: steady + `
	mass[0].mass_kg = 60
	machine.max_winding_c = 120
	machine.rth_winding_k_w = 12
	machine.tau_winding_s = 900
`,
			ready: "no", says: []string{"Lifting: a cold motor withstands this 3 times in a row", "After that the motor must rest for"},
		},
		{
			name: "foot pulley staked beside the base",
			typed: steady + `
	mass[0].mass_kg = 50
	reeving.lead_sheaves = 2
	reeving.sheaves[0].name = foot pulley
	reeving.sheaves[0].on_base = no
	reeving.sheaves[0].working_load_n = 400 kg
	reeving.sheaves[0].rating_of = hook_load
	reeving.sheaves[0].angle_rad = 90
	base.mass_kg = 30
	base.weights_fixed = yes
	base.rope_angle_rad = 90
	base.friction = 0.4
`,
			ready: "no", words: "redirect_sheave=not_known base_sliding=gives_way", says: []string{"What holds foot pulley", "fasten the pulley to the base of the drive", "stake it to the ground"},
		},
		{
			// two turns a layer of a 8 mm rope on 20 mm: flanges of 100 mm hold one layer, some half metre
			name: "a drum too narrow",
			typed: steady + `
	mass[0].mass_kg = 40
	drum.width_m = 20 mm
	drum.flange_diameter_m = 100 mm
`,
			ready: "no", words: "drum_capacity=gives_way", says: []string{"The rope does not fit on the drum", "Use a wider drum, higher flanges or a thinner rope"},
		},
	}
}
