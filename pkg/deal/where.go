package deal

import (
	"cmp"
	"iter"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// where is where a piece of work is done. A companion is done where what brings it is, but for where
// other work is done in its place; what goes by another measure brings it everywhere.
func (b *bringing) where(w *work) footprint {
	all := b.asFar(w.item)
	switch {
	case len(w.bringers) == 0 && w.stated().isWhole():
		return everywhere()
	case len(w.bringers) == 0:
		return b.lie(w.item.Measure, all)[w]
	}
	return b.reckoning.once(w, func() footprint {
		if w.item.ForEach {
			return b.each(w, all)
		}
		return b.together(w, all)
	})
}

// together is where all that brings a companion brings it.
func (b *bringing) together(w *work, all decimal.Decimal) footprint {
	var out footprint
	var parts []toDo
	for _, x := range w.bringers {
		p := b.leftOf(x, w.item, b.broughtTo(x, w.item, all), all)
		if !asMuch(w.item, x.by.item) && follows(w.item, x.by.item) {
			parts = append(parts, p.length())
		} else {
			out = out.and(p, all)
		}
	}
	for _, much := range parts { // walls of a tub lie beside those of a shower
		p := fit(much, all, out)
		p.of = []toDo{much}
		out = out.and(p, all)
	}
	if w.within != nil && b.yields(w) {
		for _, other := range b.before(w) {
			out = out.but(b.where(other), all)
		}
	}
	return out
}

// broughtTo is where a piece of work brings a companion, whatever else is done.
func (b *bringing) broughtTo(x brought, it *pricebook.Item, all decimal.Decimal) footprint {
	by := x.by.item
	switch {
	case asMuch(it, by):
		p := b.where(x.by)
		if b.all(it).IsPositive() && (by.Measure != it.Measure || takesLayers(by, it)) && !p.within(all) {
			return everywhere() // a count of walls is none of walls less openings
		}
		return p
	case follows(it, by):
		part := b.amount(x.by)
		if b.all(it).IsPositive() {
			part.share = part.share.Mul(b.all(by)).DivRound(b.all(it), quantity.Places)
		}
		part.text = cmp.Or(part.text, by.Measure)
		return theFirst(part)
	default:
		return everywhere()
	}
}

// leftOf is what of the place where a companion would come is left by what is done instead of it.
func (b *bringing) leftOf(x brought, it *pricebook.Item, p footprint, all decimal.Decimal) footprint {
	var end toDo
	for other, q := range b.instead(x, it) {
		switch much := q.length(); {
		case pricebook.SameSurface(it.Measure, other.item.Measure), b.over(x.by, other):
			p = p.but(q, all)
		default: // by another measure, beside it: at the other end
			q.on = []stretch{{whole.less(end).less(much), whole.less(end)}}
			p, end = p.but(q, all), end.plus(much)
		}
	}
	return p
}

// instead is the work that is done in place of a companion which work would bring, and where.
func (b *bringing) instead(x brought, it *pricebook.Item) iter.Seq2[*work, footprint] {
	return func(yield func(*work, footprint) bool) {
		for _, name := range x.Unless {
			for _, other := range b.worksOf(name) {
				if alike(it, other.item) && !yield(other, b.standsFor(other)) {
					return
				}
			}
		}
	}
}

// standsFor is where work is done in place of other work. What only finishes a floor that is laid new, by its
// own sanding, is in place of none.
func (b *bringing) standsFor(w *work) footprint {
	p := b.where(w)
	if w.item.Thing() != pricebook.WoodFinish {
		return p
	}
	for floor := range b.here() {
		if floor.item.NewFloor && b.leadsTo(floor.item.Name)[w.item.Name] {
			p = p.but(b.where(floor), b.asFar(w.item))
		}
	}
	return p
}

// yields reports whether something is done in place of a companion.
func (b *bringing) yields(w *work) bool {
	for _, x := range w.bringers {
		for _, q := range b.instead(x, w.item) {
			if !q.none() {
				return true
			}
		}
	}
	return false
}

// each is where an item lies of which each piece of work takes its own: one beside the other, on and on.
func (b *bringing) each(w *work, all decimal.Decimal) footprint {
	var much, from toDo
	switch left, yields := b.leftForEach(w, all); {
	case yields:
		much = b.forEach(w.item, w.bringers, left)
	case severalTake(w.item, w.bringers):
		much = b.forEach(w.item, w.bringers, one)
	default:
		much = b.together(w, all).length()
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

// leftForEach is the share that is left of what each piece of work would take by what is done in its place,
// and whether anything is.
func (b *bringing) leftForEach(w *work, all decimal.Decimal) (left decimal.Decimal, yields bool) {
	var done footprint
	for _, x := range w.bringers {
		for _, q := range b.instead(x, w.item) {
			done = done.and(q, all)
		}
	}
	return decimal.Max(decimal.Zero, one.Sub(done.length().of(all))), !done.none()
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
	out := b.where(w).length()
	if !b.all(w.item).IsPositive() { // a count leaves what nobody knows
		out.counted, out.share = decimal.Max(decimal.Zero, out.counted), decimal.Max(decimal.Zero, out.share)
	}
	return out
}

// asFar is all there is of the measure of an item where the plan is.
func (b *bringing) asFar(it *pricebook.Item) decimal.Decimal {
	if all := b.all(it); all.IsPositive() {
		return all
	}
	return far
}
