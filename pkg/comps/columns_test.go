package comps

import (
	"fmt"
	"slices"
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

// turned are a table's columns turned round and back to front, so that each stands before
// and behind each other.
func turned(head, cells string) (out []string) {
	for _, back := range []bool{false, true} {
		for by := range strings.Split(head, ",") {
			var b strings.Builder
			for _, line := range []string{head, cells} {
				row := strings.Split(line, ",")
				row = slices.Concat(row[by:], row[:by])
				if back {
					slices.Reverse(row)
				}
				b.WriteString(strings.Join(row, ",") + "\n")
			}
			out = append(out, b.String())
		}
	}
	return out
}

// Which of several columns is read does not depend on their order.
func TestTheOrderOfColumnsPlaysNoPart(t *testing.T) {
	for _, c := range []struct {
		head, cells string
		unread      []string
		want        Sold
	}{
		{"Sale Date,Sale Price,Full Baths,Half Baths,Total Baths", "2026-06-03,268000,1,1,2", []string{`"Total Baths" is not read: full and half baths have columns of their own`},
			Sold{House: House{FullBaths: Known(1), HalfBaths: Known(1)}}},
		{"Date,Price,Sold Date,Sold Price", "2026-05-01,275000,2026-06-03,268000", []string{`date is read from "Sold Date"; "Date" looks like it too`, `price is read from "Sold Price"; "Price" looks like it too`}, Sold{}},
		{"Close Date,Close Price,Price,Living SqFt,Total SqFt", "2026-06-03,268000,275000,1310,2100", []string{`price is read from "Close Price"; "Price" looks like it too`, `living area is read from "Living SqFt"; "Total SqFt" looks like it too`},
			Sold{House: House{Area: Known(1310)}}},
		{"Sale Date,Sale Price,SqFt,GLA,Above Grade SqFt", "2026-06-03,268000,2100,1310,1300", []string{`living area is read from "GLA"; "Above Grade SqFt" looks like it too`, `living area is read from "GLA"; "SqFt" looks like it too`},
			Sold{House: House{Area: Known(1310)}}},
		{"Sale Date,Sale Price,Lot SqFt,Lot Acres", "2026-06-03,268000,7000,0.2", []string{`lot is read from "Lot SqFt"; "Lot Acres" looks like it too`},
			Sold{House: House{Lot: Known(7000)}}},
		{"Sale Date,Sale Price,Year,Yr Built", "2026-06-03,268000,2026,1961", []string{`year built is read from "Yr Built"; "Year" looks like it too`},
			Sold{House: House{Built: Known(1961)}}},
		{"Sale Date,Sale Price,Baths,Half Bath", "2026-06-03,268000,1.5,2", nil,
			Sold{House: House{FullBaths: Known(1), HalfBaths: Known(1)}}},
		{"Sold,Price,Longitude,Latitude,X,Y", "2026-06-03,268000,-83.5,41.6,484000,195000", []string{`"X" is not read: longitude and latitude tell where a house stands`, `"Y" is not read: longitude and latitude tell where a house stands`},
			Sold{House: House{Place: Place{X: -83.5, Y: 41.6, Degrees: true, Known: true}}}},
		{"Sold,Price,Longitude,X,Y", "2026-06-03,268000,-83.5,484000,195000", []string{`"Longitude" is not read: x and y tell where a house stands`},
			Sold{House: House{Place: Place{X: 484000, Y: 195000, Known: true}}}},
		{"Sold,Price,Longitude,Y", "2026-06-03,268000,-83.5,195000", []string{`"Longitude" is not read: no column holds the latitude beside it`, `"Y" is not read: no column holds the x beside it`}, Sold{}},
	} {
		for _, text := range turned(c.head, c.cells) {
			l, found := read(t, text, Options{})
			var said []string
			for _, d := range found {
				said = append(said, d.Message)
			}
			require.ElementsMatch(t, c.unread, said, text)
			require.Equal(t, "2026-06-03", l.Sale(0).Date.String(), text)
			requireUSD(t, 268_000, l.Sale(0).Price)
			require.Equal(t, c.want.House, l.Sale(0).House, text)
		}
	}
	text := "Sold,Price,Longitude,Latitude,X,Y\n2026-06-03,268000,-83.5,41.6,484000,195000\n"
	l, found := read(t, text, Options{Plane: true})
	require.Len(t, found, 2)
	require.Equal(t, Place{X: 484000, Y: 195000, Known: true}, l.Sale(0).Place)
	l, _ = read(t, text, Options{Columns: map[string]string{"x": "X", "y": "Y"}})
	require.False(t, l.Sale(0).Place.Degrees)
	l, found = read(t, "Sold,Price,Full Baths,Half Baths,Total Baths\n2026-06-03,268000,1,1,2\n", Options{Columns: map[string]string{"baths": "Total Baths"}})
	require.Len(t, found, 2)
	require.Equal(t, Known(2), l.Sale(0).FullBaths)
}

// Half a place that columns names is told, and takes no whole one away.
func TestHalfAPlaceThatColumnsNames(t *testing.T) {
	const unread = `"E" is not read: no column holds the y beside it`
	for _, c := range []struct {
		head, cells string
		stated      map[string]string
		unread      []string
		want        Place
	}{
		{"Sold,Price,E", "484000", map[string]string{"x": "E"}, []string{unread}, Place{}},
		{"Sold,Price,E,Lon,Lat", "484000,-83.5,41.6", map[string]string{"x": "E"}, []string{unread}, Place{-83.5, 41.6, true, true}},
		{"Sold,Price,E,L", "484000,41.6", map[string]string{"x": "E", "latitude": "L"}, []string{`"L" is not read: no column holds the longitude beside it`, unread}, Place{}},
		{"Sold,Price,E,Y", "484000,195000", map[string]string{"x": "E"}, nil, Place{484000, 195000, false, true}},
	} {
		l, found := read(t, c.head+"\n2026-06-03,268000,"+c.cells+"\n", Options{Columns: c.stated})
		var said []string
		for _, d := range found {
			said = append(said, d.Message)
		}
		require.ElementsMatch(t, c.unread, said, c.head)
		require.Equal(t, c.want, l.Sale(0).Place, c.head)
	}
}

// A column without a heading that has cells is named among those that are not read.
func TestAColumnWithoutAHeading(t *testing.T) {
	l, _ := read(t, ",Sold,Price,,Roof,\n,2026-06-03,268000,,tin,\n,2026-06-04,261000,1310,tin,\n,2026-06-05,262000,1320,tin,\n", Options{})
	require.Equal(t, []string{"Roof", "column 4 without a heading"}, l.Unread)
}

// What is wanted of a lot that cannot be read is one.
func TestALotThatCannotBeRead(t *testing.T) {
	_, found := read(t, "Sold,Price,Lot acres\n2026-06-03,268000,.2A\n", Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Hint, "0.17 acres")
}

// A year of the list or of the tax is none in which a house was built.
func TestYearAfterTheSale(t *testing.T) {
	l, found := read(t, "Sold,Price,Year\n2024-06-03,268000,2026\n2026-06-03,268000,2026\n", Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, `"Year" is not read`)
	require.False(t, l.Sale(0).Built.Known)
	for header, like := range map[string]string{"Tax Year": "terms", "Year Remodeled": "terms", "Year Bilt": "year built", "QUALITY": "condition", "Sale Condition": "terms", "Lot Cond": "lot", "Parking Spaces": "terms", "Parking Total": "terms", "Garage Parking Spaces": "garage", "Parking Features": "garage"} {
		require.Equal(t, like, FieldLike(header, "terms"))
	}
}

// What columns gives to another is named, with what is read in its place.
func TestWhatColumnsPutsAsideIsNamed(t *testing.T) {
	stated := map[string]string{"price": "List price", "living area": "Total SqFt"}
	l, found := read(t, "Address,Sold,List price,Sold price,Above Grade SqFt,Total SqFt,Roof\n1 Elm St,2026-06-03,268000,261000,1310,1800,tin\n", Options{Columns: stated})
	requireUSD(t, 268_000, l.Sale(0).Price)
	require.Equal(t, []string{"Roof"}, l.Unread)
	require.Equal(t, []string{
		`sold.csv:1:25: warning: "Sold price" is not read: columns names "List price" as the price hint: if it should be read instead, say columns: {price: "Sold price"}`,
		`sold.csv:1:36: warning: "Above Grade SqFt" is not read: columns names "Total SqFt" as the living area hint: if it should be read instead, say columns: {living area: "Above Grade SqFt"}`,
	}, oneLine(found))
	_, found = read(t, "Sold,Price\n2026-06-03,268000\n", Options{Columns: map[string]string{"price": "Price"}})
	require.Empty(t, found)
}

// A lot is as large by a bare number in a column of acres as with the word behind it, or sales
// would differ from the house in nothing.
func TestAcresAreTheSameWithAndWithoutTheWord(t *testing.T) {
	for n := 1; n <= 300; n++ {
		acres := fmt.Sprintf("0.%02d", n)
		if n >= 100 {
			acres = fmt.Sprintf("%d.%02d", n/100, n%100)
		}
		for unit, word := range map[string]string{"acres": "acres", "m2": "m2"} {
			bare, err := area(acres, unit, 0, 1e9)
			require.NoError(t, err)
			said, err := area(acres+" "+word, "sqft", 0, 1e9)
			require.NoError(t, err)
			require.Equal(t, said, bare, "%s %s", acres, unit)
		}
	}
}

// Headings of county and agents' lists.
func TestHeadingsOfLastSalesAndOfWhatTheSellerPaid(t *testing.T) {
	for head, field := range map[string]string{
		"Last Sale Date": "date", "Recorded Date": "date", "SaleDate1": "date", "Last Sale Amount": "price", "Last Sale Price": "price",
		"Seller Paid": "concessions", "Buyer Credit": "concessions",
	} {
		require.Equal(t, field, FieldNamed(head), head)
	}
}

// A lot of a fraction of a square foot is one in acres, and the hint says how that is written.
func TestALotOfAFractionIsLikelyInAcres(t *testing.T) {
	_, found := read(t, "address;sale date;price;lot\n1 A St;2026-01-05;300000;0.18\n", Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "0.18 sq ft are no lot of a house")
	require.Contains(t, found[0].Hint, "7,405 sq ft or 0.18 acres")
}

// A total of baths may count the half ones of the column beside it already.
func TestHalfBathsBesideATotal(t *testing.T) {
	for _, c := range []struct {
		head, cells string
		want        House
		doubt       bool
	}{
		{"Total Baths,Half Baths", "2,1", House{}, true},
		{"Half Baths,Bathrooms Total", "1,3", House{}, true},
		{"Total Baths,Half Baths", "2,0", House{FullBaths: Known(2), HalfBaths: Known(0)}, false},
		{"Total Bathrooms,Half Baths", "2.5,1", House{FullBaths: Known(2), HalfBaths: Known(1)}, false},
		{"Total Baths,Half Baths", ",1", House{HalfBaths: Known(1)}, false},
		{"Baths,Half Baths", "2,1", House{FullBaths: Known(2), HalfBaths: Known(1)}, false},
		{"Baths,Roof", "2F1H,tin", House{FullBaths: Known(2), HalfBaths: Known(1)}, false},
	} {
		l, found := read(t, "Sold,Price,"+c.head+"\n2026-06-03,268000,"+c.cells+"\n", Options{})
		require.Equal(t, c.want, l.Sale(0).House, c.head+" "+c.cells)
		if !c.doubt {
			require.Empty(t, found, c.head+" "+c.cells)
			continue
		}
		require.Len(t, found, 1)
		require.Contains(t, found[0].Message, `Half Baths: "1" may be counted in the total of baths already`)
	}
	l, found := read(t, "Sold,Price,Total Baths,Half Baths\n2026-06-03,268000,2,1\n", Options{Columns: map[string]string{"full baths": "Total Baths"}})
	require.Empty(t, found)
	require.Equal(t, House{FullBaths: Known(2), HalfBaths: Known(1)}, l.Sale(0).House)
}

// Headings of agents, escrow and settlement, and those that dollars or a cut word tell.
func TestHeadingsOfAgentsAndEscrow(t *testing.T) {
	for head, want := range map[string]string{
		"Date Closed": "date", "Selling Date": "date", "Closing Price": "price", "Purchase Price": "price", "Total Acres": "lot", "Total Bathrooms": "baths",
		"Deed Date": "date", "Settlement Date": "date", "Close of Escrow": "date", "COE": "date", "Sold": "date",
		"Sold $": "price", "Sold ($)": "price", "SP": "price", "Sale $": "price",
		"Above Grade Finished Area": "living area", "Total Finished SqFt": "living area", "Above Grade Finished SqFt": "living area",
		"Overall Cond": "condition", "Car Garage": "garage cars", "Yr": "year built", "Prox": "distance", "Prox.": "distance",
		"Seller Contribution": "concessions", "Seller Contributions": "concessions",
	} {
		require.Equal(t, want, FieldNamed(head), head)
	}
	l, found := read(t, "Address,Sold,Sold $,Above Grade Finished SqFt,Yr\n12 Elm St,2026-06-03,268000,1310,1961\n", Options{})
	require.Empty(t, found)
	requireUSD(t, 268_000, l.Sale(0).Price)
	require.Equal(t, Known(1961), l.Sale(0).Built)
	_, found = read(t, "Address,Sold,Sold $,Yr\n12 Elm St,2026-06-03,268000,2026\n", Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "it holds the years of the sales")
}
