package cli_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const soldDeal = `house: {year built: 1961, living area: "1,200 sq ft", baths: 2}
purchase: {price: $220k, date: 2026-06-01}
time: {renovation: 7 weeks, marketing: 4 weeks, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: roof, work: x, amount: $20k}]}
comps:
  amounts: {market a month: 0.4%, square foot: $90, bath: $9k, step of condition: $14k}
  sold:
    1 A St: {sold: 2026-03-01, price: "$300,000", living area: 1100 sq ft, baths: 1.5, condition: average}
    2 B St: {sold: 2025-12-01, price: "$340,000", living area: 1300 sq ft, baths: 2.5, condition: excellent}
    3 C St: {sold: 2026-05-01, price: "$325,000", living area: 1200 sq ft, baths: 2, condition: good}
`

// A value by comparables goes as far as they scatter, which is no common practice.
func TestStressByComparables(t *testing.T) {
	out, wrong, code := run(t, soldDeal, "stress", "-")
	require.Zero(t, code, wrong)
	require.Contains(t, flowing(out), "= is as far as the comparables leave it open. How far that is goes by how they scatter and how many they are.")
	require.Regexp(t, `what the house will be .*= `, out)
}

// A return that misses its target of 30% by little is not written as 30%.
func TestStressTellsAMissFromItsTarget(t *testing.T) {
	out, wrong, code := run(t, "", "stress", "../../scenarios/juniper-lane.yaml", "--down", "overrun=9.9%, 10%", "--across", "months late=0, 1 month")
	require.Zero(t, code, wrong)
	require.Contains(t, out, "29.997%*")
	require.NotContains(t, out, " 30%*")
}

const asideDeal = `purchase: {price: $150k, closing: {recording: 1% of budget}}
value: {after-repair value: $214k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: a, work: b, amount: $20k}]}
`

// flowing is a page without the ends of its lines.
func flowing(page string) string { return strings.Join(strings.Fields(page), " ") }

// A contingency sizes loans and charges of the closing, and a page with one says so.
func TestStressSaysWhatAContingencySizes(t *testing.T) {
	const loan = "loan: {price share: 80%, renovation share: 100%, rate: 12%}\n"
	for deal, says := range map[string]string{
		asideDeal:        "set before the closing: charges of the closing reckoned on the budget are sized by it.",
		asideDeal + loan: "set before the closing: loans and charges of the closing reckoned on the budget are sized by it.",
		strings.Replace(asideDeal, "of budget", "of price", 1) + loan: "set before the closing: loans are sized by it.",
	} {
		out, wrong, code := run(t, deal, "stress", "-", "--across", "contingency=0%, 10%, 25%", "--down", "overrun=10%, 20%")
		require.Zero(t, code, wrong)
		require.Contains(t, flowing(out), says)
		require.NotContains(t, flowing(out), "stay as planned too")
		out, wrong, code = run(t, deal+"bad days: {aside: {contingency: 20%}}\n", "stress", "-")
		require.Zero(t, code, wrong)
		require.Contains(t, flowing(out), says)
		out, wrong, code = run(t, deal, "stress", "-")
		require.Zero(t, code, wrong)
		require.NotContains(t, flowing(out), says)
	}
}

// A range that moves nothing is not ranked, and stress and odds say why in the same words.
func TestStressLeavesOutWhatMovesNothing(t *testing.T) {
	const ranges = "ranges: {contingency: {low: 5%, high: 30%}"
	for deal, idle := range map[string]bool{asideDeal + ranges + "}\n": true, asideDeal + ranges + ", overrun: {spread: none}}\n": false} {
		for _, verb := range []string{"stress", "odds"} {
			out, wrong, code := run(t, deal, verb, "-")
			require.Zero(t, code, wrong)
			require.Equal(t, idle, strings.Contains(flowing(out), "moves nothing here: what the work comes to is drawn as the overrun over the bids"), verb)
			if verb == "stress" {
				require.Equal(t, !idle, strings.Contains(out, ". contingency "))
			}
		}
	}
}

