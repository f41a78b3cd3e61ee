package deal

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
)

// lie says where the work of a plan lies that the file names and that goes by one measure or surface, of so
// much as there is of that. Each lies at the beginning, but beside what it cannot lie over or under.
func (b *bringing) lie(measure string) map[*work]footprint {
	if out := b.laid[measure]; out != nil {
		return out
	}
	all := b.asFar(measure)
	works, out := b.namedOn(measure, all), map[*work]footprint{}
	parted := pricebook.HasParts(measure)
	var laid []*work
	if parted && !b.laying {
		b.laying = true
		laid = b.onParts(works, out, measure)
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
		b.laid[measure] = out
	}
	return out
}

// namedOn is the work of a plan that the file names and that goes by one measure or surface, in an order that is
// not the file's: what others bring after these, what lies beside other work first, and what makes nothing last, for
// it lies beside all.
func (b *bringing) namedOn(measure string, all decimal.Decimal) (works []*work) {
	for w := range b.here() {
		if len(w.bringers) == 0 && pricebook.SameSurface(w.item.Measure, measure) {
			works = append(works, w)
		}
	}
	makes := func(w *work) bool { return len(b.things(w.item)) > 0 }
	bringers, last := map[*work]int{}, map[*work]int{}
	for _, w := range works {
		for _, other := range works {
			if other.item != w.item && b.leadsAlong(other.item, w.item) {
				bringers[w]++
			}
		}
		switch {
		case !makes(w):
			last[w] = 2
		case !slices.ContainsFunc(works, func(other *work) bool { return makes(other) && b.besideEachOther(w.item, other.item) }):
			last[w] = 1
		}
	}
	slices.SortStableFunc(works, func(v, w *work) int {
		return cmp.Or(cmp.Compare(bringers[v], bringers[w]), cmp.Compare(last[v], last[w]), cmp.Compare(v.item.Name, w.item.Name), cmp.Compare(v.hands(), w.hands()), w.stated().of(all).Cmp(v.stated().of(all)))
	})
	return works
}

// alone reports whether the file names no other work of the item in the plan.
func (b *bringing) alone(w *work) bool {
	return w.scope.path == "" || !slices.ContainsFunc(b.plan.works, func(other *work) bool { return other != w && other.item == w.item && len(other.bringers) == 0 })
}

// onParts is the work on parts of what some work goes by, as the walls of a tub are of wet walls, of which
// is known where it lies.
func (b *bringing) onParts(works []*work, at map[*work]footprint, measure string) (out []*work) {
	for w := range b.here() {
		if len(works) > 0 && pricebook.PartOf(w.item.Measure, works[0].item.Measure) {
			out, at[w] = append(out, w), b.onto(works[0].item, w, measure)
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
	free := b.room(it, much, laid, at, all)
	for _, w := range pieces {
		p := theFirst(w.stated())
		if w.stated().of(all).LessThan(all) {
			var short toDo
			p, short = free.first(w.stated(), all)
			p = p.and(fit(short, all, everywhere().but(p, all), everywhere()), all)
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
