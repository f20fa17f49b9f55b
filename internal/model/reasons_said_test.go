package model_test

import "duskweight/internal/model/reason"

// reasonsSaid are the sentences of some reasons.
func reasonsSaid(reasons []reason.Reason) []string {
	out := make([]string, len(reasons))
	for i, r := range reasons {
		out[i] = r.Text().String()
	}
	return out
}
