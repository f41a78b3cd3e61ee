package deal

import (
	"regexp"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// smallWork is what work comes to, in dollars, at which a quote may be anything: a trade
// that comes for little charges for coming; common practice, no source.
var smallWork = decimal.NewFromInt(400)

// hardlyPaid is what, in dollars, no trade comes for: a quote under it is rather the price of a unit;
// common practice, no source.
var hardlyPaid = decimal.NewFromInt(15)

// doubtQuotes looks for quotes and allowances of which a point or a nought has slipped.
func (r *reader) doubtQuotes() {
	r.doubtQuotesTwice()
	for _, w := range r.chosenWorks() {
		r.doubtRent(w)
		r.doubtUnused(w)
		r.doubtAmountMissing(w)
		if v, ok := w.member.Given.Look("quote"); ok {
			quote, _ := r.worked(w.member, "labour_at_trade")
			switch base, known := r.bookOf(w); {
			case !known || quote.IsZero() && (r.heldElsewhere(w) || r.forNothing(w)):
			case quote.IsZero() && base.IsPositive():
				r.doubtFree(w, v, base)
			case r.holdsMore(w) && quote.GreaterThan(base):
				r.doubtMuchHeld(w, v, quote)
				if !r.holdsElsewhere(w) && !w.allowed() {
					r.doubtMoreHeld(w)
				}
			default:
				if all := r.bookOfAll(w, quote, base); all.GreaterThan(base) {
					r.doubtFar(w, "quote", v, quote, "what the price book says of all that it is taken to hold", all)
				} else {
					r.doubtFar(w, "quote", v, quote, "what the price book says", base)
				}
				r.doubtHalf(w, v, quote, base)
				r.doubtLabourQuote(w, v, quote, base)
				r.doubtHoldsOther(w, v, quote, base)
			}
			r.doubtDebris(w, v)
			if a, both := w.member.Given.Look("allowance"); both && w.member.Given.Of("quote_covers").Choice == "all" {
				r.say("allowance-beside-quote", a.Pos, "%s: the allowance of %s is paid beside a quote for all of it", w.label, diag.Quote(a.Text))("say   covers: labour   if the quote is for the labour, or leave the allowance out if the quote brings what it is for")
			}
		}
		if v, ok := w.member.Given.Look("allowance"); ok {
			r.doubtAllowance(w, v)
			r.doubtExtent(w, v)
		}
	}
}

// gift is what a note says of work that somebody does for nothing, and noGift what it says of other work.
var gift, noGift = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(gift|given|favou?r|free)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)(\b(no|not|never)|n['’]t)\s+((a|as|an|any|for|yet)\s+)*(gift|given|favou?r|free)\b`)
})

// forNothing reports whether the note of work says that somebody does it for nothing.
func (r *reader) forNothing(w *work) bool {
	return gift().MatchString(noGift().ReplaceAllString(r.text(w, "note"), ""))
}

// doubtFree doubts a quote of nothing for work that the price book has at some price.
func (r *reader) doubtFree(w *work, given model.Value, base decimal.Decimal) {
	free := "it costs nothing here, materials and own hours too"
	if w.member.Given.Of("quote_covers").Choice == "labour" {
		free = "its labour costs nothing here, own hours too"
	}
	r.say("quote-far", given.Pos, "%s: a quote of %s: %s; the price book says %s", w.label, diag.Quote(given.Text), free, quantity.FormatMoney(base))("if it is your own work, write   own hands   in place of it; if it is given, say so, e.g.   note: gift   ; if another quote holds it, say by whom in both, and   holds more: yes   in that; it is used as it stands")
}

// doubtUnused doubts details that change nothing: of the first product, where an allowance
// stands for it, and of quotes; and a part of what is counted.
func (r *reader) doubtUnused(w *work) {
	if w.scope.path == "" {
		return
	}
	detail := func(key string) *reading { return r.good(w.scope.path + key) }
	part, count := detail("part"), detail("count")
	_, allowed := w.member.Given.Look("allowance")
	if allowed {
		for _, key := range []string{"price", "waste", "product"} {
			if g := detail(key); g != nil {
				r.say("price-beside-allowance", g.at(), "%s: the %s, %s, is not used: the allowance is paid instead of the first product", w.label, key, g.node.text)("keep one of them")
			}
		}
	}
	for _, key := range []string{"covers", "holds more"} {
		none, add := "there is no quote", "add the quote"
		if key == "holds more" {
			none, add = "there is no quote or allowance", "add the quote or the allowance"
		}
		if g := detail(key); g != nil && !w.quoted() && !(key == "covers" && g.choice == "labour" && r.ownHired(w)) && !(key == "holds more" && allowed) {
			r.say("quote-detail", g.at(), "%s: %s, %s, is not used: %s", w.label, key, g.node.text, none)("%s, or leave it out", add)
		}
	}
	r.doubtIdleHaul(w)
	if g := detail("tax on labour"); g != nil && w.quoted() && w.member.Given.Of("labour_taxed").Number.IsPositive() {
		r.say("quote-detail", g.at(), "%s: tax on labour, %s, is not used: a quote stands for all that it comes to", w.label, g.node.text)("write the quote with its tax, and leave this out")
	}
	if w.quoted() {
		counts, unused := "all of it", []string{"price", "waste", "hired"}
		if w.member.Given.Of("quote_covers").Choice == "labour" {
			counts, unused = "its labour", []string{"hired"}
		}
		for _, key := range unused {
			if g := detail(key); g != nil {
				r.say("quote-detail", g.at(), "%s: %s, %s, is not used: the quote stands for %s", w.label, key, g.node.text, counts)("keep one of them")
			}
		}
	}
	if part != nil && count != nil && !part.number.Equal(one) {
		r.say("part-of-count", part.at(), "%s: %s of the count of %s is done", w.label, part.node.text, count.node.text)("leave the part out if %s is what is done", count.node.text)
	}
}

