// Package affine holds numbers that are only known as a function of one thing
// that varies: x(t) = C + S·t + e, for t from 0 to 1 and e somewhere between Lo
// and Hi. Sums of such numbers lose nothing, so a loan that comes in and goes
// out again cancels, where plain intervals would only widen. A number also knows
// how it came about, so that two equal ones cancel whatever their error.
//
// Every rule encloses: for each t the true value lies inside the result, up to
// the error of float64 on dollar-sized numbers, which stays far below Noise.
package affine

import "math"

// Noise is the distance, in dollars, below which a float64 result decides
// nothing: nearer than this to an edge, only exact arithmetic may answer.
const Noise = 1e-4

// same is how near two numbers must be to count as equal, apart how far to
// count as different. Cents and whole months lie well outside the gap.
const (
	same  = 1e-9
	apart = 1e-7
)

// A Number is C + S·t + e with Lo <= e <= Hi.
type Number struct {
	C, S, Lo, Hi float64
	origin       uint64 // the same for numbers that came about the same way; 0 for fixed ones
	grain        Grain  // of numbers that are not fixed
}

// A Grain says what the values of a number are multiples of, at the values of t
// that are looked at.
type Grain uint8

// The grains, from nothing known to whole numbers.
const (
	Fine Grain = iota
	OfCents
	Whole
)

// Grain returns what x's values are multiples of.
func (x Number) Grain() Grain {
	if !x.Fixed() {
		return x.grain
	}
	c := x.C * 100
	switch {
	case x.C == math.Round(x.C):
		return Whole
	case math.Abs(c-math.Round(c)) <= 1e-14*math.Abs(c):
		return OfCents
	}
	return Fine
}

// of marks x as made of multiples of a grain.
func (x Number) of(g Grain) Number {
	if x.Fixed() {
		g = Fine // known from the value
	}
	x.grain = g
	return x
}

// Exactly returns the number that does not vary.
func Exactly(x float64) Number { return Number{C: x} }

// Between returns the number that goes straight from a at t = 0 to b at t = 1.
func Between(a, b float64) Number { return Stepping(a, b, Fine) }

// Stepping is Between where only values of a grain are looked at.
func Stepping(a, b float64, g Grain) Number {
	return Number{C: a, S: b - a}.from(firstOrigin, Number{}, Number{}).of(g)
}

// Fixed reports whether x is one known value.
func (x Number) Fixed() bool { return x.S == 0 && x.Lo == 0 && x.Hi == 0 }

// Bounds returns the least and greatest value x can take.
func (x Number) Bounds() (lo, hi float64) {
	return x.C + math.Min(0, x.S) + x.Lo, x.C + math.Max(0, x.S) + x.Hi
}

// strange reports whether x varies in a way of which nothing is known.
func (x Number) strange() bool { return x.origin == 0 && !x.Fixed() }

// The ways in which a number comes about.
const (
	firstOrigin = iota + 1
	byAdding
	byNegating
	byScaling
	byMultiplying
	byDividing
	byMin
	byRounding
	byStepping
	byPower
)

// from marks x as what one operation made of y and z. What came of an unknown
// origin stays without one.
func (x Number) from(way uint64, y, z Number) Number {
	x.origin = 0
	if x.Fixed() || y.strange() || z.strange() {
		return x
	}
	h := way * 0x9e3779b97f4a7c15
	for _, part := range [4]uint64{y.origin, math.Float64bits(y.C), z.origin, math.Float64bits(z.C)} {
		h = (h ^ part) * 0xff51afd7ed558ccd
		h ^= h >> 32
	}
	x.origin = h | 1
	return x
}

// Add returns x + y.
func Add(x, y Number) Number {
	switch {
	case x == Number{}:
		return y
	case y == Number{}:
		return x
	}
	return Number{C: x.C + y.C, S: x.S + y.S, Lo: x.Lo + y.Lo, Hi: x.Hi + y.Hi}.from(byAdding, x, y).of(min(x.Grain(), y.Grain()))
}

// Neg returns -x.
func Neg(x Number) Number {
	return Number{C: -x.C, S: -x.S, Lo: -x.Hi, Hi: -x.Lo}.from(byNegating, x, Number{}).of(x.Grain())
}

// Sub returns x - y.
func Sub(x, y Number) Number {
	if x.origin != 0 && x.origin == y.origin {
		return Number{}
	}
	return Add(x, Neg(y))
}

