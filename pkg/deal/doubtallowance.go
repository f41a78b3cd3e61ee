package deal

import (
	"fmt"
	"regexp"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// secondHand is what a note says of a find, which costs next to nothing, and highEnd of a thing that
// costs many times what the price book's does.
var (
	secondHand = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`(?i)\b(used|second[ -]?hand|pre-?owned|thrift(ed)?|salvaged?|reclaimed|refurbished|vintage|antique|found|gift|free|scratch and dent|floor (?:model|sample)|open[ -]box|clearance|overstock)\b`)
	})
	highEnd = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`(?i)\b(high[ -]?end|top[ -]of[ -]the[ -](line|range)|luxury|premium|designer|pro(fessional)?[ -](style|grade))\b`)
	})
)

// highEndHint is what ends the doubt of a price that is meant to be high.
const highEndHint = "; if the thing is a dear one, say so, e.g.   note: high end"

// saysHighEnd reports whether a note says that what work buys is dear.
func (r *reader) saysHighEnd(w *work) bool { return highEnd().MatchString(r.text(w, "note")) }

// allowed reports whether an allowance is paid for work, and no quote for all of it.
func (w *work) allowed() bool {
	_, allowed := w.member.Given.Look("allowance")
	return allowed && !w.quotedAll()
}

// allowedAll reports whether an allowance stands for all that work buys, as for a thrifted set of
// cabinets, and not for its first product alone.
func (r *reader) allowedAll(w *work) bool { return w.allowed() && r.holdsMore(w) }

// doubtAllowance doubts an allowance far from the price of what it stands for, or may stand for, or,
// where the price book has none, from the labour. What is found may cost nothing, or little where a
// note says that it is, and much where it says that it is dear.
func (r *reader) doubtAllowance(w *work, given model.Value) {
	found, done := r.worked(w.member, "found")
	labour, known := r.worked(w.member, "computed_labour")
	base, has := r.firstProduct(w)
	than := "what the product that it stands for costs in the price book"
	switch besides := r.besidesAllowance(w); {
	case r.allowedAll(w):
		base, has = r.allProducts(w)
		than = "what all that it stands for costs in the price book"
	case found.GreaterThan(base) && r.doubtsExtent(w, base, besides):
		base, than = base.Add(besides), "what all that this work buys costs in the price book"
	}
	switch {
	case !done || found.IsZero():
	case has && r.doubtDearFind(w, given, found, base):
	case has && found.LessThan(base) && secondHand().MatchString(r.text(w, "note")):
	case has && found.GreaterThan(base) && r.saysHighEnd(w):
	case has:
		r.doubtFar(w, "allowance", given, found, than, base)
	case known && len(w.item.Uses) == 0 && found.GreaterThan(labour) && !r.saysHighEnd(w):
		r.doubtFar(w, "allowance", given, found, "what a trade would charge for putting it in", labour)
	}
}

// muchBesides is the share of the first product of some work from which on what else it buys may well
// be in an allowance too, as wall cabinets beside base cabinets; common practice, no source.
var muchBesides = half

