package deal_test

import (
	"fmt"
	"testing"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// A figure that sales of a third of the weight do not say is doubted, if it is worth something: they
// count as alike to the house in it.
func TestSalesThatDoNotSayAFigureAreDoubted(t *testing.T) {
	for _, c := range []struct {
		house, amounts, column string
		of                     []any
		says                   string
	}{
		{"living area: 1400 sq ft", "square foot: $90", "sq ft", []any{"", "1380", "", "1390", ""}, "3 of 5 sales, with "},
		{"living area: 1400 sq ft", "bath: $9,000", "sq ft", []any{"", "1400", "", "1400", ""}, "do not say how large the living area is"},
		{"living area: 1400 sq ft", "square foot: $90", "sq ft", []any{"", "1380", "1390", "1390", "1380"}, ""},
		{"living area: 1400 sq ft", "square foot: $90", "sq ft", []any{"1850", "1380", "1900", "1390", "1780"}, ""},
		{"condition: good", "step of condition: $9,000", "condition", []any{"", "fair", "", "good", ""}, "do not say in what condition it was, so they count as alike to the house in that: "},
		{"condition: good", "step of condition: $0", "condition", []any{"", "fair", "", "good", ""}, ""},
		{"condition: good", "bath: $9,000", "condition", []any{"", "good", "", "good", ""}, ""},
		{"baths: 2", "bath: $9,000", "baths", []any{"", "", "", "", "1"}, " and 1 more"},
		{"garage: 2 cars", "car of garage: $9,000", "garage", []any{"", "2 car", "", "none", ""}, "do not say anything of a garage"},
		{"year built: 1960", "year newer: $300", "year built", []any{"", "1950", "", "1960", ""}, "do not say in which year it was built"},
	} {
		text := unvalued + "house: {" + c.house + "}\ncomps:\n  amounts: {" + c.amounts + "}\n  table: |\n    address | sold on | price | " + c.column + "\n"
		for i, price := range []string{"324,000", "282,000", "330,000", "284,000", "318,000"} {
			text += fmt.Sprintf("    %d Elm St | 2025-10-0%d | %s | %s\n", i+1, i+1, price, c.of[i])
		}
		_, found := deal.Read("a.yaml", []byte(text))
		toldOnce(t, found, func(d diag.Diag) bool { return d.Code == "comps-not-told" }, c.says, "", c)
	}
}
