package sun

// The words of closed lists. The empty word means that the question is open.

// SkyKind is how the sky of a place is known.
type SkyKind string

// The words of SkyKind.
const (
	SkyMonthly   SkyKind = "monthly"
	SkyDescribed SkyKind = "described"
	SkyFile      SkyKind = "file"  // the hours of one weather file
	SkyFiles     SkyKind = "files" // those of all weather files, each one year
)

// DescribedSky is the sky of a place in a word.
type DescribedSky string

// The words of DescribedSky.
const (
	DescribedDesert     DescribedSky = "desert"
	DescribedDry        DescribedSky = "dry"
	DescribedMixed      DescribedSky = "mixed"
	DescribedCloudy     DescribedSky = "cloudy"
	DescribedVeryCloudy DescribedSky = "very_cloudy"
)
