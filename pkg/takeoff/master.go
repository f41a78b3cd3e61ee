package takeoff

import (
	"math"
	"slices"
)

// A master is the linear program that covers the pieces with patterns at the least
// price, solved by the revised simplex method with patterns made as they are needed.
// It works in floats, which only guide: what it proves is proved in whole numbers by
// dual. Products are rounded by float64(…) before they are added, so that no machine
// fuses the two and every one takes the same way.
type master struct {
	j      *job
	inv    [][]float64 // of the basis
	basis  []column
	x      []float64 // of the basis
	pi     []float64 // the value of each kind, in cents
	pool   *pool
	dir    []float64
	best   *dual
	value  []int64
	filler *fill
}

// A column is a pattern, or an exchange, which costs nothing: a piece of a kind less,
// and one of the next shorter kind more (of the last kind, nothing more). Exchanges
// keep longer pieces from being worth less than shorter ones, which saves most of the
// work (Valério de Carvalho 2005, from memory).
type column struct {
	pattern
	exchange int // the kind, or -1
}

// A pool keeps patterns made before, in the kinds of the job at hand.
type pool struct {
	list []pattern
	old  int // so many were known before
}

const (
	masterKinds = 250         // more kinds are not tried
	masterWork  = 150_000_000 // numbers touched, of the inverse and else
	masterSteps = 20_000      // of one fill
	stepWork    = 10          // what a step of a fill counts for
	tiny        = 1e-9
	pull        = 0.5 // towards the best dual
)

func newMaster(j *job, p *pool) *master {
	m := len(j.size)
	s := &master{j: j, pool: p, x: make([]float64, m), pi: make([]float64, m), dir: make([]float64, m), value: make([]int64, m)}
	for k, size := range j.size {
		b, n := j.single(k)
		row := make([]float64, m)
		row[k] = 1 / float64(n)
		s.inv = append(s.inv, row)
		s.basis = append(s.basis, column{pattern{b, slices.Repeat([]int{k}, n)}, -1})
		s.x[k] = (float64(j.need[k]) + jitter(k)) / float64(n)
		s.pi[k] = float64(j.bins[b].price) / float64(n)
		s.value[k] = size
	}
	s.filler = newFill(j, s.value)
	s.best = j.bySize()
	return s
}

// jitter asks for a little more of each kind, a different bit each: where many plans
// are equally good, the simplex method would turn in circles.
func jitter(k int) float64 { return float64(float64(uint32(k+1)*2654435761) / (1 << 32) * 1e-3) }

// single is the bin and number of pieces at which one kind by itself is cheapest.
func (j *job) single(k int) (int, int) {
	best, most := -1, 0
	for b := j.fit(j.size[k]); b < len(j.bins); b++ {
		n := int(min(int64(j.need[k]), j.bins[b].room/j.size[k]))
		if best < 0 || j.bins[b].price*int64(most) < j.bins[best].price*int64(n) {
			best, most = b, n
		}
	}
	return best, most
}

// run solves until no pattern helps, the bound reaches the goal in cents, or the
// work is used up; it returns what is left of the work.
func (s *master) run(goal int64, work int) int {
	size := len(s.x) * len(s.x)
	for work > 0 {
		c, found := s.enter(goal, &work)
		if !found || !s.pivot(c) {
			break
		}
		work -= size
	}
	return work
}

// enter chooses a column that lowers the price: an exchange, one of the pool, or a
// new one.
func (s *master) enter(goal int64, work *int) (column, bool) {
	least, at := tiny, -1
	for k := range s.pi {
		if g := s.excess(k); g > least {
			least, at = g, k
		}
	}
	if at >= 0 {
		return column{exchange: at}, true
	}
	*work -= len(s.pool.list)
	if p, ok := s.pooled(); ok {
		return column{p, -1}, true
	}
	p, ok := s.fresh(work)
	if s.best.bound() >= goal || !ok {
		return column{}, false
	}
	return column{p, -1}, true
}

// excess is by how many cents a shorter piece is worth more than the next longer one.
func (s *master) excess(k int) float64 {
	if k+1 == len(s.pi) {
		return -s.pi[k]
	}
	return s.pi[k+1] - s.pi[k]
}

