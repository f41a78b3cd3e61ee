package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
)

// room is where so much of an item lies: with what is nearest to it, and beside what it cannot lie over or under, as
// far as there is room; where there is none, over what has nothing to do with it first.
func (b *bringing) room(it *pricebook.Item, much toDo, laid []*work, at map[*work]footprint, all decimal.Decimal) footprint {
	var with [16]footprint // by how near that is
	var taken, related, instead footprint
	for len(laid) > 0 {
		other := laid[0].item
		var p footprint
		for ; len(laid) > 0 && laid[0].item == other; laid = laid[1:] { // its pieces lie there as one would
			p = p.and(at[laid[0]], all)
		}
		length := p.length().of(all)
		if !length.LessThan(all) {
			continue
		}
		near := b.nearness(it, other)
		if !b.besideEachOther(it, other) {
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
		if b.takesAll(other, it) {
			instead = instead.and(p, all)
		}
	}
	var places []footprint
	for near := len(with) - 1; near > 0; near-- {
		places = append(places, with[near].but(taken, all))
		if near >= inPlace && len(b.things(it)) == 0 { // whatever else lies there: boards are finished where they hang
			places = append(places, with[near])
		}
	}
	for _, not := range []footprint{taken, related, instead, {}} {
		places = append(places, everywhere().but(not, all))
	}
	return fit(much, all, places...)
}

// How near an item lies to another that it lies on; the last is nearest, whatever else holds.
const (
	bringsSame = 1 << iota // both bring one thing
	asLarge                // just as much is done of both
	inPlace                // one is done in place of what the other brings
	broughtBy              // the other brings it
)

// nearness is how near an item lies to another that is laid, but for how much is done of them.
func (b *bringing) nearness(it, other *pricebook.Item) (near int) {
	if b.bringOneThing(it, other) {
		near |= bringsSame
	}
	if b.leadsAlong(other, it) {
		near |= broughtBy
	}
	if b.takesPlace(it, other) || b.takesPlace(other, it) {
		near |= inPlace
	}
	return near
}

// besideEachOther reports whether two pieces of work that the file names lie side by side: not where they
// make different things, as a floor and the membrane under it, where one is taken out and the other new, or
// where the one brings the other along. Base of tile lies beside a wainscot with which base of wood comes along.
func (b *bringing) besideEachOther(x, y *pricebook.Item) bool {
	return !b.leadsAlong(x, y) && !b.leadsAlong(y, x) && !b.stacked(x, y) ||
		b.bringsBeside(x, y) || b.bringsBeside(y, x)
}

// leadsAlong reports whether an item brings another along in the end, on the surface of both. What is taken out for
// it lies under all that is new.
func (b *bringing) leadsAlong(x, y *pricebook.Item) bool {
	return asMuch(y, x) && y.Trade != demolition && b.bringsInEnd(x, y)
}

// bringsBeside reports whether an item brings along on its surface what makes a thing that another makes
// too, which neither comes along in the end nor is done in its place.
func (b *bringing) bringsBeside(x, y *pricebook.Item) bool {
	return !b.leadsAlong(x, y) && slices.ContainsFunc(x.Brings, func(c pricebook.Companion) bool {
		it := b.book.Item(c.Item)
		return it != nil && !c.House && !slices.Contains(c.Unless, y.Name) && asMuch(it, x) && asMuch(it, y) &&
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
