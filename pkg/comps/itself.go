package comps

import (
	"math"
	"strings"
)

// onOneSpot is how near two places are one, metres: less than a lot is wide (common practice, no
// source).
const onOneSpot = 10

// Itself reports whether a sale that the choice took is likely one of the subject's own, whatever
// it is called: it stands where the subject does, or has the number of its house, and all that is
// known of both, the living area and two things more at least, is the same. The condition may be
// another, and is: the subject's is that of the day on which it will be sold.
func (c *Choice) Itself(k *Comp, address string) bool {
	s, o := c.Subject.House, k.House
	s.Condition, o.Condition = Fact{}, Fact{}
	same := 0
	for _, f := range [][2]Fact{{s.Lot, o.Lot}, {s.Bedrooms, o.Bedrooms}, {s.FullBaths, o.FullBaths}, {s.Built, o.Built}} {
		if f[0].Known && f[1].Known {
			same++
		}
	}
	s.Place, o.Place = Place{}, Place{}
	if same < 2 || !s.Area.Known || !o.Area.Known || !s.agrees(&o) {
		return false
	}
	return k.Distance.Known && k.Distance.Value <= onOneSpot || sameNumber(k.Label, address)
}

// sameNumber reports whether two addresses begin with the number of one house.
func sameNumber(a, b string) bool {
	a, b = spelling(a), spelling(b)
	first := func(s string) string { n, _, _ := strings.Cut(s, " "); return n }
	return hasNumber(a) && hasNumber(b) && first(a) == first(b)
}

// Apart returns how far the subject stands from the nearest of the sales that were taken, and how
// far the farthest of them stand from each other, metres, by the places of three at least; ok if
// there are so many.
func (c *Choice) Apart() (nearest, wide float64, ok bool) {
	m := c.market
	nearest = math.Inf(1)
	n := 0
	for i := range c.Comps {
		a := c.Comps[i].pick.i
		if c.like.nowhere || !m.placed[a] {
			continue
		}
		n++
		nearest = min(nearest, math.Hypot(m.east[a]-c.like.east, m.north[a]-c.like.north))
		for j := range i {
			if b := c.Comps[j].pick.i; m.placed[b] {
				wide = max(wide, math.Hypot(m.east[a]-m.east[b], m.north[a]-m.north[b]))
			}
		}
	}
	return nearest, wide, n >= 3
}
