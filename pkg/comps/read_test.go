package comps

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

func read(t *testing.T, text string, o Options) (*List, diag.List) {
	t.Helper()
	return Read(strings.NewReader(text), "sold.csv", o)
}

func strs(l diag.List) []string {
	var out []string
	for _, d := range l {
		out = append(out, d.String())
	}
	return out
}

func TestReadAsPeopleWrite(t *testing.T) {
	l, found := read(t, "\ufeffAddress,Sold On,Sale Price,Seller Credit,Living Area,Lot (acres),Beds,Baths,Yr Built,Garage,Condition,Proximity,Stories\n"+
		"12 Elm St,\"May 14, 2026\",$285k,\"$3,000\",\"1,450 sq ft\",0.25,3,2.5,1957,2,good,0.4 mi,1.5\n"+
		",,,,,,,,,,,,\n"+
		"14 Elm St,5/2/2026,\"271,500\",,1380,\"9,000 sq ft\",3,1,1950,none,3,1000 ft,one\n", Options{})
	require.Empty(t, found)
	require.Equal(t, 2, l.Rows)
	a, b := l.Sale(1), l.Sale(0) // by date
	require.Equal(t, "12 Elm St", a.Label)
	require.Equal(t, 2, a.Line)
	require.Equal(t, "2026-05-14", a.Date.String())
	requireUSD(t, 285_000, a.Price)
	requireUSD(t, 282_000, a.Net())
	require.Equal(t, Known(1450), a.Area)
	require.Equal(t, Known(10_890), a.Lot, "a quarter of 43,560")
	require.Equal(t, Known(2), a.FullBaths)
	require.Equal(t, Known(1), a.HalfBaths)
	require.Equal(t, Known(2), a.GarageCars)
	require.Equal(t, Known(4), a.Condition)
	require.InDelta(t, 643.7376, a.Stated.Value, 1e-9, "0.4 miles of 1,609.344 m")
	require.Equal(t, "one and a half", a.Storeys)
	require.Equal(t, 4, b.Line)
	require.Equal(t, Known(9000), b.Lot)
	require.Equal(t, "none", b.Garage)
	require.InDelta(t, 304.8, b.Stated.Value, 1e-9)
}

func TestReadBadRows(t *testing.T) {
	l, found := read(t, "label,date,price,area\n"+
		"Señor Calle,2026-13-01,$200000,1400\n"+
		"a,2026-01-05,free,1400\n"+
		"b,2026-01-05,0,1400\n"+
		"c,2026-01-05,,1400\n"+
		"d,2026-01-05,150000,12\n"+
		"\"e\nf\",2026-01-05,160000,huge\n"+
		"g\n"+
		"h,2026-01-05,2026-05-03,1400\n"+
		"i,2026-01-05,5/3/2026,1400\n", Options{})
	require.Equal(t, 9, l.Rows)
	require.Len(t, l.LeftOut, 7)
	require.Equal(t, 2, l.Len())
	require.False(t, l.Sale(0).Area.Known)
	got := strings.Join(strs(found), "\n")
	for _, want := range []string{
		`sold.csv:2:13: error: Señor Calle is left out: date: "2026-13-01": "13" is not a month`,
		`sold.csv:3:14: error: a is left out: price: "free" is not`,
		`sold.csv:4:14: error: b is left out: price: a sale for "0" is none`,
		`sold.csv:5:14: error: c is left out: price: nothing is given`,
		`sold.csv:6:21: warning: d: area: "12" is out of bounds, so it counts as not known`,
		`sold.csv:8:22: warning: e f: area: "huge"`,
		`sold.csv:9:1: error: g is left out: date: nothing is given`,
		`sold.csv:10:14: error: h is left out: price: "2026-05-03" looks like a date; were day and price, or their columns, changed about?`,
		`sold.csv:11:14: error: i is left out: price: "5/3/2026" looks like a date`,
	} {
		require.Contains(t, got, want)
	}
	for _, d := range found {
		require.NotEmpty(t, d.Hint)
	}
}

