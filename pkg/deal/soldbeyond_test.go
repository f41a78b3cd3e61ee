package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// A lot one and a half times the largest, and a year 30 years before or after all, are told where an
// amount moves the value by over a fiftieth for them.
func TestHousesBeyondLotsAndYearsThatArePriced(t *testing.T) {
	for _, c := range []struct {
		house, amounts string
		want           string
	}{
		{"lot: 16000 sq ft, year built: 1994", "square foot of lot: $2, year newer: $700", "a lot of 16,000 sq ft, and the largest of the sales 6,600"},
		{"lot: 16000 sq ft, year built: 1994", "square foot of lot: $0.2, year newer: $700", ""},
		{"lot: 9000 sq ft, year built: 1994", "square foot of lot: $2, year newer: $700", ""},
		{"lot: 3500 sq ft, year built: 1994", "square foot of lot: $4, year newer: $700", "the smallest of the sales 6,200"},
		{"lot: 6400 sq ft, year built: 1949", "square foot of lot: $2, year newer: $700", "built in 1949, and the oldest of the sales in 1990"},
		{"lot: 6400 sq ft, year built: 1949", "square foot of lot: $2, year newer: $100", ""},
		{"lot: 6400 sq ft, year built: 1965", "square foot of lot: $2, year newer: $700", ""},
	} {
		text := unvalued + "house: {" + c.house + "}\ncomps:\n  amounts: {" + c.amounts + "}\n  table: |\n    address | sold on | price | lot | year built\n"
		for i := range 3 {
			text += fmt.Sprintf("    %d Elm St | 2025-10-%d | 30%d,000 | %d | %d\n", i+1, 10+i, i, 6200+200*i, 1990+3*i)
		}
		d, found := deal.Read("a.yaml", []byte(text))
		require.NotNil(t, d, "%v", found)
		toldOnce(t, found, func(x diag.Diag) bool { return x.Code == "house-beyond-sales" }, c.want, "", c)
	}
}
