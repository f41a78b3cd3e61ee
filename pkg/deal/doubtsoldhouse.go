package deal

import (
	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// An oddFact is what is likely mistyped of a house where it is far from that of nearly all that
// sold nearby.
type oddFact struct {
	line                     comps.Line
	key, article, unit, slip string
	of                       func(*comps.House) comps.Fact
	times                    float64 // what it is beyond how many times the others
	year                     bool    // or, in the place of that, so many years apart
}

// far reports whether one figure is too much beside another.
func (f *oddFact) far(more, less float64) bool {
	if f.year {
		return more-less >= yearsNearby
	}
	return less > 0 && more >= f.times*less
}

// timesNearby is from how many times the lot of nearly all that sold nearby on a lot looks
// mistyped, and yearsNearby from how many years before or after them a year does. Rooms go by
// timesTheHouse (common practice, no source).
const (
	timesNearby = 8
	yearsNearby = 80
)

func oddFacts() []oddFact {
	const digit = "a digit too many or too few"
	return []oddFact{
		{line: comps.Lot, key: "lot", article: "a lot of ", unit: " sq ft", slip: digit + ", and whether it is in acres or sq ft", of: func(h *comps.House) comps.Fact { return h.Lot }, times: timesNearby},
		{line: comps.Age, key: "year built", article: "been built in ", slip: "digits that are swapped", of: func(h *comps.House) comps.Fact { return h.Built }, year: true},
		{line: comps.Rooms, key: "bedrooms", unit: " bedrooms", slip: digit, of: func(h *comps.House) comps.Fact { return h.Bedrooms }, times: timesTheHouse},
		{line: comps.Baths, key: "baths", unit: " full baths", slip: digit, of: func(h *comps.House) comps.Fact { return h.FullBaths }, times: timesTheHouse},
		{line: comps.Garage, key: "garage", article: "room for ", unit: " cars", slip: digit, of: func(h *comps.House) comps.Fact { return h.GarageCars }, times: timesTheHouse},
	}
}

// doubtHouse warns of a house that is unlike nearly all sold nearby in something that moves its
// value, and returns the keys of what. Out of a long list those like it are taken, so all nearby are
// looked at, not these alone.
func (r *reader) doubtHouse(c *Comparables) (told []string) {
	nearby := c.Choice.Nearby()
	for _, f := range oddFacts() {
		ours := f.of(&c.Subject.House)
		if !ours.Known {
			continue
		}
		var all []float64
		above, below := 0, 0
		for _, h := range nearby {
			theirs := f.of(h)
			if !theirs.Known {
				continue
			}
			all = append(all, theirs.Value)
			if f.far(ours.Value, theirs.Value) {
				above++
			}
			if f.far(theirs.Value, ours.Value) {
				below++
			}
		}
		if !nearlyAll(max(above, below), len(all)) {
			continue
		}
		said := func(x comps.Fact) string {
			if f.year {
				return decimalOf(x).Round(0).String()
			}
			if f.key == "lot" {
				return quantity.FormatCount(decimalOf(x), 0)
			}
			return quantity.FormatCount(decimalOf(x), 1)
		}
		told = append(told, f.key)
		r.say(MistypedHouse, r.needed("house."+f.key, "house"), "the house is said to have %s%s%s, and the sales nearby about %s: likely it was mistyped", f.article, said(ours), f.unit, said(comps.Known(middleOf(all))))("look at its %s for %s; the value hangs on it", f.key, f.slip)
	}
	return told
}
