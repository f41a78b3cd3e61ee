package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/pricebook"
)

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
	takesOut := (it.Trade == demolition || it.TakesOut != "") && !strings.HasSuffix(it.TakesOut, "finish") // which comes off what stays
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
