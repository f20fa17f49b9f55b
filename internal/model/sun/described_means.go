package sun

// DescribedMeans returns the twelve rough means that a described sky stands for, to be typed over; false where latitude
// or description is not known.
func DescribedMeans(place Place) (Monthly, bool) {
	latitude, known := place.Latitude.Value()
	words, ok := skies[place.Described]
	if !known || !ok {
		return Monthly{}, false
	}
	longitude, offset := clock(place)
	return describe(NewGeometry(latitude, longitude, offset), words, place.Elevation.Or(0)), true
}
