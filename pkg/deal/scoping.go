package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// scoping is what the reader keeps of rooms and their work while it reads.
type scoping struct {
	book                    *pricebook.Book // nil before it is asked for
	plans                   []*plan
	inFile                  []*plan                   // all of them, also those that the scope does not take
	itemNames, productNames map[string]string         // of the book, by evened-out spelling
	leads                   map[chain]map[string]bool // what items could bring in the end, by name
	hourly                  map[string]bool           // the trades that work of any option pays by the hour
	roomKinds               map[*model.Member]string
	roomPaths               map[*model.Member]string
	products                map[string]*model.Member // by label
	picks                                            // the scope
	ownPicks                picks                    // that of the file, where a --set asks for another
	unnamed                 []*model.Member          // options taken of rooms that the scope does not name, where there are others
	allOptions              bool
	moved                   decimal.Decimal        // how far the value moves with another scope than the file's, in dollars
	lost                    func(name string) bool // whether a refused own book may have had it; nil if none was refused

	called       *model.Member // the option of the whole house with what rooms call for
	callPlan     *plan
	calls        map[called]*work
	houseWithout []span
	counted      []ofPlan           // what options of the whole house bring by a count and others call for
	housePlans   map[string][]*plan // by item, the options of the whole house that name it or do without
	measures     *extents           // of the rooms; nil before they are asked for
}

func newScoping() scoping {
	return scoping{
		hourly:    map[string]bool{},
		roomKinds: map[*model.Member]string{}, roomPaths: map[*model.Member]string{},
		products: map[string]*model.Member{}, calls: map[called]*work{}, housePlans: map[string][]*plan{},
	}
}

// prices are the price book: the file's own, or the one that ships.
func (r *reader) prices() *pricebook.Book {
	if r.book == nil {
		r.book = pricebook.Starter()
	}
	return r.book
}

// Options say how a deal file is read.
type Options struct {
	// Open returns the text of a file that the deal file names, such as a price book.
	Open func(name string) ([]byte, error)
	// AllOptions keeps every option of every room, chosen or not, so that a search can
	// choose among them.
	AllOptions bool
	// Comps is what is asked of the comparables beside the file.
	Comps CompsAsked
}

// groupMember is the member whose lines the keys of a group feed.
func (r *reader) groupMember(s scope, f *Field, at diag.Pos) *model.Member {
	switch f.Path {
	case "outside":
		m := s.member.Add("room", "outside", "outside")
		m.Pos = at
		return m
	case "whole house":
		m := r.wholeHouse()
		m.Pos = at
		return m
	}
	return s.member
}

// words are the entries of a list of words, or the single one.
func (g *reading) words() []span {
	if g.node.shape == scalar {
		return []span{g.node.span}
	}
	var out []span
	for _, n := range g.node.items {
		if n.shape == scalar {
			out = append(out, n.span)
		}
	}
	return out
}

func (r *reader) wordsField(f *Field, g *reading) {
	for _, n := range r.each(f, g) {
		g.ok = r.one(f, n) && g.ok
	}
	if f.Path == "whole house.without" {
		r.houseWithout = g.words()
	}
}

// finishOption makes the plan of an option, also of one without work.
func (r *reader) finishOption(s scope, _ *entry) {
	var p *plan
	for _, q := range r.plans {
		if q.option == s.member {
			p = q
		}
	}
	if p == nil {
		p = &plan{room: s.member.Parent, option: s.member, scope: s, at: s.at}
		r.plans = append(r.plans, p)
	}
	if g := r.good(s.path + "without"); g != nil {
		p.without = g.words()
	}
}

// beside has work that stands outside of options do without what is named beside it.
func (r *reader) beside() {
	for _, p := range r.plans {
		if g := r.good(p.scope.path + "without"); g != nil && p.option.Label == onlyOption {
			p.without = g.words()
		}
	}
	places := []string{"outside."}
	for _, room := range r.deal.Root.In("inside") {
		places = append(places, r.roomPaths[room])
	}
	for _, path := range places {
		g := r.good(path + "without")
		if g == nil || slices.ContainsFunc(r.plans, func(p *plan) bool { return p.scope.path == path }) {
			continue
		}
		for _, s := range g.words() {
			r.say("without-unneeded", s.at, "no work here would bring %s along", diag.Quote(s.text))("write it under the option whose work does, or leave it out")
		}
	}
}

// roof reads the area of a roof, or its parts.
func (r *reader) roof(s scope, f *Field, g *reading) {
	if g.node.shape == scalar {
		v := model.Value{Text: g.node.text, Key: f.Key(), Pos: g.node.at}
		area := *f
		area.Kind = Area
		if g.ok = r.number(&area, g, &v); g.ok {
			s.member.Give("roof", v)
		}
		if _, err := quantity.ParseSize(g.node.text); g.ok && err == nil {
			r.say("roof-size", g.at(), "roof is %s, which counts as %s along the slope", diag.Quote(g.node.text), sqFeet(v.Number))("a size in plan goes into a part of the roof, with its pitch:   roof: [{size: %s, pitch: 6/12}]   ; if it is measured along the slope, write   roof: %s sq ft", g.node.text, v.Number.Round(2))
		}
		return
	}
	if !r.wants(f, g, list) {
		return
	}
	g.ok = true
	for i, item := range g.node.items {
		m := s.member.Add("plane", "", sectionLabel(&Field{Path: "parts"}, i, 2))
		m.Pos = item.at
		inner := scope{path: s.path + "roof." + m.Label + ".", group: "<plane>", member: m, at: item.at}
		switch item.shape {
		case refused:
		case mapping:
			r.group(inner, item)
			if r.of(inner, "size") == nil && !r.odd[inner.path] {
				r.say("plane-without-size", item.at, "the part of the roof has no size")("add   size: 40' x 28'   , its length and width in plan")
			}
		default:
			r.say("want-group", item.at, "a part of the roof is %s, not a group of keys", item.shape.words())("write it like   - {size: 40' x 28', pitch: 6/12}")
		}
	}
}
