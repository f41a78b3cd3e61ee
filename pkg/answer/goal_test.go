package answer

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// wanted is a deal that makes $40,000 in 6 months of the owner's own money, $160,000, which
// is 20% of the sale price and 25% of her cash. Every figure is invented.
const wanted = `
purchase: {price: $160k}
value: {after-repair value: $200k}
time: {escrow: 6 months}
`

// saidOf holds what is said of a deal with more to it against what is wanted.
func saidOf(t *testing.T, text string, say func(*Answer) string, want map[string]string) {
	for more, said := range want {
		require.Equal(t, said, say(answered(t, text+more)), more)
	}
}

// What holds and what is missed is said in sentences, of every kind of target, alone and
// with others.
func TestTargetsAreSaidInSentences(t *testing.T) {
	saidOf(t, wanted, (*Answer).Asking, map[string]string{
		"":                                 "At the asking price you lose no money.",
		"targets: {profit: $40k}":          "At the asking price you meet your profit target of $40,000.",
		"targets: {profit: $41k}":          "At the asking price you miss your profit target of $41,000 by $1,000.00.",
		"targets: {margin: 21%}":           "At the asking price you miss your margin target of 21% by $2,000.00 of profit.",
		"targets: {roi: 26%}":              "At the asking price you miss your return on cash (ROI) target of 26% by $1,600.00 of profit.",
		"cash: {available: $150k}":         "At the asking price you need $10,000.00 more cash than the $150,000 you can use.",
		"cash: {available: $170k}":         "At the asking price you lose no money, and the $170,000 of cash you can use is enough.",
		"targets: {profit: 1, roi: 25%}":   "At the asking price you meet your profit target of $1 and your return on cash (ROI) target of 25%.",
		"targets: {profit: 41k, roi: 26%}": "At the asking price you miss your profit target of $41,000 by $1,000.00 and your return on cash (ROI) target of 26% by $1,600.00 of profit.",
		"targets: {margin: 20%}\ncash: {available: $170k, keep back: $5k}": "At the asking price you meet your margin target of 20%, and the $165,000 of cash you can use is enough.",
		"targets: {profit: 41k}\ncash: {available: $159k}":                 "At the asking price you miss your profit target of $41,000 by $1,000.00 and need $1,000.00 more cash than the $159,000 you can use.",
		"targets: {profit: 41k, margin: 21%}\ncash: {available: $159k}":    "At the asking price you miss your profit target of $41,000 by $1,000.00 and your margin target of 21% by $2,000.00 of profit, and need $1,000.00 more cash than the $159,000 you can use.",
		"selling: {fee: $45k}": "At the asking price you lose $5,000.00.",
	})
}

// Money paid before the closing is needed though a loan gives it back there.
func TestWhatIsPaidBeforeTheClosingMustBeThere(t *testing.T) {
	a := answered(t, replaced(t, wanted, "purchase: {", "purchase: {earnest deposit: $18k, paid before closing: {inspection: $600}, ")+
		"loans: [{fixed amount: $159k, rate: 0%, interest on: balance, term: 1 year}]\ncash: {available: $17k}\n")
	require.Equal(t, "-1600", a.Line("cash_to_spare").String())
	require.Contains(t, a.TiedUp(), "Before the closing it is more: $18,600, already paid. You have $17,000: you would be $1,600 short.")
	require.Contains(t, a.CashAside(), "A lower price frees no cash: what is paid before the closing takes it")
	require.False(t, a.Offer.Found)
}

// A premium that falls from $150,001 on makes $149,000 dearer than $153,000: the maximum
// offer lies above a price that misses the target.
func TestAPriceThatFailsUnderOneThatHoldsIsNoBid(t *testing.T) {
	const deal = `
purchase: {price: $149,000, closing: {premium: {slabs: {up to $150k: 8%, above: 2%}}}}
value: {after-repair value: $200k, low: $198k}
time: {escrow: 3 months}
`
	for targets, want := range map[string]string{
		"targets: {profit: $40k}":   "The asking price of $149,000 misses a target, though $156,862 does not",
		"targets: {profit: $38.5k}": "The asking price of $149,000 misses a target at your low value, though $156,372 does not",
	} {
		a := answered(t, deal+targets)
		word, why := a.Advice()
		require.Equal(t, Other, a.Verdict, targets)
		require.Equal(t, "Not at this price.", word)
		require.Contains(t, why, want)
	}
	require.Equal(t, Bid, answered(t, deal+"targets: {profit: $37k}").Verdict)

	// Asked $145,000, the deal bears $156,862, but not $148,149: with the 8% that is $160,000.92.
	lower := answered(t, replaced(t, deal, "$149,000", "$145,000")+"targets: {profit: $40k}")
	require.Equal(t, "148149", lower.Gap.String())
	require.Contains(t, lower.Gaps(), "Not every price below will do: $148,149, for one, misses a target, since")
	require.Empty(t, answered(t, wanted).Gaps())
}

