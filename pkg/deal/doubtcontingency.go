package deal

import (
	"regexp"
	"slices"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// surprises are words in the name of a line that is money for what nobody thought of.
var surprises = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(contingenc(y|ies)|surprises?|unforeseen|unexpected|unknowns?)\b`)
})

// doubtContingencyTwice doubts a line for what nobody thought of: the contingency is that, and comes
// on top of it.
func (r *reader) doubtContingencyTwice() {
	share, known := r.worked(r.deal.Root, "contingency_share")
	if !known || !share.IsPositive() {
		return
	}
	words := "10%, which is assumed"
	if g := r.good("renovation.contingency"); g != nil {
		words = g.node.text
	}
	for _, m := range slices.Concat(r.deal.Root.In("general_fee"), r.deal.Root.In("cost")) {
		if paid, ok := r.worked(m, costLine(m)); ok && paid.IsPositive() && surprises().MatchString(m.Label) {
			r.say("contingency-twice", m.Pos, "%s is a line beside the contingency of %s, so both are counted", diag.Quote(m.Label), words)("leave the line out, and let   contingency   under renovation be the share for all of it; if the line is for something else, call it that")
		}
	}
}

// costLine is the line of the model that says what a line of the renovation comes to.
func costLine(m *model.Member) string {
	if m.Set == "cost" {
		return "cash_cost"
	}
	return "amount"
}
