package comps

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A price for each square foot is neither a price nor an area, wherever it stands.
func TestPricePerAreaIsNotRead(t *testing.T) {
	for _, head := range []string{"$/SqFt", "Price/SqFt", "price_per_sqft", "Price Per Sq. Ft.", "price_sqft", "Sq Ft Price", "PPSF", "$SF", "Sale Price / Sq Ft", "$ per sq ft", "Price/Acre", "price per square foot", "Cost/SF", "Sold $/SF", "Living Area $/sqft", "PricePerSqFt"} {
		for _, table := range []string{
			"Address,Sale Date,Sale Price," + head + ",SqFt\n12 Elm St,2026-06-03,268000,204.58,1310\n",
			"Address,Sale Date," + head + ",SqFt,Sale Price\n12 Elm St,2026-06-03,204.58,1310,268000\n",
		} {
			l, found := read(t, table, Options{})
			require.Len(t, found, 1, head)
			require.Contains(t, found[0].Message, head+`" is not read: it is a price per area`)
			requireUSD(t, 268_000, l.Sale(0).Price)
			require.Equal(t, Known(1310), l.Sale(0).Area, head)
			require.False(t, l.Sale(0).Lot.Known)
		}
		_, found := read(t, "Sold,Amt,"+head+"\n2026-06-03,268000,204.58\n", Options{Columns: map[string]string{"living area": head}})
		require.Len(t, found, 1, head)
		require.Contains(t, found[0].Message, head+`" is a price per area, and cannot be the living area`)
	}
	for head, holds := range map[string]string{"sqft": "living area", "Living Sq Ft": "living area", "sale price": "price", "Price (USD)": "price", "lot acres": "lot", "SqFt per county": ""} {
		require.False(t, perArea(head), head)
		require.Equal(t, holds, FieldNamed(head), head)
	}
}

// What is in dollars by its heading is the size of nothing.
func TestDollarsAreNoSize(t *testing.T) {
	for _, head := range []string{"Land ($)", "Lot $", "Garage $", "Building Area $"} {
		l, found := read(t, "Address,Sale Date,Sale Price,SqFt,"+head+"\n12 Elm St,2026-06-03,268000,1310,42000\n", Options{})
		require.Len(t, found, 1, head)
		require.Contains(t, found[0].Message, head+`" is not read: it is in dollars`)
		require.Equal(t, House{Area: Known(1310)}, l.Sale(0).House, head)
	}
	l, found := read(t, "Sale Date,Sale Price ($),Seller Credit $\n2026-06-03,268000,4000\n", Options{})
	require.Empty(t, found)
	s := l.Sale(0)
	requireUSD(t, 264_000, s.Net())
}

// Land beside no unit may be what it is worth: its size is read where a cell says so.
func TestLandMayBeItsWorth(t *testing.T) {
	l, found := read(t, "Address,Sale Date,Sale Price,Land,Building\n1 Elm St,2026-06-03,268000,42000,180000\n2 Elm St,2026-06-04,268000,\"$39,000\",170000\n3 Elm St,2026-06-05,268000,\"7,200 sf\",170000\n", Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, `1 Elm St: Land: "42000" may be the size of the lot or what the land is worth, so it counts as not known; and 1 more like it`)
	require.Equal(t, []Fact{{}, {}, Known(7200)}, []Fact{l.Sale(0).Lot, l.Sale(1).Lot, l.Sale(2).Lot})
	l, found = read(t, "Sale Date,Sale Price,Land\n2026-06-03,268000,8200\n", Options{Columns: map[string]string{"lot": "Land"}})
	require.Empty(t, found)
	require.Equal(t, Known(8200), l.Sale(0).Lot)
	for _, head := range []string{"Land sqft", "land area", "Land Sq Ft"} {
		l, found = read(t, "Sale Date,Sale Price,"+head+"\n2026-06-03,268000,8200\n", Options{})
		require.Empty(t, found)
		require.Equal(t, Known(8200), l.Sale(0).Lot, head)
	}
}

// A year that is always that of the sale tells when it was sold.
func TestYearOfTheSales(t *testing.T) {
	const rows = "Sale Date,Sale Price,Year\n2026-06-03,268000,2026\n2025-07-03,250000,2025\n2026-01-03,260000,2025\n"
	l, found := read(t, rows, Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].String(), `sold.csv:1:22: warning: "Year" is not read: it holds the years of the sales`)
	require.Contains(t, found[0].Hint, "columns: {year built: Year}")
	for _, s := range l.Sales() {
		require.False(t, s.Built.Known)
	}
	for _, o := range []struct {
		rows    string
		columns map[string]string
	}{
		{rows, map[string]string{"year built": "Year"}},
		{strings.Replace(rows, "Year", "Year Built", 1), nil},
		{strings.Replace(rows, ",2026\n", ",1957\n", 1), nil},
	} {
		l, found = read(t, o.rows, Options{Columns: o.columns})
		require.Empty(t, found)
		require.True(t, l.Sale(0).Built.Known)
	}
}
