package lift

import (
	"math"
	"testing"

	"duskweight/internal/model/unit"
)

// turned is a way down followed in small steps, from the balance of torques and forces alone:
//
//	rope  F = n·F_down·(1 − v'/g), less the drum's bearing, through each gear less its idle torque: T at the rotor
//	rotor J·ω' = T − K·(I_0 + I),  ω = c·v,  U + I(U)·R = K·ω − V_b by bisection where current flows
//
// by the fourth-order rule of Runge and Kutta. Nothing of the closed forms is in it. The mass is steered by how hard it pulls,
// so v' is solved for: T falls in a straight line of v'.
type turned struct {
	h     Hoist
	d     Drive
	loads []DCLoad
	k, r  float64
	radius,
	c float64
}

// rotorTorque is T when the mass gathers speed with a.
func (x turned) rotorTorque(a float64) float64 {
	t := float64(x.d.RopeDown.Val)*(1-a/unit.G)*x.radius - float64(x.h.Drum.Friction.Or(0))
	for i := len(x.h.Train.Stages) - 1; i >= 0; i-- {
		s := x.h.Train.Stages[i]
		t = t*(2-1/float64(s.Efficiency.Val))/float64(s.Ratio.Val) - float64(s.IdleTorque.Val)
	}
	return t
}

// load is the current of one load at u, V, and what of it is of use, W.
func load(l DCLoad, u float64) (i, useful float64) {
	over := u - float64(l.Threshold.Val) - float64(l.Diode.Val)
	if over <= 0 {
		return 0, 0
	}
	i = over / (float64(l.Slope.Val) + float64(l.Resistance.Val))
	eta := float64(l.Efficiency.Or(1))
	if !l.Efficiency.Is && (l.Kind == LoadResistor || l.Kind == LoadClamp) {
		eta = 0
	}
	return i, (u - float64(l.Diode.Val)) * i * eta
}

// electric is what the loads take, and of it what is of use, at a speed of the mass.
func (x turned) electric(v float64) (i, useful float64) {
	e := x.k*x.c*v - float64(x.h.Machine.BrushDrop.Val)
	if e <= 0 {
		return 0, 0
	}
	lo, hi := 0.0, e
	for range 44 {
		u := (lo + hi) / 2
		sum := 0.0
		for _, l := range x.loads {
			i, _ := load(l, u)
			sum += i
		}
		if u+sum*x.r < e {
			lo = u
		} else {
			hi = u
		}
	}
	for _, l := range x.loads {
		j, w := load(l, lo)
		i, useful = i+j, useful+w
	}
	return i, useful
}

// rate is v' and the useful power at a speed.
func (x turned) rate(v float64) (a, useful float64) {
	i, useful := x.electric(v)
	still, one := x.rotorTorque(0), x.rotorTorque(1)
	free := still - x.k*(float64(x.h.Machine.I0.Val)+i)
	return free / (float64(x.h.Machine.J.Val)*x.c + still - one), useful
}

// down follows it in steps of dt to the end of the travel, the last one cut so that it ends there.
func (x turned) down(dt float64) (time, energy, speed float64) {
	way, travel := 0.0, float64(x.h.Travel.Val)
	for way < travel {
		a1, p1 := x.rate(speed)
		a2, _ := x.rate(speed + dt/2*a1)
		a3, p3 := x.rate(speed + dt/2*a2)
		a4, p4 := x.rate(speed + dt*a3)
		next := speed + dt/6*(a1+2*a2+2*a3+a4)
		step := dt / 6 * (speed + 4*(speed+dt/2*a2) + speed + dt*a3)
		share := min(1, (travel-way)/step) // the speed hardly changes within one step
		way, time, energy = way+step*share, time+dt*share, energy+dt*share*(p1+4*p3+p4)/6
		speed += (next - speed) * share
		if share < 1 {
			break
		}
	}
	return time, energy, speed
}

