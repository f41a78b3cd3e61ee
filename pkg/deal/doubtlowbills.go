package deal

import (
	"regexp"
	"slices"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What a year of a bill that comes every month is hardly under; common practice, no source.
var (
	lowCover    = decimal.NewFromInt(300)              // insurance of a house
	lowOfCover  = decimal.RequireFromString("0.00075") // and as a share of the price
	lowSupplies = decimal.NewFromInt(480)              // all utilities
)

// allSupplies are in the names of bills for all that a house uses.
var allSupplies = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(utility|utilities)\b`)
})

// kindsOfSupply are the words for what a house is billed for: for power, for what heats it, and for others.
var kindsOfSupply = sync.OnceValue(func() []*regexp.Regexp {
	return []*regexp.Regexp{
		regexp.MustCompile(`(?i)\b(electric(al|ity)?|power|lights?|lighting)\b`),
		regexp.MustCompile(`(?i)\b(gas|heat(ing)?|oil|propane)\b`),
		regexp.MustCompile(`(?i)\b(water|sewer(age)?)\b`),
		regexp.MustCompile(`(?i)\b(trash|garbage|refuse|internet)\b`),
	}
})

// severalSupplies reports whether a name says power or what heats, and another thing that the house uses with it.
func severalSupplies(name string) bool {
	var said []int
	for i, words := range kindsOfSupply() {
		if words.MatchString(name) {
			said = append(said, i)
		}
	}
	return len(said) > 1 && said[0] < 2 && bothNamed().MatchString(name)
}

// lowBill is what the bill of a year is hardly under; false of one that may well be. Where the utilities are
// off, or have several bills, one may be of little.
func (d *Deal) lowBill(m *model.Member) (low decimal.Decimal, is bool) {
	other := func(x *model.Member) bool { return x != m && supplies(x) }
	switch {
	case coversHouse(m):
		return lowCover, true
	case m.Kind != "holding_fee" || !supplies(m) || !allSupplies().MatchString(m.Label) && !severalSupplies(m.Label):
		return low, false
	}
	return lowSupplies, !d.UtilitiesOff && !slices.ContainsFunc(m.Parent.In("holding_fee"), other)
}

// doubtLowBills doubts the bill of a year that is rather one of a month.
func (r *reader) doubtLowBills() {
	for _, m := range r.deal.Root.In("holding_fee") {
		v, given := m.Given.Look("a_year")
		if !given || !v.Number.IsPositive() {
			continue
		}
		if low, bounded := r.deal.lowBill(m); !bounded || !v.Number.LessThan(low) && !r.farBeside(m, "a_year", 1) {
			continue
		}
		code := "utilities-low"
		if insures(m) {
			code = "insurance-low"
		}
		r.say(code, v.Pos, "%s is %s, little for a house", m.Label, v.Text)("write %s/month if it is that of a month; it is used as it stands", quantity.FormatDollars(v.Number))
	}
}
