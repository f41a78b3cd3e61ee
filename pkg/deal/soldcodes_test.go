package deal_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Each code about sold houses is reached by the file of the catalogue that has its name.
func TestEachCodeOfSalesIsReachedAndReadsWell(t *testing.T) {
	n := 0
	for _, c := range deal.Codes() {
		if !deal.AboutComps(c.Name) {
			continue
		}
		n++
		var text []byte
		if c.Name == "unreadable" { // a line of over 64 KB, which no file is kept for
			text = []byte(minimal + "comps:\n  table: |\n    sold on  price\n    " + strings.Repeat("x  y", 20_000) + "\n")
		} else {
			var err error
			text, err = os.ReadFile(filepath.Join(testdata, "errors", c.Name+".yaml"))
			require.NoError(t, err)
		}
		_, found := deal.ReadWith(deal.Options{Open: func(string) ([]byte, error) { return nil, os.ErrNotExist }}, c.Name+".yaml", text)
		reached := false
		for _, d := range found {
			readsWell(t, d)
			reached = reached || d.Code == c.Name
		}
		require.True(t, reached, "%s: %v", c.Name, found)
	}
	require.Greater(t, n, 25)
}

// A whole list of a county is no mistake of the deal: what its rows lack is doubtful.
func TestBadRowsOfATableStopNothing(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(minimal+"comps:\n  table: |\n    sold on     price\n    2026-01-05  200000\n    never       100\n"))
	require.NotNil(t, d, "%v", found)
	require.False(t, found.HasErrors())
	require.Equal(t, 1, d.Comps.Usable)
}

// What a typed and a pasted sale say is the same, so is the value.
func TestTypedAndPastedAreAlike(t *testing.T) {
	const house = "house: {living area: 1480 sq ft, baths: 2, garage: 1}\n"
	typed, found := deal.Read("a.yaml", []byte(unvalued+house+"comps:\n  amounts: {square foot: $92}\n  sold:\n"+
		"    12 Elm St: {sold: 2025-11-14, price: $341k, concessions: $4,000, living area: 1520 sq ft, baths: 2.5, garage: 2 cars, distance: 0.4 mi}\n"+
		"    3 Oak Ave: {sold: 2025-10-02, price: $319,500, living area: 1410 sq ft, baths: 2, garage: none, distance: 900 ft}\n"))
	require.NotNil(t, typed, "%v", found)
	pasted, found := deal.Read("a.yaml", []byte(unvalued+house+"comps:\n  amounts: {square foot: $92}\n  table: |\n"+
		"    address    sold on     sale price  concessions  living area  baths  garage  distance\n"+
		"    12 Elm St  2025-11-14  341000      4000         1520         2.5    2 cars  0.4 mi\n"+
		"    3 Oak Ave  2025-10-02  319500                   1410         2      none    900 ft\n"))
	require.NotNil(t, pasted, "%v", found)
	a, ok := typed.ValueRange()
	require.True(t, ok)
	b, ok := pasted.ValueRange()
	require.True(t, ok)
	require.Equal(t, a, b)
	require.ElementsMatch(t, []int{8, 9}, []int{pasted.Comps.Place(&pasted.Comps.Value.Rows[0].Sold).Line, pasted.Comps.Place(&pasted.Comps.Value.Rows[1].Sold).Line})
}

// Two comps, one, none: wider ranges, then a refusal that says what would do.
func TestFewSales(t *testing.T) {
	const sale = "    %s Elm St: {sold: 2025-11-%s, price: $300k}\n"
	width := map[int]float64{}
	for n := 1; n <= 3; n++ {
		text := unvalued + "comps:\n  sold:\n"
		for i := range n {
			text += strings.NewReplacer("%s Elm", string(rune('1'+i))+" Elm", "11-%s", "11-1"+string(rune('1'+i))).Replace(sale)
		}
		d, found := deal.Read("a.yaml", []byte(text))
		require.NotNil(t, d, "%v", found)
		x, ok := d.ValueRange()
		require.True(t, ok)
		width[n] = x.High.Sub(x.Low).Div(x.Likely).InexactFloat64()
	}
	require.Greater(t, width[1], width[2])
	require.Greater(t, width[2], width[3])
	d, found := deal.Read("a.yaml", []byte(unvalued+"comps: {day: 2026-01-01}\n"))
	require.Nil(t, d)
	require.Len(t, found, 1, "said once")
	require.Equal(t, "missing-after-repair-value", found[0].Code)
	require.Equal(t, "the after-repair value is not given, and comps names no sale", found[0].Message)
}

// A place is compared with one said in the same way; where none of the sales has such, or
// says how far off it is, that is told.
func TestAPlaceThatNoSaleHas(t *testing.T) {
	says := func(house, columns, cells string) string {
		text := unvalued + "house: {" + house + "}\ncomps:\n  table: |\n    address, sold, price" + columns + "\n    1 Elm St, 2025-11-14, 341000" + cells + "\n    2 Elm St, 2025-11-16, 331000" + cells + "\n"
		_, found := deal.Read("a.yaml", []byte(text))
		for _, d := range found {
			if d.Code == "comps-not-told" {
				return d.Message
			}
		}
		return ""
	}
	const degrees, plane = "latitude: 41.66, longitude: -83.55", "x: 484668, y: 195270"
	require.Contains(t, says(degrees, "", ""), "the house says where it stands, and none of the sales does")
	require.Contains(t, says(plane, "", ""), "the house says where it stands, and")
	require.Contains(t, says(degrees, ", XCOORD_FT, YCOORD_FT", ", 1590118, 640649"), "the house says where it stands in degrees, and")
	require.Contains(t, says(plane, ", lat, lon", ", 41.6, -83.5"), "the house says where it stands on a plane, and")
	require.Empty(t, says(degrees, ", distance", ", 0.4 mi"))
	require.Empty(t, says(degrees, ", lat, lon", ", 41.6, -83.5"))
	require.Empty(t, says(plane, ", XCOORD_FT, YCOORD_FT", ", 1590118, 640649"))
}

