package flat

import (
	"math"

	"ledgerboard/pkg/formula"
)

// A span holds every number that a value can be, so that a comparison or a smallest of
// two that always comes out alike is settled while the list is made. Float64 rounds
// upward of what it rounds downward of, so the ends may be reckoned in it.
type span struct{ lo, hi float64 }

var (
	anything = span{math.Inf(-1), math.Inf(1)}
	flags    = span{0, 1}
)

func (s span) meet(t span) span { return span{math.Max(s.lo, t.lo), math.Min(s.hi, t.hi)} }

// ends is the span of the numbers given; no number among them means that any can be.
func ends(x ...float64) span {
	s := span{x[0], x[0]}
	for _, y := range x {
		if math.IsNaN(y) {
			return anything
		}
		s.lo, s.hi = math.Min(s.lo, y), math.Max(s.hi, y)
	}
	return s
}

// spanOf is the span of what an operator makes of values in the given spans.
func spanOf(code formula.Code, a, b, c span) span {
	switch code {
	case formula.Add:
		return ends(a.lo+b.lo, a.hi+b.hi)
	case formula.Sub:
		return ends(a.lo-b.hi, a.hi-b.lo)
	case formula.Mul:
		return ends(times(a.lo, b.lo), times(a.lo, b.hi), times(a.hi, b.lo), times(a.hi, b.hi))
	case formula.Div:
		if b.lo > 0 {
			return ends(a.lo/b.lo, a.lo/b.hi, a.hi/b.lo, a.hi/b.hi)
		}
	case formula.Negative:
		return span{-a.hi, -a.lo}
	case formula.Min:
		return span{math.Min(a.lo, b.lo), math.Min(a.hi, b.hi)}
	case formula.Max:
		return span{math.Max(a.lo, b.lo), math.Max(a.hi, b.hi)}
	case formula.If:
		return span{math.Min(b.lo, c.lo), math.Max(b.hi, c.hi)}
	case formula.Cents, formula.Ceil, formula.Floor: // these never fall as their value rises
		f := formula.Table[code].Float
		return ends(f([]float64{a.lo}), f([]float64{a.hi}))
	case formula.Root:
		if a.lo >= 0 {
			return span{math.Sqrt(a.lo), math.Sqrt(a.hi)}
		}
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual, formula.And, formula.Or, formula.Not:
		return flags
	}
	return anything
}

// times is a product of ends: no end is reached where it is infinite, so 0 times it is 0.
func times(x, y float64) float64 {
	if x == 0 || y == 0 {
		return 0
	}
	return x * y
}

// settled is the value of an operator that comes out alike all over the spans.
func settled(code formula.Code, a, b span) (float64, bool) {
	switch code {
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual:
		f := formula.Table[code].Float
		x, y := f([]float64{a.lo, b.hi}), f([]float64{a.hi, b.lo})
		return x, x == y
	case formula.Equal, formula.NotEqual:
		apart := formula.Table[formula.Less].Float
		if apart([]float64{a.hi, b.lo}) == 1 || apart([]float64{b.hi, a.lo}) == 1 {
			return formula.Table[code].Float([]float64{0, 1}), true
		}
	}
	return 0, false
}