// What people and counties call the living area, and what only looks like it.
func TestHeadingsOfTheLivingArea(t *testing.T) {
	for _, h := range []string{
		"Living Area", "area", "SQFT", "Sq. Ft.", "BLDG SQFT", "Bldg Area", "Bldg Sq. Ft.", "Total Sq Ft", "Heated SF", "Sqft Living", "sqft_living",
		"Living Sq Ft", "Liv Area", "Total Living Area", "TLA", "Above Grade Sq Ft", "Finished Sq Ft", "Fin SqFt", "Res Sq Ft", "Square Feet", "Square Feet Living",
		"GLA (sf)", "Apx SqFt", "Approx. Sq Ft", "House Size", "Home Sq Ft", "Interior Sq Ft", "Square Footage",
	} {
		l, found := read(t, "address,sale date,price,"+h+"\na,2026-01-05,300000,1111\n", Options{})
		if name, _ := plain(h); slices.Contains(ofMore, name) {
			require.Len(t, found, 1)
			require.Equal(t, "column-of-more", found[0].Code)
			_, found = read(t, "address,sale date,price,"+h+"\na,2026-01-05,300000,1111\n", Options{Columns: map[string]string{"living area": h}})
		}
		require.Empty(t, found, h)
		require.Equal(t, Known(1111), l.Sale(0).Area, h)
		require.Empty(t, l.Unread, h)
	}
	for _, h := range []string{"SqM", "m2", "sq m"} {
		l, found := read(t, "address,sale date,price,"+h+"\na,2026-01-05,300000,100\n", Options{})
		require.Empty(t, found, h)
		require.InDelta(t, 1076.39, l.Sale(0).Area.Value, 0.01, h)
	}
	for _, h := range []string{"Bldg", "Total", "Home", "Garage Sq Ft", "Basement Sq Ft", "sqft_lot", "sqft_basement"} {
		l, _ := read(t, "address,sale date,price,"+h+"\na,2026-01-05,300000,1111\n", Options{})
		require.False(t, l.Sale(0).Area.Known, h)
	}
	l, _ := read(t, "address,sale date,price,Bldg,Basement Sq Ft,sqft_lot,,\na,2026-01-05,300000,1111,900,5000,,\n", Options{})
	require.Equal(t, []string{"Bldg", "Basement Sq Ft"}, l.Unread)
	require.Equal(t, Known(5000), l.Sale(0).Lot)
}

// What counties and listing services call the rest, as they abbreviate it.
func TestShortHeadings(t *testing.T) {
	l, found := read(t, "SITUS,SALEDT,AMT,Seller Conc,Sq Feet,Acres,Bdrms,FBath,HBath,Yr Blt,Gar,XCOORD_FT,YCOORD_FT,Instr\n"+
		"3 Fox Ln,2026-01-05,300000,2500,1111,0.25,3,2,1,1957,2 car,1000,2000,QUIT CLAIM\n", Options{})
	require.Len(t, found, 1, "the deed")
	require.Empty(t, l.Unread)
	s := l.Sale(0)
	require.Equal(t, "2026-01-05", s.Date.String())
	requireUSD(t, 297_500, s.Net())
	require.Equal(t, House{Area: Known(1111), Lot: Known(10_890), Bedrooms: Known(3), FullBaths: Known(2), HalfBaths: Known(1), Built: Known(1957), GarageCars: Known(2),
		Place: Place{X: 304.8, Y: 609.6, Known: true}}, s.House)
	require.Equal(t, "quit claim", s.Terms)
	for h, want := range map[string]string{"Sales Price": "price", "Close Price": "price", "BA": "baths", "Instrument": "terms", "Deed": "terms", "Acre": "lot", "Lot Acreage": "lot", "Gar SF": "garage area", "Miles": "distance", "Seller Concessions Amt": "concessions"} {
		require.Equal(t, want, FieldNamed(h), h)
	}
	for _, h := range []string{"Prop Addr", "Property Addr", "Site Addr", "Street", "Property Location"} {
		require.Equal(t, "address", FieldNamed(h), h)
	}
	list, found := read(t, "sold,price,Acres\n2026-01-05,300000,0.25\n", Options{Columns: map[string]string{"lot": "Acres"}})
	require.Empty(t, found)
	require.Equal(t, Known(10_890), list.Sale(0).Lot, "stated, it is in acres still")
	for _, h := range []string{"AC", "Instrument Number", "Gar"} {
		require.NotEqual(t, "lot", FieldNamed(h), h)
	}
}

// Quarters of a bath count as they stand, tenths as half ones, which is doubted; none, or
// another part of one, is not known.
func TestPartsOfABath(t *testing.T) {
	for cell, want := range map[string]float64{"1": 1, "1.5": 1.5, "1.75": 1.75, "2.25": 2.25, "0.75": 0.75} {
		l, found := read(t, "sale date,price,baths\n2026-01-05,300000,"+cell+"\n", Options{})
		require.Empty(t, found)
		sale := l.Sale(0)
		require.Equal(t, Known(want), sale.Baths(), cell)
	}
	for cell, want := range map[string]Fact{"2.1": Known(2.5), "2.2": Known(3), "2.10": Known(2.5), "0": {}, "2.01": {}, "1.3": Known(2.5), "2.6": {}} {
		l, found := read(t, "sale date,price,baths\n2026-01-05,300000,"+cell+"\n", Options{})
		require.Len(t, found, 1, cell)
		require.Equal(t, "doubtful-cell", found[0].Code)
		sale := l.Sale(0)
		require.Equal(t, want.Known, sale.Baths().Known, cell)
		if want.Known {
			require.InDelta(t, want.Value, sale.Baths().Value, 1e-9, cell)
		}
	}
}