// doubtFar doubts a price of the file that is far from another, which some words tell of.
func (r *reader) doubtFar(w *work, what string, given model.Value, price decimal.Decimal, than string, base decimal.Decimal) {
	if price.LessThan(smallWork) && base.LessThan(smallWork) && !(what == "quote" && price.LessThan(hardlyPaid)) {
		return
	}
	if words := pricebook.FarFrom(price, base); words != "" {
		settle := ""
		if what == "quote" && price.GreaterThan(base) && r.good(w.scope.path+"holds more") == nil {
			settle = "; if it holds other work too, as a whole kitchen, say   holds more: yes   beside it, and name under   without   what it holds of the work that comes along"
		}
		if what == "allowance" {
			settle = "; if it is a find, say so, e.g.   note: used"
			if price.GreaterThan(base) {
				settle = highEndHint
			}
		}
		r.say("quote-far", given.Pos, "%s: the %s of %s is %s %s, %s", w.label, what, diag.Quote(given.Text), words, than, quantity.FormatMoney(base))("check it for a point or nought that has slipped%s; it is used as it stands", settle)
	}
}

// bookOfAll is what the price book says of all that a quote is taken to hold, where the quote is far
// above its own work; else of that work alone, which needs no second reading of the file.
func (r *reader) bookOfAll(w *work, quote, base decimal.Decimal) decimal.Decimal {
	if !w.quotedAll() || quote.LessThanOrEqual(base) || pricebook.FarFrom(quote, base) == "" {
		return base
	}
	labour, goods := r.heldByQuote(w)
	return base.Add(labour).Add(goods)
}

// farQuote reports whether a quote is far from what the price book says of its work.
func (r *reader) farQuote(w *work, quote, base decimal.Decimal) bool {
	return pricebook.FarFrom(quote, r.bookOfAll(w, quote, base)) != ""
}

// A quote looks like that of another extent where it is so near to what the other comes to; one for
// the labour, where it is also so many times off its own; common practice, no source.
var nearOther, offItsOwn = decimal.RequireFromString("1.3"), decimal.RequireFromString("1.8")

// doubtHalf doubts a quote for all of some work that is about what the labour alone comes to by the
// price book, or less, and one for the labour that is about what it comes to with its materials.
func (r *reader) doubtHalf(w *work, given model.Value, quote, base decimal.Decimal) {
	labour, known := r.worked(w.member, "computed_labour")
	goods := r.goodsOf(w)
	if !known || !labour.IsPositive() || r.farQuote(w, quote, base) || base.LessThan(smallWork) {
		return
	}
	tell := func(says string, other decimal.Decimal, hint string) {
		r.say("quote-half", given.Pos, "%s: a quote of %s is about what %s by the price book, %s", w.label, diag.Quote(given.Text), says, quantity.FormatMoney(other))("%s", hint)
	}
	near := func(other decimal.Decimal) bool {
		return quote.LessThanOrEqual(other.Mul(nearOther)) && other.LessThanOrEqual(quote.Mul(nearOther))
	}
	if w.quotedAll() {
		r.doubtLowQuote(w, given, quote, labour)
		return
	}
	if both := base.Add(goods); near(both) && !goods.LessThan(labour) && (quote.GreaterThanOrEqual(base.Mul(offItsOwn)) || base.GreaterThanOrEqual(quote.Mul(offItsOwn))) {
		tell("labour and materials come to", both, "if it brings the materials, say   covers: all   , or leave   covers: labour   out; if it is for the labour of other work too, say   holds more: yes")
	}
}

// holdsMore reports whether the file says that a quote holds other work too.
func (r *reader) holdsMore(w *work) bool {
	g := r.good(w.scope.path + "holds more")
	return w.scope.path != "" && g != nil && g.number.IsPositive()
}

// quoteHoldsMore reports whether work has a quote that holds other work too.
func (r *reader) quoteHoldsMore(w *work) bool { return w.quoted() && r.holdsMore(w) }

// doubtRent doubts what is said of work that is rented by the month and counts for nothing
// there.
func (r *reader) doubtRent(w *work) {
	if w.item.Measure != pricebook.Months || w.scope.path == "" || r.good(w.scope.path+"count") != nil {
		return
	}
	for _, key := range []string{"coats", "by the hour"} {
		if g := r.good(w.scope.path + key); g != nil {
			r.say("rent-detail", g.at(), "%s is paid by the month, and   %s: %s   changes nothing of that", w.label, key, g.node.text)("leave it out; rent of your own is   hired: $140 per month")
		}
	}
}
