package why

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// A CheckError is a node whose value does not follow from what is below it.
type CheckError struct {
	Tree *Tree
	Want decimal.Decimal // what follows
	Err  error           // why nothing follows, or nil
}

func (e *CheckError) Error() string {
	t := e.Tree
	where := Label(t.Cell, t.Month)
	if t.Kind != Line {
		where = fmt.Sprintf("%s, in %q", where, t.Formula())
	}
	if e.Err != nil {
		return fmt.Sprintf("%s: %v", where, e.Err)
	}
	return fmt.Sprintf("%s: the value is %s, but its terms give %s", where, t.Value, e.Want)
}

// Unwrap returns the reason.
func (e *CheckError) Unwrap() error { return e.Err }

// Check works out every node below t again from its terms by the operators'
// exact rules, and adds up the parts of every line. The error is the first
// *CheckError, from the bottom up.
func (t *Tree) Check() error { return checker{}.check(t) }

// CheckAll checks every line of a deal in every month.
func CheckAll(m *model.Model, v Values) error {
	r, c := NewReader(m, v), checker{}
	for _, cell := range m.Cells {
		last := 0
		if cell.Line.Monthly {
			last = v.Months()
		}
		for month := 0; month <= last; month++ {
			if err := c.check(r.Explain(cell, month)); err != nil {
				return err
			}
		}
	}
	return nil
}

// checker holds what was checked already.
type checker map[*Tree]bool

func (c checker) check(t *Tree) error {
	if c[t] {
		return nil
	}
	c[t] = true
	for _, x := range t.Terms() {
		if err := c.check(x.Tree); err != nil {
			return err
		}
	}
	switch want, err := t.again(); {
	case t.err != nil:
		return &CheckError{t, want, t.err}
	case err != nil:
		return &CheckError{t, want, err}
	case !want.Equal(t.Value):
		return &CheckError{t, want, nil}
	}
	if t.Kind == Line || t.is(formula.Cents) {
		if sum := added(t.Parts()); !sum.Equal(t.Value) {
			return &CheckError{t, sum, errors.New("its parts do not add up to it")}
		}
	}
	return nil
}

// again works a node out from its terms.
func (t *Tree) again() (decimal.Decimal, error) {
	switch t.Kind {
	case Line:
		if terms := t.Terms(); len(terms) > 0 {
			if t.Cell.Given != nil { // what the deal gives stays as it is
				return terms[0].Value, nil
			}
			return formula.Keep(terms[0].Value), nil
		}
	case Rounding:
		return t.Value, nil // the node above adds it up
	case Operation:
		return t.operate()
	}
	return t.number, nil
}

func (t *Tree) operate() (decimal.Decimal, error) {
	switch t.Op.Code {
	case formula.Add, formula.Total, formula.Sum, formula.Running:
		return added(t.terms), nil
	case formula.Mul:
		return multiplied(t.terms)
	case formula.If:
		args := make([]decimal.Decimal, 3)
		args[0] = t.terms[0].Value
		if args[0].IsZero() == (t.Took == 1) {
			return decimal.Decimal{}, errors.New("the other branch should be taken")
		}
		args[max(t.Took, 1)] = t.terms[1].Value
		return t.Op.Exact(args)
	case formula.Month:
		return decimal.NewFromInt(int64(t.Month)), nil
	case formula.Prior:
		return t.elsewhere(t.Month - 1)
	case formula.Ago, formula.At:
		return t.elsewhere(frame{month: t.Month}.otherMonth(t.Op, t.terms[1].Value))
	case formula.Lowest, formula.Largest, formula.FirstMonth:
		return t.searched()
	case formula.Cents:
		return t.Op.Exact([]decimal.Decimal{t.terms[0].Value})
	}
	args := make([]decimal.Decimal, len(t.terms))
	for i, x := range t.terms {
		args[i] = x.Value
	}
	return t.Op.Exact(args)
}

func added(terms []Term) decimal.Decimal {
	var sum decimal.Decimal
	for _, x := range terms {
		if x.Sign < 0 {
			sum = sum.Sub(x.Value)
		} else {
			sum = sum.Add(x.Value)
		}
	}
	return sum
}

func multiplied(factors []Term) (decimal.Decimal, error) {
	product := factors[0].Value
	for _, x := range factors[1:] {
		code := formula.Mul
		if x.Sign < 0 {
			code = formula.Div
		}
		var err error
		if product, err = formula.Table[code].Exact([]decimal.Decimal{product, x.Value}); err != nil {
			return product, err
		}
	}
	return product, nil
}

// elsewhere is the value in another month, which must be that of the term.
func (t *Tree) elsewhere(month int) (decimal.Decimal, error) {
	x := t.terms[0]
	if x.Month != month {
		return decimal.Decimal{}, fmt.Errorf("month %d is read in place of month %d", x.Month, month)
	}
	return x.Value, nil
}

func (t *Tree) searched() (decimal.Decimal, error) {
	d := t.decider()
	switch {
	case d < 0 && t.is(formula.FirstMonth, formula.Largest):
		return decimal.Decimal{}, nil
	case d < 0:
		return decimal.Decimal{}, errors.New("there are no months")
	case t.Op.Code == formula.FirstMonth:
		return decimal.NewFromInt(int64(t.terms[d].Month)), nil
	}
	return t.terms[d].Value, nil
}

// decider returns the index of the first term that settles the value, or -1; of
// equal ones a number that only bounds the others comes last.
func (t *Tree) decider() int {
	if !t.is(formula.Min, formula.Max, formula.Lowest, formula.Largest, formula.FirstMonth) {
		return -1
	}
	best := -1
	for i, x := range t.terms {
		switch {
		case t.Op.Code == formula.FirstMonth:
			if !x.Value.IsZero() {
				return i
			}
		case best >= 0 && x.Value.Equal(t.terms[best].Value):
			if t.terms[best].Kind == Number && x.Kind != Number {
				best = i
			}
		case best < 0, t.is(formula.Max, formula.Largest) && x.Value.GreaterThan(t.terms[best].Value),
			!t.is(formula.Max, formula.Largest) && x.Value.LessThan(t.terms[best].Value):
			best = i
		}
	}
	return best
}
