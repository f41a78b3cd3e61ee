package takeoff

import "slices"

// An answer is a plan without labels.
type answer struct {
	patterns []pattern
	cost     cost
	bound    int64
	by       Proof
}

const (
	priceSteps = 300_000 // of the search for a cheaper plan
	tieSteps   = 100_000 // of the search among plans of one price
)

// solve goes from cheap to dear ways, and stops once nothing can be better.
func (j *job) solve() answer {
	a := answer{patterns: j.greedy(), by: BySum}
	a.cost = j.cost(a.patterns)
	least, sure := j.cover(0)
	a.bound = least.price
	if sure && a.cost == least || len(j.size) > masterKinds {
		return a
	}
	goal := a.bound
	m := newMaster(j, &pool{list: slices.Clone(a.patterns)})
	work := m.run(max(goal, a.cost.price), masterWork)
	if m.best.bound() > a.bound {
		least, sure = j.cover(m.best.bound())
		a.bound, a.by = least.price, ByValues
	}
	if a.cost.price > a.bound {
		a.take(j, j.dive(m, a.patterns, a.bound, work))
	}
	if a.cost.price > a.bound {
		s := newSearch(j, m.best, a.cost, priceSteps)
		whole := s.run(false)
		a.take(j, s.found)
		if whole {
			a.bound, a.by = a.cost.price, BySearch
		}
	}
	if len(j.bins) > 1 && a.cost.price == a.bound && !(sure && a.cost == least) {
		s := newSearch(j, m.best, a.cost, tieSteps)
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

// greedy is the best of the plans that plain filling makes.
func (j *job) greedy() []pattern {
	best := j.fullest()
	for b := range j.bins {
		if p := j.bestFit(b); j.cost(p).less(j.cost(best)) {
			best = p
		}
	}
	return best
}
