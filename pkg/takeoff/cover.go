package takeoff

import "slices"

// A cover finds the least cost of whole numbers of sticks that have room enough
// together for all pieces and cost at least a bound in cents. No plan costs less.
type cover struct {
	bins  []bin // the cheapest for its room first
	count int64 // of pieces: no plan has more sticks
	atop  int64 // cents at least
	best  cost
	steps int
}

const coverSteps = 30_000

// cover returns that least cost; where the steps do not reach, only its price is a
// bound, and a weaker one, and sure is false.
func (j *job) cover(cents int64) (least cost, sure bool) {
	c := &cover{bins: slices.Clone(j.bins), atop: cents, best: cost{price: huge}, count: int64(j.count())}
	slices.SortStableFunc(c.bins, func(a, b bin) int {
		switch x, y := a.price*b.room, b.price*a.room; {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	c.branch(0, j.total, cost{})
	if c.steps > coverSteps {
		return cost{price: max(cents, ceilMulDiv(j.total, c.bins[0].price, c.bins[0].room))}, false
	}
	return c.best, true
}

func (c *cover) branch(t int, size int64, spent cost) {
	if c.steps++; c.steps > coverSteps {
		return
	}
	if size <= 0 && spent.price >= c.atop {
		if spent.less(c.best) {
			c.best = spent
		}
		return
	}
	if t == len(c.bins) || !c.least(t, size, spent).less(c.best) {
		return
	}
	b := c.bins[t]
	n := max(ceilDiv(max(0, size), b.room), ceilDiv(max(0, c.atop-spent.price), b.price))
	if t == len(c.bins)-1 {
		if n <= c.count {
			c.branch(t+1, size-n*b.room, spent.plus(b.times(n)))
		}
		return
	}
	for n = min(n, c.count); n >= 0; n-- {
		c.branch(t+1, size-n*b.room, spent.plus(b.times(n)))
	}
}

// least is what the bins from t on cost at least.
func (c *cover) least(t int, size int64, spent cost) cost {
	if size <= 0 {
		return cost{max(spent.price, c.atop), spent.sticks, spent.length}
	}
	b := c.bins[t]
	price := spent.price + ceilMulDiv(size, b.price, b.room)
	sticks, length := int64(1), int64(0)
	for k, b := range c.bins[t:] {
		n, l := ceilDiv(size, b.room), ceilMulDiv(size, b.length, b.room)
		if k == 0 || n < sticks {
			sticks = n
		}
		if k == 0 || l < length {
			length = l
		}
	}
	return cost{max(price, c.atop), spent.sticks + sticks, spent.length + length}
}
