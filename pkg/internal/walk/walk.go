// Package walk carries a model's steps out over any kind of number: exact
// decimals or ranges. What a kind of number must be able to do is its Rules; the
// order, the months and the sets are the same for all and stand only here.
package walk

import (
	"errors"
	"fmt"
	"slices"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// Rules say how one kind of number behaves.
type Rules[T any] interface {
	// Number returns the number of a constant expression.
	Number(*model.Expr) T
	// Int returns a whole number.
	Int(int) T
	// Apply carries out an operator that has a rule of its own.
	Apply(op *formula.Op, args []T) (T, error)
	// Truth says whether a condition can hold and whether it can fail.
	Truth(T) (canHold, canFail bool)
	// Whole returns the whole number that a month or a lag is, if it is one.
	Whole(T) (int, bool)
	// Unknown stands for a value in a month that is not known.
	Unknown() (T, error)
	// Last returns the last month that a number of months can mean.
	Last(T) int
	// Keep is applied to a cell's value before it is stored.
	Keep(T) T
}

// longest is the longest hold worked out, in months; the deal file refuses
// longer ones earlier.
const longest = 1200

// Values are the cells worked out so far.
type Values[T any] struct {
	Model  *model.Model
	Last   int   // the last month worked out; -1 before it is known
	Scalar []T   // by cell
	months [][]T // by row of the model, then month
}

// New returns values of which none is worked out.
func New[T any](m *model.Model) *Values[T] {
	return &Values[T]{Model: m, Last: -1, Scalar: make([]T, len(m.Cells)), months: make([][]T, m.Monthly)}
}

// Month returns a cell's values by month; nil if it has one value or none yet.
func (v *Values[T]) Month(cell int) []T {
	if row := v.Model.Row(cell); row >= 0 {
		return v.months[row]
	}
	return nil
}

// SetMonth sets the values of a monthly cell.
func (v *Values[T]) SetMonth(cell int, to []T) { v.months[v.Model.Row(cell)] = to }

// Copy returns values that can be worked out further by the steps without
// touching these.
func (v *Values[T]) Copy(steps []model.Step) *Values[T] {
	c := *v
	c.Scalar = slices.Clone(v.Scalar)
	c.months = slices.Clone(v.months)
	for _, s := range steps {
		for _, i := range s.Cells {
			if row := v.Model.Row(i); row >= 0 {
				c.months[row] = nil
			}
		}
	}
	return &c
}

// A Walker works steps out into values.
type Walker[T any, R Rules[T]] struct {
	*Values[T]
	Rules   R
	Changed map[int]T       // cells given another value
	Skip    []int           // by step, how many first months are worked out already
	Ask     func(int) error // works a cell out before it is read; nil where all are in order
	done    []bool          // by cell, whether it need not be asked for
	of      *model.Member   // whose formula is worked out
	month   int
	stack   []T
}

// Steps works the steps out in order.
func (w *Walker[T, R]) Steps(steps []model.Step) error {
	for i, s := range steps {
		first := 0
		if w.Skip != nil {
			first = w.Skip[i]
		}
		if err := w.step(s, first); err != nil {
			return err
		}
	}
	return nil
}

// Value works out one expression of a member over the values so far, in the walker's
// month.
func (w *Walker[T, R]) Value(x *model.Expr, of *model.Member) (T, error) {
	w.of = of
	return w.value(x)
}

// ValueIn works out one expression of a member in a month.
func (w *Walker[T, R]) ValueIn(x *model.Expr, of *model.Member, month int) (T, error) {
	w.month = month
	return w.Value(x, of)
}

func (w *Walker[T, R]) step(s model.Step, from int) error {
	first := w.Model.Cells[s.Cells[0]]
	if !first.Line.Monthly {
		return w.one(first)
	}
	for _, c := range s.Cells {
		months := &w.months[w.Model.Row(c)]
		if n := w.Last + 1; n <= cap(*months) {
			*months = (*months)[:n]
		} else {
			*months = make([]T, n)
		}
	}
	for w.month = from; w.month <= w.Last; w.month++ {
		for _, c := range s.Cells {
			cell := w.Model.Cells[c]
			x, err := w.Value(cell.Expr, cell.Member)
			if err != nil {
				return failed(fmt.Sprintf("%s, month %d", cell.Name(), w.month), err)
			}
			w.months[w.Model.Row(c)][w.month] = w.Rules.Keep(x)
		}
	}
	return nil
}

func (w *Walker[T, R]) one(c *model.Cell) error {
	x, changed := w.Changed[c.Index]
	if !changed {
		v, err := w.Value(c.Expr, c.Member)
		if err != nil {
			return failed(c.Name(), err)
		}
		if x = v; c.Given == nil { // what the deal gives stays as it is
			x = w.Rules.Keep(v)
		}
	}
	w.Scalar[c.Index] = x
	if c.Index != w.Model.Horizon {
		return nil
	}
	n := w.Rules.Last(x)
	if n < 0 || n > longest {
		return fmt.Errorf("%s comes to %d months", c.Name(), n)
	}
	w.Last = n
	return nil
}

// A failure is why a line cannot be worked out.
type failure struct {
	line string
	error
}

func (f *failure) Error() string { return f.line + ": " + f.error.Error() }

func (f *failure) Unwrap() error { return f.error }

// failed says which line cannot be worked out: where it is what another asked for, the
// former alone.
func failed(line string, why error) error {
	if inner := new(failure); errors.As(why, &inner) {
		return why
	}
	return &failure{line, why}
}
