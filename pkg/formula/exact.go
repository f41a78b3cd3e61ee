package formula

import (
	"errors"
	"fmt"
	"math"

	"github.com/shopspring/decimal"
)

// residue is the decimal behind which nothing is kept in a line's value; quotients
// have three more.
const residue = 42

// digits is how many significant digits a quotient, a power or a root keeps.
const digits = 45

var (
	zero = decimal.Decimal{}
	unit = decimal.NewFromInt(1)
)

// ErrDivideByZero is returned by the exact rule of / when the divisor is 0.
var ErrDivideByZero = errors.New("division by zero")

func bool01(b bool) (decimal.Decimal, error) {
	if b {
		return unit, nil
	}
	return zero, nil
}

// Most sums and products of a deal are with 0 or 1, for which nothing need be made.

func exactAdd(a []decimal.Decimal) (decimal.Decimal, error) {
	switch {
	case idle(a[1], a[0]):
		return a[0], nil
	case idle(a[0], a[1]):
		return a[1], nil
	}
	return a[0].Add(a[1]), nil
}

func exactSub(a []decimal.Decimal) (decimal.Decimal, error) {
	if idle(a[1], a[0]) {
		return a[0], nil
	}
	return a[0].Sub(a[1]), nil
}

func exactMul(a []decimal.Decimal) (decimal.Decimal, error) {
	switch {
	case a[0].IsZero() || a[1].IsZero():
		return zero, nil
	case isOne(a[1]):
		return a[0], nil
	case isOne(a[0]):
		return a[1], nil
	}
	return a[0].Mul(a[1]), nil
}

// idle reports whether x is a 0 that adds nothing to y, not even places.
func idle(x, y decimal.Decimal) bool { return x.IsZero() && x.Exponent() >= y.Exponent() }

func isOne(x decimal.Decimal) bool { return x.Exponent() == 0 && x.Equal(unit) }

func exactDiv(a []decimal.Decimal) (decimal.Decimal, error) {
	if a[1].IsZero() {
		return zero, ErrDivideByZero
	}
	return Divide(a[0], a[1]), nil
}

// Divide returns a ÷ b to 45 significant digits; b must not be 0.
func Divide(a, b decimal.Decimal) decimal.Decimal {
	if a.IsZero() {
		return zero
	}
	size := a.NumDigits() + int(a.Exponent()) - b.NumDigits() - int(b.Exponent())
	return a.DivRound(b, int32(digits-size))
}

func exactLess(a []decimal.Decimal) (decimal.Decimal, error) { return bool01(a[0].LessThan(a[1])) }
func exactLessEqual(a []decimal.Decimal) (decimal.Decimal, error) {
	return bool01(a[0].LessThanOrEqual(a[1]))
}
func exactMore(a []decimal.Decimal) (decimal.Decimal, error) { return bool01(a[0].GreaterThan(a[1])) }
func exactMoreEqual(a []decimal.Decimal) (decimal.Decimal, error) {
	return bool01(a[0].GreaterThanOrEqual(a[1]))
}
func exactEqual(a []decimal.Decimal) (decimal.Decimal, error)    { return bool01(a[0].Equal(a[1])) }
func exactNotEqual(a []decimal.Decimal) (decimal.Decimal, error) { return bool01(!a[0].Equal(a[1])) }

func exactAnd(a []decimal.Decimal) (decimal.Decimal, error) {
	return bool01(!a[0].IsZero() && !a[1].IsZero())
}

func exactOr(a []decimal.Decimal) (decimal.Decimal, error) {
	return bool01(!a[0].IsZero() || !a[1].IsZero())
}
func exactNot(a []decimal.Decimal) (decimal.Decimal, error)      { return bool01(a[0].IsZero()) }
func exactNegative(a []decimal.Decimal) (decimal.Decimal, error) { return a[0].Neg(), nil }

func exactMin(a []decimal.Decimal) (decimal.Decimal, error) {
	return decimal.Min(a[0], a[1:]...), nil
}

func exactMax(a []decimal.Decimal) (decimal.Decimal, error) {
	return decimal.Max(a[0], a[1:]...), nil
}

func exactIf(a []decimal.Decimal) (decimal.Decimal, error) {
	if a[0].IsZero() {
		return a[2], nil
	}
	return a[1], nil
}

