package pricebook

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// quote reads a row.
func (r *tableReader) quote() {
	for i := range r.row {
		if !r.clean(i) {
			return
		}
		if i >= r.wide && strings.TrimSpace(r.row[i]) != "" {
			r.wrong(i, "quotes-csv", "the row has more values than there are columns")("put a value with a comma in it in quotes, or leave the comma out")
			return
		}
	}
	before := len(r.found)
	q := Quote{}
	if !r.named(&q) {
		return
	}
	if q.Item {
		r.hired(&q)
	} else {
		r.bought(&q)
	}
	r.saidBy(&q)
	if len(r.found) > before {
		return
	}
	switch {
	case r.form:
		r.underLabour(r.book.Item(q.Name))
		r.remarked(r.book.Item(q.Name))
	case q.Item:
		r.otherHours(r.book.Item(q.Name))
	}
	if !r.once(q) {
		return
	}
	r.quotes = append(r.quotes, q)
	if r.form && q.Price.IsZero() && !q.None {
		r.tell(diag.Warnf(r.place(r.priced()), "quotes-price", "the price of %q is 0: the labour costs nothing", q.Name).
			WithHint("where it is not bid on, leave the price empty; it is used as it stands"))
	}
}

// otherHours tells that hours which are not those of the book change nothing of it.
func (r *tableReader) otherHours(it *Item) {
	text, at := r.cell("hours")
	hours, err := quantity.ParseCount(text)
	if text == "" || err == nil && hours.Equal(it.Hours) {
		return
	}
	if err != nil {
		hours = it.Hours
	}
	r.tell(diag.Warnf(r.place(at), "quotes-header", "the hours of %q are %s here and %s in the price book, and a table changes prices alone", it.Name, diag.Quote(text), it.Hours).
		WithHint("write them in your own price book, e.g.   items: {%s: {hours: %s}}", plainText(it.Name), quantity.Per{Number: hours, Bottom: it.Unit}))
}

// priced is the column that the price of the row comes from.
func (r *tableReader) priced() int {
	if text, _ := r.cell("price"); text == "" && r.form {
		return r.columns["labour"]
	}
	return r.columns["price"]
}

// named finds what the row is for.
func (r *tableReader) named(q *Quote) bool {
	text, at := r.cell("name")
	kind, kindAt := r.cell("kind")
	kind = even(kind)
	q.Pos, q.Kinded = r.place(at), kind != ""
	if text == "" {
		r.wrong(at, "quotes-name", "the row has no name")("write the name of a product or an item of the price book")
		return false
	}
	if kind != "" && kind != "product" && kind != "item" {
		r.wrong(kindAt, "quotes-kind", "%s is no kind", diag.Quote(kind))("write product or item, or leave it out")
		return false
	}
	product, item := r.book.Product(even(text)), r.book.Item(even(text))
	switch {
	case kind == "item" || product == nil:
		product = nil
	case item != nil && kind == "":
		r.wrong(at, "quotes-kind", "%s is both a product and an item", diag.Quote(text))("add a column   kind   that says which")
		return false
	}
	switch {
	case product != nil:
		q.Name = product.Name
	case item != nil && kind != "product":
		q.Name, q.Item = item.Name, true
	default:
		r.unknown(text, kind, at)
		return false
	}
	return true
}

func (r *tableReader) unknown(text, kind string, at int) {
	names := r.book.Products()
	what := "product"
	switch kind {
	case "item":
		names, what = r.book.Items(), "item"
	case "":
		names, what = append(names, r.book.Items()...), "product or item"
	}
	tell := r.wrong(at, "quotes-name", "the price book has no %s %s", what, diag.Quote(text))
	if same := r.inOtherOrder(text, names); same != "" {
		tell("did you mean %q?", same)
		return
	}
	if near, ok := diag.Nearest(text, names); ok {
		tell("did you mean %q?", near)
		return
	}
	instead := "add it to your own price book"
	if sheet, is := r.rows.(*sheetRows); is && sheet.form && sheet.extra() {
		instead = "name it under what is done, not under item, where the form did not ask for it"
	}
	tell("look for it with   %s   or %s", r.book.LookFor(text), instead)
}

