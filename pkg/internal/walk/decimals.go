package walk

import (
	"errors"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// Decimals are the rules of exact decimals.
type Decimals struct{}

func (Decimals) Number(x *model.Expr) decimal.Decimal { return x.Number }

func (Decimals) Int(n int) decimal.Decimal { return decimal.NewFromInt(int64(n)) }

func (Decimals) Apply(op *formula.Op, args []decimal.Decimal) (decimal.Decimal, error) {
	return op.Exact(args)
}

func (Decimals) Truth(x decimal.Decimal) (canHold, canFail bool) { return !x.IsZero(), x.IsZero() }

func (Decimals) Whole(x decimal.Decimal) (int, bool) { return int(x.IntPart()), x.IsInteger() }

func (Decimals) Unknown() (decimal.Decimal, error) {
	return decimal.Decimal{}, errors.New("a number of months that is not whole")
}

func (Decimals) Last(x decimal.Decimal) int { return int(x.IntPart()) }

func (Decimals) Keep(x decimal.Decimal) decimal.Decimal { return formula.Keep(x) }

// As turns decimals into another kind of number, 0 into its zero value.
func As[T any](v *Values[decimal.Decimal], of func(decimal.Decimal) T) *Values[T] {
	out := New[T](v.Model)
	out.Last = v.Last
	turn := func(x decimal.Decimal) (y T) {
		if !x.IsZero() {
			y = of(x)
		}
		return y
	}
	for c, x := range v.Scalar {
		out.Scalar[c] = turn(x)
	}
	for row, months := range v.months {
		if months == nil {
			continue
		}
		out.months[row] = make([]T, len(months))
		for i, x := range months {
			out.months[row][i] = turn(x)
		}
	}
	return out
}
