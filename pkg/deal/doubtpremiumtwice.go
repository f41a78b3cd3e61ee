package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// samePremium is how far apart two premiums may be, as a share, to be rather one: common practice, no source.
var samePremium = decimal.New(10, -2)

// doubtPremiumTwice doubts a premium paid at the closing that is about what a year of cover under holding costs.
func (r *reader) doubtPremiumTwice() {
	covers := r.bills(insures)
	for _, m := range r.purchaseCharges() {
		paid, known := r.worked(m, "amount")
		if !known || !paid.IsPositive() || !insures(m) {
			continue
		}
		of := otherThings().FindString(plainKey(m.Label))
		i := slices.IndexFunc(covers, func(b bill) bool {
			return otherThings().FindString(plainKey(b.of.Label)) == of && b.year.IsPositive() && !b.year.Sub(paid).Abs().GreaterThan(b.year.Mul(samePremium))
		})
		if i >= 0 {
			r.say("counted-already", m.Pos, "%s (%s) is about what a year of %s costs under holding (%s), so the same cover is likely paid twice", diag.Quote(m.Label), quantity.FormatDollars(paid), covers[i].of.Label, covers[i].Text)("leave the line out, and say   premium paid ahead: 12 months   beside the one under holding; if it is other cover, name what it covers, e.g.   liability insurance")
		}
	}
}
