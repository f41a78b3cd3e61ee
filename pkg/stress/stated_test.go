package stress_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/solve"
	"ledgerboard/pkg/stress"
)

func varying(t testing.TB, p *stress.Plan, text string) stress.Axis {
	in, values, found := p.Deal.Vary("--across", text)
	require.Empty(t, found)
	return stress.Varying(in.Path, in, values)
}

// poorDeal needs $120,000 of cash: the price of $100,000 and $20,000 of works.
const poorDeal = `deal: Poor
purchase: {price: $100,000}
value: {after-repair value: $190,000}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: paint, labour: $20,000}]}
selling: {agent: 5%}
`

// A target that a side of the grid is of counts at each place as it would if the file stated
// it there.
func TestATargetOnASideIsStated(t *testing.T) {
	for side, sets := range map[string][2]string{
		"cash.available=$70k, $125k": {"$70k", "$125k"},
		"targets.margin=5%, 40%":     {"5%", "40%"},
		"targets.roi=10%, 70%":       {"10%", "70%"},
		"targets.profit=$5k, $90k":   {"$5k", "$90k"},
	} {
		read := func(sets ...deal.Set) *stress.Plan {
			d, found := deal.Read("poor", []byte(poorDeal), sets...)
			require.Empty(t, found.Errors())
			return plan(t, d)
		}
		p := read()
		across := varying(t, p, side)
		down := p.Overruns(decs("0", "0.1"))
		g, err := p.Grid(across, down)
		require.NoError(t, err)
		for k, value := range sets {
			q := read(deal.Set{Path: across.Label, Value: value})
			o, err := solve.MaxOffer(q.Model, q.Deal.Targets)
			require.NoError(t, err)
			require.True(t, o.Found)
			require.Equal(t, o.Price.String(), g.Cells[0][k].Offer.Price.String(), side)
			at, err := p.OfferAt(across, down, across.Values[k], down.Values[0])
			require.NoError(t, err)
			require.Equal(t, o.Price.String(), at.Price.String(), side)
			for _, target := range q.Deal.Targets {
				if q.Line(target).IsNegative() {
					require.Contains(t, g.Cells[0][k].Misses, target, side)
				} else {
					require.NotContains(t, g.Cells[0][k].Misses, target, side)
				}
			}
		}
	}
}

// What a lender counts stays as planned where a side comes out only after the closing.
func TestWhatLendersCountIsKept(t *testing.T) {
	p := scenario(t, "juniper-lane")
	for _, c := range []struct {
		across, down string
		kept         []string
	}{
		{"price=$200k, $210k", "loans.1.rate=10%, 11%", nil},
		{"price=$200k, $210k", "after-repair value=$340k, $350k", []string{"value", "budget"}},
		{"contingency=10%, 20%", "after-repair value=$340k, $350k", []string{"value"}},
		{"marketing=1 month, 2 months", "after-repair value=$340k, $350k", nil},
	} {
		g, err := p.Grid(varying(t, p, c.across), varying(t, p, c.down))
		require.NoError(t, err)
		require.Equal(t, c.kept, g.Kept, c.across)
	}
}
