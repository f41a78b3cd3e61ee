package published

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// progress pays 90 percent of the value in place a month, and the rest when the
// work is complete: a contract of 100,000, of which 40, 75 and 100 percent are in
// place at the end of months 1, 2 and 3.
const progress = `
purchase: {price: $200,000}
value: {after-repair value: $400,000}
time: {renovation: 3 months, marketing: 2 months}
renovation:
  contingency: 0%
  spending: [$40k, $35k, $25k]
  lines: [{trade: all, work: contract, amount: $100000}]
loans:
- renovation share: 100%
  rate: 0%
  draws: {lag: 0, retainage: 10%}
`

func TestRetainage(t *testing.T) {
	type drawn struct {
		origin
		Tests []struct {
			Complete json.Number `json:"pct_complete"`
			Prior    json.Number `json:"prior_net"`
			Net      json.Number `json:"net_draw"`
			Retained json.Number `json:"retainage"`
			Origin   string
		}
	}
	c := published[drawn](t, "draws-and-offers.json")["LEND-1"]
	require.Len(t, c.Tests, 3)
	b := read(t, progress)
	in := func(name string, month int) decimal.Decimal { return b.In(b.Model.Find(b.loan(), name), month) }
	before, retained := dec("0"), dec("0")
	for i, v := range c.Tests {
		t.Run(fmt.Sprintf("%s, %s%% complete, %s", c.name(), v.Complete, v.Origin), func(t *testing.T) {
			month := i + 1
			require.True(t, b.In(b.find("spent_share"), month).Shift(2).Equal(dec(v.Complete.String())))
			cents(t, v.Prior.String(), before)
			cents(t, v.Net.String(), in("draw", month))
			before = before.Add(in("draw", month))
			retained = retained.Add(in("draw_retained", month)).Sub(in("released", month))
			cents(t, v.Retained.String(), retained)
		})
	}
	cents(t, "100000", before, "nothing of the contract is left unpaid")
}

type construction struct {
	origin
	Expected map[string]json.Number
}

// Part I.A takes half the commitment as outstanding for the whole construction
// period. That is an estimate and no schedule of draws, so the deal borrows half
// the commitment at the start; interest is paid at payoff.
const halfOutstanding = `
purchase: {price: $40,000}
value: {after-repair value: $90,000}
time: {renovation: 5 months}
loans:
- fixed amount: $25,000
  rate: 10.5%
  interest on: balance
  interest paid: at payoff
  fees: {prepaid finance charge: $1000}
`

// Part I.B is the deal as it is: the whole commitment is for the work, and
// interest runs on all of it from the start.
const wholeCommitment = `
purchase: {price: $40,000}
value: {after-repair value: $120,000}
time: {renovation: 5 months}
renovation:
  contingency: 0%
  lines: [{trade: all, work: all, amount: $50000}]
loans:
- renovation share: 100%
  rate: 10.5%
  interest on: commitment
  draws: {lag: 0}
  fees: {prepaid finance charge: $1000}
`

// The estimated annual percentage rate of the appendix is left to the tests of
// cashflow.APR: it takes the five months as one unit period, where a deal's rate
// is compounded monthly.
func TestConstructionInterest(t *testing.T) {
	cases := published[construction](t, "draws-and-offers.json")
	for id, file := range map[string]string{"D-I-A": halfOutstanding, "D-I-B": wholeCommitment} {
		c := cases[id]
		t.Run(c.name(), func(t *testing.T) {
			b := read(t, file)
			cents(t, c.Expected["estimated_interest"].String(), b.of(b.loan(), "interest"))
			cents(t, c.Expected["finance_charge"].String(), b.of(b.loan(), "cost"))
		})
	}
	t.Run("drawn as the work goes, by hand", func(t *testing.T) {
		// 10,000 a month in arrears is 10, 20, 30 and 40 thousand over the second to
		// the fifth month: 100,000 x 10.5% / 12. The estimate of part I.A is higher.
		b := read(t, wholeCommitment, set("loans.1.interest on", "balance"))
		cents(t, "875", b.of(b.loan(), "interest"))
	})
}
