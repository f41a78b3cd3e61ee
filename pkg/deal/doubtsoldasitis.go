package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// worn is the best condition that a house which is renovated is hardly sold in: fair.
const worn = 2

// renovated is from what share of the value on work is a renovation, and no mere repair that
// may leave a house as worn as it was (common practice, no source).
var renovated = decimal.New(5, -2)

// renovation is what the work costs, and whether that is one.
func (r *reader) renovation() (budget decimal.Decimal, is bool) {
	budget, _ = r.worked(r.deal.Root, "budget")
	value, _ := r.worked(r.deal.Root, "value_by_comps")
	return budget, !budget.LessThan(value.Mul(renovated))
}

// doubtAsItStands warns of a house that is renovated and compared as it stands today: the sold
// houses tell what it fetches as it will be when it is sold.
func (r *reader) doubtAsItStands(c *Comparables) {
	g := r.good("house.condition")
	compared := slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return s.Condition.Known })
	if ours := c.Subject.Condition; g == nil || r.finished.key.text != "" || ours.Value > worn || !compared {
		return
	}
	budget, renovation := r.renovation()
	if !renovation {
		return
	}
	r.say("comps-condition-today", g.at(), "the house is compared with the sales in condition %s, and the plan puts %s of work into it: is that how it stands today?", diag.Quote(g.node.text), quantity.FormatDollars(budget))("write the condition when the work is done and it is sold, e.g.   %s", fieldNamed("house", "condition").example())
}
