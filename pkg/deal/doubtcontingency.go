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

// cushions are names of a line that is such money by nothing but everyday words for it: a cushion for
// a window seat, or a reserve that a lender holds, is something else.
var cushions = sync.OnceValue(func() *regexp.Regexp {
	const beside = `a|the|my|our|own|in|for|of|and|safety|budget|cash|cost|costs|general|extra|spare|rainy|day|repair|repairs|renovation|remodel|rehab|project|job|work|works|money|fund|funds|allowance|amount|sum`
	return regexp.MustCompile(`(?i)^(?:(?:` + beside + `)[\s:,/-]+)*(?:buffers?|cushions?|reserves?|overruns?|over-runs?|rainy[ -]day)(?:[\s:,/-]+(?:` + beside + `))*$`)
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
		if paid, ok := r.worked(m, costLine(m)); ok && paid.IsPositive() && (surprises().MatchString(m.Label) || cushions().MatchString(m.Label)) {
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
