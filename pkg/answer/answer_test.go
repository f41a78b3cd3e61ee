package answer

import (
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

func answered(t *testing.T, text string) *Answer {
	t.Helper()
	d, found := deal.Read("house.yaml", []byte(text))
	require.NotNil(t, d, found.Error())
	a, err := Of(d, found)
	require.NoError(t, err)
	return a
}

// A general line that runs over the hold makes the budget, and so the loan, grow
// with every month more; the loan that is closed does not.
func TestLoansDoNotMoveWhenTheSaleIsLate(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k}
value: {after-repair value: $330k}
time: {lead-in: 1 month, renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation:
  contingency: 10%
  lines: [{trade: all, work: works, amount: $50k}]
  general: {toilet: {amount: $200/month, during: hold}}
loans: [{name: loan, price share: 85%, renovation share: 100%, rate: 11%, interest on: balance}]
`)
	found := a.BreakEven.Months
	require.True(t, found.Found)
	held, err := solve.Held(a.Model)
	require.NoError(t, err)
	profit := a.Model.Find(a.Model.Root, "owner_profit")
	at := func(months decimal.Decimal, held ...exact.Change) decimal.Decimal {
		v, err := exact.NewPlan(a.Model, profit).Evaluate(append(held, a.change("late_sale", months))...)
		require.NoError(t, err)
		return v.Of(profit)
	}
	tenth := decimal.New(1, -1)
	require.False(t, at(found.Value, held...).IsNegative())
	require.True(t, at(found.Value.Add(tenth), held...).IsNegative())
	require.False(t, at(found.Value, held...).Equal(at(found.Value)), "the loan would move if it were not held")
}

// By hand: 0.94 S - 255,000 - 6,600 - 8% x 206,600 = 0 at S = 295,880.85, so 295,881. The
// loan is cut to what the price and a closing fee of 2% of the planned sale leave, and
// that fee is paid by then.
func TestLoansDoNotMoveWithTheSalePrice(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k, closing: {odd fee: 2% of sale price}}
value: {after-repair value: $330k}
time: {marketing: 6 months}
renovation: {contingency: 0%, lines: [{trade: all, work: works, amount: $55k}]}
loans: [{name: loan, fixed amount: $230k, rate: 12%, points: 2%, interest on: balance}]
selling: {agents: 6%}
`)
	require.Equal(t, "206600", a.Line("loan_at_closing").String())
	require.Equal(t, "295881", a.BreakEven.SalePrice.Value.String())
}

// By hand: what is paid at the closing is 1% of the 42,000 that the plan spends, and of the
// loan's fees 1% of the planned sale; a month more takes one more of the container alone.
// So the sale must bring 200,000 + 42,000 + 420 + 3,300.
func TestWhatTheClosingTookDoesNotMoveWithWorkAndSale(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k, closing: {survey: 1% of base cost}}
value: {after-repair value: $330k}
time: {renovation: 4 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: all, work: works, amount: $40k}], general: {container: $500/month}}
loans: [{name: loan, price share: 50%, rate: 0%, interest on: balance, fees: {brokerage: 1% of sale price}}]
`)
	require.Equal(t, "500", a.Stalled.Month.String())
	require.Equal(t, "245720", a.BreakEven.SalePrice.Value.String())
}

// A base of nothing is "up to $50,000", so the fixed charge of that slab is due.
func TestABaseOfNothingFallsInTheFirstSlab(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k}
value: {after-repair value: $330k}
time: {marketing: 6 months}
loans: [{name: loan, price share: 50%, fees: {inspection: {of: holdback, slabs: {up to $50k: $250, above: $900}}}}]
`)
	require.Equal(t, "250", a.Line("loan_fees").String())
}

