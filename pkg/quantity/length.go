package quantity

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// lengthPlaces are the decimals of a metre that a length may have, so that those of
// an area are at most Places.
const lengthPlaces = Places / 2

// Length is an exact length. It is held as a decimal of metres, since an inch is
// 0.0254 m (NIST SP 811, from memory): feet, inches, their halves down to any power
// of two, a third of a foot, and metres all have an end there. None of the others
// would do: an inch has none in feet (1/12), a metre none in either.
type Length struct{ metres decimal.Decimal }

// Feet returns a length of so many feet, exactly.
func Feet(n decimal.Decimal) Length { return Length{trim(n.Mul(unitTable["ft"].size))} }

// Metres returns the length in metres, exactly.
func (l Length) Metres() decimal.Decimal { return l.metres }

// Inches returns the length in inches, rounded half away from zero to Places
// decimals. What was written in feet, inches or yards is exact; metres have no end.
func (l Length) Inches() decimal.Decimal { return quotient(l.metres, unitTable["in"].size) }

// Feet returns the length in feet, rounded half away from zero to Places decimals:
// most inches have no end. Sum lengths first and convert the sum.
func (l Length) Feet() decimal.Decimal { return quotient(l.metres, unitTable["ft"].size) }

// Add returns the sum, exactly.
func (l Length) Add(other Length) Length { return Length{trim(l.metres.Add(other.metres))} }

// Times returns the area of a rectangle of these sides, exactly.
func (l Length) Times(other Length) Area { return Area{trim(l.metres.Mul(other.metres))} }

// Cmp returns -1, 0 or 1 for a length below, equal to or above the other.
func (l Length) Cmp(other Length) int { return l.metres.Cmp(other.metres) }

// String prints feet and inches: 8' 2 1/2", 6', 5/8". Whole thirty-seconds of an
// inch are exact; anything else is rounded to the nearest sixteenth, half away from zero.
func (l Length) String() string {
	if l.metres.IsNegative() {
		return "-" + Length{l.metres.Neg()}.String()
	}
	const foot = 12 * 32 // in thirty-seconds of an inch
	n := quotient(l.metres.Mul(decimal.NewFromInt(32)), unitTable["in"].size)
	if !n.IsInteger() {
		n = quotient(l.metres.Mul(decimal.NewFromInt(16)), unitTable["in"].size).Round(0).Mul(decimal.NewFromInt(2))
	}
	feet, rest := new(big.Int).QuoRem(n.BigInt(), big.NewInt(foot), new(big.Int))
	inches := inchMarks(rest.Int64())
	switch {
	case feet.Sign() == 0:
		return inches
	case rest.Sign() == 0:
		return commas(feet.String()) + "'"
	}
	return commas(feet.String()) + "' " + inches
}

// inchMarks prints thirty-seconds of an inch.
func inchMarks(n int64) string {
	whole, top, bottom := n/32, n%32, int64(32)
	for top > 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf(`%d"`, whole)
	case whole == 0:
		return fmt.Sprintf(`%d/%d"`, top, bottom)
	}
	return fmt.Sprintf(`%d %d/%d"`, whole, top, bottom)
}
