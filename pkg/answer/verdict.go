package answer

import "github.com/shopspring/decimal"

// A Verdict is the advice in a word.
type Verdict string

// The verdicts. Lower means that the asking price is above what the deal bears,
// but not so far above that it is better left.
const (
	Bid   Verdict = "bid"
	Lower Verdict = "bid lower"
	Leave Verdict = "leave it"
)

func (a *Answer) verdict() Verdict {
	price := a.Line("price")
	floor := price.Mul(decimal.NewFromInt(1).Sub(a.Line("walk_away_share")))
	switch {
	case !a.Offer.Found || !a.OfferLow.Found || a.Offer.Price.LessThan(floor):
		return Leave
	case a.OfferLow.Price.LessThan(price):
		return Lower
	}
	return Bid
}
