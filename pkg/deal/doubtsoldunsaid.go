package deal

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// muchUnsaid is the weight of the sales together, by likeness too, from which it is worth a word that
// they do not say a figure (common practice, no source); fewNamed is how many of them are named.
const muchUnsaid, fewNamed = 1.0 / 3, 3

// silent are the sales that do not say something, by name, their weight of all, and whether that is much,
// or would be by likeness alone.
func (c *Comparables) silent(so func(*comps.Row) bool) (names []string, weight float64, much bool) {
	alike := 0.0
	for i := range c.Value.Rows {
		if row := &c.Value.Rows[i]; so(row) {
			names, weight, alike = append(names, row.Name()), weight+row.Weight, alike+row.Alike
		}
	}
	return names, weight, max(weight, alike) >= muchUnsaid
}

// doubtUnsaid warns of a figure that the house says and sales of some weight do not, where that is worth
// something: they count as alike in it. One that no sale says is told as such, and a living area is
// always worth something.
func (r *reader) doubtUnsaid(c *Comparables) {
	for _, f := range Compared() {
		worth := slices.ContainsFunc(c.Value.Rates, func(x comps.Rate) bool { return x.Line == f.Line && x.Worth != 0 })
		if !f.Figure(&c.Subject.House).Known || !worth && f.Line != comps.Size {
			continue
		}
		names, weight, much := c.silent(func(row *comps.Row) bool {
			bySize := f.Line == comps.Garage && row.GarageArea.Known // which is told by itself
			return slices.Contains(row.Unsaid, f.Line) && !bySize
		})
		if len(names) == len(c.Value.Rows) || !much {
			continue
		}
		r.say("comps-not-told", r.needed("house", "comps"), "%d of %s, with %.0f%% of the weight, %s: %s", len(names), quantity.Counted(len(c.Value.Rows), "sale"), 100*weight, fmt.Sprintf(map[bool]string{true: "does not say %s, so it counts as alike to the house in that", false: "do not say %s, so they count as alike to the house in that"}[len(names) == 1], saidOf[f.Line]), firstOf(names))("add the %s to them, where you know it; or strike them, if others say it", fieldsOf[f.Line])
	}
}

// saidOf is how a figure stands in a sentence on sales.
var saidOf = map[comps.Line]string{
	comps.Size: "how large the living area is", comps.Lot: "how large the lot is", comps.Rooms: "how many bedrooms there are", comps.Baths: "how many baths there are",
	comps.Age: "in which year it was built", comps.Condition: "in what condition it was", comps.Garage: "anything of a garage",
}

// firstOf names the first of some and counts the rest.
func firstOf(names []string) string {
	if len(names) <= fewNamed {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:fewNamed], ", "), len(names)-fewNamed)
}
