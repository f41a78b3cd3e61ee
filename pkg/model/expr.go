package model

import (
	"iter"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/float"
)

// An Expr is a formula with its names resolved. Without an operator it is the cell it
// refers to or the number. The same one serves all members of a shape, so which cell it
// refers to depends on whose formula it is.
type Expr struct {
	Op     *formula.Op
	Args   []*Expr // none where the operator looks at other members: see Over
	Number decimal.Decimal
	Node   *formula.Node // what was written
	way    ref
	near   float64
	others []other
}

// An other is what an operator takes of other members that are of one shape.
type other struct {
	of   *shape
	rule rule
}

// Near is the number as a float64, for readers that only need to be near.
func (e *Expr) Near() float64 { return e.near }

// IsNumber reports whether e is a number and neither an operator nor a cell.
func (e *Expr) IsNumber() bool { return e.Op == nil && e.way.place < 0 }

// Reads returns the index of the cell that e refers to in a formula of x, or -1 for a
// number. It is not for operators.
func (e *Expr) Reads(x *Member) int { return e.way.from(x) }

// Over yields what an operator looks at in a formula of x, each with the member that it
// is to be read from: the members of a set, or the one before, if there is any. After
// With it is the arguments, read from x.
func (e *Expr) Over(x *Member) iter.Seq2[*Member, *Expr] {
	return func(yield func(*Member, *Expr) bool) {
		for _, a := range e.Args {
			if !yield(x, a) {
				return
			}
		}
		if e.others == nil {
			return
		}
		if e.Op.Code == formula.Previous {
			if m := x.Before(e.Node.Set); m != nil {
				yield(m, e.other(m).expr)
			}
			return
		}
		for m := range x.Each(e.Node.Set) {
			if !yield(m, e.other(m).expr) {
				return
			}
		}
	}
}

// other is what is taken of a member.
func (e *Expr) other(m *Member) *rule {
	i := 0
	for e.others[i].of != m.shape {
		i++
	}
	return &e.others[i].rule
}

// With returns the operator over other arguments, which take the place of all that it
// looked at.
func (e *Expr) With(args []*Expr) *Expr {
	out := *e
	out.Args, out.others = args, nil
	return &out
}

// From returns e, which is no operator, as it stands in a formula of x, for use in the
// formula of any member.
func (e *Expr) From(x *Member) *Expr {
	if e.IsNumber() {
		return e
	}
	return &Expr{Node: e.Node, way: toCell(e.way.from(x))}
}

// Constant returns the expression that is a number.
func Constant(n decimal.Decimal) *Expr {
	e := constant(n)
	return &e
}

func constant(n decimal.Decimal) Expr {
	return Expr{way: nowhere, Number: n, near: float.Near(n)}
}

func choiceNumber(l *Line, word string) Expr {
	return constant(decimal.NewFromInt(int64(slices.Index(l.Choices, word) + 1)))
}
