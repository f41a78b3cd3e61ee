package stress_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/solve"
	"ledgerboard/pkg/stress"
)

func plan(t testing.TB, d *deal.Deal) *stress.Plan {
	v, err := exact.Known(d.Known)
	require.NoError(t, err)
	small, err := d.Model.Summary(v.Of)
	require.NoError(t, err)
	p, err := stress.NewPlan(d, v, small)
	require.NoError(t, err)
	return p
}

func scenario(t testing.TB, name string, sets ...deal.Set) *stress.Plan {
	text, err := os.ReadFile("../../scenarios/" + name + ".yaml")
	require.NoError(t, err)
	d, found := deal.Read(name, text, sets...)
	require.Empty(t, found.Errors())
	return plan(t, d)
}

func scenarios(t testing.TB) (names []string) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		names = append(names, filepath.Base(f[:len(f)-len(".yaml")]))
	}
	return names
}

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func decs(s ...string) (out []decimal.Decimal) {
	for _, x := range s {
		out = append(out, dec(x))
	}
	return out
}

// sides are the usual grid of a plan.
func sides(t testing.TB, p *stress.Plan, late stress.Late) (across, down stress.Axis) {
	across, ok := p.MonthsLate(late, decs("0", "1", "2", "3", "6"))
	require.True(t, ok)
	return across, p.Overruns(decs("0", "0.1", "0.2", "0.4"))
}

// asExact requires each cell of a grid to be what the exact reader and the exact search
// make of it.
func asExact(t *testing.T, p *stress.Plan, across, down stress.Axis) {
	g, err := p.Grid(across, down)
	require.NoError(t, err)
	targets := solve.Targets(p.Deal.Targets)
	for i, d := range down.Values {
		for k, a := range across.Values {
			c := g.Cells[i][k]
			v, err := p.At(across, down, a, d, append([]string{"owner_profit", "cash_needed", "roi"}, targets...)...)
			require.NoError(t, err)
			at := across.Says(a) + ", " + down.Says(d)
			require.Equal(t, v[0].String(), c.Profit.String(), at)
			require.Equal(t, v[1].String(), c.Cash.String(), at)
			require.True(t, v[2].Sub(c.ROI).Abs().LessThan(dec("0.00000001")), at)
			var misses []string
			for n, x := range targets {
				if v[n+3].IsNegative() {
					misses = append(misses, x)
				}
			}
			require.Equal(t, misses, c.Misses, at)
			offer, err := p.OfferAt(across, down, a, d)
			require.NoError(t, err)
			require.Equal(t, offer.Found, c.Offer.Found, at)
			require.Equal(t, offer.Endless, c.Offer.Endless, at)
			if offer.Found && !offer.Endless {
				require.Equal(t, offer.Price.String(), c.Offer.Price.String(), at)
			}
		}
	}
}

// What a grid shows is, to the cent and the dollar, what the exact reader and the exact
// search find.
func TestGridsAreExact(t *testing.T) {
	for _, name := range scenarios(t) {
		t.Run(name, func(t *testing.T) {
			p := scenario(t, name)
			for _, late := range []stress.Late{stress.LateWorks, stress.LateSale, stress.LateBoth} {
				across, down := sides(t, p, late)
				if testing.Short() {
					across.Values, down.Values = across.Values[1:3], down.Values[1:3]
				}
				asExact(t, p, across, down)
			}
		})
	}
}

// Any two inputs can be a grid; what is known at the closing sizes the loans anew.
func TestGridsOfAnyInputs(t *testing.T) {
	p := scenario(t, "juniper-lane")
	axis := func(text string) stress.Axis {
		in, values, found := p.Deal.Vary("--across", text)
		require.Empty(t, found)
		return stress.Varying(in.Path, in, values)
	}
	for _, pair := range [][2]string{
		{"price=$190k, $205k, $212,500", "arv=$330k..$370k/2"},
		{"loans.1.rate=9%..13%/2", "sale price=$330k, $350k"},
		{"lender's value=$320k..$360k/2", "overrun=0%, 15%, 40%"},
		{"loans.1.price share=70%, 85%", "holding.property tax=$3k/year, $6k/year"},
		{"cash.available=$80k, $120k", "targets.profit=$10k, $30k"},
	} {
		asExact(t, p, axis(pair[0]), axis(pair[1]))
	}
	price := axis("price=$190k, $212,500")
	g, err := p.Grid(price, axis("overrun=15%, 20%"))
	require.NoError(t, err)
	require.Equal(t, g.Cells[0][0].Offer, g.Cells[0][1].Offer, "the maximum offer does not follow the price")
	require.True(t, g.Cells[0][0].Profit.GreaterThan(g.Cells[0][1].Profit))
	_, err = p.Grid(price, price)
	require.ErrorIs(t, err, stress.ErrSame)
	late, _ := p.Deal.InputNamed("late sale")
	_, err = p.Grid(stress.Varying("late", late, decs("0", "2000")), price)
	require.ErrorIs(t, err, stress.ErrTooLong)
}

