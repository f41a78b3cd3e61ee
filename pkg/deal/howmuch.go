package deal

import (
	"cmp"
	"iter"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// A toDo is how much of a measure work is done to: what is counted of it, in the unit of
// the measure, and a share of all there is.
type toDo struct {
	counted, share decimal.Decimal
	text           string // in the words of the file
	at             diag.Pos
}

// whole is all there is.
var whole = toDo{share: one}

// of is how much it is where there is so much of the measure.
func (a toDo) of(all decimal.Decimal) decimal.Decimal {
	if a.counted.IsZero() && a.share.Equal(one) { // as most is
		return all
	}
	return a.counted.Add(a.share.Mul(all))
}

func (a toDo) none() bool { return a.counted.IsZero() && a.share.IsZero() }

func (a toDo) plus(b toDo) toDo {
	if a.none() {
		return b
	}
	a.text = strings.Join(slices.DeleteFunc([]string{a.text, b.text}, func(s string) bool { return s == "" }), " and ")
	a.counted, a.share = a.counted.Add(b.counted), a.share.Add(b.share)
	return a
}

// less is what is left of it, not below 0.
func (a toDo) less(b toDo, all decimal.Decimal) toDo {
	if all.IsPositive() && !a.of(all).GreaterThan(b.of(all)) {
		return toDo{}
	}
	a.counted, a.share = a.counted.Sub(b.counted), a.share.Sub(b.share)
	if !all.IsPositive() {
		a.counted, a.share = decimal.Max(decimal.Zero, a.counted), decimal.Max(decimal.Zero, a.share)
	}
	a.text, a.at = cmp.Or(a.text, "all")+" less "+b.text, b.at
	return a
}

// addUp adds amounts up, at most to the whole, or to the most of them where a single one is
// counted higher.
func addUp(all decimal.Decimal, amounts []toDo) (sum toDo) {
	most := whole
	for _, a := range amounts {
		sum = sum.plus(a)
		if a.of(all).GreaterThan(most.of(all)) {
			most = a
		}
	}
	if sum.of(all).LessThan(most.of(all)) || all.IsZero() && sum.share.LessThanOrEqual(one) {
		return sum
	}
	return most
}

// stated is how much of its measure the file has work done that it names.
func (w *work) stated() toDo {
	out := whole
	if v, said := w.member.Given.Look("measure"); said && v.Refers == "" {
		out = toDo{counted: v.Number, text: v.Text, at: v.Pos}
	}
	if v, said := w.member.Given.Look("part"); said {
		out = toDo{out.counted.Mul(v.Number), out.share.Mul(v.Number), v.Text, v.Pos}
	}
	return out
}

// amount is how much of a piece of work is done. Of a companion: the parts and counts of
// what brings it along, added up, at most all there is; and of what makes way for other
// work, what that leaves. What goes by another measure brings it whole.
func (b *bringing) amount(w *work) toDo {
	if len(w.bringers) == 0 {
		return w.stated()
	}
	if b.asking[w] { // in a circle of work that takes each other's place
		return toDo{}
	}
	b.asking[w] = true
	defer delete(b.asking, w)
	all := b.all(w.item)
	under, beside := b.instead(w)
	if under.none() && beside.none() {
		return b.total(w.item, w.bringers, nil)
	}
	if before := b.before(w); len(before) > 0 {
		both := b.amount(&work{item: w.item, bringers: slices.Concat(before, w.bringers)})
		return both.less(b.amount(&work{item: w.item, bringers: before}), all)
	}
	if w.item.ForEach {
		return b.forEach(w.item, w.bringers, decimal.Max(decimal.Zero, one.Sub(under.plus(beside).of(all))))
	}
	always, yielding := w.always()
	rest := b.total(w.item, yielding, b.origins(sameMeasure(w.item, always))).less(under, all)
	if left := whole.less(under.plus(beside), all); all.IsPositive() && rest.of(all).GreaterThan(left.of(all)) {
		rest = left
	}
	if len(always) == 0 {
		return rest
	}
	first := b.total(w.item, always, nil)
	return addUp(all, []toDo{first, rest})
}

// before is what brings an item to the plan and to quotes before the one that has it in a
// piece of work: what is done in place of all of it is done once, in that order.
func (b *bringing) before(w *work) (by []brought) {
	if w.within == nil {
		return nil
	}
	for _, other := range b.worksOf(w.item.Name) {
		if other == w {
			break
		}
		by = append(by, other.bringers...)
	}
	return by
}

// always are those that bring a companion whatever else is done, and the others.
func (w *work) always() (always, yielding []brought) {
	for _, x := range w.bringers {
		if len(x.Unless) == 0 {
			always = append(always, x)
		} else {
			yielding = append(yielding, x)
		}
	}
	return always, yielding
}

// instead is how much other work does in place of a companion, for all that would bring it
// otherwise: what lies under or over that work, and what lies beside it.
func (b *bringing) instead(w *work) (under, beside toDo) {
	_, yielding := w.always()
	if len(yielding) == 0 {
		return under, beside
	}
	var above, aside []*work
	for _, name := range yielding[0].Unless {
		if slices.ContainsFunc(yielding, func(x brought) bool { return !slices.Contains(x.Unless, name) }) {
			continue
		}
		for _, other := range b.worksOf(name) {
			switch {
			case !alike(w.item, other.item) || b.finishesNewFloor(other):
			case slices.ContainsFunc(yielding, func(x brought) bool { return !b.over(x.by, other) }):
				aside = append(aside, other)
			default:
				above = append(above, other)
			}
		}
	}
	all := b.all(w.item)
	finishes := func(x *work) bool { return x.item.Thing() == pricebook.WoodFinish }
	other := slices.DeleteFunc(slices.Clone(above), finishes)
	above = slices.DeleteFunc(above, func(x *work) bool { return !finishes(x) })
	under = b.sum(all, other, b.origins(aside))
	if old := b.sum(all, above, b.origins(aside)).less(b.newUnder(above), all); old.of(all).GreaterThan(under.of(all)) {
		under = old
	}
	return under, b.sum(all, aside, nil)
}

// finishesNewFloor reports whether work that comes along sands or coats only a floor that is new: no old
// wood, in place of what lies under which something else would be done. Trim that comes with it is no
// such work.
func (b *bringing) finishesNewFloor(w *work) bool {
	return len(w.bringers) > 0 && !slices.ContainsFunc(w.bringers, func(x brought) bool {
		return !(w.item.Thing() == pricebook.WoodFinish && x.by.item.NewFloor) && !(pricebook.SameSurface(w.item.Measure, x.by.item.Measure) && b.finishesNewFloor(x.by))
	})
}

// newUnder is how much of the floor is new under work that finishes it and that the new floor would bring:
// so much of that finishes no old wood.
func (b *bringing) newUnder(finishes []*work) toDo {
	var floors []*work
	for w := range b.here() {
		leads := func(x *work) bool { return b.leadsTo(w.item.Name)[x.item.Name] }
		if w.item.NewFloor && slices.ContainsFunc(finishes, leads) {
			floors = append(floors, w)
		}
	}
	if len(floors) == 0 {
		return toDo{}
	}
	return b.sum(b.all(floors[0].item), floors, nil)
}

// over reports whether two pieces of work lie one on the other: not where what brings the first is a
// floor that lies beside the other.
func (b *bringing) over(w, other *work) bool {
	if !b.stacked(w.item, other.item) {
		return false
	}
	along := func(x brought) bool { return !x.by.item.NewFloor || b.stacked(x.by.item, other.item) }
	return len(w.bringers) == 0 || slices.ContainsFunc(w.bringers, along)
}

// stacked reports whether two items lie one on the other: what makes different things, as a
// floor and the membrane under it, or what is taken out and what is new, does. All else lies
// side by side.
func (b *bringing) stacked(x, y *pricebook.Item) bool {
	of, on := b.things(x), b.things(y)
	return len(of) > 0 && len(on) > 0 && !shareAny(of, on)
}

func shareAny(some, others []string) bool {
	return slices.ContainsFunc(some, func(x string) bool { return slices.Contains(others, x) })
}

// alike reports whether so much of one item is so much of the other: they go by the same
// measure, or both by area or by length.
func alike(x, y *pricebook.Item) bool {
	return x.Measure == y.Measure || x.Unit == y.Unit && x.Unit != "each"
}

// total adds up how much the work is done to that brings a companion, without what stems
// from some of it already.
func (b *bringing) total(it *pricebook.Item, by []brought, but []*work) toDo {
	if severalTake(it, by) {
		return b.forEach(it, by, one)
	}
	var others []toDo
	for _, x := range by {
		switch {
		case asMuch(it, x.by.item):
		case follows(it, x.by.item):
			others = append(others, b.within(it, x.by))
		default:
			others = append(others, whole)
		}
	}
	all := b.all(it)
	sum := b.sum(all, sameMeasure(it, by), but, others...)
	beyond := func(x toDo) bool { return x.of(all).GreaterThan(all) }
	more := func(x brought) bool {
		return x.by.item.Measure == it.Measure && !takesLayers(x.by.item, it) && beyond(b.amount(x.by))
	}
	if all.IsPositive() && beyond(sum) && !slices.ContainsFunc(by, more) {
		return whole // a count of walls is none of walls less openings
	}
	return sum
}

// takesLayers reports whether a count of work over all there is takes up layers, of which what
// comes along has but one: a subfloor under two floors is mended once.
func takesLayers(by, along *pricebook.Item) bool {
	return by.Trade == demolition && along.Trade != demolition
}

// follows reports whether so much of a companion is done as of the work that brings it: both
// go by one measure or surface, or the work by a part of the companion's.
func follows(it, by *pricebook.Item) bool {
	return asMuch(it, by) || pricebook.PartOf(by.Measure, it.Measure) && !it.Once
}

// asMuch reports whether as large a part of a companion is done as of the work that brings it:
// both go by one measure or surface, and it does not come once for a room.
func asMuch(it, by *pricebook.Item) bool {
	return pricebook.SameSurface(by.Measure, it.Measure) && !it.Once
}

// within is how much of the measure of a companion the work is that goes by a part of it.
func (b *bringing) within(it *pricebook.Item, w *work) toDo {
	part, all := b.amount(w), b.all(it)
	if all.IsPositive() {
		part.share = part.share.Mul(b.all(w.item)).DivRound(all, quantity.Places)
	}
	part.text = cmp.Or(part.text, w.item.Measure)
	return part
}

// all is all there is of the measure of an item where the plan is, 0 where that is not known.
func (b *bringing) all(it *pricebook.Item) decimal.Decimal { return b.allThereIs(b.plan, it) }

func (r *reader) allThereIs(p *plan, it *pricebook.Item) decimal.Decimal {
	x, _ := r.thereIs(p.room, *pricebook.MeasureNamed(it.Measure))
	return x
}

// worksOf is all work of an item that is done where the plan is, be it within a quote.
func (b *bringing) worksOf(name string) (out []*work) {
	for w := range b.here() {
		if w.item.Name == name {
			out = append(out, w)
		}
	}
	return out
}

// here is all work that is done where the plan is, be it within a quote.
func (b *bringing) here() iter.Seq[*work] {
	return func(yield func(*work) bool) {
		for _, all := range [][]*work{b.plan.works, b.held} {
			for _, w := range all {
				if !yield(w) {
					return
				}
			}
		}
	}
}

// allDone reports whether an item is done to all there is; where nobody says how much that is, to as
// much as the work that brings a companion unless it is done, and which it does not lie beside.
func (b *bringing) allDone(x brought, name string) bool {
	works := slices.DeleteFunc(b.worksOf(name), b.finishesNewFloor)
	if len(works) == 0 {
		return false
	}
	var sum toDo
	for _, w := range works {
		sum = sum.plus(b.amount(w))
	}
	it := works[0].item
	all := b.all(it)
	if !all.IsPositive() && alike(x.by.item, it) {
		if shareAny(b.things(x.by.item), b.things(it)) {
			return false
		}
		all = b.amount(x.by).counted
	}
	if it.Thing() == pricebook.WoodFinish {
		sum = sum.less(b.newUnder(works), all)
	}
	return sum.of(all).GreaterThanOrEqual(all)
}

// amounts says how much is done of all companions.
func (b *bringing) amounts() {
	for w := range b.here() {
		if len(w.bringers) > 0 {
			b.giveAmount(w, b.amount(w))
			b.noteParts(w)
			b.noteWhole(w)
		}
	}
}

func (b *bringing) giveAmount(w *work, a toDo) {
	all := b.all(w.item)
	give := func(line string, x decimal.Decimal, text string) {
		w.member.Give(line, model.Value{Number: x, Text: text, Pos: a.at})
	}
	if a.share.IsZero() || all.IsZero() && !a.counted.IsZero() {
		give("measure", a.counted, a.text)
		if m := pricebook.MeasureNamed(w.item.Measure); b.plan.measures(*m) && m.Line != "" {
			w.member.Give("measured", model.Value{Refers: m.Line, Text: m.Name, Pos: w.item.Pos})
		}
		return
	}
	part := a.share
	if !a.counted.IsZero() {
		part = a.of(all).DivRound(all, quantity.Places)
	}
	if part.Equal(one) {
		return // all there is, which the model knows
	}
	share, byAge := w.item.Share(b.deal.YearBuilt)
	if byAge {
		part, a.text = part.Mul(share), a.text+", and of that by the year built"
	}
	give("part", part, a.text)
}

// noteParts notes of a companion what is done in its place to a part only, where the two
// go by measures of which neither is a part of the other: the companion is then done whole.
func (b *bringing) noteParts(w *work) {
	for _, x := range w.bringers {
		for _, name := range x.Unless {
			for _, other := range b.worksOf(name) {
				if !alike(w.item, other.item) && !slices.Contains(b.plan.beside, [2]*work{w, other}) {
					b.plan.beside = append(b.plan.beside, [2]*work{w, other})
				}
			}
		}
	}
}

// smallPart is what part of all there is a patch is at most; common practice, no source.
var smallPart = decimal.New(25, -2)

// noteWhole notes of a companion by a length or an area that it is done whole, where all that
// brings it whole is by another measure and together a patch: board on a few square feet, with
// the base of the room.
func (b *bringing) noteWhole(w *work) {
	all := b.all(w.item)
	if len(w.bringers) == 0 || w.within != nil || w.item.Unit == "each" || !b.amount(w).of(all).IsPositive() {
		return
	}
	var part decimal.Decimal
	var of []*work // each once, though it brings it in several ways
	var along []brought
	for _, x := range w.bringers {
		if follows(w.item, x.by.item) {
			along = append(along, x)
		} else if from := x.by.named(); !slices.Contains(of, from) {
			of, part = append(of, from), part.Add(b.partOf(from))
		}
	}
	if len(of) > 0 && part.LessThan(smallPart) && (len(along) == 0 || b.total(w.item, along, nil).of(all).LessThan(all)) {
		b.plan.whole = append(b.plan.whole, brought{pricebook.Companion{Item: w.item.Name}, of[0]})
	}
}

// partOf is which part of all there is work is done to.
func (b *bringing) partOf(w *work) decimal.Decimal {
	all := b.all(w.item)
	if !all.IsPositive() {
		return one
	}
	return b.amount(w).of(all).DivRound(all, quantity.Places)
}

// named is the work that a companion stems from in the end.
func (w *work) named() *work {
	for len(w.bringers) > 0 {
		w = w.bringers[0].by
	}
	return w
}
