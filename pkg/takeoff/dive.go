package takeoff

import (
	"cmp"
	"slices"
)

// A diver turns the linear program into plans: it buys the sticks of which the
// program takes most, solves it again for the pieces left, and so on to the end.
type diver struct {
	j    *job
	left []int
	done []pattern
	pool []pattern // every pattern made so far
	cost cost      // of the best
	best []pattern
	goal int64 // no plan costs less, in cents
	work int
}

// dive improves a plan, starting from the solved program of the whole job.
func (j *job) dive(m *master, best []pattern, goal int64, work int) []pattern {
	d := &diver{j: j, left: slices.Clone(j.need), pool: m.pool.list, best: best, cost: j.cost(best), goal: goal, work: work}
	kinds := make([]int, len(j.need))
	for k := range kinds {
		kinds[k] = k
	}
	for d.cost.price > d.goal && d.work > 0 {
		d.buy(m, kinds)
		var r *job
		if r, kinds = j.rest(d.left); len(kinds) == 0 {
			d.offer(nil, nil)
			break
		}
		m = newMaster(r, d.pooled(kinds))
		d.work = m.run(huge, d.work)
		for _, p := range m.pool.list[m.pool.old:] {
			d.pool = append(d.pool, renamed(p, kinds))
		}
		if d.j.cost(d.done).price+m.best.bound() >= d.cost.price {
			break
		}
		d.finish(r, m.best, kinds)
	}
	return d.best
}

// buy takes the patterns used once or more, rounded down, or else the most used.
func (d *diver) buy(m *master, kinds []int) {
	type use struct {
		pattern
		x float64
	}
	var uses []use
	for r, c := range m.basis {
		if c.exchange < 0 && m.x[r] > tiny {
			uses = append(uses, use{renamed(c.pattern, kinds), m.x[r]})
		}
	}
	slices.SortFunc(uses, func(a, b use) int {
		return cmp.Or(cmp.Compare(b.x, a.x), cmp.Compare(a.bin, b.bin), slices.Compare(a.kinds, b.kinds))
	})
	for i, u := range uses {
		if i > 0 && u.x < 0.9 {
			break
		}
		for n := min(times(u.kinds, d.left), max(1, int(u.x+1e-6))); n > 0; n-- {
			d.done = append(d.done, u.pattern)
			for _, k := range u.kinds {
				d.left[k]--
			}
		}
	}
}

const (
	finishPieces = 40   // at most so many pieces left are searched
	finishSteps  = 4000 // of one search
)

// finish completes the sticks bought by plain filling, and by a short search.
func (d *diver) finish(r *job, dual *dual, kinds []int) {
	plan := r.greedy()
	if r.count() <= finishPieces {
		s := newSearch(r, dual, r.cost(plan), finishSteps)
		s.run(false)
		d.work -= 20 * s.steps
		if s.found != nil {
			plan = s.found
		}
	}
	d.offer(plan, kinds)
}

// offer keeps a plan for the pieces left, with the sticks bought, if it is better.
func (d *diver) offer(plan []pattern, kinds []int) {
	all := slices.Clone(d.done)
	for _, p := range plan {
		all = append(all, renamed(p, kinds))
	}
	all = d.j.tidy(all)
	if c := d.j.cost(all); c.less(d.cost) {
		d.best, d.cost = all, c
	}
}

// pooled are the known patterns that can still be cut, in the kinds of the rest.
func (d *diver) pooled(kinds []int) *pool {
	to := make([]int, len(d.left))
	for r, k := range kinds {
		to[k] = r
	}
	p := &pool{}
	for _, q := range d.pool {
		if times(q.kinds, d.left) > 0 {
			p.list = append(p.list, renamed(q, to))
		}
	}
	p.old = len(p.list)
	return p
}

// renamed gives a pattern other kinds, in the same order.
func renamed(p pattern, kinds []int) pattern {
	out := pattern{p.bin, make([]int, len(p.kinds))}
	for i, k := range p.kinds {
		out.kinds[i] = kinds[k]
	}
	return out
}
