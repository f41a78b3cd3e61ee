package bound

import (
	"math"
	"slices"
)

// A Plane is C + the sum of S[k]·u[k] + e, for each u from -1 to 1 and e from -E to
// E. The first u stand for the inputs of a box, the others for errors made on the
// way, which are kept apart so that they cancel where they come in and go out again.
type Plane struct {
	C float64
	S []float64
	E float64

	capped   bool // it lies between low and high besides
	low, top float64
}

// radius is how far a plane lies from C at most.
func (x Plane) radius() float64 {
	r := x.E
	for _, s := range x.S {
		r += math.Abs(s)
	}
	return r
}

// Bounds are the least and greatest value of the plane.
func (x Plane) Bounds() (lo, hi float64) {
	r := x.radius()
	if lo, hi = x.C-r, x.C+r; x.capped {
		return max(lo, x.low), min(hi, x.top)
	}
	return lo, hi
}

func (x Plane) fixed() bool { return len(x.S) == 0 && x.E == 0 }

func (x Plane) unknown() bool { return math.IsInf(x.E, 0) || math.IsNaN(x.E) || math.IsNaN(x.C) }

// unknownPlane is a value of which nothing is known.
func unknownPlane() Plane { return Plane{E: math.Inf(1)} }

// within says besides that the plane lies between two values.
func (x Plane) within(low, top float64) Plane {
	x.capped, x.low, x.top = true, low, top
	return x
}

// scaled is k·x.
func (a *arena) scaled(k float64, x Plane) Plane {
	if k == 0 {
		return Plane{}
	}
	out := Plane{C: k * x.C, E: math.Abs(k) * x.E, S: a.take(len(x.S))}
	for i, s := range x.S {
		out.S[i] = k * s
	}
	if x.capped {
		lo, hi := k*x.low, k*x.top
		out = out.within(min(lo, hi), max(lo, hi))
	}
	return out
}

// plus is x + k·y.
func (a *arena) plus(x Plane, k float64, y Plane) Plane {
	switch {
	case y.fixed() && k*y.C == 0:
		return x
	case x.fixed() && x.C == 0:
		return a.scaled(k, y)
	case len(y.S) == 0:
		return Plane{C: x.C + k*y.C, E: x.E + math.Abs(k)*y.E, S: x.S}
	}
	out := Plane{C: x.C + k*y.C, E: x.E + math.Abs(k)*y.E, S: a.take(max(len(x.S), len(y.S)))}
	copy(out.S, x.S)
	for i, s := range y.S {
		out.S[i] += k * s
	}
	return out
}

// times is x·y without the error of the product of what varies, and that error.
func (a *arena) times(x, y Plane) (line Plane, err float64) {
	if x.fixed() {
		return a.scaled(x.C, y), 0
	}
	if y.fixed() {
		return a.scaled(y.C, x), 0
	}
	rx, ry := x.radius(), y.radius()
	line = a.plus(a.scaled(y.C, x), x.C, y)
	line.C = x.C * y.C
	if x.C == y.C && x.E == 0 && y.E == 0 && slices.Equal(x.S, y.S) { // a square is at least 0
		line.C += rx * rx / 2
		return line, rx * rx / 2
	}
	return line, rx * ry
}
