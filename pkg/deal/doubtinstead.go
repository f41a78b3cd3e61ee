package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
)

// doubtInstead doubts two pieces of work of one option that each make all of one thing: a
// laminate counter and one of stone, a new tub and the old one reglazed; and companions
// that come whole beside what is done in their place to a part.
func (r *reader) doubtInstead() {
	for _, p := range r.plans {
		first := map[string]*work{}
		for _, w := range p.works {
			thing := w.item.Thing()
			if thing == "" || w.by != "" || !r.allOf(w) {
				continue
			}
			if other := first[thing]; other != nil {
				r.say("done-twice", w.at, "%s and %s both make all of the %s of %s", diag.Quote(other.label), diag.Quote(w.label), thing, p.room.Label)("keep one of them, or say how much each is for, with   part: 50%%   or   count:")
				continue
			}
			first[thing] = w
		}
		r.doubtBoth(p)
		for _, x := range p.beside {
			r.say("part-instead", x[1].at, "%s is done to a part of %s, so %s comes along whole", diag.Quote(x[1].label), p.room.Label, diag.Quote(x[0].label))("leave that out with   without: [%s]   or write it as work of its own, with its   count:", x[0].item.Name)
		}
	}
}

// doubtBoth doubts work of one option beside work that is in place of it or has it in it: the
// old base set back and a new one, casing and door casing.
func (r *reader) doubtBoth(p *plan) {
	told := map[*work]bool{}
	for _, w := range p.works {
		for _, x := range p.works {
			if told[x] || !slices.Contains(w.item.InsteadOf, x.item.Name) || w.by != "" && x.by != "" || !r.allOf(w) || !r.allOf(x) {
				continue
			}
			told[x] = true
			at, leave := x.at, "leave "+x.item.Name+" out"
			if x.by != "" {
				at, leave = w.at, "leave it out with   without: ["+x.item.Name+"]  "
			}
			r.say("done-twice", at, "%s is in place of %s in %s, and both are done to all of it", diag.Quote(w.label), diag.Quote(x.label), p.room.Label)("%s, or say how much each is for, with   part: 50%%   or   count:", leave)
		}
	}
}

// allOf reports whether work is done to all of its measure.
func (r *reader) allOf(w *work) bool {
	if w.by != "" && w.member.Given.Of("measure").Refers == "" {
		return false
	}
	part, said := w.member.Given.Look("part")
	return r.good(w.scope.path+"count") == nil && (!said || part.Number.GreaterThanOrEqual(one))
}
