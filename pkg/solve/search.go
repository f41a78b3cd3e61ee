package solve

import (
	"errors"
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/exact"
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
	changes []exact.Change
	exact   *exact.Plan
	bound   *bound.Plan
	asked   int // exact evaluations, for the curious
	ranged  int // range evaluations
}

func newSearch(m *model.Model, axis Axis, low, high int64, fails bool, changes []exact.Change, watched ...*model.Cell) (*search, error) {
	s := &search{axis: axis, watched: watched, fails: fails, changes: changes, exact: exact.NewPlan(m, watched...)}
	fixed := make([]bound.Change, len(changes))
	for i, c := range changes {
		fixed[i] = bound.Change(c)
	}
	var err error
	s.bound, err = bound.NewPlan(m, axis.Cell, axis.at(low), axis.at(high), fixed, watched...)
	return s, err
}

// last returns the highest n from low to high at which the condition holds.
func (s *search) last(low, high int64) (int64, bool, error) { return s.find(low, high, true) }

// first returns the lowest n from low to high at which the condition holds.
func (s *search) first(low, high int64) (int64, bool, error) { return s.find(low, high, false) }

// find narrows the range to where the condition can hold, then halves it,
// looking first at the half on the wanted side.
func (s *search) find(low, high int64, downward bool) (int64, bool, error) {
	for {
		if low > high {
			return 0, false, nil
		}
		if low == high {
			holds, err := s.holds(low)
			return low, holds, err
		}
		from, to, sure, err := s.narrow(low, high, downward)
		if err != nil {
			return 0, false, err
		}
		if sure && downward {
			return high, true, nil
		}
		if sure {
			return low, true, nil
		}
		if to-from > (high-low)*2/3 {
			break
		}
		low, high = from, to
	}
	middle := low + (high-low)/2
	near, far := [2]int64{low, middle}, [2]int64{middle + 1, high}
	if downward {
		near, far = far, near
	}
	n, found, err := s.find(near[0], near[1], downward)
	if err != nil || found {
		return n, found, err
	}
	return s.find(far[0], far[1], downward)
}

// narrow returns the part of a range outside of which the condition certainly
// fails. It is sure if the condition certainly holds at the wanted end.
func (s *search) narrow(low, high int64, downward bool) (from, to int64, sure bool, err error) {
	s.ranged++
	bounds, err := s.bound.Over(s.axis.at(low), s.axis.at(high))
	if errors.Is(err, bound.ErrVaries) {
		return low, high, false, nil
	}
	if err != nil {
		return 0, 0, false, err
	}
	end := 0.0
	if downward {
		end = 1
	}
	if s.fails {
		return s.narrowFails(low, high, bounds, end)
	}
	a, b, sure := 0.0, 1.0, true
	for _, x := range bounds {
		// x can be at least 0 only where its upper line is.
		ta, tb := where(x.C+x.Hi+bound.Noise, x.S)
		a, b = math.Max(a, ta), math.Min(b, tb)
		sure = sure && x.C+x.S*end+x.Lo > bound.Noise
	}
	return span(low, high, a, b, sure)
}

// narrowFails does the same for the condition that one of the cells is below 0.
func (s *search) narrowFails(low, high int64, bounds []bound.Bound, end float64) (int64, int64, bool, error) {
	a, b, sure := 1.0, 0.0, false
	for _, x := range bounds {
		ta, tb := where(-x.C-x.Lo+bound.Noise, -x.S)
		if ta <= tb {
			a, b = math.Min(a, ta), math.Max(b, tb)
		}
		sure = sure || x.C+x.S*end+x.Hi < -bound.Noise
	}
	return span(low, high, a, b, sure)
}

// where returns the t from 0 to 1 at which c + s·t >= 0, with from > to for none.
func where(c, s float64) (from, to float64) {
	switch atEnd := c + s; {
	case math.IsNaN(c) || math.IsNaN(s) || math.IsInf(c, 1):
		return 0, 1
	case c >= 0 && atEnd >= 0:
		return 0, 1
	case c >= 0:
		return 0, c / -s
	case atEnd >= 0:
		return -c / s, 1
	}
	return 1, 0
}

// span turns t from a to b into whole numbers, rounded outward by a hair more.
func span(low, high int64, a, b float64, sure bool) (int64, int64, bool, error) {
	if a > b {
		return 1, 0, false, nil
	}
	n := float64(high - low)
	from := low + int64(math.Floor(a*n-1e-6))
	to := low + int64(math.Ceil(b*n+1e-6))
	return max(low, from), min(high, to), sure, nil
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
	v, err := s.exact.Evaluate(append(s.changes[:len(s.changes):len(s.changes)], exact.Change{Cell: s.axis.Cell, Value: s.axis.at(n)})...)
	if err != nil {
		return nil, fmt.Errorf("%s = %s: %w", s.axis.Cell.Name(), s.axis.at(n), err)
	}
	return v, nil
}
