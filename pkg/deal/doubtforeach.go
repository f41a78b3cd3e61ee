package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// doubtNamedOnce doubts an item that the file names without a count beside several pieces of work
// that take one each: named, it stands for all of them, and one is priced.
func (r *reader) doubtNamedOnce() {
	for _, p := range r.chosenPlans() {
		for _, w := range p.works {
			if w.by != "" || !w.item.ForEach || w.allowed() || r.good(w.scope.path+"count") != nil {
				continue
			}
			if names, takes := r.takers(p, w); takes.GreaterThan(one) {
				count := quantity.FormatCount(takes, 2)
				counted := "one is priced"
				if w.quoted() {
					counted = "the quote is taken for one"
				}
				r.say("named-once", w.at, "%s stands in %s without a count, so %s, and work there takes %s: %s", diag.Quote(w.label), p.room.Label, counted, count, strings.Join(names, ", "))("say how many there are in all, as   count: %s   ; if one does for all, as   count: 1", count)
			}
		}
	}
}

// takers are the work of a plan that would bring an item along, and how many of it they take.
func (r *reader) takers(p *plan, of *work) (names []string, takes decimal.Decimal) {
	for _, w := range p.works {
		if r.bringsHere(p, w, of.item) && (asMuch(of.item, w.item) || !slices.Contains(names, w.item.Name)) {
			names, takes = append(names, w.item.Name), takes.Add(takenBy(of.item, w))
		}
	}
	return names, takes
}

// bringsHere reports whether work of a plan would bring an item along there, if the file did not name it.
func (r *reader) bringsHere(p *plan, w *work, it *pricebook.Item) bool {
	comes := func(c pricebook.Companion) bool {
		place := r.place(p)
		place.OwnHands = w.byOwnHands()
		return c.Comes(place)
	}
	return slices.ContainsFunc(w.item.Brings, func(c pricebook.Companion) bool {
		return c.Item == it.Name && !c.House && comes(c) && !slices.ContainsFunc(c.Unless, p.has)
	})
}

// doubtNamedForAll doubts an item that the whole house names while it comes along in rooms: one
// quote for the circuits of the kitchen, which are paid there too. What else is done to the whole
// house may take what it names for itself.
func (r *reader) doubtNamedForAll() {
	comesOnce := r.comesOnce()
	plans := r.chosenPlans()
	for _, h := range plans {
		if h.room.Kind != "whole_house" {
			continue
		}
		for _, w := range h.works {
			if w.by != "" || w.item.Measure != "one" || comesOnce[plainKey(w.item.Name)] {
				continue
			}
			count, known := r.worked(w.member, "quantity")
			if _, takes := r.takers(h, w); !known || !count.IsPositive() || !takes.LessThan(count) {
				continue
			}
			if places := r.alongElsewhere(plans, h, w); len(places) > 0 {
				r.say("named-once", w.at, "%s stands under the whole house (%s), and comes along in %s: all are paid", diag.Quote(w.label), quantity.FormatCount(count, 2), alongNames(places))("if those are the same, write   %s", alongHint(places, h))
			}
		}
	}
}

// alongElsewhere is where an item comes along in other places than the one that names it.
func (r *reader) alongElsewhere(plans []*plan, h *plan, w *work) (out []*comesAlong) {
	for _, p := range plans {
		for _, x := range p.works {
			if p != h && x.by != "" && x.item == w.item {
				if a := r.alongIn(p, x, func(brought) bool { return true }); a != nil {
					out = append(out, a)
				}
			}
		}
	}
	return out
}
