package answer

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/solve"
)

// gaps finds prices under the maximum offers that miss a target all the same, from as far
// under the asking price as the deal is walked away from.
func (a *Answer) gaps() error {
	price := a.Line("price")
	from := price.Mul(one.Sub(a.Line("walk_away_share")))
	find := func(o solve.Offer, changes ...exact.Change) (at decimal.Decimal, err error) {
		if !o.Found || o.Endless {
			return at, nil
		}
		miss, found, err := solve.FirstMiss(a.small, a.Deal.Targets, from, o.Price, changes...)
		if found {
			at = miss
		}
		return at, err
	}
	var err error
	if a.Gap, err = find(a.Offer); err != nil || !a.HasLow {
		return err
	}
	a.GapLow, err = find(a.OfferLow, a.change("after_repair_value", a.Line("low_value")))
	return err
}

// Gaps says that some prices under a maximum offer miss a target, or nothing where none does.
func (a *Answer) Gaps() string {
	at, when := a.Gap, ""
	if a.HasLow && at.IsZero() {
		at, when = a.GapLow, " at your low value"
	}
	if at.IsZero() {
		return ""
	}
	return "Not every price below will do: " + dollars(at) + ", for one, " + a.fails() + when + ", since something that you pay falls where the price rises. Try a price before you bid it:   --set 'price=" + dollars(at) + "'"
}
