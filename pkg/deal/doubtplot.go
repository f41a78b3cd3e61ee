package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// plotSizes are what is measured of the ground around a house, or counted on it, that it rarely has more
// of, in their units, where work of some cost goes by all of it: a lot may be larger than anyone sods;
// common practice, no source.
var plotSizes = map[string]int64{
	"yard": 15_000, "driveway": 2500, "walk": 500, "patio": 1000, "fence": 500, "trees": 8,
	"deck_footings": 30, // of a deck of which nobody says how large it is
}

// How much of a deck a footing carries at least, and of how many that is looked at; common practice, no source.
var (
	footingsApart = decimal.NewFromInt(10) // sq ft
	fewFootings   = decimal.NewFromInt(12)
)

// costlyPart is the share of the price from which on work is looked at for what it goes by; common practice,
// no source.
var costlyPart = decimal.New(5, -2)

// doubtMuchOutside doubts sizes of the outside of a house, of a unit or a nought too many.
func (r *reader) doubtMuchOutside(out *model.Member) {
	for _, m := range pricebook.Measures {
		v, given := out.Given.Look(m.Line)
		if !given || m.Of != "outside" {
			continue
		}
		says, ofCost := r.muchOutside(out, m.Line, v.Number)
		if says == "" {
			continue
		}
		if ofCost {
			w, all := r.costlyBy(out, m.Line), "it"
			if w == nil {
				continue
			}
			if m.Unit == "sq ft" {
				says = sqFeet(v.Number) + ", " + says
			}
			if m.Unit == "each" {
				all = "them"
			}
			says += fmt.Sprintf(", and %s goes by all of %s", w.label, all)
		}
		r.outsideSize(v, fmt.Sprintf("%s is %s, %s", m.Name, quoted(v), says))
	}
}

// muchOutside says how so much of a measure of the outside is more than houses have, "" where it is not, and
// whether that matters only where work of some cost goes by it. A fence that goes around a large yard is let
// be; a rail may be twice as long as goes around a square deck.
func (r *reader) muchOutside(out *model.Member, line string, much decimal.Decimal) (says string, ofCost bool) {
	yard, deck := out.Given.Of("yard").Number, out.Given.Of("deck").Number
	switch gutters, _ := r.worked(out, "gutters"); {
	case line == "deck_rail" && deck.IsPositive() && much.Mul(much).GreaterThan(deck.Mul(eight).Mul(eight)):
		return "more than goes around a deck of " + short(deck) + " sq ft", false
	case line == "downspouts" && gutters.IsPositive() && much.GreaterThan(manySpouts) && much.Mul(spoutsApart).GreaterThan(gutters):
		return fmt.Sprintf("and the gutters are %s ft, under %s ft for each", short(gutters), spoutsApart), false
	}
	most, known := plotSizes[line]
	switch {
	case line == "deck_footings" && deck.IsPositive():
		if much.GreaterThan(fewFootings) && much.Mul(footingsApart).GreaterThan(deck) {
			return fmt.Sprintf("over one for each %s of a deck of %s", sqFeet(footingsApart), sqFeet(deck)), false
		}
		return "", false
	case !known || !much.GreaterThan(decimal.NewFromInt(most)):
		return "", false
	case line == "trees" || line == "deck_footings":
		return "many for a house", true
	case line != "fence" || !yard.IsPositive():
		return "much for a house", true
	case much.Mul(much).GreaterThan(yard.Mul(eight).Mul(eight)):
		return fmt.Sprintf("more than goes around a yard of %s, much for a house", sqFeet(yard)), true
	}
	return "", false
}

// muchCounted says how a count of work by a measure of the outside is more than houses have, as of that measure
// itself; "" where it is not.
func (r *reader) muchCounted(w *work, m *pricebook.Measure, count decimal.Decimal) string {
	out := w.member.Parent.Parent
	if all := r.deal.Root.In("outside"); out.Kind != "outside" && len(all) > 0 {
		out = all[0]
	}
	says, ofCost := r.muchOutside(out, m.Line, count)
	switch {
	case rarelySoMuch(m.Line, count):
		return rarely
	case ofCost && !r.costly(w):
		return ""
	}
	return says
}

// costlyBy is work that goes by all of a measure of the outside and costs much, or nil.
func (r *reader) costlyBy(out *model.Member, line string) *work {
	for _, w := range r.chosenWorks() {
		if w.member.Parent.Parent == out && w.member.Given.Of("measure").Refers == line && r.costly(w) {
			return w
		}
	}
	return nil
}

// costly reports whether work without a quote costs much of the price.
func (r *reader) costly(w *work) bool {
	cost, known := r.worked(w.member, "cash_cost")
	return !w.quoted() && known && cost.GreaterThan(r.good("purchase.price").number.Mul(costlyPart))
}
