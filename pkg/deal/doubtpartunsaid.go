package deal

import (
	"slices"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtPartUnsaid doubts work that is rarely done to all there is and of which the file does not say
// how much: rotten boards on all of the siding. A quote says what it comes to, but not how much of what
// comes along with it.
func (r *reader) doubtPartUnsaid() {
	for _, p := range r.chosenPlans() {
		for _, w := range p.works {
			if w.by != "" || w.scope.path == "" || !w.item.InPart || r.good(w.scope.path+"count") != nil || r.good(w.scope.path+"part") != nil {
				continue
			}
			m := pricebook.MeasureNamed(w.item.Measure)
			all, known := r.worked(p.room, m.Line)
			if !known || !all.IsPositive() || m.Unit == "each" && !all.GreaterThan(one) || w.quoted() && !r.bringsAsMuch(p, w) {
				continue
			}
			much := quantity.FormatCount(all, 0)
			if m.Unit != "each" {
				much += " " + string(m.Unit)
			}
			r.say("part-unsaid", w.at, "%s counts for all there is, %s of %s: it does not say how much is done", w.label, much, m.Name)("it is rarely done to all: say how much, e.g.   count: %s   or   part: 10%%   ; if it is all of it, say   part: 100%%", someOf(m.Unit))
		}
	}
}

// bringsAsMuch reports whether work brings some along that is paid for as much of the same measure.
func (r *reader) bringsAsMuch(p *plan, w *work) bool {
	return slices.ContainsFunc(p.works, func(x *work) bool {
		price, _ := r.worked(x.member, "trade_price")
		return x.item.Measure == w.item.Measure && price.IsPositive() && x.broughtBy(w)
	})
}

// someOf is an example of how much is mended.
func someOf(unit quantity.Unit) string {
	switch unit {
	case "each":
		return "1"
	case "ft":
		return "12 ft"
	}
	return "40 " + string(unit)
}
