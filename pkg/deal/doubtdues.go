package deal

import (
	"regexp"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// Dues of an owners' association, and the upkeep of a yard, are much in a year from so many dollars on and so much
// of the price; common practice, no source. A cheap flat may well have dues of 1% of its price a month.
var (
	muchDues, highDues     = decimal.NewFromInt(14_400), decimal.New(12, -2)
	muchUpkeep, highUpkeep = decimal.NewFromInt(7_200), decimal.New(4, -2)
)

// duesWords are in the names of what an association takes; upkeepWords in those of what keeps a yard.
var duesWords, upkeepWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(hoa|dues|association|condo(minium)?|co-?op|strata)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(yard|lawn|mow(ing)?|grass|garden(er|ing)?|landscap(ing|er)|snow|pest)\b`)
})

// doubtDues doubts dues and upkeep of a nought too many, or of a year's bill that is charged by the month.
func (r *reader) doubtDues() {
	price := r.good("purchase.price").number
	other := func(m *model.Member) bool { return !taxes(m) && !insures(m) && !supplies(m) }
	for _, b := range r.bills(other) {
		if most, is := highYear(b.of, price); !is || !b.year.GreaterThan(most) {
			continue
		}
		tell := r.say("charge-high", b.Pos, "%s is %s, %s a year, %s of the price", b.of.Label, b.Text, quantity.FormatDollars(b.year), quantity.FormatPercent(b.year.DivRound(price, 4), 0))
		if b.line == "a_year" {
			tell("check it with the bill, for a nought too many; it is used as it stands")
			continue
		}
		tell("write %s/year if it is the bill of a year, or check it for a nought too many; it is used as it stands", quantity.FormatDollars(b.Number))
	}
}

// highYear is what a year of dues or upkeep is rarely over; false of other charges.
func highYear(m *model.Member, price decimal.Decimal) (most decimal.Decimal, is bool) {
	switch {
	case !price.IsPositive():
		return most, false
	case duesWords().MatchString(m.Label):
		return decimal.Max(muchDues, price.Mul(highDues)), true
	case upkeepWords().MatchString(m.Label):
		return decimal.Max(muchUpkeep, price.Mul(highUpkeep)), true
	}
	return most, false
}
