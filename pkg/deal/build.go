package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// build makes members of the model out of the plans: it takes the options of the
// scope, lets work bring its companions, and says what each takes and costs.
func (r *reader) build() {
	r.beside()
	r.choose()
	for _, p := range slices.Clone(r.plans) {
		r.peel(p)
		r.bring(p)
	}
	if r.callPlan != nil {
		r.bring(r.callPlan)
	}
	r.doneOnce()
	r.standCounted()
	for p, w := range r.eachWork() {
		r.fill(p, w)
	}
}

// fill gives a piece of work what the price book says and the file does not.
func (r *reader) fill(p *plan, w *work) {
	it, m := w.item, w.member
	m.Link(r.trade(it.Trade))
	starter := pricebook.Starter().Item(it.Name) != nil // of an owner's own item nobody may have said
	r.deal.trade(it.Trade, it.Permit || !starter, it.Licence || !starter, it.IsWindow() || !starter)
	say := func(line string, x decimal.Decimal, text string) {
		if _, said := m.Given.Look(line); !said && !x.IsZero() {
			m.Give(line, model.Value{Number: x, Text: text, Pos: it.Pos})
		}
	}
	r.deal.Permitted = r.deal.Permitted || pricebook.IsPermit(it.Name)
	if it.HiredSource != pricebook.Invented && !it.Hired.IsZero() {
		say("own_labour_price", one, it.HiredSource)
	}
	r.hoursOf(w)
	rented := r.rented(w)
	r.measureOf(p, w)
	r.shareOf(w)
	say("hours_each", it.Hours, it.HoursSource)
	say("set_up", it.SetUp, it.HoursSource)
	if rented {
		r.rentAlone(w)
	} else {
		say("hired_price", it.Hired, it.HiredSource)
	}
	say("coats", decimal.NewFromInt(int64(it.Coats)), it.Source)
	r.hauled(w)
	say("debris_each", it.Debris, it.Source)
	say("weight_each", it.Weight, it.Source)
	say("waiting", it.Waits, it.Source)
	r.usesOf(p, w)
	all, rest := r.onlyHeld(p, w)
	r.deal.Work[m] = &Work{Item: it, By: w.by, Note: r.text(w, "note"), From: r.text(w, "from"), Dated: r.day(w, "dated"), Includes: all, IncludesRest: rest, AllBought: r.allowedAll(w), HoldsMore: r.quoteHoldsMore(w)}
}

// trade notes work of a trade, whether a permit or a licensed trade is usual for it, and whether
// it puts windows in.
func (d *Deal) trade(name string, permit, licence, window bool) {
	note := func(list *[]string, is bool) {
		if is && !slices.Contains(*list, name) {
			*list = append(*list, name)
		}
	}
	note(&d.Trades, true)
	note(&d.Permits, permit)
	note(&d.Licences, licence)
	note(&d.Windows, window)
}

// Work is what the deal keeps of a piece of work beside the model.
type Work struct {
	Item  *pricebook.Item
	By    string // the work that brought it along, or ""
	Note  string
	From  string // who quoted
	Dated string // the day of the quote, or ""
	// Includes is what else a quote for all of the work is taken to bring: what it would
	// bring along of the same trade, and what that would.
	Includes []string
	// IncludesRest is that of which it is taken to bring what other work, that is charged for it, leaves.
	IncludesRest []string
	// AllBought is whether its allowance stands for all that it buys, not for its first product alone.
	AllBought bool
	// HoldsMore is whether its quote holds other work too.
	HoldsMore bool
}

func (r *reader) text(w *work, key string) string {
	if g := r.good(w.scope.path + key); w.scope.path != "" && g != nil {
		return g.choice
	}
	return ""
}

func (r *reader) day(w *work, key string) string {
	if g := r.good(w.scope.path + key); w.scope.path != "" && g != nil {
		return g.date.String()
	}
	return ""
}

