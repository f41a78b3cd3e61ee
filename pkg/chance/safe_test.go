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
