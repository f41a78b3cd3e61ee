package takeoff

import "slices"

// An answer is a plan without labels.
type answer struct {
	patterns []pattern
	cost     cost
	bound    int64
	by       Proof
}

// A search takes so many steps at most: many where a few pieces promise an end.
const (
	fewPieces  = 30
	priceSteps = 500_000 // for a cheaper plan of few pieces
	tieSteps   = 100_000 // among plans of one price
	manyShare  = 10      // of many pieces, one in so many steps
)

// solve goes from cheap ways to dear ones: plain filling and the bound by length;
// the linear program and plans made from it; a search of everything. It stops once
// nothing can be better.
func (j *job) solve() answer {
	a := answer{patterns: j.greedy(), by: BySum}
	a.cost = j.cost(a.patterns)
	least, sure := j.cover(0)
	a.bound = least.price
	if sure && a.cost == least || len(j.size) > masterKinds {
		return a
	}
	share := 1
	if j.count() > fewPieces {
		share = manyShare
	}
	m := newMaster(j, &pool{list: slices.Clone(a.patterns)})
	m.run(a.cost.price, masterWork)
	if m.best.bound() > a.bound {
		least, sure = j.cover(m.best.bound())
		a.bound, a.by = least.price, ByValues
	}
	if a.cost.price > a.bound {
		a.take(j, j.dive(m, a.patterns, a.bound, masterWork))
	}
	if a.cost.price > a.bound {
		s := newSearch(j, m.best, a.cost, priceSteps/share)
		whole := s.run(false)
		a.take(j, s.found)
		if whole {
			a.bound, a.by = a.cost.price, BySearch
		}
	}
	if len(j.bins) > 1 && a.cost.price == a.bound && !(sure && a.cost == least) {
		s := newSearch(j, m.best, a.cost, tieSteps/share)
		s.run(true)
		a.take(j, s.found)
	}
	return a
}

// take keeps a plan if it is better.
func (a *answer) take(j *job, plan []pattern) {
	if plan == nil {
		return
	}
	if c := j.cost(plan); c.less(a.cost) {
		a.patterns, a.cost = plan, c
	}
}

// greedyWork is how many pieces bestFit places over all its tries, about.
const greedyWork = 20_000

// greedy is the best of the plans that plain filling makes.
func (j *job) greedy() []pattern {
	best := j.fullest()
	skip := 1 + j.count()*len(j.bins)/greedyWork
	for b := len(j.bins) - 1; b >= 0; b -= skip {
		if p := j.bestFit(b); j.cost(p).less(j.cost(best)) {
			best = p
		}
	}
	return best
}
