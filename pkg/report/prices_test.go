package report_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/report"
)

// Every page of the price book fits, and names all that the entry says.
func TestEveryPageOfThePriceBookFits(t *testing.T) {
	b := pricebook.Starter()
	var w bytes.Buffer
	fits := func(name string) string {
		page := w.String()
		for _, line := range strings.Split(page, "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), report.Width, "%s: %s", name, line)
		}
		w.Reset()
		return page
	}
	for _, name := range b.Items() {
		it := b.Item(name)
		require.NoError(t, report.ItemPage(&w, b, it, report.Style{}))
		page := fits(name)
		for _, u := range it.Uses {
			require.Contains(t, page, "  "+u.Product+": ", name)
		}
		for _, c := range it.Brings {
			require.Contains(t, page, "\n  "+c.Item, name)
		}
	}
	for _, name := range b.Products() {
		require.NoError(t, report.ProductPage(&w, b, b.Product(name), report.Style{}))
		require.Contains(t, fits(name), "Taken by", name)
	}
	require.NoError(t, report.Prices(&w, b, report.Style{}))
	fits("all")
	require.NoError(t, report.Found(&w, b, b.Products(), b.Items(), report.Style{}))
	list := fits("a search")
	for _, name := range append(b.Products(), b.Items()...) {
		require.Contains(t, list, "\n"+name, "in whole, so that it can be asked for")
	}
}

// Old wood that is sanded leaves no subfloor to mend; a new floor that is sanded does.
func TestSandingTakesThePlaceOfWorkOnAnOldFloorOnly(t *testing.T) {
	var w bytes.Buffer
	b := pricebook.Starter()
	require.NoError(t, report.ItemPage(&w, b, b.Item("strip sheet vinyl"), report.Style{}))
	require.Contains(t, strings.Join(strings.Fields(w.String()), " "), "subfloor repair, unless there is subfloor replacement or refinish wood floor or coat wood floor or screen and recoat wood floor; what only finishes a floor that is laid new does not count")
}

// What a page shows for an own price book can be read as one, and changes nothing but
// what it says.
func TestTheOverrideThatAPageShowsCanBeRead(t *testing.T) {
	b := pricebook.Starter()
	for _, name := range []string{"tile floor", "toilet", "crown", "lawn care", "porcelain floor tile", "primed baseboard 3-1/4 in", "vinyl wallpaper", "tile saw rental"} {
		var w bytes.Buffer
		if it := b.Item(name); it != nil {
			require.NoError(t, report.ItemPage(&w, b, it, report.Style{}))
		} else {
			require.NoError(t, report.ProductPage(&w, b, b.Product(name), report.Style{}))
		}
		var shown []string
		for _, line := range strings.Split(w.String(), "\n") {
			switch {
			case line == "    items:" || line == "    products:":
				shown = []string{line[4:]}
			case len(shown) > 0 && strings.HasPrefix(line, "      "):
				shown = append(shown, line[4:])
			case len(shown) > 1:
				line = ""
			}
		}
		own, found := deal.OwnBook("mine.yaml", []byte(strings.Join(shown, "\n")))
		require.NotNil(t, own, "%v\n%s", found, strings.Join(shown, "\n"))
		if it := own.Item(name); it != nil {
			require.True(t, it.Hired.Equal(b.Item(name).Hired), name)
			require.Equal(t, "who said so 2026-09-14", it.HiredSource+" "+it.Dated.String(), name)
			continue
		}
		require.True(t, own.Product(name).Price.Equal(b.Product(name).Price), name)
		require.Equal(t, "who said so", own.Product(name).Source, name)
	}
}

func TestPricesAsJSON(t *testing.T) {
	b := pricebook.Starter()
	var w bytes.Buffer
	require.NoError(t, report.PricesJSON(&w, b, []string{"primed baseboard 3-1/4 in"}, []string{"tile floor"}))
	var o report.PricesObject
	require.NoError(t, json.Unmarshal(w.Bytes(), &o))
	require.Equal(t, report.Schema, o.Schema)
	require.Len(t, o.Products[0].Sticks, 3)
	require.Equal(t, "0.1", o.Items[0].Materials[0].Waste.String())
	require.Contains(t, w.String(), `"price": "8.4"`, "decimals are strings")
	require.Equal(t, "2026-09-01", o.Items[0].Dated)
	require.False(t, o.Items[0].Own)
}

// JSON holds what a table by year built and a pattern make of a quantity; the roll is that of
// the starter book.
func TestPricesAsJSONHoldSharesAndRolls(t *testing.T) {
	var w bytes.Buffer
	require.NoError(t, report.PricesJSON(&w, pricebook.Starter(), []string{"vinyl wallpaper"}, []string{"roof deck repair", "carpet", "casing", "stone counter"}))
	var o report.PricesObject
	require.NoError(t, json.Unmarshal(w.Bytes(), &o))
	require.Equal(t, "roof deck", o.Items[0].ShareByAge)
	require.False(t, o.Items[0].NewFloor)
	require.True(t, o.Items[1].NewFloor)
	require.Equal(t, []string{"door casing", "window casing"}, o.Items[2].InsteadOf)
	require.Equal(t, "counter", o.Items[3].Makes)
	require.Equal(t, "", o.Items[0].Makes)
	roll := pricebook.Starter().Product("vinyl wallpaper").Roll
	require.Equal(t, roll.Repeat.Feet().String(), o.Products[0].Repeat.String())
	require.True(t, o.Products[0].RollWidth.IsPositive() && o.Products[0].RollLength.GreaterThan(o.Products[0].RollWidth))
}