// What leaves a deal no time is refused on a grid; on a bad day it is in the file.
func TestNoTimeIsRefused(t *testing.T) {
	d, found := deal.Read("a", []byte("purchase: {price: $200k, closing: {t: $1k}}\nvalue: {after-repair value: $300k}\ntime: {marketing: 1 month}\nselling: {c: 5%}\n"))
	require.Empty(t, found.Errors())
	p := plan(t, d)
	in, values, found := d.Vary("--across", "time.marketing=0 days, 1 month")
	require.Empty(t, found)
	price, prices, found := d.Vary("--down", "price=$190k, $210k")
	require.Empty(t, found)
	_, err := p.Grid(stress.Varying("marketing", in, values), stress.Varying("price", price, prices))
	require.ErrorIs(t, err, stress.ErrTooLong)
}

// What moves the prices of rooms asks the whole deal, not its summary.
func TestGridsOverRooms(t *testing.T) {
	p := scenario(t, "walnut-row")
	in, values, found := p.Deal.Vary("--down", "local prices.sales tax=2%, 12%")
	require.Empty(t, found)
	across, _ := sides(t, p, stress.LateWorks)
	across.Values = across.Values[:2]
	down := stress.Varying("", in, values)
	asExact(t, p, across, down)
	g, err := p.Grid(across, down)
	require.NoError(t, err)
	require.True(t, g.Cells[0][0].Profit.GreaterThan(g.Cells[1][0].Profit), "more sales tax on what the rooms take")
}

func TestMarksOfAxes(t *testing.T) {
	p := scenario(t, "juniper-lane")
	across, down := sides(t, p, stress.LateWorks)
	require.Equal(t, 0, across.Planned(p))
	require.Equal(t, "0.15", down.Values[down.Contingency(p, across)].String(), "the contingency is put among the values")
	require.Equal(t, down.Contingency(p, across), down.Planned(p))
	require.Equal(t, -1, across.Contingency(p, down))
	in, _ := p.Deal.InputNamed("renovation.contingency")
	require.Equal(t, -1, down.Contingency(p, stress.Varying("contingency", in, decs("0", "0.3"))), "it is used up elsewhere in each line")
	d, _ := deal.Read("a.yaml", []byte("purchase: {price: $80k}\nvalue: {after-repair value: $120k}\ntime: {marketing: 1 month, escrow: 1 month}\n"))
	bare := plan(t, d)
	require.Equal(t, -1, bare.Overruns(decs("0", "0.1", "0.3")).Contingency(bare, across), "there is none where there is no work")
	_, ok := p.MonthsLate("sometimes", nil)
	require.False(t, ok)
}

// Each bad day of the list is what its words say: invented figures of the demo deal.
func TestDays(t *testing.T) {
	p := scenario(t, "juniper-lane", deal.Set{Path: "bad days", Value: "{late permits and a soft market: {lead-in: +2 months, sale price: -5%, remedy: wait}}"})
	var names []string
	for _, d := range p.Days() {
		o, err := p.Run(d)
		require.NoError(t, err)
		require.Equal(t, p.Line("owner_profit").Sub(o.Lost).String(), o.Profit.String())
		require.NotEmpty(t, d.Remedy, d.Name)
		require.NotEmpty(t, d.What)
		require.LessOrEqual(t, len(d.Title), 31)
		longer := map[string]string{"late": "3", "stall": "2", "hurt": "1", "permits": "2", "contract": p.Line("marketing").Add(p.Line("escrow")).String(), "late permits and a soft market": "2"}[d.Name]
		if longer == "" {
			longer = "0"
		}
		require.Equal(t, dec(longer).Round(9).String(), o.Months.Sub(p.Line("hold_months")).Round(9).String(), d.Name)
		names = append(names, d.Name)
	}
	require.Equal(t, []string{"late permits and a soft market", "sale", "late", "overrun", "stall", "hands", "value", "draws", "hurt", "contract", "permits"}, names)
	own, err := p.Run(p.Days()[0])
	require.NoError(t, err)
	require.True(t, own.Own)
	for _, d := range p.Days()[1:] {
		if d.Name == "permits" {
			alone, err := p.Run(d)
			require.NoError(t, err)
			require.True(t, own.Lost.GreaterThan(alone.Lost))
		}
	}
}

