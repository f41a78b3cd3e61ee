package answer

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// A Step is one line of the way from the rule of thumb to the maximum offer.
type Step struct {
	Line   string // the line of the deal at the maximum offer
	Amount decimal.Decimal
}

// Sign is what stands before its words: a plus where it adds to what is above.
func (s Step) Sign() string {
	switch {
	case s.Line == bridged[0].line:
		return ""
	case s.Amount.IsPositive():
		return "+ "
	}
	return "- "
}

// bridged are the lines of the bridge with their signs; they add up to the price.
var bridged = []struct {
	line string
	sign int64
}{
	{"rule_offer", 1}, {"rule_allowance", 1}, {"value_given_up", -1}, {"selling_cost", -1}, {"holding_cost", -1},
	{"loan_cost", -1}, {"purchase_extras", -1}, {"beyond_budget", -1}, {"partner_profit", -1}, {"owner_profit", -1},
}

// bridge works the steps out at the maximum offer of the likely value.
func (a *Answer) bridge() error {
	if !a.Offer.Found || a.Offer.Endless {
		return nil
	}
	var want []*model.Cell
	for _, b := range bridged {
		want = append(want, a.small.Find(a.small.Root, b.line))
	}
	v, err := exact.NewPlan(a.small, want...).Evaluate(a.change("price", a.Offer.Price))
	if err != nil {
		return err
	}
	for i, b := range bridged {
		a.Bridge = append(a.Bridge, Step{b.line, v.Of(want[i]).Mul(decimal.NewFromInt(b.sign))})
	}
	return nil
}