// scale returns k·x.
func scale(x Number, k float64) Number {
	switch {
	case k == 1:
		return x
	case k == 0:
		return Number{}
	}
	z := Number{C: k * x.C, S: k * x.S, Lo: k * x.Lo, Hi: k * x.Hi}
	if k < 0 {
		z.Lo, z.Hi = z.Hi, z.Lo
	}
	return z.from(byScaling, x, Exactly(k)).of(multiplied(x.Grain(), Exactly(k).Grain()))
}

// multiplied is the grain of a product: whole numbers keep the other's.
func multiplied(g, h Grain) Grain {
	if g == Whole || h == Whole {
		return min(g, h)
	}
	return Fine
}

// widen adds an error between lo and hi.
func (x Number) widen(lo, hi float64) Number {
	x.Lo += lo
	x.Hi += hi
	return x
}

// Mul returns x·y.
func Mul(x, y Number) Number {
	if x.Fixed() {
		return scale(y, x.C)
	}
	if y.Fixed() {
		return scale(x, y.C)
	}
	// t² lies between t - 1/4 and t.
	q := x.S * y.S
	z := Number{C: x.C * y.C, S: x.C*y.S + x.S*y.C + q}
	z = z.widen(math.Min(0, -q/4), math.Max(0, -q/4))
	ylo, yhi := y.Bounds()
	z = z.widen(product(x.Lo, x.Hi, ylo, yhi))
	line := Number{C: x.C, S: x.S}
	llo, lhi := line.Bounds()
	return z.widen(product(y.Lo, y.Hi, llo, lhi)).from(byMultiplying, x, y).of(multiplied(x.Grain(), y.Grain()))
}

func product(a, b, c, d float64) (lo, hi float64) {
	p, q, r, s := a*c, a*d, b*c, b*d
	return math.Min(math.Min(p, q), math.Min(r, s)), math.Max(math.Max(p, q), math.Max(r, s))
}

// Div returns x ÷ y; if y can be 0 the result is unknown.
func Div(x, y Number) Number {
	if y.Fixed() && y.C != 0 {
		return scale(x, 1/y.C)
	}
	lo, hi := y.outward(y.Bounds())
	if !(lo > same || hi < -same) {
		return Unknown()
	}
	// x/y = r + (x - r·y)/y for any r; taking r at the middle keeps the rest small.
	r := (x.C + x.S/2) / (y.C + y.S/2)
	rest := Sub(x, scale(y, r))
	rlo, rhi := rest.outward(rest.Bounds())
	qlo, qhi := product(rlo, rhi, 1/hi, 1/lo)
	return Exactly(r).widen(qlo, qhi).from(byDividing, x, y)
}

// outward moves bounds of x apart by more than float64 is off: where parts of x
// cancel near zero, its inverse magnifies what they are off by.
func (x Number) outward(lo, hi float64) (float64, float64) {
	off := 1e-14 * (math.Abs(x.C) + math.Abs(x.S) + math.Abs(x.Lo) + math.Abs(x.Hi))
	return lo - off, hi + off
}

// Unknown returns a number of which nothing is known.
func Unknown() Number { return Number{Lo: math.Inf(-1), Hi: math.Inf(1)} }

// Min returns the smaller of x and y.
func Min(x, y Number) Number {
	d := Sub(x, y)
	a, b := d.Bounds()
	switch {
	case a >= 0:
		return y
	case b <= 0:
		return x
	case !(b-a < math.MaxFloat64):
		return hull(x, y)
	}
	// Between a < 0 < b the curve min(d, 0) lies above its chord, by at most -a·b/(b-a).
	m, gap := -a/(b-a), -a*b/(b-a)
	return Add(y, scale(d, m)).widen(-gap, 0).from(byMin, x, y).of(min(x.Grain(), y.Grain()))
}

// Max returns the larger of x and y.
func Max(x, y Number) Number {
	// Written out so that the one that is larger comes back as itself.
	d := Sub(x, y)
	a, b := d.Bounds()
	switch {
	case a >= 0:
		return x
	case b <= 0:
		return y
	}
	return Neg(Min(Neg(x), Neg(y)))
}

// hull returns a number that can be either x or y, for reasons not known.
func hull(x, y Number) Number {
	a, b := Sub(y, x).Bounds()
	if !(b-a < math.MaxFloat64) {
		return Unknown()
	}
	g := min(x.Grain(), y.Grain())
	x.origin = 0
	return x.widen(math.Min(0, a), math.Max(0, b)).of(g)
}