// A range of a lender's value that caps no loan says so, and is not said to move loans.
func TestALendersValueThatCapsNothing(t *testing.T) {
	const loan, ranges = "loan: {price share: 70%, rate: 11%}\n", "ranges: {lender's value: {low: $150k, high: $214k}}\n"
	for with, idle := range map[string]bool{"": true, loan: true, strings.Replace(loan, "}", ", cap on after-repair value: 70%}", 1): false} {
		for _, verb := range []string{"stress", "odds"} {
			out, wrong, code := run(t, asideDeal+with+ranges, verb, "-")
			require.Zero(t, code, wrong)
			require.Equal(t, idle, strings.Contains(flowing(out), "moves nothing here: no loan has a cap on after-repair value"), verb)
			json, wrong, code := run(t, asideDeal+with+ranges, verb, "-", "--json")
			require.Zero(t, code, wrong)
			require.Equal(t, verb == "odds" || !idle, strings.Contains(json, `"value.lender's value"`), verb)
			require.Equal(t, verb == "odds" && with != "" && !idle, strings.Contains(flowing(out), "what these make of them: value the lender counts"), verb)
		}
		for side, alike := range map[string]string{"--across": "columns", "--down": "rows"} {
			out, wrong, code := run(t, asideDeal+with, "stress", "-", side, "lender's value=$150k, $200k")
			require.Zero(t, code, wrong)
			require.Equal(t, idle, strings.Contains(flowing(out), "The "+alike+" are alike: no loan has a cap on after-repair value."), side)
		}
	}
}

// A day that sells low has the don't-go-above price in it only where there is a low value.
func TestStressAsksForALowValue(t *testing.T) {
	const has, wants = "the bid; the don't-go-above price has this in it", "the bid; state a low value, so that the don't-go-above price has this in it"
	for deal, says := range map[string]string{
		asideDeal: wants,
		strings.Replace(asideDeal, "$214k", "$214k, low: $200k", 1): has,
		soldDeal: has,
	} {
		out, wrong, code := run(t, deal, "stress", "-")
		require.Zero(t, code, wrong)
		require.Contains(t, flowing(out), says)
	}
}

// What a month costs reads alike beside a profit and beside a loss, and nothing is nothing.
func TestStressSaysWhatAMonthCosts(t *testing.T) {
	losing := strings.Replace(asideDeal, "$150k", "$205k", 1)
	for deal, says := range map[string]string{
		asideDeal: "longer on the market costs you nothing.",
		asideDeal + "holding: {tax: $500/month}\n":                      "stand still costs you $500, $16 a day.",
		losing + "holding: {tax: $500/month}\n":                         "stand still costs you $500, $16 a day.",
		losing + "holding: {rent: {amount: $500/month, credit: yes}}\n": "longer on the market brings you $500, $16 a day.",
	} {
		out, wrong, code := run(t, deal, "stress", "-")
		require.Zero(t, code, wrong)
		require.Contains(t, flowing(out), says)
	}
}

// A bad day without a remedy is told, and gives no advice.
func TestStressTellsDaysApartFromWhatHelps(t *testing.T) {
	out, wrong, code := run(t, asideDeal+"bad days: {roof: {extra work: $9k}, wall: {extra work: $4k, remedy: Open it first}}\n", "stress", "-")
	require.Zero(t, code, wrong)
	_, days, _ := strings.Cut(out, "What they are\n")
	days, helps, _ := strings.Cut(days, "What helps\n")
	require.Contains(t, days, "  roof: extra work $9k.\n  wall: extra work $4k.\n")
	require.NotContains(t, helps, "roof")
	require.Contains(t, helps, "  wall: Open it first.\n")
}

// A range of her own that the ranking has no row for is named below it.
func TestStressNamesHerRangesBelowTheRanking(t *testing.T) {
	holding, ranges := "", ""
	for i := range 11 {
		holding += fmt.Sprintf("  bill %d: $%d/month\n", i+1, 90-i)
		ranges += fmt.Sprintf("  bill %d: {low: $%d/month, high: $%d/month}\n", i+1, 85-i, 400-20*i)
	}
	out, wrong, code := run(t, asideDeal+"holding:\n"+holding+"ranges:\n"+ranges, "stress", "-")
	require.Zero(t, code, wrong)
	require.Contains(t, flowing(out), "bill 11 move it less than these; --json ranks them all.")
	require.NotContains(t, flowing(out), "ranges of bill 1,")
}