// No full bath and no half one are none, in whatever cells they stand; one half is half a bath.
func TestNoBathInTwoCells(t *testing.T) {
	for cells, want := range map[string]Fact{"full baths,half baths\n0,0": {}, "half baths,full baths\n,0": {}, "full baths\n0": {}, "baths\n0 full 0 half": {}, "baths\n0 full": {}, "full baths,half baths\n0,1": Known(0.5), "baths\n0 full 1 half": Known(0.5), "full baths,half baths\n1,0": Known(1)} {
		head, row, _ := strings.Cut(cells, "\n")
		l, found := read(t, "sale date,price,"+head+"\n2026-01-05,300000,"+row+"\n", Options{})
		sale := l.Sale(0)
		require.Equal(t, want, sale.Baths(), cells)
		require.Equal(t, want.Known, len(found) == 0, cells)
		for _, d := range found {
			require.Equal(t, "doubtful-cell", d.Code)
			require.Contains(t, d.Message, "baths count as not known")
		}
	}
}

// Days as spreadsheets write them, and cells that say that nothing is known.
func TestDaysWithTheMonthBetweenAndCellsOfNothing(t *testing.T) {
	for cell, want := range map[string]string{"04-Sep-2025": "2025-09-04", "12-Jan-26": "2026-01-12", "4-sep-2025": "2025-09-04", "September-14-2025": "2025-09-14", "Sept-14-2025": "2025-09-14", "14-September-2025": "2025-09-14"} {
		l, found := read(t, "sale date,price,sq ft,lot,beds\n"+cell+",300000,n/a,-,NA\n", Options{})
		require.Empty(t, found)
		require.Equal(t, want, l.Sale(0).Date.String())
		require.Equal(t, House{}, l.Sale(0).House)
	}
	_, found := read(t, "sale date,price,sq ft\n2026-01-05,300000,about 1400\n31/9/25,300000,1400\n", Options{})
	require.Len(t, found, 2)
	require.Contains(t, found[0].Message, `the row: sq ft: "about 1400": `)
	require.Contains(t, found[1].Message, "is left out")
}

// Days with the time that spreadsheets write behind them.
func TestDaysWithTheirTime(t *testing.T) {
	for _, cell := range []string{"6/3/2026 0:00", "6/3/2026 12:00:00 AM", "2026-06-03T00:00:00", "2026-06-03T00:00:00.000Z", "2026-06-03 14:30", "6/3/2026 2:30 p.m.", "Jun 3 2026 12:00AM", "6/3/26 0:00"} {
		l, _ := read(t, "sale date,price\n"+cell+",300000\n", Options{})
		require.Equal(t, 1, l.Len(), cell)
		require.Equal(t, "2026-06-03", l.Sale(0).Date.String(), cell)
	}
	l, _ := read(t, "sale date,price\n12:30,300000\n", Options{})
	require.Zero(t, l.Len())
}

// A row that sums up the others is no sale, whatever it holds.
func TestRowsOfSums(t *testing.T) {
	l, found := read(t, "Sold,Address,Price\n6/3/2026,12 Elm St,268000\n6/10/2026,Average,266467\n,TOTAL:,266467\n6/4/2026,Average Rd,268000\n", Options{})
	require.Equal(t, 2, l.Len())
	require.Len(t, l.LeftOut, 2)
	require.Len(t, found, 2)
	require.Equal(t, "sold.csv:3:11: warning: a row named \"Average\" is left out: it sums up the others, and is no sale\n  hint: take that row out of the table, or write the address of the house", found[0].String())
}

// Also where it stands without an address in a column that is not read.
func TestSumsWithoutAnAddress(t *testing.T) {
	l, found := read(t, "parcel no,address,sold,price\n1,12 Elm St,2026-06-03,268000\nAverage,,2026-05-05,259750\n", Options{})
	require.Equal(t, 1, l.Len())
	require.Contains(t, found[0].String(), `sold.csv:3:1: warning: a row named "Average" is left out`)
	l, _ = read(t, "condition,sold,price\naverage,2026-06-03,268000\n", Options{})
	require.Equal(t, 1, l.Len(), "a condition names no row")
}

func TestDistances(t *testing.T) {
	for cell, miles := range map[string]float64{
		"0.25": 0.25, ".25": 0.25, "0.25 mile": 0.25, "0.25 Miles": 0.25, "0.25mi": 0.25, "0.25 mi.": 0.25, "0.25 miles NW": 0.25, "1,000 m": 1000 / Mile, "2 km": 2000 / Mile, "528 ft": 0.1, "528'": 0.1,
		"1/4 mi": 0.25, "¼ mile": 0.25, "1 1/2 miles": 1.5, "1½ mi": 1.5, "2-1/2 mi": 2.5, "1/2 mile NW": 0.5, "1/8": 0.125,
	} {
		l, found := read(t, "sale date,price,distance\n2026-01-05,300000,\""+cell+"\"\n", Options{})
		require.Empty(t, found, cell)
		require.InDelta(t, miles, l.Sale(0).Stated.Value/Mile, 1e-9, cell)
	}
	_, found := read(t, "sale date,price,distance\n2026-01-05,300000,3 blocks\n", Options{})
	require.Len(t, found, 1)
	for _, cell := range []string{"half a mile", "about 0.5 mi", "5/4 mi"} {
		_, found = read(t, "sale date,price,distance\n2026-01-05,300000,"+cell+"\n", Options{})
		require.Len(t, found, 1, cell)
		require.NotContains(t, found[0].Message, "not a unit of length")
		require.Contains(t, found[0].Hint, "0.5 mi", cell)
	}
}

