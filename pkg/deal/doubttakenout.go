package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// doubtTakenOut doubts work that takes all of a thing out, or brings along what does, where
// nothing of the option or of the whole house puts a new one in: one doubt for each option.
func (r *reader) doubtTakenOut(p *plan) {
	var out []*work
	var things []string
	for _, w := range p.works {
		thing := r.takesOut(p, w)
		if thing != "" && r.allOf(w) && !slices.Contains(things, thing) && !r.putBack(p, thing) { // once: plaster under board
			out, things = append(out, w), append(things, thing)
		}
	}
	if len(out) == 0 {
		return
	}
	names := r.makersOf(things)
	hint := "add what does, as   " + strings.Join(names, ": hired, ") + ": hired   ; where a quote holds it or it stays bare, write   without: [" + strings.Join(names, ", ") + "]"
	w, last := out[0], things[len(things)-1]
	switch {
	case len(out) > 1:
		r.say("not-put-back", w.at, "the old %s and %s of %s come out, and no work puts new ones in", strings.Join(things[:len(things)-1], ", "), last, p.room.Label)("%s", hint)
	case w.by == "":
		r.say("not-put-back", w.at, "%s takes out all of the %s of %s, and no work makes it new", diag.Quote(w.label), last, p.room.Label)("%s", hint)
	default:
		r.say("not-put-back", w.at, "%s brings %s, and no work makes the %s of %s new", diag.Quote(w.by), w.item.Name, last, p.room.Label)("%s", hint)
	}
}

// takenOutFor reports whether work of an option takes out what an item would make new.
func (r *reader) takenOutFor(p *plan, it *pricebook.Item) bool {
	return slices.ContainsFunc(p.works, func(w *work) bool {
		thing := r.takesOut(p, w)
		return thing != "" && r.standsFor(it, thing)
	})
}

// makersOf are items of the price book that make things, but for those that another of them
// brings along.
func (r *reader) makersOf(things []string) (names []string) {
	for _, thing := range things {
		brought := func(other string) bool { return other != thing && r.standsFor(r.itemNamed(r.maker(other)), thing) }
		if !slices.ContainsFunc(things, brought) {
			names = append(names, r.maker(thing))
		}
	}
	return names
}

// maker is the item of the price book to name for a thing: the first that makes it, mostly.
func (r *reader) maker(thing string) string {
	if name := returns[thing].work; name != "" {
		return name
	}
	for _, name := range r.prices().Items() {
		if r.prices().Item(name).Thing() == newThing(thing) {
			return name
		}
	}
	return "new " + thing
}
