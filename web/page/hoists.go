package page

import (
	"net/url"
	"strconv"

	"duskweight/internal/model"
	"duskweight/internal/model/lift"
	"duskweight/internal/model/reason"
	"duskweight/internal/model/unit"
	"duskweight/internal/store"
)

// IsHoist reports whether a store is a hoist.
func IsHoist(st model.Store) bool { return st.Hoist != nil }

// HoistAt is a hoist of the project that parts may be tried in.
type HoistAt struct {
	Variant store.Saved[model.Variant]
	I       int
	Name    string
}

func (h HoistAt) VariantID() string { return strconv.FormatInt(h.Variant.ID, 10) }

func (h HoistAt) Query() string {
	return url.Values{"v": {h.VariantID()}, "i": {Itoa(h.I)}}.Encode()
}

func HoistsOf(variants []store.Saved[model.Variant]) (out []HoistAt) {
	for _, v := range variants {
		n := 0
		for i, st := range v.Value.Stores {
			if st.Hoist == nil {
				continue
			}
			name := OrUnnamed(v.Value.Name)
			if n++; n > 1 {
				name += ", " + OrUnnamed(st.Hoist.Name)
			}
			out = append(out, HoistAt{v, i, name})
		}
	}
	return out
}

// mayFall says of the first mass that may fall whether its fall zone is closed, as the judge sees it; "" where none may fall.
func mayFall(stores []model.StoreResult) string {
	for _, s := range stores {
		h := model.HoistOf(s)
		if h == nil || h.Design.Site.MayFall != unit.Yes {
			continue
		}
		switch h.FallZone() {
		case reason.No:
			return "It may fall, and its fall zone is not closed: keep everybody away."
		case reason.NotKnown:
			return "It may fall, and whether its fall zone is closed is not known: keep everybody away."
		}
		if h.Design.Site.Barrier == lift.BarrierLockedRoom {
			return "It may fall, and its fall zone is closed: nobody inside the room while it is up."
		}
		return "It may fall, and its fall zone is closed: nobody inside the fence while it is up."
	}
	return ""
}