// Headings whose words only capitals part are read as those with blanks are.
func TestHeadingsOfOneWord(t *testing.T) {
	l, found := read(t, "UnparsedAddress,CloseDate,ClosePrice,LivingArea,BedroomsTotal,BathroomsFull,BathroomsHalf,LotSizeSquareFeet,YearBuilt,GarageSpaces,ConcessionsAmount\n12 Elm St,2026-06-03,268000,1310,3,1,1,7200,1951,2,3000\n", Options{})
	require.Empty(t, found)
	s := l.Sale(0)
	require.Equal(t, []any{"12 Elm St", "2026-06-03", "268000", "3000"}, []any{s.Label, s.Date.String(), s.Price.String(), s.Concessions.String()})
	require.Equal(t, []Fact{Known(1310), Known(3), Known(1), Known(1), Known(7200), Known(1951), Known(2)}, []Fact{s.Area, s.Bedrooms, s.FullBaths, s.HalfBaths, s.Lot, s.Built, s.GarageCars})
}

// 3/4 may be bedrooms and baths; no house has three quarters of a bedroom.
func TestPartsOfBedrooms(t *testing.T) {
	for _, cell := range []string{"3/4", "3/2", "2.5"} {
		l, found := read(t, "sale date,price,beds\n2026-01-05,300000,"+cell+"\n", Options{})
		require.Len(t, found, 1, cell)
		require.False(t, l.Sale(0).Bedrooms.Known, cell)
	}
}

// Two numbers of baths are refused with what would do; a part of one is read.
func TestBathsInTwoNumbers(t *testing.T) {
	for _, cell := range []string{"2/1", "1/1", "2-1", "2+1", "2 + 1"} {
		l, found := read(t, "sale date,price,baths\n2026-01-05,300000,"+cell+"\n", Options{})
		require.Len(t, found, 1, cell)
		require.Equal(t, "write which are which, e.g. 2 full 1 half, or 2.5", found[0].Hint, cell)
		require.False(t, l.Sale(0).FullBaths.Known)
	}
	l, found := read(t, "sale date,price,baths\n2026-01-05,300000,2 1/2\n", Options{})
	require.Empty(t, found)
	require.Equal(t, Known(2), l.Sale(0).FullBaths)
}

// However a list says how many storeys there are, it is the house's number of them.
func TestStoreys(t *testing.T) {
	for want, cells := range map[string][]string{
		"two":            {"2", "2.0", "2.00", "2 Story", "2 Stories", "2-Story", "Two", "two story", "2 levels", "Two-Storey"},
		"one":            {"1", "1.0", "One", "1 story", "single story"},
		"one and a half": {"1.5", "1.50", "1 1/2", "1-1/2 story", "one+half", "1.5 Stories"},
		"ranch":          {"Ranch"},
		"split level":    {"Split Level"},
		"three":          {"3", "three"},
		"4":              {"4", "4.0", "4 stories"},
	} {
		for _, cell := range cells {
			l, _ := read(t, "sale date,price,stories\n2026-01-05,300000,"+cell+"\n", Options{})
			require.Equal(t, want, l.Sale(0).Storeys, cell)
		}
	}
}

// A year of two digits is taken with the month first, and no bedroom is none that is known;
// either is doubted, once for all cells of a table.
func TestShortYearsAndNoBedroomsAreReadWithADoubt(t *testing.T) {
	l, found := read(t, "address,sold,price,beds\na,9/8/25,300000,0\nb,12/31/99,100000,0\nc,1/2/68,100000,3\n", Options{})
	require.Equal(t, []string{
		`sold.csv:2:3: warning: a: sold: "9/8/25" has a year of two digits; it is taken for September 8, 2025, the month first; and 2 more like it` + "\n" + `  hint: write the year in full, e.g. 9/14/2025 or 2025-09-14`,
		`sold.csv:2:17: warning: a: beds: "0" is hardly how many bedrooms a house has, so it counts as not known; and 1 more like it` + "\n" + `  hint: write how many there are, or nothing where that is not known`,
	}, strs(found))
	require.Empty(t, l.LeftOut)
	days := map[string]string{}
	for _, s := range l.Sales() {
		days[s.Label] = s.Date.String()
		require.Equal(t, s.Label == "c", s.Bedrooms.Known)
	}
	require.Equal(t, map[string]string{"a": "2025-09-08", "b": "1999-12-31", "c": "2068-01-02"}, days)
	l, found = read(t, "address,sold,price,beds\na,13/8/25,300000,2\n", Options{})
	require.Len(t, l.LeftOut, 1)
	require.Contains(t, found[0].Hint, "8/13/2025 if August is meant")
}

