package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// checkTax makes sure that tax is stated in one way, and gives the published
// figures of the year of the sale where it is reckoned by rates.
func (r *reader) checkTax() {
	set, rate := r.got["tax.set aside"], r.got["tax.income rate"]
	if set != nil && rate != nil {
		r.say("tax-two-ways", rate.key.at, "tax is stated as a share to set aside and by rates")("keep   set aside: 30%%   or   income rate: 22%%")
		return
	}
	for _, key := range []string{"filing", "other wages"} {
		if g := r.got["tax."+key]; g != nil && rate == nil {
			r.say("tax-incomplete", g.key.at, "%s is only for tax by rates", key)("add   income rate: 22%%   or leave it out")
		}
	}
	if rate == nil || !rate.ok {
		return
	}
	if r.good("purchase.date") == nil {
		if r.badly("purchase.date") {
			r.say("tax-needs-date", rate.key.at, "tax by rates needs the year of the sale, and the day of the purchase is not known")("add   date: 2026-03-02   under purchase, or write   tax: {set aside: 30%%}")
		}
		return
	}
	r.taxFigures(rate)
}

func (r *reader) taxFigures(rate *reading) {
	year := r.saleDate().Year
	f, ok := caution.SelfEmployment(year)
	if !ok {
		r.say("tax-year-unknown", rate.key.at, "the figures of self-employment tax for %d are not known", year)("write   tax: {set aside: 30%%}")
		return
	}
	filing, at := "single", rate.at()
	if g := r.good("tax.filing"); g != nil {
		filing, at = g.choice, g.at()
	} else if r.got["tax.filing"] == nil {
		r.say("tax-filing-assumed", rate.key.at, "filing is not stated; single is assumed")("add   filing: single   (or joint, separate)")
	}
	if f.AfterLast {
		r.say("tax-year-later", rate.key.at, "the sale is in %d; the last figures known are those of %d, and are used", year, f.Year)("ask a tax adviser for the figures of the year")
	}
	from := map[string]decimal.Decimal{"single": f.AdditionalFrom.Single, "joint": f.AdditionalFrom.Joint, "separate": f.AdditionalFrom.MarriedSeparate}[filing]
	root := r.deal.Root
	root.Give("tax_method", model.Value{Choice: "rates", Text: "rates", Pos: rate.key.at})
	for _, x := range []struct {
		line  string
		value decimal.Decimal
		at    string
	}{
		{"wage_base", f.WageBase, quantity.FormatDollars(f.WageBase)},
		{"earnings_factor", f.Factor, quantity.FormatPercent(f.Factor, 4)},
		{"least_earnings", f.LeastEarnings, quantity.FormatDollars(f.LeastEarnings)},
		{"social_security_rate", f.SocialSecurityRate, quantity.FormatPercent(f.SocialSecurityRate, 4)},
		{"medicare_rate", f.MedicareRate, quantity.FormatPercent(f.MedicareRate, 4)},
		{"additional_rate", f.AdditionalRate, quantity.FormatPercent(f.AdditionalRate, 4)},
	} {
		root.Give(x.line, model.Value{Number: x.value, Text: fmt.Sprintf("%s, published for %d", x.at, f.Year), Pos: rate.at()})
	}
	root.Give("additional_threshold", model.Value{Number: from, Text: fmt.Sprintf("%s, filing %s", quantity.FormatDollars(from), filing), Pos: at})
}
