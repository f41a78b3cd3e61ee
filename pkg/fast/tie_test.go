package fast_test

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// A ties walks a deal exactly and notes whether a comparison or a rounding turned on less
// than float64 can tell: there the two readers may part by a step, and nowhere else.
type ties struct {
	walk.Decimals
	met string // the operator of one, or ""
}

// tidy is half of a 9th decimal: rounding turns so far under half a cent or a whole number.
var tidy = decimal.New(5, -10)

func (t *ties) Apply(op *formula.Op, args []decimal.Decimal) (decimal.Decimal, error) {
	x := args[0]
	switch op.Code {
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual:
		if d := x.Sub(args[1]); !d.IsZero() {
			t.look(op, d, x, formula.Near01)
		}
	case formula.Ceil:
		t.look(op, fromWhole(x.Sub(tidy)), x, 0)
	case formula.Floor:
		t.look(op, fromWhole(x.Add(tidy)), x, 0)
	case formula.Cents:
		t.look(op, fromWhole(x.Abs().Add(tidy).Shift(2).Sub(decimal.New(5, -1))).Shift(-2), x, 0)
	}
	return op.Exact(args)
}

func fromWhole(x decimal.Decimal) decimal.Decimal { return x.Sub(x.Round(0)) }

// look notes a tie if a value lies nearer to an edge than float64 can tell by its size.
func (t *ties) look(op *formula.Op, apart, size decimal.Decimal, least float64) {
	if apart.Abs().InexactFloat64() <= least+1e-12+4e-15*size.Abs().InexactFloat64() {
		t.met = op.Name
	}
}

// exactly works a deal out with some cells changed, and says which operator, if any, met
// a tie.
func exactly(m *model.Model, steps []model.Step, changes map[int]decimal.Decimal) (*walk.Values[decimal.Decimal], string, error) {
	t := &ties{}
	w := walk.Walker[decimal.Decimal, *ties]{Values: walk.New[decimal.Decimal](m), Rules: t, Changed: changes}
	err := w.Steps(steps)
	return w.Values, t.met, err
}
