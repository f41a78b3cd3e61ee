package deal

import (
	"regexp"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// stagingWords are in the names of furniture lent for the sale; notFurniture in those of what is called so on a site.
var stagingWords, notFurniture = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\bstag(ing|ers?)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(areas?|scaffold\w*|yard|lot|materials?|storage|insur\w*|planks?|exterior|outside|roof)\b`)
})

// dearStaging is over what furniture lent for a sale hardly costs, in dollars and as a share of the value; common
// practice, no source.
var dearStaging, dearStagingPart = decimal.NewFromInt(9000), decimal.New(3, -2)

// doubtStaging doubts furniture that is paid by the month from the purchase on, while it stands in the house from
// the listing, and furniture that costs more than such does.
func (r *reader) doubtStaging(m *model.Member) {
	if !stagingWords().MatchString(m.Label) || notFurniture().MatchString(m.Label) || !r.costs(m) {
		return
	}
	if _, said := m.Given.Look("during"); said || !r.stagesEarly(m) {
		r.doubtDearStaging(m)
	}
}

// doubtDearStaging doubts furniture for the sale that costs far more than is usual, a nought too many.
func (r *reader) doubtDearStaging(m *model.Member) {
	paid, _ := r.worked(m, "amount")
	value, known := r.worked(r.deal.Root, "after_repair_value")
	if known && paid.GreaterThan(dearStaging) && paid.GreaterThan(value.Mul(dearStagingPart)) {
		r.say("staging-dear", m.Pos, "%s comes to %s, over %s of the after-repair value, much for furniture lent for the sale", m.Label, quantity.FormatDollars(paid), quantity.FormatPercent(dearStagingPart, 0))("check it, for a nought too many or a sum for all of the time that is written by the month; it is used as it stands")
	}
}

// stagesEarly doubts furniture paid by the month for the whole hold, and reports whether it told of it.
func (r *reader) stagesEarly(m *model.Member) bool {
	before, known := r.worked(r.deal.Root, "works_end")
	if !known || !before.IsPositive() {
		return false
	}
	if v, is := byTimeOf(m); is {
		paid, _ := r.worked(m, "amount")
		r.say("staging-early", v.Pos, "%s is %s for the whole hold, %s, also before the listing", m.Label, v.Text, quantity.FormatDollars(paid))("write   %[1]s: %[2]s during marketing   ; if it is paid throughout, say   %[1]s: {amount: %[2]s, during: hold}", m.Label, v.Text)
		return true
	}
	return false
}
