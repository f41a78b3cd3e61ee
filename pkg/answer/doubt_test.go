package answer

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/diag"
)

// Of two lenders of whom one lends what the other leaves, the as-is value takes off both
// together what it lies under the price. By hand: 80% and then all of 200,000 lend 160,000 and
// 40,000, of 180,000 144,000 and 36,000.
func TestTheAsIsValueTakesOffOnce(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k, closing: {title: $1500}}
value: {after-repair value: $330k, as-is value: $180k}
time: {marketing: 1 month, escrow: 1 month}
loans: [{name: bank, price share: 80%, rate: 11%, interest on: balance, term: 1 year}, {name: aunt, of remainder: yes, price share: 100%, rate: 6%, interest on: balance, term: 1 year}]
`)
	bank, aunt := a.Loans()[0], a.Loans()[1]
	require.Equal(t, "16000", a.Of(bank, "cut_by_as_is").String())
	require.Equal(t, "4000", a.Of(aunt, "cut_by_as_is").String())
	require.Equal(t, "21500", a.Line("total_to_buy").String())
	i := slices.IndexFunc(a.Warnings, func(d diag.Diag) bool { return d.Code == "loan-cut-by-as-is" })
	require.Contains(t, a.Warnings[i].Hint, "have ready what of it aunt does not lend")
}

// A loan that lends for the work alone and takes its fees at the closing has two rates, or,
// where its draws come too late to be told from its costs, none; it says what it costs.
func TestLoansWithoutOneRate(t *testing.T) {
	const text = `purchase: {price: $80k, closing: {title: $900}}
value: {arv: $150k, low: $140k}
time: {renovation: 8 weeks, marketing: 2 weeks, escrow: 1 month}
renovation: {contingency: 15%, lines: [{trade: all, amount: $18k}]}
loan: {name: line, renovation share: 80%, rate: 12%, points: 4 points, fees: {setup: $950}, interest on: balance, term: 12 months, exit fee: 1% of commitment, draws: {lag: 2 months, fee: $150, retainage: 10%}}
selling: {agents: 5%}
`
	none := answered(t, text)
	require.False(t, none.LoanAPR.Found)
	require.Contains(t, none.Warnings.Error(), "no rate is the loans' cost a year")
	two := answered(t, strings.Replace(text, "lag: 2 months", "lag: 1 month", 1))
	require.Greater(t, two.LoanAPR.Several, 1)
	require.Contains(t, two.Warnings.Error(), "2 rates solve the loans' annual percentage rate")
}

// What may come out otherwise is asked of a deal without losing what was doubted of it.
func TestDoubtsStayWhenInputsAreAsked(t *testing.T) {
	a := answered(t, `purchase: {price: $142k}
value: {after-repair value: $150k, low: $100k}
time: {renovation: 7 weeks, marketing: 4 weeks, escrow: 1 month}
renovation: {lines: [{trade: roof, work: x, amount: $60k}]}
loans: {price share: 80%, cap on after-repair value: 70%, rate: 11%, term: 12 months}
`)
	before := slices.Clone(a.Warnings)
	require.NotEmpty(t, a.Deal.Inputs())
	require.Equal(t, before, a.Warnings)
	require.True(t, slices.ContainsFunc(a.Warnings, func(d diag.Diag) bool { return d.Code == "loan-cut-by-cap" }), a.Warnings)
}