// What most sales say and the house does not is told, with how to write it, and so is what the
// house says and no sale.
func TestWhatOneSideAloneSays(t *testing.T) {
	for _, x := range []struct{ house, columns, cells, want, hint string }{
		{"living area: 1480", ", sq ft, X, Y", ", 1500, 484668, 195270", "the sales say where they stand, the house does not", "x: 484668, y: 195270"},
		{"living area: 1480", ", sq ft, lat, lon", ", 1500, 41.6, -83.5", "the sales say where they stand, the house does not", "longitude: -83.5552, latitude: 41.6639"},
		{"lot: 0.2 acres", ", sq ft, lot acres, X, Y", ", 1500, 0.2, 484668, 195270", "the sales say size, where they stand, the house does not", "living area: 1,480 sq ft, x: 484668, y: 195270"},
		{"living area: 1480", ", sq ft, X, Y, distance", ", 1500, 484668, 195270, 0.4 mi", "", ""},
		{"living area: 1480, x: 484668", ", sq ft, X, Y", ", 1500, 484668, 195270", "", ""},
		{"living area: 1480", ", sq ft, type, stories", ", 1500, condo, 2", "the sales say type, storeys, the house does not", "type: single family"},
		{"living area: 1480, type: condo, levels: 2", ", sq ft, type, stories", ", 1500, condo, 2", "", ""},
		{"living area: 1480", ", sq ft, style", ", 1500, one+half", "the sales say storeys, the house does not", "storeys: 1.5"},
		{"living area: 1480, garage: 400 sq ft", ", sq ft, garage", ", 1500, 2 car", "", ""}, // told where it stands
		{"living area: 1480, stories: 1.5", ", sq ft, style", ", 1500, one+half", "", ""},
		{"living area: 1480, type: condo, levels: 2", ", sq ft", ", 1500", "the house says type, storeys, and none of the sales does", "add it to the sales"},
	} {
		d, found := deal.Read("a.yaml", []byte(unvalued+"house: {"+strings.Replace(x.house, "1480", "1480 sq ft", 1)+"}\ncomps:\n  table: |\n    address, sold, price"+x.columns+"\n    1 Elm St, 2025-11-14, 341000"+x.cells+"\n    2 Elm St, 2025-11-16, 331000"+x.cells+"\n"))
		require.NotNil(t, d, "%v", found)
		said, hint := "", ""
		for _, x := range found {
			if x.Code == "comps-not-compared" || x.Code == "comps-not-told" {
				said, hint = said+x.Message, hint+x.Hint
			}
		}
		if x.want == "" {
			require.Empty(t, said, x.house)
		}
		require.Contains(t, said, x.want, x.house)
		require.Contains(t, hint, x.hint, x.house)
	}
}

// A house says its storeys as a record does; where it does not, its levels tell them.
func TestStoreysOfTheHouse(t *testing.T) {
	for house, want := range map[string]string{
		"storeys: 1.5": "one and a half", "stories: 1½": "one and a half", "storeys: 1.5, levels: 2": "one and a half", "levels: 2": "two", "storeys: split level, levels: 2": "split level", "living area: 1480 sq ft": "",
	} {
		d, found := deal.Read("a.yaml", []byte(unvalued+"house: {"+house+"}\ncomps:\n  table: |\n    address, sold, price, style\n    1 Elm St, 2025-11-14, 341000, one+half\n    2 Elm St, 2025-11-16, 331000, one\n"))
		require.NotNil(t, d, "%v", found)
		require.Equal(t, want, d.Comps.Subject.Storeys, house)
	}
	_, found := deal.Read("a.yaml", []byte(unvalued+"house: {levels: 1.5}\n"))
	require.Contains(t, hintOf(found, "not-whole"), "storeys: 1.5")
	_, found = deal.Read("a.yaml", []byte(unvalued+"house: {style: cape}\n"))
	require.Contains(t, hintOf(found, "unknown-key"), "storeys")
}

// Sales of another type than the house are told, since nothing adjusts for that.
func TestSalesOfAnotherType(t *testing.T) {
	for house, want := range map[string]string{"single family": "2 of 3 sales are condo or duplex, the house is single family: type is not adjusted", "condo": "1 of 3 sales is duplex, the house is condo: type is not adjusted"} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {type: "+house+"}\ncomps:\n  sold:\n    1 Elm St: {sold: 2025-11-14, price: $341k, type: condo}\n    2 Elm St: {sold: 2025-11-15, price: $331k, type: duplex}\n    3 Elm St: {sold: 2025-11-16, price: $335k, type: "+house+"}\n"))
		require.True(t, slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == "comps-other-type" && d.Message == want }), "%v", found)
	}
}

// A header is wanted where one is, and a column without one wants a name.
func TestHeadersAndColumnsWithoutOne(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(unvalued+"comps:\n  columns: {price: [price]}\n  table: |\n    sold on, price\n    2026-01-01, 300000\n"))
	require.Equal(t, "write it like   price: AMT", found.Errors()[0].Hint)
	_, found = deal.Read("a.yaml", []byte(unvalued+"comps:\n  table: |\n    sold on, price,\n    2026-01-01, 300000, 1310\n"))
	require.True(t, slices.ContainsFunc(found, func(d diag.Diag) bool {
		return d.Message == "1 column of the table is not read: column 3 without a heading" && strings.Contains(d.Hint, "name it in the first row")
	}), "%v", found)
}