// Of two columns that may hold a thing the more telling is read, wherever it stands.
func TestTheMoreTellingColumnIsRead(t *testing.T) {
	l, found := read(t, "Parcel ID,Situs Address,Recorded,Sale Date,Price\n000123,3 Fox Ln,2026-02-05,2026-01-05,300000\n", Options{})
	require.Equal(t, "3 Fox Ln", l.Sale(0).Label)
	require.Equal(t, "2026-01-05", l.Sale(0).Date.String())
	require.Len(t, found, 1)
	require.Equal(t, `date is read from "Sale Date"; "Recorded" looks like it too`, found[0].Message)
	require.Equal(t, "if that is not so, say it under columns, e.g.   columns: {date: Recorded}", found[0].Hint)
}

// A quote that is not closed must not swallow rows without a word.
func TestOpenQuote(t *testing.T) {
	for _, text := range []string{
		"label,date,price\n\"a,2026-01-05,160000\n\"b\",2026-01-06,170000\n\"c\",2026-01-07,180000\n",
		"label,date,price\nz,2026-01-05,\"160000\n" + strings.Repeat("b,2026-01-06,170000\n", 5),
	} {
		l, found := read(t, text, Options{})
		require.Equal(t, l.Rows, len(l.LeftOut)+l.Len())
		require.Contains(t, strings.Join(strs(found), "\n"), "a quote that opens here takes up")
	}
}

func TestReadColumns(t *testing.T) {
	list, found := read(t, "WHEN,PAID,size_m2\n2026-01-05,200000,130\n", Options{Columns: map[string]string{"date": "when", "price": "PAID"}})
	require.Empty(t, found)
	require.InEpsilon(t, 1399.3083, list.Sale(0).Area.Value, 1e-6, "130 m2 / 0.09290304")

	_, found = read(t, "WHEN,PAID\n", Options{Columns: map[string]string{"dat": "WHEN", "price": "AMOUNT"}})
	require.Equal(t, []string{
		`sold.csv: error: there is no field "dat" hint: did you mean "date"?`,
		`sold.csv:1: error: there is no column "AMOUNT" for price hint: there are WHEN, PAID`,
		`sold.csv:1: error: no column holds the date of a sale hint: name one "sale date", or say which holds it, e.g. columns: {date: "..."}, and delete lines that stand above the row of headings; there are WHEN, PAID`,
		`sold.csv:1: error: no column holds the price of a sale hint: name one "sale price", or say which holds it, e.g. columns: {price: "..."}, and delete lines that stand above the row of headings; there are WHEN, PAID`,
	}, oneLine(found))

	list, found = read(t, "", Options{})
	require.Nil(t, list)
	require.Len(t, found, 1)

	_, found = read(t, "date,price,sale price\n", Options{})
	require.Contains(t, found[0].Message, `price is read from "sale price"; "price" looks like it too`)
}

func oneLine(l diag.List) []string {
	out := strs(l)
	for i := range out {
		out[i] = strings.Join(strings.Fields(out[i]), " ")
	}
	return out
}

func TestDoubtsAreFlagged(t *testing.T) {
	l, found := read(t, "date,price,label,deed\n"+
		"2026-01-05,200000,a,warranty\n2026-01-05,200000,a,warranty\n2026-09-05,200000,b,\n"+
		"2026-01-06,90000,c,Quit Claim\n2026-01-07,10,d,\n", Options{Today: quantity.Date{Year: 2026, Month: 6, Day: 1}})
	require.Equal(t, 5, l.Len(), "nothing is dropped")
	var flags []Flags
	for i := range l.Len() {
		flags = append(flags, l.Sale(i).Flags)
	}
	require.Equal(t, []Flags{0, Duplicate, NotOpen, Token, Future}, flags)
	require.Len(t, found, 4)
	require.Equal(t, "sold.csv:3: warning: a: the same sale stands in the list already", found[0].Error())
}

