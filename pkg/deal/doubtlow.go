package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// doubtLow looks for a low value above what the house is worth by the options, or well under what
// it is worth before work.
func (r *reader) doubtLow() {
	low := r.good("value.low")
	if low == nil || r.good("value.after-repair value") != nil {
		return // refused where both are stated
	}
	worth, known := r.worked(r.deal.Root, "after_repair_value")
	if x, ok := r.worked(r.deal.Root, "low_value"); ok && known && x.GreaterThan(worth) {
		r.say("low-above-options", low.at(), "the low value (%s) is above what the house is worth before work and by the options taken, %s", quantity.FormatMoney(x), quantity.FormatMoney(worth))("state the low value for the same options, or none")
	}
	r.doubtLowBefore(low)
}

// lowAfterWork is the share of what a house is worth by its options under which a low value that is
// under the value before work too is rather the low one of that; common practice, no source.
var lowAfterWork = decimal.New(90, -2)

// doubtLowBefore doubts a low value that may be of the house as it stands. Where little work is done
// it may well be under the value before work; where it is next to nothing doubtSmallValues tells.
func (r *reader) doubtLowBefore(low *reading) {
	before := r.good("value.before work")
	if before == nil || !low.number.LessThan(before.number) || r.farBeside(r.deal.Root, "low_value", 0) {
		return
	}
	worth := before.number.Add(r.planned.adds)
	if low.number.LessThan(worth.Mul(lowAfterWork)) {
		r.say("low-below-before", low.at(), "the low value (%s) is under what the house is worth before work (%s); with what the planned options add it is worth %s", low.dollars(), before.dollars(), quantity.FormatDollars(worth))("low is how low the value after the work may come out: check that it is not the low end before work; it is used as it stands")
	}
}