// Amounts and own lines that touch nothing are told, those that one side alone says as such,
// and an amount of nothing is none.
func TestAmountsThatAreUsedByNoSale(t *testing.T) {
	for house, want := range map[string][]string{
		"living area: 1480 sq ft":                        {`the amounts for a bath, a step of condition are used by no sale: neither the house nor most sales say what to compare`, `the own line "pool" is used by no sale: neither the house nor any sale has it`},
		"living area: 1480 sq ft, baths: 2, has: [pool]": {`the amount for a step of condition is used by no sale: neither the house nor most sales say what to compare`},
	} {
		d, found := deal.Read("a.yaml", []byte(unvalued+"house: {"+house+"}\ncomps:\n  amounts: {square foot: $92, bath: $9,500, bedroom: $0, step of condition: $17,500}\n  own lines: {pool: $12,000}\n  sold:\n    1 Elm St: {sold: 2025-11-14, price: $341k, living area: 1500 sq ft}\n"))
		require.NotNil(t, d, "%v", found)
		var said []string
		for _, x := range found {
			if x.Code == "comps-amount-unused" {
				said = append(said, x.Message)
			}
		}
		require.ElementsMatch(t, want, said, house)
	}
}

// An empty table is told where it stands, be it the last line of the file.
func TestAnEmptyTable(t *testing.T) {
	for _, text := range []string{"|\n", "|\n  day: 2026-01-01\n", `""` + "\n  day: 2026-01-01\n", "|\n\n    \n"} {
		text = unvalued + "comps:\n  table: " + text
		_, found := deal.Read("a.yaml", []byte(text))
		require.Len(t, found, 1, text)
		require.Equal(t, "the table is empty", found[0].Message)
		require.Equal(t, strings.Count(text[:strings.Index(text, "table:")], "\n")+1, found[0].Pos.Line)
	}
}

// Half a place of the house tells nothing, and that is told.
func TestHalfAPlace(t *testing.T) {
	for house, want := range map[string][]string{
		"x: 484668":                                 {"x is not used without y, so the house does not say where it stands"},
		"latitude: 41.66":                           {"latitude is not used without longitude, so the house does not say where it stands"},
		"x: 484668, latitude: 41.66":                {"x is not used without y, so the house does not say where it stands", "latitude is not used without longitude, so the house does not say where it stands"},
		"x: 484668, y: 195270":                      nil,
		"latitude: 41.66, longitude: -83.55, x: 12": {"x is not used without y"},
	} {
		d, found := deal.Read("a.yaml", []byte(unvalued+"house: {"+house+"}\ncomps:\n  table: |\n    address, sold, price, x, y\n    1 Elm St, 2025-11-14, 341000, 484700, 195300\n    2 Elm St, 2025-11-16, 331000, 484700, 195200\n"))
		require.NotNil(t, d, "%v", found)
		var said []string
		for _, x := range found {
			if x.Code == "doubtful-cell" {
				said = append(said, x.Message)
			}
		}
		require.ElementsMatch(t, want, said, house)
		require.Equal(t, len(want) == 0 || strings.Contains(house, "longitude"), d.Comps.Subject.Place.Known, house)
	}
}

// The order of the sales changes nothing but the order of the file.
func TestOrderOfSalesChangesNothing(t *testing.T) {
	const a, b, c = "    1 Elm St: {sold: 2025-11-14, price: $341k, living area: 1520 sq ft}\n", "    2 Elm St: {sold: 2025-10-02, price: $319k, living area: 1410 sq ft}\n", "    3 Elm St: {sold: 2025-09-09, price: $305k, living area: 1300 sq ft}\n"
	head := unvalued + "house: {living area: 1480 sq ft}\ncomps:\n  sold:\n"
	one, found := deal.Read("a.yaml", []byte(head+a+b+c))
	require.NotNil(t, one, "%v", found)
	other, found := deal.Read("a.yaml", []byte(head+c+a+b))
	require.NotNil(t, other, "%v", found)
	x, _ := one.ValueRange()
	y, _ := other.ValueRange()
	require.Equal(t, x, y)
	for i := range one.Comps.Members {
		require.Equal(t, one.Comps.Members[i].Label, other.Comps.Members[i].Label)
	}
}

// A value that follows the option taken: by hand, a step of condition is $10,000, and
// the one sale was in average condition.
func TestValueFollowsTheOption(t *testing.T) {
	text := []byte(unvalued + `scope: full gut
rooms:
  hall: {size: 4' x 9', options: {cosmetic: {adds: $1,000, work: {paint walls: own hands}}, full gut: {adds: $2,000, work: {paint walls: hired}}}}
  den: {size: 9' x 9', options: {cosmetic: {work: {paint walls: own hands}}, full gut: {work: {paint walls: hired}}}}
comps:
  condition by option: {as it is: fair, cosmetic: average, full gut: good}
  amounts: {step of condition: $10,000}
  sold: {1 Elm St: {sold: 2025-11-14, price: $300k, condition: average}}
`)
	for scope, want := range map[string]string{"full gut": "310000", "cosmetic": "300000", "as it is": "290000", "{hall: full gut, den: cosmetic}": "300000"} {
		d, found := deal.Read("a.yaml", text, deal.Set{Path: "scope", Value: scope})
		require.NotNil(t, d, "%v", found)
		x, ok := d.ValueRange()
		require.True(t, ok)
		require.Equal(t, want, x.Likely.String(), scope)
		c := d.Model.Find(d.Root, "after_repair_value")
		require.NoError(t, d.Known.Work(c.Index))
		require.Equal(t, want, d.Known.Values.Scalar[c.Index].String(), "what options add is in the value by their condition")
	}
	// without conditions by option, the value is that of the file's own scope, and
	// another moves it by what its options add
	plain := strings.Replace(string(text), "  condition by option: {as it is: fair, cosmetic: average, full gut: good}\n", "", 1)
	d, found := deal.Read("a.yaml", []byte(plain), deal.Set{Path: "scope", Value: "cosmetic"})
	require.NotNil(t, d, "%v", found)
	c := d.Model.Find(d.Root, "after_repair_value")
	require.NoError(t, d.Known.Work(c.Index))
	require.Equal(t, "299000", d.Known.Values.Scalar[c.Index].String())
}

