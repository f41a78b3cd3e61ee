package why

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// across lays out the words that look along the months or over a set.
func (f frame) across(e *model.Expr) *Tree {
	switch e.Op.Code {
	case formula.Month:
		return f.operation(e.Op, e.Node)
	case formula.Prior:
		return f.operation(e.Op, e.Node, f.inMonth(e, f.month-1))
	case formula.Ago, formula.At:
		n := f.arg(e, 1)
		return f.operation(e.Op, e.Node, f.inMonth(e, f.otherMonth(e.Op, n.Value)), plus(n))
	case formula.Running:
		return f.operation(e.Op, e.Node, f.months(e, f.month)...)
	case formula.Previous:
		return f.before(e)
	case formula.Total, formula.Largest:
		return f.operation(e.Op, e.Node, f.members(e)...)
	}
	return f.operation(e.Op, e.Node, f.months(e, f.values.Months())...)
}

func (f frame) otherMonth(op *formula.Op, n decimal.Decimal) int {
	if op.Code == formula.Ago {
		return f.month - int(n.IntPart())
	}
	return int(n.IntPart())
}

// inMonth is an expression's first value in a month; outside the months it is nothing.
func (f frame) inMonth(e *model.Expr, month int) Term {
	f.month = month
	x := Term{Sign: 1, Role: fmt.Sprintf("month %d", month), Month: month}
	if month < 0 || month > f.values.Months() {
		x.Tree = f.leaf(Nothing, e.Node.Args[0], decimal.Decimal{})
	} else {
		x.Tree = f.arg(e, 0)
	}
	return x
}

// months are the values of months 0 to last; first_month stops where it holds.
func (f frame) months(e *model.Expr, last int) []Term {
	var out []Term
	for m := 0; m <= last; m++ {
		x := f.inMonth(e, m)
		out = append(out, x)
		if e.Op.Code == formula.FirstMonth && !x.Value.IsZero() {
			break
		}
	}
	return out
}

// members are the values of the members that a total adds.
func (f frame) members(e *model.Expr) []Term {
	var out []Term
	for m, of := range e.Over(f.member) {
		f.member = m
		x := plus(f.build(of, e.Node.Args[0]))
		x.Role = m.Label
		out = append(out, x)
	}
	return out
}

// before is the value of the member before; nothing if there is none.
func (f frame) before(e *model.Expr) *Tree {
	for m, of := range e.Over(f.member) {
		f.member = m
		return f.build(of, e.Node.Args[0])
	}
	return f.leaf(Nothing, e.Node, decimal.Decimal{})
}