// fast is a random design that comes down fast: few gears of little ratio, one layer of rope, loads whose current only grows.
func (d dice) fast() Hoist {
	h := worked()
	h.Mass[0].Mass, h.Travel = known(unit.Mass(d.between(5, 500))), known(unit.Length(d.between(0.3, 8)))
	h.Reeving.RopeParts, h.Reeving.LeadSheaves = known(unit.Count(1+d.IntN(3))), known(unit.Count(d.IntN(3)))
	h.Drum.Width, h.Drum.Diameter = unit.Known[unit.Length]{}, known(unit.Length(d.between(0.04, 0.3)))
	h.Drum.Friction = known(unit.Torque(d.even(0, 0.05)))
	h.Train.Stages = nil
	for range 1 + d.IntN(2) {
		h.Train.Stages = append(h.Train.Stages, Stage{Kind: StageChain, Ratio: known(unit.Ratio(d.between(1, 12))), Efficiency: known(unit.Ratio(d.even(0.8, 1))), IdleTorque: known(unit.Torque(d.between(1e-4, 1e-2)))})
	}
	h.Machine.K, h.Machine.R = known(unit.MachineConstant(d.between(0.02, 1))), known(unit.Resistance(d.between(0.05, 2)))
	h.Machine.I0, h.Machine.J = known(unit.Current(d.between(0.05, 1))), known(unit.Inertia(d.between(1e-6, 3e-2)))
	if d.IntN(3) == 0 {
		h.Machine.BrushDrop = known(unit.Voltage(d.even(0.2, 1.5)))
	}
	h.Lower.Loads = nil
	for range 1 + d.IntN(3) {
		switch d.IntN(3) {
		case 0:
			h.Lower.Loads = append(h.Lower.Loads, DCLoad{Kind: LoadResistor, Resistance: known(unit.Resistance(d.between(0.3, 30))), Efficiency: known(unit.Ratio(1))})
		case 1:
			h.Lower.Loads = append(h.Lower.Loads, DCLoad{Kind: LoadString, Threshold: known(unit.Voltage(d.between(2, 40))), Slope: known(unit.Resistance(d.between(0.02, 5))), Diode: known(unit.Voltage(d.even(0, 0.7)))})
		case 2:
			h.Lower.Loads = append(h.Lower.Loads, DCLoad{Kind: LoadClamp, Threshold: known(unit.Voltage(d.between(10, 60))), Slope: known(unit.Resistance(d.between(0.02, 1)))})
		}
	}
	h.Lower.Auxiliary = known(unit.Power(pick(d, 0.0, 0, 3)))
	return h
}

// Time, energy and last speed of some hundreds of fast ways down, many too short for their steady speed, are those of small
// steps of the same motion. In evaluate's figures the energy is the mean power by the time.
func TestDescentsInSmallSteps(t *testing.T) {
	d := newDice(512)
	tried, short, early := 0, 0, 0
	for seed := 0; tried < 300 && seed < 20000; seed++ {
		h := d.fast()
		drive := Compute(h)
		lo := drive.Lowering
		if !lo.Known || !lo.Steady || lo.RunsBack == DownNo || lo.Time > 60 {
			continue
		}
		radius := (float64(h.Drum.Diameter.Val) + float64(h.Rope.Diameter.Val)) / 2
		x := turned{h: h, d: drive, loads: h.Lower.Loads, k: float64(h.Machine.K.Val), r: float64(h.Machine.R.Val), radius: radius, c: float64(drive.RotorPerMetre.Val)}
		a, _ := x.rate(0)
		tau := float64(lo.Current) / (x.k * x.c) * x.r / a // shortest time constant: K·c·I* over a is the moving mass by K·c
		dt := min(float64(lo.Time)/500, tau/3)
		if float64(lo.Time)/dt > 5000 {
			continue
		}
		tried++
		if lo.Short {
			short++
		}
		time, energy, speed := x.down(dt)
		coil := float64(h.Lower.Auxiliary.Val) * time
		given := energy
		energy -= coil
		if math.Abs(float64(lo.EnergyOut)-energy) > 1e-4*(given+coil) || math.Abs(float64(lo.Time)/time-1) > 1e-4 || math.Abs(float64(lo.EndSpeed)/speed-1) > 1e-4 {
			t.Errorf("seed %d: %.8g J, %.8g s, %.8g m/s; in small steps %.8g, %.8g, %.8g", seed, float64(lo.EnergyOut), float64(lo.Time), float64(lo.EndSpeed), energy, time, speed)
		}
		if given == 0 {
			early++ // it lands before anything lights
		}
		if got := float64(lo.Power) * float64(lo.Time); math.Abs(got-float64(lo.EnergyOut)) > 1e-14*math.Abs(got) {
			t.Errorf("seed %d: %.17g W for %.17g s are not %.17g J", seed, float64(lo.Power), float64(lo.Time), float64(lo.EnergyOut))
		}
	}
	t.Logf("%d designs, %d too short for their steady speed, %d land in the dark", tried, short, early)
	if tried < 300 || short < 30 {
		t.Errorf("%d designs, %d of them short: too tame", tried, short)
	}
}

