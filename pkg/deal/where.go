package deal

import (
	"cmp"
	"iter"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// where is where a piece of work is done, of all there is of a measure on its surface, or of its own measure. A
// companion is done where what brings it is, but for where other work is done in its place; what goes by
// another measure brings it everywhere.
func (b *bringing) where(w *work, measure string) footprint {
	if !pricebook.SameSurface(measure, w.item.Measure) {
		measure = w.item.Measure
	}
	switch {
	case len(w.bringers) == 0 && w.stated().isWhole() && (w.item.Measure != "one" || b.alone(w)):
		return everywhere()
	case len(w.bringers) == 0:
		return b.lie(measure)[w]
	}
	return b.reckoning.once(spot{w, measure}, func() footprint {
		if w.item.ForEach {
			return b.each(w, measure)
		}
		return b.together(w, measure)
	})
}

// together is where all that brings a companion brings it.
func (b *bringing) together(w *work, measure string) footprint {
	var out footprint
	all := b.asFar(measure)
	for _, x := range w.bringers {
		out = out.and(b.leftOf(x, w.item, b.broughtTo(x, w.item, measure), measure), all)
	}
	if w.within != nil && b.yields(w) {
		for _, other := range b.before(w) {
			out = out.but(b.where(other, measure), all)
		}
	}
	return out
}

// broughtTo is where a piece of work brings a companion, whatever else is done.
func (b *bringing) broughtTo(x brought, it *pricebook.Item, measure string) footprint {
	by := x.by.item
	if !follows(it, by) {
		return everywhere()
	}
	p := b.onto(it, x.by, measure)
	if asMuch(it, by) && b.all(measure).IsPositive() && (by.Measure != measure || takesLayers(by, it)) && !p.within(b.all(measure)) {
		return everywhere() // a count of walls is none of walls less openings
	}
	return p
}

// onto is where work is done on what an item goes by, be it that the work goes by a part of that.
func (b *bringing) onto(it *pricebook.Item, w *work, measure string) footprint {
	p := b.done(w, measure)
	if !pricebook.PartOf(w.item.Measure, it.Measure) {
		return p
	}
	all, part := b.all(measure), b.all(w.item.Measure)
	ratio := decimal.New(5, -1) // where nobody says how much there is, each is apart
	if all.IsPositive() {
		ratio = part.DivRound(all, quantity.Places)
	}
	var start toDo
	if pricebook.AtEnd(w.item.Measure) {
		start.share = one.Sub(ratio)
	}
	move := func(a toDo) toDo { return toDo{a.counted, a.share.Mul(ratio), cmp.Or(a.text, w.item.Measure), a.at} }
	out := footprint{}
	for _, s := range p.on {
		out.on = append(out.on, stretch{start.plus(move(s.from)), start.plus(move(s.to))})
	}
	if p.of == nil {
		p.of = []toDo{whole}
	}
	for _, a := range p.of {
		out.of = append(out.of, move(a))
	}
	for _, a := range p.less {
		out.less = append(out.less, move(a))
	}
	return out
}

// done is where a piece of work is done, of what goes by the age of the house only so much.
func (b *bringing) done(w *work, measure string) footprint {
	p := b.where(w, measure)
	share, byAge := w.item.Share(b.deal.YearBuilt)
	if said := len(w.bringers) == 0 && w.stated().text != ""; !byAge || said { // all of it too, if the file says so
		return p
	}
	much := p.length()
	much.counted, much.share = much.counted.Mul(share), much.share.Mul(share)
	q, _ := p.first(much, b.asFar(measure))
	much.text = cmp.Or(much.text, "all") + ", and of that by the year built"
	q.of = []toDo{much}
	return q
}

// leftOf is what of the place where a companion would come is left by what is done instead of it.
func (b *bringing) leftOf(x brought, it *pricebook.Item, p footprint, measure string) footprint {
	all := b.asFar(measure)
	var end toDo
	for other, q := range b.instead(x, it, measure) {
		switch much := q.length(); {
		case pricebook.SameSurface(it.Measure, other.item.Measure), pricebook.PartOf(other.item.Measure, it.Measure), b.over(x.by, other):
			p = p.but(q, all)
		default: // by another measure, beside it: at the other end
			q.on = []stretch{{whole.less(end).less(much), whole.less(end)}}
			p, end = p.but(q, all), end.plus(much)
		}
	}
	return p
}

// instead is the work that is done in place of a companion which work would bring, and where.
func (b *bringing) instead(x brought, it *pricebook.Item, measure string) iter.Seq2[*work, footprint] {
	return func(yield func(*work, footprint) bool) {
		for _, name := range x.Unless {
			for _, other := range b.worksOf(name) {
				if alike(it, other.item) && !b.yieldsTo(other, it) && !yield(other, b.standsFor(other, it, measure)) {
					return
				}
			}
		}
	}
}

// yieldsTo reports whether work that would take the place of an item makes way for it in its turn: of the two
// that comes first by its name is done, and the other where that leaves room.
func (b *bringing) yieldsTo(w *work, it *pricebook.Item) bool {
	return it.Name < w.item.Name && slices.ContainsFunc(w.bringers, func(x brought) bool { return slices.Contains(x.Unless, it.Name) })
}

// standsFor is where work is done in place of other work. What only finishes a floor that is laid new, by its
// own sanding, is in place of none.
func (b *bringing) standsFor(w *work, it *pricebook.Item, measure string) footprint {
	if len(w.bringers) == 0 && pricebook.PartOf(it.Measure, w.item.Measure) {
		return theFirst(w.stated()) // which may lie beside what comes along there
	}
	p := b.onto(it, w, measure)
	if w.item.Thing() != pricebook.WoodFinish {
		return p
	}
	for floor := range b.here() {
		if floor.item.NewFloor && b.bringsInEnd(floor.item, w.item) {
			p = p.but(b.where(floor, measure), b.asFar(measure))
		}
	}
	return p
}

// yields reports whether something is done in place of a companion.
func (b *bringing) yields(w *work) bool {
	for _, x := range w.bringers {
		for _, q := range b.instead(x, w.item, w.item.Measure) {
			if !q.none() {
				return true
			}
		}
	}
	return false
}

// each is where an item lies of which each piece of work takes its own: one beside the other, on and on.
func (b *bringing) each(w *work, measure string) footprint {
	var much, from toDo
	if several(w.bringers) || b.yields(w) {
		much = b.forEach(w.item, w.bringers)
	} else {
		much = b.together(w, measure).length()
	}
	for _, other := range b.before(w) {
		from = from.plus(b.amount(other))
	}
	p := footprint{on: []stretch{{from, from.plus(much)}}}
	if much.text != "" {
		p.of = []toDo{much}
	}
	return p
}

// shareLeft is the share that what is done in place of an item leaves of what work takes of it.
func (b *bringing) shareLeft(x brought, it *pricebook.Item) decimal.Decimal {
	var done footprint
	all := b.asFar(it.Measure)
	for _, q := range b.instead(x, it, it.Measure) {
		done = done.and(q, all)
	}
	return decimal.Max(decimal.Zero, one.Sub(done.length().of(all)))
}

// before are the other works of an item that stand before one: what is done in place of all of it is done
// once, in that order.
func (b *bringing) before(w *work) (out []*work) {
	for _, other := range b.worksOf(w.item.Name) {
		if other == w {
			break
		}
		out = append(out, other)
	}
	return out
}

// amount is how much of a piece of work is done.
func (b *bringing) amount(w *work) toDo {
	if len(w.bringers) == 0 {
		return w.stated()
	}
	out := b.where(w, w.item.Measure).length()
	if !b.all(w.item.Measure).IsPositive() { // a count leaves what nobody knows
		out.counted, out.share = decimal.Max(decimal.Zero, out.counted), decimal.Max(decimal.Zero, out.share)
	}
	return out
}

// asFar is all there is of a measure where the plan is.
func (b *bringing) asFar(measure string) decimal.Decimal {
	if all := b.all(measure); all.IsPositive() {
		return all
	}
	return far
}
