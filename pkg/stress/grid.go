package stress

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// A Grid is what two things that vary come to together.
type Grid struct {
	Across, Down Axis
	Cells        [][]Cell // by value down and across
	Sized        bool     // the loans are sized anew at each place: something varies that is known before they are closed
	SetsAside    bool     // the contingency varies: hers to set, so it sizes loans and charges of the closing
	Kept         []string // what the lender counts as planned though the loans are sized anew: value, budget; nil where nothing varies that comes out later
}

// A Cell is one place of a grid. Dollars are whole cents, and the exact reader's but where
// a rounding turns on less than float64 can tell.
type Cell struct {
	Profit decimal.Decimal // the owner's
	ROI    decimal.Decimal
	Cash   decimal.Decimal
	Asked  decimal.Decimal // the return that is wanted, 0 if it is no target
	NoROI  bool            // no cash is needed
	Offer  solve.Offer
	Misses []string // the targets missed at the price of the plan
}

// Grid works a grid out. It fails where both sides move the same input, and where a hold
// is longer than any reader works out.
func (p *Plan) Grid(across, down Axis) (*Grid, error) {
	inputs := slices.Concat(across.moves, down.moves)
	if err := across.Apart(down); err != nil {
		return nil, err
	}
	p, err := p.asking(inputs...)
	if err != nil {
		return nil, err
	}
	g := gridding{plan: p, across: across, down: down, movers: slices.Concat(across.movers(p), down.movers(p)), inputs: inputs, targets: solve.Targets(p.Deal.TargetsBeside(inputs...))}
	g.spread()
	if err := together.Run(g.figures, g.offers); err != nil {
		return nil, err
	}
	return g.grid()
}

// ErrSame is what a grid fails with of which one side leaves the other without effect.
var ErrSame = errors.New("both sides of the grid vary the same")

// ErrTooLong is what a grid with too long a hold fails with.
var ErrTooLong = errors.New("a hold of no length or of over 1200 months")

// A gridding is a grid at work.
type gridding struct {
	plan         *Plan
	across, down Axis
	movers       []mover
	inputs       []deal.Input
	targets      []string
	in           [][]float64 // by mover and place
	out          [][]float64 // by figure and place: those of figureLines, then the targets
	prices       []float64
}

// spread fills in what each mover has at each place.
func (g *gridding) spread() {
	n := len(g.across.Values) * len(g.down.Values)
	g.in = make([][]float64, len(g.movers))
	for k, m := range g.movers {
		g.in[k] = make([]float64, 0, n)
		for _, d := range g.down.Values {
			for _, a := range g.across.Values {
				x := d
				if k < len(g.across.moves) {
					x = a
				}
				g.in[k] = append(g.in[k], float.Near(m.base.Add(x)))
			}
		}
	}
}

func (g *gridding) axes() []fast.Axis {
	out := make([]fast.Axis, len(g.movers))
	for k, m := range g.movers {
		out[k] = fast.Axis{Cell: m.cell, Least: slices.Min(g.in[k]), Most: slices.Max(g.in[k])}
	}
	return out
}

// figureLines are the figures of a place, before its targets.
var figureLines = [...]string{"owner_profit", "roi", "cash_needed", "target_roi", "hold_months"}

func (g *gridding) figures() error {
	var want []*model.Cell
	for _, line := range append(figureLines[:], g.targets...) {
		want = append(want, g.plan.cell(line))
	}
	held := slices.DeleteFunc(slices.Clone(g.plan.closed(g.inputs...)), func(c exact.Change) bool {
		return slices.ContainsFunc(g.movers, func(m mover) bool { return m.cell == c.Cell })
	})
	axes, in, err := g.budgets()
	if err != nil {
		return err
	}
	q, err := fast.Ask(g.plan.Model, append(g.axes(), axes...), want, held...)
	if err != nil {
		return err
	}
	g.out = make([][]float64, len(want))
	for i := range g.out {
		g.out[i] = make([]float64, len(g.in[0]))
	}
	return q.Worker().Run(slices.Concat(g.in, in), g.out)
}

// budgets are what is looked at before the closing, where a side is the contingency: at each
// place by what it is there.
func (g *gridding) budgets() (axes []fast.Axis, in [][]float64, err error) {
	for k, m := range g.movers {
		if m.cell != g.plan.cell(lenderBudget.line) {
			continue
		}
		at := map[float64][]exact.Change{}
		for i, x := range g.in[k] {
			if at[x] == nil {
				if at[x], err = g.plan.budgets([]exact.Change{{Cell: m.cell, Value: decimal.NewFromFloat(x)}}); err != nil {
					return nil, nil, err
				}
			}
			for j, c := range at[x] {
				if i == 0 {
					axes, in = append(axes, fast.Axis{Cell: c.Cell}), append(in, nil)
				}
				in[j] = append(in[j], c.Value.InexactFloat64())
			}
		}
	}
	for j := range axes {
		axes[j].Least, axes[j].Most = slices.Min(in[j]), slices.Max(in[j])
	}
	return axes, in, nil
}