// One sale spelt twice is one: the same day, price and address however it is written, and
// nothing known of both that differs.
func TestOneSaleSpeltTwice(t *testing.T) {
	for _, other := range []string{"3 OAK ST", "3 Oak St.", "3 Oak Street", "3  oak  street", "3 Oak St,"} {
		l, _ := read(t, "address;sold;price;sq ft;beds\n3 Oak St;2026-04-02;243000;1200;3\n9 Elm Rd;2026-04-02;243000;1200;3\n"+other+";4/2/2026;243k;1200;\n", Options{})
		flagged := 0
		for _, s := range l.Sales() {
			if s.Flags == Duplicate {
				flagged++
			}
		}
		require.Equal(t, 1, flagged, other)
	}
	l, _ := read(t, "address;sold;price;sq ft;beds\n3 Oak St #2;2026-04-02;243000;1200;3\n3 Oak Street Apt 2;2026-04-12;243000;1206;2\n3 Oak St unit 3;2026-04-02;243000;1200;3\n", Options{})
	require.Equal(t, []Flags{0, 0, Again}, []Flags{l.Sale(0).Flags, l.Sale(1).Flags, l.Sale(2).Flags}, "of one address, though the records differ")
	for _, other := range []string{"3 Oak Ct;2026-04-02;243000;1200;3", "3 Oak Street;2026-05-03;243000;1200;3", "3 Oak Ct;2026-04-03;243000;1200;3", "3 Oak Street;2026-04-02;244000;1200;3", "13 Oak St;2026-04-02;243000;1200;3"} {
		l, _ := read(t, "address;sold;price;sq ft;beds\n3 Oak St;2026-04-02;243000;1200;3\n"+other+"\n", Options{})
		for _, s := range l.Sales() {
			require.Zero(t, s.Flags, other)
		}
	}
}

// None is nothing, and a share is asked for in dollars.
func TestConcessionsInWords(t *testing.T) {
	l, found := read(t, "address,sold,price,concessions\na 1,2026-04-02,243000,none\na 2,2026-04-03,243000,3%\n", Options{})
	require.True(t, l.Sale(0).Concessions.IsZero())
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, `"3%" is a share`)
	require.Contains(t, found[0].Hint, "$6,000 for 3% of $200,000")
}

// No house has 33 bedrooms.
func TestTooManyBedrooms(t *testing.T) {
	l, found := read(t, "address,sold,price,beds\na 1,2026-04-02,243000,33\na 2,2026-04-03,243000,20\n", Options{})
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, `"33" is hardly how many bedrooms a house has`)
	require.Equal(t, []Fact{{}, Known(20)}, []Fact{l.Sale(0).Bedrooms, l.Sale(1).Bedrooms})
}

// Without an address all that is said must agree for two rows to be one sale.
func TestRowsWithoutAnAddress(t *testing.T) {
	flags := func(rows string) Flags {
		l, _ := read(t, "sold;price;sq ft;distance;concessions;deed\n"+rows, Options{})
		return l.Sale(0).Flags | l.Sale(1).Flags
	}
	require.Equal(t, Duplicate, flags("2026-04-02;243000;1200;0.4 mi;2000;warranty\n2026-04-02;243000;1200;0.4 mi;2000;warranty\n"))
	for _, other := range []string{"0.5 mi;2000;warranty", "0.4 mi;;warranty", "0.4 mi;2000;cash"} {
		require.Zero(t, flags("2026-04-02;243000;1200;0.4 mi;2000;warranty\n2026-04-02;243000;1200;"+other+"\n"), other)
	}
}

// What is plainly in another unit, or has lost its point, counts as not known, with a doubt.
func TestCellsThatCannotBe(t *testing.T) {
	l, found := read(t, "address;sold;price;lot acres;baths;distance\na 1;2026-04-02;243000;7405;2.5;0.4\na 2;2026-04-03;244000;0.17;25;0.9m\na 3;2026-04-04;245000;0.2;1;600m\n", Options{})
	require.Len(t, found, 3)
	require.Contains(t, found[0].Message, `"7405" acres are hardly the lot of a house`)
	require.Contains(t, found[1].Message, `"25" is hardly how many baths a house has`)
	require.Contains(t, found[2].Message, `"0.9m" is taken for miles`)
	require.False(t, l.Sale(0).Lot.Known)
	require.False(t, l.Sale(1).FullBaths.Known)
	require.InDelta(t, 0.9*Mile, l.Sale(1).Stated.Value, 1e-9)
	require.InDelta(t, 600, l.Sale(2).Stated.Value, 1e-9)
	require.Equal(t, 2.0, l.Sale(0).FullBaths.Value)
}

// A column of shares is no column of dollars, and the reason for a day that is none is that
// there is none.
func TestSharesAndDaysThatAreNone(t *testing.T) {
	l, found := read(t, "address;sold;price;Seller Concessions %\na 1;2026-04-02;243000;3\na 2;06/31/26;243000;3\n", Options{})
	require.Equal(t, 1, l.Len())
	require.True(t, l.Sale(0).Concessions.IsZero())
	require.Len(t, found, 2)
	require.Contains(t, found[0].Message, `"Seller Concessions %" is not read: it holds shares`)
	require.Contains(t, found[1].Message, `"31" is not a day of June`)
}

