package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// fewHours are so few that the file may well say a multiple of the price book's, and fewestHours
// that it may well say a part of them; common practice, no source.
var fewHours, fewestHours = decimal.NewFromInt(8), decimal.NewFromInt(2)

// longWait is in days what a piece of work rarely waits for, and longestWait what all of it does, where
// permits may come in too; common practice, no source.
var longWait, longestWait = decimal.NewFromInt(60), decimal.NewFromInt(90)

// doubtWaiting doubts days in which nobody works that are months.
func (r *reader) doubtWaiting() {
	if g := r.good("labour.waiting"); g != nil && g.number.GreaterThan(longestWait) {
		r.say("waits-long", g.at(), "the work waits %s, which is long for permits, inspections and deliveries", g.node.text)("check it for a digit too many, or weeks in the place of days; what is waited for before the work starts goes into   lead-in   under time; it is used as it stands")
	}
}

// doubtOwnPrices looks for prices and hours that the file gives to work and that are far
// from the price book's, and for long waits.
func (r *reader) doubtOwnPrices() {
	for _, w := range r.chosenWorks() {
		if w.scope.path == "" {
			continue
		}
		if g, p := r.good(w.scope.path+"price"), r.packOf(w.scope); g != nil && p != nil {
			if in, times := p.LikeLarger(g.number, p.Price); in != nil {
				r.say("price-far", g.at(), "%s: %s a pack of %s (%s) is %s the price book's %s, about what %s costs", w.label, g.node.text, p.Name, p.SoldIn(), times, quantity.FormatMoney(p.Price), in.Name)("%s", in.Hint(g.number))
			} else if words := pricebook.FarFrom(g.number, p.Price); words != "" && !(g.number.GreaterThan(p.Price) && r.saysHighEnd(w)) {
				hint := pricebook.FarHint(g.number, false)
				if g.number.GreaterThan(p.Price) {
					hint += highEndHint
				}
				r.say("price-far", g.at(), "%s: %s a pack of %s (%s) is %s the price book's %s", w.label, g.node.text, p.Name, p.SoldIn(), words, quantity.FormatMoney(p.Price))("%s", hint)
			}
		}
		if v, ok := w.member.Given.Look("hired_price"); ok && v.Key != "" {
			if words := pricebook.FarFrom(v.Number, w.item.Hired); words != "" {
				r.say("price-far", v.Pos, "%s: %s is %s the price book's %s", w.label, v.Text, words, quantity.Per{Number: w.item.Hired, Money: true, Bottom: w.item.Unit})("%s", pricebook.FarHint(v.Number, true))
			}
		}
		if g := r.good(w.scope.path + "hours"); g != nil {
			r.doubtHours(w, g)
		}
		if g := r.good(w.scope.path + "waits"); g != nil && g.number.GreaterThan(longWait) {
			r.say("waits-long", g.at(), "%s waits %s, which is long for curing, a delivery or an inspection", w.label, g.node.text)("check it for a digit too many; it is used as it stands")
		}
		r.doubtEachCoat(w, "hours_each")
		r.doubtEachCoat(w, "hired_price")
		if g := r.good(w.scope.path + "coats"); g != nil && g.number.GreaterThan(one) && w.item.Measure != pricebook.Months && !w.quoted() && !w.item.MayCoat() {
			r.say("coats-unusual", g.at(), "%s: the price book does not do it in coats; %s of them count its hours and hired price %[2]s times", w.label, g.node.text)("leave the coats out, or say how much with   count   ; it is used as it stands")
		}
	}
}

// doubtEachCoat doubts a rate of work in several coats that may be meant for all of them.
func (r *reader) doubtEachCoat(w *work, line string) {
	v, coats := w.member.Given.Of(line), w.member.Given.Of("coats").Number
	if v.Key == "" || !v.Number.IsPositive() || !coats.GreaterThan(one) || pricebook.EachCoat(v.Text) != strings.TrimSpace(v.Text) || w.quoted() {
		return
	}
	per := quantity.Per{Number: v.Number.Mul(coats), Money: line == "hired_price", Bottom: w.item.Unit}
	all := per.String()
	per.Number = v.Number.DivRound(coats, 6)
	r.say("rate-each-coat", v.Pos, "%s is done in %s coats, and %s is counted for each of them: %s in all", w.label, coats, v.Text, all)("write   %s: %s and coat   if it is for all coats, or   %[1]s: %[3]s and coat   if it is for each", v.Key, per, v.Text)
}

func (r *reader) doubtHours(w *work, g *reading) {
	all, known := r.worked(w.member, "quantity")
	hours, done := r.worked(w.member, "trade_hours")
	coats, _ := r.worked(w.member, "coats")
	book := all.Mul(coats).Mul(w.item.Hours).Add(w.item.SetUp)
	words := pricebook.FarFrom(hours, book)
	few := hours.GreaterThan(book) && hours.LessThan(fewHours) || hours.LessThan(book) && book.LessThan(fewestHours)
	if !known || !done || !hours.IsPositive() || few || words == "" {
		return
	}
	hint := "check it for a point or nought that has slipped"
	if each := w.member.Given.Of("set_up"); each.Key == "hours" && pricebook.FarFrom(each.Number.Mul(all).Mul(coats), book) == "" {
		hint = "it is for all of the work; write   hours: " + quantity.Per{Number: each.Number, Bottom: w.item.Unit}.String()
		if coats.GreaterThan(one) {
			hint += " and coat"
		}
		hint += "   if that is meant"
	}
	r.say("hours-far", g.at(), "%s: %s hours of a trained hand are %s the %s of the price book", w.label, short(hours), words, short(book))("%s; it is used as it stands", hint)
}

// starterRoll is the width in ft of the carpet and vinyl that the starter book prices by
// the foot.
var starterRoll = decimal.NewFromInt(12)

// doubtRoll doubts a roll of another width that has the price of a foot of the starter's.
func (r *reader) doubtRoll() {
	g := r.good("local prices.roll width")
	if g == nil || g.number.Equal(starterRoll) {
		return
	}
	var works, goods, prices []string
	for _, w := range r.chosenWorks() {
		if w.quoted() {
			continue
		}
		for _, use := range w.member.In("use") {
			p := r.deal.Products[use.Links[0]]
			if p.Source == pricebook.Invented && p.Pack.Word == "cut" && use.Given.Of("along").Refers == "carpet_run" && slices.Contains(w.products, p) && !slices.Contains(goods, p.Name) {
				same := p.Price.Mul(g.number).DivRound(starterRoll, 2)
				works, goods, prices = append(works, diag.Quote(w.label)), append(goods, p.Name), append(prices, quantity.FormatMoney(same))
			}
		}
	}
	if goods != nil {
		r.say("roll-price", g.at(), "the roll is %s wide, but %s has the price of a foot of 12 ft", g.node.text, strings.Join(goods, ", "))("write under %s what a foot of it costs; at the same for a square foot it is   price: %s", works[0], prices[0])
	}
}
