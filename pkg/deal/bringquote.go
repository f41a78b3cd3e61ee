package deal

import "slices"

// intoQuotes moves work that comes only through one quote for all of other work of its
// trade into that quote, be it brought by work of another trade between the two, and
// reports whether there was any.
func (b *bringing) intoQuotes() (any bool) {
	if b.plan == b.callPlan {
		return false
	}
	for _, w := range slices.Clone(b.plan.works) {
		q := w.quoteOf(nil)
		if w.by == "" || q == nil || q.item.Trade != w.item.Trade || !slices.Contains(b.plan.works, w) {
			continue
		}
		c := w.bringers[0].Companion
		b.drop(w)
		b.hold(brought{c, q}, w.item)
		any = true
	}
	return any
}

// quoteOf is the quote for all of other work through which alone work comes, or nil; seen is
// the work asked already on the way there.
func (w *work) quoteOf(seen []*work) (q *work) {
	for i, x := range w.bringers {
		y := x.by
		switch {
		case y.within != nil:
			y = y.within
		case y.quotedAll():
		case slices.Contains(seen, y):
			return nil
		default:
			y = y.quoteOf(append(slices.Clone(seen), w))
		}
		if y == nil || i > 0 && y != q {
			return nil
		}
		q = y
	}
	return q
}

// drop takes brought work out of the plan, with what came through it alone.
func (b *bringing) drop(w *work) {
	i := slices.Index(b.plan.works, w)
	b.plan.works = slices.Delete(b.plan.works, i, i+1)
	b.plan.option.Remove(w.member)
	if i < b.asked {
		b.asked--
	}
	byIt := func(x brought) bool { return x.by == w }
	for _, list := range []*[]brought{&b.later, &b.shelf, &b.calls} {
		*list = slices.DeleteFunc(*list, byIt)
	}
	for _, other := range slices.Concat(b.plan.works, b.held) {
		if !other.broughtBy(w) {
			continue
		}
		other.bringers = slices.DeleteFunc(other.bringers, byIt)
		if len(other.bringers) == 0 && other.by != "" && other.within == nil && slices.Contains(b.plan.works, other) {
			b.drop(other)
		}
	}
}
