package deal

import (
	"regexp"
	"slices"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// earningWords are in the names of taxes of what is earned; notOfProfit in those of others, of what is withheld at
// the sale, of help with a return, and of what a tenant brings.
var earningWords, notOfProfit = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(capital gains?|income tax(es)?|profits? tax(es)?|tax(es)? (on|of|from) (\w+ )?(profits?|gains?|income)|self employment tax(es)?|(set|put) aside for (the |my |our )?(\w+ )?tax(es)?|tax(es)? (set aside|money|savings|reserve))\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`prepar|return|fil(e|ing)|account|\bcpa\b|advi[cs]|consult|with(held|hold)|property|real estate|transfer|excise|sales|county|city|town|school|escrow|rent|tenant|receipts|seller|credit`)
})

// taxesProfit reports whether a charge is by its name a tax on what the deal earns.
func (r *reader) taxesProfit(m *model.Member) bool {
	name := plainKey(m.Label)
	return earningWords().MatchString(name) && !notOfProfit().MatchString(name) && r.costs(m)
}

// doubtIncomeTax doubts a tax on the profit among the costs, which lessens that profit and what may be bid; it is
// set aside of what is left.
func (r *reader) doubtIncomeTax() {
	root := r.deal.Root
	for _, m := range slices.Concat(r.purchaseCharges(), root.In("general_fee"), root.In("holding_fee"), root.In("selling_fee")) {
		if r.taxesProfit(m) {
			r.say("income-tax-as-cost", m.Pos, "%s is counted as a cost of the deal, and what to set aside for tax on the profit is reckoned besides", diag.Quote(m.Label))("leave the line out, and say the share of the profit to set aside:   tax: {set aside: 30%%}   ; if it is another tax, call it that")
		}
	}
}
