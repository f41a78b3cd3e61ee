package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// doubtOutOfPlace doubts charges that have no place among charges, before what they come to is doubted.
func (r *reader) doubtOutOfPlace() {
	r.doubtInterestTwice()
	r.doubtDepositTwice()
	r.doubtPointsTwice()
	r.doubtPremiumTwice()
	r.doubtIncomeTax()
}

// outOfPlace reports whether a charge is told of so, after which its sum tells no more.
func (r *reader) outOfPlace(m *model.Member) bool {
	return slices.ContainsFunc(r.diags, func(d diag.Diag) bool {
		return d.Pos == m.Pos && slices.Contains([]string{"counted-already", "income-tax-as-cost"}, d.Code)
	})
}

// labelWords takes a label apart; a number is a word.
var labelWords = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[\p{L}\p{N}']+`) })

// smallWords stand in any label and tell nothing.
var smallWords = strings.Fields("a an the of on for to at by in and my our your with monthly yearly total all")

// calledOnly reports whether a label is made of some words alone: any other may well make it something else, as
// reserve does interest.
func calledOnly(label string, words ...string) bool {
	in := labelWords().FindAllString(plainKey(label), -1)
	return len(in) > 0 && !slices.ContainsFunc(in, func(word string) bool {
		return !slices.Contains(words, word) && !slices.Contains(smallWords, word)
	})
}

// costs reports whether a charge takes money.
func (r *reader) costs(m *model.Member) bool {
	paid, known := r.worked(m, "amount")
	return known && paid.IsPositive()
}
