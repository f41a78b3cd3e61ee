package chance

import (
	"slices"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// Planned keeps what lenders look at before the works and the sale as it is in the plan: the
// value of the house and the budget. So no loan grows or shrinks because the works or the
// sale turn out otherwise, while it still follows the price. What varies itself is left out.
func Planned(m *model.Model, vary ...*model.Cell) ([]exact.Change, error) {
	loans := m.Root.In("loan")
	if len(loans) == 0 {
		return nil, nil
	}
	seen := []*model.Cell{m.Find(m.Root, "lender_value"), m.Find(m.Root, "budget")}
	for _, l := range loans {
		seen = append(seen, m.Find(l, "lender_budget"))
	}
	seen = slices.DeleteFunc(seen, func(c *model.Cell) bool { return slices.Contains(vary, c) })
	return exact.Pin(m, seen...)
}
