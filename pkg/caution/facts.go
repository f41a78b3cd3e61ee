package caution

import "github.com/shopspring/decimal"

// leadBefore is the year below which federal lead rules reach a house
// (40 CFR 745.103); asbestosTo the last year of the presumption (29 CFR
// 1926.1101(k)(1)); noticeUnits the largest number of units the federal
// asbestos notice leaves out (40 CFR 61.141, 60 FR 38725).
const (
	leadBefore  = 1978
	asbestosTo  = 1980
	noticeUnits = 4
	// strictVacantDays is when the stricter insurers begin to count a house as vacant.
	strictVacantDays = 30
)

func yearKnown(h House) bool        { return h.YearBuilt > 0 }
func leadYear(h House) bool         { return h.YearBuilt < leadBefore }
func asbestosPresumed(h House) bool { return h.YearBuilt <= asbestosTo }
func ownLabor(h House) bool         { return h.OwnHours.IsPositive() }
func tradesUnknown(h House) bool    { return len(h.Trades) == 0 }
func permitJob(h House) bool        { return len(permits(h)) > 0 }

// reachesAsbestos says whether the plan may disturb the materials asbestos was used in.
func reachesAsbestos(h House) bool { return tradesUnknown(h) || plans(h, asbestosKinds...) }

// alarmJob follows the exemptions of R314.3.1: exterior-only work, and plumbing
// or mechanical work only.
func alarmJob(h House) bool {
	return permitJob(h) && !plansOnly(h, roof, windows) && !plansOnly(h, plumbing, hvac)
}

// vacantLong says whether the hold is, or may be, longer than the strictest
// insurers allow a house to stand vacant.
func vacantLong(h House) bool {
	switch {
	case h.HoldMonths.IsPositive():
		// days = months x 365/12, compared without dividing
		days12 := h.HoldMonths.Mul(decimal.NewFromInt(365))
		return days12.GreaterThan(decimal.NewFromInt(strictVacantDays * 12))
	case !h.Bought.IsZero() && !h.SaleClosing.IsZero():
		return daysBetween(h.Bought, h.SaleClosing) > strictVacantDays
	}
	return true
}

func noContingency(h House) bool { return !h.NoWork && !h.ContingencyShare.IsPositive() }

func lowContingency(h House) bool {
	share, _ := SuggestedContingency(h.YearBuilt, h.UtilitiesOff)
	return !h.NoWork && h.ContingencyShare.IsPositive() && h.ContingencyShare.LessThan(share)
}

// gainPossible is false only when both prices are known and leave no gain.
func gainPossible(h House) bool {
	return !pricesKnown(h) || h.SalePrice.GreaterThan(h.PurchasePrice)
}

func fhaDatesUnknown(h House) bool {
	_, known := resaleDays(h)
	return !known
}

func contractBeforeClosing(h House) bool {
	days, known := resaleDays(h)
	return known && days < 0
}

// fhaTooSoon is a contract inside the first window by more than a day's doubt.
func fhaTooSoon(h House) bool {
	days, known := resaleDays(h)
	w, near := FHAWindow(days)
	return known && days >= 0 && w == Ineligible && !near
}

// fhaNearFirst is a contract within a day of the end of the first window.
func fhaNearFirst(h House) bool {
	days, known := resaleDays(h)
	return known && (fhaWindow(days-1) == Ineligible) != (fhaWindow(days+1) == Ineligible)
}

func fhaSecond(v verdict) func(House) bool {
	return func(h House) bool { return !fhaDatesUnknown(h) && judge(h, FHASecondAppraisal) == v }
}

func hpml(v verdict) func(House) bool {
	return func(h House) bool { return judge(h, HPMLSecondAppraisal) == v }
}
