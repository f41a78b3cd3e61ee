package answer

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/solve"
)

// A Verdict is the advice in a word.
type Verdict string

// The verdicts. Lower means that the asking price is above what the deal bears,
// but not so far above that it is better left; Other, that a target is missed at the
// asking price and a higher one bears it, as where a charge falls with the price.
const (
	Bid   Verdict = "bid"
	Lower Verdict = "bid lower"
	Other Verdict = "another price"
	Leave Verdict = "leave it"
)

func (a *Answer) verdict() Verdict {
	price := a.Line("price")
	floor := price.Mul(decimal.NewFromInt(1).Sub(a.Line("walk_away_share")))
	switch {
	case !a.Offer.Found || !a.OfferLow.Found || a.Offer.Price.LessThan(floor):
		return Leave
	case len(a.Missed()) > 0 && !a.Offer.Price.LessThan(price):
		return Other
	case len(a.Missed()) > 0 || a.OfferLow.Price.LessThan(price.Floor()): // offers are whole dollars
		return Lower
	case a.LowMisses && a.OfferLow.Price.LessThan(price):
		return Lower
	case a.LowMisses:
		return Other
	}
	return Bid
}

// missesAtLow reports whether a target is missed at the asking price if the house turns out
// worth the low value.
func (a *Answer) missesAtLow() (bool, error) {
	var watched []*model.Cell
	for _, t := range solve.Targets(a.Deal.Targets) {
		watched = append(watched, a.small.Find(a.small.Root, t))
	}
	v, err := exact.NewPlan(a.small, watched...).Evaluate(a.change("after_repair_value", a.Line("low_value")))
	if err != nil {
		return false, err
	}
	return slices.ContainsFunc(watched, func(c *model.Cell) bool { return v.Of(c).IsNegative() }), nil
}