// 133 + 108 + 42 + 82 days are a year; 67 + 123 + 120 + 55 are too.
func TestDaysThatMakeAYearAreTwelveMonths(t *testing.T) {
	for _, days := range [][4]string{{"133", "108", "42", "82"}, {"67", "123", "120", "55"}, {"100", "265", "300", "65"}} {
		a := answered(t, "purchase: {price: $200k}\nvalue: {after-repair value: $330k}\ntime: {lead-in: "+days[0]+" days, renovation: "+days[1]+
			" days, marketing: "+days[2]+" days, escrow: "+days[3]+" days}\n"+
			"loans: [{name: loan, price share: 85%, rate: 11%, interest on: balance, amortising: 360 months}]\n")
		hold := a.Line("hold_months")
		require.True(t, hold.IsInteger(), hold.String())
		require.True(t, a.LoanAPR.Found, a.LoanAPR.Why)
		last := a.Values.In(a.Model.Find(a.Loans()[0], "principal_paid"), int(hold.IntPart()))
		require.True(t, last.IsPositive(), "a whole month pays principal")
	}
}

// By hand: the sale settles a fee of $6,000 and the loan's $100,000 out of $100,000, and
// the oil that the buyer takes over, $1,000, is counted in the same closing; so $5,000
// is brought. With the $1,000 of the purchase and the interest of $1,000 it makes $7,000.
func TestProrationsCountInTheSalesClosing(t *testing.T) {
	a := answered(t, `
purchase: {price: $100k, prorations: {heating oil: $1000}}
value: {after-repair value: $100k}
time: {escrow: 1 month}
renovation: {contingency: 0%}
selling: {agent: 6%}
loans: [{name: one, price share: 100%, rate: 12%, interest on: balance, term: 12 months}]
`)
	require.Equal(t, "7000", a.Line("cash_needed").String())
	require.Equal(t, "5000", a.Month("short_at_sale", 1).String())
}

// Under $400 of net earnings nothing is due, the additional Medicare tax neither
// (Internal Revenue Code 1402(b)(2), from memory). By hand: 20% of $350 is $70.
func TestNoTaxOnEarningsUnderTheLeast(t *testing.T) {
	a := answered(t, `
purchase: {price: $100k, date: 2026-03-01}
value: {after-repair value: $100500}
time: {escrow: 6 months}
renovation: {contingency: 0%}
selling: {x: $150}
tax: {income rate: 20%, filing: single, other wages: $260k}
`)
	require.Equal(t, "70", a.Line("tax_set_aside").String())
}

func TestAPhaseWithoutLengthCostsNothing(t *testing.T) {
	a := answered(t, `
purchase: {price: $100k}
value: {after-repair value: $150k}
time: {renovation: 2 months, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: all, amount: $9k}]}
holding: {staging: {amount: $400/month, during: marketing, at least: $1200}}
`)
	require.Equal(t, "0", a.Line("holding_cost").String())
}

func replaced(t *testing.T, text, old, new string) string {
	t.Helper()
	require.Contains(t, text, old)
	return strings.Replace(text, old, new, 1)
}

// What moves money and is left out is said, even where the default is nothing.
func TestDefaultsOfNothingThatMoveMoneyAreAssumed(t *testing.T) {
	assumed := func(a *Answer) (out []string) {
		for _, c := range a.Assumed {
			out = append(out, c.Line.ID())
		}
		return out
	}
	said := []string{"lead_in", "expected_discount", "loan.retainage_share"}
	require.Subset(t, assumed(answered(t, shaken)), said)
	stated := replaced(t, shaken, "time: {", "time: {lead-in: 1 week, ")
	stated = replaced(t, stated, "value: {", "value: {expected discount: 0%, ")
	stated = replaced(t, stated, "    term: 7 months\n", "    term: 7 months\n    draws: {retainage: 5%}\n")
	for _, line := range said {
		require.NotContains(t, assumed(answered(t, stated)), line)
	}
}

// A room that the scope does not name takes its first option, which is said; one without
// options has no choice to tell of.
func TestAnOptionTakenAsTheFirstIsAssumed(t *testing.T) {
	text := shaken + "rooms:\n  den: {size: 10' x 12', options: {full gut: {work: {paint walls: hired}}, light: {work: {paint ceiling: hired}}}}\n  hall: {size: 4' x 9', work: {paint walls: hired}}\n"
	first := `den: "full gut", the first option it has`
	require.Contains(t, answered(t, text).Assumptions(), first)
	for _, scope := range []string{"full gut", "{den: full gut}", "{all rooms: light}"} {
		require.NotContains(t, strings.Join(answered(t, text+"scope: "+scope+"\n").Assumptions(), "; "), "first option it")
	}
	require.NotContains(t, strings.Join(answered(t, text).Assumptions(), "; "), "hall as")
}

