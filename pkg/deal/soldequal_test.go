package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

const unvalued = "purchase: {price: $200k, date: 2026-03-02, closing: {title: $900}}\ntime: {renovation: 3 months, marketing: 5 weeks, escrow: 1 month}\n"

// drawnSales is a deal with invented sales drawn at random, with amounts given for some
// things and others left to pairs or, with many sales, to regression.
func drawnSales(t *rapid.T, n int) string {
	var b strings.Builder
	draw := func(words string, low, high int) int { return rapid.IntRange(low, high).Draw(t, words) }
	b.WriteString(unvalued)
	fmt.Fprintf(&b, "house: {living area: %d sq ft, lot: %d sq ft, bedrooms: %d, baths: %g, year built: %d, condition: %d, garage: %d, has: [%s]}\n",
		draw("area", 900, 2200), draw("lot", 3000, 20000), draw("beds", 2, 5), float64(draw("baths", 2, 6))/2, draw("built", 1930, 2010), draw("condition", 1, 5), draw("cars", 0, 3),
		rapid.SampledFrom([]string{"", "pool"}).Draw(t, "has"))
	b.WriteString("comps:\n  own lines: {pool: $12,345, \"busy street\": -$4,321}\n  amounts: {")
	var given []string
	for _, a := range [][2]string{{"market a month", "0.37%"}, {"square foot", "$87.65"}, {"square foot of lot", "$1.15"}, {"bedroom", "$2,500.50"}, {"bath", "$8,333"}, {"year newer", "$312.35"}, {"step of condition", "$9,999"}, {"car of garage", "$5,432.10"}} {
		if rapid.Bool().Draw(t, a[0]) {
			given = append(given, a[0]+": "+a[1])
		}
	}
	b.WriteString(strings.Join(given, ", ") + "}\n  sold:\n")
	extras := rapid.SampledFrom([]string{"", ", has: [pool]", ", has: [busy street, pool]", ", concessions: $3,500"})
	var rest string
	var price, baths int
	for i := range n {
		if i > 0 && rapid.Bool().Draw(t, "twin") { // of the one before but for a bath, which pairs then tell
			price, baths = price+9000, baths+2
		} else {
			price, baths = draw("price", 200_000, 420_000), draw("baths", 2, 6)
			rest = fmt.Sprintf("sold: 2025-%02d-%02d, living area: %d sq ft, lot: %d sq ft, bedrooms: %d, year built: %d, condition: %d, garage: %d%s",
				draw("month", 1, 12), draw("day", 1, 28), draw("area", 900, 2200), draw("lot", 3000, 20000), draw("beds", 2, 5),
				draw("built", 1930, 2010), draw("condition", 1, 5), draw("cars", 0, 3), extras.Draw(t, "extra"))
		}
		fmt.Fprintf(&b, "    %d Elm St: {%s, price: $%d, baths: %g}\n", i, rest, price, float64(baths)/2)
	}
	return b.String()
}

// What the lines of the model make of the sales is what package comps makes of them, to
// the dollar: each adjustment, each adjusted price, the value and its range. The
// adjusted prices re-add to the value by weights that sum to one.
func TestLinesEqualTheGridOfComps(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.SampledFrom([]int{1, 2, 3, 7, 12}).Draw(t, "sales")
		d, found := deal.Read("drawn.yaml", []byte(drawnSales(t, n)))
		if d == nil {
			require.Equal(t, "comps-no-price", found.Errors()[0].Code, "%v", found)
			return
		}
		requireLines(t, d, seen)
	})
	require.Positive(t, seen["given"])
	require.Positive(t, seen["pairs"])
}

// With enough sales a regression gives the amounts, which the lines take as they are.
func TestLinesTakeWhatARegressionGives(t *testing.T) {
	seen := map[string]int{}
	text := rapid.Custom(func(t *rapid.T) string { return drawnSales(t, 140) }).Example(1)
	d, found := deal.Read("drawn.yaml", []byte(text+"  take: 9\n"))
	require.NotNil(t, d, "%v", found)
	require.Len(t, d.Comps.Members, 9)
	requireLines(t, d, seen)
	require.Positive(t, seen["regression"])
}

func requireLines(t require.TestingT, d *deal.Deal, seen map[string]int) {
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	of := func(line string) decimal.Decimal { return v.Of(d.Model.Find(d.Root, line)) }
	c := d.Comps
	for _, r := range append([]comps.Rate{c.Value.Trend}, c.Value.Rates...) {
		seen[r.From]++
	}
	sum, mean := decimal.Zero, decimal.Zero
	for i, row := range c.Value.Rows {
		m := c.Members[i]
		line := func(name string) decimal.Decimal { return v.Of(d.Model.Find(m, name)) }
		net, by := decimal.Zero, map[comps.Line]decimal.Decimal{}
		for _, l := range row.Lines {
			by[l.Line] = by[l.Line].Add(l.Amount)
			net = net.Add(l.Amount)
		}
		for l, amount := range by {
			got := line(deal.AdjustmentOf(l))
			if l == comps.Concessions {
				got = got.Neg()
			}
			require.Equal(t, amount.String(), got.String(), "%s of %s", l, row.Name())
		}
		require.Equal(t, net.String(), line("net_adjustment").String(), "and no other line has anything")
		require.Equal(t, row.Adjusted.String(), line("adjusted_price").String())
		require.InDelta(t, row.Net, line("net_share").InexactFloat64(), 1e-9)
		require.InDelta(t, row.Gross, line("gross_share").InexactFloat64(), 1e-9)
		require.InDelta(t, row.LeftOut, line("left_out").InexactFloat64(), 1e-6)
		sum, mean = sum.Add(line("weight")), mean.Add(line("weight").Mul(line("adjusted_price")))
	}
	require.Equal(t, "1", sum.String(), "the weights sum to one")
	require.True(t, mean.Sub(of("value_by_comps")).Abs().LessThanOrEqual(decimal.New(51, -2)))
	rng, ok := d.ValueRange()
	require.True(t, ok)
	require.Equal(t, []string{c.Value.Low.String(), c.Value.Likely.String(), c.Value.High.String()}, []string{rng.Low.String(), rng.Likely.String(), rng.High.String()})
	require.Equal(t, []string{rng.Low.String(), rng.Likely.String(), rng.High.String()}, []string{of("comps_low").String(), of("value_by_comps").String(), of("comps_high").String()})
	require.Equal(t, rng.Likely.String(), of("after_repair_value").String(), "the deal states none")
	require.Equal(t, rng.Low.String(), of("low_value").String())
}