// A bad day of the file that is called like another column of the page is told from it.
func TestABadDayCalledLikeAnother(t *testing.T) {
	p := scenario(t, "juniper-lane", deal.Set{Path: "bad days", Value: "{Sells 3 months late: {late sale: +4 months}, as planned: {overrun: +5%}, soft: {sale price: -5%}}"})
	days := p.Days()
	require.Equal(t, []string{"Sells 3 months late, of the file", "as planned, of the file", "soft"}, []string{days[0].Title, days[1].Title, days[2].Title})
}

// A deal without works, own hours or loans has none of their bad days.
func TestDaysThatCannotBe(t *testing.T) {
	d, found := deal.Read("a", []byte("purchase: {price: $200k, closing: {t: $1k}}\nvalue: {after-repair value: $300k}\ntime: {marketing: 1 month, escrow: 1 month}\nselling: {c: 5%}\n"))
	require.Empty(t, found.Errors())
	var names []string
	for _, x := range plan(t, d).Days() {
		names = append(names, x.Name)
	}
	require.Equal(t, []string{"sale", "late", "contract"}, names)
}

// Swings are ranked; each end is what the exact reader makes of the deal with that input
// alone changed, and the slope is that of small steps.
func TestRanking(t *testing.T) {
	for _, name := range scenarios(t) {
		p := scenario(t, name)
		all, err := p.Ranking()
		require.NoError(t, err)
		require.Greater(t, len(all), 8)
		require.True(t, slices.IsSortedFunc(all, func(a, b stress.Swing) int { return b.Size().Cmp(a.Size()) }))
		for i, s := range all {
			require.True(t, s.Low.LessThan(s.High), s.Label)
			require.False(t, math.IsNaN(s.Slope))
			for _, o := range all[:i] {
				require.False(t, s.Is(o.Input), s.Label)
			}
		}
	}
	p := scenario(t, "juniper-lane")
	all, err := p.Ranking()
	require.NoError(t, err)
	for _, s := range all {
		plain, _ := p.MonthsLate(stress.LateSale, decs("0"))
		v, err := p.At(plain, stress.Varying(s.Label, s.Input, nil), dec("0"), s.High, "owner_profit")
		require.NoError(t, err)
		require.Equal(t, v[0].String(), s.AtHigh.String(), s.Label)
	}
	rate := all[slices.IndexFunc(all, func(s stress.Swing) bool { return s.Path == "loans.1.rate" })]
	require.Equal(t, "1%", rate.UnitWords())
	require.Negative(t, rate.Slope)
	// Interest follows the rate in a straight line, so that a point is 1/1.5 of its swing.
	require.InDelta(t, rate.AtHigh.Sub(rate.AtLow).InexactFloat64()/1.5, rate.Slope, 1)
	value := all[slices.IndexFunc(all, func(s stress.Swing) bool { return s.Line == "after_repair_value" })]
	require.Equal(t, "$1,000", value.UnitWords())
	require.InDelta(t, value.AtHigh.Sub(value.AtLow).InexactFloat64()/value.High.Sub(value.Low).InexactFloat64()*1000, value.Slope, 1)
}

// A partner whose preferred return comes first takes all of the profit over a stretch, so that
// the owner's does not move at the plan: then one whole step is told. By hand: of a profit of
// $0 to $1,000 or so the owner has nothing.
func TestFlatRanking(t *testing.T) {
	d, found := deal.Read("flat", []byte(`purchase: {price: $100k}
value: {after-repair value: $120k}
time: {renovation: 2 months, marketing: 2 months, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: roof, work: x, amount: $19.5k}]}
partner: {share: 50%, split: 50%, preferred return: 4%}
`))
	require.Empty(t, found.Errors())
	all, err := plan(t, d).Ranking()
	require.NoError(t, err)
	value := all[slices.IndexFunc(all, func(s stress.Swing) bool { return s.Line == "after_repair_value" })]
	require.Zero(t, value.Slope)
	require.True(t, value.Step.IsPositive(), value.Step)
	require.True(t, value.Step.LessThanOrEqual(dec("500")), value.Step)
	for _, s := range all {
		require.True(t, s.Step.IsZero() || s.Slope == 0, s.Label)
	}
}

// A loan of all of the price can be no larger, and so bends there: its step is the last point
// up to that. By hand: a point of $120k at 6% a year over four months is $24.
func TestARankingAtTheMostThatMayBe(t *testing.T) {
	d, found := deal.Read("whole", []byte(`purchase: {price: $120k}
value: {after-repair value: $160k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: paint, amount: $5k}]}
loans: [{name: aunt, price share: 100%, rate: 6%, interest on: balance, interest paid: at payoff, term: 1 year}]
`))
	require.Empty(t, found.Errors())
	all, err := plan(t, d).Ranking()
	require.NoError(t, err)
	share := all[slices.IndexFunc(all, func(s stress.Swing) bool { return s.Line == "price_share" })]
	require.Zero(t, share.Slope)
	require.Equal(t, "-24", share.Step.String())
}

