package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// A house is rarely worth over 1.25 times what it is bought for, or under three quarters of that, as
// it stands; common practice, no source.
var muchAbovePrice, muchBelowPrice = decimal.RequireFromString("1.25"), decimal.RequireFromString("0.75")

// doubtAsIs doubts a value before work that is far from what is paid for the house as it stands, where
// what the house will be worth is drawn from it; an as-is value says that it is meant. From twice the
// price on doubtBargain tells.
func (r *reader) doubtAsIs(price, stated *reading) {
	before := r.good("value.before work")
	paid, known := r.worked(r.deal.Root, "as_is_value") // which is the price with what is paid on top, where none is stated
	if before == nil || stated != nil || r.good("value.as-is value") != nil || !known || before.number.GreaterThan(price.number.Mul(two)) {
		return
	}
	text := strings.TrimSpace(before.node.text)
	switch words := quantity.FormatDollars(paid); {
	case before.number.GreaterThan(paid.Mul(muchAbovePrice)):
		r.say("as-is-apart", before.at(), "before work is %s, over 1.25 times what you pay for the house as it stands (%s)", before.dollars(), words)("check what others sold for as they were; if it is the value after the work, write   after-repair value: %s   ; if an appraisal says so, write beside it   as-is value: %[1]s", text)
	case before.number.LessThan(paid.Mul(muchBelowPrice)):
		r.say("as-is-apart", before.at(), "before work is %s, under three quarters of what you pay for the house as it stands (%s)", before.dollars(), words)("check both; if an appraisal says so, write beside it   as-is value: %s", text)
	}
}
