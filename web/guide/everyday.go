package guide

import "strings"

// everywhere are words that say nothing of the subject.
var everywhere = setOf(`a about am an and any are as at be been but by can cannot could did do doe don does for from get give go going had ha has have
	how i if in into is it just like long make me mean much many must my need no not of on one or our out please problem put say should
	so some tell than that the their them then there these they thi this to too up use using wa was we what when where whether which
	who why will with work would you your explain help guide duskweight question answer`)

// sameAs are words that people type, each with the words of the guide that mean the same or lie nearest. They are keys: small
// letters, one of a kind. Our own judgement.
var sameAs = readAlike()

func readAlike() map[string]string {
	out := map[string]string{}
	for _, row := range strings.Split(strings.TrimSpace(alike), "\n") {
		typed, here, _ := strings.Cut(row, "=")
		for _, w := range strings.Fields(typed) {
			out[keyOf(w)] += " " + keysOf(here)
		}
	}
	return out
}

// keysOf are the keys of the words of a text, apart by spaces.
func keysOf(text string) string { return strings.TrimSpace(phraseOf(text)) }

func setOf(text string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(text) {
		out[keyOf(w)] = true
	}
	return out
}

// alike has one row a meaning: what is typed, and what the guide says.
const alike = `
refrigerator icebox cooler chiller = fridge
bucket tub vessel = barrel container
drum keg = barrel
sack bigbag fibc = bag
cord cable string line twine strap = rope
wire = wiring cable rope
winch windlass crane lift = hoist drive drum
tackle block sheave roller = pulley
cost price budget expensive euro dollar pay afford = money cost
cheap = cheapest money
kid kids child baby toddler = children
danger dangerous hurt injury injured accident die death kill risk = safety hurt danger anybody
scaffold scaffolding climb climbing height = ladder
solar pv photovoltaic module = panel sun
shadow tree shading = shade shading
hydro dam pond tank reservoir river hydropower = water
weight stone rock concrete iron sandbag brick = mass
accumulator akku lifepo4 lipo lead lithium = battery
charger regulator mppt pwm = controller
bulb led lantern lighting light = lamp
gearbox gears transmission = gear
dynamo alternator = motor
genset diesel petrol gasoline grid = generator backup
overheat overheating burn smoke hot warm temperature = heat hot
fire = fire batteries smoke
print pdf paper printout = sheet print
accurate accuracy trust tested proof proven reliable wrong error verify validated correct evidence = know right
uncertain probability chance luck = sure
literature reference book paper bibliography = source
export import json api command script = program
meaning glossary dictionary term vocabulary = word
snapped snap break broken fail failure collapse = break
freeze freezing ice winter = frost cold
medicine oxygen cpap medical = medical
stuck jam jammed = stuck
overspeed freewheel runaway = runs runaway
mains socket plug house = inverter wiring
forecast weather cloud cloudy climate = weather sky
wooden wood beam timber plank = timber frame
tripod frame gantry = frame post
bolt screw anchor ceiling wall = eye bolt anchor
assumption guess guessed default = typical
beginner start begin tutorial introduction = start nothing
sample demo = example
autonomy runtime = hour minute
swing sway = swing
salt oil = battery
`
