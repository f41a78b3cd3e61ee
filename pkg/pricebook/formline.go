package pricebook

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

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
	named := "the row"
	if line := r.called(); line != "" {
		named += " " + diag.Quote(line)
	}
	d := diag.Warnf(at, "quotes-form", "%s has a price, but no item of the price book", named)
	entry := lineEntry(of("price"), of("labour"), of("total"), of("quantity"))
	if entry == "" {
		return d.WithHint("put the amount into the deal file, at that line of the renovation:   labour: ... and materials: ..., or amount: ... for both")
	}
	return d.WithHint("put it into the deal file, at that line of the renovation:   %s", entry)
}

// called is what a line of the deal is called that a row of a form is for: its trade and its
// work, without what stands in brackets behind it.
func (r *sheetRows) called() string {
	var parts []string
	for _, name := range []string{"trade", "what is done"} {
		for i, head := range r.rows[r.head] {
			if row := r.rows[r.at]; even(head) == name && i < len(row) && strings.TrimSpace(row[i]) != "" {
				text, _, _ := strings.Cut(row[i], " [")
				parts = append(parts, strings.TrimSpace(text))
			}
		}
	}
	return strings.Join(parts, ": ")
}

// lineEntry is how a line of the deal says what a row of a form holds: labour, from the unit
// price where it has none, with the rest of the total for materials; a total alone is the
// amount. "" where they cannot be read as amounts.
func lineEntry(price, labour, total, much string) string {
	amount := func(text string) (decimal.Decimal, bool) {
		x, err := dollars(text)
		return x, err == nil
	}
	work, fine := amount(labour)
	if labour == "" && price != "" {
		each, sound := amount(price)
		n, err := quantity.ParseCount(much)
		if much == "" {
			n, err = decimal.NewFromInt(1), nil
		}
		work, fine = each.Mul(n).Round(2), sound && err == nil
	}
	all, told := amount(total)
	switch {
	case labour == "" && price == "" && told:
		return "amount: " + quantity.FormatMoney(all)
	case !fine:
		return ""
	case told && all.GreaterThan(work):
		return "labour: " + quantity.FormatMoney(work) + ", materials: " + quantity.FormatMoney(all.Sub(work))
	}
	return "labour: " + quantity.FormatMoney(work)
}
