package best

import (
	"math"
	"slices"
)

// starts are choices to begin with, so that what is far worse is left out at once: the
// scope of the file and doing nothing, bettered room by room as far as planes over
// wide boxes tell.
func (p *problem) starts() ([][]int, error) {
	p.floor = math.MinInt64
	coarse := p.coarse()
	if err := p.sliceAll(coarse); err != nil {
		return nil, err
	}
	for _, spans := range coarse {
		all, err := p.slices(spans)
		if err != nil {
			return nil, err
		}
		for _, s := range all {
			p.bounds = append(p.bounds, &sliceBound{slice: s})
		}
	}
	own := p.own()
	c := &climb{problem: p, seen: map[string]int64{}}
	for _, from := range [][]int{own, make([]int, len(p.House.Rooms))} {
		c.from(from)
	}
	out := p.settle(c)
	p.bounds = nil
	for _, spans := range coarse {
		if err := p.live(spans); err != nil {
			return nil, err
		}
	}
	return out, p.err
}

// own is the scope of the file.
func (h *House) own() []int {
	out := make([]int, len(h.Rooms))
	for i, r := range h.Rooms {
		out[i] = r.Own
	}
	return out
}

// climb betters choices one room at a time by what their bound says.
type climb struct {
	*problem
	seen map[string]int64
	all  [][]int
}

func (c *climb) from(start []int) {
	at := slices.Clone(start)
	c.cheapen(at)
	best, ok := c.look(at)
	for better := true; better; {
		better = false
		for i, n := range c.sizes {
			was := at[i]
			for o := range n {
				at[i] = o
				if x, can := c.look(at); can && (!ok || x > best) {
					best, was, ok, better = x, o, true, true
				}
			}
			at[i] = was
		}
	}
}

// cheapen changes a choice that needs too much cash one room at a time to what needs less.
func (c *climb) cheapen(at []int) {
	least := c.needed(at)
	for better := true; better && c.limits.Cash != nil && least > c.limits.Cash.InexactFloat64(); {
		better = false
		for i, n := range c.sizes {
			was := at[i]
			for o := range n {
				at[i] = o
				if x := c.needed(at); x < least {
					least, was, better = x, o, true
				}
			}
			at[i] = was
		}
	}
}

// needed is nearly the cash that a choice needs.
func (p *problem) needed(choice []int) float64 {
	p.nearly(choice)
	if b := p.sharpest(); b != nil {
		return b.needs(&p.z)
	}
	return math.Inf(1)
}

// sharpest is the bound that tells the totals at hand best, or nil.
func (p *problem) sharpest() (best *sliceBound) {
	for _, b := range p.bounds {
		if (best == nil || b.err <= best.err) && b.holds(&p.z, p.moves) {
			best = b
		}
	}
	return best
}

func (c *climb) look(choice []int) (int64, bool) {
	x, can := c.guess(choice)
	key := string(bytes(choice))
	if _, known := c.seen[key]; !known && can {
		c.seen[key] = x
		c.all = append(c.all, slices.Clone(choice))
	}
	return x, can
}

// guess is what a choice comes to in the middle of the planes of its slice.
func (p *problem) guess(choice []int) (int64, bool) {
	if _, can := p.wholeBound(choice); !can {
		return 0, false
	}
	b := p.sharpest()
	if b == nil || math.IsInf(b.err, 0) || math.IsNaN(b.err) {
		return 0, true
	}
	return guessed(b.profit.of(&p.z) - b.err), true
}

func guessed(x float64) int64 {
	if math.IsNaN(x) {
		return 0
	}
	return upCents(x)
}

// tries is how many of the choices looked at are worked out exactly to begin with, besides
// the scope of the file; where fewer than two of them keep the limits, up to so many more.
const (
	tries = 4
	more  = 36
)

// settle works out the scope of the file and the choices that looked best, until two of
// them keep the limits: the second of those is the floor. The search fails where a bound
// says that the scope of the file is worth less than it is, and never finds less.
func (p *problem) settle(c *climb) [][]int {
	slices.SortStableFunc(c.all, func(a, b []int) int {
		x, y := c.seen[string(bytes(a))], c.seen[string(bytes(b))]
		switch {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	var worth []int64
	var out [][]int
	for _, x := range append([][]int{p.own()}, c.all...) {
		if len(out) > tries+more || len(out) > tries && len(worth) > 1 {
			break
		}
		if slices.ContainsFunc(out, func(y []int) bool { return slices.Equal(x, y) }) {
			continue
		}
		out = append(out, x)
		if v, ok, _ := p.Worth(x); ok {
			worth = append(worth, v)
		}
	}
	if slices.Sort(worth); len(worth) > 1 {
		p.floor = worth[len(worth)-2]
	}
	return out
}