// A low value and a lender's value of one's own follow the option as the value by the sold
// houses does, not by what the options add. By hand, a step of condition is $10,000.
func TestStatedValuesFollowTheCondition(t *testing.T) {
	text := []byte(unvalued + `scope: full gut
value: {low: $280k, lender's value: $305k}
rooms:
  hall: {size: 4' x 9', options: {cosmetic: {adds: $1,000, work: {paint walls: own hands}}, full gut: {adds: $7,000, work: {paint walls: hired}}}}
comps:
  condition by option: {as it is: fair, cosmetic: average, full gut: good}
  amounts: {step of condition: $10,000}
  sold: {1 Elm St: {sold: 2025-11-14, price: $300k, condition: average}}
`)
	for scope, want := range map[string][2]string{"full gut": {"280000", "305000"}, "cosmetic": {"270000", "295000"}, "as it is": {"260000", "285000"}} {
		d, found := deal.Read("a.yaml", text, deal.Set{Path: "scope", Value: scope})
		require.NotNil(t, d, "%v", found)
		require.Equal(t, want, [2]string{d.Root.Given.Of("low_value").Number.String(), d.Root.Given.Of("lender_value").Number.String()}, scope)
	}
	_, found := deal.Read("a.yaml", []byte(strings.Replace(string(text), "$280k", "$15k", 1)), deal.Set{Path: "scope", Value: "as it is"})
	require.Len(t, found.Errors(), 1)
	require.Contains(t, found.Errors()[0].Message, "the low comes to -$5,000: of the $15k stated, the sold houses take $20,000")
}

// What is not below the value with other options is said as it then is.
func TestLowNotBelowWithOtherOptions(t *testing.T) {
	text := []byte(unvalued + `scope: full gut
value: {low: $299k}
rooms:
  hall: {size: 4' x 9', options: {cosmetic: {adds: $1,000, work: {paint walls: own hands}}, full gut: {adds: $7,000, work: {paint walls: hired}}}}
comps:
  sold: {1 Elm St: {sold: 2025-11-14, price: $296k}}
`)
	_, found := deal.Read("a.yaml", text, deal.Set{Path: "scope", Value: "cosmetic"})
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "low-above-comps" })
	require.Contains(t, found[i].Message, "the low value ($299k, with the options asked for $293,000) is not below $290,000")
}

// The condition is the worst of the rooms': of one that stays, that of as it is; of one
// whose option has none, the house's. By hand, a step is $10,000 from average.
func TestTheWorstConditionCounts(t *testing.T) {
	const rooms = `scope: {all rooms: full gut}
house: {condition: average}
rooms:
  hall: {size: 4' x 9', options: {cosmetic: {work: {paint walls: own hands}}, full gut: {work: {paint walls: hired}}}}
  den: {size: 9' x 9', options: {cosmetic: {work: {paint walls: own hands}}, full gut: {work: {paint walls: hired}}}}
  porch: {size: 9' x 9', work: {paint walls: hired}}
comps:
  amounts: {step of condition: $10,000}
  sold: {1 Elm St: {sold: 2025-11-14, price: $300k, condition: average}}
`
	for _, c := range []struct{ conditions, scope, want string }{
		{"{as it is: fair, full gut: good}", "{all rooms: as it is, den: full gut}", "290000"},
		{"{as it is: fair, full gut: good}", "{all rooms: full gut, den: as it is}", "290000"},
		{"{as it is: fair, full gut: good}", "full gut", "310000"},
		{"{as it is: fair, full gut: good}", "cosmetic", "300000"},
		{"{full gut: good}", "{all rooms: cosmetic, den: full gut}", "300000"},
		{"{full gut: good}", "full gut", "310000"},
		{"{full gut: good}", "{all rooms: full gut, den: as it is}", "300000"},
		{"{full gut: good, cosmetic: excellent}", "{all rooms: full gut, den: cosmetic}", "310000"},
		{"{full gut: fair}", "{all rooms: cosmetic, den: full gut}", "290000"},
	} {
		d, found := deal.Read("a.yaml", []byte(unvalued+rooms+"  condition by option: "+c.conditions+"\n"), deal.Set{Path: "scope", Value: c.scope})
		require.NotNil(t, d, "%v", found)
		x, ok := d.ValueRange()
		require.True(t, ok)
		require.Equal(t, c.want, x.Likely.String(), "%s, %s", c.conditions, c.scope)
	}
	// where the house says none, the options alone tell
	text := strings.Replace(unvalued+rooms+"  condition by option: {full gut: good}\n", "house: {condition: average}\n", "", 1)
	d, found := deal.Read("a.yaml", []byte(text), deal.Set{Path: "scope", Value: "{all rooms: cosmetic, den: full gut}"})
	require.NotNil(t, d, "%v", found)
	x, _ := d.ValueRange()
	require.Equal(t, "310000", x.Likely.String())
}

// A sale that the deal writes out counts, not the row of a file that is the same sale.
func TestWrittenOutGoesBeforeTheFile(t *testing.T) {
	text := []byte(unvalued + "comps:\n  file: county.csv\n  sold: {12 Elm St: {sold: 2025-11-14, price: $300k, concessions: $8k}}\n")
	open := func(string) ([]byte, error) {
		return []byte("ADDRESS,SALE DATE,SALE PRICE,SQFT\n12 ELM ST,11/14/2025,300000,1310\n"), nil
	}
	d, found := deal.ReadWith(deal.Options{Open: open}, "a.yaml", text)
	require.NotNil(t, d, "%v", found)
	require.Len(t, d.Comps.Members, 1)
	require.Equal(t, "12 Elm St", d.Comps.Members[0].Label)
}

// Sales are struck and added by address and by line; what is asked beside the file
// counts as well.
func TestStrikeAndAddByName(t *testing.T) {
	text := []byte(unvalued + "comps:\n  strike: [1 Elm St]\n  table: |\n    address   sold on     price   deed\n" +
		"    1 Elm St  2025-11-14  300000  \n    2 Elm St  2025-11-15  310000  \n    3 Elm St  2025-11-16  320000  sheriff\n    4 Elm St  2025-11-17  330000\n")
	labels := func(how deal.Options) (out []string) {
		d, found := deal.ReadWith(how, "a.yaml", text)
		require.NotNil(t, d, "%v", found)
		for _, m := range d.Comps.Members {
			out = append(out, m.Label)
		}
		return out
	}
	require.ElementsMatch(t, []string{"2 Elm St", "4 Elm St"}, labels(deal.Options{}))
	require.ElementsMatch(t, []string{"3 Elm St", "4 Elm St"}, labels(deal.Options{Comps: deal.CompsAsked{Strike: []string{"line 8"}, Add: []string{"3 elm st"}}}))
}

