package search

import (
	"context"

	"duskweight/internal/model"
	"duskweight/internal/model/sun"
	"duskweight/internal/model/unit"
)

// bandFiles is from how many weather files on made years of their means stand behind them.
const bandFiles = 5

// Band runs made years from the means of a project's weather files, as many as the project has, for the same variants: the band
// in which the files lie. Nil where there are fewer than five files, or the project runs made years anyway.
func Band(ctx context.Context, project model.Project, variants []model.Variant, workers int) (*Sure, error) {
	files := project.Files()
	if project.Place.Sky != sun.SkyFiles || len(files) < bandFiles {
		return nil, nil
	}
	means := sun.Means(files)
	p := &project.Place
	p.Latitude, p.Longitude, p.UTCOffset = unit.Of(files[0].Latitude), unit.Of(files[0].Longitude), unit.Of(files[0].UTCOffset)
	p.Elevation = unit.Of(files[0].Elevation)
	p.Sky, p.Monthly = sun.SkyMonthly, &means
	project.Weather, project.Weathers = nil, nil
	s, err := Years(ctx, project, variants, project.MadeYears(), workers, nil)
	return &s, err
}
