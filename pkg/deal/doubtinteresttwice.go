package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// loanWords are what a loan of the file may be called by, its own name among them.
func (r *reader) loanWords() []string {
	words := strings.Fields("loan loan's loans hard money lender lender's lenders bank bank's mortgage debt note purchase renovation")
	for _, l := range r.loans() {
		words = append(words, labelWords().FindAllString(plainKey(l.member.Label), -1)...)
	}
	return words
}

// allLoans reports whether all loans, one at least, state something above nothing: a charge may be of one that does not.
func (r *reader) allLoans(line string) bool {
	loans := r.loans()
	return len(loans) > 0 && !slices.ContainsFunc(loans, func(l scope) bool { return !l.member.Given.Of(line).Number.IsPositive() })
}

// paysLoans are in the names of what is paid on a loan month by month.
var paysLoans = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(interest|debt service|mortgage|financ(e|ing) (charges?|costs?)|loan('s)? (re)?payments?|(re)?payments? (on|of|for|to) the (loan|lender|bank))\b`)
})

// doubtInterestTwice doubts a charge that is by its name the interest of the file's loans, which they bear by their
// rates already.
func (r *reader) doubtInterestTwice() {
	root := r.deal.Root
	if !r.allLoans("rate") {
		return
	}
	loan := r.loans()[0].member
	words := append(r.loanWords(), strings.Fields("interest service finance financing payment payments repayment repayments principal only cost costs charge charges carrying")...)
	for _, m := range slices.Concat(root.In("holding_fee"), root.In("general_fee"), root.In("selling_fee")) {
		if calledOnly(m.Label, words...) && paysLoans().MatchString(plainKey(m.Label)) && r.costs(m) {
			r.say("counted-already", m.Pos, "%s is counted beside the interest that %s bears by its rate (%s), so it is paid twice", diag.Quote(m.Label), loan.Label, quantity.FormatPercent(loan.Given.Of("rate").Number, 2))("leave the line out; if it is for another loan, add that one to   loans   , or say in the name whose it is")
		}
	}
}
