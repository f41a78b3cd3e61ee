package takeoff

import (
	"cmp"
	"slices"
)

// A search tries the ways to cut, stick by stick, each time for the longest piece
// left: in some cheapest plan it lies in a stick of the cheapest bin that holds its
// pieces, filled so that no piece left would still fit. What the pieces left are
// worth by a dual rules out most ways.
type search struct {
	j     *job
	d     *dual
	order []int // kinds by value per size
	ties  bool  // look for plans of the best price too
	step  int64 // every price is a multiple of it, in cents

	left  []int
	count int   // pieces left
	size  int64 // of them
	worth int64 // of them
	spent cost
	path  []pattern

	listers []*lister // one for each depth

	best  cost
	found []pattern // if better than the plan given

	seen  map[uint64]cost // what was spent when just these pieces were left
	code  uint64          // of the pieces left
	digit []uint64        // of each kind in the code; none if it does not fit

	steps, limit int
}

func newSearch(j *job, d *dual, best cost, limit int) *search {
	s := &search{j: j, d: d, best: best, limit: limit, left: slices.Clone(j.need), count: j.count(), size: j.total, worth: d.worth}
	for _, b := range j.bins {
		s.step = gcd(s.step, b.price)
	}
	for k := range j.need {
		s.order = append(s.order, k)
	}
	slices.SortFunc(s.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(d.value[b]*j.size[a], d.value[a]*j.size[b]), cmp.Compare(a, b))
	})
	s.digit = digits(j.need)
	for k, g := range s.digit {
		s.code += g * uint64(j.need[k])
	}
	return s
}

// digits are the places of a number that counts every kind apart, if 63 bits hold it.
func digits(need []int) []uint64 {
	var out []uint64
	place := uint64(1)
	for _, n := range need {
		out = append(out, place)
		if place > 1<<63/uint64(n+1) {
			return nil
		}
		place *= uint64(n + 1)
	}
	return out
}

// run searches for plans cheaper than the best, or as cheap and with fewer sticks or
// less waste if ties is set. It reports whether it looked everywhere.
func (s *search) run(ties bool) bool {
	s.ties, s.steps, s.seen = ties, 0, map[uint64]cost{}
	s.descend()
	return s.steps <= s.limit
}

func (s *search) descend() {
	s.steps++
	if s.count == 0 {
		if s.spent.less(s.best) {
			s.best, s.found = s.spent, s.kept()
		}
		return
	}
	if !s.least().less(s.target()) || s.repeated() {
		return
	}
	for _, o := range s.options() {
		if s.steps > s.limit {
			return
		}
		if o.loss > s.slack() {
			continue // a better plan was found meanwhile
		}
		s.place(o.pattern, 1)
		s.descend()
		s.place(o.pattern, -1)
	}
}

// kept copies the sticks on the way, whose kinds will be written over.
func (s *search) kept() []pattern {
	out := slices.Clone(s.path)
	for i, p := range out {
		out[i].kinds = slices.Clone(p.kinds)
	}
	return out
}

// target is what a plan must be less than to be wanted.
func (s *search) target() cost {
	if s.ties {
		return s.best
	}
	return cost{price: s.best.price}
}

// slack is how many parts of a cent may still be lost.
func (s *search) slack() int64 {
	top := s.best.price
	if !s.ties {
		top -= s.step
	}
	return (top-s.spent.price)*s.d.unit - s.worth
}

// least is a bound on the cost of any plan that goes on from here.
func (s *search) least() cost {
	c := cost{price: ceilDiv(s.worth, s.d.unit), length: huge}
	sum := int64(huge)
	for _, b := range s.j.bins {
		sum = min(sum, ceilMulDiv(s.size, b.price, b.room))
		c.length = min(c.length, ceilMulDiv(s.size, b.length, b.room))
	}
	c.price = ceilDiv(max(c.price, sum), s.step) * s.step
	c.sticks = ceilDiv(s.size, s.j.most())
	return c.plus(s.spent)
}

// repeated reports whether the same pieces were left before for no more money.
func (s *search) repeated() bool {
	if s.digit == nil {
		return false
	}
	old, ok := s.seen[s.code]
	if ok && !s.spent.less(old) {
		return true
	}
	s.seen[s.code] = s.spent
	return false
}

// place takes the pieces of a stick away, or with -1 puts them back.
func (s *search) place(p pattern, n int) {
	for _, k := range p.kinds {
		s.left[k] -= n
		s.count -= n
		s.size -= int64(n) * s.j.size[k]
		s.worth -= int64(n) * s.d.value[k]
		if s.digit != nil {
			s.code -= uint64(n) * s.digit[k]
		}
	}
	c := s.j.bins[p.bin].cost
	if n < 0 {
		s.spent, s.path = s.spent.minus(c), s.path[:len(s.path)-1]
		return
	}
	s.spent, s.path = s.spent.plus(c), append(s.path, p)
}
