package solve

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/affine"
	"ledgerboard/pkg/model"
)

// An Axis turns whole numbers into values of an input: n stands for Start + n·Step.
type Axis struct {
	Cell        *model.Cell
	Start, Step decimal.Decimal
}

func (a Axis) at(n int64) decimal.Decimal { return a.Start.Add(a.Step.Mul(decimal.NewFromInt(n))) }

// A search looks along an axis for the first number at which a condition holds.
// The condition is that every watched cell is at least 0 or, if fails is set,
// that at least one is below 0.
type search struct {
	axis    Axis
	watched []*model.Cell
	fails   bool
	exact   *exact.Plan
	bound   *bound.Plan
	time    *bound.Plan // for the number of months alone; nil where the axis does not move it
	asked   int         // exact evaluations, for the curious
	ranged  int         // range evaluations

	trusting bool // the answer is right only if the condition changes once
}

func newSearch(m *model.Model, axis Axis, low, high int64, fails bool, changes []exact.Change, watched ...*model.Cell) (*search, error) {
	s := &search{axis: axis, watched: watched, fails: fails}
	along := bound.Axis{Cell: axis.Cell, Least: axis.at(low), Most: axis.at(high), Step: axis.Step}
	var err error
	if s.bound, err = bound.NewPlan(m, along, changes, watched...); err != nil {
		return nil, err
	}
	s.exact = exact.Prepared(s.bound.Prepared)
	if m.Moves(axis.Cell, m.Cells[m.Horizon]) {
		s.time, err = bound.NewPlan(m, along, changes, m.Cells[m.Horizon])
	}
	return s, err
}

// last returns the highest n from low to high at which the condition holds.
func (s *search) last(low, high int64) (int64, bool, error) { return s.find(low, high, true) }

// first returns the lowest n from low to high at which the condition holds.
func (s *search) first(low, high int64) (int64, bool, error) { return s.find(low, high, false) }

// find narrows the range to where the answer can be and, where that no longer
// helps, splits it and looks first at the part on the wanted side.
func (s *search) find(low, high int64, downward bool) (int64, bool, error) {
	for low < high {
		if s.asked > patience {
			return s.halve(low, high, downward)
		}
		from, to, err := s.narrow(low, high, downward)
		if errors.Is(err, bound.ErrVaries) {
			return s.split(low, high, downward, s.sameMonths)
		}
		if err != nil {
			return 0, false, err
		}
		if to-from > (high-low)*2/3 {
			return s.split(low, high, downward, middle)
		}
		low, high = from, to
	}
	if low > high {
		return 0, false, nil
	}
	holds, err := s.holds(low)
	return low, holds, err
}

// patience is how many exact evaluations a search may take before it trusts that
// the condition changes only once in what is left; a deal in which profit lies flat
// at the edge over thousands of dollars needs it.
const patience = 4000

// halve finds where the condition changes, trusting that it does so once.
func (s *search) halve(low, high int64, downward bool) (int64, bool, error) {
	s.trusting = true
	near, far := low, high
	if downward {
		near, far = high, low
	}
	holds, err := s.holds(near)
	if err != nil || holds {
		return near, holds, err
	}
	if holds, err = s.holds(far); err != nil || !holds {
		return far, false, err
	}
	for near-far > 1 || far-near > 1 {
		n := (near + far) / 2
		if holds, err = s.holds(n); err != nil {
			return 0, false, err
		}
		if holds {
			far = n
		} else {
			near = n
		}
	}
	return far, true, nil
}

// split looks at the wanted side of a cut first, then at the other.
func (s *search) split(low, high int64, downward bool, cut func(low, high int64, downward bool) (int64, error)) (int64, bool, error) {
	n, err := cut(low, high, downward)
	if err != nil {
		return 0, false, err
	}
	near, far := [2]int64{low, n}, [2]int64{n + 1, high}
	if downward {
		near, far = far, near
	}
	found, ok, err := s.find(near[0], near[1], downward)
	if err != nil || ok {
		return found, ok, err
	}
	return s.find(far[0], far[1], downward)
}

func middle(low, high int64, _ bool) (int64, error) { return low + (high-low)/2, nil }

// sameMonths cuts off, on the wanted side, the part over which the deal has one
// number of months. It returns the last n of the lower part.
func (s *search) sameMonths(low, high int64, downward bool) (int64, error) {
	end := low
	if downward {
		end = high
	}
	months, err := s.months(end)
	if err != nil {
		return 0, err
	}
	same, other := end, low+high-end
	for same-other > 1 || other-same > 1 {
		n := (same + other) / 2
		m, err := s.months(n)
		if err != nil {
			return 0, err
		}
		if m == months {
			same = n
		} else {
			other = n
		}
	}
	return min(same, other), nil
}

