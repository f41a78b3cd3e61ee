package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

type wholeOf struct {
	what  string
	words []string
}

// wholeWords are what a line of all of the work, of its materials or of its labour is called, with
// what that is; beside them stand the words of besideWhole, and no others, else it is a line of
// something.
var wholeWords = []wholeOf{
	{"the materials of the work", []string{"material", "materials", "supplies", "lumberyard"}},
	{"the labour of the work", []string{"labour", "labor", "wage", "wages", "workers", "handyman", "handymen", "helper", "helpers", "sweat"}},
	{"all of the work", []string{"renovation", "renovations", "remodel", "remodeling", "remodelling", "rehab", "rehabilitation", "refurbishment", "rebuild", "contractor", "contractors", "gc", "builder", "builders", "rooms", "house", "works", "everything", "turnkey", "work", "gut"}},
}

var besideWhole = []string{
	"a", "all", "allowance", "amount", "and", "bid", "big", "bill", "bought", "box", "budget", "building", "by", "complete", "construction", "cost", "costs", "crew", "entire", "equity",
	"estimate", "estimated", "for", "from", "full", "general", "hired", "home", "in", "inside", "interior", "job", "lump", "my", "of", "order", "orders", "our", "own", "price", "project",
	"quote", "quoted", "remaining", "store", "stores", "sum", "the", "time", "total", "whole",
}

// ofTheWhole is what of all the work a line names by nothing but words for that; "" where it names
// something else too, or by words that say nothing.
func ofTheWhole(label string) (what string) {
	words := strings.FieldsFunc(strings.ReplaceAll(plainKey(label), "lumber yard", "lumberyard"), func(c rune) bool { return strings.ContainsRune(" :,&+/()", c) })
	for _, of := range wholeWords {
		if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(of.words, w) }) {
			what = of.what // the work itself last, as labour and materials of a whole house
		}
		words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(of.words, w) })
	}
	if slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(besideWhole, w) }) {
		return ""
	}
	return what
}

// doubtWholeTwice doubts lines of all the work, or of its materials, its labour or their sales tax,
// beside rooms that price it. A share is rather what who does the work takes on top; and where the
// rooms hold little beside a line, it is plainly for what they do not name.
func (r *reader) doubtWholeTwice(works []*work) {
	for _, l := range r.lines() {
		if l.member == nil || r.saidApart(l) {
			continue
		}
		line, known := r.worked(l.member, "trade_price")
		if known {
			r.wholeTwice(l.member, line, works, "if it is other work, say   apart: yes   in the line")
		}
	}
	for _, m := range r.deal.Root.In("general_fee") {
		line, known := r.worked(m, "amount")
		if _, share := m.Given.Look("share"); known && !share {
			r.wholeTwice(m, line, works, "if it is other work, write it under   lines   with   apart: yes")
		}
		r.salesTaxTwice(m)
	}
}

func (r *reader) wholeTwice(m *model.Member, line decimal.Decimal, works []*work, apart string) {
	what := ofTheWhole(m.Label)
	if what == "" || !line.IsPositive() || r.tradePrice(works...).LessThan(line.Mul(smallBeside)) {
		return
	}
	r.say("rooms-twice", m.Pos, "%s reads as %s, which rooms price too: %s", diag.Quote(m.Label), what, r.largest(works))("price it once: leave the line out, or take out of it what the rooms hold; %s", apart)
}

// salesTaxTwice doubts a general line for the sales tax, where the place says what it is.
func (r *reader) salesTaxTwice(m *model.Member) {
	tax, g := plainKey(m.Label), r.good("local prices.sales tax")
	paid, known := r.worked(m, "amount")
	if g == nil || !g.number.IsPositive() || !known || !paid.IsPositive() || !strings.HasPrefix(tax, "sales tax") && !strings.HasSuffix(tax, "sales tax") {
		return
	}
	r.say("rooms-twice", m.Pos, "%s is a line beside the sales tax under local prices, %s, with which rooms count what they buy", diag.Quote(m.Label), g.node.text)("leave the line out, or the sales tax under   local prices   if the line stands for all of it")
}