// Where the condition comes from is told: the option that is the worst of those taken.
func TestConditionSaysItsOption(t *testing.T) {
	text := []byte(unvalued + `scope: full gut
house: {condition: average}
rooms:
  hall: {size: 4' x 9', options: {cosmetic: {work: {paint walls: own hands}}, full gut: {work: {paint walls: hired}}}}
comps:
  amounts: {step of condition: $10,000}
  condition by option: {full gut: good}
  sold: {1 Elm St: {sold: 2025-11-14, price: $300k, condition: average}}
`)
	for scope, want := range map[string]string{"full gut": "a.yaml:9 good, for the option full gut", "cosmetic": "a.yaml:4 average"} {
		d, found := deal.Read("a.yaml", text, deal.Set{Path: "scope", Value: scope})
		require.NotNil(t, d, "%v", found)
		v := d.Root.Given.Of("subject_condition")
		require.Equal(t, want, fmt.Sprintf("%s:%d %s", v.Pos.File, v.Pos.Line, v.Text))
	}
}

// A low value that the sold houses' own value does not bear is not used, and that is said;
// their low end is the low value then, as without it.
func TestLowNotBelowTheSoldHouses(t *testing.T) {
	const sold = "comps:\n  sold: {1 Elm St: {sold: 2025-11-14, price: $300k}, 2 Elm St: {sold: 2025-11-15, price: $310k}}\n"
	low := func(value string) (decimal.Decimal, []string) {
		d, found := deal.Read("a.yaml", []byte(unvalued+value+sold))
		require.NotNil(t, d, "%v", found)
		c := d.Model.Find(d.Root, "low_value")
		require.NoError(t, d.Known.Work(c.Index))
		var said []string
		for _, f := range found {
			said = append(said, f.Code)
		}
		return d.Known.Values.Scalar[c.Index], said
	}
	theirs, said := low("")
	require.NotContains(t, said, "low-above-comps")
	for _, value := range []string{"value: {low: $340k}\n", "value: {low: $311k}\n"} {
		x, said := low(value)
		require.Equal(t, theirs, x)
		require.Contains(t, said, "low-above-comps")
		require.NotContains(t, said, "low-above-options")
	}
	_, said = low("value: {low: $300k}\n") // theirs is far below
	require.Contains(t, said, "low-over-comps")
	_, said = low("value: {low: $200k}\n")
	require.NotContains(t, said, "low-over-comps")
	x, said := low("value: {low: $260k}\n")
	require.Equal(t, "260000", x.String())
	require.NotContains(t, said, "low-above-comps")
}

// The same holds of the sales that are written out.
func TestEveryMOfWrittenSalesIsTheSame(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(unvalued+"comps:\n  sold:\n    1 A St: {sold: 2025-11-14, price: $300k, distance: 0.4m}\n    2 A St: {sold: 2025-11-15, price: $310k, distance: 12m}\n    3 A St: {sold: 2025-11-16, price: $320k, distance: 1 mi}\n"))
	require.NotNil(t, d, "%v", found)
	miles := map[string]float64{}
	for _, row := range d.Comps.Value.Rows {
		miles[row.Label] = row.Distance.Value / comps.Mile
	}
	require.InDeltaMapValues(t, map[string]float64{"1 A St": 0.4, "2 A St": 12, "3 A St": 1}, miles, 1e-9)
	require.Contains(t, found.Error(), `a.yaml:6:56: warning: distance: "12m" is taken for miles, as`)
}

// Of a list a sale that adjustments leave nothing of is left out and named; one that the deal
// itself names is a mistake.
func TestASaleOfAListThatComesToNothingIsLeftOut(t *testing.T) {
	const list = "address,sold,price,lot\n1 Elm St,2025-11-14,200000,7000\n2 Elm St,2025-11-15,210000,7100\n3 Elm St,2025-11-16,220000,700000\n"
	text := unvalued + "house: {lot: 7000 sq ft}\ncomps:\n  amounts: {square foot of lot: $1}\n  file: county.csv\n"
	how := deal.Options{Open: func(string) ([]byte, error) { return []byte(list), nil }}
	d, found := deal.ReadWith(how, "a.yaml", []byte(text))
	require.NotNil(t, d, "%v", found)
	require.Len(t, d.Comps.Members, 2)
	require.Len(t, d.Comps.NotUsed, 1, "once")
	require.Equal(t, "3 Elm St", d.Comps.NotUsed[0].Label)
	require.Contains(t, found.Error(), "3 Elm St is adjusted to -$473,000, which is no price")
	_, found = deal.ReadWith(how, "a.yaml", []byte(text+"  add: [3 Elm St]\n"))
	require.Equal(t, "comps-no-price", found.Errors()[0].Code)
}

// One own line is not set by itself, and the hint names what works.
func TestOneOwnLineIsNotSet(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(unvalued+"comps:\n  own lines: {pool: $9,000}\n  sold: {1 Elm St: {sold: 2025-11-14, price: $296k}}\n"), deal.Set{Path: "comps.own lines.pool", Value: "$12k"})
	require.Contains(t, found.Errors()[0].Hint, "--set 'comps.own lines={pool: $12,000}'")
}

