package compare

import (
	"net/http"
	"slices"

	"duskweight/web/page"
)

// sendCompareCSV sends the yearly totals of the variants of the address.
func (s *Pages) sendCompareCSV(w http.ResponseWriter, r *http.Request) error {
	p, _, chosen, err := s.Chosen(r)
	if err != nil {
		return err
	}
	results := s.Results.All(p, chosen)
	bills := slices.DeleteFunc(page.BillsOf(results, chosen, p.Value.Currency), func(b page.Bill) bool { return len(b.Cost.Years) == 0 })
	if len(bills) == 0 {
		return page.ErrNotFound
	}
	return page.SendCSV(w, page.CostNumbers(bills))
}
