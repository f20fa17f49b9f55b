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

// Typical runs the own hours of a typical weather file for the variants: one year, whose months were chosen as ordinary. Nil
// where the sky is no typical file.
func Typical(ctx context.Context, project model.Project, variants []model.Variant) (*Sure, error) {
	files := project.Files()
	if project.Place.Sky != sun.SkyFile || len(files) == 0 {
		return nil, nil
	}
	if typical, _ := files[0].IsTypical(); !typical {
		return nil, nil
	}
	r := NewRun(project, variants, false)
	r.bench.climate = nil
	if err := r.Until(ctx, 1, 1, nil); err != nil {
		return nil, err
	}
	s := r.Sure()
	return &s, nil
}
