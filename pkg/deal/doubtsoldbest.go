package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// dearer says which sales were sold for more than the dearest one, and why they do not count
// as it.
func dearer(c *Comparables, best decimal.Decimal) string {
	var out []string
	for i := range c.Value.Rows {
		if row := &c.Value.Rows[i]; row.NotBest != "" && row.Price.GreaterThan(best) {
			says := row.Name() + " not counted as that, " + row.NotBest
			if row.Apart {
				says += fmt.Sprintf("; %s of the value comes of it all the same", c.part(row))
			}
			out = append(out, says)
		}
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, "; ") + ")"
}

// wellAbove is how many times their low end a low value of the deal's own may be before it is told
// that the sales reach lower; common practice, no source.
var wellAbove = decimal.RequireFromString("1.05")

// doubtLowOver warns of a low value well above the low end of the comparables, in place of which it
// stands; one that options lift above that end is no such.
func (r *reader) doubtLowOver() {
	low := r.good("value.low")
	if _, used := r.deal.Root.Given.Look("low_value"); low == nil || !used {
		return
	}
	theirs, known := r.worked(r.deal.Root, "comps_low")
	stated, _ := r.worked(r.deal.Root, "low_value")
	worth, _ := r.worked(r.deal.Root, "value_by_comps")
	if over, _ := r.worked(r.deal.Root, "value_over_comps"); !known || over.IsPositive() || !stated.GreaterThan(theirs.Mul(wellAbove)) || !stated.LessThan(worth) {
		return
	}
	r.say("low-over-comps", low.at(), "the low value (%s) is well above %s, the low end of the sold houses: one such house in ten sells below that, and bid goes by your %s", low.dollars(), quantity.FormatDollars(theirs), quantity.FormatDollars(stated))("take it away to go by theirs, or keep it if you know why this house sells better than they do when things go badly")
}

// doubtBeyond warns of values outside what the comparables bear out, and of a plan that
// spends more than the best of them sold for.
func (r *reader) doubtBeyond() {
	r.doubtLowOver()
	of := func(line string) decimal.Decimal {
		x, _ := r.worked(r.deal.Root, line)
		return x
	}
	value, low, high, best := of("after_repair_value"), of("comps_low"), of("comps_high"), of("best_comp_price")
	but := dearer(r.deal.Comps, best)
	stated, from := r.good("value.after-repair value"), ""
	if before := r.good("value.before work"); stated == nil && before != nil {
		stated, from = before, ", from the value before work and what the options add,"
	}
	at := r.needed("comps")
	if stated != nil {
		at = stated.at()
	}
	if stated != nil && slices.ContainsFunc(r.deal.outsideSales(), r.breaks) {
		text := stated.dollars()
		if from != "" {
			text = quantity.FormatDollars(value)
		}
		r.say("value-outside-comps", at, "the after-repair value (%s)%s is outside what the comparables say, %s to %s", text, from, quantity.FormatDollars(low), quantity.FormatDollars(high))("one such house in ten sells below that, one above; ledgerboard comps   shows the sales; change the value, or say better what they are")
	}
	if r.breaks(r.deal.aboveBest()) {
		r.say("above-best-sale", at, "the after-repair value (%s) is above %s, the most that any comparable sold for%s", quantity.FormatDollars(value), quantity.FormatDollars(best), but)("a house rarely sells above the best of its neighbourhood, whatever is put into it; look for one that did")
	}
	if cost := of("house_and_work"); cost.GreaterThan(best) {
		r.say("cost-above-best-sale", r.needed("renovation", "rooms", "comps"), "price and work come to %s, above %s, the most that any comparable sold for%s", quantity.FormatDollars(cost), quantity.FormatDollars(best), but)("the neighbourhood may not pay for this much work; plan less, or look for sales that bear it out")
	}
}
