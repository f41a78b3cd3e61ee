package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
)

// mostLayers is how many layers are told apart where companions share many; beyond it all
// lies side by side.
const mostLayers = 64

// A layer is work that lies side by side, and the things that it and what it brings make. It
// lies beside layers that make one of them or nothing, and one on the other with the rest.
type layer struct {
	works  []*work
	things []string
}

func (l layer) beside(o layer) layer {
	return layer{joined(l.works, o.works), joined(l.things, o.things)}
}

// has reports whether a layer makes a thing, or lies beside all.
func (l layer) has(thing string) bool { return len(l.things) == 0 || slices.Contains(l.things, thing) }

// in reports whether another layer counts wherever a layer does, and as much at least.
func (l layer) in(o layer) bool {
	return allIn(l.works, o.works) && (len(o.things) == 0 || len(l.things) > 0 && allIn(l.things, o.things))
}

// sum is how much several pieces of work are done to together, with others beside them and
// without some: what lies side by side adds up, and of what lies one on the other the most
// counts.
func (b *bringing) sum(all decimal.Decimal, works, but []*work, others ...toDo) (most toDo) {
	for _, l := range b.layers(works) {
		amounts, each := slices.Clone(others), map[*pricebook.Item]int{}
		for _, w := range b.once(l.works) {
			if slices.Contains(but, w) {
				continue
			}
			if i, there := each[w.item]; there { // a quote holds some of it
				amounts[i] = amounts[i].plus(b.amount(w))
				continue
			}
			if w.item.ForEach {
				each[w.item] = len(amounts)
			}
			amounts = append(amounts, b.amount(w))
		}
		if sum := addUp(all, amounts); most.none() || sum.of(all).GreaterThan(most.of(all)) {
			most = sum
		}
	}
	return most
}

// layers are the work that several pieces of work stem from, one layer on the other.
func (b *bringing) layers(works []*work) (out []layer) {
	var under [][]layer
	var things []string
	for _, w := range works {
		layers := b.under(w)
		for _, l := range layers {
			things = joined(things, l.things)
		}
		under = append(under, layers)
	}
	if len(things) == 0 {
		things = []string{""}
	}
	for _, thing := range things {
		side := []layer{{}}
		for _, layers := range under {
			with := slices.DeleteFunc(slices.Clone(layers), func(l layer) bool { return !l.has(thing) })
			if len(with) > 0 {
				side = eachWith(side, with)
			}
		}
		out = withMore(out, side...)
	}
	return out
}

// under is the work that a piece of work stems from: itself, or where just as much is done
// of it as of what brings it together, that.
func (b *bringing) under(w *work) []layer {
	things := b.things(w.item)
	same := sameMeasure(w.item, w.bringers)
	if len(same) == 0 || len(same) < len(w.bringers) || w.item.ForEach || b.yields(w) {
		return []layer{{[]*work{w}, things}}
	}
	layers := b.layers(same)
	for i := range layers {
		if len(layers[i].things) > 0 {
			layers[i].things = joined(layers[i].things, things)
		}
	}
	return layers
}

// demolition is the trade that takes out what was there.
const demolition = "demolition"

// things are what of a place an item makes, itself. A floor that nothing refinishes leaves no
// wood to be refinished where it lies, and siding or a deck that is not painted nothing to be painted.
func (b *bringing) things(it *pricebook.Item) []string {
	finish := it.Finish()
	finishes := func(c pricebook.Companion) bool {
		other := b.book.Item(c.Item)
		return other != nil && other.Thing() == finish
	}
	takesOut := it.Trade == demolition || it.TakesOut != "" && !strings.HasSuffix(it.TakesOut, "finish") // which comes off what stays
	switch thing := it.Thing(); {
	case thing == "" && takesOut && b.inLayers(it):
		return []string{demolition + " of " + it.Name} // a layer lies on the other
	case thing == "" && takesOut:
		return []string{demolition} // it lies under what is new
	case thing == "":
		return nil
	case finish != "" && !slices.ContainsFunc(it.Brings, finishes):
		return []string{thing, finish}
	default:
		return []string{thing}
	}
}

// inLayers reports whether an item takes up one of the layers of the room.
func (b *bringing) inLayers(it *pricebook.Item) bool {
	g := b.good(b.roomPaths[b.plan.room] + "layers")
	return g != nil && slices.ContainsFunc(g.words(), func(s span) bool {
		name := layered[plainKey(s.text)]
		return name == it.Name || harder[name] == it.Name
	})
}

// yields reports whether other work leaves less of a companion, or is being asked for it.
func (b *bringing) yields(w *work) bool {
	if b.asking[w] {
		return true
	}
	b.asking[w] = true // what takes its place may ask for it again
	defer delete(b.asking, w)
	under, beside := b.instead(w)
	return !under.none() || !beside.none()
}

// origins is all work that several pieces of work stem from.
func (b *bringing) origins(works []*work) (out []*work) {
	for _, l := range b.layers(works) {
		out = joined(out, l.works)
	}
	return out
}

// once leaves out of work that lies side by side what is done to a part of the rest of it.
func (b *bringing) once(works []*work) []*work {
	held := map[*work]bool{}
	for _, w := range works {
		same := sameMeasure(w.item, w.bringers)
		of := b.origins(same)
		switch {
		case len(of) == 0:
		case len(same) < len(w.bringers): // more than what brings it by this measure
			for _, o := range of {
				held[o] = held[o] || !b.yields(w)
			}
		case allIn(of, works) && !w.item.ForEach: // of which each of them takes its own
			held[w] = true
		}
	}
	return slices.DeleteFunc(slices.Clone(works), func(w *work) bool { return held[w] })
}

// sameMeasure is the work among what brings a companion that goes by its measure or surface.
func sameMeasure(it *pricebook.Item, by []brought) (out []*work) {
	for _, x := range by {
		if asMuch(it, x.by.item) {
			out = append(out, x.by)
		}
	}
	return out
}

// eachWith are layers side by side with others, each with each.
func eachWith(layers, others []layer) (out []layer) {
	for _, a := range layers {
		for _, b := range others {
			out = withMore(out, a.beside(b))
		}
	}
	return out
}

// withMore are layers with those of others that hold more than each of them.
func withMore(layers []layer, others ...layer) []layer {
	for _, o := range others {
		if !slices.ContainsFunc(layers, o.in) {
			layers = append(slices.DeleteFunc(layers, func(l layer) bool { return l.in(o) }), o)
		}
	}
	if len(layers) <= mostLayers {
		return layers
	}
	var all layer
	for _, l := range layers {
		all = all.beside(l)
	}
	return []layer{{works: all.works}}
}

func allIn[T comparable](some, all []T) bool {
	return !slices.ContainsFunc(some, func(x T) bool { return !slices.Contains(all, x) })
}

// joined is what is in one list or the other, each once.
func joined[T comparable](one, other []T) []T {
	out := slices.Clone(one)
	for _, x := range other {
		if !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	return out
}
