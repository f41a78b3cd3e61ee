package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// bring adds to a plan what its work brings along, and what that brings, each once.
// What the option says it does without is left out.
func (r *reader) bring(p *plan) {
	place := r.place(p)
	left := map[string]bool{}
	for i := 0; i < len(p.works); i++ { // the list grows
		w := p.works[i]
		if w.scope.path != "" && r.good(w.scope.path+"count") != nil {
			r.measureOf(p, w) // so that what comes along follows the count
		}
		place.OwnHands = w.byOwnHands()
		for _, c := range w.item.Brings {
			switch {
			case !c.Comes(place) || slices.ContainsFunc(c.Unless, p.has):
			case w.broughtByQuote(c, r.prices()):
				if !p.has(c.Item) {
					w.includes = append(w.includes, c.Item)
				}
			case p.leavesOut(c.Item):
				left[plainKey(c.Item)] = true
			case c.House || p == r.callPlan:
				r.callHouse(p, w, c)
			case !p.has(c.Item):
				r.along(p, w, r.prices().Item(c.Item))
			}
		}
	}
	for _, s := range p.without {
		if name := plainKey(s.text); !left[name] && !p.houseLeaves(name) {
			r.unneeded(s)
		}
	}
}

// along adds one piece of work that another brings.
func (r *reader) along(p *plan, w *work, it *pricebook.Item) {
	if it == nil { // a test follows every name of the starter book, and Read those of an owner's
		return
	}
	m := p.option.Add("item", "", it.Name)
	m.Pos = w.at
	b := &work{item: it, member: m, label: it.Name, by: w.label, own: w.byOwnHands(), at: w.at}
	if who, ok := w.member.Given.Look("who"); ok && !it.Licence {
		m.Give("who", who)
	}
	if it.Measure == w.item.Measure {
		for _, line := range []string{"measure", "part"} {
			if v, ok := w.member.Given.Look(line); ok && (line == "measure" || it.ShareByAge == "") {
				m.Give(line, v)
			}
		}
	}
	p.works = append(p.works, b)
}

// byOwnHands reports whether it, or what brought it, is by own hands.
func (w *work) byOwnHands() bool { return w.own || w.member.Given.Of("who").Choice == "own" }

// broughtByQuote reports whether a companion is work of the trade that quotes for all
// of it, materials and labour: the quote has it in already.
func (w *work) broughtByQuote(c pricebook.Companion, book *pricebook.Book) bool {
	if w.member.Given.Of("quote_covers").Choice != "all" {
		return false
	}
	it := book.Item(c.Item)
	return it != nil && it.Trade == w.item.Trade
}

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

func (r *reader) unneeded(s span) {
	name := plainKey(s.text)
	if r.itemNamed(name) == nil {
		tell := r.say("unknown-item", s.at, "the price book has no item %s", diag.Quote(s.text))
		if near, ok := diag.Nearest(name, r.prices().Items()); ok {
			tell("did you mean %q?", near)
			return
		}
		tell("write the name of something that the work brings along")
		return
	}
	r.say("without-unneeded", s.at, "nothing here would bring %s along", diag.Quote(s.text))("leave it out")
}

// callHouse lets an option call for a piece of work on the whole house, which is done
// once however many call for it: by own hands if any that calls for it works so.
func (r *reader) callHouse(p *plan, w *work, c pricebook.Companion) {
	if r.houseLeavesOut(c.Item) {
		return
	}
	if r.housePlans[c.Item] {
		return // the file plans it itself, in one of the options of the whole house
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
	}
	for _, option := range callersOf(p, w) {
		callFor(option, b)
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
				r.yield(w, first)
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
func (r *reader) yield(w, first *work) {
	for _, c := range first.member.In("caller") {
		if !c.Given.Of("yields").Number.IsPositive() {
			callFor(c.Parent, w).Give("yields", model.Value{Number: one, Text: "by own hands", Pos: w.at})
		}
	}
}

// callersOf are the options that call for what a piece of work brings: its own or, for
// what is itself called for, those that call for it.
func callersOf(p *plan, w *work) []*model.Member {
	callers := w.member.In("caller")
	if len(callers) == 0 {
		return []*model.Member{p.option}
	}
	var out []*model.Member
	for _, c := range callers {
		out = append(out, c.Parent)
	}
	return out
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

// calledOption is the option of the whole house under which what rooms call for
// stands.
func (r *reader) calledOption() *model.Member {
	if r.called == nil {
		r.called = r.wholeHouse().Add("option", "", "brought along")
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

// place is what conditions of companions ask about.
func (r *reader) place(p *plan) pricebook.Place {
	count := func(set, line, word string) bool {
		return slices.ContainsFunc(p.room.In(set), func(m *model.Member) bool { return m.Given.Of(line).Choice == word })
	}
	out := pricebook.Place{
		Kind: r.roomKinds[p.room], YearBuilt: r.deal.YearBuilt, UtilitiesOff: r.deal.UtilitiesOff,
		Tub: count("fitting", "sort", "tub"), Windows: count("opening", "kind", "window"), Doors: count("opening", "kind", "door"),
	}
	path := r.roomPaths[p.room]
	if g := r.good(path + "dark walls"); g != nil {
		out.DarkWalls = g.number.IsPositive()
	}
	if g := r.good(path + "layers"); g != nil {
		out.CarpetBelow = slices.ContainsFunc(g.words(), func(s span) bool { return plainKey(s.text) == "carpet" })
	}
	return out
}
