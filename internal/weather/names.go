package weather

import "strings"

// known are the names under which columns go about, in small letters without spaces and marks; the first that fits wins.
var known = [columns][]string{
	ghi:  {"ghi", "gh", "g", "globalhorizontal", "globalhorizontalirradiance", "globalhorizontalradiation", "glohorzrad", "globalradiation", "shortwaveradiation", "globalirradiance", "global", "solarradiation", "globalstrahlung", "glob", "allskysfcswdwn", "ssrd", "rayonnementglobal", "rsds", "swdown", "radiacionglobal", "radiaciónglobal", "radiaçãoglobal", "irradianciaglobal", "irradiânciaglobal", "surfacesolarradiationdownwards", "swin", "ggh", "hgh", "rg", "sr", "irradiance", "radiation", "solar"},
	dhi:  {"dhi", "gdh", "gd", "diffusehorizontal", "diffusehorizontalirradiance", "diffusehorizontalradiation", "difhorzrad", "diffuseradiation", "diffuse", "diffusstrahlung", "dif", "diffuseirradiance", "allskysfcswdiff", "hdh"},
	dni:  {"dni", "gbn", "directnormal", "directnormalirradiance", "directnormalradiation", "dirnormrad", "beamnormal", "beam", "bni", "allskysfcswdni", "hbn"},
	temp: {"temperature", "temp", "tair", "t2m", "airtemperature", "drybulb", "drybulbtemperature", "temperature2m", "ta", "tamb", "ambienttemperature", "airtemp", "t", "lufttemperatur", "temperatur", "tempair", "tdry", "tas", "température", "températuredelair", "temperatura", "temperaturadelaire", "temperaturadoar"},
}

// parts of names by which a column is told where no whole name fits: one of some, and none of others.
var inName = [columns][]string{
	ghi:  {"ghi", "globalhor", "globhor", "glohor", "globalrad", "globalirr", "globalsol", "globalstrahl", "solarrad", "solarirr", "solarenergy", "swdown", "swdwn", "shortwavedown", "downwardshortwave", "shortwaverad", "downwellingshortwave", "insolation", "pyranometer", "sunlight"},
	dhi:  {"dhi", "diffuse", "difhor", "diffrad", "diffirr", "diffus", "difuso", "difusa"},
	dni:  {"dni", "bni", "directnormal", "dirnorm", "beamnormal", "normalbeam", "normaldirect", "normalirr"},
	temp: {"airtemp", "tempair", "temperatureair", "drybulb", "temperature", "temperatur", "température", "t2m", "tair", "tamb", "ambtemp", "outdoortemp", "outtemp", "tempout", "tempc", "tempf", "temp"},
}

// elsewhere are parts of names of columns that are something else than they seem: no light or air of the open.
var elsewhere = []string{"clear", "cloudfree", "uncert", "source", "flag", "quality", "qc", "illum", "std", "stdev", "max", "min", "tilt", "inclin", "poa", "plane", "extra", "etr", "toa", "netrad", "netshort", "reflect", "upwell", "longwave", "infrared", "index", "ratio", "count", "samples", "photo"}

// otherAir are parts of names of temperatures that are not the air's.
var otherAir = []string{"dew", "wet", "soil", "ground", "skin", "surface", "cell", "module", "panel", "water", "apparent", "feel", "battery", "logger", "internal", "chill", "virtual", "potential"}

// find is the column of one of these names, in their order; −1 for none.
func find(plain, names []string) int {
	for _, n := range names {
		for i, p := range plain {
			if p == n {
				return i
			}
		}
	}
	return -1
}

// seek is the column c by its whole name, else the first, by the shortest name, that has a part of its names.
func seek(plain []string, c int) int {
	if i := find(plain, known[c]); i >= 0 {
		return i
	}
	best := -1
	for _, part := range inName[c] {
		for i, p := range plain {
			if strings.Contains(p, part) && !foreign(p, c) && (best < 0 || len(p) < len(plain[best])) {
				best = i
			}
		}
		if best >= 0 {
			return best
		}
	}
	return best
}

// foreign reports whether a name with a part of column c's names is that of another thing.
func foreign(plain string, c int) bool {
	if c == temp {
		return has(plain, otherAir) || has(plain, []string{"uncert", "source", "flag", "quality", "max", "min", "std"})
	}
	if c == ghi && has(plain, []string{"direct", "diff", "difus", "dni", "dhi", "beam", "bhi", "normal"}) {
		return true
	}
	if c == dhi && has(plain, []string{"difference", "diffuser"}) {
		return true
	}
	return has(plain, elsewhere)
}

func has(s string, parts []string) bool {
	for _, p := range parts {
		if strings.Contains(s, p) {
			return true
		}
	}
	return false
}

// clearSky reports whether the name of a column is that of a sky without clouds.
func clearSky(head string) bool {
	h := letterOnly(head)
	return has(h, []string{"clear", "clrsky", "cloudfree", "cloudless"}) || strings.HasSuffix(h, "ghics") || strings.HasSuffix(h, "csghi")
}

// letterOnly is a name in small letters and digits.
func letterOnly(h string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 127 && r != '°' && r != '²' {
			return r
		}
		return -1
	}, strings.ToLower(h))
}