// Where nearly all sales differ from the house as much, the house is doubted, once, and
// not each of them; one odd sale among others is doubted itself.
func TestAMistypedHouseIsDoubtedAndNotItsSales(t *testing.T) {
	for _, c := range []struct {
		house, sales string
		want         map[string]int
	}{
		{"living area: 14800 sq ft", "1520|1410|1480", map[string]int{"house-unlike-sales": 1}},
		{"living area: 148 sq ft", "1520|1410|1480|300", map[string]int{"house-unlike-sales": 1}},
		{"living area: 1480 sq ft", "152|141|148", map[string]int{"house-unlike-sales": 1}},
		{"living area: 1480 sq ft", "15200|1410|1480", map[string]int{"sale-odd-size": 1}},
		{"living area: 1480 sq ft", "15200|150|14100", map[string]int{"sale-odd-size": 3}},
		{"living area: 3050 sq ft", "1520|1410|1480", map[string]int{"house-beyond-sales": 1}},
		{"living area: 700 sq ft", "1520|1410|1480", map[string]int{"house-beyond-sales": 1}},
		{"living area: 1901 sq ft", "1520|1410|1480", map[string]int{"house-beyond-sales": 1}},
		{"living area: 2120 sq ft", "1368|1980|1607|1502", map[string]int{"house-beyond-sales": 1}}, // but one
		{"living area: 2120 sq ft", "1368|1980|1890|1502", map[string]int{}},
		{"living area: 1120 sq ft", "1520|1410|1480", map[string]int{"house-beyond-sales": 1}},
		{"living area: 1850 sq ft", "1520|1410|1480", map[string]int{}},
		{"living area: 1185 sq ft", "1520|1410|1480", map[string]int{}},
		{"x: 400000, y: 100", "100|200|300", map[string]int{"house-unlike-sales": 1}},
		{"x: 150, y: 100", "100|200|400000", map[string]int{"sale-far-away": 1}},
	} {
		text := unvalued + "house: {" + c.house + "}\ncomps:\n  amounts: {square foot: $1}\n  table: |\n    address | sold on | price | " + map[bool]string{true: "living area | lot\n", false: "x | y\n"}[strings.HasPrefix(c.house, "living")]
		for i, s := range strings.Split(c.sales, "|") {
			text += fmt.Sprintf("    %d Elm St | 2025-10-%d | 30%d,000 | %s | 9000\n", i+1, 10+i, i, s)
		}
		d, found := deal.Read("a.yaml", []byte(text))
		require.NotNil(t, d, "%v", found)
		got := map[string]int{}
		for _, x := range found {
			if slices.Contains([]string{"house-unlike-sales", "house-beyond-sales", "sale-odd-size", "sale-far-away"}, x.Code) {
				got[x.Code]++
			}
		}
		require.Equal(t, c.want, got, "%s: %v", c.house, found)
		if got["house-unlike-sales"] > 0 {
			first := deal.WeightyFirst(found)[0]
			require.Equal(t, "house-unlike-sales", first.Code)
			require.Equal(t, c.sales == "152|141|148", strings.Contains(first.Message, "in square metres"), first.Message)
		}
	}
}

// What moves the value and is far from nearly all that sold nearby is doubted as the house's own,
// once; a house unlike its neighbours within reason is not.
func TestAMistypedFactOfTheHouseIsDoubted(t *testing.T) {
	const sales = "\ncomps:\n  amounts: {market a month: 0.3%}\n  table: |\n    address | sold on | price | lot | year built | beds | baths | cars\n" +
		"    1 Elm St | 2025-10-01 | 291,500 | 8153 | 1959 | 3 | 2 | 1\n    2 Elm St | 2025-10-02 | 256,000 | 7627 | 1968 | 2 | 2 | 2\n    3 Elm St | 2025-10-03 | 281,300 | 8019.4 | 1974 | 3 | 1 | 2\n    4 Elm St | 2025-10-04 | 345,000 | 48000 | 1965 | 4 | 2 | 1\n"
	for house, says := range map[string]string{
		"lot: 7000 sq ft":  "",
		"lot: 30000 sq ft": "",
		"lot: 70000 sq ft": "a lot of 70,000 sq ft, and the sales nearby about 8,019",
		"lot: 631 sq ft":   "a lot of 631 sq ft",
		"year built: 1895": "",
		"year built: 1698": "been built in 1698, and the sales nearby about 1965",
		"bedrooms: 6":      "",
		"bedrooms: 13":     "13 bedrooms",
		"garage: 3 car":    "",
		"garage: 9 car":    "room for 9 cars",
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {"+house+"}"+sales))
		var got []string
		for _, x := range found {
			if x.Code == deal.MistypedHouse {
				got = append(got, x.Message)
			}
		}
		if says == "" {
			require.Empty(t, got, house)
			continue
		}
		require.Len(t, got, 1, "%s: %v", house, found)
		require.Contains(t, got[0], says)
	}
}

// What a hint names fits what is missing, and no column is guessed at that is called like
// nothing.
func TestHintsOfSalesFit(t *testing.T) {
	for _, c := range []struct{ house, table, code, says, not string }{
		{"garage: 2 cars", "address | sold on | price | garage sqft\n1 Elm St | 2025-10-01 | 300,000 | 480", "comps-not-told", "garage cars", "holds it"},
		{"bedrooms: 3", "address | sold on | price | dom\n1 Elm St | 2025-10-01 | 300,000 | 4", "comps-not-told", "holds it (dom)", "columns"},
		{"bedrooms: 3", "address | sold on | price | bdr count\n1 Elm St | 2025-10-01 | 300,000 | 4", "comps-not-told", `{bedrooms: "bdr count"}`, "holds it:"},
		{"living area: 1480 sq ft", "address | sold on | price | sq ft | lot\n1 Elm St | 2025-10-01 | 300,000 | 1480 | 0.2 acres", "comps-not-compared", "lot: 0.16 acres", "living area"},
		{"bedrooms: 3", "address | sold on | price\n1 Elm St | 2025-10-01 | 300,000 | nice", "too-many-cells", "name each column in the first row", "leave the comma"},
		{"bedrooms: 3", "address | paid on | price\n1 Elm St | 2025-10-01 | 300,000", "no-column", `columns: {date: "..."}`, " ,"},
		{"living area: 1480 sq ft, bedrooms: 3", "address | sold on | price | sq ft | beds\n1 Elm St | 2025-10-01 | 300,000 | 1480 | 3\n2 Elm St | 2025-10-01 | 310,000 | 1400 | 17\n3 Elm St | 2025-10-01 | 310,000 | 1400 | 19", "comps-few", "a column of theirs", "add houses"},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {"+c.house+"}\ncomps:\n  table: |\n    "+strings.ReplaceAll(c.table, "\n", "\n    ")+"\n"))
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == c.code })
		require.GreaterOrEqual(t, i, 0, "%s: %v", c.code, found)
		require.Contains(t, found[i].Hint, c.says)
		require.NotContains(t, found[i].Hint, c.not)
	}
}

