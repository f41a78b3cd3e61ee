package answer

import (
	"slices"

	"ledgerboard/pkg/solve"
)

// A Found is a result that no formula gives: it is found by search.
type Found struct {
	Name, Unit, Meaning string
	Value               func(a *Answer) any // a decimal, a name, or nil for none
}

// Searched lists the results found by search, in the order of their telling.
var Searched = []Found{
	{"max_offer", "$", "the highest whole-dollar price at which every target holds", func(a *Answer) any { return price(a.Offer) }},
	{"max_offer_low", "$", "the maximum offer if the house is worth only the low value", func(a *Answer) any { return price(a.OfferLow) }},
	{"binding_target", "line", "the target line that is missed a dollar above the maximum offer", func(a *Answer) any { return named(a.Offer.Binding) }},
	{"break_even_sale_price", "$", "the lowest whole-dollar sale price from which on no money is lost", func(a *Answer) any { return value(a.BreakEven.SalePrice) }},
	{"break_even_overrun", "share", "the largest overrun over the bids, to 0.1%, up to which no money is lost", func(a *Answer) any { return value(a.BreakEven.Overrun) }},
	{"break_even_months", "month", "the most extra months on the market, to 0.1, up to which no money is lost", func(a *Answer) any { return value(a.BreakEven.Months) }},
	{"break_even_sale_price_at_target", "$", "the same as break_even_sale_price for the profit target", func(a *Answer) any { return value(a.atTarget().SalePrice) }},
	{"break_even_overrun_at_target", "share", "the same as break_even_overrun for the profit target", func(a *Answer) any { return value(a.atTarget().Overrun) }},
	{"break_even_months_at_target", "month", "the same as break_even_months for the profit target", func(a *Answer) any { return value(a.atTarget().Months) }},
	{"irr", "share", "the owner's internal rate of return over the months, effective a year", func(a *Answer) any { return rate(a.IRR) }},
	{"loan_apr", "share", "the loans' annual percentage rate with points and fees, nominal (12 CFR 1026 App. J)", func(a *Answer) any { return rate(a.LoanAPR) }},
	{"one_more_month_unsold", "$", "what one more month on the market takes off the owner's profit", func(a *Answer) any { return a.Late.Month }},
	{"one_more_day_unsold", "$", "the same for a day, a month being 365/12 days", func(a *Answer) any { return a.Late.Day }},
	{"one_more_month_stalled", "$", "what one more idle month in the work takes off the owner's profit", func(a *Answer) any { return a.Stalled.Month }},
	{"one_more_day_stalled", "$", "the same for a day", func(a *Answer) any { return a.Stalled.Day }},
}

// atTarget is how far things may move by the profit target; one of $0 is to break even.
func (a *Answer) atTarget() BreakEvens {
	switch {
	case a.BreakEvenAtTarget != nil:
		return *a.BreakEvenAtTarget
	case slices.Contains(a.Deal.Targets, "profit_to_spare"):
		return a.BreakEven
	}
	return BreakEvens{}
}

func price(o solve.Offer) any {
	if !o.Found || o.Endless {
		return nil
	}
	return o.Price
}

func value(b solve.BreakEven) any {
	if !b.Found {
		return nil
	}
	return b.Value
}

// ratePlaces is how exactly a rate is given.
const ratePlaces = 12

func rate(r solve.Rate) any {
	if !r.Found {
		return nil
	}
	return r.Value.Round(ratePlaces)
}

func named(s string) any {
	if s == "" {
		return nil
	}
	return s
}

// Rate returns the annual percentage rate of the loan with that number, or nil.
func (a *Answer) Rate(loan int) any { return rate(a.APRs[loan]) }

// DontGoAbove is the price the answer leads with: the maximum offer at the low value, or the
// one at the expected value where that is lower; nil if there is none.
func (a *Answer) DontGoAbove() any {
	if a.LikelyBinds() {
		return price(a.Offer)
	}
	return price(a.OfferLow)
}

// LikelyBinds reports whether the offer at the expected value is under that at the low one, as
// where a cost grows with the value and cash is short.
func (a *Answer) LikelyBinds() bool {
	switch {
	case !a.OfferLow.Found || a.Offer.Endless:
		return false
	case !a.Offer.Found || a.OfferLow.Endless:
		return true
	}
	return a.Offer.Price.LessThan(a.OfferLow.Price)
}
