package flat

import (
	"fmt"
	"math"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// across makes the words that look along the months.
func (b *builder) across(x *model.Expr, of *model.Member, month int) (int32, error) {
	if b.last < 0 {
		return 0, fmt.Errorf("%s runs by month", x.Op.Name)
	}
	switch x.Op.Code {
	case formula.Month:
		return b.number(float64(month)), nil
	case formula.Prior:
		return b.in(x.Args[0], of, month-1)
	case formula.Ago, formula.At:
		return b.lookUp(x, of, month)
	case formula.Running:
		return b.along(formula.Add, x.Args[0], of, month)
	case formula.Sum:
		return b.along(formula.Add, x.Args[0], of, b.last)
	case formula.Lowest:
		return b.along(formula.Min, x.Args[0], of, b.last)
	case formula.FirstMonth:
		return b.firstMonth(x.Args[0], of)
	}
	return 0, fmt.Errorf("%s has no place in a list", x.Op.Name)
}

// in is an expression in a month, 0 before the first and after the last.
func (b *builder) in(x *model.Expr, of *model.Member, month int) (int32, error) {
	if month < 0 || month > b.last {
		return b.number(0), nil
	}
	return b.expr(x, of, month)
}

func (b *builder) along(code formula.Code, x *model.Expr, of *model.Member, last int) (int32, error) {
	all, err := b.expr(x, of, 0)
	for m := 1; m <= last && err == nil; m++ {
		var at int32
		at, err = b.expr(x, of, m)
		all = b.make(code, all, at)
	}
	return all, err
}

func (b *builder) firstMonth(x *model.Expr, of *model.Member) (int32, error) {
	first := b.number(0)
	for m := b.last; m >= 0; m-- {
		holds, err := b.expr(x, of, m)
		if err != nil {
			return 0, err
		}
		first = b.make(formula.If, holds, b.number(float64(m)), first)
	}
	return first, nil
}

// lookUp is the value in a month or of so many months before. Where which one varies, it
// is looked for among all; a number of months that is not whole has no value.
func (b *builder) lookUp(x *model.Expr, of *model.Member, month int) (int32, error) {
	which, err := b.expr(x.Args[1], of, month)
	if err != nil {
		return 0, err
	}
	back := x.Op.Code == formula.Ago
	if v := b.list.Values[which]; v.Code == Number {
		n := int(v.Number)
		switch {
		case float64(n) != v.Number:
			return b.number(math.NaN()), nil
		case back:
			n = month - n
		}
		return b.in(x.Args[0], of, n)
	}
	whole := b.make(formula.Equal, which, b.make(formula.Floor, which))
	found := b.make(formula.If, whole, b.number(0), b.number(math.NaN()))
	last := b.last
	if back {
		last = month // none looks ahead: of later months nothing may be known yet
	}
	for m := 0; m <= last; m++ {
		at, err := b.expr(x.Args[0], of, m)
		if err != nil {
			return 0, err
		}
		n := m
		if back {
			n = month - m
		}
		found = b.make(formula.If, b.make(formula.Equal, which, b.number(float64(n))), at, found)
	}
	return found, nil
}
