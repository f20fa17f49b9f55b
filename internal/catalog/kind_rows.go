package catalog

import (
	"fmt"

	"duskweight/internal/model/lift"
	"duskweight/internal/model/unit"
)

// always is a taking that cannot be refused.
func always(put func(*lift.Hoist, Choice) Taken) func(*lift.Hoist, Choice) (Taken, error) {
	return func(h *lift.Hoist, c Choice) (Taken, error) { return put(h, c), nil }
}

func row(f From, group, name string, put func(*lift.Hoist, Choice) (Taken, error)) Row {
	return Row{From: f, ID: slug(group, name), Group: group, Name: name, put: put}
}

func materialRows() (out []Row) {
	for _, a := range Materials() {
		out = append(out, row(a.From, "", a.Name, a.takeHoist))
	}
	return out
}

func ropeRows() (out []Row) {
	for _, r := range Ropes() {
		out = append(out, row(r.From, r.Name, sizeName(r.Diameter), always(func(h *lift.Hoist, c Choice) Taken {
			return r.Take(&h.Rope, c.Read).within("rope")
		})))
	}
	return out
}

func endingRows() (out []Row) {
	for _, e := range Endings() {
		group := "Fibre rope"
		if e.Wire {
			group = "Wire rope"
		}
		out = append(out, row(e.From, group, e.Name, func(h *lift.Hoist, c Choice) (Taken, error) {
			t, err := e.Take(&h.Rope, c.Read)
			return t.within("rope"), err
		}))
	}
	return out
}

func wearRows() (out []Row) {
	for _, w := range Wears() {
		out = append(out, row(w.From, "", w.Name, always(func(h *lift.Hoist, c Choice) Taken { return w.Take(&h.Rope, c.Read).within("rope") })))
	}
	return out
}

func pulleyRows() (out []Row) {
	for _, p := range Pulleys() {
		out = append(out, row(p.From, "", p.Name, func(h *lift.Hoist, c Choice) (Taken, error) {
			if c.At == "all" {
				var t Taken
				copied(&t, &h.Reeving.Efficiency, unit.Of(p.Efficiency), "reeving.sheave_efficiency")
				return t, nil
			}
			i, err := index(&h.Reeving.Sheaves, c.At)
			if err != nil {
				return Taken{}, err
			}
			return p.takeHoist(h, i), nil
		}))
	}
	return out
}

func stageRows() (out []Row) {
	for _, s := range Stages() {
		out = append(out, row(s.From, "", s.Name, func(h *lift.Hoist, c Choice) (Taken, error) {
			i, err := index(&h.Train.Stages, c.At)
			if err != nil {
				return Taken{}, err
			}
			return s.takeHoist(h, i, c), nil
		}))
	}
	return out
}

func toothRows() (out []Row) {
	for _, m := range Teeth() {
		out = append(out, row(m.From, "", m.Name, func(h *lift.Hoist, c Choice) (Taken, error) {
			i, err := index(&h.Train.Stages, c.At)
			if err != nil || c.At == "new" {
				return Taken{}, errNoPlace
			}
			return m.Take(&h.Train.Stages[i].Tooth, c.Read).within(fmt.Sprintf("train.stages[%d].tooth", i)), nil
		}))
	}
	return out
}

func motorRows() (out []Row) {
	for _, m := range Motors() {
		out = append(out, row(m.From, "", m.Name, always(func(h *lift.Hoist, _ Choice) Taken { return m.takeHoist(h) })))
	}
	return out
}

func lampRows() (out []Row) {
	for _, l := range Lamps() {
		out = append(out, row(l.From, "", l.Name, func(h *lift.Hoist, c Choice) (Taken, error) {
			i, err := index(&h.Lower.Loads, c.At)
			if err != nil {
				return Taken{}, err
			}
			return l.Take(&h.Lower.Loads[i], c.Series.Or(1), c.Rows.Or(1)).within(fmt.Sprintf("lower.loads[%d]", i)), nil
		}))
	}
	return out
}

// eyeRow is a part with a rating that holds the top pulley or sits on the mass.
func eyeRow(f From, name string, hanger func(*lift.Structure, bool) Taken, straight unit.Force) Row {
	return row(f, "", name, func(h *lift.Hoist, c Choice) (Taken, error) {
		switch c.At {
		case "hanger":
			return hanger(&h.Structure, c.Read).within("structure"), nil
		case "eye":
			return takeEye(&h.Container, f, straight, c.Read).within("container"), nil
		}
		return Taken{}, errNoPlace
	})
}

func eyeboltRows() (out []Row) {
	for _, e := range Eyebolts() {
		out = append(out, eyeRow(e.From, e.Size, e.Take, e.Straight))
	}
	return out
}

func shackleRows() (out []Row) {
	for _, s := range Shackles() {
		out = append(out, eyeRow(s.From, s.Size, s.Take, s.Straight))
	}
	return out
}

// memberRow is a material of the beam or of a post.
func memberRow(f From, group, name string, beam func(*lift.Beam, bool) Taken, post func(*lift.Post, bool) Taken, other func(*lift.Hoist, Choice) (Taken, error)) Row {
	return row(f, group, name, func(h *lift.Hoist, c Choice) (Taken, error) {
		switch {
		case c.At == "beam":
			return beam(&h.Structure.Beam, c.Read).within("structure.beam"), nil
		case other != nil && c.At == "shaft":
			return other(h, c)
		}
		i, err := index(&h.Structure.Posts, c.At)
		if err != nil || c.At == "new" {
			return Taken{}, errNoPlace
		}
		return post(&h.Structure.Posts[i], c.Read).within(fmt.Sprintf("structure.posts[%d]", i)), nil
	})
}

func timberRows() (out []Row) {
	for _, w := range TimberClasses() {
		group := map[byte]string{'C': "Softwood", 'D': "Hardwood", 'G': "Glued timber"}[w.Class[0]]
		out = append(out, memberRow(w.From, group, string(w.Class), w.TakeBeam, w.TakePost, nil))
	}
	return out
}

func steelRows() (out []Row) {
	for _, s := range Steels() {
		out = append(out, memberRow(s.From, "", s.Grade, s.TakeBeam, s.TakePost, func(h *lift.Hoist, c Choice) (Taken, error) {
			return s.TakeShaft(&h.Drum, c.Read).within("drum"), nil
		}))
	}
	return out
}

func bagRows() (out []Row) {
	for _, b := range Bags() {
		out = append(out, row(b.From, "", b.Name, always(func(h *lift.Hoist, c Choice) Taken { return b.Take(&h.Container, c.Read).within("container") })))
	}
	return out
}
