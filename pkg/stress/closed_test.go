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