// tidy rounds to 9 decimals, so that a quotient a hair off a whole cent or a
// whole number falls where the true value lies.
func tidy(x decimal.Decimal) decimal.Decimal {
	if x.Exponent() >= -9 {
		return x
	}
	return x.Round(9)
}

func exactCents(a []decimal.Decimal) (decimal.Decimal, error) {
	if a[0].Exponent() >= -2 {
		return a[0], nil
	}
	return tidy(a[0]).Round(2), nil
}

func exactCeil(a []decimal.Decimal) (decimal.Decimal, error)  { return tidy(a[0]).Ceil(), nil }
func exactFloor(a []decimal.Decimal) (decimal.Decimal, error) { return tidy(a[0]).Floor(), nil }

// farthest is how many powers of ten a power may lie from 1.
const farthest = 10000

// exactPower works for a positive base; a whole exponent also for others.
func exactPower(a []decimal.Decimal) (decimal.Decimal, error) {
	if a[0].IsZero() && !a[1].IsPositive() {
		return zero, errors.New("0 to a power that is not positive")
	}
	if a[0].IsNegative() && !a[1].IsInteger() {
		return zero, fmt.Errorf("%s to a power that is not whole", a[0])
	}
	exponent := a[1].InexactFloat64()
	if math.Abs(math.Log10(a[0].Abs().InexactFloat64())*exponent) > farthest && !a[0].IsZero() || math.Abs(exponent) > 1e15 {
		return zero, fmt.Errorf("%s to the power of %s is beyond reach", a[0], a[1])
	}
	switch {
	case !a[1].IsInteger():
		x, err := a[0].PowWithPrecision(a[1], digits)
		if err != nil {
			return zero, fmt.Errorf("power: %w", err)
		}
		return x, nil
	case a[1].IsNegative():
		return Divide(unit, raised(a[0], -a[1].IntPart())), nil
	}
	return raised(a[0], a[1].IntPart()), nil
}

// raised returns x to a whole power n of at least 0, by squaring.
func raised(x decimal.Decimal, n int64) decimal.Decimal {
	y := unit
	for ; n > 0; n /= 2 {
		if n%2 == 1 {
			y = Trim(y.Mul(x))
		}
		x = Trim(x.Mul(x))
	}
	return y
}

func exactRoot(a []decimal.Decimal) (decimal.Decimal, error) {
	if a[0].IsNegative() {
		return zero, fmt.Errorf("the square root of %s", a[0])
	}
	if a[0].IsZero() {
		return zero, nil
	}
	// With its places shifted by an even number, the whole root has 45 digits.
	shift := max(0, 2*digits-int32(a[0].NumDigits()))
	shift += (a[0].Exponent() - shift) & 1
	n := a[0].Shift(shift - a[0].Exponent()).BigInt()
	return decimal.NewFromBigInt(n.Sqrt(n), (a[0].Exponent()-shift)/2), nil
}

// exactLevelPayment is the annuity formula: principal × i ÷ (1 - (1+i)^-n), or
// principal ÷ n at no interest. n must be a whole number of at least 1.
func exactLevelPayment(a []decimal.Decimal) (decimal.Decimal, error) {
	principal, i, n := a[0], a[1], a[2]
	if !n.IsPositive() || !n.IsInteger() {
		return zero, fmt.Errorf("a level payment over %s months", n)
	}
	if !i.GreaterThan(unit.Neg()) {
		return zero, fmt.Errorf("a level payment at a rate of %s a month", i)
	}
	grown, err := exactPower([]decimal.Decimal{unit.Add(i), n})
	if err != nil {
		return zero, fmt.Errorf("a level payment: %w", err)
	}
	if grown.Equal(unit) { // no interest, or too little to tell
		return Divide(principal, n), nil
	}
	return Divide(principal.Mul(i).Mul(grown), grown.Sub(unit)), nil
}

// Keep is what a line keeps of what its formula comes to: not too many digits, and
// none behind the 42nd decimal, where quotients that add up to a round number, such
// as days in parts of months, leave a residue.
func Keep(x decimal.Decimal) decimal.Decimal {
	if x.Exponent() < -residue {
		x = x.Round(residue)
	}
	return Trim(x)
}

// Trim cuts a number of very many digits to 60 significant ones, more than any
// result needs, so that long chains of products stay quick.
func Trim(x decimal.Decimal) decimal.Decimal {
	n := x.NumDigits()
	if n <= 90 {
		return x
	}
	return x.Round(int32(60 - n - int(x.Exponent())))
}