// varies reports whether the deal has another number of months at the two ends.
func (s *search) varies(low, high int64) (bool, error) {
	if s.time == nil {
		return false, nil
	}
	a, err := s.months(low)
	if err != nil {
		return false, err
	}
	b, err := s.months(high)
	return a != b, err
}

// months is the number of months of the deal at n.
func (s *search) months(n int64) (int64, error) {
	x, err := s.time.Over(s.axis.at(n), s.axis.at(n))
	if err != nil {
		return 0, err
	}
	return int64(math.Round(x[0].C)), nil
}

// narrow returns the part of a range in which the first number on the wanted
// side must be: where the condition can hold, and not beyond where it must.
func (s *search) narrow(low, high int64, downward bool) (from, to int64, err error) {
	if varies, err := s.varies(low, high); varies || err != nil {
		return 0, 0, cmp.Or(err, bound.ErrVaries)
	}
	s.ranged++
	bounds, err := s.bound.Over(s.axis.at(low), s.axis.at(high))
	if err != nil {
		return 0, 0, err
	}
	can, must := s.regions(bounds)
	if can.empty() {
		return 1, 0, nil
	}
	n := float64(high - low)
	from = max(low, low+int64(math.Floor(can.from*n-1e-6)))
	to = min(high, low+int64(math.Ceil(can.to*n+1e-6)))
	first, last := low+int64(math.Ceil(must.from*n+1e-6)), low+int64(math.Floor(must.to*n-1e-6))
	if must.empty() || first > last {
		return from, to, nil
	}
	if downward {
		return max(from, min(last, high)), to, nil
	}
	return from, min(to, max(first, low)), nil
}

// regions returns where in the range the condition can hold and where it must.
func (s *search) regions(bounds []bound.Bound) (can, must region) {
	for _, x := range bounds {
		if lo, hi := x.Bounds(); math.IsNaN(lo) || math.IsNaN(hi) {
			return region{0, 1}, region{1, 0}
		}
	}
	if s.fails {
		can, must = region{1, 0}, region{1, 0}
		for _, x := range bounds {
			edge := edge(x)
			can = can.join(where(edge-x.C-x.Lo+bound.Noise, -x.S))
			if r := where(edge-x.C-x.Hi-bound.Noise, -x.S); must.empty() {
				must = r
			}
		}
		return can, must
	}
	can, must = region{0, 1}, region{0, 1}
	for _, x := range bounds {
		edge := edge(x)
		can = can.meet(where(x.C+x.Hi-edge+bound.Noise, x.S))
		must = must.meet(where(x.C+x.Lo-edge-bound.Noise, x.S))
	}
	return can, must
}

// edge is where a bound decides whether a value is at least 0: a whole number of
// cents that is above -1/2 cent is at least 0.
func edge(x bound.Bound) float64 {
	if x.Grain() == affine.Fine {
		return 0
	}
	return -0.005
}

// A region is the part of a range from t = from to t = to; empty if from > to.
type region struct{ from, to float64 }

func (r region) empty() bool          { return r.from > r.to }
func (r region) meet(q region) region { return region{math.Max(r.from, q.from), math.Min(r.to, q.to)} }

// join returns the least region that holds both.
func (r region) join(q region) region {
	switch {
	case r.empty():
		return q
	case q.empty():
		return r
	}
	return region{math.Min(r.from, q.from), math.Max(r.to, q.to)}
}

// where returns the t from 0 to 1 at which c + s·t >= 0.
func where(c, s float64) region {
	switch atEnd := c + s; {
	case math.IsInf(c, 1):
		return region{0, 1}
	case c >= 0 && atEnd >= 0:
		return region{0, 1}
	case c >= 0:
		return region{0, c / -s}
	case atEnd >= 0:
		return region{-c / s, 1}
	}
	return region{1, 0}
}

// holds decides one number exactly.
func (s *search) holds(n int64) (bool, error) {
	v, err := s.at(n)
	if err != nil {
		return false, err
	}
	for _, c := range s.watched {
		if v.Of(c).IsNegative() {
			return s.fails, nil
		}
	}
	return !s.fails, nil
}

// at works the watched cells out exactly at n.
func (s *search) at(n int64) (*exact.Values, error) {
	s.asked++
	v, err := s.exact.Evaluate(exact.Change{Cell: s.axis.Cell, Value: s.axis.at(n)})
	if err != nil {
		return nil, fmt.Errorf("%s = %s: %w", s.axis.Cell.Name(), s.axis.at(n), err)
	}
	return v, nil
}
