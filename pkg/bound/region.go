package bound

import (
	"math"

	"ledgerboard/pkg/internal/affine"
)

// A region is the part of a box in which some planes are at least 0: those on which it
// was decided which of two values is the smaller.
type region struct {
	arena
	holds []Plane
	grave float64 // from which error on a choice between two values matters
	open  *Plane  // the difference of the first two values of which that is so
	empty bool    // no point of the box lies in the region
}

// sign is 1 or -1 where a plane is surely more or less than 0 by more than noise, all
// over the box, and else 0.
func (x Plane) sign() float64 {
	switch lo, hi := x.Bounds(); {
	case lo > affine.Noise:
		return 1
	case hi < -affine.Noise:
		return -1
	}
	return 0
}

// bounds are the least and greatest value of a plane in the region. For any weight w
// from 0 up, x is at most the most of x + w·g where g is at least 0; the weights tried
// let x and g cancel along one way to vary.
func (r *region) bounds(x Plane) (lo, hi float64) {
	lo, hi = x.Bounds()
	for _, g := range r.holds {
		for k, s := range g.S {
			if k >= len(x.S) || math.Abs(s) < 1e-9 || x.S[k] == 0 {
				continue
			}
			w, taken := x.S[k]/s, len(r.taken)
			y := r.plus(x, -w, g)
			y.capped = false
			a, b := y.Bounds()
			r.release(taken)
			if w < 0 { // x = y - |w|·g
				hi = math.Min(hi, b)
			} else { // x = y + w·g
				lo = math.Max(lo, a)
			}
		}
	}
	if lo > hi {
		r.empty = r.empty || lo-hi > 1e-3*(1+math.Abs(lo))
		lo, hi = hi, lo
	}
	return lo, hi
}