// What decides is said of either value; the second time a target is the same it is not
// spelled out again.
func TestWhatDecidesIsSaidOnce(t *testing.T) {
	saidOf(t, wanted, (*Answer).Decides, map[string]string{
		"targets: {profit: $10k}": "What decides is your profit target of $10,000, missed from $190,001 on.",
		"selling: {fee: $250k}":   "What decides is breaking even, with a loss at any price.",
		"":                        "What decides is breaking even, with a loss from $200,001 on.",
		"targets: {profit: $10k}\ncash: {available: $150k}": "What decides is the $150,000 of cash you can use, too little from $150,001 on.",
	})
	low := replaced(t, wanted, "$200k}", "$200k, low: $180k}")
	saidOf(t, low, (*Answer).Decides, map[string]string{
		"targets: {profit: $10k}":                           "What decides at your low value is your profit target of $10,000, missed from $170,001 on; at the value you expect, the same, missed from $190,001 on.",
		"targets: {profit: $10k}\ncash: {available: $172k}": "What decides at your low value is your profit target of $10,000, missed from $170,001 on; at the value you expect, the $172,000 of cash you can use, too little from $172,001 on.",
		"targets: {profit: $10k}\ncash: {available: $150k}": "What decides at either value is the $150,000 of cash you can use, too little from $150,001 on.",
	})
}

// Even as a gift: $200,000 less a fee of $250,000 loses 50,000.
func TestNoPriceWorksInASentence(t *testing.T) {
	why := func(a *Answer) string {
		_, why := a.Advice()
		return why
	}
	saidOf(t, wanted, why, map[string]string{
		"selling: {fee: $250k}":    "No price works: even with the house as a gift you would lose $50,000.00.",
		"targets: {profit: $201k}": "No price works: even with the house as a gift you would miss your profit target of $201,000 by $1,000.00.",
	})
}

// A profit has a name that says whose it is where there is a partner, and only there.
func TestAProfitSaysWhoseItIs(t *testing.T) {
	a := answered(t, wanted+"partner: {share: 50%, split: 50%}\ntargets: {margin: 11%}")
	require.Equal(t, []string{"profit of the deal", "your profit"}, []string{a.DealProfit(), a.OwnProfit()})
	// half of 40,000 is 10% of 200,000; 11% take 2,000 more
	require.Equal(t, "At the asking price you miss your margin target of 11% by $2,000.00 of your profit.", a.Asking())
	require.True(t, a.Line("owner_profit").Equal(decimal.NewFromInt(20_000)))
	alone := answered(t, wanted)
	require.Equal(t, []string{"profit", "profit"}, []string{alone.DealProfit(), alone.OwnProfit()})
}

// Of $5,600 paid before the closing a partner pays 75%: her $1,400 is less than what she has
// tied up later on.
func TestWhatThePartnerPaidBeforeTheClosingIsNotHers(t *testing.T) {
	a := answered(t, `
purchase: {price: 140k, earnest deposit: {amount: $5k}, paid before closing: {inspection: $600}, closing: {title: $1900}}
value: {after-repair value: 240k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 15%, lines: [{trade: all, amount: 3k}]}
loans: [{name: bank, price share: 95%, rate: 10%, interest on: balance, interest paid: at payoff, term: 1 year}]
partner: {share: 75%, split: 50%}
holding: {insurance: $120/month, property tax: $200/month}
selling: {agent: 6%}
cash: {available: 6k}
`)
	require.Equal(t, "1400", a.Line("owner_paid_before").String())
	require.True(t, a.Line("cash_needed").GreaterThan(a.Line("owner_paid_before")))
	require.NotContains(t, a.TiedUp(), "Before the closing it is more")
}

// A lender of the work alone pays one draw and is paid once: without a charge the annual rate
// is that of the loan, though the draw comes a month after the purchase.
func TestTheRateOfOneDrawPaidOnceIsTheLoans(t *testing.T) {
	a := answered(t, `
purchase: {price: 100k}
value: {after-repair value: 200k}
time: {renovation: 1 month, marketing: 3 months, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: all, amount: 50k}]}
selling: {agent: 5%}
loans: [{name: bank, renovation share: 100%, rate: 14.5%, interest on: balance, interest paid: at payoff, term: 1 year, draws: {lag: 0}}]
`)
	require.True(t, a.LoanAPR.Found)
	require.Equal(t, "0.145", a.LoanAPR.Value.Round(5).String())
}
