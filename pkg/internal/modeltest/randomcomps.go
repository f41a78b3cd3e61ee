package modeltest

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// compared are the figures of a house that sold ones are compared by: the line of the
// house, that of a sold one, that of a unit's worth, and bounds of the figures.
var compared = []struct {
	ours, theirs, rate string
	low, high          float64
}{
	{"subject_area", "comp_area", "size_rate", 600, 4000},
	{"subject_lot", "comp_lot", "lot_rate", 1000, 40_000},
	{"subject_bedrooms", "comp_bedrooms", "bedroom_rate", 1, 6},
	{"subject_baths", "comp_baths", "bath_rate", 1, 4},
	{"subject_built", "comp_built", "newer_rate", 1900, 2020},
	{"subject_condition", "comp_condition", "condition_rate", 1, 5},
	{"subject_garage", "comp_garage", "garage_rate", 0, 3},
}

// estimated are the adjustments that a regression may give as amounts.
var estimated = []string{
	"time_adjustment", "location_adjustment", "size_adjustment", "lot_adjustment", "bedroom_adjustment",
	"bath_adjustment", "age_adjustment", "condition_adjustment", "garage_adjustment", "style_adjustment",
}

// comparables draws sold houses, in some deals so that the value is theirs.
func (d *drawer) comparables() {
	if !d.chance(4) {
		return
	}
	value := d.Deal.Given.Of("after_repair_value").Number
	if value.IsZero() {
		value = d.money(120_000, 600_000)
	}
	if d.chance(8) {
		d.Deal.Withdraw("after_repair_value")
		d.giveMoney(9, d.Deal, "options_in_comps", 0, 20_000)
	}
	part := decimal.Max(one, value.Mul(decimal.New(2, -2)).Round(0)) // so that all together leave a price above 0
	some := func() decimal.Decimal { return d.between(part.Neg(), part, decimal.New(1, -2)) }
	whole := func(low, high float64) func() decimal.Decimal {
		return func() decimal.Decimal { return d.between(dec(low), dec(high), one) }
	}
	d.give(10, d.Deal, "market_rate", func() decimal.Decimal { return d.share(-0.01, 0.01) })
	d.give(14, d.Deal, "comps_low_share", func() decimal.Decimal { return d.share(0.5, 1) })
	d.give(14, d.Deal, "comps_high_share", func() decimal.Decimal { return d.share(1, 1.8) })
	for _, f := range compared {
		d.give(12, d.Deal, f.ours, whole(f.low, f.high))
		d.give(12, d.Deal, f.rate, func() decimal.Decimal { return some().Abs().DivRound(dec(f.high-f.low), 2) })
	}
	var extras []*model.Member
	for i := range d.upTo(2) {
		x := d.Deal.Add("extra", "", fmt.Sprintf("extra %d", i+1))
		x.GiveNumber("extra_worth", some())
		d.giveFlag(10, x, "subject_has_it")
		extras = append(extras, x)
	}
	n := 1 + d.upTo(6)
	left := one
	for i := range n {
		c := d.Deal.Add("comp", "", fmt.Sprintf("sale %d", i+1))
		c.GiveNumber("sold_price", value.Mul(d.share(0.6, 1.5)).Round(0).Add(dec(100)))
		d.give(4, c, "concessions", func() decimal.Decimal { return some().Abs().Round(0) })
		d.give(13, c, "months_before", func() decimal.Decimal { return d.months(15) })
		weight := left
		if i < n-1 {
			weight = left.Mul(d.share(0.1, 0.9)).Round(6)
		}
		left = left.Sub(weight)
		c.GiveNumber("weight", weight)
		d.giveFlag(6, c, "may_be_best")
		for _, f := range compared {
			d.give(12, c, f.theirs, whole(f.low, f.high))
		}
		for _, line := range estimated {
			d.give(3, c, line, func() decimal.Decimal { return some().Round(0) })
		}
		for _, x := range extras {
			m := c.Add("mark", "", x.Label)
			m.Link(x)
			d.giveFlag(8, m, "has_it")
		}
	}
}
