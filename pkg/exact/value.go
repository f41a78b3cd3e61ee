package exact

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

var zero decimal.Decimal

// value works out an expression in the evaluator's month.
func (e *evaluator) value(x *model.Expr) (decimal.Decimal, error) {
	if x.Op == nil {
		if x.Cell < 0 {
			return x.Number, nil
		}
		return e.read(x.Cell), nil
	}
	if x.Op.Exact == nil {
		return e.across(x)
	}
	if x.Op.Code == formula.If { // only the branch taken, so the other may be undefined
		cond, err := e.value(x.Args[0])
		if err != nil {
			return zero, err
		}
		if cond.IsZero() {
			return e.value(x.Args[2])
		}
		return e.value(x.Args[1])
	}
	base := len(e.stack)
	for _, a := range x.Args {
		v, err := e.value(a)
		if err != nil {
			e.stack = e.stack[:base]
			return zero, err
		}
		e.stack = append(e.stack, v)
	}
	v, err := x.Op.Exact(e.stack[base:])
	e.stack = e.stack[:base]
	return v, err
}

// read returns a cell's value in the evaluator's month; outside the months it is 0.
func (e *evaluator) read(cell int) decimal.Decimal {
	if !e.model.Cells[cell].Line.Monthly {
		return e.scalar[cell]
	}
	if e.month < 0 || e.month >= len(e.monthly[cell]) {
		return zero
	}
	return e.monthly[cell][e.month]
}

// across works out the words that look along the months or over a set.
func (e *evaluator) across(x *model.Expr) (decimal.Decimal, error) {
	here := e.month
	defer func() { e.month = here }()
	switch x.Op.Code {
	case formula.Month:
		return decimal.NewFromInt(int64(here)), nil
	case formula.Prior:
		e.month = here - 1
		return e.inMonth(x.Args[0])
	case formula.Ago, formula.At:
		n, err := e.value(x.Args[1])
		if err != nil {
			return zero, err
		}
		if e.month = int(n.IntPart()); x.Op.Code == formula.Ago {
			e.month = here - e.month
		}
		return e.inMonth(x.Args[0])
	case formula.Running:
		return e.sum(x.Args[0], here)
	case formula.Sum:
		return e.sum(x.Args[0], e.months)
	case formula.Lowest, formula.FirstMonth:
		return e.search(x)
	}
	total := zero // Total: one argument for each member
	for _, a := range x.Args {
		v, err := e.value(a)
		if err != nil {
			return zero, err
		}
		total = total.Add(v)
	}
	return total, nil
}

// inMonth is an expression's value in a month, 0 before the first and after the last.
func (e *evaluator) inMonth(x *model.Expr) (decimal.Decimal, error) {
	if e.month < 0 || e.month > e.months {
		return zero, nil
	}
	return e.value(x)
}

func (e *evaluator) sum(x *model.Expr, last int) (decimal.Decimal, error) {
	total := zero
	for e.month = 0; e.month <= last; e.month++ {
		v, err := e.value(x)
		if err != nil {
			return zero, err
		}
		total = total.Add(v)
	}
	return total, nil
}

func (e *evaluator) search(x *model.Expr) (decimal.Decimal, error) {
	least := zero
	for e.month = 0; e.month <= e.months; e.month++ {
		v, err := e.value(x.Args[0])
		if err != nil {
			return zero, err
		}
		if x.Op.Code == formula.FirstMonth {
			if !v.IsZero() {
				return decimal.NewFromInt(int64(e.month)), nil
			}
		} else if e.month == 0 || v.LessThan(least) {
			least = v
		}
	}
	return least, nil
}
