package pricebook

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// formOnly are the columns that only a form for bids has beside those of a table of quotes.
var formOnly = []string{"quantity", "coats", "labour", "total"}

// A price of a form is kept to so many decimals.
const formPlaces = 4

// slack is how far labour may lie beside the price times the quantity: half a dollar where
// it is in whole dollars, to which bidders round, else a cent.
func slack(labour decimal.Decimal) decimal.Decimal {
	if labour.IsInteger() {
		return decimal.New(5, -1)
	}
	return decimal.New(1, -2)
}

// number reads a column of a form that holds a number above 0, or what stands for it.
func (r *tableReader) number(column string, otherwise decimal.Decimal) (decimal.Decimal, bool) {
	text, at := r.cell(column)
	if text == "" {
		return otherwise, true
	}
	x, err := quantity.ParseCount(text)
	if err != nil || !x.IsPositive() {
		r.wrong(at, "quotes-form", "%s is %s, not a number above 0", column, diag.Quote(text))("put back what the form said")
		return x, false
	}
	return x, true
}

// coats is over how many coats a row of a form asks for its price, which is filled in at a
// cell. Every row of a form has them; without, a price for two would be taken for one.
func (r *tableReader) coats(priced int) (decimal.Decimal, bool) {
	if text, at := r.cell("coats"); text == "" {
		if at < 0 {
			at = priced
		}
		r.wrong(at, "quotes-form", "the row has a price, but not for how many coats")("write under coats how many it is for, as the form said: 1 for a single one")
		return decimal.Decimal{}, false
	}
	return r.number("coats", decimal.Decimal{})
}

// inForm turns the price for one unit with all coats into the book's, which is for one
// coat, and holds it against the labour of the row.
func (r *tableReader) inForm(q *Quote, at int) {
	coats, fine := r.coats(at)
	if !fine {
		return
	}
	if text, labourAt := r.cell("labour"); text != "" {
		much, fine := r.number("quantity", decimal.Zero)
		labour, err := dollars(text)
		switch {
		case err != nil:
			r.refused(labourAt, "quotes-price", text, err)
		case fine && much.Mul(q.Price).Sub(labour).Abs().GreaterThan(slack(labour)):
			r.wrong(labourAt, "quotes-form", "labour is %s, but the unit price of %s for %s comes to %s", quantity.FormatMoney(labour), quantity.FormatMoney(q.Price), much, quantity.FormatMoney(much.Mul(q.Price)))(
				"keep the one that holds and clear the other")
		}
	}
	q.Price = q.Price.DivRound(coats, formPlaces)
	q.low, q.high = q.Price, q.Price
}

// fromLabour takes the price from the labour of the row, where that alone is filled in.
func (r *tableReader) fromLabour(q *Quote, it *Item) {
	text, labourAt := r.cell("labour")
	if text == "" {
		r.totalAlone(it)
		return
	}
	if strings.EqualFold(text, "none") {
		q.None = true
		return
	}
	labour, err := dollars(text)
	if err != nil {
		r.refused(labourAt, "quotes-price", text, err)
		return
	}
	much, fine := r.number("quantity", decimal.Zero)
	coats, too := r.coats(labourAt)
	switch {
	case !fine || !too:
	case much.IsZero():
		r.wrong(labourAt, "quotes-form", "the row for %q has labour, but no quantity", it.Name)("put back the quantity that the form said, or fill in the unit price")
	default:
		each := func(x decimal.Decimal, places int32) decimal.Decimal { return x.DivRound(much.Mul(coats), places) }
		q.Price = each(labour, formPlaces)
		q.low, q.high = each(labour.Sub(slack(labour)), 2*formPlaces), each(labour.Add(slack(labour)), 2*formPlaces)
	}
}

// underLabour doubts a total, which holds materials too, that is below the labour of its row.
func (r *tableReader) underLabour(it *Item) {
	text, at := r.cell("total")
	total, told := asked(text)
	price, _ := r.cell("price")
	each, err := perUnit(price, it.Unit)
	much, fine := r.number("quantity", decimal.Zero)
	labour := each.Mul(much).Round(2)
	if written, _ := r.cell("labour"); written != "" {
		labour, fine = asked(written)
	} else {
		fine = fine && err == nil
	}
	if !told || !fine {
		return
	}
	switch off := total.Sub(labour); {
	case off.LessThan(slack(total).Neg()):
		r.tell(diag.Warnf(r.place(at), "quotes-form", "the total of %s for %q is below its labour of %s, and it is to hold materials too", quantity.FormatMoney(total), it.Name, quantity.FormatMoney(labour)).
			WithHint("ask which of them holds; the price is read from the labour as it stands"))
	case off.LessThanOrEqual(slack(total)) && len(it.Uses) > 0:
		r.tell(diag.Warnf(r.place(at), "quotes-form", "the total of %s for %q is no more than its labour, and it is to hold materials too", quantity.FormatMoney(total), it.Name).
			WithHint("ask whether they are in the price: then clear the unit price and the labour, which are without them, for they would count twice; it is read as labour alone"))
	}
}

// withMaterials is what a remark says where a price has the materials in it.
var withMaterials = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\bincl|\ball[ -]in\b|\bwith (?:all )?material|\bmaterials? and labou?r|\blabou?r and material|\bturn ?key`)
})

// withoutThem is what it says where the price has them not.
var withoutThem = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(?:not|no|without|excl\w*|labou?r only)\b`)
})

// remarked doubts a price whose remark says that it may have the materials in it.
func (r *tableReader) remarked(it *Item) {
	rows, is := r.rows.(*sheetRows)
	if !is || len(it.Uses) == 0 {
		return
	}
	if text := rows.textOf("remarks"); withMaterials().MatchString(text) && !withoutThem().MatchString(text) {
		r.tell(diag.Warnf(r.place(r.priced()), "quotes-form", "the remark for %q is %s, and its price is read as labour alone", it.Name, diag.Quote(text)).
			WithHint("where materials are in the price, clear the unit price and the labour and fill in the total, or they count twice"))
	}
}

// totalAlone doubts a row with a total and nothing for labour. It holds materials, so no
// price of the book follows; the deal file takes it for that piece of work.
func (r *tableReader) totalAlone(it *Item) {
	text, at := r.cell("total")
	total, err := dollars(text)
	if err != nil {
		r.refused(at, "quotes-price", text, err)
		return
	}
	r.totals++
	entry := "quote: " + quantity.FormatMoney(total)
	if from, _ := r.cell("source"); from != "" {
		entry += ", from: " + plainText(from)
	}
	if day, _ := r.cell("dated"); day != "" {
		entry += ", dated: " + day
	}
	where := ""
	if rows, is := r.rows.(*sheetRows); is && rows.textOf("room") != "" {
		where = " in " + diag.Quote(rows.textOf("room"))
	}
	r.tell(diag.Warnf(r.place(at), "quotes-form", "the row for %q has a total, but no labour: no price is read from it", it.Name).
		WithHint("fill in the unit price for labour alone, or put the total into the deal file, beside what that work says already%s:   %s   or, where the file does not name that work, since other work brings it along, as a work of its own:   %s: {%s}", where, entry, plainText(it.Name), entry))
}

// plainText is a text as a deal file has it: in quotes where YAML could read it otherwise.
func plainText(s string) string {
	if bare().MatchString(s) {
		return s
	}
	return strconv.Quote(s)
}
