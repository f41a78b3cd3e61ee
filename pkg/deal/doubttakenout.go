package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// doubtTakenOut doubts work that takes all of a thing out, or brings along what does, where
// nothing of the option or of the whole house puts a new one in: one doubt for each option.
func (r *reader) doubtTakenOut(p *plan) {
	var out []*work
	for _, w := range p.works {
		thing := w.item.TakesOut
		again := func(x *work) bool { return x.item.TakesOut == thing } // plaster under board
		if thing != "" && r.allOf(w) && !slices.ContainsFunc(out, again) && !r.putBack(p, thing) {
			out = append(out, w)
		}
	}
	if len(out) == 0 {
		return
	}
	names := r.makersOf(out)
	hint := "add what does, as   " + strings.Join(names, ": hired, ") + ": hired   ; where a quote holds it or it stays bare, write   without: [" + strings.Join(names, ", ") + "]"
	w, last := out[0], out[len(out)-1].item.TakesOut
	switch {
	case len(out) > 1:
		var things []string
		for _, x := range out[:len(out)-1] {
			things = append(things, x.item.TakesOut)
		}
		r.say("not-put-back", w.at, "the old %s and %s of %s come out, and no work puts new ones in", strings.Join(things, ", "), last, p.room.Label)("%s", hint)
	case w.by == "":
		r.say("not-put-back", w.at, "%s takes out all of the %s of %s, and no work makes it new", diag.Quote(w.label), last, p.room.Label)("%s", hint)
	default:
		r.say("not-put-back", w.at, "%s brings %s, and no work makes the %s of %s new", diag.Quote(w.by), w.item.Name, last, p.room.Label)("%s", hint)
	}
}

// inItsPlace is what else is put where a thing came out: a shower for a tub, a bare basin for
// a vanity.
func inItsPlace(thing string) []string {
	switch thing {
	case "tub":
		return []string{thing, "shower pan", "shower walls"}
	case "shower pan":
		return []string{thing, "shower walls", "tub"}
	case "vanity":
		return []string{thing, "sink"}
	case "floor":
		return []string{thing, pricebook.WoodFinish, "level floor"}
	}
	return []string{thing}
}

// putBack reports whether a thing is made new in an option or for the whole house, is named by
// a line of the file, or is said to be left out.
func (r *reader) putBack(p *plan, thing string) bool {
	made := func(x *work) bool { return r.makes(x.item, thing) }
	for _, o := range r.plans {
		if o == p || o.room.Kind == "whole_house" {
			left := func(s span) bool { return r.standsFor(r.itemNamed(plainKey(s.text)), thing) }
			if slices.ContainsFunc(o.works, made) || slices.ContainsFunc(o.without, left) {
				return true
			}
		}
	}
	told := func(m *model.Member) bool { return namesThing(m.Label, thing) }
	return slices.ContainsFunc(slices.Concat(r.deal.Root.In("cost"), r.deal.Root.In("general_fee")), told)
}

// makes reports whether an item makes a thing or what is put in its place; an owner's own item
// does where its name has the thing in it, and so does what finishes a bare floor.
func (r *reader) makes(it *pricebook.Item, thing string) bool {
	switch {
	case it == nil || it.TakesOut != "":
		return false
	case slices.Contains(inItsPlace(thing), it.Thing()):
		return true
	case thing == "floor" && it.Measure == "open floor" && (it.Trade == "paint" || strings.HasSuffix(it.Name, " wood floor")):
		return true
	}
	return pricebook.Starter().Item(it.Name) == nil && it.Trade != "demolition" && namesThing(it.Name, thing)
}

// standsFor reports whether an item makes just this thing or brings along what does.
func (r *reader) standsFor(it *pricebook.Item, thing string) bool {
	made := func(name string) bool { x := r.itemNamed(plainKey(name)); return x != nil && x.Thing() == thing }
	return it != nil && (it.Thing() == thing || slices.ContainsFunc(it.Brings, func(c pricebook.Companion) bool { return made(c.Item) }))
}

// namesThing reports whether a name has a thing in it, or what is put in its place: countertops
// for a counter, a vanity for vanities.
func namesThing(name, thing string) bool {
	return slices.ContainsFunc(inItsPlace(thing), func(t string) bool {
		first, _, _ := strings.Cut(t, " ")
		if first == "wall" {
			return false // a line for a wall tells nothing of its surface
		}
		stem := strings.TrimRight(first, "sy")
		return slices.ContainsFunc(strings.Fields(plainKey(name)), func(word string) bool { return strings.HasPrefix(word, stem) })
	})
}

// takenOutFor reports whether work of an option takes out what an item would make new.
func (r *reader) takenOutFor(p *plan, it *pricebook.Item) bool {
	return slices.ContainsFunc(p.works, func(w *work) bool { return w.item.TakesOut != "" && r.standsFor(it, w.item.TakesOut) })
}

// makersOf are the first items of the price book that make what work takes out, but for those
// that another of them brings along.
func (r *reader) makersOf(out []*work) (names []string) {
	for _, w := range out {
		thing := w.item.TakesOut
		if !slices.ContainsFunc(names, func(n string) bool { return r.standsFor(r.itemNamed(n), thing) }) {
			names = append(names, r.maker(thing))
		}
	}
	return names
}

// maker is the first item of the price book that makes a thing.
func (r *reader) maker(thing string) string {
	for _, name := range r.prices().Items() {
		if r.prices().Item(name).Thing() == thing {
			return name
		}
	}
	return "new " + thing
}