// Of two sides that both lead to the sale price one has no effect, whichever comes first.
func TestSidesThatCancel(t *testing.T) {
	p := scenario(t, "juniper-lane")
	side := func(name, low, high string) stress.Axis {
		in, ok := p.Deal.InputNamed(name)
		require.True(t, ok, name)
		return stress.Varying(name, in, decs(low, high))
	}
	sale, discount, value := side("sale price", "300000", "350000"), side("value.expected discount", "0", "0.05"), side("value.after-repair value", "300000", "350000")
	for _, sides := range [][2]stress.Axis{{sale, discount}, {discount, sale}, {sale, value}, {value, sale}, {sale, sale}} {
		_, err := p.Grid(sides[0], sides[1])
		require.ErrorIs(t, err, stress.ErrSame)
	}
	require.NoError(t, value.Apart(discount), "both lead to the sale price")
}

func BenchmarkGrid40by40(b *testing.B) {
	p := scenario(b, "juniper-lane")
	var months, over []decimal.Decimal
	for i := range int64(40) {
		months, over = append(months, decimal.New(15*i, -2)), append(over, decimal.New(15*i, -3))
	}
	across, _ := p.MonthsLate(stress.LateWorks, months)
	in, _ := p.Deal.InputNamed("overrun")
	for b.Loop() {
		_, err := p.Grid(across, stress.Varying("", in, over))
		require.NoError(b, err)
	}
}

func BenchmarkRanking(b *testing.B) {
	p := scenario(b, "juniper-lane")
	for b.Loop() {
		_, err := p.Ranking()
		require.NoError(b, err)
	}
}

// Heads that differ in value differ in print: in days where all are whole days.
func TestHeadsOfTimesDiffer(t *testing.T) {
	p := scenario(t, "juniper-lane")
	for text, want := range map[string][]string{
		"standstill=1 day, 2 days, 3 days":                 {"1 day", "2 days", "3 days"},
		"standstill=0, 1 day, 2 days, 3 days":              {"none", "1 day", "2 days", "3 days"},
		"time.escrow=30 days, 60 days":                     {"30 days", "60 days"},
		"time.escrow=12 months, 24 months":                 {"12 months", "24 months"},
		"time.renovation=105 days, 3 1/2 months":           {"3.45 months", "3.5 months"},
		"time.renovation=3 months..3.01 months/4":          {"3 months", "3.003 months", "3.005 months", "3.008 months", "3.01 months"},
		"time.renovation=3 1/2 months, 4 months, 5 months": {"3.5 months", "4 months", "5 months"},
	} {
		in, values, found := p.Deal.Vary("--across", text)
		require.Empty(t, found)
		a := stress.Varying(in.Path, in, values)
		var got []string
		for _, x := range a.Values {
			got = append(got, a.Says(x))
		}
		require.Equal(t, want, got, text)
	}
}

// What comes out as planned has no swing, be it one of common practice.
func TestSteadyInputsAreNotRanked(t *testing.T) {
	p := scenario(t, "juniper-lane", deal.Set{Path: "ranges", Value: "{escrow: {spread: none}, rate: {spread: none}, expected discount: {spread: none}}"})
	all, err := p.Ranking()
	require.NoError(t, err)
	require.NotEmpty(t, all)
	for _, s := range all {
		require.NotContains(t, []string{"time.escrow", "loans.1.rate", "value.expected discount"}, s.Path)
	}
}

// Without a loan a lump of cost on a bad day comes off the profit whole.
func TestALumpOfExtraWork(t *testing.T) {
	p := scenario(t, "juniper-lane", deal.Set{Path: "bad days", Value: "{water in the cellar: {extra work: $8000}}"}, deal.Set{Path: "loans", Value: "[]"})
	o, err := p.Run(p.Days()[0])
	require.NoError(t, err)
	require.Equal(t, "8000", o.Lost.String())
}

// A range of the sale price has the expected discount in it.
func TestADiscountWithinTheSalePriceIsNotRanked(t *testing.T) {
	for ranges, ranked := range map[string]bool{"{}": true, "{sale price: {low: $320k, high: $370k}}": false} {
		all, err := scenario(t, "juniper-lane", deal.Set{Path: "ranges", Value: ranges}).Ranking()
		require.NoError(t, err)
		require.Equal(t, ranked, slices.ContainsFunc(all, func(s stress.Swing) bool { return s.Path == "value.expected discount" }), ranges)
	}
}
