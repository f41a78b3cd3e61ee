package deal

import (
	"regexp"
	"sync"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// stagingWords are in the names of furniture lent for the sale; notFurniture in those of what is called so on a site.
var stagingWords, notFurniture = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\bstag(ing|ers?)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(areas?|scaffold\w*|yard|lot|materials?|storage|insur\w*|planks?|exterior|outside|roof)\b`)
})

// doubtStaging doubts furniture that is paid by the month from the purchase on, while it stands in the house from
// the listing.
func (r *reader) doubtStaging(m *model.Member) {
	if _, said := m.Given.Look("during"); said || !stagingWords().MatchString(m.Label) || notFurniture().MatchString(m.Label) || !r.costs(m) {
		return
	}
	before, known := r.worked(r.deal.Root, "works_end")
	if !known || !before.IsPositive() {
		return
	}
	if v, is := byTimeOf(m); is {
		paid, _ := r.worked(m, "amount")
		r.say("staging-early", v.Pos, "%s is %s for the whole hold, %s, also before the listing", m.Label, v.Text, quantity.FormatDollars(paid))("write   %[1]s: %[2]s during marketing   ; if it is paid throughout, say   %[1]s: {amount: %[2]s, during: hold}", m.Label, v.Text)
	}
}
