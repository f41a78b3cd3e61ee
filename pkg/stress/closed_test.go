package stress_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/stress"
)

// Work that comes out dearer is paid from the owner's pocket: the lender counted the budget of
// the plan. A contingency or a price is known before, and moves the loans.
func TestWorkComesOutAfterTheClosing(t *testing.T) {
	p := scenario(t, "juniper-lane")
	lent := func(sets ...string) (closing, works string) {
		axes := []stress.Axis{}
		for _, set := range sets {
			in, values, found := p.Deal.Vary("--across", set)
			require.Empty(t, found)
			axes = append(axes, stress.Varying(set, in, values))
		}
		if len(axes) == 1 {
			plain, ok := p.MonthsLate(stress.LateSale, decs("0"))
			require.True(t, ok)
			axes = append(axes, plain)
		}
		v, err := p.At(axes[0], axes[1], axes[0].Values[len(axes[0].Values)-1], axes[1].Values[len(axes[1].Values)-1], "loan_at_closing", "holdback")
		require.NoError(t, err)
		return v[0].String(), v[1].String()
	}
	closing, works := p.Line("loan_at_closing").String(), p.Line("holdback").String()
	a, b := lent("renovation.lines.3.labour=$5k, $9k")
	require.Equal(t, []string{closing, works}, []string{a, b})
	a, b = lent("price=$200k, $205k", "renovation.lines.3.labour=$5k, $9k")
	require.NotEqual(t, closing, a)
	require.Equal(t, works, b)
	_, b = lent("renovation.contingency=10%, 25%")
	require.NotEqual(t, works, b)
}

// Where the buyer walks away, charges of the second marketing and of the second escrow are
// those of each: as if both were planned for twice as long.
func TestTheSecondSaleHasAnEscrowOfItsOwn(t *testing.T) {
	charge := deal.Set{Path: "holding.cleaner", Value: "$500/month during escrow"}
	p := scenario(t, "juniper-lane", charge)
	twice := scenario(t, "juniper-lane", charge, deal.Set{Path: "marketing", Value: "10 weeks"}, deal.Set{Path: "escrow", Value: "10 weeks"})
	for _, d := range p.Days() {
		if d.Name == "contract" {
			o, err := p.Run(d)
			require.NoError(t, err)
			require.Equal(t, twice.Line("owner_profit").String(), o.Profit.String())
			return
		}
	}
	require.Fail(t, "no such day")
}

// The contingency is set before the works turn out otherwise: loans and charges of the closing
// follow it with the works as planned, so where it is the plan's the figures are those of a
// grid without it.
func TestAContingencySizesByThePlannedWorks(t *testing.T) {
	d, found := deal.Read("aside", []byte(`purchase: {price: $150k, closing: {recording: 1% of budget, stamp: 0.1% of base cost}}
value: {after-repair value: $214k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%, general: {site: $1000/month}, lines: [{trade: a, work: b, amount: $20k}]}
loans: [{price share: 80%, renovation share: 100%, rate: 12%, points: 3 points, draws: {lag: 1 month}}]
bad days: {longer: {time.renovation: +1 month}, longer and aside: {time.renovation: +1 month, contingency: 10%}}
`))
	require.Empty(t, found.Errors())
	p := plan(t, d)
	aside, longer := varying(t, p, "contingency=0%, 10%, 25%"), varying(t, p, "time.renovation=2 months, 3 months")
	asExact(t, p, aside, longer)
	asExact(t, p, longer, aside)
	with, err := p.Grid(aside, longer)
	require.NoError(t, err)
	require.True(t, with.SetsAside)
	without, err := p.Grid(varying(t, p, "marketing=1 month, 2 months"), longer)
	require.NoError(t, err)
	require.False(t, without.SetsAside)
	var days []string
	for _, day := range p.Days()[:2] {
		o, err := p.Run(day)
		require.NoError(t, err)
		days = append(days, o.Profit.String())
	}
	for i := range longer.Values {
		require.Equal(t, without.Cells[i][0].Profit.String(), with.Cells[i][1].Profit.String())
	}
	require.Equal(t, []string{with.Cells[1][1].Profit.String(), with.Cells[1][1].Profit.String()}, days)
	paid := func(i int) string {
		v, err := p.At(aside, longer, aside.Values[i], longer.Values[1], "closing_cost")
		require.NoError(t, err)
		return v[0].String()
	}
	// 1% of 22,000 x 1, 1.1 and 1.25, and 0.1% of 22,000.
	require.Equal(t, []string{"242", "264", "297"}, []string{paid(0), paid(1), paid(2)})
	require.True(t, p.ChargesFollow())
	require.True(t, p.ChargesKept(true))
}
