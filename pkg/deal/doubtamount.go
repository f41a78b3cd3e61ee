package deal

import "ledgerboard/pkg/quantity"

// amounts are the details of work that who quoted, or the day of it, may go with.
var amounts = []string{"quote", "price", "hired", "allowance"}

// doubtAmountMissing doubts who quoted, or when, beside no amount: the work is then paid at the price of
// the book, as if nobody had been asked.
func (r *reader) doubtAmountMissing(w *work) {
	if w.scope.path == "" {
		return
	}
	said := r.of(w.scope, "from")
	if said == nil {
		said = r.of(w.scope, "dated")
	}
	for _, key := range amounts {
		if r.of(w.scope, key) != nil {
			return
		}
	}
	if said == nil || !said.ok {
		return
	}
	tell := r.say("amount-missing", said.key.at, "%s: %s, %s, stands without an amount, so nothing of it is used", w.label, said.field.Key(), said.node.text)
	if w.byOwnHands() {
		tell("add what was asked, e.g.   price: $31.20   for a pack of what is bought, or leave it out")
		return
	}
	counted, _ := r.worked(w.member, "labour_at_trade")
	tell("add what was asked, e.g.   quote: $1,450   ; until then it is counted as hired, %s for the labour; a word about who is to come stands under   note", quantity.FormatMoney(counted))
}
