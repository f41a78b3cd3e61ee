package deal

import (
	"cmp"

	"ledgerboard/pkg/diag"
)

// doubtInstead doubts two pieces of work of one option that each make all of one thing: a
// laminate counter and one of stone, a new tub and the old one reglazed.
func (r *reader) doubtInstead() {
	for _, p := range r.plans {
		first := map[string]*work{}
		for _, w := range p.works {
			thing := w.item.Makes
			if w.item.NewFloor {
				thing = cmp.Or(thing, "floor")
			}
			if thing == "" || w.by != "" || !r.allOf(w) {
				continue
			}
			if other := first[thing]; other != nil {
				r.say("done-twice", w.at, "%s and %s both make all of the %s of %s", diag.Quote(other.label), diag.Quote(w.label), thing, p.room.Label)("keep one of them, or say how much each is for, with   part: 50%%   or   count:")
				continue
			}
			first[thing] = w
		}
	}
}

// allOf reports whether work is done to all of its measure.
func (r *reader) allOf(w *work) bool {
	part, said := w.member.Given.Look("part")
	return r.good(w.scope.path+"count") == nil && (!said || part.Number.GreaterThanOrEqual(one))
}
