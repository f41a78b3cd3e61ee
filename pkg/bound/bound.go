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
	"ledgerboard/pkg/internal/float"
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
type Change = model.Change

// An Axis is the input that varies, from Least up to Most. Only the values Least +
// n·Step are looked at; a Step of 0 leaves all open.
type Axis struct {
	Cell              *model.Cell
	Least, Most, Step decimal.Decimal
}

// grain is what all values of the axis are multiples of.
func (a Axis) grain() affine.Grain {
	if a.Step.IsZero() {
		return affine.Fine
	}
	return min(number(a.Least).Grain(), number(a.Step).Grain())
}

// A Plan asks for some cells over ranges of one input.
type Plan struct {
	Prepared *walk.Prepared
	axis     int
	grain    affine.Grain
	want     []int
	skip     []int
	work     *walk.Values[Bound] // what does not vary, and room for what does
}

// NewPlan prepares to work out the wanted cells along an axis. What does not
// vary is worked out here, once.
func NewPlan(m *model.Model, axis Axis, changes []Change, want ...*model.Cell) (*Plan, error) {
	p := &Plan{axis: axis.Cell.Index, grain: axis.grain(), want: model.Indexes(want)}
	steps := m.Needed(append(p.want, p.axis)...)
	changed, exactly := map[int]Bound{p.axis: p.between(axis.Least, axis.Most)}, map[int]decimal.Decimal{}
	for _, c := range changes {
		changed[c.Cell.Index], exactly[c.Cell.Index] = number(c.Value), c.Value
	}
	// The whole range is walked as far as the number of months.
	w := walk.Walker[Bound, rules]{Values: walk.New[Bound](m), Changed: changed}
	if err := w.Steps(horizonFirst(m, steps)); err != nil {
		return nil, err
	}
	var err error
	if p.Prepared, err = walk.Prepare(m, steps, []int{p.axis}, exactly, w.Last); err != nil {
		return nil, err
	}
	p.work = walk.As(p.Prepared.Fixed, number)
	p.work.Model = p.Prepared.Model
	for _, s := range p.Prepared.Varying {
		for _, c := range s.Cells {
			if p.work.Model.Cells[c].Line.Monthly {
				p.work.SetMonth(c, nil)
			}
		}
	}
	return p, p.settle(p.between(axis.Least, axis.Most))
}

// settle walks the whole range once and keeps the first months of each step that
// came out as one value: they are the same for every part of the range.
func (p *Plan) settle(axis Bound) error {
	last := p.work.Last
	w := walk.Walker[Bound, rules]{Values: p.work, Changed: map[int]Bound{p.axis: axis}}
	if err := w.Steps(p.Prepared.Varying); err != nil {
		return err
	}
	p.work.Last = last
	for _, s := range p.Prepared.Varying {
		p.skip = append(p.skip, p.settled(s))
	}
	return nil
}

func (p *Plan) settled(s model.Step) int {
	months := math.MaxInt
	for _, c := range s.Cells {
		i := slices.IndexFunc(p.work.Month(c), func(x Bound) bool { return !x.Fixed() })
		if i < 0 {
			i = len(p.work.Month(c))
		}
		months = min(months, i)
	}
	return months
}

// horizonFirst returns the steps up to the one that tells the number of months.
func horizonFirst(m *model.Model, steps []model.Step) []model.Step {
	i := slices.IndexFunc(steps, func(s model.Step) bool { return slices.Contains(s.Cells, m.Horizon) })
	return steps[:i+1]
}

func (p *Plan) between(a, b decimal.Decimal) Bound {
	return affine.Stepping(a.InexactFloat64(), b.InexactFloat64(), p.grain)
}

// Over returns the wanted cells, in the order asked, over the range from a to b,
// which must lie inside the plan's. It is ErrVaries where the deal has not the
// same number of months all over the range. A plan answers one question at a time.
func (p *Plan) Over(a, b decimal.Decimal) ([]Bound, error) {
	w := walk.Walker[Bound, rules]{Values: p.work, Changed: map[int]Bound{p.axis: p.between(a, b)}, Skip: p.skip}
	if err := w.Steps(p.Prepared.Varying); err != nil {
		return nil, err
	}
	if _, one := (rules{}).Whole(w.Scalar[w.Model.Horizon]); !one {
		return nil, ErrVaries
	}
	out := make([]Bound, len(p.want))
	for i, c := range p.want {
		out[i] = w.Scalar[c]
	}
	return out, nil
}

// rules are those of bounds.
type rules struct{}

func number(x decimal.Decimal) Bound {
	if x.IsZero() {
		return Bound{}
	}
	return affine.Exactly(float.Near(x))
}

func (rules) Number(x *model.Expr) Bound { return affine.Exactly(x.Near()) }

func (rules) Int(n int) Bound { return affine.Exactly(float64(n)) }

func (rules) Apply(op *formula.Op, args []Bound) (Bound, error) { return op.Range(args), nil }

func (rules) Truth(x Bound) (canHold, canFail bool) {
	lo, hi := x.Bounds()
	return !(hi < 0.5), !(lo > 0.5)
}

// Whole returns the one whole number that x is, if it is one.
func (rules) Whole(x Bound) (int, bool) {
	lo, hi := x.Bounds()
	n := math.Round(lo)
	return int(n), n == math.Round(hi)
}

func (rules) Unknown() (Bound, error) { return affine.Unknown(), nil }

func (rules) Last(x Bound) int {
	_, hi := x.Bounds()
	if hi > math.MaxInt32 || math.IsNaN(hi) {
		return math.MaxInt32
	}
	return int(math.Round(hi))
}

// Keep lets a bound that came to no number, as infinity less infinity does, stand for
// a value of which nothing is known.
func (rules) Keep(x Bound) Bound {
	if none(x.C) || none(x.S) || math.IsNaN(x.Lo) || math.IsNaN(x.Hi) {
		return affine.Unknown()
	}
	return x
}

func none(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }
