package page

import (
	"duskweight/internal/model"
	"duskweight/internal/model/lift/path"
	"duskweight/internal/model/unit"
)

// QuestionView is one of the questions with its answer.
type QuestionView struct {
	Ask, Answer, Say string
	Worse            bool
}

// RoundOf are all questions round a hoist with their answers.
func RoundOf(h *model.HoistResult, sys unit.System) []QuestionView {
	return append(questionViews(h.Hazards.Questions, sys), questionViews(h.Hazards.Round, sys)...)
}

func questionViews(qs []path.Question, sys unit.System) []QuestionView {
	out := make([]QuestionView, len(qs))
	for i, q := range qs {
		out[i] = QuestionView{q.Ask, q.Answer, q.Say.In(sys), q.Worse}
	}
	return out
}

// LooksOwed counts the parts that nobody looked at yet since a fall or a shock.
func LooksOwed(checks []path.Check) int {
	open := map[string]bool{}
	for _, c := range checks {
		for _, m := range c.Missing {
			if model.Within(m, "trials") {
				open[m] = true
			}
		}
	}
	return len(open)
}
