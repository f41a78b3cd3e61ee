package best

import "math"

// These are the ways in which the totals of the work vary in a box.
const (
	costWay = iota
	ownWay  // own labour
	wasteWay
	addedWay
	timeWay
	ways
)

// A span is what a total lies between.
type span struct{ lo, hi float64 }

func (s span) mid() float64    { return (s.lo + s.hi) / 2 }
func (s span) radius() float64 { return (s.hi - s.lo) / 2 }

// cost is what an option's work costs at the least, without containers.
func (p *parts) cost(x *part) float64 {
	sum := x.besides
	for _, a := range x.takes {
		if q := &p.pools[a.pool]; !q.waste {
			sum += q.unit * a.x
		}
	}
	return sum
}

// waste is what an option's debris costs at the least, less what it clears.
func (p *parts) waste(x *part) float64 {
	sum := -x.clears
	for _, a := range x.takes {
		if q := &p.pools[a.pool]; q.waste {
			sum += q.unit * a.x
		}
	}
	return sum
}

// over adds the least and the most of the rooms to what is sure.
func (p *parts) over(sure float64, least, most func(*part) float64) span {
	s := span{sure, sure}
	for i := range p.rooms {
		lo, hi := math.Inf(1), math.Inf(-1)
		for o := range p.rooms[i] {
			lo, hi = min(lo, least(&p.rooms[i][o])), max(hi, most(&p.rooms[i][o]))
		}
		s.lo += lo
		s.hi += hi
	}
	return s
}

// spans are what the totals of any choice lie between.
func (h *House) spans() [ways]span {
	p := h.parts
	var out [ways]span
	out[costWay] = p.over(p.cost(&p.sure), p.cost, p.cost)
	// Besides parts of packs: one pack of each, a rounding of each, and for sticks what
	// a cut list leaves over; and what one option bears alone that others may share.
	for i := range p.pools {
		if q := &p.pools[i]; !q.waste {
			out[costWay].hi += q.unit*q.holds + 1
		}
	}
	for k, s := range h.sticks {
		at := func(x *part) float64 { return x.feet[k] * s.dearest() }
		out[costWay].hi += cutMost*p.over(at(&p.sure), at, at).hi + 2*s.longest()
	}
	out[costWay].lo -= slack
	out[costWay].hi += p.besides
	own := func(x *part) float64 { return x.own }
	most := func(x *part) float64 { return x.ownMost }
	out[ownWay] = p.over(p.sure.own, own, most)
	out[ownWay].lo = min(out[ownWay].lo, 0)
	out[ownWay].hi += p.sure.ownMost - p.sure.own
	out[wasteWay] = span{p.kept, p.most[shared] + p.cleared}
	adds := func(x *part) float64 { return x.added }
	out[addedWay] = p.over(p.sure.added, adds, adds)
	return out
}

// dearest is the highest price of a foot.
func (s *stickProduct) dearest() (most float64) {
	for i := range s.cells {
		most = max(most, s.price[i]/s.feet[i])
	}
	return most
}

// longest is the price of the dearest stick.
func (s *stickProduct) longest() (most float64) {
	for _, x := range s.price {
		most = max(most, x)
	}
	return most
}

// cutMost is by how many feet, at the dearest, the sticks of a cut list are more than a
// foot that is taken, besides two sticks: a cut list fills half at least.
const cutMost = 4

// slack is more than float64 and the roundings to cents of a house can be off, in
// dollars.
const slack = 1
