package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// renew ties work that makes all of a part of the house new to that part, for which nothing
// is set aside where the work is done, seen or not.
func (r *reader) renew() {
	for _, part := range r.deal.Root.In("check") {
		c := checkOf(part)
		if !c.New {
			continue
		}
		by := c.Mends()
		for p, w := range r.eachWork() {
			if slices.Contains(by, w.item.Name) {
				r.leastOf(w.renews(part), w)
			} else if held := r.heldOf(p, w, by); held.IsPositive() {
				x := w.renews(part)
				x.Give("of_it", model.Value{Number: held, Text: "in the quote", Pos: w.at})
				x.Give("in_quote", model.Value{Number: one, Pos: w.at})
			}
		}
	}
}

func (w *work) renews(part *model.Member) *model.Member {
	x := w.member.Add("renewal", "", part.Label)
	x.Pos = w.at
	x.Link(part)
	return x
}

// leastOf says how much work by the floor makes all of a part new at the least, so that what is
// for the few rooms that a file lists does not count as all.
func (r *reader) leastOf(renewal *model.Member, w *work) {
	least, known := r.leastFloor(w.item)
	listed := w.member.Given.Of("measure").Refers != ""
	if known && !(listed && w.quoted()) { // a quote is for the house, whatever rooms are listed
		text := quantity.FormatPercent(measuredLeast, 0) + " of the living area, as halls and closets may be left out"
		renewal.Give("at_least", model.Value{Number: least, Text: text, Pos: r.needed("house.living area", "house")})
	}
}

// leastFloor is how much of the house's floor work by that does at the least, where it is for all of
// the house; it is known only with a stated living area.
func (r *reader) leastFloor(it *pricebook.Item) (least decimal.Decimal, known bool) {
	area := r.entry("house.").Sold().House.Area
	if !area.Known || !byHouseFloor(it) {
		return least, false
	}
	return decimal.NewFromFloat(area.Value).Mul(measuredLeast), true
}

// heldOf is the share of all there is of some work that the quote of other work holds, also where the
// house calls for that with some options: called for, it makes the part new by itself.
func (r *reader) heldOf(p *plan, w *work, names []string) (share decimal.Decimal) {
	for _, h := range w.holds {
		if slices.Contains(names, h.item.Name) {
			share = share.Add(r.heldOfAll(p, h))
		}
	}
	return share
}

// heldOfAll is which share of all there is of some work a quote holds: of what other work of the plan
// brings too, what that leaves.
func (r *reader) heldOfAll(p *plan, h *work) decimal.Decimal {
	if !p.has(h.item.Name) {
		return r.shareOfAll(p, h)
	}
	listed := r.allThereIs(p, h.item.Measure)
	least, _ := r.leastFloor(h.item)
	all := decimal.Max(least, listed)
	if !all.IsPositive() {
		return decimal.Zero
	}
	_, counted := h.member.Given.Look("measure")
	_, part := h.member.Given.Look("part")
	switch {
	case counted:
		return h.left.DivRound(all, quantity.Places)
	case part:
		return h.left.DivRound(listed, quantity.Places)
	}
	return one.Sub(listed.Sub(h.left).DivRound(all, quantity.Places)) // for the house, whatever rooms are listed
}

// shareOfAll is to which share of all there is a companion is done; of a count where nobody knows
// how much there is, to none.
func (r *reader) shareOfAll(p *plan, w *work) decimal.Decimal {
	if part, said := w.member.Given.Look("part"); said {
		return part.Number
	}
	counted, said := w.member.Given.Look("measure")
	if !said {
		return one
	}
	least, _ := r.leastFloor(w.item)
	if all := decimal.Max(least, r.allThereIs(p, w.item.Measure)); all.IsPositive() {
		return counted.Number.DivRound(all, quantity.Places)
	}
	return decimal.Decimal{}
}

// byHouseFloor reports whether work goes by a floor area of the whole house.
func byHouseFloor(it *pricebook.Item) bool {
	m := pricebook.MeasureNamed(it.Measure)
	return m != nil && m.Of == "house" && m.Unit == "sq ft"
}
