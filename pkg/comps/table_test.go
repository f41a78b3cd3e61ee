package comps

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The same invented sales, cut in every way that a record may be pasted in.
func TestTablesInAnyCut(t *testing.T) {
	csv := "Address,Sold on,Price,Sq Ft,Beds,Garage\n" +
		"14 Fern St,2026-01-12,201000,1400,3,2\n" +
		"9 Oak Ave,2026-02-20,186000,,3,none\n"
	want, found := read(t, csv, Options{})
	require.Empty(t, found)
	require.Equal(t, 2, want.Len())
	require.True(t, want.Sale(0).GarageCars.Known)
	require.Equal(t, Known(1400), want.Sale(0).Area)
	require.False(t, want.Sale(1).Area.Known)
	for name, text := range map[string]string{
		"tabs":       strings.ReplaceAll(csv, ",", "\t"),
		"semicolons": strings.ReplaceAll(csv, ",", ";"),
		"bars":       strings.ReplaceAll(csv, ",", " | "),
		"columns": `Address       Sold on      Price   Sq Ft  Beds  Garage
14 Fern St    2026-01-12  201000     1400     3  2
9 Oak Ave     2026-02-20  186000              3  none
`,
	} {
		got, found := read(t, text, Options{})
		require.Empty(t, found, name)
		require.Equal(t, want.sales, got.sales, name)
	}
}

// Headers that only the caller knows part the columns too.
func TestStatedHeadersPartColumns(t *testing.T) {
	l, found := read(t, "SALEDT      AMT\n2026-01-12  201000\n", Options{Columns: map[string]string{"date": "saledt", "price": "AMT"}})
	require.Empty(t, found)
	require.Equal(t, 1, l.Len())
}

func TestCellsOfColumnsHaveTheirPlace(t *testing.T) {
	_, found := read(t, "address    sold        price\nFern St    2026-01-12  about a lot\n", Options{})
	require.Len(t, found, 1)
	require.Equal(t, [3]int{2, 24, 11}, [3]int{found[0].Pos.Line, found[0].Pos.Col, found[0].Pos.Len})
}

// A comma inside an amount makes a cell too many; what is behind it is not misread.
func TestTooManyCells(t *testing.T) {
	l, found := read(t, "date,price,beds\n2026-01-12,$201,000,3\n2026-01-12,$201000,3,\n", Options{})
	require.Equal(t, 1, l.Len())
	require.Len(t, l.LeftOut, 1)
	require.Len(t, found, 1)
	require.Equal(t, "too-many-cells", found[0].Code)
	require.Equal(t, [2]int{2, 21}, [2]int{found[0].Pos.Line, found[0].Pos.Col})
	require.NotEmpty(t, found[0].Hint)
}

// Headers and days as databases and printed records write them.
func TestHeadersAndDaysOfRecords(t *testing.T) {
	want, _ := read(t, "date,price\n2026-05-04,201000\n", Options{})
	for _, text := range []string{
		"sold on,sold for\n2026-05-04 00:00:00,201000\n",
		"SaleDate,SalePrice\n20260504,201000\n",
		"sale_dt,SALE_AMT\n2026-05-04T00:00:00Z,201000\n",
		"transfer date,closed price\n2026-05-04,201000\n",
		"recorded,price\n2026-05-04,201000\n",
	} {
		got, found := read(t, text, Options{})
		require.Empty(t, found, text)
		require.Equal(t, want.sales, got.sales, text)
	}
	_, found := read(t, "date,price\n20261304,201000\n", Options{})
	require.Len(t, found, 1, "there is no month 13")
}

// The line below the headers is no sale.
func TestRuledLine(t *testing.T) {
	l, found := read(t, "|date|price|\n|---|:---:|\n|2026-05-04|201000|\n", Options{})
	require.Empty(t, found)
	require.Equal(t, [2]int{1, 1}, [2]int{l.Len(), l.Rows})
}

// A cell stands under its head as it does on the page, whatever bytes its letters take.
func TestCellsStandUnderTheirHeads(t *testing.T) {
	for _, address := range []string{"7 St. Clair – E", "7 Señor Ct    ", "7 Sen\u0303or Ct    ", "7 桜 Ct        "} {
		l, found := read(t, "address           sold         price      sq ft  beds  baths\n"+
			"5 O'Neil Ct       2026-06-03   $268,000   1,310         1.5\n"+
			address+"   2026-06-03   $261,000   1,310     3\n", Options{})
		require.Empty(t, found, address)
		for _, s := range l.Sales() {
			require.Equal(t, s.Label != "5 O'Neil Ct", s.Bedrooms.Known, s.Label)
			require.Equal(t, s.Label == "5 O'Neil Ct", s.FullBaths.Known, s.Label)
		}
	}
}

// Below headings typed with blanks, rows pasted with tabs keep their empty cells; tabs that
// only align are one; where neither makes up the columns, the row is left out.
func TestRowsWithTabsBelowHeadingsWithBlanks(t *testing.T) {
	const head = "address   sold   price   sq ft   beds   baths   garage\n"
	l, found := read(t, head+"12 Elm St\t2026-06-03\t268000\t1310\t3\t\t2\n14 Elm St\t2026-06-04\t262000\t1290\t3\t1\t\n16 Elm St\t2026-06-05\t261000\t1240\t3\t1\t2\n18 Elm St   2026-06-06\t261000\t1240\t3   1\t2\n", Options{})
	require.Empty(t, found)
	require.Equal(t, [2]bool{false, true}, [2]bool{l.Sale(0).FullBaths.Known, l.Sale(0).GarageCars.Known})
	require.Equal(t, Known(2), l.Sale(0).GarageCars)
	require.Equal(t, [2]bool{true, false}, [2]bool{l.Sale(1).FullBaths.Known, l.Sale(1).GarageCars.Known})
	for _, i := range []int{2, 3} {
		require.Equal(t, []Fact{Known(1240), Known(1), Known(2)}, []Fact{l.Sale(i).Area, l.Sale(i).FullBaths, l.Sale(i).GarageCars})
	}
	for row, cells := range map[string]int{"12 Elm St\t2026-06-03\t268000\t1310\t3\t2": 6, "12 Elm St\t2026-06-03\t268000\t\t3": 5, "12 Elm St\t\t2026-06-03\t\t268000\t\t1310\t\t3": 9, "12 Elm St\t2026-06-03\t268000\t1310\t\t2\t1\t7": 8} {
		l, found = read(t, head+row+"\n", Options{})
		require.Zero(t, l.Len())
		require.Len(t, l.LeftOut, 1)
		require.Equal(t, []string{fmt.Sprintf("sold.csv:2:1: error: 12 Elm St is left out: tabs part its row into %d cells, and the first row names 7 columns, so which is empty is not told\n  hint: write n/a where nothing is known, or part the first row by tabs too", cells)}, strs(found))
	}
}
