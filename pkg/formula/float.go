package formula

import (
	"math"
	"slices"
)

// Near01 is how far apart two float64 may lie and count as equal: less than any
// difference that a comparison of a deal turns on, more than roundings leave.
const Near01 = 1e-9

func float01(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func floatAdd(a []float64) float64       { return a[0] + a[1] }
func floatSub(a []float64) float64       { return a[0] - a[1] }
func floatMul(a []float64) float64       { return a[0] * a[1] }
func floatDiv(a []float64) float64       { return a[0] / a[1] }
func floatLess(a []float64) float64      { return float01(a[0] < a[1]-Near01) }
func floatLessEqual(a []float64) float64 { return float01(a[0] <= a[1]+Near01) }
func floatMore(a []float64) float64      { return float01(a[0] > a[1]+Near01) }
func floatMoreEqual(a []float64) float64 { return float01(a[0] >= a[1]-Near01) }
func floatEqual(a []float64) float64     { return float01(math.Abs(a[0]-a[1]) <= Near01) }
func floatNotEqual(a []float64) float64  { return float01(math.Abs(a[0]-a[1]) > Near01) }
func floatAnd(a []float64) float64       { return float01(a[0] != 0 && a[1] != 0) }
func floatOr(a []float64) float64        { return float01(a[0] != 0 || a[1] != 0) }
func floatNot(a []float64) float64       { return float01(a[0] == 0) }
func floatNegative(a []float64) float64  { return -a[0] }
func floatMin(a []float64) float64       { return slices.Min(a) }
func floatMax(a []float64) float64       { return slices.Max(a) }

func floatIf(a []float64) float64 {
	if a[0] == 0 {
		return a[2]
	}
	return a[1]
}

// tidy9 is half of a 9th decimal: the exact rules round to 9 decimals before they round.
const tidy9 = 5e-10

// Cents64 rounds to the cent as the exact rule does, in one step: what lies at most half
// of a 9th decimal under half a cent counts as half a cent.
func Cents64(x float64) float64 {
	return math.Trunc(float64(x*100)+math.Copysign(0.5+100*tidy9, x)) / 100
}

// Ceil64 rounds up to a whole number; what lies at most half of a 9th decimal above one is
// that one.
func Ceil64(x float64) float64 { return math.Ceil(x - tidy9) }

// Floor64 rounds down in the same way.
func Floor64(x float64) float64 { return math.Floor(x + tidy9) }

func floatCents(a []float64) float64 { return Cents64(a[0]) }
func floatCeil(a []float64) float64  { return Ceil64(a[0]) }
func floatFloor(a []float64) float64 { return Floor64(a[0]) }
func floatPower(a []float64) float64 { return math.Pow(a[0], a[1]) }
func floatRoot(a []float64) float64  { return math.Sqrt(a[0]) }

func floatLevelPayment(a []float64) float64 {
	if a[1] == 0 {
		return a[0] / a[2]
	}
	return a[0] * a[1] / -math.Expm1(-a[2]*math.Log1p(a[1]))
}