// That materials bear no sales tax is assumed where any are bought and the file does not say it.
func TestNoSalesTaxIsAssumedWhereMaterialIsBought(t *testing.T) {
	assumed := func(text string) bool {
		return slices.ContainsFunc(answered(t, text).Assumed, func(c *model.Cell) bool { return c.Line.ID() == "sales_tax" })
	}
	painted := shaken + "rooms: {den: {size: 10' x 12', work: {paint walls: hired}}}\n"
	require.False(t, assumed(shaken))
	require.True(t, assumed(painted))
	require.False(t, assumed(painted+"local prices: {sales tax: 0%}\n"))
}

// Where cash holds the offer back, what is said of the other targets is what the deal
// comes to without a word on cash.
func TestCashAsideIsTheDealWithoutCash(t *testing.T) {
	text := `
purchase: {price: $200k, closing: {title: $1,500}}
value: {after-repair value: $330k, low: $310k}
time: {lead-in: 1 month, renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: all, work: works, amount: $40k}]}
loans: [{name: loan, price share: 85%, renovation share: 100%, rate: 11%, interest on: balance}]
selling: {agents: 6%}
targets: {profit: $15k}
`
	short, free := answered(t, text+"cash: {available: $45k}\n"), answered(t, text)
	require.Equal(t, "cash_to_spare", short.Offer.Binding)
	require.NotNil(t, short.Aside)
	require.Equal(t, free.Offer, short.Aside.Offer)
	require.Equal(t, free.OfferLow, short.Aside.OfferLow)
	require.True(t, short.Offer.Price.LessThan(short.Aside.Offer.Price))
	steps := short.Line("price").Sub(short.Offer.Price).Shift(-3)
	require.True(t, steps.IsPositive())
	lower, err := short.At(short.Offer.Price, short.Line("after_repair_value"))
	require.NoError(t, err)
	freed := short.Line("cash_needed").Sub(lower.Line("cash_needed"))
	require.Equal(t, freed.DivRound(steps, 2).String(), short.Aside.Frees.String(), "on average on the way down")
	require.Nil(t, free.Aside)
	require.Empty(t, free.CashAside())
	require.Contains(t, short.CashAside(), dollars(free.Offer.Price))
}

// A lender of the remainder pays what a capped one leaves of each month's work.
func TestALenderOfTheRemainderPaysWhatACapLeaves(t *testing.T) {
	a := answered(t, `
purchase: {price: $100k}
value: {after-repair value: $200k}
time: {renovation: 4 months, marketing: 2 months}
renovation: {contingency: 10%, lines: [{trade: all, work: works, amount: $40k}]}
loans:
  - {name: a, price share: 10%, renovation share: 100%, cap on after-repair value: 10%, rate: 10%}
  - {name: b, of remainder: yes, renovation share: 50%, rate: 10%}
`)
	for m, want := range [][2]string{{"0", "0"}, {"0", "0"}, {"11000", "0"}, {"9000", "1000"}, {"0", "5500"}, {"0", "5500"}, {"0", "0"}} {
		for i, l := range a.Loans() {
			require.Equal(t, want[i], a.Values.In(a.Model.Find(l, "draw"), m).String(), "%s in month %d", l.Label, m)
		}
	}
}

// Where a partner's preferred return takes all of a small surplus, the owner's profit
// lies flat at 0 over thousands of dollars; a step of a fee beyond still counts.
func TestABreakEvenBehindAFlatStretch(t *testing.T) {
	for _, value := range []string{"$60,000", "$61,000", "$61,900"} {
		a := answered(t, `
purchase: {price: $60k}
value: {after-repair value: `+value+`}
time: {marketing: 8 months}
partner: {share: 60%, preferred return: 12%}
holding: {levy: 2% of sale price}
selling: {stamp: {slabs: {up to $63,000: 1%, above: 4%}}}
`)
		require.Equal(t, solve.BreakEven{Found: true, Value: decimal.NewFromInt(63830)}, a.BreakEven.SalePrice)
		require.Empty(t, a.Unproved())
	}
}

