package deal

import (
	"math"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// A house that sold again within so many days for so much more was likely redone between
// (common practice, no source).
const (
	soonAgain = 366
	muchMore  = 0.20
)

// doubtSoldTwice names houses of which an earlier and a later sale are both used, though
// they were likely redone between: one of them is no house like this one.
func (r *reader) doubtSoldTwice(c *Comparables) {
	rows := c.Value.Rows
	for i := range rows {
		for j := range rows {
			a, b := &rows[i], &rows[j]
			days := quantity.DaysBetween(a.Date, b.Date)
			if days <= 0 || days > soonAgain || !comps.SameAddress(a.Label, b.Label) {
				continue
			}
			up := b.Price.InexactFloat64()/a.Price.InexactFloat64() - 1
			if up <= muchMore {
				continue
			}
			r.say("sold-twice", c.Place(&a.Sold), "%s was sold on %s for %s, and on %s for %s (line %d), %.0f%% more: it was likely redone between", a.Name(), a.Date, quantity.FormatDollars(a.Price), b.Date, quantity.FormatDollars(b.Price), c.Place(&b.Sold).Line, math.Round(100*up))("strike the sale in which it was not what your house will be, by its line: strike: [line %d]", c.Place(&a.Sold).Line)
		}
	}
}