// A converter that is on from some voltage up bends the current: the same motion in small steps, with the highest voltage at
// which loads and winding share what the rotor makes looked for by going down in small steps. The converter comes on for good
// where it leaves the mass half of the pull that it has without it, or at the steady speed.
func TestDescentWithConverter(t *testing.T) {
	for _, c := range []struct {
		what  string
		loads []DCLoad
		pays  float64 // watts of the converter
	}{
		{"and resistor", []DCLoad{converter(5), resistor(6)}, 5},
		{"and resistor, on from 6 V", []DCLoad{{Kind: LoadConstantPower, Power: known[unit.Power](8), MinVoltage: known[unit.Voltage](6)}, resistor(4)}, 8},
	} {
		h := with(c.loads...)
		h.Train.Stages[0].Ratio, h.Train.Stages[0].Efficiency = known[unit.Ratio](30), known[unit.Ratio](0.95)
		h.Mass[0].Mass = known[unit.Mass](30)
		h.Travel = known[unit.Length](0.25)
		d := Compute(h)
		lo := d.Lowering
		if !lo.Steady {
			t.Fatalf("%s: %s", c.what, lo.Say)
		}
		least, ohm, r, k := float64(c.loads[0].MinVoltage.Val), float64(c.loads[1].Resistance.Val), float64(h.Machine.R.Val), float64(h.Machine.K.Val)
		drawn := func(u float64) float64 {
			if u >= least && u > 0 {
				return c.pays/u + u/ohm
			}
			return u / ohm
		}
		gear, star := float64(d.RotorPerMetre.Val), float64(lo.Current)
		running := false
		at := func(v float64) (i, useful float64) {
			e := k * gear * v
			const steps = 2000
			for s := steps; s > 0; s-- {
				low, high := e*float64(s-1)/steps, e*float64(s)/steps
				if low+r*drawn(low) > e || low == 0 && least == 0 {
					continue
				}
				for range 40 {
					if mid := (low + high) / 2; mid+r*drawn(mid) > e {
						high = mid
					} else {
						low = mid
					}
				}
				if running = running || low >= least && drawn(low) < (star+e/(r+ohm))/2 || v >= float64(lo.Speed); running {
					return drawn(low), c.pays
				}
				break
			}
			return e / (r + ohm), 0
		}
		heavy := float64(d.RopeDown.Val)*2/unit.G*float64(d.Backward.Val) + float64(h.Machine.J.Val)*gear*gear
		v, way, time, energy := 0.0, 0.0, 0.0, 0.0
		for dt := float64(lo.Time) / 20000; way < 0.25; { // half a step of Euler's: the converter goes on within one step
			i, _ := at(v)
			mid := v + dt/2*k*gear*(star-i)/heavy
			i, useful := at(mid)
			share := min(1, (0.25-way)/(mid*dt))
			v, way, time, energy = v+dt*share*k*gear*(star-i)/heavy, way+mid*dt*share, time+dt*share, energy+useful*dt*share
			if share < 1 {
				break
			}
		}
		if math.Abs(float64(lo.Time)/time-1) > 3e-4 || math.Abs(float64(lo.EnergyOut)/energy-1) > 3e-4 || math.Abs(float64(lo.EndSpeed)/v-1) > 3e-4 {
			t.Errorf("%s: %.8g s, %.8g J, %.8g m/s; in small steps %.8g, %.8g, %.8g", c.what, float64(lo.Time), float64(lo.EnergyOut), float64(lo.EndSpeed), time, energy, v)
		}
		t.Logf("%s: %.3g of %.3g m/s, %.4g J", c.what, v, float64(lo.Speed), energy)
	}
}
