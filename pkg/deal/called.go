package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// callHouse lets work call for a piece of work on the whole house, which is done once
// however many call for it: by own hands if any that calls for it works so.
func (r *reader) callHouse(p *plan, w *work, c pricebook.Companion) {
	if r.houseLeavesOut(c.Item) {
		return
	}
	planned := r.housePlans[c.Item]
	if slices.ContainsFunc(planned, func(p *plan) bool { return p.taken && (!r.allOptions || p.option.Label == onlyOption) }) {
		return // the file plans it itself or does without, whatever else is chosen
	}
	it := r.prices().Item(c.Item)
	if it == nil {
		return
	}
	key := called{it.Name, w.byOwnHands() && !it.Licence}
	b := r.calls[key]
	if b == nil {
		b = &work{item: it, label: it.Name, by: w.label, at: w.at, member: r.calledOption().Add("item", "", it.Name)}
		b.member.Pos = w.at
		if who, said := w.member.Given.Look("who"); said && !it.Licence {
			b.member.Give("who", who)
		}
		b.member.Give("called_for", model.Value{Number: one, Text: "brought by " + w.label, Pos: w.at})
		r.calls[key] = b
		r.callPlan.works = append(r.callPlan.works, b)
		if r.allOptions {
			for _, p := range planned {
				yields(callFor(p.option, b), w.at)
			}
		}
	}
	if p != r.callPlan {
		callFor(p.option, b)
		return
	}
	callFor(bringer(w, it.Name), b)
}

// meet has the house call for what options of the whole house bring plainly and other work
// once for the house, so that it is done once. Who does it is asked of all that bring it. What
// such an option brings by a count is done as it says, and not called for beside it: meet reports
// whether it is so whatever is chosen.
func (r *reader) meet(it *pricebook.Item) (stands bool) {
	for _, p := range r.plans {
		if p.room.Kind != "whole_house" || p == r.callPlan {
			continue
		}
		p.works = slices.DeleteFunc(p.works, func(w *work) bool {
			if w.item != it || w.by == "" {
				return false
			}
			if w.several() {
				if x := (ofPlan{p, w}); !slices.Contains(r.counted, x) { // met from a trade and from own hands
					r.counted = append(r.counted, x)
				}
				stands = stands || !r.allOptions && p.taken
				return false
			}
			for _, x := range w.bringers {
				r.callHouse(p, x.by, x.Companion)
			}
			p.option.Remove(w.member)
			return true
		})
	}
	return stands
}

// ofPlan is work with the option that does it.
type ofPlan struct {
	plan *plan
	work *work
}

// several reports whether work that is done once is counted as more.
func (w *work) several() bool {
	n, counted := w.member.Given.Look("measure")
	return counted && w.item.Measure == "one" && n.Number.GreaterThan(one)
}

// standCounted has what options bring by a count stand for the same that is called for.
func (r *reader) standCounted() {
	for _, x := range r.counted {
		for _, own := range []bool{false, true} {
			if b := r.calls[called{x.work.item.Name, own}]; b != nil {
				yields(callFor(x.plan.option, b), x.work.at)
			}
		}
	}
}

// uncall takes back work that is called for.
func (b *bringing) uncall(w *work) {
	for key, x := range b.reader.calls {
		if x == w {
			delete(b.reader.calls, key)
		}
	}
	b.drop(w)
	b.asked-- // which the loop adds
}

// called names work that options call for, by who would do it: where some call for it from
// a trade and others from own hands, both are there.
type called struct {
	item string
	own  bool
}

// bringer is work that is called for where it calls for more itself, as far as it is done.
func bringer(w *work, brings string) *model.Member {
	out := w.member.Add("bringer", "", brings)
	out.Pos = w.at
	return out
}

// callFor has an option, or work where it brings more, call for a piece of work.
func callFor(from *model.Member, b *work) *model.Member {
	caller := from.Add("caller", "", b.item.Name)
	caller.Pos = b.at
	caller.Link(b.member)
	return caller
}

// yields has a caller call for the same work done otherwise, so that this is not done.
func yields(caller *model.Member, at diag.Pos) {
	caller.Give("yields", model.Value{Number: one, Text: "done otherwise", Pos: at})
}

// doneOnce has work that is called for from a trade and from own hands done by own hands.
// Where all options are kept, the model decides by what is chosen.
func (r *reader) doneOnce() {
	if r.callPlan == nil {
		return
	}
	for _, hired := range slices.Clone(r.callPlan.works) {
		own := r.calls[called{hired.item.Name, true}]
		if own == nil || own == hired {
			continue
		}
		if r.allOptions {
			yields(callFor(bringer(own, hired.item.Name), hired), own.at)
			continue
		}
		for _, c := range hired.member.In("caller") {
			callFor(c.Parent, own)
			c.Parent.Remove(c)
		}
		r.callPlan.works = slices.DeleteFunc(r.callPlan.works, func(w *work) bool { return w == hired })
		r.called.Remove(hired.member)
	}
}

// houseLeavesOut reports whether the whole house does without.
func (r *reader) houseLeavesOut(name string) bool {
	for _, s := range r.houseWithout {
		if plainKey(s.text) == plainKey(name) {
			return true
		}
	}
	return false
}

// BroughtAlong is the option of the whole house under which stands what options of rooms
// bring once for the house.
const BroughtAlong = "brought along"

// calledOption is the option of the whole house under which what rooms call for
// stands.
func (r *reader) calledOption() *model.Member {
	if r.called == nil {
		r.called = r.wholeHouse().Add("option", "", BroughtAlong)
		r.callPlan = &plan{room: r.called.Parent, option: r.called}
		r.plans = append(r.plans, r.callPlan)
	}
	return r.called
}

// wholeHouse is the member of the house as a whole.
func (r *reader) wholeHouse() *model.Member {
	for _, m := range r.deal.Root.In("whole_house") {
		return m
	}
	return r.deal.Root.Add("room", "whole_house", "whole house")
}