// worth is the value of a pattern in cents.
func (s *master) worth(kinds []int) float64 {
	var v float64
	for _, k := range kinds {
		v += s.pi[k]
	}
	return v
}

// pooled is the pattern of the pool that yields most for its price.
func (s *master) pooled() (pattern, bool) {
	best, at := 1+1e-6, -1
	for i, p := range s.pool.list {
		if r := s.worth(p.kinds) / float64(s.j.bins[p.bin].price); r > best {
			best, at = r, i
		}
	}
	if at < 0 {
		return pattern{}, false
	}
	return s.pool.list[at], true
}

// fresh fills every bin with the greatest value, and keeps the best dual that
// follows from it. It returns the pattern that yields most for its price, if that
// is more than its price. The values are first drawn half-way to those of the best
// dual, which lead to better patterns (Wentges 1997, from memory); if no pattern
// follows from these, they are taken as they are.
func (s *master) fresh(work *int) (pattern, bool) {
	for _, share := range []float64{pull, 0} {
		s.draw(share)
		if p, ok := s.fillAll(work); ok {
			return p, true
		}
	}
	return pattern{}, false
}

// draw sets the values, pulled towards the best dual by a share.
func (s *master) draw(share float64) {
	unit := s.j.unitOf()
	for k, v := range s.pi {
		dear := s.j.bins[s.j.fit(s.j.size[k])].price
		v = float64((1-share)*math.Max(0, v)*float64(unit)) + float64(share*float64(s.best.value[k]))
		s.value[k] = min(int64(v), dear*unit)
	}
	s.filler.price(s.value)
}

func (s *master) fillAll(work *int) (best pattern, ok bool) {
	unit := s.j.unitOf()
	most := 1 + 1e-7
	var top, topPrice int64 = 0, 1
	for b := range s.j.bins {
		s.filler.run(s.j.need, s.j.bins[b].room, masterSteps)
		*work -= stepWork * s.filler.steps
		cents := s.j.bins[b].price * unit
		if above(s.filler.bound, cents, top, topPrice) {
			top, topPrice = s.filler.bound, cents
		}
		p := pattern{b, s.filler.kinds()}
		if r := s.worth(p.kinds) / float64(s.j.bins[b].price); r > most {
			s.pool.list = append(s.pool.list, p)
			most, best, ok = r, p, true
		}
	}
	if d := s.j.scaled(s.value, top, topPrice); d.worth > s.best.worth {
		s.best = d
	}
	return best, ok
}

// pivot brings the column into the basis, and reports whether it could.
func (s *master) pivot(c column) bool {
	for r, row := range s.inv {
		var d float64
		if c.exchange >= 0 {
			d = -row[c.exchange]
			if c.exchange+1 < len(row) {
				d += row[c.exchange+1]
			}
		}
		for _, k := range c.kinds {
			d += row[k]
		}
		s.dir[r] = d
	}
	out := -1
	var step float64
	for r, d := range s.dir {
		if d <= 1e-7 {
			continue
		}
		if t := s.x[r] / d; out < 0 || t < step-tiny || t < step+tiny && d > s.dir[out] {
			out, step = r, t
		}
	}
	if out < 0 {
		return false
	}
	s.swap(out, c, math.Max(0, step))
	return true
}

func (s *master) swap(out int, c column, step float64) {
	gain := -s.worth(c.kinds)
	if c.exchange >= 0 {
		gain = -s.excess(c.exchange)
	} else {
		gain += float64(s.j.bins[c.bin].price)
	}
	pivot := s.inv[out]
	for k := range pivot {
		pivot[k] /= s.dir[out]
		s.pi[k] += float64(gain * pivot[k])
	}
	for r, row := range s.inv {
		d := s.dir[r]
		if r == out || d == 0 {
			continue
		}
		for k, v := range pivot {
			row[k] -= float64(d * v)
		}
		s.x[r] = math.Max(0, s.x[r]-float64(step*d))
	}
	s.x[out] = step
	s.basis[out] = c
}