// offers finds the maximum offers. Where the price varies, they are the same along it.
func (g *gridding) offers() error {
	axes, in := g.axes(), slices.Clone(g.in)
	if i := slices.IndexFunc(axes, func(a fast.Axis) bool { return a.Cell == g.plan.cell("price") }); i >= 0 {
		axes, in = slices.Delete(axes, i, i+1), slices.Delete(in, i, i+1)
	}
	o, err := solve.AskOffers(g.plan.Model, g.plan.Deal.TargetsBeside(g.inputs...), axes)
	if err != nil {
		return err
	}
	g.prices = make([]float64, len(g.in[0]))
	return o.Worker().Run(in, g.prices)
}

// grid puts the figures together.
func (g *gridding) grid() (*Grid, error) {
	out := &Grid{Across: g.across, Down: g.down, Sized: slices.ContainsFunc(g.inputs, chance.Known)}
	out.SetsAside = slices.ContainsFunc(g.inputs, setsAside)
	if out.Sized {
		out.Kept = kept(g.inputs)
	}
	for i := range g.down.Values {
		row := make([]Cell, len(g.across.Values))
		for k := range row {
			at := i*len(row) + k
			if hold := g.out[len(figureLines)-1][at]; math.IsNaN(g.out[0][at]) || hold <= 0 {
				return nil, fmt.Errorf("%w: %s %s, %s %s", ErrTooLong, g.across.Label, g.across.Says(g.across.Values[k]), g.down.Label, g.down.Says(g.down.Values[i]))
			}
			row[k] = g.cell(at)
		}
		out.Cells = append(out.Cells, row)
	}
	return out, nil
}

// ratioPlaces is how exactly a share is kept.
const ratioPlaces = 9

func (g *gridding) cell(at int) Cell {
	dollars := func(x float64) decimal.Decimal { return decimal.NewFromFloat(x).Round(2) }
	c := Cell{Profit: dollars(g.out[0][at]), ROI: decimal.NewFromFloat(g.out[1][at]).Round(ratioPlaces), Cash: dollars(g.out[2][at]), Asked: decimal.NewFromFloat(g.out[3][at]).Round(ratioPlaces), Offer: offer(g.prices[at])}
	c.NoROI = !c.Cash.IsPositive()
	for i, t := range g.targets {
		if decimal.NewFromFloat(g.out[i+len(figureLines)][at]).Round(ratioPlaces - 3).IsNegative() {
			c.Misses = append(c.Misses, t)
		}
	}
	return c
}

func offer(price float64) solve.Offer {
	switch {
	case math.IsInf(price, 1):
		return solve.Offer{Found: true, Endless: true}
	case math.IsInf(price, -1), math.IsNaN(price):
		return solve.Offer{}
	}
	return solve.Offer{Found: true, Price: decimal.NewFromFloat(price)}
}

// At works one place of a grid out exactly: the figures of the lines named, in their order.
func (p *Plan) At(across, down Axis, a, d decimal.Decimal, lines ...string) ([]decimal.Decimal, error) {
	inputs := slices.Concat(across.moves, down.moves)
	p, err := p.asking(inputs...)
	if err != nil {
		return nil, err
	}
	moves := slices.Concat(across.changes(p, a), down.changes(p, d))
	budgets, err := p.budgets(moves)
	if err != nil {
		return nil, err
	}
	changes := slices.Concat(p.closed(inputs...), budgets, moves)
	want := make([]*model.Cell, len(lines))
	for i, l := range lines {
		want[i] = p.cell(l)
	}
	v, err := exact.NewPlan(p.Model, want...).Evaluate(changes...)
	if err != nil {
		return nil, err
	}
	out := make([]decimal.Decimal, len(lines))
	for i, c := range want {
		out[i] = v.Of(c)
	}
	return out, nil
}

// OfferAt finds the maximum offer at one place of a grid exactly.
func (p *Plan) OfferAt(across, down Axis, a, d decimal.Decimal) (solve.Offer, error) {
	inputs := slices.Concat(across.moves, down.moves)
	p, err := p.asking(inputs...)
	if err != nil {
		return solve.Offer{}, err
	}
	changes := slices.DeleteFunc(slices.Concat(across.changes(p, a), down.changes(p, d)), func(c exact.Change) bool { return c.Cell == p.cell("price") })
	return solve.MaxOffer(p.Model, p.Deal.TargetsBeside(inputs...), changes...)
}
