package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Garages that the sales say in square feet alone are not compared with one that the house says the
// cars or the kind of, nor with none, and that is said once and as it is.
func TestGaragesInSqFtAloneAreDoubted(t *testing.T) {
	const sales = "\n    1 Elm St | 2025-10-01 | 284,000 | 1400 | %s\n    2 Elm St | 2025-10-02 | 290,000 | 1410 | %s\n    3 Elm St | 2025-10-03 | 296,000 | 1390 | %s\n    4 Elm St | 2025-10-04 | 299,000 | 1400 | %s\n    5 Elm St | 2025-10-05 | 305,000 | 1420 | %s\n"
	some, all := []any{"480", "480", "440", "0", "480"}, []any{"480", "480", "440", "460", "480"}
	for _, c := range []struct {
		house, column string
		of            []any
		says          string
	}{
		{"none", "garage sqft", some, "the house has no garage, and 4 sales say how large one is and not for how many cars, so it is not taken off"},
		{"none", "garage sqft", all, "the house has no garage, and 5 sales say how large one is"},
		{"0", "garage sqft", some, "the house has no garage, and 4 sales say"},
		{"2 cars", "garage sqft", some, "the house says for how many cars its garage is, and 4 sales say how large it is"},
		{"2 car detached", "garage sqft", some, "the house says for how many cars its garage is, and 4 sales say how large it is"},
		{"2 car attached", "garage sqft", all, "the house says for how many cars its garage is, and 5 sales say how large it is"},
		{"none", "garage cars", []any{"2", "2", "2", "0", "2"}, ""},
		{"2 car detached", "garage", []any{"2 car", "2 car attached", "1 car", "none", "2 car"}, ""},
	} {
		for _, amounts := range []string{"", "  amounts: {car of garage: $8,000}\n"} {
			_, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1400 sq ft, garage: "+c.house+"}\ncomps:\n"+amounts+"  table: |\n    address | sold on | price | sq ft | "+c.column+fmt.Sprintf(sales, c.of...)))
			toldOnce(t, found, func(d diag.Diag) bool { return d.Code == "comps-not-told" }, c.says, "", c)
		}
	}
}

// Where a list tells what 100 sq ft of garage are worth, that stands for a house without one though an
// amount is given for a car: none of the garages says for how many it is, and the doubt says so.
func TestAListOfGarageSizesStandsBesideAnAmountForACar(t *testing.T) {
	var list strings.Builder
	list.WriteString("address,sold on,price,sq ft,garage sqft\n")
	for i := range 200 {
		area, garage := 1200+i*37%600, i%4*200
		fmt.Fprintf(&list, "%d Elm St,2025-%02d-%02d,%d,%d,%d\n", i+1, 1+i%12, 1+i%28, 100*area+60*garage+i*7919%5000, area, garage)
	}
	read := func(amounts string) (*deal.Deal, map[string]string) {
		d, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1400 sq ft, garage: none}\ncomps:\n"+amounts+"  table: |\n    "+strings.ReplaceAll(list.String(), "\n", "\n    ")+"\n"))
		require.NotNil(t, d, "%v", found)
		says := map[string]string{}
		for _, x := range found {
			says[x.Code] += x.Message
		}
		return d, says
	}
	without, _ := read("")
	with, says := read("  amounts: {car of garage: $5,000}\n")
	require.Equal(t, without.Comps.Value.Likely.String(), with.Comps.Value.Likely.String())
	require.Equal(t, without.Comps.Value.Low.String(), with.Comps.Value.Low.String())
	require.Contains(t, says["comps-amount-unused"], "what the list tells of 100 sq ft is")
	require.NotContains(t, says, "comps-not-told")
	var from []string
	for _, r := range with.Comps.Value.Rates {
		if r.Line == comps.Garage {
			from = append(from, r.Unit+" "+r.From)
		}
	}
	require.Equal(t, []string{"100 sq ft of garage regression", "car of garage given"}, from)
	likely, ok := with.ValueRange()
	require.True(t, ok)
	require.Equal(t, with.Comps.Value.Likely.String(), likely.Likely.String(), "the lines re-add to it")
}
