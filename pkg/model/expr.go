package model

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
)

// An Expr is a formula with its names resolved. Without an operator it is the cell it
// refers to or the number. The same one serves all members of a shape, so which cell it
// refers to depends on whose formula it is.
type Expr struct {
	Op     *formula.Op
	Args   []*Expr
	Number decimal.Decimal
	Node   *formula.Node // what was written
	way    ref
	near   float64
}

// Near is the number as a float64, for readers that only need to be near.
func (e *Expr) Near() float64 { return e.near }

// IsNumber reports whether e is a number and neither an operator nor a cell.
func (e *Expr) IsNumber() bool { return e.Op == nil && e.way.place < 0 }

// Reads returns the index of the cell that e refers to in a formula of x, or -1 for a
// number. It is not for operators.
func (e *Expr) Reads(x *Member) int { return e.way.from(x) }

// Constant returns the expression that is a number.
func Constant(n decimal.Decimal) *Expr {
	e := constant(n)
	return &e
}

func constant(n decimal.Decimal) Expr {
	return Expr{way: nowhere, Number: n, near: formula.Near(n)}
}

func choiceNumber(l *Line, word string) Expr {
	return constant(decimal.NewFromInt(int64(slices.Index(l.Choices, word) + 1)))
}
