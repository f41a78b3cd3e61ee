package affine

import "math"

// Truth is what is known of a condition: no, yes or either.
var (
	no     = Number{}
	yes    = Number{C: 1}
	either = Number{Lo: 0, Hi: 1, grain: Whole}
)

func truth(isTrue, isFalse bool) Number {
	switch {
	case isTrue:
		return yes
	case isFalse:
		return no
	}
	return either
}

// Less returns 1 where x < y, 0 where not.
func Less(x, y Number) Number {
	a, b := Sub(x, y).Bounds()
	return truth(b < -apart, a >= -same)
}

// LessEqual returns 1 where x <= y, 0 where not.
func LessEqual(x, y Number) Number {
	a, b := Sub(x, y).Bounds()
	return truth(b <= same, a > apart)
}

// Equal returns 1 where x = y, 0 where not.
func Equal(x, y Number) Number {
	a, b := Sub(x, y).Bounds()
	return truth(a >= -same && b <= same, b < -apart || a > apart)
}

// Not turns yes into no.
func Not(x Number) Number { return Sub(yes, x) }

// And returns 1 where both hold.
func And(x, y Number) Number {
	switch {
	case x == no || y == no:
		return no
	case x == yes:
		return y
	case y == yes:
		return x
	}
	return either
}

// Or returns 1 where either holds.
func Or(x, y Number) Number { return Not(And(Not(x), Not(y))) }

// If returns x where the condition holds and y where not.
func If(cond, x, y Number) Number {
	switch {
	case cond == yes:
		return x
	case cond == no:
		return y
	}
	return hull(x, y)
}

// Cents returns x rounded to cents.
func Cents(x Number) Number {
	if x.Grain() >= OfCents {
		return x
	}
	if !x.Fixed() {
		return x.widen(-0.005, 0.005).from(byRounding, x, Number{}).of(OfCents)
	}
	y := x.C * 100
	r := math.Round(y)
	if math.Abs(math.Abs(y-math.Trunc(y))-0.5) < 1e-5 { // too near the tie to tell
		f := math.Floor(y)
		return Number{C: f / 100, Hi: 0.01, grain: OfCents}
	}
	return Exactly(r / 100)
}

// nine is half of the ninth decimal, to which exact steps round first; nearer
// than a tenth of that to the edge it makes, float64 decides nothing.
const nine = 0.5e-9

// Ceil returns x rounded up to a whole number.
func Ceil(x Number) Number {
	if x.Grain() == Whole {
		return x
	}
	a, b := x.Bounds()
	if c := math.Ceil(a - nine*1.1); c == math.Ceil(b-nine*0.9) {
		return Exactly(c)
	}
	return x.widen(-nine*2, 1).from(byStepping, x, Number{}).of(Whole)
}

// Floor returns x rounded down to a whole number.
func Floor(x Number) Number { return Neg(Ceil(Neg(x))) }

// Power returns x to the power y for positive x.
func Power(x, y Number) Number {
	if x.Fixed() && y.Fixed() {
		return Exactly(math.Pow(x.C, y.C))
	}
	a, b := x.Bounds()
	c, d := y.Bounds()
	if a <= 0 {
		return Unknown()
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range []float64{math.Pow(a, c), math.Pow(a, d), math.Pow(b, c), math.Pow(b, d)} {
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	return Exactly(lo).widen(0, hi-lo).from(byPower, x, y)
}

// LevelPayment returns the payment that clears a principal over n periods at a
// periodic rate; the rate and n must be fixed.
func LevelPayment(principal, rate, n Number) Number {
	if !rate.Fixed() || !n.Fixed() || n.C <= 0 {
		return Unknown()
	}
	if rate.C == 0 {
		return scale(principal, 1/n.C)
	}
	// 1 - (1+rate)^-n, written so that a small rate keeps its digits.
	return scale(principal, rate.C/-math.Expm1(-n.C*math.Log1p(rate.C)))
}
