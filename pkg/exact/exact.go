package exact

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// Values are the worked-out cells of a model.
type Values struct {
	all *walk.Values[decimal.Decimal]
	ask *walk.Known // works out what is not yet; nil where all that may be asked for is
}

// A Change gives an input cell another value.
type Change = model.Change

// Evaluate works out the wanted cells and all that they need; without any, all
// cells. The error names the line that cannot be worked out.
func Evaluate(m *model.Model, want ...*model.Cell) (*Values, error) {
	return NewPlan(m, want...).Evaluate()
}

// Pin keeps cells at what they come to as the deal is, whatever else is changed.
func Pin(m *model.Model, cells ...*model.Cell) ([]Change, error) {
	if len(cells) == 0 {
		return nil, nil
	}
	v, err := Evaluate(m, cells...)
	if err != nil {
		return nil, err
	}
	out := make([]Change, len(cells))
	for i, c := range cells {
		out[i] = Change{Cell: c, Value: v.Of(c)}
	}
	return out, nil
}

// Known returns the values of a deal that was read. Its own lines, and all of its members'
// that move them, are worked out here, so what cannot be is found here; other lines of
// members when they are asked for: see Work.
func Known(k *walk.Known) (*Values, error) {
	if err := k.Work(k.Values.Model.Own()...); err != nil {
		return nil, err
	}
	return &Values{k.Values, k}, nil
}

// Work works cells out before they are asked for, which is needed where it can fail.
func (v *Values) Work(cells ...*model.Cell) error {
	if v.ask == nil {
		return nil
	}
	return v.ask.Work(model.Indexes(cells)...)
}

// sure works a cell out if it is not yet.
func (v *Values) sure(c *model.Cell) {
	if v.ask == nil {
		return
	}
	if err := v.ask.Work(c.Index); err != nil {
		panic(err)
	}
}

// A Plan is a question asked of a model many times with changed inputs.
type Plan struct {
	model *model.Model
	steps []model.Step
	base  *walk.Values[decimal.Decimal] // what is worked out already, or nil
}

// NewPlan prepares to work out the wanted cells; without any, all of them.
func NewPlan(m *model.Model, want ...*model.Cell) *Plan {
	return &Plan{model: m, steps: m.Needed(model.Indexes(want)...)}
}

// Prepared returns the plan of a prepared question: only its axis may be changed.
func Prepared(p *walk.Prepared) *Plan { return &Plan{p.Model, p.Varying, p.Fixed} }

// Evaluate works the plan out with some inputs changed.
func (p *Plan) Evaluate(changes ...Change) (*Values, error) {
	w := walker{Values: walk.New[decimal.Decimal](p.model), Changed: map[int]decimal.Decimal{}}
	if p.base != nil {
		w.Values = p.base.Copy(p.steps)
	}
	for _, c := range changes {
		w.Changed[c.Cell.Index] = c.Value
	}
	if err := w.Steps(p.steps); err != nil {
		return nil, err
	}
	return &Values{all: w.Values}, nil
}

// Months is the month of the sale; monthly lines run from 0 to it.
func (v *Values) Months() int { return v.all.Last }

// Of returns the value of a cell that has one value.
func (v *Values) Of(c *model.Cell) decimal.Decimal {
	v.sure(c)
	return v.all.Scalar[c.Index]
}

// In returns the value of a cell in a month; a cell of one value has it in all.
// Months before 0 and after the sale have 0.
func (v *Values) In(c *model.Cell, month int) decimal.Decimal {
	if !c.Line.Monthly {
		return v.Of(c)
	}
	all := v.ByMonth(c)
	if month < 0 || month >= len(all) {
		return decimal.Decimal{}
	}
	return all[month]
}

// ByMonth returns the values of a monthly cell for months 0 to the sale.
func (v *Values) ByMonth(c *model.Cell) []decimal.Decimal {
	v.sure(c)
	return v.all.Month(c.Index)
}

// Value works out a formula of a member in a month; one without months is the same in
// all. The error says why it cannot be.
func (v *Values) Value(x *model.Expr, of *model.Member, month int) (decimal.Decimal, error) {
	if v.ask != nil {
		return v.ask.Value(x, of, month)
	}
	w := walker{Values: v.all}
	return w.ValueIn(x, of, month)
}

// Assumed returns the inputs whose default was used and matters: those that move
// money although the deal does not give them.
func (v *Values) Assumed() []*model.Cell {
	var out []*model.Cell
	for _, c := range v.all.Model.Cells {
		if c.Assumed() && v.holds(c) {
			out = append(out, c)
		}
	}
	return out
}

// holds reports whether the default of an input matters.
func (v *Values) holds(c *model.Cell) bool {
	when := c.When()
	if when == nil {
		return true
	}
	x, err := v.Value(when, c.Member, 0)
	return err == nil && !x.IsZero()
}

type walker = walk.Walker[decimal.Decimal, walk.Decimals]
