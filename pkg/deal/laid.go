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
// not the file's: what lies beside other work first, and what makes nothing last, for it lies beside all.
func (b *bringing) namedOn(measure string, all decimal.Decimal) (works []*work) {
	for w := range b.here() {
		if len(w.bringers) == 0 && pricebook.SameSurface(w.item.Measure, measure) {
			works = append(works, w)
		}
	}
	makes := func(w *work) bool { return len(b.things(w.item)) > 0 }
	last := func(w *work) int {
		switch {
		case !makes(w):
			return 2
		case !slices.ContainsFunc(works, func(other *work) bool { return makes(other) && b.besideEachOther(w.item, other.item) }):
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

// room is where so much of an item lies: with what is nearest to it, and beside what it cannot lie over or under, as
// far as there is room; where there is none, over what has nothing to do with it first.
func (b *bringing) room(it *pricebook.Item, much toDo, laid []*work, at map[*work]footprint, all decimal.Decimal) footprint {
	var with [16]footprint // by how near that is
	var taken, related, instead footprint
	for _, other := range laid {
		p := at[other]
		length := p.length().of(all)
		if !length.LessThan(all) {
			continue
		}
		near := b.nearness(it, other.item)
		if !b.besideEachOther(it, other.item) {
			if length.Equal(much.of(all)) {
				near |= asLarge
			}
			with[near] = with[near].and(p, all)
			continue
		}
		taken = taken.and(p, all)
		if near&(bringsSame|inPlace) > 0 {
			related = related.and(p, all)
		}
		if b.takesAll(other.item, it) {
			instead = instead.and(p, all)
		}
	}
	var places []footprint
	for near := len(with) - 1; near > 0; near-- {
		places = append(places, with[near].but(taken, all))
		if near >= bringsIt && len(b.things(it)) == 0 { // whatever else lies there: boards are finished where they hang
			places = append(places, with[near])
		}
	}
	for _, not := range []footprint{taken, related, instead, {}} {
		places = append(places, everywhere().but(not, all))
	}
	return fit(much, all, places...)
}

// How near two items are that lie one on the other; the last is nearest, whatever else holds.
const (
	bringsSame = 1 << iota // both bring one thing
	asLarge                // just as much is done of both
	bringsIt               // one brings the other
	inPlace                // one is done in place of what the other brings
)

// nearness is how near two items are, but for how much is done of them.
func (b *bringing) nearness(x, y *pricebook.Item) (near int) {
	if b.bringOneThing(x, y) {
		near |= bringsSame
	}
	if b.leadsAlong(x, y) || b.leadsAlong(y, x) {
		near |= bringsIt
	}
	if b.takesPlace(x, y) || b.takesPlace(y, x) {
		near |= inPlace
	}
	return near
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

// besideEachOther reports whether two pieces of work that the file names lie side by side: not where they
// make different things, as a floor and the membrane under it, where one is taken out and the other new, or
// where the one brings the other along. Base of tile lies beside a wainscot with which base of wood comes along.
func (b *bringing) besideEachOther(x, y *pricebook.Item) bool {
	return !b.leadsAlong(x, y) && !b.leadsAlong(y, x) && !b.stacked(x, y) || b.bringsBeside(x, y) || b.bringsBeside(y, x)
}

// leadsAlong reports whether an item brings another along in the end, on the surface of both. What is taken out for
// it lies under all that is new.
func (b *bringing) leadsAlong(x, y *pricebook.Item) bool {
	return asMuch(y, x) && y.Trade != demolition && b.leadsTo(chain{from: x.Name})[y.Name]
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

// bringOneThing reports whether two items bring a third in the end, to so much of their surface as is done of them.
func (b *bringing) bringOneThing(x, y *pricebook.Item) bool {
	others := b.leadsTo(chain{from: y.Name})
	for name := range b.leadsTo(chain{from: x.Name}) {
		if it := b.book.Item(name); others[name] && follows(it, x) && follows(it, y) {
			return true
		}
	}
	return false
}

// takesPlace reports whether an item is done in place of what another brings on its surface.
func (b *bringing) takesPlace(it, of *pricebook.Item) bool {
	return slices.ContainsFunc(b.alongOn(of, it), func(c pricebook.Companion) bool { return slices.Contains(c.Unless, it.Name) })
}

// takesAll reports whether an item is done in place of all that another brings on its surface.
func (b *bringing) takesAll(it, of *pricebook.Item) bool {
	along := b.alongOn(of, it)
	return len(along) > 0 && !slices.ContainsFunc(along, func(c pricebook.Companion) bool { return !slices.Contains(c.Unless, it.Name) })
}

// alongOn are the companions of an item that go by the surface of another.
func (b *bringing) alongOn(of, it *pricebook.Item) (out []pricebook.Companion) {
	for _, c := range of.Brings {
		if along := b.book.Item(c.Item); along != nil && !c.House && asMuch(along, it) {
			out = append(out, c)
		}
	}
	return out
}
