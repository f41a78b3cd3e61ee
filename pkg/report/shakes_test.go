package report

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/solve"
)

// The plan's profit and what is left of it; a loss is never a negative profit.
func TestMovesOfProfitAndLoss(t *testing.T) {
	for _, c := range []struct {
		before, after int64
		want          string
	}{
		{50, 30, "profit falls by $20 to $30"},
		{50, 60, "profit rises by $10 to $60"},
		{50, 50, "profit stays"},
		{50, 0, "profit falls by $50 to $0"},
		{50, -7, "profit falls by $57 to a loss of $7"},
		{0, -7, "profit falls by $7 to a loss of $7"},
		{-30, -50, "the loss rises by $20 to $50"},
		{-30, -28, "the loss falls by $2 to $28"},
		{-30, -30, "the loss stays"},
		{-30, 5, "the loss of $30 becomes a profit of $5"},
	} {
		s := answer.Shake{Profit: decimal.NewFromInt(c.after), Lost: decimal.NewFromInt(c.before - c.after)}
		require.Equal(t, c.want, moves("profit", "the loss", s), "%d to %d", c.before, c.after)
	}
}

func TestTermWords(t *testing.T) {
	d := decimal.NewFromInt
	for _, c := range []struct {
		term answer.Term
		want string
	}{
		{answer.Term{Loan: "bank", Months: d(7), Spare: d(1), Each: d(3), Fee: d(1081)}, "bank: its term of 7 months ends 1 month after the planned sale in month 6; an extension of 3 months costs $1,081."},
		{answer.Term{Loan: "bank", Months: d(7), Each: d(3), Fee: d(1081)}, "bank: its term of 7 months ends with the planned sale in month 6; an extension of 3 months costs $1,081."},
		{answer.Term{Loan: "bank", Months: d(5), Spare: d(-1), Each: d(3), Fee: d(900), Paid: d(900)}, "bank: its term of 5 months ends 1 month before the planned sale in month 6; the plan pays $900 for extensions; one of 3 months costs $900."},
		{answer.Term{Loan: "bank", Months: d(7), Spare: d(2)}, "bank: its term of 7 months ends 2 months after the planned sale in month 6; no extension is agreed."},
	} {
		require.Equal(t, c.want, termWords(c.term, d(6)))
	}
}

// A limit that is not enough is named in words of its own; no word stands where a number
// is expected.
func TestLimits(t *testing.T) {
	d := decimal.NewFromInt
	of := func(b solve.BreakEven) entry { return limit(b, "overrun above", "no overrun up to", percent) }
	require.Equal(t, entry{"  no overrun up to", "300%"}, of(solve.BreakEven{Never: true, Value: d(3)}))
	require.Equal(t, entry{"  overrun above", "already"}, of(solve.BreakEven{Missed: true}))
	require.Equal(t, entry{"  overrun above", "35%"}, of(solve.BreakEven{Found: true, Value: decimal.New(35, -2)}))
	for _, e := range breakEven(answer.BreakEvens{SalePrice: solve.BreakEven{Never: true, Value: d(10_000)}, Overrun: solve.BreakEven{Never: true}, Months: solve.BreakEven{Never: true}}, true) {
		require.Len(t, Ask(e.label).Lines, 1, "why takes %q", e.label)
	}
}

func TestAsk(t *testing.T) {
	for label, want := range map[string]Asked{
		"Don't go above":            {Lines: []string{"max_offer_low"}, Month: -1, Leads: true},
		"points and loan fees":      {Lines: []string{"loan_charges_paid"}, Month: 0},
		"- holding, less refunds":   {Lines: []string{"holding_cost"}, Month: -1, AtOffer: true},
		"+ the other 30% of value":  {Lines: []string{"rule_allowance"}, Month: -1},
		"rule-of-thumb offer, 65%":  {Lines: []string{"rule_offer"}, Month: -1},
		"loans' cost a year (APR)":  {Lines: []string{"loan_apr"}, Month: -1},
		"first loan, at closing":    {Lines: []string{"first loan.loan_at_closing", "first loan, at closing", "first loan.at closing", "deal.first loan"}, Month: -1},
		"first loan, no retainage":  {Lines: []string{"first loan, no retainage", "first loan.retainage", "deal.first loan"}, Month: -1},
		"margin, of the sale price": {Lines: []string{"margin, of the sale price", "margin.of the sale price", "deal.margin"}, Month: -1},
		"kitchen: floor":            {Lines: []string{"kitchen.floor_area", "kitchen: floor", "kitchen.floor", "deal.kitchen"}, Month: -1},
		"contingency, 15%":          {Lines: []string{"contingency, 15%", "contingency.15%", "deal.contingency"}, Month: -1},
		"no lead-in":                {Lines: []string{"no lead-in", "lead-in"}, Month: -1},
		"profit":                    {Lines: []string{"profit"}, Month: -1},
	} {
		require.Equal(t, want, Ask(label), label)
	}
}
