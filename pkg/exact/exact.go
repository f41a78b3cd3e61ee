package exact

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// longest is the longest hold worked out, in months; a longer one is a mistake
// that the deal file's own checks refuse earlier.
const longest = 1200

// Values are the worked-out cells of a model.
type Values struct {
	model   *model.Model
	months  int                 // the month of the sale
	scalar  []decimal.Decimal   // by cell
	monthly [][]decimal.Decimal // by cell, then month
}

// A Change gives an input cell another value.
type Change struct {
	Cell  *model.Cell
	Value decimal.Decimal
}

// Evaluate works out the wanted cells and all that they need; without any, all
// cells. The error names the line that cannot be worked out.
func Evaluate(m *model.Model, want ...*model.Cell) (*Values, error) {
	return NewPlan(m, want...).Evaluate()
}

// A Plan is a question asked of a model many times with changed inputs.
type Plan struct {
	model *model.Model
	steps []model.Step
}

// NewPlan prepares to work out the wanted cells; without any, all of them.
func NewPlan(m *model.Model, want ...*model.Cell) *Plan {
	index := make([]int, len(want))
	for i, c := range want {
		index[i] = c.Index
	}
	return &Plan{m, m.Needed(index...)}
}

// Evaluate works the plan out with some inputs changed.
func (p *Plan) Evaluate(changes ...Change) (*Values, error) {
	v := &Values{
		model: p.model, months: -1,
		scalar:  make([]decimal.Decimal, len(p.model.Cells)),
		monthly: make([][]decimal.Decimal, len(p.model.Cells)),
	}
	e := evaluator{Values: v, changed: changes}
	for _, s := range p.steps {
		if err := e.step(s); err != nil {
			return nil, err
		}
	}
	return v, nil
}

// Months is the month of the sale; monthly lines run from 0 to it.
func (v *Values) Months() int { return v.months }

// Of returns the value of a cell that has one value.
func (v *Values) Of(c *model.Cell) decimal.Decimal { return v.scalar[c.Index] }

// In returns the value of a cell in a month; a cell of one value has it in all.
// Months before 0 and after the sale have 0.
func (v *Values) In(c *model.Cell, month int) decimal.Decimal {
	if !c.Line.Monthly {
		return v.scalar[c.Index]
	}
	if month < 0 || month >= len(v.monthly[c.Index]) {
		return decimal.Decimal{}
	}
	return v.monthly[c.Index][month]
}

// ByMonth returns the values of a monthly cell for months 0 to the sale.
func (v *Values) ByMonth(c *model.Cell) []decimal.Decimal { return v.monthly[c.Index] }

// Assumed returns the inputs whose default was used and matters: those that move
// money although the deal does not give them. The model must be worked out whole.
func (v *Values) Assumed() []*model.Cell {
	var out []*model.Cell
	for _, c := range v.model.Cells {
		if c.Line.Assumed && c.Given == nil && v.holds(c.When) {
			out = append(out, c)
		}
	}
	return out
}

func (v *Values) holds(when *model.Expr) bool {
	if when == nil {
		return true
	}
	e := evaluator{Values: v}
	x, err := e.value(when)
	return err == nil && !x.IsZero()
}

type evaluator struct {
	*Values
	changed []Change
	month   int
	stack   []decimal.Decimal
}

func (e *evaluator) step(s model.Step) error {
	if s.Block {
		for _, c := range s.Cells {
			e.monthly[c] = make([]decimal.Decimal, e.months+1)
		}
		for month := 0; month <= e.months; month++ {
			for _, c := range s.Cells {
				if err := e.monthCell(e.model.Cells[c], month); err != nil {
					return err
				}
			}
		}
		return nil
	}
	c := e.model.Cells[s.Cells[0]]
	if c.Line.Monthly {
		e.monthly[c.Index] = make([]decimal.Decimal, e.months+1)
		for month := 0; month <= e.months; month++ {
			if err := e.monthCell(c, month); err != nil {
				return err
			}
		}
		return nil
	}
	return e.oneCell(c)
}

func (e *evaluator) oneCell(c *model.Cell) error {
	for _, ch := range e.changed {
		if ch.Cell == c {
			e.scalar[c.Index] = ch.Value
			return e.horizon(c)
		}
	}
	x, err := e.value(c.Expr)
	if err != nil {
		return fmt.Errorf("%s: %w", c.Name(), err)
	}
	e.scalar[c.Index] = formula.Trim(x)
	return e.horizon(c)
}

// horizon takes note of the number of months once it is known.
func (e *evaluator) horizon(c *model.Cell) error {
	if c.Index != e.model.Horizon {
		return nil
	}
	n := e.scalar[c.Index]
	if n.IsNegative() || n.GreaterThan(decimal.NewFromInt(longest)) {
		return fmt.Errorf("%s is %s months", c.Name(), n)
	}
	e.months = int(n.IntPart())
	return nil
}

func (e *evaluator) monthCell(c *model.Cell, month int) error {
	e.month = month
	x, err := e.value(c.Expr)
	if err != nil {
		return fmt.Errorf("%s, month %d: %w", c.Name(), month, err)
	}
	e.monthly[c.Index][month] = formula.Trim(x)
	return nil
}
