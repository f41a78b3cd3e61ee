package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// named reports whether the file itself names the item in the plan.
func (p *plan) named(name string) bool {
	return slices.ContainsFunc(p.works, func(w *work) bool { return w.item.Name == name && w.by == "" })
}

func (p *plan) has(name string) bool {
	return slices.ContainsFunc(p.works, func(w *work) bool { return w.item.Name == name })
}

func (p *plan) leavesOut(name string) bool {
	return slices.ContainsFunc(p.without, func(s span) bool { return plainKey(s.text) == plainKey(name) })
}

// houseLeaves reports whether what is left out would come for the whole house.
func (p *plan) houseLeaves(name string) bool {
	return slices.ContainsFunc(p.works, func(w *work) bool {
		return slices.ContainsFunc(w.item.Brings, func(c pricebook.Companion) bool { return c.House && plainKey(c.Item) == name })
	})
}

// callsFor reports whether work of any room, or what that brings, could call for what an
// option of the whole house does without: also work of options that this scope does not take,
// but for those that it is taken instead of.
func (r *reader) callsFor(p *plan, name string) bool {
	if p.room.Kind != "whole_house" {
		return false
	}
	type asking struct {
		it    *pricebook.Item
		house bool // it comes once for the house, and so does what it brings
	}
	asked := map[asking]bool{}
	var calls func(a asking) bool
	calls = func(a asking) bool {
		if a.it == nil || asked[a] {
			return false
		}
		asked[a] = true
		return slices.ContainsFunc(a.it.Brings, func(c pricebook.Companion) bool {
			house := a.house || c.House
			return house && plainKey(c.Item) == name || calls(asking{r.book.Item(c.Item), house})
		})
	}
	return slices.ContainsFunc(r.inFile, func(q *plan) bool {
		return (q == p || q.room != p.room) &&
			(slices.ContainsFunc(q.works, func(w *work) bool { return calls(asking{it: w.item}) }) ||
				slices.ContainsFunc(r.peels(q), func(name string) bool { return calls(asking{it: r.book.Item(name)}) }))
	})
}

// idleLeft are the names that an option does without though none would have come, be it through
// others of them: a quote that holds these holds what they bring, too.
func (b *bringing) idleLeft() (out []span) {
	through := map[string]bool{}
	var follow func(it *pricebook.Item)
	follow = func(it *pricebook.Item) {
		if it == nil || through[plainKey(it.Name)] {
			return
		}
		through[plainKey(it.Name)] = true
		for _, c := range it.Brings {
			if b.place.OwnHands = c.If == "own hands"; c.Comes(b.place) { // whoever would have done it
				follow(b.book.Item(c.Item))
			}
		}
	}
	for _, s := range b.plan.without {
		if name := plainKey(s.text); b.wouldCome(name) {
			follow(b.itemNamed(name))
		} else {
			out = append(out, s)
		}
	}
	return slices.DeleteFunc(out, func(s span) bool { return through[plainKey(s.text)] })
}

// wouldCome reports whether what is left out would come along with what is done.
func (b *bringing) wouldCome(name string) bool {
	p := b.plan
	return b.left[name] || b.peelLeaves(p, name) || p.houseLeaves(name) || b.houseLeavesOut(name) || b.callsFor(p, name)
}

// brings are the names of what work of a plan brings along, also once for the house, by name.
func (r *reader) brings(p *plan) (out []string) {
	place := r.place(p)
	for _, w := range p.works {
		if w.by != "" {
			out = append(out, w.item.Name)
		}
		place.OwnHands = w.byOwnHands()
		for _, c := range w.item.Brings {
			if c.House && c.Comes(place) {
				out = append(out, c.Item)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func (r *reader) unneeded(p *plan, s span) {
	name := plainKey(s.text)
	if r.inLost(name) {
		return
	}
	if r.itemNamed(name) == nil {
		tell := r.say("unknown-item", s.at, "the price book has no item %s", diag.Quote(s.text))
		brings := r.brings(p)
		near, ok := diag.Nearest(name, brings)
		if !ok {
			near, ok = diag.Nearest(name, r.prices().Items())
		}
		switch {
		case strings.ContainsAny(s.text, ",;"):
			tell("write several in brackets:   without: [%s]", strings.ReplaceAll(s.text, ";", ","))
		case ok:
			tell("did you mean %q?", near)
		case brings == nil:
			tell("the work brings nothing along; leave it out")
		default:
			tell("the work brings along: %s", strings.Join(brings, ", "))
		}
		return
	}
	if it := r.itemNamed(name); r.takenOutFor(p, it) || framedFor(p, it) || r.openedFor(p, it) {
		return // it says that nothing new is wanted for what comes out, or on a wall that is framed, or that none need be stripped
	}
	r.say("without-unneeded", s.at, "nothing here would bring %s along", diag.Quote(s.text))("leave it out")
}
