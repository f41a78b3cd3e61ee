package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
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

// How wide in ft a drive to one house is at most, and one of a single lane, which may be as long as it likes;
// common practice, no source.
var wideDrive, oneLane = decimal.NewFromInt(30), decimal.NewFromInt(14)

// doubtMuchOutside doubts sizes of the outside of a house, of a unit or a nought too many.
func (r *reader) doubtMuchOutside(out *model.Member) {
	for _, m := range pricebook.Measures {
		v, given := out.Given.Look(m.Line)
		if !given || m.Of != "outside" {
			continue
		}
		says, from := r.muchOutside(out, m.Line, v)
		if says == "" {
			continue
		}
		if from.IsPositive() {
			w, by := r.costlyBy(out, m.Line, from), "it"
			if w == nil {
				continue
			}
			if area := sqFeet(v.Number); m.Unit == "sq ft" && area != v.Text {
				says = area + ", " + says
			}
			if m.Unit == "each" {
				by = "them"
			}
			if r.allOf(w) {
				by = "all of " + by
			}
			says += fmt.Sprintf(", and %s goes by %s", w.label, by)
		}
		r.outsideSize(v, fmt.Sprintf("%s is %s, %s", m.Name, quoted(v), says))
	}
}

// muchOutside says how so much of a measure of the outside is more than houses have, "" where it is not, and
// from what cost on of the work that goes by it that matters: little where another measure tells it. A fence
// that goes around a large yard is let be; a rail may be twice as long as goes around a square deck.
func (r *reader) muchOutside(out *model.Member, line string, v model.Value) (says string, from decimal.Decimal) {
	much, yard, deck := v.Number, out.Given.Of("yard").Number, out.Given.Of("deck").Number
	switch gutters, _ := r.worked(out, "gutters"); {
	case line == "deck_rail" && deck.IsPositive() && much.Mul(much).GreaterThan(deck.Mul(eight).Mul(eight)):
		return "more than goes around a deck of " + short(deck) + " sq ft", decimal.Zero
	case line == "downspouts" && gutters.IsPositive() && much.GreaterThan(manySpouts) && much.Mul(spoutsApart).GreaterThan(gutters):
		return fmt.Sprintf("and the gutters are %s ft, under %s ft for each", short(gutters), spoutsApart), decimal.Zero
	}
	most, known := plotSizes[line]
	costly := r.good("purchase.price").number.Mul(costlyPart)
	switch {
	case line == "deck_footings" && deck.IsPositive():
		if much.GreaterThan(fewFootings) && much.Mul(footingsApart).GreaterThan(deck) {
			return fmt.Sprintf("over one for each %s of a deck of %s", sqFeet(footingsApart), sqFeet(deck)), decimal.Zero
		}
		return "", decimal.Zero
	case !known || !much.GreaterThan(decimal.NewFromInt(most)):
		return "", decimal.Zero
	case line == "trees" || line == "deck_footings":
		return "many for a house", costly
	case line == "driveway":
		if says := r.driveApart(v, yard); says != "" {
			return says, smallWork
		}
		return "much for a house", costly
	case line != "fence" || !yard.IsPositive():
		return "much for a house", costly
	case much.Mul(much).GreaterThan(yard.Mul(eight).Mul(eight)):
		return fmt.Sprintf("more than goes around a yard of %s, much for a house", sqFeet(yard)), smallWork
	}
	return "", decimal.Zero
}

// driveApart says how a large drive is wider than one to a house, or larger than its yard; "" where it is not.
// One of a single lane may go a long way past a small lawn.
func (r *reader) driveApart(v model.Value, yard decimal.Decimal) string {
	size, err := quantity.ParseSize(v.Text)
	sided := err == nil
	narrow := decimal.Min(size.First.Feet(), size.Second.Feet())
	switch {
	case sided && narrow.GreaterThan(wideDrive) && r.units().Equal(one):
		return fmt.Sprintf("over %s ft wide, much for a house", wideDrive)
	case yard.IsPositive() && v.Number.GreaterThan(yard) && (!sided || narrow.GreaterThan(oneLane)):
		return fmt.Sprintf("more than a yard of %s, much for a house", sqFeet(yard))
	}
	return ""
}

// muchCounted says how a count of work by a measure of the outside is more than houses have, as of that measure
// itself; "" where it is not.
func (r *reader) muchCounted(w *work, m *pricebook.Measure, count model.Value) string {
	out := w.member.Parent.Parent
	if all := r.deal.Root.In("outside"); out.Kind != "outside" && len(all) > 0 {
		out = all[0]
	}
	says, from := r.muchOutside(out, m.Line, count)
	switch {
	case rarelySoMuch(m.Line, count.Number):
		return rarely
	case from.IsPositive() && !r.unquotedCash(w).GreaterThan(from):
		return ""
	}
	return says
}

// costlyBy is, of work that goes by a measure of the outside and costs over so much together, that which
// costs the most; nil where it costs less.
func (r *reader) costlyBy(out *model.Member, line string, from decimal.Decimal) (most *work) {
	var sum decimal.Decimal
	for _, w := range r.chosenWorks() {
		if w.member.Parent.Parent != out || w.member.Given.Of("measure").Refers != line {
			continue
		}
		if sum = sum.Add(r.unquotedCash(w)); most == nil || r.unquotedCash(w).GreaterThan(r.unquotedCash(most)) {
			most = w
		}
	}
	if !sum.GreaterThan(from) {
		return nil
	}
	return most
}

// unquotedCash is what work without a quote costs in money.
func (r *reader) unquotedCash(w *work) decimal.Decimal {
	if w.quoted() {
		return decimal.Zero
	}
	cost, _ := r.worked(w.member, "cash_cost")
	return cost
}
