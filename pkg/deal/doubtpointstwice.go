package deal

import (
	"regexp"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

var pointWords, originWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\bpoints?\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\borigination\b`)
})

// doubtPointsTwice doubts a charge of the purchase for the points of loans that state theirs.
func (r *reader) doubtPointsTwice() {
	if !r.allLoans("points_share") {
		return
	}
	loan := r.loans()[0].member
	words := append(r.loanWords(), strings.Fields("point points origination fee fees charge discount cost costs up front upfront")...)
	for _, m := range r.purchaseCharges() {
		if calledOnly(m.Label, words...) && r.costs(m) && r.isPoints(m) {
			paid, _ := r.worked(r.deal.Root, "points")
			r.say("counted-already", m.Pos, "%s is counted beside the points of %s (%s, %s), so they are paid twice", diag.Quote(m.Label), loan.Label, quantity.FormatPercent(loan.Given.Of("points_share").Number, 2), quantity.FormatDollars(paid))("leave the line out; a charge of the lender besides the points goes under the loan:   fees: {underwriting: $1,495}")
		}
	}
}

// isPoints reports whether a charge is points by its name, or an origination that comes to about as much: a
// lender may take a small one of some hundreds besides.
func (r *reader) isPoints(m *model.Member) bool {
	name := plainKey(m.Label)
	if pointWords().MatchString(name) {
		return true
	}
	charge, _ := r.worked(m, "amount")
	paid, known := r.worked(r.deal.Root, "points")
	return originWords().MatchString(name) && known && !charge.LessThan(paid.Mul(half)) && !charge.GreaterThan(paid.Mul(two))
}