// Where the owner pays her part first, lenders pay all that comes after: each holdback is
// drawn in full, whatever another lender was cut by.
func TestAfterTheOwnersPartLendersPayAll(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k}
value: {after-repair value: $330k}
time: {renovation: 4 months, marketing: 2 months, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: paint, work: all, amount: $40k}]}
loans:
  - {name: first, price share: 80%, renovation share: 50%, interest on: balance, rate: 10%, draws: {lag: 0 months, owner first: yes}}
  - {name: second, of remainder: yes, renovation share: 100%, interest on: balance, cap on after-repair value: 50%, rate: 12%}
`)
	require.Equal(t, "20000", a.Of(a.Loans()[0], "draws").String())
	require.Equal(t, "75416.66", a.Line("cash_needed").String())
	require.Equal(t, "80083.34", a.Line("profit").String())
}

// A loan that level payments have cleared is neither extended nor due; the last
// payment, 34,002.22 here, clears it to the cent.
func TestAClearedLoanIsNotExtended(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k}
value: {after-repair value: $330k}
time: {renovation: 2 months, marketing: 4 months, escrow: 1 month}
renovation: {contingency: 10%, lines: [{trade: paint, work: all, amount: $20k}]}
loans: [{name: first, price share: 50%, interest on: balance, rate: 12%, amortising: 3 months, term: 3 months, extension: {each: 1 month, fee: 1%}}]
`)
	require.Equal(t, "33665.56", a.Values.In(a.Model.Find(a.Loans()[0], "principal_paid"), 3).String())
	require.True(t, a.Of(a.Loans()[0], "extension_fees").IsZero())
	require.Empty(t, a.Terms)
}

// Rent comes in once the month's bills are paid, so it does not raise the low point of its own
// month. By hand: $150,000 and $1,000 at the closing, then $3,000 of bills and $3,000 of rent
// each month, and the works of $22,000 over the months 2 to 4, a third in each.
func TestRentComesInAfterTheBills(t *testing.T) {
	a := answered(t, `purchase: {price: $150k, closing: {title: $1,000}}
value: {after-repair value: $250k}
time: {lead-in: 1 month, renovation: 3 months, marketing: 2 months, escrow: 1 month}
renovation: {contingency: 10%, spending: straight, lines: [{trade: paint, work: all, amount: $20k}]}
holding: {rent: {amount: $3,000/month, credit: yes}, utilities: $3,000/month}
`)
	require.Equal(t, "176000", a.Line("cash_needed").String(), "151,000 and 22,000, and the bills of month 4")
	require.Equal(t, "4", a.Line("cash_needed_month").String())
	require.Equal(t, "21000", a.Line("holding_until_sale").String(), "seven months")
	require.Equal(t, "21000", a.Line("received_until_sale").String())
	require.True(t, a.Line("holding_cost").IsZero())
	require.Equal(t, a.Line("uses").String(), a.Line("sources").String())
}

// Where a tax grows with the value and cash is what decides, the offer at the low value is the
// higher one: the answer leads with the other. By hand: of $126,000, the title takes $1,500,
// the work $23,000, four months of insurance $400 and the tax 1.2% of $190,000, $2,280, or of
// $160,000, $1,920; $98,820 or $99,180 are left for the price.
func TestTheLowerOfBothOffersLeads(t *testing.T) {
	const text = `purchase: {price: 100k, closing: {title: 1500}}
value: {after-repair value: 190k, low: 160k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 15%, lines: [{trade: paint, work: all, amount: 20k}]}
holding: {property tax: {amount: 1.2%, of: after-repair value}, insurance: $100/month}
selling: {agent: 6%}
cash: {available: 126k}
`
	a := answered(t, text)
	require.True(t, a.LikelyBinds())
	require.Equal(t, "99180", a.OfferLow.Price.String())
	require.True(t, decimal.NewFromInt(98_820).Equal(a.DontGoAbove().(decimal.Decimal)))
	usual := answered(t, strings.Replace(text, "of: after-repair value", "of: price", 1))
	require.False(t, usual.LikelyBinds())
	require.True(t, usual.OfferLow.Price.Equal(usual.DontGoAbove().(decimal.Decimal)))
}
