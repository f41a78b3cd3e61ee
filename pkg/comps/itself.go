package comps

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"ledgerboard/pkg/diag"
)

// onOneSpot is how near two places are one, metres: less than a row house is wide (common practice,
// no source).
const onOneSpot = 3

// Itself reports whether a sale that the choice took is likely one of the subject's own, whatever
// it is called: it stands where the subject does, or has the number of its house in what may be its
// street, and all that is known of both, the living area and two things more at least, is the same.
// The condition may be another, and is: the subject's is that of the day on which it will be sold.
// An address that is clearly another's, as of the next unit, is another house.
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
	if a, b := spelling(k.Label), spelling(address); hasNumber(a) && hasNumber(b) {
		return maybeOneAddress(a, b)
	}
	return k.Distance.Known && k.Distance.Value <= onOneSpot
}

// maybeOneAddress reports whether two addresses may be one with a word misspelt, a direction more or
// less, or a unit or town that one of them leaves away.
func maybeOneAddress(a, b string) bool {
	x, y := bare(a), bare(b)
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] && !(misspells(x[i]) && misspells(y[i]) && diag.Misspelt(x[i], y[i])) {
			return false
		}
	}
	return len(x) > 1 && len(y) > 1
}

// misspells reports whether a word is one in which a slip is likely: no number, and no letter of a unit.
func misspells(word string) bool { return len(word) > 3 && unicode.IsLetter(rune(word[0])) }

// bare are the words of an address by which it is told from others: no directions, nor what kind of
// street it is.
func bare(address string) []string {
	return slices.DeleteFunc(strings.Fields(address), func(w string) bool {
		return w == "unit" || slices.Contains(kinds, w) || slices.Contains(directions, w)
	})
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