// usesOf gives a piece of work its products.
func (r *reader) usesOf(p *plan, w *work) {
	uses := slices.Clone(w.item.Uses)
	packs := make([]quantity.Pack, 0, len(uses))
	for _, u := range uses {
		packs = append(packs, r.prices().PackOf(u))
	}
	var price *reading
	if w.scope.path != "" {
		price = r.good(w.scope.path + "price")
		if len(uses) > 0 {
			r.firstUse(w, &uses[0])
		}
		_, found := w.member.Given.Look("allowance")
		switch {
		case r.allowedAll(w):
			uses, packs, price = nil, nil, nil
		case found && len(uses) > 0:
			uses, packs, price = uses[1:], packs[1:], nil // which is of the first, too
		}
	}
	for i, u := range uses {
		prod := r.prices().Product(u.Product)
		if prod == nil {
			continue // spoken of where the name stands
		}
		if price != nil && i == 0 && len(prod.Sticks) > 0 {
			tell := r.say("price-of-sticks", price.at(), "%s is sold by the stick, and a price here does not say of which length", prod.Name)
			tell("give each length its price in your own price book: %s: {sticks: {8 ft: $9, 12 ft: $14}}", prod.Name)
			price = nil
		}
		own := price
		if i > 0 || price == nil {
			own, w.products = nil, append(w.products, prod)
		}
		pm := r.product(prod, own)
		m := w.member.Add("use", "", u.Product)
		m.Pos = u.Pos
		m.Link(pm)
		give := func(line string, x decimal.Decimal) {
			if !x.IsZero() {
				m.Give(line, model.Value{Number: x, Text: u.Source, Pos: u.Pos})
			}
		}
		if prod.Roll != nil {
			r.drops(w, m, prod)
		} else {
			give("takes", u.TakesOf(prod, w.item))
			give("covers", u.Covers)
			if u.Covers.IsPositive() { // so that a pack that holds more, in a sheet too, does more
				give("covers_with", packs[i].Number)
			}
			give("for_the_job", u.ForJob)
		}
		give("waste", u.Waste)
		if u.PerCoat {
			m.Give("use_coats", model.Value{Refers: "coats", Text: "each coat", Pos: u.Pos})
		}
		if along := pricebook.MeasureNamed(u.Along); along != nil {
			switch {
			case p.measures(*along):
				m.Give("along", model.Value{Refers: along.Line, Text: u.Along, Pos: u.Pos})
				w.countedAlong(m)
			case w.by == "":
				r.say("measure-not-here", w.at, "%s takes %s by %s, which only %s has", w.label, u.Product, along.Name, onlyIn(*along))("put %s there", w.label)
			}
		}
	}
}

// firstUse lets the file change the product and the waste of the first material.
func (r *reader) firstUse(w *work, u *pricebook.Use) {
	if g := r.good(w.scope.path + "product"); g != nil {
		name := plainKey(g.choice)
		found := r.productNamed(name)
		if found == nil {
			if r.inLost(name) {
				return
			}
			tell := r.say("unknown-product", g.at(), "the price book has no product %s", diag.Quote(g.choice))
			if near, ok := diag.Nearest(name, r.prices().Products()); ok {
				tell("did you mean %q?", near)
			} else if all := r.prices().ProductsWith(name); len(all) > 0 && len(all) <= mostMeant {
				tell("did you mean one of these? %s", strings.Join(all, ", "))
			} else {
				tell("look for it with   %s   or add it to your own price book", r.prices().LookFor(name))
			}
			return
		}
		if was := r.prices().Product(u.Product); was != nil && was.Unit() != found.Unit() {
			r.say("product-unit", g.at(), "%s takes %s by the %s, but %s is sold by the %s", w.label, was.Name, was.SoldBy(), found.Name, found.SoldBy())("name a product that is sold by the %s: those of the price book are shown by   ledgerboard prices %s", was.SoldBy(), was.Aisle)
			return
		}
		u.Product = found.Name
	}
	if g := r.good(w.scope.path + "waste"); g != nil {
		u.Waste, u.Source, u.Pos = g.number, g.node.text, g.at()
	}
}

// countedAlong takes of what a use follows the part that the file counts of the work.
func (w *work) countedAlong(use *model.Member) {
	if v, counted := w.member.Given.Look("measured"); counted {
		use.Give("along_share", model.Value{Refers: "counted_share", Text: "the part that is counted", Pos: v.Pos})
	}
}

// drops lets wallpaper hang along the walls of the room.
func (r *reader) drops(w *work, use *model.Member, prod *pricebook.Product) {
	d := use.Add("drop", "", prod.Name)
	d.Pos = prod.Pos
	for line, x := range map[string]decimal.Decimal{
		"roll_wide": prod.Roll.Width.Feet(), "roll_long": prod.Roll.Length.Feet(), "repeat": prod.Roll.Repeat.Feet(), "half_drop": flag(prod.Roll.HalfDrop),
	} {
		d.Give(line, model.Value{Number: x, Text: prod.Source, Pos: prod.Pos})
	}
	d.Give("trim", model.Value{Number: dropTrim, Text: "common practice, no source"})
	w.countedAlong(use)
	d.Give("drop_run", model.Value{Refers: "perimeter", Text: "once around", Pos: prod.Pos})
}

