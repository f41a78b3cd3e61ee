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

// onOldOnes are items that make a thing new as it stands there, so that it is not taken out. Never
// written to.
var onOldOnes = []string{"paint cabinets", "tub reglazed"}

// doubtOldOnes doubts work on the old ones of a thing, all of them, beside work that takes all of them
// out, where nothing else of the option or of a line puts new ones in.
func (r *reader) doubtOldOnes(p *plan) {
	for _, w := range p.works {
		thing := r.takesOut(p, w)
		i := slices.IndexFunc(p.works, func(x *work) bool {
			return slices.Contains(onOldOnes, x.item.Name) && x.item.Thing() == thing && r.allOf(x)
		})
		if thing == "" || i < 0 || w.by != "" || !r.allOf(w) {
			continue
		}
		old := p.works[i]
		others := func(x *work) bool { return x.item != old.item && r.makes(x.item, thing) }
		told := func(m *model.Member) bool { return namesThing(m.Label, thing) }
		if !slices.ContainsFunc(p.works, others) && !slices.ContainsFunc(r.deal.Root.In("cost"), told) {
			r.say("done-twice", old.at, "%s takes out all of the %s of %s, and %s is for old ones that stay", diag.Quote(w.label), thing, p.room.Label, diag.Quote(old.label))("keep one of them, or say how much each is for, with   part: 50%%   or   count:")
		}
	}
}

// takenOutFor reports whether work of an option takes out what an item would make new.
func (r *reader) takenOutFor(p *plan, it *pricebook.Item) bool {
	return slices.ContainsFunc(p.works, func(w *work) bool {
		thing := r.takesOut(p, w)
		return thing != "" && r.leftFor(it, thing)
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
