package deal

import (
	"cmp"
	"slices"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// bring adds to a plan what its work brings along, and what that brings, each once.
// What the option says it does without is left out. The order of the work in the file
// changes nothing.
func (r *reader) bring(p *plan) {
	b := &bringing{reader: r, plan: p, place: r.place(p), left: map[string]bool{}, laid: map[string]map[*work]footprint{}}
	for again := true; again; again = b.fromShelf() || b.intoQuotes() {
		for b.close(); len(b.later) > 0; b.close() {
			b.round()
		}
	}
	b.amounts()
	b.rests()
	for _, x := range b.calls {
		b.place.OwnHands = x.by.byOwnHands()
		if x.Comes(b.place) && !p.named(x.Item) { // named, it stands for what the room calls for
			r.callHouse(p, x.by, x.Companion)
		}
	}
	for _, h := range b.held {
		h.within.holds = append(h.within.holds, h)
	}
	for _, s := range b.idleLeft() {
		r.unneeded(p, s)
	}
}

// bringing is the work of a plan while it brings its companions.
type bringing struct {
	*reader
	plan      *plan
	place     pricebook.Place
	left      map[string]bool                // what the option says it does without
	asked     int                            // how much work of the plan was asked for its companions
	later     []brought                      // those that wait for what is done besides
	shelf     []brought                      // those of which what is done besides leaves nothing so far
	calls     []brought                      // those for the whole house
	held      []*work                        // those that quotes hold already
	opened    int                            // how many of these were asked for what they bring
	laid      map[string]map[*work]footprint // by measure
	laying    bool                           // work on parts of what is laid, which is not asked for these again
	reckoning reckoning
}

// brought is a companion and what brings it.
type brought struct {
	pricebook.Companion
	by *work
}

// broughtBy reports whether work is a companion of other work, be it of more too.
func (w *work) broughtBy(by *work) bool {
	return slices.ContainsFunc(w.bringers, func(x brought) bool { return x.by == by })
}

// close asks all work for the companions that come whatever else is done.
func (b *bringing) close() {
	for again := true; again; again = b.share() {
		for ; b.asked < len(b.plan.works); b.asked++ { // the list grows
			w := b.plan.works[b.asked]
			if b.plan == b.callPlan && b.meet(w.item) {
				b.uncall(w)
				continue
			}
			if w.scope.path != "" && b.good(w.scope.path+"count") != nil {
				b.measureOf(b.plan, w) // so that what comes along follows the count
			}
			b.ask(w)
		}
		for b.opened < len(b.held) {
			b.opened++
			b.ask(b.held[b.opened-1])
			b.close()
		}
	}
}

func (b *bringing) ask(w *work) {
	for _, c := range w.item.Brings {
		c.House = c.House || w.within != nil && w.bringers[0].House // what is done once for the house brings so
		b.askFor(brought{c, w})
	}
}

func (b *bringing) askFor(x brought) {
	same := func(y brought) bool {
		return y.Item == x.Item && y.If == x.If && slices.Equal(y.Unless, x.Unless) && y.by == x.by
	}
	switch {
	case len(x.Unless) == 0:
		b.one(x)
	case !slices.ContainsFunc(b.later, same) && !slices.ContainsFunc(b.shelf, same):
		b.later = append(b.later, x)
	}
}

// share has what several pieces of work bring done by own hands if any of them is, asks it
// for what comes only then, and reports whether there was any.
func (b *bringing) share() (any bool) {
	for _, w := range b.plan.works {
		i := slices.IndexFunc(w.bringers, func(x brought) bool { return x.by.byOwnHands() })
		if i < 0 || w.item.Licence || w.byOwnHands() {
			continue
		}
		by := w.bringers[i].by
		w.member.Give("who", by.member.Given.Of("who"))
		w.by, any = by.label, true
		for _, c := range w.item.Brings {
			if b.place.OwnHands = false; !c.House && !c.Comes(b.place) {
				b.askFor(brought{c, w})
			}
		}
	}
	return any
}

// ofOne brings a companion along that all those of its name among some bring, if what is
// done in its place leaves any of it.
func (b *bringing) ofOne(name string, among []brought) {
	other := func(x brought) bool { return x.Item != name }
	by := slices.DeleteFunc(slices.Concat(b.shelf, among), other)
	if b.leaves(name, by) {
		b.shelf = slices.DeleteFunc(b.shelf, func(x brought) bool { return !other(x) })
		for _, x := range by {
			b.one(x)
		}
		return
	}
	b.shelf = append(b.shelf, slices.DeleteFunc(slices.Clone(among), other)...)
}

// fromShelf asks anew for what was put off and of which something is left by now, as more is done of what
// brings it, and reports whether there is any.
func (b *bringing) fromShelf() (any bool) {
	put := b.shelf
	b.shelf = nil
	for _, x := range put {
		other := func(y brought) bool { return y.Item != x.Item }
		if b.leaves(x.Item, slices.DeleteFunc(slices.Clone(put), other)) {
			b.later, any = append(b.later, x), true
		} else {
			b.shelf = append(b.shelf, x)
		}
	}
	return any
}

// leaves reports whether what is done in place of a companion leaves any of it.
func (b *bringing) leaves(name string, by []brought) bool {
	it := b.book.Item(name)
	if it == nil || by[0].House || b.plan == b.callPlan {
		return true
	}
	trial := &work{item: it, bringers: by}
	if !b.yields(trial) {
		return true
	}
	for _, w := range b.plan.works {
		if w.item == it {
			trial.bringers = append(slices.Clone(w.bringers), by...)
			break
		}
	}
	return b.amount(trial).of(b.all(it.Measure)).IsPositive()
}

// one brings one companion along, or notes what becomes of it.
func (b *bringing) one(x brought) {
	p, w := b.plan, x.by
	b.place.OwnHands = x.House && !w.quotedAll() || w.byOwnHands() // of the whole house it is asked later
	switch {
	case !x.Comes(b.place):
	case p.leavesOut(x.Item):
		b.left[plainKey(x.Item)] = true
	case b.nothing(x):
		p.idle = append(p.idle, x)
	case w.broughtByQuote(x.Companion, b.book) && !p.named(x.Item):
		b.hold(x, b.book.Item(x.Item))
	case p == b.callPlan:
		b.place.OwnHands = w.byOwnHands()
		if x.Comes(b.place) {
			b.callHouse(p, w, x.Companion)
		}
	case x.House:
		b.calls = append(b.calls, x)
	case !p.has(x.Item):
		b.along(p, x, b.book.Item(x.Item))
	default:
		for _, there := range p.works {
			if there.item.Name == x.Item && there.by != "" {
				there.bringers = append(there.bringers, x)
			}
		}
	}
}

// hold keeps work that a quote has in it already, in the room or once for the house; what
// that brings of other trades is not in the quote.
func (b *bringing) hold(x brought, it *pricebook.Item) {
	w := x.by
	quote := cmp.Or(w.within, w)
	if i := slices.IndexFunc(b.held, func(h *work) bool { return h.within == quote && h.item == it && h.bringers[0].House == x.House }); i >= 0 {
		b.held[i].bringers = append(b.held[i].bringers, x)
		return
	}
	m := &model.Member{Set: "item", Label: it.Name} // which costs nothing, for it is none of the option's
	for _, line := range []string{"who", "quote_covers"} {
		if v, said := w.member.Given.Look(line); said {
			m.Give(line, v)
		}
	}
	b.held = append(b.held, &work{item: it, member: m, label: quote.label, by: quote.label, within: quote, at: quote.at, bringers: []brought{x}})
}

// nothing reports whether there is nothing to do a companion to: it is not done then, brings
// nothing and decides nothing.
func (b *bringing) nothing(x brought) bool {
	it := b.book.Item(x.Item)
	switch {
	case it == nil:
		return false
	case x.House || b.plan == b.callPlan:
		return b.nothingOf(nil, *pricebook.MeasureNamed(it.Measure))
	}
	if follows(it, x.by.item) && b.amount(x.by).counted.IsPositive() {
		return false
	}
	return b.nothingOf(b.plan.room, *pricebook.MeasureNamed(it.Measure))
}

// along adds one piece of work that another brings.
func (r *reader) along(p *plan, x brought, it *pricebook.Item) {
	if it == nil { // a test follows every name of the starter book, and Read those of an owner's
		return
	}
	w := x.by
	m := p.option.Add("item", "", it.Name)
	m.Pos = w.at
	if who, ok := w.member.Given.Look("who"); ok && !it.Licence {
		m.Give("who", who)
	}
	p.works = append(p.works, &work{item: it, member: m, label: it.Name, by: w.label, at: w.at, bringers: []brought{x}})
}

// byOwnHands reports whether it is done by own hands, not by a trade.
func (w *work) byOwnHands() bool { return w.member.Given.Of("who").Choice == "own" }

// doer is who does it as the file would say.
func (w *work) doer() string {
	if w.byOwnHands() {
		return "own hands"
	}
	return "hired"
}

// broughtByQuote reports whether a companion is work of the trade that quotes for all
// of it, materials and labour: the quote has it in already.
func (w *work) broughtByQuote(c pricebook.Companion, book *pricebook.Book) bool {
	it := book.Item(c.Item)
	return w.quotedAll() && it != nil && it.Trade == w.item.Trade
}

// quotedAll reports whether a trade quotes for it, materials and labour.
func (w *work) quotedAll() bool { return w.member.Given.Of("quote_covers").Choice == "all" }

// place is what conditions of companions ask about.
func (r *reader) place(p *plan) pricebook.Place {
	count := func(set, line, word string) bool {
		return slices.ContainsFunc(p.room.In(set), func(m *model.Member) bool { return m.Given.Of(line).Choice == word })
	}
	out := pricebook.Place{
		Kind: r.roomKinds[p.room], YearBuilt: r.deal.YearBuilt, UtilitiesOff: r.deal.UtilitiesOff,
		Tub: count("fitting", "sort", "tub"), Shower: count("fitting", "sort", "shower"), Windows: count("opening", "kind", "window"), Doors: count("opening", "kind", "door"),
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
