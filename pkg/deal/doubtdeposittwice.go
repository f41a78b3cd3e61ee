package deal

import (
	"regexp"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// earnestWords and downWords are in the names of money that is a part of the price.
var earnestWords, downWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(earnest|good faith)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\bdown ?payment\b`)
})

// doubtDepositTwice doubts a charge of the purchase that is a part of the price: the deposit, which has a key, or
// what the loans leave to pay.
func (r *reader) doubtDepositTwice() {
	deposit := r.good("purchase.earnest deposit.amount")
	beside := strings.Fields("earnest good faith money deposit down payment downpayment cash offer paid seller escrow agent house home price purchase")
	for _, m := range r.purchaseCharges() {
		name := plainKey(m.Label)
		switch {
		case !calledOnly(name, beside...) || !r.costs(m):
		case earnestWords().MatchString(name) && deposit != nil && deposit.number.IsPositive():
			r.say("counted-already", m.Pos, "%s is counted beside the earnest deposit (%s), which is a part of the price, so it is paid twice", diag.Quote(m.Label), deposit.dollars())("leave the line out; if it is something else, call it that")
		case downWords().MatchString(name):
			r.say("counted-already", m.Pos, "%s is counted beside the price (%s), which it is a part of, so it is paid twice", diag.Quote(m.Label), quantity.FormatDollars(r.good("purchase.price").number))("leave the line out: what the loans do not lend is in the cash needed; if it is something else, call it that")
		}
	}
}
