package deal

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
)

// lie says where the work of a plan lies that the file names and that goes by one measure or surface, of so
// much as there is in all. Each lies at the beginning, but beside what it cannot lie over or under.
func (b *bringing) lie(measure string, all decimal.Decimal) map[*work]footprint {
	key := laidOn{measure, all.String()}
	if out := b.laid[key]; out != nil {
		return out
	}
	works, out := b.namedOn(measure, all), map[*work]footprint{}
	parted := pricebook.HasParts(measure)
	var laid []*work
	if parted && !b.laying {
		b.laying = true
		laid = b.onParts(works, out)
		b.laying = false
	}
	for len(works) > 0 {
		n := slices.IndexFunc(works, func(w *work) bool { return w.item != works[0].item })
		if n < 0 {
			n = len(works)
		}
		b.layPieces(works[:n], laid, out, all)
		laid, works = append(laid, works[:n]...), works[n:]
	}
	if !parted { // on whose parts more may come along yet
		b.laid[key] = out
	}
	return out
}

// namedOn is the work of a plan that the file names and that goes by one measure or surface, in an order that is
// not the file's: what makes nothing last, for it lies beside all.
func (b *bringing) namedOn(measure string, all decimal.Decimal) (works []*work) {
	for w := range b.here() {
		if len(w.bringers) == 0 && pricebook.SameSurface(w.item.Measure, measure) {
			works = append(works, w)
		}
	}
	last := func(w *work) int {
		if len(b.things(w.item)) == 0 {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(works, func(v, w *work) int {
		return cmp.Or(cmp.Compare(last(v), last(w)), cmp.Compare(v.item.Name, w.item.Name), cmp.Compare(v.hands(), w.hands()), w.stated().of(all).Cmp(v.stated().of(all)))
	})
	return works
}

// alone reports whether the file names no other work of the item in the plan.
func (b *bringing) alone(w *work) bool {
	return w.scope.path == "" || !slices.ContainsFunc(b.plan.works, func(other *work) bool { return other != w && other.item == w.item && len(other.bringers) == 0 })
}

// onParts is the work on parts of what some work goes by, as the walls of a tub are of wet walls, of which
// is known where it lies.
func (b *bringing) onParts(works []*work, at map[*work]footprint) (out []*work) {
	for w := range b.here() {
		if len(works) > 0 && pricebook.PartOf(w.item.Measure, works[0].item.Measure) {
			out, at[w] = append(out, w), b.onto(works[0].item, w)
		}
	}
	return out
}

// layPieces lays the pieces of one item, one behind the other where one piece as large as all of them would lie,
// beside work that is laid already.
func (b *bringing) layPieces(pieces, laid []*work, at map[*work]footprint, all decimal.Decimal) {
	var much toDo
	for _, w := range pieces {
		much = much.plus(w.stated())
	}
	it := pieces[0].item
	if len(pieces) > 1 && (it.Measure == "one" || it.Unit == "each" && much.share.IsZero()) { // a count over all there is stands
		var from toDo
		for _, w := range pieces {
			to := from.plus(w.stated())
			at[w] = footprint{on: []stretch{{from, to}}, of: theFirst(w.stated()).of}
			from = to
		}
		return
	}
	var taken, shared footprint
	for _, other := range laid {
		if !at[other].length().of(all).LessThan(all) || !b.besideEachOther(it, other.item) {
			continue
		}
		taken = taken.and(at[other], all)
		if b.bringOneThing(it, other.item) {
			shared = shared.and(at[other], all)
		}
	}
	free := fit(much, all, taken, shared) // what brings one thing overlaps last
	for _, w := range pieces {
		p := theFirst(w.stated())
		if w.stated().of(all).LessThan(all) {
			var short toDo
			p, short = free.first(w.stated(), all)
			p = p.and(fit(short, all, p), all)
			free = free.but(p, all)
		}
		p.of, p.less = theFirst(w.stated()).of, nil
		at[w] = p
	}
}

// hands orders pieces of one item by what they bring along: own hands, a trade, a quote for all of it.
func (w *work) hands() int {
	switch {
	case w.byOwnHands():
		return 0
	case !w.quotedAll():
		return 1
	}
	return 2
}

// laidOn is a measure, and so much as there is of it.
type laidOn struct{ measure, all string }

// besideEachOther reports whether two pieces of work that the file names lie side by side: not where they
// make different things, as a floor and the membrane under it, or where one is taken out and the other new.
// Base of tile lies beside a wainscot with which base of wood comes along.
func (b *bringing) besideEachOther(x, y *pricebook.Item) bool {
	return !b.stacked(x, y) || b.bringsBeside(x, y) || b.bringsBeside(y, x)
}

// bringsBeside reports whether an item brings along on its surface what makes a thing that another makes
// too, which is neither what comes along nor done in its place.
func (b *bringing) bringsBeside(x, y *pricebook.Item) bool {
	return slices.ContainsFunc(x.Brings, func(c pricebook.Companion) bool {
		it := b.book.Item(c.Item)
		return it != nil && !c.House && it != y && !slices.Contains(c.Unless, y.Name) && asMuch(it, x) && asMuch(it, y) &&
			it.Trade != demolition && shareAny(b.things(it), b.things(y))
	})
}

// bringOneThing reports whether two items bring a third to so much of their surface as is done of them.
func (b *bringing) bringOneThing(x, y *pricebook.Item) bool {
	return slices.ContainsFunc(x.Brings, func(c pricebook.Companion) bool {
		it := b.book.Item(c.Item)
		return it != nil && follows(it, x) && follows(it, y) && slices.ContainsFunc(y.Brings, func(d pricebook.Companion) bool { return c.Item == d.Item })
	})
}