// inOtherOrder is the name that has the words of a text in another order, or "".
func (r *tableReader) inOtherOrder(text string, names []string) string {
	words := func(s string) []string {
		all := strings.Fields(even(s))
		slices.Sort(all)
		return all
	}
	wanted := words(text)
	for _, name := range names {
		if slices.Equal(words(name), wanted) {
			return name
		}
	}
	return ""
}

// bought reads the price and the pack of a product.
func (r *tableReader) bought(q *Quote) {
	text, at := r.cell("price")
	if text == "" {
		r.wrong(at, "quotes-price", "the row for %q has no price", q.Name)("write what a pack costs, e.g. 24.90, or delete the row")
		return
	}
	price, err := dollars(text)
	if err != nil {
		r.refused(at, "quotes-price", text, err)
		return
	}
	q.Price = price
	if unit, at := r.cell("unit"); unit != "" {
		r.wrong(at, "quotes-pack", "%s is for an item, but %q is a product", diag.Quote(unit), q.Name)("write in the column   pack   what it is sold in")
		return
	}
	pack, at := r.cell("pack")
	p := r.book.Product(q.Name)
	switch {
	case len(p.Sticks) > 0:
		r.stick(q, p, pack, at)
	case pack == "":
	case p.Roll != nil:
		r.roll(q, pack, at)
	default:
		x, err := quantity.ParsePack(pack)
		switch {
		case err != nil:
			r.refused(at, "quotes-pack", pack, err)
		case x.Unit != p.Pack.Unit:
			r.wrong(at, "quotes-pack", "%s is in %s, but %q is sold by the %s", diag.Quote(pack), x.Unit, p.Name, p.Pack.Unit.One())("the book has it as %q; write what the price is for in %s", p.Pack.String(), p.Pack.Unit)
		default:
			q.Pack = &x
		}
	}
}

func (r *tableReader) stick(q *Quote, p *Product, pack string, at int) {
	if pack == "" {
		r.wrong(at, "quotes-pack", "%q is sold by the stick, and the row does not say which", p.Name)("write it in the column   pack, e.g. stick of %s", plainLength(p.Sticks[0].Length))
		return
	}
	x, err := someLength(strings.TrimPrefix(even(pack), "stick of "))
	if err != nil {
		r.wrong(at, "quotes-pack", "%s is no stick", diag.Quote(pack))("write it like   stick of %s", plainLength(p.Sticks[0].Length))
		return
	}
	q.Stick = &x
}

func (r *tableReader) roll(q *Quote, pack string, at int) {
	x, err := quantity.ParseSize(strings.TrimPrefix(even(pack), "roll of "))
	if err != nil || !x.First.Feet().IsPositive() || !x.Second.Feet().IsPositive() {
		r.wrong(at, "quotes-pack", "%s is no roll", diag.Quote(pack))("write it like   roll of 20.5 in x 33 ft")
		return
	}
	q.Roll = &x
}

// hired reads what a trade charges for each unit of an item.
func (r *tableReader) hired(q *Quote) {
	text, at := r.cell("price")
	it := r.book.Item(q.Name)
	if unit, at := r.cell("unit"); unit != "" && even(unit) != string(it.Unit) {
		r.wrong(at, "quotes-unit", "%q is priced for each %s, not for each %s", it.Name, it.Unit.One(), diag.Quote(unit))("write the price for each %s", it.Unit.One())
	}
	if pack, at := r.cell("pack"); pack != "" {
		r.wrong(at, "quotes-pack", "%q is work and has no pack", it.Name)("leave it out; the price is for each %s", it.Unit.One())
	}
	switch {
	case text == "" && r.form:
		r.fromLabour(q, it)
	case text == "":
		r.wrong(at, "quotes-price", "the row for %q has no price", it.Name)("write what a trade charges for each %s, e.g. 9.50, or none if no trade does it alone; or delete the row", it.Unit.One())
	case even(text) == "none":
		q.None = true
	default:
		price, err := perUnit(text, it.Unit)
		if err != nil {
			r.refused(at, "quotes-price", text, err)
			return
		}
		q.Price = price
		if r.form {
			r.inForm(q, at)
		}
	}
}

