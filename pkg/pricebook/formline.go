package pricebook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/sums"
	"ledgerboard/pkg/quantity"
)

// textOf is what stands in a column of the row, by its name in the form.
func (r *sheetRows) textOf(name string) string {
	row := r.rows[r.at]
	for i, head := range r.rows[r.head] {
		if even(head) == name && i < len(row) {
			return strings.TrimSpace(row[i])
		}
	}
	return ""
}

// forLine tells a row with a price that is for a line of the deal's renovation, not for an
// item of the price book, and how that line says it; values are those of the row's fields.
func (r *sheetRows) forLine(at diag.Pos, values []string) diag.Diag {
	of := func(name string) string {
		for i, f := range r.fields {
			if f.name == name {
				return strings.TrimSpace(values[i])
			}
		}
		return ""
	}
	d := diag.Warnf(at, "quotes-form", "the row %s has a price, but no item of the price book", diag.Quote(r.called()))
	if r.extra() {
		return d.WithHint("%s", r.ownLine(of("price"), of("labour"), of("total"), of("quantity")))
	}
	if r.textOf("unit") != "job" {
		return d.WithHint("put back under item what the form said; it is not the name of a line of the deal file, but of work of the room")
	}
	entry, apart := lineEntry(of("price"), of("labour"), of("total"), of("quantity"))
	if apart != "" {
		d = diag.Warnf(at, "quotes-form", "the row %s says two things: %s", diag.Quote(r.called()), apart)
		return d.WithHint("ask which of them holds, and put that into the deal file, at that line of the renovation")
	}
	if entry == "" {
		return d.WithHint("put the amount into the deal file, at that line of the renovation:   labour: ... and materials: ..., or amount: ... for both")
	}
	own := ""
	if work := r.textOf("what is done"); strings.HasSuffix(work, FormByOwner) || strings.HasSuffix(work, FormPartOwner) {
		own = "   and take out its own hours, where the trade does it all" // else the work counts twice
	}
	return d.WithHint("put it into the deal file, at that line of the renovation, in the place of %s:   %s%s", replaces(entry), entry, own)
}

// extra reports whether the form did not have the row: it says the coats of each of its own.
func (r *sheetRows) extra() bool { return r.textOf("coats") == "" && r.textOf("unit") != "job" }

// ownLine is how work that a bidder added to a form goes into the deal file.
func (r *sheetRows) ownLine(price, labour, total, much string) string {
	entry, apart := lineEntry(price, labour, total, much)
	before := ""
	switch {
	case apart != "":
		before, entry = "ask which of them holds ("+apart+"), and then ", "amount: ..."
	case entry == "":
		before, entry = "ask what all of it comes to, and then ", "amount: ..."
	}
	parts := []string{entry}
	if work := r.textOf("what is done"); work != "" {
		parts = append([]string{"work: " + plainText(work)}, parts...)
	}
	if trade := r.textOf("trade"); trade != "" {
		parts = append([]string{"trade: " + plainText(trade)}, parts...)
	}
	return before + "where you want it, add a line to the deal file, under renovation, lines:   - {" + strings.Join(parts, ", ") + "}"
}

// replaces is what of a line of the deal an entry takes the place of: an amount cannot stand
// beside labour or materials.
func replaces(entry string) string {
	switch {
	case strings.HasPrefix(entry, "amount: "):
		return "its amount, or of its labour and materials"
	case strings.Contains(entry, "materials: "):
		return "its labour and materials, or of its amount"
	}
	return "its labour, or of its amount with   materials: ...   beside it"
}

// called is what a line of the deal is called that a row of a form is for: its trade and its
// work, without what the form has put in brackets behind it.
func (r *sheetRows) called() string {
	trade, work := r.textOf("trade"), r.textOf("what is done")
	work = strings.TrimSuffix(strings.TrimSuffix(work, FormByOwner), FormPartOwner)
	if trade == "" || work == "" {
		return trade + work
	}
	return trade + ": " + work
}

// added tells a row with a price that the form did not have: it sums up the others, or
// nothing says what it is for.
func (r *sheetRows) added() (diag.Diag, bool) {
	if r.textOf("item") != "" && !sums.Begins(r.textOf("item")) || r.textOf("quantity") != "" {
		return diag.Diag{}, false
	}
	row, price, name := r.rows[r.at], 0, ""
	for i, head := range r.rows[r.head] {
		formula, err := r.file.GetCellFormula(r.sheet, strings.TrimPrefix(r.address(r.at+1, i+1), r.sheet+"!"))
		text := ""
		if i < len(row) {
			text = strings.TrimSpace(row[i])
		}
		if price == 0 && slices.Contains(priced, even(head)) && (err == nil && formula != "" || strings.ContainsAny(text, "0123456789")) {
			price = i + 1
		}
		if name == "" && sums.Begins(text) {
			name = text
		}
	}
	at := diag.Pos{File: r.name, Line: r.at + 1, Col: price, Cell: r.address(r.at+1, max(price, 1))}
	switch {
	case price == 0:
	case name != "":
		return diag.Warnf(at, "quotes-form", "the row %s is passed over: it sums up the others", diag.Quote(name)).
			WithHint("nothing is to do; where it is a piece of work, name that under what is done"), true
	case r.textOf("item") == "" && r.called() == "":
		return diag.Warnf(at, "quotes-form", "the row is passed over: it has an amount, and nothing says what for").
			WithHint("where it sums up the others, nothing is to do; where it is a piece of work, name that under what is done"), true
	}
	return diag.Diag{}, false
}

// lineEntry is how a line of the deal says what a row of a form holds: labour, from the unit
// price where it has none, with the rest of the total for materials; a total alone is the
// amount. "" where they cannot be read as amounts; apart is what of them does not fit.
func lineEntry(price, labour, total, much string) (entry, apart string) {
	each, priced := asked(price)
	work, worked := asked(labour)
	all, told := asked(total)
	n, err := quantity.ParseCount(much)
	priced = priced && err == nil
	by := each.Mul(n).Round(2)
	switch {
	case labour == "" && price == "" && told:
		return "amount: " + quantity.FormatMoney(all), ""
	case labour == "":
		work, worked = by, priced
	case priced && worked && by.Sub(work).Abs().GreaterThan(slack(work)):
		return "", "its labour is " + quantity.FormatMoney(work) + ", and its unit price comes to " + quantity.FormatMoney(by)
	}
	switch {
	case !worked:
		return "", ""
	case told && all.LessThan(work):
		return "", "its labour is " + quantity.FormatMoney(work) + ", and its total, with materials, " + quantity.FormatMoney(all)
	case told && all.GreaterThan(work):
		return "labour: " + quantity.FormatMoney(work) + ", materials: " + quantity.FormatMoney(all.Sub(work)), ""
	}
	return "labour: " + quantity.FormatMoney(work), ""
}

// asked reads an amount of a form, if it is one.
func asked(text string) (decimal.Decimal, bool) {
	x, err := dollars(text)
	return x, err == nil
}