// One that stands in the list again some days later at the same price was recorded twice: the
// row of which more is known counts, else the first, and a doubtful row takes none away.
func TestOneSaleRecordedTwice(t *testing.T) {
	const head = "address;sold;price;sq ft;beds;deed\n"
	flags := func(rows string, o Options) (out []Flags) {
		l, _ := read(t, head+rows, o)
		for _, s := range l.Sales() {
			out = append(out, s.Flags)
		}
		return out
	}
	require.Equal(t, []Flags{Again, 0, 0}, flags("3 Oak St;2026-04-02;243000;1200;;\n3 Oak Street;2026-05-02;243000;1200;3;\n3 Oak St;2026-06-20;243000;1200;3;\n", Options{}))
	require.Equal(t, []Flags{0, Again, Again}, flags("3 Oak St;2026-04-02;243000;1200;;\n3 Oak St;2026-04-27;243000;1200;;\n3 Oak St;2026-05-20;243000;1200;;\n", Options{}))
	require.Equal(t, []Flags{0, NotOpen}, flags("3 Oak St;2026-04-02;243000;1200;;\n3 Oak St;2026-04-07;243000;1200;;quit claim\n", Options{}))
	require.Equal(t, []Flags{NotOpen, 0}, flags("3 Oak St;2026-04-02;243000;1200;;quit claim\n3 Oak St;2026-04-07;243000;1200;;\n", Options{}))
	require.Equal(t, []Flags{Again, 0, Again}, flags("3 Oak St;2026-04-02;243000;1200;;\n3 Oak St;2026-04-27;243000;1200;3;\n3 Oak St;2026-05-20;243000;1200;;\n", Options{}))
	require.Equal(t, []Flags{0, Future}, flags("3 Oak St;2026-04-02;243000;1200;;\n3 Oak St;2026-04-27;243000;1200;3;\n", Options{Today: quantity.Date{Year: 2026, Month: 4, Day: 9}}), "what is not yet takes none away")
	_, found := read(t, head+"3 Oak St;2026-04-02;243000;1200;;\n3 Oak Street;4/3/26 0:00;243000;1200;3;\n", Options{})
	require.Contains(t, found.Error(), "it is taken for April 3, 2026")
	require.Contains(t, found.Error(), "likely one sale, recorded twice")
}

func TestManyBadCells(t *testing.T) {
	l, found := read(t, "date,price\n"+strings.Repeat("x,1\n", 5*enough), Options{})
	require.Len(t, l.LeftOut, 5*enough)
	require.Len(t, found, enough+1)
	require.Contains(t, strings.Join(strs(found), "\n"), "400 more cells could not be read")
}

// The short ways through plain cells agree with package quantity.
func TestShortWaysAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(
			rapid.StringMatching(`[0-9]{1,12}`), rapid.StringMatching(`[0-9]{4}-[0-9]{2}-[0-9]{2}`),
			rapid.StringMatching(`(19|20)[0-9]{2}-[01][0-9]-[0-3][0-9]`),
		).Draw(t, "text")
		d, err := day(text)
		full := text
		if len(text) == 8 && text >= "19000000" && text < "22000000" {
			full = text[:4] + "-" + text[4:6] + "-" + text[6:]
		}
		want, wantErr := quantity.ParseDate(full)
		require.Equal(t, wantErr, err)
		require.Equal(t, want, d)
		m, err := money(text)
		w, wantErr := quantity.ParseMoney(text)
		require.Equal(t, wantErr, err)
		require.True(t, w.Equal(m))
	})
}

func FuzzRead(f *testing.F) {
	f.Add("date,price,living area,lot,baths\n2026-01-05,$200k,\"1,400\",0.2 acres,1.5\n")
	f.Add("sale date,amount,x,y,lon,lat,distance\n5/1/2026,1e5,1e+05,-3,-83.5,41.6,2 km\n\"\n")
	f.Add("date,price\r\n2026-01-05,1.2m\r\n,,,\n\x00\xff,\ufeff")
	f.Fuzz(func(t *testing.T, text string) {
		l, found := Read(strings.NewReader(text), "f.csv", Options{})
		if l == nil {
			require.True(t, found.HasErrors())
			return
		}
		require.Equal(t, l.Rows, l.Len()+len(l.LeftOut), "every row is kept or said to be left out")
		for i := range l.Len() {
			s := l.Sale(i)
			require.Positive(t, s.Price.Sign())
			require.False(t, s.Date.IsZero())
		}
		for _, d := range found {
			require.NotEmpty(t, d.Message)
		}
		v, err := l.Before(quantity.Date{Year: 2100, Month: 1, Day: 1}).Choose(townSubject(), Wish{}).Value()
		if err == nil {
			requireWeights(t, v)
		}
	})
}

func requireWeights(t *testing.T, v *Value) {
	sum := 0.0
	for _, r := range v.Rows {
		sum += r.Weight
	}
	require.InDelta(t, 1, sum, 1e-9)
}

