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
