package cli_test

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/report"
	"ledgerboard/pkg/solve"
	"ledgerboard/pkg/why"
)

// Every scenario goes through every reader.
func TestScenariosPassThroughEveryReader(t *testing.T) {
	for _, name := range names(t) {
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(filepath.Join(scenarios, name))
			require.NoError(t, err)
			require.Contains(t, strings.ToLower(string(text)), "invented", "a scenario says that it is")
			d, found := deal.Read(name, text)
			require.NotNil(t, d, found)
			require.Contains(t, strings.ToLower(d.Notes), "invented", "its notes say so too")
			a, err := answer.Of(d, found)
			require.NoError(t, err)
			require.NoError(t, why.CheckAll(d.Model, a.Values))
			addsUp(t, a)
			bounded(t, a)
			offerIsHighest(t, a)
			sameInJSON(t, a)
			for _, style := range []report.Style{{}, {Color: true}} {
				require.NoError(t, report.Bid(io.Discard, a, style, true))
				require.NoError(t, report.Cash(io.Discard, a, style))
				for _, f := range answer.Searched {
					require.NoError(t, report.Search(io.Discard, a, f, name, style))
				}
			}
		})
	}
}

// addsUp checks that no money is made or lost on the way.
func addsUp(t *testing.T, a *answer.Answer) {
	months := func(line string) (sum decimal.Decimal) {
		for m := range a.Values.Months() + 1 {
			sum = sum.Add(a.Month(line, m))
		}
		return sum
	}
	same := func(want, got decimal.Decimal, what string) {
		require.Equal(t, want.StringFixed(2), got.StringFixed(2), what)
		require.True(t, got.Equal(got.Round(2)), "%s is in cents", what)
	}
	profit := a.Line("profit")
	same(profit, months("net_cash"), "net cash comes to the profit")
	same(profit, a.Line("profit_by_parts"), "so do the totals")
	same(profit, a.Line("owner_profit").Add(a.Line("partner_profit")), "owner and partner share it whole")
	same(a.Line("sources"), a.Line("uses"), "sources meet uses")
	same(a.Line("spend"), months("works_paid"), "the work is paid for")
	same(profit, a.Month("cumulative", a.Values.Months()), "the running total ends at it")
	var bridge decimal.Decimal
	for _, s := range a.Bridge {
		bridge = bridge.Add(s.Amount)
	}
	if len(a.Bridge) > 0 {
		same(a.Offer.Price, bridge, "the bridge ends at the maximum offer")
	}
	for _, l := range a.Loans() {
		balance := a.Values.In(a.Model.Find(l, "balance"), a.Values.Months())
		require.True(t, balance.IsZero(), "%s is paid off", l.Label)
	}
	deepest := decimal.Zero
	for m := range a.Values.Months() + 1 {
		deepest = decimal.Min(deepest, a.Month("low_point", m))
	}
	same(deepest.Neg(), a.Line("cash_needed"), "cash needed is the deepest low point")
}

// bounded checks that bounds over ranges of the price hold the exact figures at
// the price asked.
func bounded(t *testing.T, a *answer.Answer) {
	price := a.Model.Find(a.Model.Root, "price")
	watched := []string{"profit", "owner_profit", "profit_to_spare", "margin_to_spare", "roi_to_spare", "cash_to_spare"}
	for _, line := range watched {
		c := a.Model.Find(a.Model.Root, line)
		at := a.Values.Of(price)
		p, err := bound.NewPlan(a.Model, bound.Axis{Cell: price, Most: at.Mul(decimal.NewFromInt(2))}, nil, c)
		require.NoError(t, err)
		for _, width := range []int64{0, 100, 10_000, 100_000} {
			w := decimal.NewFromInt(width)
			b, err := p.Over(at.Sub(w), at.Add(w))
			require.NoError(t, err)
			low, high := b[0].Bounds()
			x := a.Values.Of(c).InexactFloat64()
			require.LessOrEqual(t, low-bound.Noise, x, "%s, within %d", line, width)
			require.GreaterOrEqual(t, high+bound.Noise, x, "%s, within %d", line, width)
		}
	}
}

// offerIsHighest checks the maximum offer with the exact reader: at it every
// target holds, and at each of many prices above it one does not.
func offerIsHighest(t *testing.T, a *answer.Answer) {
	if !a.Offer.Found {
		return
	}
	holds := func(price decimal.Decimal) bool {
		v, err := exact.NewPlan(a.Model).Evaluate(exact.Change{Cell: a.Model.Find(a.Model.Root, "price"), Value: price})
		require.NoError(t, err)
		for _, line := range solve.Targets(a.Deal.Targets) {
			if v.Of(a.Model.Find(a.Model.Root, line)).IsNegative() {
				return false
			}
		}
		return true
	}
	require.True(t, holds(a.Offer.Price))
	for above := int64(1); above < 300_000; above = above*3/2 + 1 {
		require.False(t, holds(a.Offer.Price.Add(decimal.NewFromInt(above))), "%d dollars above", above)
	}
}

// sameInJSON checks that the JSON says the exact figures, as strings.
func sameInJSON(t *testing.T, a *answer.Answer) {
	var b bytes.Buffer
	require.NoError(t, report.JSON(&b, a))
	var o struct {
		Results map[string]any `json:"results"`
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &o))
	for _, line := range []string{"profit", "cash_needed", "sale_price", "budget", "loan_at_closing", "tax_set_aside"} {
		require.Equal(t, a.Line(line).String(), o.Results[line], line)
	}
	if a.Offer.Found {
		require.Equal(t, a.Offer.Price.String(), o.Results["max_offer"])
	}
	net := o.Results["months"].(map[string]any)["net_cash"].([]any)
	require.Len(t, net, a.Values.Months()+1)
	for m, x := range net {
		require.Equal(t, a.Month("net_cash", m).String(), x, "month %d", m)
	}
}