// Cells as lists shorten them.
func TestReadShortened(t *testing.T) {
	for cell, want := range map[string][2]Fact{"2F 1H": {Known(2), Known(1)}, "2f/1h": {Known(2), Known(1)}, "2 full, 1 half": {Known(2), Known(1)}, "1 full and 2 half": {Known(1), Known(2)}, "2.5 baths": {Known(2), Known(1)}, "1 bath": {Known(1), Known(0)}, "2.5ba": {Known(2), Known(1)}, "2 full baths, 1 half bath": {Known(2), Known(1)}, "2F": {Known(2), Known(0)}, "1 Full": {Known(1), Known(0)}} {
		l, found := read(t, "sale date,price,baths\n2026-06-03,268000,\""+cell+"\"\n", Options{})
		require.Empty(t, found, cell)
		require.Equal(t, want, [2]Fact{l.Sale(0).FullBaths, l.Sale(0).HalfBaths}, cell)
	}
	l, found := read(t, "sale date,price,lot,condition\n06-13-2026,268000,.15 ac,Avg\n13-6-2026,268000,0.5 acres,avg.\n06-06-2026,268000,.18 acre,average\n", Options{})
	require.Empty(t, found)
	for i, want := range []string{"2026-06-06", "2026-06-13", "2026-06-13"} {
		require.Equal(t, want, l.Sale(i).Date.String())
		require.Equal(t, Known(3), l.Sale(i).Condition)
		require.True(t, l.Sale(i).Lot.Known)
	}
	l, found = read(t, "address,sale date,price\n12 Elm St,06-03-2026,268000\n13 Elm St,31-31-2026,268000\n", Options{})
	require.Zero(t, l.Len())
	require.Contains(t, found[0].Message, `12 Elm St is left out: sale date: "06-03-2026" may be June 3, 2026 or March 6, 2026`)
	require.Contains(t, found[1].Message, "13 Elm St is left out")
	require.Equal(t, "25.2% 30% 25.04%", beyond(0.252, 0.25)+" "+beyond(0.3, 0.25)+" "+beyond(0.2504, 0.25))
}

// What is to be written instead is what the column wants, and not any number or length.
func TestHintsSayWhatTheColumnWants(t *testing.T) {
	for cell, want := range map[string]string{
		"beds:3/2": "write how many there are, e.g. 3", "beds:three": "write how many there are, e.g. 3",
		"built:c. 1958": "write the year it was built, e.g. 1957", "built:1950s": "write the year it was built, e.g. 1957", "built:new": "write the year it was built, e.g. 1957",
		"distance:-0.3": "write how many miles off it is, e.g. 0.4 miles", "distance:<0.5": "write how many miles off it is, e.g. 0.4 miles", "distance:next door": "write how many miles off it is, e.g. 0.4 miles",
	} {
		head, text, _ := strings.Cut(cell, ":")
		_, found := read(t, "sold,price,"+head+"\n2026-06-03,268000,"+text+"\n", Options{})
		require.Len(t, found, 1, cell)
		require.Equal(t, want, found[0].Hint, cell)
	}
}

// Single blanks part no columns, and that is said, not that there are no columns to read.
func TestSingleBlanksPartNothing(t *testing.T) {
	_, found := read(t, "address sold price sqft\n12 Elm St 2026-06-03 268000 1310\n", Options{})
	require.Len(t, found, 1)
	require.Equal(t, "no-column", found[0].Code)
	require.Contains(t, found[0].Message, "no comma, tab, semicolon or bar, and no two blanks")
	_, found = read(t, "sold\n2026-06-03\n", Options{})
	require.Contains(t, found[0].Message, "no column holds the price of a sale")
}

// A day that can only have the day first makes those doubtful that may have either first.
func TestDaysWithTheDayFirst(t *testing.T) {
	rows := "address,sold,price\n1 Elm,03/04/2025,243000\n2 Elm,05/05/2025,244000\n3 Elm,2025-04-06,245000\n4 Elm,7/8/2025,246000\n"
	for row, doubted := range map[string]bool{
		"": false, "5 Elm,04/25/2025,247000\n": false, "5 Elm,04-25-2025,247000\n": false, "5 Elm,04-05-2025,247000\n": false,
		"5 Elm,25/03/2025,247000\n": true, "5 Elm,25-03-2025,247000\n": true, "5 Elm,25/13/2025,247000\n": false,
	} {
		_, found := read(t, rows+row, Options{})
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "doubtful-cell" })
		require.Equal(t, doubted, i >= 0, "%s %v", row, found)
		if doubted {
			require.Equal(t, 2, found[i].Pos.Line)
			require.Contains(t, found[i].Message, `1 Elm: sold: "03/04/2025" is taken for March 4, 2025, the month first`)
			require.Contains(t, found[i].Message, "and 1 more like it")
		}
	}
}

// Pages that are pasted one below the other name their columns in each.
func TestARowOfHeadersAgainIsPassedOver(t *testing.T) {
	for _, text := range []string{
		"address,sale date,price,note\na,2026-01-05,300000,x\n Address,Sale Date,PRICE,other\nb,2026-02-05,310000,y\n",
		"address  sale date   price\na        2026-01-05  300000\naddress  sale date   price\nb        2026-02-05  310000\n",
	} {
		l, found := read(t, text, Options{})
		require.Empty(t, found)
		require.Equal(t, []string{LikeFirst}, l.LeftOut)
		require.Equal(t, 2, l.Len())
		require.Equal(t, 3, l.Rows)
	}
}
