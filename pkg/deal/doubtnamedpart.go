package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// doubtNamedPart doubts work that the file names for a part and that other work would bring along for as
// much or for all the rest, done by the same: it is taken for that, though the rest may be meant, as the old siding
// that is painted beside the new.
func (r *reader) doubtNamedPart() {
	for _, p := range r.chosenPlans() {
		for _, w := range p.works {
			part, known := r.partOf(w)
			if w.by != "" || !known || !part.LessThan(one) || r.saysMore(w) {
				continue
			}
			names, share := r.bringersOf(p, w)
			if sum := part.Add(share); share.IsPositive() && (part.LessThanOrEqual(share) && sum.LessThan(one) || sum.Equal(one)) {
				r.say("named-part", w.at, "%s is named for %s of %s, and is taken for what %s brings along, %s: no more of it is priced", diag.Quote(w.label), quantity.FormatPercent(part, 1), p.room.Label, strings.Join(names, " and "), quantity.FormatPercent(share, 1))("if the rest is meant, count both, as   part: %s   ; if not, leave it out, for it comes along", quantity.FormatPercent(sum, 1))
			}
		}
	}
}

// saysMore reports whether the file says more of work than who does it and for which part.
func (r *reader) saysMore(w *work) bool {
	for path := range r.got {
		if key, of := strings.CutPrefix(path, w.scope.path); of && key != "by" && key != "part" {
			return true
		}
	}
	return false
}

// bringersOf are the names of the work of a plan that would bring other work along as far as it is done itself,
// by the same hands, and for how much.
func (r *reader) bringersOf(p *plan, of *work) (names []string, share decimal.Decimal) {
	for _, x := range p.works {
		part, known := r.partOf(x)
		if x.by == "" && known && asMuch(of.item, x.item) && x.doer() == of.doer() && r.bringsHere(p, x, of.item) {
			names, share = append(names, x.item.Name), share.Add(part)
		}
	}
	return names, share
}
