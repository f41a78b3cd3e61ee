package deal

import (
	"regexp"
	"slices"
	"sync"
)

// noneBesides is what a note says of a quote that holds none of what is priced besides.
var noneBesides = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(nothing (else|more)|none of (it|that|the rest))\b`)
})

// doubtMoreHeld doubts a quote that is said to hold more in an option that does not say what is left
// out of what is priced besides, and names other hired work or has much come along through the quoted work.
func (r *reader) doubtMoreHeld(w *work) {
	p := r.planWith(w)
	if r.saysBesides(p, w) {
		return
	}
	beside := slices.DeleteFunc(slices.Clone(p.works), func(x *work) bool {
		price, _ := r.worked(x.member, "trade_price")
		return x == w || x.by != "" && !x.comesThrough(w, nil) || x.within != nil || x.settled() || !price.IsPositive()
	})
	named := slices.ContainsFunc(beside, func(x *work) bool { return x.by == "" })
	if named || !r.tradePrice(beside...).LessThan(smallWork) {
		none := "without: []"
		if len(p.without) > 0 { // for another reason
			none = "note: nothing else"
		}
		r.say("quote-beside", w.scope.at, "%s: its quote is said to hold more, and what else %s takes is priced besides: %s", w.label, p.room.Label, r.largest(beside))("take out of   work   what it holds of that, and name under   without: [...]   what it holds of the work that comes along; if it holds none of that, say   %s", none)
	}
}

// saysBesides reports whether the file says what a quote holds of what it would bring along: that it is left
// out, or that there is none of it. What is left out for another reason, as a counter that is not put back,
// says nothing of that.
func (r *reader) saysBesides(p *plan, w *work) bool {
	if noneBesides().MatchString(r.text(w, "note")) {
		return true
	}
	along := r.leadsTo(chain{from: w.item.Name, house: true})
	return r.good(p.scope.path+"without") != nil && len(p.without) == 0 ||
		slices.ContainsFunc(p.without, func(s span) bool {
			it := r.itemNamed(plainKey(s.text))
			return it != nil && along[it.Name]
		})
}