// oldThing is what a note says of a find that may well cost more than a new thing of the price book.
var oldThing = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(vintage|antique|reclaimed|restored|refinished|set|pair)\b`)
})

// doubtDearFind doubts an allowance of over twice the price of a new thing whose note says that it is
// second-hand, and reports whether it did.
func (r *reader) doubtDearFind(w *work, given model.Value, found, base decimal.Decimal) bool {
	note := r.text(w, "note")
	if !found.GreaterThan(base.Mul(two)) || found.LessThan(smallWork) || pricebook.FarFrom(found, base) != "" || !secondHand().MatchString(note) || oldThing().MatchString(note) || r.saysHighEnd(w) {
		return false
	}
	r.say("quote-far", given.Pos, "%s: the allowance of %s is over twice what a new one costs in the price book, %s, and its note says %s", w.label, diag.Quote(given.Text), quantity.FormatMoney(base), diag.Quote(note))("check it for a nought too many%s; it is used as it stands", highEndHint)
	return true
}

// doubtExtent doubts an allowance for the first product of work that buys much besides: it may be for
// a whole set. What comes along and buys much may be in it as well.
func (r *reader) doubtExtent(w *work, given model.Value) {
	base, _ := r.firstProduct(w)
	besides := r.besidesAllowance(w)
	if !r.doubtsExtent(w, base, besides) {
		return
	}
	first, along := w.item.Uses[0].Product, ""
	for _, x := range r.chosenWorks() {
		if x.by != "" && x.broughtBy(w) && x.item.Trade == w.item.Trade && !r.goodsOf(x).LessThan(smallWork) {
			along += fmt.Sprintf(" ; for %[1]s of the set, which come along, write   %[1]s: {by: %[2]s, allowance: $0, holds more: yes}", x.item.Name, x.doer())
		}
	}
	r.say("allowance-part", given.Pos, "%s: the allowance of %s is taken for %s alone, %s in the price book, and what else this work buys is paid besides, %s: %s", w.label, diag.Quote(given.Text), first, quantity.FormatMoney(base), quantity.FormatMoney(besides), r.mostOf(w))("if it is for all that this work buys, as a whole set, say   holds more: yes%s ; if it is for %s alone, say   holds more: no", along, first)
}

// doubtsExtent reports whether an allowance for a first product of some price may be for what else is
// bought too; where   holds more   is said, yes or no, it is settled.
func (r *reader) doubtsExtent(w *work, first, besides decimal.Decimal) bool {
	return w.scope.path != "" && w.allowed() && r.good(w.scope.path+"holds more") == nil && first.IsPositive() && !besides.LessThan(smallWork) && !besides.LessThan(first.Mul(muchBesides))
}

// besidesAllowance is what work spends on products beside its allowance.
func (r *reader) besidesAllowance(w *work) decimal.Decimal {
	found, _ := r.worked(w.member, "found")
	all, _ := r.worked(w.member, "materials")
	return all.Sub(found)
}

// mostOf names the product that work spends the most on, and how many more there are.
func (r *reader) mostOf(w *work) string {
	var most decimal.Decimal
	name := ""
	uses := w.member.In("use")
	for _, u := range uses {
		if x, _ := r.worked(u, "by_parts"); x.GreaterThan(most) {
			most, name = x, u.Label
		}
	}
	if len(uses) > 1 {
		name += fmt.Sprintf(" and %d more", len(uses)-1)
	}
	return name
}

// allProducts is about what all products of some work cost by the price book, as far as that tells;
// false where it does not of the first.
func (r *reader) allProducts(w *work) (sum decimal.Decimal, known bool) {
	for i, u := range w.item.Uses {
		x, priced := r.productPrice(w, u)
		if sum = sum.Add(x); i == 0 {
			known = priced
		}
	}
	return sum, known
}

// firstProduct is about what the first product of some work costs by the price book, before
// whole packs; false where that goes along another measure or by the roll.
func (r *reader) firstProduct(w *work) (decimal.Decimal, bool) {
	if len(w.item.Uses) == 0 || w.item.Uses[0].Along != "" {
		return decimal.Zero, false
	}
	return r.productPrice(w, w.item.Uses[0])
}

// productPrice is about what a product of some work costs by the price book, before whole packs; false
// where it goes by the roll.
func (r *reader) productPrice(w *work, u pricebook.Use) (decimal.Decimal, bool) {
	all, known := r.worked(w.member, "quantity")
	coats, _ := r.worked(w.member, "coats")
	p := r.prices().Product(u.Product)
	if !known || p == nil || p.Roll != nil {
		return decimal.Zero, false
	}
	if along := pricebook.MeasureNamed(u.Along); along != nil {
		whole, _ := r.thereIs(w.member.Parent.Parent, *pricebook.MeasureNamed(w.item.Measure))
		if !whole.IsPositive() {
			return decimal.Zero, false
		}
		other, _ := r.thereIs(w.member.Parent.Parent, *along)
		all = all.Mul(other).DivRound(whole, 4)
	}
	goods := all.Mul(u.TakesOf(p, w.item))
	switch {
	case u.ForJob.IsPositive():
		goods = u.ForJob
	case u.Covers.IsPositive():
		goods = all.DivRound(u.Covers, 4).Mul(r.prices().PackOf(u).Number)
	}
	if u.PerCoat {
		goods = goods.Mul(coats)
	}
	return goods.Mul(one.Add(u.Waste)).Mul(p.UnitPrice()).Round(2), true
}
