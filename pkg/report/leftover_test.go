package report

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
)

// let is a house bought wholly on credit that is rented out until the sale. By hand: 6 months
// at $2,600 of rent, less $100 of taxes and 200,000 x 8% / 12 = 1,333.33 of interest, leave
// 1,166.67 a month, the last in the sale's: 7,000.02. Every figure is invented.
const let = `
purchase: {price: $200k}
value: {after-repair value: $230k}
time: {marketing: 5 months, escrow: 1 month}
holding: {rent: {amount: $2600/month, credit: yes}, tax: $100/month}
loans:
  - name: bank
    price share: 100%
    rate: 8%
    interest on: balance
    term: 12 months
`

// What comes in beyond what goes out is no source below zero, but a use. A partner gets 35%
// of the 1,166.67 of each month, 408.33, in that of the sale too.
func TestWhatIsLeftOverIsAUse(t *testing.T) {
	for rest, want := range map[string]map[string]string{
		"":                                  {leftOver: "$7,000.02"},
		"partner: {share: 40%, split: 35%}": {leftOver: "$4,550.04", "left over, to your partner": "$2,449.98"},
	} {
		a := answered(t, let+rest)
		said := map[string]string{}
		for _, e := range append(sources(a), uses(a)...) {
			require.NotContains(t, e.figure, "-", e.label)
			said[e.label] = e.figure
		}
		require.Equal(t, "$0.00", said["your money"])
		require.Equal(t, "$215,600.00", said["sources"])
		require.Equal(t, said["sources"], said["uses"])
		for label, figure := range want {
			require.Equal(t, figure, said[label])
			require.Len(t, Ask(label).Lines, 1, "why takes %q", label)
		}
	}
	paid := answered(t, "purchase: {price: $100k}\nvalue: {after-repair value: $130k}\ntime: {escrow: 1 month}\n")
	require.True(t, paid.Line("owner_left_over").IsZero())
	require.True(t, paid.Line("owner_money").Equal(decimal.NewFromInt(100_000)))
}

// A draw that comes in the month of the sale gives back the capital of both in proportion, as
// in other months. By hand: of the 14,666.67 drawn 1,319.45 pay that month's bills, and the
// other 13,347.22 are shared by the capital of either, 7,558.34 and 22,675.
func TestADrawInTheMonthOfTheSaleIsSharedByCapital(t *testing.T) {
	const deal = `
purchase: {price: $100k, closing: {title: $2k}}
value: {after-repair value: $200k}
time: {renovation: 3 months, marketing: 2 weeks, escrow: 2 weeks}
renovation: {contingency: 10%, lines: [{trade: all, amount: $40k}]}
loans: [{name: bank, price share: 90%, renovation share: 100%, rate: 12%, interest on: balance, term: 1 year, draws: {lag: 1 month}}]
partner: {share: 75%, split: 50%}
holding: {tax: $150/month, insurance: $90/month}
selling: {agent: 6%}
`
	a := answered(t, deal)
	require.Equal(t, "4221.53", a.Line("owner_money").String())
	require.Equal(t, "12664.59", a.Line("partner_money").String())
	require.True(t, a.Line("owner_left_over").IsZero())
	require.Equal(t, a.Line("sources").String(), a.Line("uses").String())
}

// Points stand among the uses and again in what the loans cost: the page says that they are
// one, where there are any.
func TestPointsAreSaidToBeTheSameMoney(t *testing.T) {
	require.Empty(t, costsAgain(answered(t, let)))
	points := answered(t, let+"    points: 2 points\n")
	require.Equal(t, "Points and loan fees stand again below, within all loan costs at the maximum offer: the same money, taken off once.", costsAgain(points))
	gift := answered(t, let+"    points: 2 points\ntargets: {profit: $900k}\n")
	require.Equal(t, answer.Leave, gift.Verdict)
	require.Contains(t, costsAgain(gift), "part of what the loans cost")
}