// The dearest sale is one that weighs and was not sold for over twice what the middle one was,
// in the doubts and in the lines.
func TestTheDearestSaleIsOneThatCounts(t *testing.T) {
	for says, last := range map[string]string{
		"": "$285,000, living area: 1190 sq ft",
		"44 Hill Rd not counted as that, which weighs": "$550,000, living area: 3400 sq ft",
		"44 Hill Rd not counted as that, far from":     "$640,000, living area: 1190 sq ft",
	} {
		d, found := deal.Read("a.yaml", []byte(minimal+"house: {living area: 1180 sq ft}\ncomps:\n  amounts: {square foot: $88}\n  sold:\n"+
			"    12 Elm St: {sold: 2025-11-14, price: $287,500, living area: 1150 sq ft}\n    3 Oak Ave: {sold: 2025-10-02, price: $279,000, living area: 1165 sq ft}\n"+
			"    27 Ash Ln: {sold: 2025-09-02, price: $268,900, living area: 1210 sq ft}\n    44 Hill Rd: {sold: 2025-10-02, price: "+last+"}\n"))
		require.NotNil(t, d, "%v", found)
		c := d.Model.Find(d.Root, "best_comp_price")
		require.NoError(t, d.Known.Work(c.Index))
		require.Equal(t, "287500", d.Known.Values.Scalar[c.Index].String(), says)
		at := slices.IndexFunc(found, func(f diag.Diag) bool { return f.Code == "above-best-sale" })
		require.GreaterOrEqual(t, at, 0, "%v", found)
		require.Contains(t, found[at].Message, "above $287,500, the most that any comparable sold for")
		require.Contains(t, found[at].Message, says)
		require.Equal(t, says != "", strings.Contains(found[at].Message, "not counted"))
		require.Equal(t, strings.Contains(says, "far"), strings.HasPrefix(d.Comps.DoubtApart(), "11% of it comes of 44 Hill Rd, sold for $640,000"), d.Comps.DoubtApart())
	}
}

// Of sales that are likely mistyped the one is named that most of the value comes of, however little
// it weighs, with that part of the value.
func TestTheSaleThatMovesTheValueIsNamed(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(unvalued+`house: {living area: 1200 sq ft, bedrooms: 3, baths: 1}
comps:
  table: |
    address|sold on|price|sq ft|beds|baths
    1 Elm St|2025-08-14|$250000|1200|3|1
    2 Oak St|2025-09-02|$262000|1290|3|1
    3 Ash St|2025-06-20|$241000|1150|3|1
    4 Fir St|2025-11-11|$25000000|1240|3|2
    5 Yew St|2025-04-03|$255000|1210|4|1
    6 Bay St|2026-01-11|$115000|1200|3|1
`))
	require.NotNil(t, d, "%v", found)
	v, sum := d.Comps.Value, 0.0
	parts := map[string]float64{}
	for i := range v.Rows {
		parts[v.Rows[i].Label] = v.Part(&v.Rows[i])
		sum += v.Part(&v.Rows[i])
		if v.Rows[i].Label == "4 Fir St" {
			require.Less(t, v.Rows[i].Weight, 0.01)
		}
	}
	require.InDelta(t, 1, sum, 1e-5)
	require.Greater(t, parts["4 Fir St"], parts["6 Bay St"])
	require.True(t, strings.HasPrefix(d.Comps.DoubtApart(), fmt.Sprintf("%.0f%% of it comes of 4 Fir St, sold for $25,000,000", 100*parts["4 Fir St"])), d.Comps.DoubtApart())
}

// A sale that is written out counts before a pasted row of which more is known, and where they
// differ that is said.
func TestWrittenOutGoesBeforeThePasted(t *testing.T) {
	d, found := deal.Read("a.yaml", []byte(unvalued+"house: {living area: 1180 sq ft}\ncomps:\n  sold:\n    3 Tansy Ct: {sold: 2025-05-20, price: $279k, living area: 1165 sq ft}\n"+
		"  table: |\n    address | sold | price | sqft | baths\n    3 Tansy Ct | 2025-05-20 | $279,000 | 1265 | 1\n    12 Lark | 2025-07-02 | $287,500 | 1150 | 1\n"))
	require.NotNil(t, d, "%v", found)
	for _, row := range d.Comps.Value.Rows {
		require.Equal(t, row.Label == "3 Tansy Ct", row.Area == comps.Known(1165))
	}
	at := slices.IndexFunc(found, func(f diag.Diag) bool { return f.Code == "doubtful-sale" })
	require.GreaterOrEqual(t, at, 0, "%v", found)
	require.Contains(t, found[at].Message, "the list already, and differs in size")
}

// A lot of many times that of the house is likely in another unit, whether it is adjusted or not.
func TestALotOfAnotherKindIsDoubted(t *testing.T) {
	for lot, want := range map[string]string{"16 acres": "1 Elm St has a lot of 696,960 sq ft, and the house one of 7,405", "2 acres": ""} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"house: {lot: 0.17 acres}\ncomps: {sold: {1 Elm St: {sold: 2025-10-11, price: $300k, lot: "+lot+"}}}\n"))
		says := ""
		for _, x := range found {
			if x.Code == "sale-odd-size" {
				says = x.Message
			}
		}
		require.Equal(t, want, says, "%v", found)
	}
}

