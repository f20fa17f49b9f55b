package form

import "duskweight/internal/model/unit"

// Brief is a value with its unit, in no more digits than a glance takes in.
func (in *Input[T]) Brief(t *T, sys unit.System) string {
	if in.Kind != AsNumber {
		return in.Text(t, sys)
	}
	if text, taped := in.taped(t, sys); taped {
		return text
	}
	shown := shortNumber(in.Show(t, sys))
	if u := in.Symbol(sys); u != "" && shown != "" {
		return shown + " " + u
	}
	return shown
}
