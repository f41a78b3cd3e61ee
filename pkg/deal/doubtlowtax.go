package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// otherTaxes are the holding costs with the name of a tax beside one.
func otherTaxes(m *model.Member) []*model.Member {
	return slices.DeleteFunc(m.Parent.In("holding_fee"), func(x *model.Member) bool { return x == m || !taxes(x) })
}

// mainTax reports whether a holding cost is the largest tax of the house, beside which those of a fire or library
// district are small. Where a tax is stated otherwise than by time, none is told to be little.
func mainTax(m *model.Member) bool {
	return taxes(m) && !slices.ContainsFunc(otherTaxes(m), func(x *model.Member) bool {
		a := yearOf(x)
		return a.IsZero() || a.GreaterThan(yearOf(m))
	})
}

// yearOf is what a charge that is stated by time comes to in a year.
func yearOf(m *model.Member) (sum decimal.Decimal) {
	for line, times := range timesAYear {
		sum = sum.Add(m.Given.Of(line).Number.Mul(decimal.NewFromInt(times)))
	}
	return sum
}

// doubtLowTax doubts a year's property tax that is rather a month's.
func (r *reader) doubtLowTax() {
	for _, m := range r.deal.Root.In("holding_fee") {
		if v, given := m.Given.Look("a_year"); given && mainTax(m) && r.farBeside(m, "a_year", 1) {
			r.say("property-tax-low", v.Pos, "%s is %s, under %s of the price", m.Label, v.Text, quantity.FormatPercent(lowTax, 2))("write %s/month if it is that of a month, and look whether it is a bill with the seller's exemptions; it is used as it stands", quantity.FormatDollars(v.Number))
		}
	}
}
