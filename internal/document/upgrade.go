package document

import (
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/say"
)

// rewrite turns the tree of a project or a variant from one edition to the next. nil changes nothing.
type rewrite func(*value)

// step is what changed between one edition and the next.
type step struct{ project, variant, series rewrite }

// steps holds one step for each edition but the newest: steps[0] leads from edition 1 to edition 2. Append only.
var steps = []step{}

// upgradeDocument lifts a document to this edition. A document without an edition, or with a newer one, is refused.
func upgradeDocument(doc *value) error {
	if doc.kind != object {
		return refuse(whole, "must be a group of values in braces; it is %v", doc.kind)
	}
	e := doc.field("duskweight")
	if e == nil {
		return refuse("duskweight", "is missing: this is not a Duskweight project")
	}
	edition, err := strconv.ParseUint(e.text, 10, 53)
	if e.kind != number || err != nil || edition == 0 {
		return refuse("duskweight", "must be the edition of the document, a whole number from 1 to %d", Edition)
	}
	if edition > Edition {
		return newer("duskweight", int(edition))
	}
	upgrade(doc, steps[edition-1:])
	e.text = strconv.Itoa(Edition)
	return nil
}

// upgrade takes a document through some steps.
func upgrade(doc *value, steps []step) {
	for _, s := range steps {
		project := doc.field("project")
		apply(s.project, project)
		if project != nil {
			apply(s.series, project.field("weather"))
		}
		if vs := doc.field("variants"); vs != nil && vs.kind == list {
			for _, v := range vs.items {
				apply(s.variant, v)
			}
		}
	}
}

// upgradePart lifts a project or a variant that the store kept.
func upgradePart(part *value, edition int, of func(step) rewrite) error {
	switch {
	case edition > Edition:
		return newer(whole, edition)
	case edition < 1:
		return refuse(whole, "has no edition")
	}
	for _, s := range steps[edition-1:] {
		apply(of(s), part)
	}
	return nil
}

func apply(l rewrite, v *value) {
	if l != nil && v != nil && v.kind == object {
		l(v)
	}
}

func newer(path string, edition int) model.Problems {
	return model.Problems{{Path: path, Say: say.That(
		"was written by a newer Duskweight: it is edition %s, and this program reads up to %s", edition, Edition)}}
}
