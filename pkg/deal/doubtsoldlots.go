package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// timesTheLot is timesTheHouse of lots, which differ more (common practice, no source).
const timesTheLot = 20

// A digit slipped in one lot makes it so many times that of the house, and of the middle one of the
// sales: of 250 houses of a county none had such a sale among 12 or 25 of the nearest, or those
// picked.
const slippedLot, slippedMiddle = 7, 5

// doubtLots warns of lots that are hardly those of houses like this one.
func (r *reader) doubtLots(c *Comparables) {
	ours, middle := c.Subject.Lot, middleFact(c.Value.Rows, lotOf).Value
	if !ours.Known {
		return
	}
	for _, row := range c.Value.Rows {
		x := row.Lot
		if !x.Known {
			continue
		}
		slipped := timesEither(x.Value, ours.Value, slippedLot) && timesEither(x.Value, middle, slippedMiddle) && (x.Value > ours.Value) == (x.Value > middle)
		if slipped || timesEither(x.Value, ours.Value, timesTheLot) {
			r.say("sale-odd-size", c.Place(&row.Sold), "%s has a lot of %s sq ft, and the house one of %s", row.Name(), quantity.FormatCount(decimalOf(x), 0), quantity.FormatCount(decimalOf(ours), 0))("look whether both lots were read right, in acres or sq ft, and strike a sale of quite another house")
		}
	}
}

// timesEither reports whether one of two numbers above nothing is so many times the other.
func timesEither(a, b, times float64) bool { return a >= times*b || b >= times*a }

// beyondTheLots is how many times the lot of the sale with the largest, or of that with the smallest
// that of the house, tells little of its value any more: of 745 tables of a county's sales one had
// such a house that was not mistyped.
const beyondTheLots = 3

// beyondPricedLots is the same where an amount of the file or of pairs of them prices the difference,
// and that moves the value by much (common practice, no source).
const beyondPricedLots = 1.5

// doubtBeyondLots warns of a house with a far larger or smaller lot than all sales that weigh
// something.
func (r *reader) doubtBeyondLots(c *Comparables) {
	ours := c.Subject.Lot
	least, most := c.ends(lotOf)
	which, edge, times := "largest", most, float64(beyondTheLots)
	if c.drawnOn(comps.Lot) {
		times = beyondPricedLots
	}
	switch {
	case !ours.Known || least <= 0:
		return
	case ours.Value >= times*most:
	case least >= times*ours.Value:
		which, edge = "smallest", least
	default:
		return
	}
	r.say("house-beyond-sales", r.needed("house.lot", "house"), "the house has a lot of %s sq ft, and the %s of the sales %s: none tells what so %s a lot is worth", quantity.FormatCount(decimalOf(ours), 0), which, quantity.FormatCount(decimal.NewFromFloat(edge), 0), map[bool]string{true: "large", false: "small"}[which == "largest"])("look at its lot for a digit too many or too few, and whether it is in acres or sq ft; if it is right, look for sales with such a lot")
}
