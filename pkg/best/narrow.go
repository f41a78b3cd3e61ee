package best

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// floats are the rules of float64, month by month too.
type floats struct{}

func (floats) Number(x *model.Expr) float64 { return x.Near() }

func (floats) Int(n int) float64 { return float64(n) }

func (floats) Apply(op *formula.Op, a []float64) (float64, error) { return op.Float(a), nil }

func (floats) Truth(x float64) (canHold, canFail bool) { return x != 0, x == 0 }

func (floats) Whole(x float64) (int, bool) {
	n := math.Round(x)
	return int(n), math.Abs(x-n) < 1e-9
}

func (floats) Unknown() (float64, error) { return math.NaN(), nil }

func (floats) Last(x float64) int { return int(math.Round(x)) }

func (floats) Keep(x float64) float64 { return x }

// nearMoney works out results from totals in float64.
type nearMoney struct {
	steps  []model.Step
	walker walk.Walker[float64, floats]
}

func newNearMoney(p *walk.Prepared) *nearMoney {
	v := walk.As(p.Fixed, float.Near)
	return &nearMoney{p.Varying, walk.Walker[float64, floats]{Values: v, Changed: map[int]float64{}}}
}

// give sets a cell.
func (n *nearMoney) give(c *model.Cell, x float64) { n.walker.Changed[c.Index] = x }

func (n *nearMoney) run() error {
	last := n.walker.Last
	defer func() { n.walker.Last = last }()
	return n.walker.Steps(n.steps)
}

func (n *nearMoney) of(c *model.Cell) float64 { return n.walker.Scalar[c.Index] }

// Narrow works a choice out nearly, with its cut lists: no worth lies further from it
// than the slack.
func (p *problem) Narrow(choice []int) (int64, bool) {
	if p.parts.uncut {
		return anything, true
	}
	p.set(choice)
	n := p.options()
	for _, s := range p.sticks {
		counts, err := p.counts(s, choice)
		if err != nil {
			p.err = err
			return 0, false
		}
		for _, x := range counts {
			p.in[n] = x
			n++
		}
	}
	p.near.Run(p.in, p.out)
	for i, c := range p.totals {
		p.money64.give(c, p.out[i])
	}
	for _, s := range p.shifted {
		p.money64.give(s.cell, s.base.InexactFloat64()+p.out[added])
	}
	if err := p.money64.run(); err != nil {
		return anything, true // let it fail where it counts
	}
	x := p.money64.of(p.results[profit])
	if p.limits.Cash != nil && p.money64.of(p.results[cash]) > p.limits.Cash.InexactFloat64()+slack {
		return 0, false
	}
	if math.IsNaN(x) {
		return anything, true
	}
	return upCents(x + slack), true
}

// counts are the sticks of each length of a product.
func (h *House) counts(s *stickProduct, choice []int) ([]float64, error) {
	key := s.key(choice)
	if known := s.near[key]; known != nil {
		return known, nil
	}
	list, err := h.cutOf(s, choice)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(s.cells))
	for i, c := range s.cells {
		out[i] = list.Counts[c].InexactFloat64()
	}
	s.near[key] = out
	return out, nil
}

// cutOf is the cut list of a choice, from what each use takes where it is bought.
func (h *House) cutOf(s *stickProduct, choice []int) (deal.CutList, error) {
	taken := make(map[*model.Member]bool, len(choice)+len(h.parts.callers))
	for i, o := range choice {
		m := h.Rooms[i].Options[o]
		if m == nil {
			continue
		}
		taken[m] = true
	}
	for it, at := range h.parts.callers {
		taken[it] = slices.ContainsFunc(at, func(x [2]int) bool { return x[0] >= 0 && choice[x[0]] == x[1] })
	}
	return h.Deal.CutListOf(s.member, func(c *model.Cell) decimal.Decimal {
		x := h.full[c.Index]
		if c.Line.Name != "bought" || c.Member.Set != "use" {
			return x
		}
		item := c.Member.Parent
		option := item.Parent
		if _, open := h.member[option]; taken[item] || taken[option] || !open && !isCalled(option) || h.always[item] {
			return x
		}
		return decimal.Decimal{}
	})
}
