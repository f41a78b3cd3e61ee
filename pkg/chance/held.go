package chance

import (
	"slices"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// comesOut are the bases of charges that come out only with the works and the sale.
var comesOut = []string{"sale_price", "after_repair_value", "works_cost", "works_at_trade_price", "base_cost", "budget"}

// Planned keeps the budget, and the value that lenders look at before the works and the sale,
// as they are in the plan, and what charges of the purchase and of loans are reckoned on that
// comes out later. So nothing of them grows or shrinks because the works or the sale turn out
// otherwise, while it still follows the price. What varies itself is left out.
func Planned(m *model.Model, vary ...*model.Cell) ([]exact.Change, error) {
	fees := slices.Concat(m.Root.In("before_fee"), m.Root.In("purchase_fee"))
	seen := []*model.Cell{m.Find(m.Root, "budget")}
	if loans := m.Root.In("loan"); len(loans) > 0 {
		seen = append(seen, m.Find(m.Root, "lender_value"))
		for _, l := range loans {
			seen, fees = append(seen, m.Find(l, "lender_budget")), append(fees, l.In("loan_fee")...)
		}
	}
	for _, f := range fees {
		if slices.Contains(comesOut, f.Given.Of("base").Refers) {
			seen = append(seen, m.Find(f, "base"))
		}
	}
	seen = slices.DeleteFunc(seen, func(c *model.Cell) bool { return slices.Contains(vary, c) })
	return exact.Pin(m, seen...)
}

// beforeClosing are the lines of the deal itself that are known when the loans are closed.
var beforeClosing = []string{
	"price", "assignment_fee", "premium_share", "premium_least", "seller_credit", "lender_value", "as_is_value", "contingency_share",
}

// Known reports whether an input is known when the loans are closed: not what the work, the
// hold and the sale come to.
func Known(in deal.Input) bool {
	switch in.Member.Set {
	case "loan":
		return true
	case "fee":
		return in.Member.Kind == "before_fee" || in.Member.Kind == "purchase_fee" || in.Member.Kind == "loan_fee"
	}
	return in.Member.Parent == nil && slices.Contains(beforeClosing, in.Line)
}

// MovesLoans reports whether a range moves the loans of a trial: it is of what is known before
// they are closed, and no charge; the budget stays the plan's whatever the contingency is.
func (r Range) MovesLoans() bool {
	return r.Idle == "" && r.Member.Set != "fee" && r.Line != "contingency_share" && Known(r.Input)
}
