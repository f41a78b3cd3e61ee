package deal

import (
	"cmp"
	"fmt"
	"slices"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// daysOfAQuote are how many days a quote is taken to hold; common practice, no source.
const daysOfAQuote = 90

// A priced is a price in use with its day and what it is for.
type priced struct {
	what    string
	day     quantity.Date
	starter bool   // it is one of the book that ships, so not a day of the deal
	far     string // what is to be said of it where it is far from the starter book's
	hint    string // what to do then
	at      diag.Pos
}

// doubtPrices looks for prices and quotes that are old on the day of the purchase, or,
// if that is unknown, on the latest day that the deal names. The clock is not asked, so
// that a file says the same tomorrow.
func (r *reader) doubtPrices() {
	book, quotes := r.bookPrices(), r.quotes()
	for _, p := range book {
		if p.far != "" {
			r.say("price-far", p.at, "%s: %s", p.what, p.far)("%s", p.hint)
		}
	}
	r.doubtBookHours()
	day, event := r.deal.PurchaseDate, "the purchase"
	if day.IsZero() {
		day, event = r.latest(slices.Concat(book, quotes)), "the latest day in the deal"
	}
	if day.IsZero() {
		return
	}
	for _, q := range quotes {
		if !r.deal.PurchaseDate.IsZero() && q.day.Compare(day) > 0 {
			r.say("quote-late", q.at, "the quote for %s is dated %s, after the purchase (%s)", q.what, q.day, day)("check the year; a quote is of a day before you buy")
		}
	}
	yearBefore := day
	yearBefore.Year--
	r.old("prices-old", oldest(book, yearBefore), "price-book price", "12 months", r.where("own book", "rooms", "outside", "whole house"),
		fmt.Sprintf("before %s (%s)", event, day), "ask again, and lay the new prices over the old with   ledgerboard prices --from quotes.csv")
	if old := oldest(quotes, day.AddDays(-daysOfAQuote)); len(old) > 0 {
		r.old("quotes-old", old, "quote", "90 days", old[0].at, fmt.Sprintf("before %s (%s)", event, day), "ask whether it still holds, and write the day of the answer")
	}
}

// doubtBookHours looks for hours of an own book that are far from the starter book's.
func (r *reader) doubtBookHours() {
	var told []*pricebook.Item
	for _, w := range r.chosenWorks() {
		hours := w.member.Given.Of("hours_each")
		if far := w.item.HoursFar(); far != "" && hours.Key == "" && !w.quoted() && !slices.Contains(told, w.item) {
			told = append(told, w.item)
			r.say("hours-far", w.item.Pos, "%s: %s", w.item.Name, far)("check the hours for each unit, for a point or nought that has slipped; they are used as they stand")
		}
	}
}

// doubtNoRate looks for work that goes by the hour of a trade while nobody says what that
// costs: a trade would be paid nothing, and own work would be worth nothing.
func (r *reader) doubtNoRate() {
	if _, rated := r.deal.Root.Given.Look("own_labour_rate"); rated {
		return
	}
	for _, w := range r.chosenWorks() {
		if !w.byTheHour() {
			continue
		}
		trade := r.trade(w.item.Trade)
		if _, rated := trade.Given.Look("crew_rate"); rated {
			continue
		}
		comes := "costs nothing"
		if w.byOwnHands() {
			comes = "counts nothing where trades finish it"
		}
		r.say("no-rate", w.member.Given.Of("by_the_hour").Pos, "%s is charged by the hour, and an hour of the %s trade has no rate, so its labour %s", diag.Quote(w.label), trade.Label, comes)("add   labour: {trades: {%s: {rate: $62/hour}}}", trade.Label)
	}
}

// byTheHour reports whether its labour goes by the hours of its trade: what that is paid, or
// what own work is worth.
func (w *work) byTheHour() bool {
	return !w.quoted() && !w.member.Given.Of("by_the_hour").Number.IsZero()
}

func (w *work) quoted() bool {
	_, quoted := w.member.Given.Look("quote")
	return quoted
}

// old tells of all old prices in one doubt, which names the oldest.
func (r *reader) old(code string, all []priced, what, age string, at diag.Pos, before, hint string) {
	switch len(all) {
	case 0:
	case 1:
		r.say(code, at, "the %s for %s is dated %s, over %s %s", what, all[0].what, all[0].day, age, before)("%s", hint)
	default:
		r.say(code, at, "%d %ss are dated over %s %s; the oldest is of %s, for %s", len(all), what, age, before, all[0].day, all[0].what)("%s", hint)
	}
}

// oldest are the prices dated before a day, the oldest first.
func oldest(all []priced, before quantity.Date) []priced {
	out := slices.DeleteFunc(slices.Clone(all), func(p priced) bool { return p.day.IsZero() || p.day.Compare(before) >= 0 })
	slices.SortStableFunc(out, func(a, b priced) int { return cmp.Or(a.day.Compare(b.day), cmp.Compare(a.what, b.what)) })
	return out
}

// bookPrices are the prices of the price book that the chosen work uses: of products,
// and of hired labour without a quote.
func (r *reader) bookPrices() []priced {
	var out []priced
	seen := map[string]bool{}
	add := func(what string, day quantity.Date, source string, of interface {
		Far() string
		FarHint() string
	}, at diag.Pos) {
		if seen[what] {
			return
		}
		seen[what] = true
		p := priced{what: what, day: day, starter: source == pricebook.Invented, far: of.Far(), at: at}
		if p.far != "" {
			p.hint = of.FarHint()
		}
		out = append(out, p)
	}
	for _, w := range r.chosenWorks() {
		for _, product := range w.products {
			add(product.Name, product.Dated, product.Source, product, product.Pos)
		}
		given := w.member.Given
		price, ok := given.Look("hired_price")
		books := ok && price.Pos == w.item.Pos || !ok && w.item.Hired.IsZero() // a price of nothing is not given on
		if !books || w.quoted() || given.Of("by_the_hour").Number.IsPositive() || w.byOwnHands() && w.item.Hired.IsZero() {
			continue
		}
		day := w.item.Dated
		if w.byOwnHands() { // nobody is paid it, but by it trades finish
			day = quantity.Date{}
		}
		add("the labour of "+w.item.Name, day, w.item.HiredSource, w.item, w.item.Pos)
	}
	return out
}

// quotes are the days that the chosen work names for its quotes and prices.
func (r *reader) quotes() []priced {
	var out []priced
	for _, w := range r.chosenWorks() {
		if w.scope.path == "" {
			continue
		}
		if g := r.good(w.scope.path + "dated"); g != nil {
			out = append(out, priced{what: w.label, day: g.date, at: g.at()})
		}
	}
	return out
}

// chosenWorks is the work of the options that the scope takes.
func (r *reader) chosenWorks() []*work {
	var out []*work
	for _, p := range r.chosenPlans() {
		out = append(out, p.works...)
	}
	return out
}

// chosenPlans are the options that the scope takes.
func (r *reader) chosenPlans() []*plan {
	return slices.DeleteFunc(slices.Clone(r.plans), func(p *plan) bool { return LeftOut(p.option) })
}

// latest is the latest day that the deal or the owner's price book names; zero if they
// name none.
func (r *reader) latest(prices []priced) quantity.Date {
	out := r.deal.DepositRefundableUntil
	for _, p := range prices {
		if !p.starter && p.day.Compare(out) > 0 {
			out = p.day
		}
	}
	return out
}
