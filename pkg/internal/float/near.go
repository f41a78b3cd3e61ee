// Package float turns exact decimals into floats for readers that need only be near.
package float

import (
	"math"
	"strconv"

	"github.com/shopspring/decimal"
)

// Near is the float64 nearest to a number. Up to 15 digits and 22 decimals it is one
// quotient of two numbers that float64 holds exactly; with more it is read from its digits.
func Near(x decimal.Decimal) float64 {
	if e := x.Exponent(); e <= 0 && e >= -22 && x.NumDigits() <= 15 {
		return float64(x.CoefficientInt64()) / math.Pow10(int(-e))
	}
	x64, _ := strconv.ParseFloat(x.String(), 64) // which rounds as x.InexactFloat64 does, in half the time
	return x64
}
