package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// callHouse lets an option call for a piece of work on the whole house, which is done
// once however many call for it: by own hands if any that calls for it works so.
func (r *reader) callHouse(p *plan, w *work, c pricebook.Companion) {
	if r.houseLeavesOut(c.Item) {
		return
	}
	planned := r.housePlans[c.Item]
	if slices.ContainsFunc(planned, func(p *plan) bool { return p.taken && (!r.allOptions || p.option.Label == onlyOption) }) {
		return // the file plans it itself, whatever else is chosen
	}
	it := r.prices().Item(c.Item)
	if it == nil {
		return
	}
	who, said := w.member.Given.Look("who")
	said = said && !it.Licence
	key := called{c.Item, hired}
	switch {
	case said && who.Choice == "own":
		key.by = ownHands
	case w.byOwnHands():
		key.by = forOwnHands
	}
	b := r.calls[key]
	if b == nil {
		b = &work{item: it, label: it.Name, by: w.label, own: key.by > hired, at: w.at, member: r.calledOption().Add("item", "", it.Name)}
		b.member.Pos = w.at
		if said {
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
	callers := w.member.In("caller")
	if len(callers) == 0 {
		callFor(p.option, b)
	}
	for _, c := range callers {
		if !yielding(c) {
			callFor(c.Parent, b)
		}
	}
}

// called names work that options call for, by who would do it.
type called struct {
	item string
	by   doer
}

// A doer of work that is called for: a trade, a trade because of own work, own hands.
// Of several only the last is taken.
type doer int

const (
	hired doer = iota
	forOwnHands
	ownHands
)

func callFor(option *model.Member, b *work) *model.Member {
	caller := option.Add("caller", "", b.item.Name)
	caller.Pos = b.at
	caller.Link(b.member)
	return caller
}

// doneOnce has work that is called for from several doers done by the last of them.
// Where all options are kept, the model decides by what is chosen.
func (r *reader) doneOnce() {
	if r.callPlan == nil {
		return
	}
	for _, w := range slices.Clone(r.callPlan.works) {
		callers := w.member.In("caller")
		for by := ownHands; by > hired; by-- {
			first := r.calls[called{w.item.Name, by}]
			if first == w {
				break
			}
			if first == nil {
				continue
			}
			if r.allOptions {
				yield(w, first)
				continue
			}
			r.callPlan.works = slices.DeleteFunc(r.callPlan.works, func(x *work) bool { return x == w })
			for _, c := range callers {
				callFor(c.Parent, first)
				c.Parent.Remove(c)
			}
			r.called.Remove(w.member)
			break
		}
	}
}

// yield has work left undone where the same work is called for from another doer.
func yield(w, first *work) {
	for _, c := range first.member.In("caller") {
		if !yielding(c) {
			yields(callFor(c.Parent, w), w.at)
		}
	}
}

// yields has a caller call for the same work done otherwise, so that this is not done.
func yields(caller *model.Member, at diag.Pos) {
	caller.Give("yields", model.Value{Number: one, Text: "done otherwise", Pos: at})
}

// yielding reports whether a caller has work left undone that is done otherwise.
func yielding(caller *model.Member) bool { return caller.Given.Of("yields").Number.IsPositive() }

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
