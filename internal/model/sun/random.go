package sun

import "math"

// The weather's random numbers are our own, so that the seed on the printed sheet gives the same year for ever:
// SplitMix64 gives 64 bits, the upper 53 of them give a number between 0 and 1, the inverse normal distribution AS 241
// gives a number from N(0, 1). A year draws 745 of them in a fixed order (see round).

// generator is SplitMix64 (source.SplitMix.At("fig. 17")); its value is the state.
type generator uint64

func (g *generator) next() uint64 {
	*g += 0x9e3779b97f4a7c15
	z := uint64(*g)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// uniform returns a number between 0 and 1, neither included: (upper 53 bits + ½)·2⁻⁵³.
func (g *generator) uniform() float64 {
	return (float64(g.next()>>11) + 0.5) * 0x1p-53
}

// normal returns a number from N(0, 1).
func (g *generator) normal() float64 { return inverseNormal(g.uniform()) }

// Seed returns the seed of weather year j of a project: year 0 is the project's own seed, the others are scattered.
func Seed(seed uint64, j int) uint64 {
	if j == 0 {
		return seed
	}
	g := generator(seed ^ 0x77656174686572) // "weather"
	mixed := generator(g.next() + uint64(j))
	return mixed.next()
}

// Uniform returns number j of the stream that a name gives under a seed, between 0 and 1, neither included. The name goes
// in as its bytes through FNV-1a (source.FNV.At("FNV-1a, 64 bit")), so that an input more or less changes no other's draws.
func Uniform(seed uint64, name string, j int) float64 {
	h := uint64(14695981039346656037)
	for i := range len(name) {
		h = (h ^ uint64(name[i])) * 1099511628211
	}
	g := generator(Seed(seed^h, j+1))
	return g.uniform()
}

// inverseNormal returns Φ⁻¹(p) to about sixteen digits, 0 < p < 1: source.Wichura.At("PPND16").
func inverseNormal(p float64) float64 {
	q := p - 0.5
	if math.Abs(q) <= 0.425 {
		r := 0.180625 - q*q
		return q * ratio(r, &central)
	}
	r := p
	if q > 0 {
		r = 1 - p
	}
	r = math.Sqrt(-math.Log(r))
	var z float64
	if r <= 5 {
		z = ratio(r-1.6, &middle)
	} else {
		z = ratio(r-5, &far)
	}
	return math.Copysign(z, q)
}

// rational is a quotient of two polynomials of degree seven, lowest power first.
type rational struct{ over, under [8]float64 }

func ratio(x float64, r *rational) float64 {
	return horner(x, &r.over) / horner(x, &r.under)
}

func horner(x float64, c *[8]float64) float64 {
	return ((((((c[7]*x+c[6])*x+c[5])*x+c[4])*x+c[3])*x+c[2])*x+c[1])*x + c[0]
}

var (
	central = rational{
		over: [8]float64{3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4,
			4.5921953931549871457e4, 6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3},
		under: [8]float64{1, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
			2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4, 5.2264952788528545610e3},
	}
	middle = rational{
		over: [8]float64{1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0, 3.64784832476320460504e0,
			1.27045825245236838258e0, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4},
		under: [8]float64{1, 2.05319162663775882187e0, 1.67638483018380384940e0, 6.89767334985100004550e-1,
			1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9},
	}
	far = rational{
		over: [8]float64{6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0, 2.96560571828504891230e-1,
			2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7},
		under: [8]float64{1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
			7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15},
	}
)
