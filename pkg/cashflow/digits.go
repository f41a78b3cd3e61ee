package cashflow

import (
	"errors"
	"math/big"

	"github.com/shopspring/decimal"
)

const (
	// rateDigits are the significant digits of a rate of return.
	rateDigits = 34
	// maxPeriods bounds the degree: a century of months. A deal has dozens.
	maxPeriods = 1200
	// maxParts bounds the distinct fractions of a period in one [APR]. A loan
	// paid off within a month has one.
	maxParts = 16
	// maxDigits bounds the span between the largest and the smallest digit.
	maxDigits = 1000
)

// ErrTooLarge is a question beyond any deal, refused because exact arithmetic
// would take forever: over 1,200 periods, 16 distinct parts of a period or
// 1,000 digits.
var ErrTooLarge = errors.New("too many periods or digits for a rate of return")

// integers returns the amounts scaled by one power of ten to whole numbers, as
// a polynomial without zeros at either end. Scaling does not move a root.
func integers(amounts []decimal.Decimal) (poly, error) {
	if len(amounts) > maxPeriods+maxParts {
		return nil, ErrTooLarge
	}
	low, high := span(amounts)
	if high-low > maxDigits {
		return nil, ErrTooLarge
	}
	p := make(poly, len(amounts))
	for k, a := range amounts {
		p[k] = a.Coefficient()
		if p[k].Sign() != 0 {
			p[k].Mul(p[k], pow10(int64(a.Exponent())-low))
		}
	}
	return p.trimmed(), nil
}

// span returns the decimal places of the lowest and above the highest digit of
// the amounts that are not zero, and no places if all are.
func span(amounts []decimal.Decimal) (low, high int64) {
	for _, a := range amounts {
		if a.IsZero() {
			continue
		}
		l := int64(a.Exponent())
		h := l + int64(a.NumDigits())
		if high == low {
			low, high = l, h
		}
		low, high = min(low, l), max(high, h)
	}
	return low, high
}

func pow10(n int64) *big.Int { return new(big.Int).Exp(big.NewInt(10), big.NewInt(n), nil) }

// significant rounds d, half away from zero, to so many significant digits.
func significant(d decimal.Decimal, digits int) decimal.Decimal {
	drop := d.NumDigits() - digits
	if drop <= 0 {
		return d
	}
	return d.Round(-d.Exponent() - int32(drop))
}

// quotient returns a/b, rounded, to at least so many significant digits.
func quotient(a, b decimal.Decimal, digits int) decimal.Decimal {
	magnitude := a.NumDigits() + int(a.Exponent()) - b.NumDigits() - int(b.Exponent())
	places := max(0, digits-magnitude)
	return significant(a.DivRound(b, int32(places+1)), digits)
}

// growthRate is x - 1, the rate for a root x = 1 + i below 1.
func (x dyadic) growthRate() decimal.Decimal {
	one := new(big.Int).Lsh(big.NewInt(1), x.exp)
	loss := new(big.Int).Sub(x.num, one)
	return ratio(loss, one, min(loss.BitLen(), x.num.BitLen()))
}

// discountRate is 1/x - 1, the rate for a root x = 1/(1+i) below 1.
func (x dyadic) discountRate() decimal.Decimal {
	gain := new(big.Int).Lsh(big.NewInt(1), x.exp)
	gain.Sub(gain, x.num)
	return ratio(gain, x.num, gain.BitLen())
}

// ratio returns num/den to rateDigits significant digits of a number of so many
// bits over den.
func ratio(num, den *big.Int, bits int) decimal.Decimal {
	const log2 = 30103 // of ten, in 1/100,000
	magnitude := floorDiv((bits-den.BitLen())*log2, 100000)
	places := max(0, rateDigits-magnitude)
	return decimal.NewFromBigInt(num, 0).DivRound(decimal.NewFromBigInt(den, 0), int32(places))
}

func floorDiv(a, b int) int {
	if a < 0 {
		return -((-a + b - 1) / b)
	}
	return a / b
}
