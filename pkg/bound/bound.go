// Package bound works a model out over a whole range of one input at once: each
// line comes out as a straight line over the range with an error to either side.
// What holds for the bounds holds for every value in the range, so a search that
// uses them misses no edge, slab or rounding step.
//
// The figures are float64; nearer to an edge than affine.Noise they decide
// nothing, and the exact reader must answer.
package bound

import (
	"errors"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/affine"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// Noise is how near to an edge a bound decides nothing, in dollars.
const Noise = affine.Noise

// ErrVaries is returned when a number of months is not the same over the range.
var ErrVaries = errors.New("the number of months varies over the range")

// A Bound is C + S·t + e, for t from 0 to 1 over the range and e between Lo and Hi.
type Bound = affine.Number

// A Change gives an input cell a fixed value.
type Change struct {
	Cell  *model.Cell
	Value decimal.Decimal
}

// A Plan asks for some cells over ranges of one input.
type Plan struct {
	model   *model.Model
	axis    int
	want    []int
	varying []model.Step
	fixed   *walk.Values[Bound]
	changed map[int]Bound
}

// NewPlan prepares to work out the wanted cells while the axis, an input, varies
// between least and most. What does not vary is worked out here, once.
func NewPlan(m *model.Model, axis *model.Cell, least, most decimal.Decimal, changes []Change, want ...*model.Cell) (*Plan, error) {
	p := &Plan{model: m, axis: axis.Index, want: model.Indexes(want), changed: map[int]Bound{}}
	for _, c := range changes {
		p.changed[c.Cell.Index] = number(c.Value)
	}
	steps := m.Needed(append(p.want, p.axis)...)
	var fixed []model.Step
	fixed, p.varying = m.Reached(steps, p.axis)
	p.fixed = walk.New[Bound](m)
	// The whole range is walked once: it sets the number of months for all parts
	// of it, and leaves the values that do not vary.
	if err := p.walk(p.fixed, slices.Concat(horizonFirst(m, steps)), between(least, most)); err != nil {
		return nil, err
	}
	return p, p.walk(p.fixed, fixed, between(least, most))
}

// horizonFirst returns the steps up to the one that tells the number of months.
func horizonFirst(m *model.Model, steps []model.Step) []model.Step {
	i := slices.IndexFunc(steps, func(s model.Step) bool { return slices.Contains(s.Cells, m.Horizon) })
	return steps[:i+1]
}

func between(a, b decimal.Decimal) Bound {
	return affine.Between(a.InexactFloat64(), b.InexactFloat64())
}

func (p *Plan) walk(v *walk.Values[Bound], steps []model.Step, axis Bound) error {
	p.changed[p.axis] = axis
	w := walk.Walker[Bound, rules]{Values: v, Changed: p.changed}
	return w.Steps(steps)
}

// Over returns the wanted cells, in the order asked, over the range from a to b,
// which must lie inside the plan's.
func (p *Plan) Over(a, b decimal.Decimal) ([]Bound, error) {
	v := *p.fixed
	v.Scalar = slices.Clone(v.Scalar)
	v.Month = slices.Clone(v.Month)
	for _, s := range p.varying {
		for _, c := range s.Cells {
			v.Month[c] = nil
		}
	}
	if err := p.walk(&v, p.varying, between(a, b)); err != nil {
		return nil, err
	}
	out := make([]Bound, len(p.want))
	for i, c := range p.want {
		out[i] = v.Scalar[c]
	}
	return out, nil
}

// rules are those of bounds.
type rules struct{}

func number(x decimal.Decimal) Bound { return affine.Exactly(x.InexactFloat64()) }

func (rules) Number(x *model.Expr) Bound { return affine.Exactly(x.Near()) }

func (rules) Int(n int) Bound { return affine.Exactly(float64(n)) }

func (rules) Apply(op *formula.Op, args []Bound) (Bound, error) { return op.Range(args), nil }

func (rules) Truth(x Bound) (canHold, canFail bool) {
	lo, hi := x.Bounds()
	return !(hi < 0.5), !(lo > 0.5)
}

// Whole returns the one whole number that x is; ErrVaries if it is several.
func (rules) Whole(x Bound) (int, error) {
	lo, hi := x.Bounds()
	if n := math.Round(lo); n == math.Round(hi) {
		return int(n), nil
	}
	return 0, ErrVaries
}

func (rules) Last(x Bound) int {
	_, hi := x.Bounds()
	if hi > math.MaxInt32 || math.IsNaN(hi) {
		return math.MaxInt32
	}
	return int(math.Round(hi))
}

func (rules) Keep(x Bound) Bound { return x }
