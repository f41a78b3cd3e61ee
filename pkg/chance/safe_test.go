package chance_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
)

// A charge that ends at a price lets targets fail under it and hold above. What is counted
// at the safe offer is what a deal at that price has.
func TestTheSafeOfferWhereTargetsFailTwice(t *testing.T) {
	text := replace(bell, "{price: $200k}", "{price: $200k, closing: {odd tax: {slabs: {up to $203k: 4%, above: 0%}}}}")
	o := ask(t, read(t, text), chance.Options{Trials: 20_000, Seed: 4})
	require.True(t, o.Safe.Found)
	require.GreaterOrEqual(t, o.Safe.Holds.Value, 0.8)
	there, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "price", Value: o.Safe.Price.String()})
	require.Empty(t, found.Errors())
	at := ask(t, there, chance.Options{Trials: 20_000, Seed: 4})
	require.InDelta(t, o.Safe.Holds.Value, 1-at.AnyMissed.Value, 1e-12)
}

// Lenders look before the sale: another after-repair value moves no loan, another value of
// the lender's does, and so does another price.
func TestLoansAreThePlans(t *testing.T) {
	const lent = `purchase: {price: $200k}
value: {after-repair value: $300k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: roof, amount: $50k}]}
loans: [{price share: 100%, cap on after-repair value: 60%, rate: 0%, interest on: balance}]
ties: []
`
	cash := func(ranges string) (least, most float64) {
		still := "  standstill: {cases: {0: 1, 1 day: 1}}\n  overrun: {cases: {0%: 1, 0.0000001%: 1}}\n"
		o := ask(t, read(t, lent+"ranges:\n"+still+ranges), chance.Options{Trials: 2000, Seed: 1})
		return o.Figures[chance.Cash].Range()
	}
	least, most := cash("  after-repair value: {low: $250k, high: $350k}\n")
	require.InDelta(t, 70_000, least, 0.01, "$250,000 less a loan of 60% of $300,000")
	require.InDelta(t, 70_000, most, 0.01)
	least, most = cash("  lender's value: {cases: {$300k: 1, $270k: 1}}\n")
	require.InDelta(t, 70_000, least, 0.01)
	require.InDelta(t, 88_000, most, 0.01, "60% of $270,000 is $18,000 less")
}

// A charge paid at the closing does not grow because the work takes longer or the house sells
// for more: 2% of $30,000 of bids and three months at $480, 0.5% of $240,000; after two idle
// months more the rent is $960 more, and nothing else.
func TestChargesOfTheClosingAreThePlans(t *testing.T) {
	const text = `purchase: {price: $150k, closing: {plan review: 2% of base cost, title: 0.5% of after-repair value}}
value: {after-repair value: $240k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: paint, amount: $30k}], general: {dumpster: $480/month}}
loans: [{price share: 90%, rate: 0%, interest on: balance}]
`
	profit := func(ranges string) (least, most float64) {
		return ask(t, read(t, text+"ranges: {overrun: {spread: none}, marketing: {spread: none}, "+ranges+"}\n"), chance.Options{Trials: 500, Seed: 1}).Figures[chance.Profit].Range()
	}
	plan := 240_000 - 150_000 - 31_440 - 628.80 - 1_200.0
	least, most := profit("after-repair value: {spread: none}, standstill: {cases: {0: 1, 2 months: 1}}")
	require.InDelta(t, plan, most, 0.01)
	require.InDelta(t, plan-960, least, 0.01)
	least, most = profit("standstill: {spread: none}, after-repair value: {cases: {$240k: 1, $250k: 1}}")
	require.InDelta(t, plan, least, 0.01)
	require.InDelta(t, plan+10_000, most, 0.01)
}

// A holding charge that is a share of the budget stays as planned in a deal without loans too:
// shingles that cost $8,000 more take that and nothing else.
func TestTheBudgetIsThePlansWithoutLoans(t *testing.T) {
	const text = `purchase: {price: 120k}
value: {after-repair value: 210k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: roof, work: shingles, amount: 12k}]}
holding: {builders risk: 2% of budget}
ranges: {overrun: {spread: none}, marketing: {spread: none}, after-repair value: {spread: none}, standstill: {spread: none}, shingles.amount: {cases: {$12k: 1, $20k: 1}}}
`
	least, most := ask(t, read(t, text), chance.Options{Trials: 200, Seed: 1}).Figures[chance.Profit].Range()
	require.InDelta(t, 210_000-120_000-12_000-240, most, 0.01)
	require.InDelta(t, most-8_000, least, 0.01)
}