// A house quite unlike the others, which weighs next to nothing, takes from them no amount that
// their pairs tell: where that leaves nothing of its price, it is left out and named.
func TestASaleUnlikeTheOthersTakesNothingFromThem(t *testing.T) {
	const land = unvalued + `house: {living area: 1400 sq ft, lot: 0.12 acres}
comps:
  amounts: {market a month: 0.3%}
  table: |
    address, sold, price, sq ft, lot acres
    10 Elm St, 2025-05-04, 255994, 1410, 0.6
    12 Elm St, 2025-12-02, 262063, 1418, 0.6
    14 Elm St, 2025-06-04, 211830, 1425, 0.25
    16 Elm St, 2025-05-04, 241320, 1415, 0.5
    18 Elm St, 2025-07-03, 237561, 1420, 0.5
    20 Elm St, 2025-05-04, 214759, 1404, 0.3
`
	alone := readDeal(t, land).Comps.Value
	require.Contains(t, alone.Linear, comps.Lot)
	d, found := deal.Read("a.yaml", []byte(land+"    90 Oak St, 2025-11-10, 372904, 1400, 4\n"))
	require.True(t, slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == "sale-far-off" && strings.Contains(d.Message, "90 Oak St") }), "%v", found)
	require.Equal(t, alone.Likely.String(), d.Comps.Value.Likely.String())
	const size = unvalued + `house: {living area: 1850 sq ft}
comps:
  amounts: {market a month: 0%}
  table: |
    address, sold, price, sq ft
    1 Elm St, 2025-11-04, 250000, 1500
    2 Elm St, 2025-11-05, 242000, 1400
    3 Elm St, 2025-11-06, 262000, 1650
    4 Elm St, 2025-11-07, 233000, 1300
    5 Elm St, 2025-11-08, 255000, 1560
`
	alone = readDeal(t, size).Comps.Value
	tiny := readDeal(t, size+"    90 Elm St, 2025-11-09, 150000, 700\n").Comps.Value
	require.Contains(t, tiny.Linear, comps.Size)
	require.InEpsilon(t, alone.Likely.InexactFloat64(), tiny.Likely.InexactFloat64(), 0.03)
}

// What columns names wants a table that has columns.
func TestColumnsWithoutATableAreDoubted(t *testing.T) {
	const sold = minimal + "comps:\n  sold: {12 Elm St: {sold: 2025-11-14, price: $341k}}\n"
	at := func(text string) (out []diag.Diag) {
		_, found := deal.Read("a.yaml", []byte(text))
		for _, d := range found {
			if d.Code == "columns-unread" {
				out = append(out, d)
			}
		}
		return out
	}
	found := at(sold + "  columns: {price: AMT}\n")
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "there is no table and no file that has any")
	require.Empty(t, at(sold+"  columns: {price: AMT}\n  table: |\n    sold on     AMT\n    2025-11-05  200000\n"))
}

// Words of table headers mean the key of a house that holds the same; what a sale has no
// key for is told as that.
func TestOtherWordsForWhatAHouseHas(t *testing.T) {
	for key, hint := range map[string]string{
		"bathrooms: 2": `did you mean "baths"?`, "bathroom: 2": `did you mean "baths"?`, "beds: 3": `did you mean "bedrooms"?`,
		"square feet: 1400": `did you mean "living area"?`, "sqft: 1400": `did you mean "living area"?`,
	} {
		for _, text := range []string{"house: {" + key + "}\n", "comps: {sold: {12 Elm St: {sold: 2025-11-14, price: $341k, " + key + "}}}\n"} {
			_, found := deal.Read("a.yaml", []byte(minimal+text))
			require.True(t, found.HasErrors(), text)
			require.Equal(t, hint, found[0].Hint, text)
		}
	}
	for key, says := range map[string][2]string{
		"list price: 338900":   {"what was asked for a house is not what it sold for", "leave it out; what it sold for stands as   price"},
		"asking price: 338900": {"what was asked", "leave it out"},
		"note: corner lot":     {"a sale has no note", "behind a #"},
		"notes: corner lot":    {"a sale has no note", "behind a #"},
		"seller credit: $3000": {"unknown key", `did you mean "concessions"?`},
	} {
		_, found := deal.Read("a.yaml", []byte(minimal+"comps: {sold: {12 Elm St: {sold: 2025-11-14, price: $341k, "+key+"}}}\n"))
		require.True(t, found.HasErrors(), key)
		require.Contains(t, found[0].Message, says[0], key)
		require.Contains(t, found[0].Hint, says[1], key)
	}
}

// A sale of little weight whose price has a digit too many still moves the value, so it is not
// said to weigh next to nothing.
func TestAFarPriceOfLittleWeightIsNotFaint(t *testing.T) {
	text := minimal + `house: {living area: 1290 sq ft, baths: 1.5}
comps:
  day: 2026-10-05
  amounts: {square foot: $92, bath: "$8,000", market a month: 0%}
  table: |
    address,sold on,price,sq ft,baths
    10 Plum St,2026-01-10,$230000,1200,1.5
    12 Plum St,2026-02-11,$240500,1255,1.5
    14 Plum St,2026-03-12,$234500,1310,1.5
    16 Plum St,2026-04-13,$245000,1222,1.5
    18 Plum St,2026-05-14,$239000,1277,1.5
    20 Plum St,2026-06-15,$233000,1332,1.5
    99 Oak Ave,2026-03-15,$2400000,1290,1.5
`
	d, found := deal.Read("far.yaml", []byte(text))
	require.NotNil(t, d, "%v", found)
	v := d.Comps.Value
	far := slices.IndexFunc(v.Rows, func(r comps.Row) bool { return r.Name() == "99 Oak Ave" })
	require.GreaterOrEqual(t, far, 0)
	require.Less(t, v.Rows[far].Weight, v.Slight())
	require.False(t, v.Faint(&v.Rows[far]))
	require.NotContains(t, found.Error(), "next to nothing")
}

// hintOf is the hint of what was found under a code.
func hintOf(found diag.List, code string) string {
	if i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == code }); i >= 0 {
		return found[i].Hint
	}
	return ""
}
