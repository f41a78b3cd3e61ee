package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// The inputs that are looked at beside what the file or the price book gives of them, of which a point or a
// nought may slip, or what a pack costs stand for what a unit does.
var (
	shopPrices = []string{"product.pack_price", "product.holds", "stock.stick_price", "item.hired_price", "item.hours_each", "trade.crew_rate", "rental.a_month"}
	slipSums   = []string{"price", "deposit.amount", "container_price", "own_hours_a_week"}
	slipShares = []string{"premium_share", "partner_share"} // which are bounded above elsewhere
)

// slipEdges are those of such an input: a price as far from the given as a file's may be from the price book's.
func slipEdges(c *model.Cell) []Edge {
	switch id := c.Line.ID(); {
	case slices.Contains(shopPrices, id):
		return aroundGiven(c, pricebook.FarTimes, 9)
	case slices.Contains(slipSums, id):
		return aroundGiven(c, billTimes, 9)
	case slices.Contains(slipShares, id):
		if both := aroundGiven(c, billTimes, 9); both != nil {
			return both[:1]
		}
	}
	return nil
}

// aroundGiven are the ends of a part in so many of what the file gives, rounded to places, and of so many
// times that; none where it gives nothing.
func aroundGiven(c *model.Cell, times decimal.Decimal, places int32) []Edge {
	if c.Given == nil || !c.Given.Number.IsPositive() {
		return nil
	}
	return []Edge{least(c.Given.Number.DivRound(times, places)), most(c.Given.Number.Mul(times))}
}
