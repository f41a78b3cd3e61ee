package answer

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// shaken is a deal with a contingency of 15%, a loan that pays all of the work and a
// stated purse. Every figure is invented.
const shaken = `
purchase: {price: $200k}
value: {after-repair value: $330k}
time: {renovation: 4 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 15%, lines: [{trade: all, work: works, amount: $40k}]}
loans:
  - name: bank
    price share: 80%
    renovation share: 100%
    rate: 12%
    interest on: balance
    term: 7 months
    extension: {each: 3 months, fee: 1%}
targets: {profit: $20k}
`

func (a *Answer) named(t *testing.T, name string) (int, Shake) {
	for i, s := range a.Shakes {
		if s.Name == name {
			return i, s
		}
	}
	t.Fatalf("no shake %s", name)
	return 0, Shake{}
}

// 15% are planned, so 20 points more are 35% over the bids: 35% x 40,000 - 15% x
// 40,000 = 8,000. The draws come sooner, by 2,000, 4,000 and 6,000 at the ends of
// months 2 to 4, which at 1% a month bears 120 of interest.
func TestAnOverrunIsToldOverTheBids(t *testing.T) {
	a := answered(t, shaken)
	_, s := a.named(t, "overrun")
	require.Equal(t, "0.35", s.By.String())
	require.Equal(t, "8120", s.Lost.String())
}

// The break-even is on the same scale: beyond the overrun that it names, and only
// there, the mishap is a loss.
func TestTheOverrunOfAMishapCanBeHeldAgainstTheBreakEven(t *testing.T) {
	lost := 0
	for _, value := range []string{"262k", "264k", "266k", "268k", "270k", "272k", "290k"} {
		a := answered(t, replaced(t, shaken, "value: $330k", "value: $"+value))
		_, s := a.named(t, "overrun")
		limit := a.BreakEven.Overrun
		if limit.Found {
			require.Equal(t, s.By.GreaterThan(limit.Value), s.Profit.IsNegative(), "%s: %s over the bids, %s allowed", value, s.By, limit.Value)
		}
		if limit.Found && s.Profit.IsNegative() {
			lost++
		}
	}
	require.Positive(t, lost)
}

// Draws that come a month later cost no profit to speak of but leave the purse short,
// which nothing else does; that is told although four mishaps do more harm.
func TestTheWorstMissOfEachTargetIsTold(t *testing.T) {
	a := answered(t, shaken)
	purse, profit := a.Line("cash_needed").Add(decimal.NewFromInt(10_000)), a.Line("owner_profit").Sub(decimal.NewFromInt(1000))
	near := replaced(t, shaken, "profit: $20k", "profit: $"+profit.StringFixed(2))
	a = answered(t, near+"cash: {available: $"+purse.StringFixed(2)+"}\n")
	require.Empty(t, a.Missed())
	for _, target := range []string{"profit_to_spare", "cash_to_spare"} {
		worst := decimal.Zero
		for _, s := range a.Shakes {
			worst = decimal.Max(worst, s.Missed(target))
		}
		require.True(t, worst.IsPositive(), target)
		told := decimal.Zero
		for _, s := range a.Shakes[:a.Telling] {
			told = decimal.Max(told, s.Missed(target))
		}
		require.True(t, worst.Equal(told), "%s: %s at worst, %s told", target, worst, told)
	}
	at, late := a.named(t, "draws")
	require.Less(t, at, a.Telling)
	require.True(t, late.Short.IsPositive())
	require.Equal(t, usualTelling, a.Telling)
}

// The hold is 6 months; the term of 7 is one month off, that of 9 three.
func TestATermNearTheSaleIsNamed(t *testing.T) {
	a := answered(t, shaken)
	require.Len(t, a.Terms, 1)
	x := a.Terms[0]
	require.Equal(t, "bank", x.Loan)
	require.Equal(t, "1", x.Spare.String())
	// 1% of the commitment: 80% x 200,000 + 46,000 = 206,000.
	require.Equal(t, "2060", x.Fee.String())
	require.True(t, x.Paid.IsZero())
	require.Empty(t, answered(t, replaced(t, shaken, "term: 7 months", "term: 9 months")).Terms)

	early := answered(t, replaced(t, shaken, "term: 7 months", "term: 5 months")).Terms
	require.Len(t, early, 1)
	require.Equal(t, "-1", early[0].Spare.String())
	require.Equal(t, "2060", early[0].Paid.String())
}

// The loan would be due while the work goes on, which extensions hide.
func TestATermBeforeTheWorkIsDoneIsDoubted(t *testing.T) {
	codes := func(a *Answer) (out []string) {
		for _, d := range a.Warnings {
			out = append(out, d.Code)
		}
		return out
	}
	require.NotContains(t, codes(answered(t, shaken)), "term-before-works")
	require.Contains(t, codes(answered(t, replaced(t, shaken, "term: 7 months", "term: 12 weeks"))), "term-before-works")
}
