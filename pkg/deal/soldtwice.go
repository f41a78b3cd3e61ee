package deal

import (
	"math"
	"strconv"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// doubtOwnSale names an earlier sale of the very house, which is what it was, not what it
// will be.
func (r *reader) doubtOwnSale(c *Comparables) {
	address := ""
	if g := r.good("house.address"); g != nil {
		address = g.node.text
	}
	for i := range c.Value.Rows {
		row, is := &c.Value.Rows[i], ""
		switch {
		case comps.SameAddress(row.Label, address):
			is = "is"
		case c.Choice.Itself(&row.Comp, address):
			is = "is likely"
		default:
			continue
		}
		r.say("sale-of-the-house", c.Place(&row.Sold), "%s, sold on %s, %s the house itself as it was then, and weighs %.0f%% in what it will be worth", row.Name(), row.Date, is, 100*row.Weight)("strike it, unless it was then in the condition that you plan: strike: [%s]", inList(r.deal.Comps.ID(&row.Sold)))
	}
}

// inList is a text as it stands in a list between brackets, in quotes where it needs them.
func inList(text string) string {
	if strings.ContainsAny(text, "#,:[]{}&*!|>%@`'\"") {
		return strconv.Quote(text)
	}
	return text
}

// belowSales says where to strike a sale of the deal file by its line: above the sales
// it would move their lines down.
func (c *Comparables) belowSales(s *comps.Sold) string {
	if s.Line < fromTable {
		return ""
	}
	return "   , below the sales, so that their lines stay"
}

// doubtSoldTwice names houses of which an earlier and a later sale are both used, though
// they were likely redone between: one of them is no house like this one.
func (r *reader) doubtSoldTwice(c *Comparables) {
	rows := c.Value.Rows
	for i := range rows {
		for j := range rows {
			a, b := &rows[i], &rows[j]
			up, likely := comps.Redone(&a.Sold, &b.Sold)
			if !likely {
				continue
			}
			r.say("sold-twice", c.Place(&a.Sold), "%s was sold on %s for %s, and on %s for %s (line %d), %.0f%% more: it was likely redone between", a.Name(), a.Date, quantity.FormatDollars(a.Price), b.Date, quantity.FormatDollars(b.Price), c.Place(&b.Sold).Line, math.Round(100*up))("strike the sale in which it was not what your house will be, by its line: strike: [line %d]%s", c.Place(&a.Sold).Line, c.belowSales(&a.Sold))
		}
	}
}

// doubtCountedTwice names sales that were added beside another row of the same sale, which
// then counts twice, and houses that sold for two prices on one day or within a few weeks, one of
// which is likely wrong.
func (r *reader) doubtCountedTwice(c *Comparables) {
	rows := c.Value.Rows
	for i := range rows {
		a := &rows[i].Sold
		for j := range rows {
			b := &rows[j].Sold
			if a.Price.LessThan(b.Price) && comps.TwoPrices(a, b) {
				at, then := c.Place(b), ""
				if a.Date != b.Date {
					then = "on " + b.Date.String() + " "
				}
				r.say("sale-counted-twice", c.Place(a), "%s counts twice: on %s it was sold for %s, and %sfor %s (line %d of %s), and one of them is likely wrong", a.Name(), a.Date, quantity.FormatDollars(a.Price), then, quantity.FormatDollars(b.Price), at.Line, at.File)("strike the wrong one: strike: [line %d of %s] or [line %d of %s]%s", c.Place(a).Line, c.Place(a).File, at.Line, at.File, c.belowSales(a))
			}
			if i == j || !a.Flags.Has(comps.Duplicate|comps.Again) || b.Flags.Has(comps.Duplicate|comps.Again) || !comps.OneSale(a, b) {
				continue
			}
			at := c.Place(b)
			r.say("sale-counted-twice", c.Place(a), "%s counts twice: it was sold on %s for %s, and on %s for as much (line %d of %s), likely one sale, recorded twice", a.Name(), a.Date, quantity.FormatDollars(a.Price), b.Date, at.Line, at.File)("strike one of them, unless it was sold twice: strike: [line %d of %s]%s", at.Line, at.File, c.belowSales(b))
		}
	}
}