// dropTrim is what is cut off a drop at its ends, in feet: 4 inches, common practice.
var dropTrim = decimal.NewFromInt(1).DivRound(decimal.NewFromInt(3), 30)

// trade is the member of a trade.
func (r *reader) trade(name string) *model.Member {
	for m := range r.deal.Root.Each("trade") {
		if m.Label == name {
			return m
		}
	}
	return r.deal.Root.Add("trade", "", name)
}

// product is the member of a product, at the book's price or at one of the file's.
func (r *reader) product(p *pricebook.Product, price *reading) *model.Member {
	label := p.Name
	if price != nil {
		label += " at " + quantity.FormatMoney(price.number)
	}
	if m := r.products[label]; m != nil {
		return m
	}
	m := r.deal.Root.Add("product", "", label)
	r.products[label] = m
	r.deal.Products[m] = p
	m.Pos = p.Pos
	give := func(line string, x decimal.Decimal) {
		m.Give(line, model.Value{Number: x, Text: p.Source, Pos: p.Pos})
	}
	if !p.Pack.Number.IsZero() {
		give("holds", p.Pack.Number)
	}
	give("pack_price", p.Price)
	if price != nil {
		m.Give("pack_price", model.Value{Number: price.number, Text: price.node.text, Key: "price", Pos: price.at()})
		m.Give("own_pack_price", model.Value{Number: one, Text: "the file's price", Pos: price.at()})
	} else if p.Source != pricebook.Invented && len(p.Sticks) == 0 {
		give("own_pack_price", one)
	}
	if p.NoTax {
		give("taxed", decimal.Decimal{})
	}
	if len(p.Sticks) > 0 {
		give("by_the_stick", one)
		m.Withdraw("pack_price")
		for _, s := range p.Sticks {
			k := m.Add("stock", "", s.Length.String())
			k.Pos = p.Pos
			k.Give("stick_length", model.Value{Number: s.Length.Feet(), Text: s.Length.String(), Pos: p.Pos})
			k.Give("stick_price", model.Value{Number: s.Price, Text: p.Source, Pos: p.Pos})
			if s.Own {
				k.Give("own_stick_price", model.Value{Number: one, Text: p.Source, Pos: p.Pos})
			}
		}
	}
	return m
}

// rentAlone refuses rent that takes hours, materials and the like for each month: how many
// months there are depends on the hours of all work, so only what is hired can follow them.
func (r *reader) rentAlone(w *work) {
	it := w.item
	var takes []string
	for _, x := range []struct {
		what string
		some bool
	}{
		{"hours", it.Hours.IsPositive()}, {"debris", it.Debris.IsPositive() || it.Weight.IsPositive()},
		{"materials", !w.quotedAll() && slices.ContainsFunc(it.Uses, func(u pricebook.Use) bool { return !u.ForJob.IsPositive() })},
	} {
		if x.some {
			takes = append(takes, x.what)
		}
	}
	if len(takes) > 0 {
		r.say("rent-uncounted", w.at, "%s takes %s for each month of work, and how many there are is known only from all work", w.label, strings.Join(takes, " and "))("say how many, e.g.   %s   under whole house: {work: …}", w.counted())
	}
}

// rented says what work that is paid by the month takes a month, and reports whether a
// piece of work is that: how many months there are is only known from all of the work,
// unless the file counts them. A quote stands for all of them; rent is paid whoever does
// the work.
func (r *reader) rented(w *work) bool {
	if w.item.Measure != pricebook.Months {
		return false
	}
	if w.scope.path != "" && r.good(w.scope.path+"count") != nil {
		if who := w.member.Given.Of("who"); who.Choice == "own" {
			who.Choice = "hired"
			w.member.Give("who", who)
		}
		return false
	}
	w.member.Give("measure", model.Value{Number: one, Text: pricebook.Months, Pos: w.item.Pos})
	price, own := w.member.Given.Look("hired_price")
	w.member.Withdraw("hired_price") // the rental holds it, for all months
	if !own {
		price = model.Value{Number: w.item.Hired, Text: w.item.HiredSource, Pos: w.item.Pos}
	}
	x := w.member.Parent.Add("rental", "", w.label)
	x.Link(w.member)
	x.Pos = w.at
	x.Give("a_month", price)
	return true
}
