package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A room hardly has more than two of a thing that is heated, cooked, washed or cooled with, nor a
// house more than four for each unit; common practice, no source.
var mostInRoom, mostInHouse = two, four

// fewInRoom are items by the piece that stand for such a thing, or are done as seldom, and make nothing that
// another could make; a test holds that the price book has them. Never written to.
var fewInRoom = []string{
	"exhaust fan", "bath accessories", "fridge", "dishwasher fitted", "microwave over range", "range hood fitted", "range changed to gas", "washer", "laundry box",
	"panel 200 amp", "service upgrade", "main shutoff valve", "pressure regulator fitted", "sump pump", "radon fan",
	"sewer line replaced", "chimney liner", "chimney rebuilt above roof", "oil tank removed", "oil tank buried removed", "staging",
	"garage door", "garage door opener", "fire door to garage", "doorbell", "mailbox", "attic hatch",
	"range circuit", "dryer circuit", "range hood duct", "dryer duct", "chimney flashing", "chimney crown and cap",
	"building permit", "plumbing permit", "electrical permit", "mechanical permit", "lead-safe firm certificate",
	"structural engineer visit", "appraisal of damage", "photos of finished house", "utility turn-on", "electrical service visit",
	"heating service visit", "boiler service", "chimney sweep and look", "oil tank sweep", "soil test", "asbestos test", "sewer camera",
	"termite treatment", "sewer spot repair", "crawlspace put right", "old wiring made safe", "oil lines taken out", "bonding",
	"duct sealing", "attic air sealing", "water heater drain pan and expansion", "tile hearth", "doors and cracks after lifting",
	"ledger flashed", "joist tops looked at", "outbuilding removal", "yard made good after digging", "walk or drive cut made good",
	"roof flashing", "fixtures off and on for siding",
}

// mostPieces are how many of an item a room hardly has more than, and a house for each of its units.
type mostPieces struct{ Room, House int64 }

// mostOf are items by the piece of which a place may have more than of those, and what is done once for all of a
// room, such as all of its appliances; common practice, no source. Never written to.
var mostOf = map[string]mostPieces{
	"furnace": {2, 2}, "boiler": {2, 2}, "heat pump": {2, 2}, "air conditioner": {2, 2}, // whose tons are no count
	"circuit": {8, 40}, "protected outlet": {12, 24}, "ceiling fan": {6, 12}, "thermostat": {6, 12},
	"outside outlet": {4, 8}, "outside light": {12, 24}, "hose bibb": {4, 8}, "skylight": {4, 8}, "mulch": {6, 12},
	"bearing wall opening": {4, 8}, "beam": {6, 12}, "gas line": {4, 8}, "duct run": {12, 24},
	"fixture rough-in": {8, 16}, "drain replaced": {1, 12}, "supply lines": {1, 12},
	"baseboard heater": {4, 20}, "mini-split": {3, 9}, "return air path": {3, 16}, "fan duct": {3, 9}, "electrical rough room": {3, 20},
	"old appliance hauled away": {6, 12}, "pickup load to dump": {12, 30},
	"repair large hole": {10, 40}, "repair ceiling stain": {6, 20}, "patch wood floor": {6, 20}, "wall patching after trades": {4, 20},
	"repair loose tiles": {4, 12}, "wires and pipes moved out of wall": {4, 16},
	"basement post": {8, 12}, "termite damage repair": {4, 12}, "mould cleaning": {4, 12}, "hazard removal": {4, 8}, "clearance test": {4, 12},
	"joist sister": {24, 90}, "rafter repair": {12, 30}, "foundation crack injected": {5, 8}, "foundation wall braced": {2, 3}, "foundation piers": {2, 2}, "egress window": {3, 9},
	"porch post": {8, 16}, "outside trim boards": {8, 16}, "scaffold and ladders": {4, 8}, "roof leak patch": {4, 8},
	"beds edged": {6, 12}, "front planting": {4, 8}, "lawn watering": {4, 8}, "seed made good": {4, 8}, "pest treatment": {6, 9},
	"lead-safe supplies": {2, 20}, "take out appliances": {1, 4}, "shutoffs and supply lines": {3, 12}, "tub and basin caulk renewed": {2, 8},
	"drywall patch": {2, 20}, "spot prime repairs": {2, 20}, "reglue paper seams": {2, 20}, "stain-block ceiling spots": {2, 20},
}

// inSets are items of mostOf of which one has several pieces, that are easily counted each. Never written to.
var inSets = []string{"foundation wall braced", "foundation piers"}

// rentedTimes is how many times as long as the house is held a thing is rented for at most; common practice,
// no source.
var rentedTimes = two

// thick are what a room hardly has one each of so many sq ft of its floor of, where it has more than a
// few; common practice, no source.
var thick = map[string]struct{ floor, few decimal.Decimal }{
	"lights":  {eight, six},
	"outlets": {six, decimal.NewFromInt(20)},
}

// manySteps are how many treads outside, of decks and porches, a house hardly has more than for each of its units;
// common practice, no source.
var manySteps = decimal.NewFromInt(30)

