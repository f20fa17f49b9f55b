package page

import (
	"strconv"

	"duskweight/internal/store"
	"duskweight/web/form"
)

func StepOf(c *store.Change) StepView {
	if c == nil {
		return StepView{}
	}
	return StepView{Seq: strconv.FormatInt(c.Seq, 10), What: form.Clip(c.Name, 40) + ", " + form.Clip(c.Said, 90)}
}

// StepView is a change that can be taken back; empty where there is none.
type StepView struct {
	Seq  string `json:"seq"`
	What string `json:"what"`
}
