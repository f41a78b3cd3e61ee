package deal

import (
	"iter"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// over reports whether two pieces of work lie one on the other: not where what brings the first is a
// floor that lies beside the other.
func (b *bringing) over(w, other *work) bool {
	if !b.stacked(w.item, other.item) {
		return false
	}
	along := func(x brought) bool { return !x.by.item.NewFloor || b.stacked(x.by.item, other.item) }
	return len(w.bringers) == 0 || slices.ContainsFunc(w.bringers, along)
}

// alike reports whether so much of one item is so much of the other: they go by the same
// measure, or both by area or by length.
func alike(x, y *pricebook.Item) bool {
	return x.Measure == y.Measure || x.Unit == y.Unit && x.Unit != "each"
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

// all is all there is of a measure where the plan is, 0 where that is not known.
func (b *bringing) all(measure string) decimal.Decimal { return b.allThereIs(b.plan, measure) }

func (r *reader) allThereIs(p *plan, measure string) decimal.Decimal {
	x, _ := r.thereIs(p.room, *pricebook.MeasureNamed(measure))
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
	works := b.worksOf(name)
	if len(works) == 0 {
		return false
	}
	it := works[0].item
	var done footprint
	for _, w := range works {
		done = done.and(b.standsFor(w, it, it.Measure), b.asFar(it.Measure))
	}
	all := b.all(it.Measure)
	if !all.IsPositive() && alike(x.by.item, it) {
		if shareAny(b.things(x.by.item), b.things(it)) {
			return false
		}
		all = b.amount(x.by).counted
	}
	return !done.none() && done.length().of(all).GreaterThanOrEqual(all)
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
	all := b.all(w.item.Measure)
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
	if w.within != nil { // which costs nothing by itself
		return
	}
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

// smallPart is what part of all there is a patch is less than, and fewPieces what part pieces are less than that
// are some of several, as one window of four; common practice, no source.
var smallPart, fewPieces = decimal.New(25, -2), decimal.New(34, -2)

// noteWhole notes of a companion by a length, an area or the windows of the house that it is done whole, where
// all that brings it whole is by another measure and together a patch: board on a few square feet, with
// the base of the room.
func (b *bringing) noteWhole(w *work) {
	all := b.all(w.item.Measure)
	pieces := w.item.Unit == "each" && (w.item.Measure != "outside windows" || !all.GreaterThan(one))
	if len(w.bringers) == 0 || w.within != nil || pieces || !b.amount(w).of(all).IsPositive() {
		return
	}
	var patch decimal.Decimal // from 1 on it is none
	var of []*work            // each once, though it brings it in several ways
	var along []brought
	for _, x := range w.bringers {
		if follows(w.item, x.by.item) {
			along = append(along, x)
		} else if from := x.by.named(); !slices.Contains(of, from) {
			of, patch = append(of, from), patch.Add(b.patch(from))
		}
	}
	if len(of) > 0 && patch.LessThan(one) && (len(along) == 0 || b.amount(&work{item: w.item, bringers: along}).of(all).LessThan(all)) {
		b.plan.whole = append(b.plan.whole, brought{pricebook.Companion{Item: w.item.Name}, of[0]})
	}
}

// patch is how much work is of what it would be a patch with; from 1 on it is none.
func (b *bringing) patch(w *work) decimal.Decimal {
	if w.item.Unit == "each" {
		return b.partOf(w).DivRound(fewPieces, quantity.Places)
	}
	return b.partOf(w).DivRound(smallPart, quantity.Places)
}

// partOf is which part of all there is work is done to.
func (b *bringing) partOf(w *work) decimal.Decimal {
	all := b.all(w.item.Measure)
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
