package walk

import (
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// value works out an expression in the walker's month.
func (w *Walker[T, R]) value(x *model.Expr) (T, error) {
	if x.Op == nil {
		if cell := x.Reads(w.of); cell >= 0 {
			return w.read(cell)
		}
		return w.Rules.Number(x), nil
	}
	if x.Op.Exact == nil {
		return w.across(x)
	}
	if x.Op.Code == formula.If {
		return w.branch(x)
	}
	base := len(w.stack)
	for _, a := range x.Args {
		v, err := w.value(a)
		if err != nil {
			w.stack = w.stack[:base]
			return v, err
		}
		w.stack = append(w.stack, v)
	}
	v, err := w.Rules.Apply(x.Op, w.stack[base:])
	w.stack = w.stack[:base]
	return v, err
}

// branch works out only what can be taken, so the rest may be undefined.
func (w *Walker[T, R]) branch(x *model.Expr) (T, error) {
	cond, err := w.value(x.Args[0])
	if err != nil {
		return cond, err
	}
	canHold, canFail := w.Rules.Truth(cond)
	if !canFail {
		return w.value(x.Args[1])
	}
	if !canHold {
		return w.value(x.Args[2])
	}
	yes, err := w.value(x.Args[1])
	if err != nil {
		return yes, err
	}
	no, err := w.value(x.Args[2])
	if err != nil {
		return no, err
	}
	return w.Rules.Apply(x.Op, []T{cond, yes, no})
}

// read returns a cell's value in the walker's month; outside the months it is 0.
func (w *Walker[T, R]) read(cell int) (T, error) {
	var zero T
	if w.Ask != nil && !w.done[cell] {
		if err := w.Ask(cell); err != nil {
			return zero, err
		}
	}
	row := w.Model.Row(cell)
	if row < 0 {
		return w.Scalar[cell], nil
	}
	if months := w.months[row]; w.month >= 0 && w.month < len(months) {
		return months[w.month], nil
	}
	return zero, nil
}

// across works out the words that look along the months or over a set.
func (w *Walker[T, R]) across(x *model.Expr) (T, error) {
	here := w.month
	defer func() { w.month = here }()
	switch x.Op.Code {
	case formula.Month:
		return w.Rules.Int(here), nil
	case formula.Prior:
		w.month = here - 1
		return w.inMonth(x.Args[0])
	case formula.Ago, formula.At:
		v, err := w.value(x.Args[1])
		if err != nil {
			return v, err
		}
		n, known := w.Rules.Whole(v)
		if !known {
			return w.Rules.Unknown()
		}
		if w.month = n; x.Op.Code == formula.Ago {
			w.month = here - n
		}
		return w.inMonth(x.Args[0])
	case formula.Running:
		return w.fold(formula.Add, x.Args[0], here)
	case formula.Sum:
		return w.fold(formula.Add, x.Args[0], w.Last)
	case formula.Lowest:
		return w.fold(formula.Min, x.Args[0], w.Last)
	case formula.FirstMonth:
		return w.firstMonth(x.Args[0])
	}
	return w.over(x)
}

// over works out what an operator makes of other members: their total, the largest, or
// the value of the one before.
func (w *Walker[T, R]) over(x *model.Expr) (all T, err error) {
	here := w.of
	defer func() { w.of = here }()
	code, first := formula.Add, true
	if x.Op.Code == formula.Largest {
		code = formula.Max
	}
	for m, of := range x.Over(here) {
		w.of = m
		v, err := w.value(of)
		if err != nil {
			return v, err
		}
		if first {
			all, first = v, false
		} else if all, err = w.both(code, all, v); err != nil {
			return all, err
		}
	}
	return all, nil
}

// both puts two values together with an operator.
func (w *Walker[T, R]) both(code formula.Code, x, y T) (T, error) {
	base := len(w.stack)
	w.stack = append(w.stack, x, y)
	v, err := w.Rules.Apply(formula.Table[code], w.stack[base:])
	w.stack = w.stack[:base]
	return v, err
}

// inMonth is an expression's value in a month, 0 before the first and after the last.
func (w *Walker[T, R]) inMonth(x *model.Expr) (T, error) {
	if w.month < 0 || w.month > w.Last {
		var zero T
		return zero, nil
	}
	return w.value(x)
}

// fold puts the values of months 0 to last together with an operator.
func (w *Walker[T, R]) fold(code formula.Code, x *model.Expr, last int) (T, error) {
	var all T
	for w.month = 0; w.month <= last; w.month++ {
		v, err := w.value(x)
		if err != nil {
			return v, err
		}
		if w.month == 0 {
			all = v
			continue
		}
		if all, err = w.both(code, all, v); err != nil {
			return all, err
		}
	}
	return all, nil
}

// firstMonth is the first month in which a condition holds; 0 if in none. Where
// that is not certain, it lies between the first that can and the first that must.
func (w *Walker[T, R]) firstMonth(x *model.Expr) (T, error) {
	can := -1
	for w.month = 0; w.month <= w.Last; w.month++ {
		v, err := w.value(x)
		if err != nil {
			return v, err
		}
		canHold, canFail := w.Rules.Truth(v)
		if canHold && can < 0 {
			can = w.month
		}
		if canHold && !canFail {
			return w.between(can, w.month, v)
		}
	}
	var none T
	if can < 0 {
		return none, nil
	}
	return w.between(0, w.Last, none)
}

func (w *Walker[T, R]) between(from, to int, open T) (T, error) {
	if from == to {
		return w.Rules.Int(from), nil
	}
	return w.Rules.Apply(formula.Table[formula.If], []T{open, w.Rules.Int(from), w.Rules.Int(to)})
}
