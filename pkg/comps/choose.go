package comps

import (
	"slices"
)

// Wish is what the caller wants of a choice. The zero Wish leaves all to the package.
type Wish struct {
	Count  int   // how many sales; 0 for the usual number
	Strike []int // lines of the file never to take
	Add    []int // lines of the file to take whatever speaks against them but the day, all of them
	Keep   []int // lines of the file that are as good as others however old they are
	Given  Given // amounts in place of estimates
	Extras []Extra
}

// Comp is a sale that was taken.
type Comp struct {
	Sold
	Months   float64 // before the day
	Distance Fact    // from the subject, metres
	Likeness float64 // 1 for the subject's twin sold on the day before, falling to 0
	Why      string  // why it was taken, in plain words
	Doubts   string  // what speaks against it, "" for nothing
	pick     pick
}

// Passed is a sale like the subject that was not taken.
type Passed struct {
	Sold
	Why string
}

// Choice is the sales to value a subject by.
type Choice struct {
	Day     string // the day of the value, 2026-05-14
	Subject Subject
	Comps   []Comp   // the most alike first, then those asked for that are less alike
	Passed  []Passed // as alike as those taken, and why they were not

	market *Market
	like   *likeness
	pool   []pick
	given  Given
	extras []Extra
}

// Choose takes the sales most like the subject in place, time, size, lot, age, rooms
// and style. It works on what the subject says: a thing not known plays no part.
func (m *Market) Choose(s Subject, w Wish) *Choice {
	c := &Choice{Day: m.Day.String(), Subject: s, market: m, given: w.Given, extras: w.Extras}
	use := m
	if len(w.Add)+len(w.Keep) > 0 {
		use = m.with(w.Add, w.Keep)
		c.market = use
	}
	c.like = use.compare(&c.Subject.House)
	count := w.Count
	if count <= 0 {
		count = tune.Comps
	}
	c.pool = c.like.nearest(max(tune.Pool, count+len(w.Strike)), w.Strike)
	for _, p := range c.pool {
		sold := use.sales[p.i]
		if far := use.far(p.i); far && !slices.Contains(w.Add, sold.Line) {
			if len(c.Comps) < count {
				d := *sold
				d.Flags |= Outlier
				c.Passed = append(c.Passed, Passed{d, d.Doubts()})
			}
			continue
		}
		if len(c.Comps) < count {
			c.Comps = append(c.Comps, c.comp(p))
		}
	}
	for _, line := range w.Add {
		c.add(line)
	}
	c.makeRoom(count, w.Add)
	return c
}

// far reports whether a price is out of all proportion to its like.
func (m *Market) far(i int) bool {
	w := m.fit.weight[i]
	return w < huber/tune.Far
}

// with returns the market with sales that were set aside taken back in, and old ones kept.
func (m *Market) with(lines, keep []int) *Market {
	in := func(s *Sold, lines []int) bool { return s.Line > 0 && slices.Contains(lines, s.Line) }
	back := slices.ContainsFunc(m.aside, func(s *Sold) bool { return in(s, lines) })
	if m.old > 0 && !back {
		back = slices.ContainsFunc(m.list.sales, func(s Sold) bool { return s.Old(m.Day) && (in(&s, lines) || in(&s, keep)) })
	}
	if !back {
		return m
	}
	return m.list.before(m.Day, lines, keep)
}

// add takes a sale by its line if it is not taken yet.
func (c *Choice) add(line int) {
	if slices.ContainsFunc(c.Comps, func(k Comp) bool { return k.Line == line }) {
		return
	}
	for i, s := range c.market.sales {
		if s.Line != line || line == 0 {
			continue
		}
		k := c.comp(pick{i, c.like.to(i, 1e300)})
		k.Why = "asked for; " + k.Why
		c.Comps = append(c.Comps, k)
		return
	}
}

// noPlace is the share of the most alike sale's weight under which one that was asked for
// is used beside the others, and takes the place of none of them.
const noPlace = 0.01

// makeRoom takes out the least alike sales but those asked for, down to a number: not for
// one that would weigh next to nothing, which counts above it.
func (c *Choice) makeRoom(count int, asked []int) {
	weights := c.like.besideNearest(c.picks())
	for _, w := range weights[min(count, len(weights)):] {
		if w < noPlace {
			count++
		}
	}
	for i := len(c.Comps) - 1; i >= 0 && len(c.Comps) > count; i-- {
		if !slices.Contains(asked, c.Comps[i].Line) {
			c.Comps = slices.Delete(c.Comps, i, i+1)
		}
	}
}

// Market returns the market that was chosen from, with the sales that were asked for.
func (c *Choice) Market() *Market { return c.market }

// Aside returns the sales before the day that are doubtful and were set aside.
func (m *Market) Aside() []Sold {
	out := make([]Sold, len(m.aside))
	for i, s := range m.aside {
		out[i] = *s
	}
	return out
}

// Len returns how many sales before the day may be used.
func (m *Market) Len() int { return len(m.sales) }

// Nearby are the houses sold nearby, however alike they are: those as near as the sales that
// set the reach, or all where no place is known.
func (c *Choice) Nearby() (out []*House) {
	l := c.like
	placed := l.reach.place > tune.Floor
	for i, s := range c.market.sales {
		if !placed || l.located(i) && l.place[i] <= l.reach.place*l.reach.place {
			out = append(out, &s.House)
		}
	}
	return out
}