// doubtMuchOf doubts a count that a place hardly has: of what stands there once or a few times, of a measure of
// the outside as that itself is doubted, of months that are rented far beyond the sale, of lights and outlets
// in a room of so much floor, and of sq ft of a room that is counted for the whole house.
func (r *reader) doubtMuchOf(w *work, g *reading, m *pricebook.Measure) {
	if w.quoted() {
		return
	}
	place, count := w.member.Parent.Parent, w.member.Given.Of("measure").Number
	tell := func(says string) {
		r.countLarge(w, g, says, "check it, for a digit too many")
	}
	switch {
	case m.Name == "one":
		if most, where := r.mostByPiece(w); most.IsPositive() && count.GreaterThan(most) {
			if where == aRoom && most.Equal(one) {
				r.countLarge(w, g, "and it is done once for a room: "+diag.Quote(w.item.Work), "leave the count out; what is done in several rooms is named in each, or counted under   whole house   ")
				return
			}
			says := "and " + where + " hardly has more than " + most.String()
			if w.item.Work != "" { // which an item of the owner's book may leave out
				says += " of " + diag.Quote(w.item.Work)
			}
			check := "check it, for a digit too many"
			if slices.Contains(inSets, w.item.Name) {
				check = "check it: a count of 1 stands for all of that"
			}
			r.countLarge(w, g, says, check)
		}
	case m.Line == "stair_treads" && place.Kind == "outside":
		if most := manySteps.Mul(r.units()); count.GreaterThan(most) {
			tell("and a house hardly has more treads than " + most.String() + " outside")
		}
	case m.Line == "stair_rail_run" && place.Kind == "inside" && r.longRail(place, count):
		tell(beyondStairs)
	case m.Of == "outside":
		if says := r.muchCounted(w, m, w.member.Given.Of("measure")); says != "" {
			tell(says)
		}
	case m.Name == pricebook.Months:
		if held, known := r.worked(r.deal.Root, "hold_months"); known && held.IsPositive() && count.GreaterThan(rentedTimes.Mul(held)) {
			tell("and the house is held for " + quantity.FormatMonths(held, 1))
		}
	case thick[m.Name].floor.IsPositive():
		if floor, _ := r.worked(place, "floor_area"); tooThick(m.Name, count, floor) {
			tell(fmt.Sprintf("many for the %s of floor of %s", sqFeet(floor), place.Label))
		}
	case m.Of == "inside" && place.Kind == "whole_house" && (m.Name == "ceiling" || m.Name == "floor" || m.Name == "open floor"):
		if most, words := r.mostLevel(); count.GreaterThan(most) {
			tell("and " + words)
		}
	}
}

// tooThick reports whether a floor hardly has so many of a measure; none is known of no floor.
func tooThick(measure string, count, floor decimal.Decimal) bool {
	x := thick[measure]
	return count.GreaterThan(x.few) && floor.IsPositive() && count.Mul(x.floor).GreaterThan(floor)
}

const aRoom = "a room"

// mostByPiece is how many of an item by the piece its place hardly has more than, and what place that is; none
// where that is not known. A level, or two rooms in one, may have twice as many of what rooms have several of.
func (r *reader) mostByPiece(w *work) (most decimal.Decimal, where string) {
	place, x := w.member.Parent.Parent, mostOf[w.item.Name]
	inRoom, inHouse := decimal.NewFromInt(x.Room), decimal.NewFromInt(x.House)
	switch {
	case x.House > 0 && w.item.Makes != "": // a plant for all of the house
	case w.item.Makes != "" || slices.Contains(fewInRoom, w.item.Name):
		inRoom, inHouse = mostInRoom, mostInHouse
	case r.takesALevel(place) || holdsAny(strings.ToLower(place.Label), twoRooms...):
		inRoom = inRoom.Mul(two)
	}
	if place.Kind == "inside" {
		return inRoom, aRoom
	}
	return inHouse.Mul(r.units()), "a house"
}

// units are how many homes are under the roof.
func (r *reader) units() decimal.Decimal {
	if g := r.good("house.units"); g != nil && g.number.GreaterThan(one) {
		return g.number
	}
	return one
}

// largeHouse is in sq ft the floor that houses rarely are over; common practice, no source.
var largeHouse = decimal.NewFromInt(5000)

// mostLevel is how much floor or ceiling the house can have, by its roof or the way around it over all
// of its levels and one that is none, as a basement, with that in words.
func (r *reader) mostLevel() (most decimal.Decimal, words string) {
	levels := levelsUnsaid
	if g := r.good("house.levels"); g != nil {
		levels = decimal.Max(one, g.number)
	}
	by := "the way around it"
	for _, out := range r.deal.Root.In("outside") {
		around := out.Given.Of("foundation_run").Number
		most = around.Mul(around).DivRound(sixteen, 0).Mul(moreThanFits)
		if roof, _ := r.worked(out, "roof"); roof.GreaterThan(most) {
			most, by = roof, "its roof"
		}
	}
	if !most.IsPositive() {
		return largeHouse, "houses rarely have over " + sqFeet(largeHouse)
	}
	most = most.Mul(levels.Add(one))
	return most, fmt.Sprintf("by %s the house has %s at most", by, sqFeet(most))
}