// perUnit reads dollars for each unit: 9.50, $9.50 per sq ft.
func perUnit(text string, unit quantity.Unit) (decimal.Decimal, error) {
	if x, err := dollars(text); err == nil || strings.HasPrefix(strings.TrimLeft(text, "$ "), "-") {
		return x, err
	}
	for _, form := range []string{text, text + " per " + string(unit), "$" + text + " per " + string(unit)} {
		x, err := quantity.ParsePer(form)
		switch {
		case err == nil && x.Money && x.Bottom == unit:
			return x.Number, nil
		case err == nil && x.Money:
			return x.Number, &quantity.Error{Found: text, Why: fmt.Sprintf("it is for each %s, but the work is priced for each %s", x.Bottom.One(), unit.One()), Want: fmt.Sprintf("the price for each %s", unit.One())}
		}
	}
	if x, err := quantity.ParsePer(text); err == nil && !x.Money && x.Top == "" {
		return x.Number, &quantity.Error{Found: text, Why: "it has a unit, but no dollar sign", Want: "the plain number " + plainMoney(x.Number) + ", or $" + text}
	}
	_, err := dollars(text)
	return decimal.Decimal{}, err
}

// saidBy reads the day and the source.
func (r *tableReader) saidBy(q *Quote) {
	if text, at := r.cell("dated"); text != "" {
		x, err := quantity.ParseDate(text)
		if err != nil {
			r.refused(at, "quotes-dated", text, err)
		}
		q.Dated = x
	}
	q.Source, _ = r.cell("source")
}

func (r *tableReader) refused(at int, code, text string, err error) {
	q := &quantity.Error{}
	if errors.As(err, &q) {
		want := q.Want
		if sheet, is := r.rows.(*sheetRows); is && code == "quotes-price" && at >= 0 && sheet.number(sheet.fields[at].col) && wholeCents(text) != text {
			q.Why, want = "it is not in whole cents", wholeCents(text)
		}
		if code == "quotes-price" && !strings.ContainsAny(text, "0123456789") {
			want += "; 0 where it costs nothing; and leave " + r.whatIsEmpty() + " where there is no price"
		}
		r.wrong(at, code, "%s: %s", diag.Quote(text), q.Why)("write %s", want)
		return
	}
	r.wrong(at, code, "%s cannot be read", diag.Quote(text))("see docs/price-book.md")
}

// whatIsEmpty is what stays empty where there is no price: the cell of a form, and of a table
// the whole row.
func (r *tableReader) whatIsEmpty() string {
	if r.form {
		return "the cell empty"
	}
	return "the row out"
}

// once refuses a second row for one thing.
func (r *tableReader) once(q Quote) bool {
	key := fmt.Sprint(q.Item, q.Name)
	if q.Stick != nil {
		key += " " + q.Stick.Inches().String()
	}
	at, twice := r.quoted[key]
	if !twice {
		r.quoted[key] = len(r.quotes)
		return true
	}
	switch first := &r.quotes[at]; {
	case !r.form:
		r.wrong(r.columns["name"], "quotes-twice", "%q has a row already, in %s", q.Name, r.rows.row(first.Pos))("keep the one that holds")
	case first.None != q.None || !first.meet(q):
		r.wrong(r.priced(), "quotes-twice", "%q comes to %s here, but to %s in %s", q.Name, r.each(q), r.each(*first), r.rows.row(first.Pos))(
			"a price book has one price for an item: write the same unit price in both, and what one room costs more in the deal file, e.g. {by: hired, hired: $9.50 per sq ft}")
	}
	return false
}

// each is what a quote of an item comes to for each unit.
func (r *tableReader) each(q Quote) string {
	if q.None {
		return "none"
	}
	text := quantity.Per{Number: q.Price, Money: true, Bottom: r.book.Item(q.Name).Unit}.String()
	if coats, _ := r.number("coats", decimal.NewFromInt(1)); coats.GreaterThan(decimal.NewFromInt(1)) {
		text += andCoat
	}
	return text
}
