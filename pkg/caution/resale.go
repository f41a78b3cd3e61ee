package caution

import (
	"time"

	"github.com/shopspring/decimal"
)

// The edges shared by the FHA resale rule (HUD Handbook 4000.1, time
// restriction on transfers of title) and the higher-priced mortgage rule
// (12 CFR 1026.35(c)(4)(i)(A)-(B)): days from acquisition to the contract.
const (
	firstEdge  = 90
	secondEdge = 180
)

// Window is the part of the FHA resale rule a contract day falls in.
type Window int

// The three windows, by the days from the seller's acquisition to the day all
// parties have signed the buyer's contract.
const (
	Ineligible   Window = iota // 90 days or fewer
	PriceTest                  // 91 to 180 days
	Unrestricted               // 181 days or more
)

// String says the window in a few words.
func (w Window) String() string {
	return [...]string{"ineligible", "eligible; price test applies", "no time restriction"}[w]
}

// FHAWindow returns the window of a contract signed days after acquisition, and
// whether one day more or less would change it. Published counts differ by a
// day, so a near count is to be shown as such and not decided.
// Source: HUD Handbook 4000.1, mirroring 24 CFR 203.37a(b).
func FHAWindow(days int) (w Window, nearEdge bool) {
	w = fhaWindow(days)
	return w, w != fhaWindow(days-1) || w != fhaWindow(days+1)
}

func fhaWindow(days int) Window {
	switch {
	case days <= firstEdge:
		return Ineligible
	case days <= secondEdge:
		return PriceTest
	}
	return Unrestricted
}

// FirstFHAContract returns the first day, at UTC midnight, on which a buyer
// with an FHA-insured loan may sign: acquisition plus 91 calendar days. It is a
// day at the edge; see FHAWindow.
func FirstFHAContract(bought time.Time) time.Time {
	return civil(bought).AddDate(0, 0, firstEdge+1)
}

// FHASecondAppraisal says whether the FHA rule asks for a second appraisal: a
// contract in days 91 to 180 at 2.00 times the price paid or more. Repairs are
// not added to the price paid. Source: HUD Handbook 4000.1, resales 91-180 days.
func FHASecondAppraisal(days int, paid, price decimal.Decimal) bool {
	return fhaWindow(days) == PriceTest && price.GreaterThanOrEqual(paid.Mul(decimal.NewFromInt(2)))
}

// HPMLSecondAppraisal says whether the rule for higher-priced mortgage loans
// may ask for two appraisals: strictly more than 10% over the price paid at 90
// days or fewer, strictly more than 20% in days 91 to 180. Whether the buyer's
// loan is such a loan is not known here. Source: 12 CFR 1026.35(c)(4)(i)(A)-(B).
func HPMLSecondAppraisal(days int, paid, price decimal.Decimal) bool {
	switch fhaWindow(days) {
	case Ineligible:
		return price.GreaterThan(paid.Mul(decimal.New(110, -2)))
	case PriceTest:
		return price.GreaterThan(paid.Mul(decimal.New(120, -2)))
	}
	return false
}

// verdict is the outcome of a rule when a fact may be missing or near an edge.
type verdict int

const (
	no      verdict = iota
	yes             // also with a day more or less
	edge            // a day more or less changes it
	unclear         // a missing fact decides
)

// judge applies a second-appraisal rule to what is known of the house.
func judge(h House, rule func(int, decimal.Decimal, decimal.Decimal) bool) verdict {
	days, known := resaleDays(h)
	if known && days < 0 {
		return no // nothing was acquired yet; the owner-of-record caution speaks
	}
	if !known {
		// One day from each window stands for all of it.
		if possible(h, rule, firstEdge) || possible(h, rule, secondEdge) {
			return unclear
		}
		return no
	}
	now := possible(h, rule, days)
	if now != possible(h, rule, days-1) || now != possible(h, rule, days+1) {
		return edge
	}
	if now && !pricesKnown(h) {
		return unclear
	}
	if now {
		return yes
	}
	return no
}

// possible is the rule on one day, with unknown prices taken as far apart.
func possible(h House, rule func(int, decimal.Decimal, decimal.Decimal) bool, days int) bool {
	if !pricesKnown(h) {
		return rule(days, decimal.NewFromInt(1), decimal.NewFromInt(1000))
	}
	return rule(days, h.PurchasePrice, h.SalePrice)
}

func pricesKnown(h House) bool {
	return h.PurchasePrice.IsPositive() && h.SalePrice.IsPositive()
}
