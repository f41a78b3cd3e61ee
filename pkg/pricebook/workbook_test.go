package pricebook_test

import (
	"archive/zip"
	"bytes"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// A sheet is what a workbook is made of in a test: rows of cells; a text that begins with
// an equals sign is a formula.
func sheetOf(t testing.TB, f *excelize.File, sheet string, rows [][]any) {
	for i, row := range rows {
		for j, v := range row {
			cell, err := excelize.CoordinatesToCellName(j+1, i+1)
			require.NoError(t, err)
			if s, is := v.(string); is && strings.HasPrefix(s, "=") {
				require.NoError(t, f.SetCellFormula(sheet, cell, s[1:]))
				continue
			}
			if x, is := v.(formatted); is {
				style, err := f.NewStyle(&x.style)
				require.NoError(t, err)
				require.NoError(t, f.SetCellStyle(sheet, cell, cell, style))
				v = x.value
			}
			require.NoError(t, f.SetCellValue(sheet, cell, v))
		}
	}
}

// formatted is a number with the format that it is shown in.
type formatted struct {
	value float64
	style excelize.Style
}

func share(x float64) formatted { return formatted{x, excelize.Style{NumFmt: 10}} }

func custom(x float64, format string) formatted {
	return formatted{x, excelize.Style{CustomNumFmt: &format}}
}

func saved(t testing.TB, f *excelize.File) []byte {
	var w bytes.Buffer
	_, err := f.WriteTo(&w)
	require.NoError(t, err)
	return w.Bytes()
}

func workbook(t testing.TB, sheet string, rows ...[]any) []byte {
	f := excelize.NewFile()
	require.NoError(t, f.SetSheetName("Sheet1", sheet))
	sheetOf(t, f, sheet, rows)
	return saved(t, f)
}

var formHead = []any{"item", "trade", "room", "what is done", "quantity", "unit", "coats", "room size", "unit price", "labour", "total", "lead time", "remarks"}

func bid(item string, quantity, coats float64, unitPrice, labour, total any) []any {
	unit := "sq ft"
	if item == "" { // a line of the deal
		unit = "job"
	}
	return []any{item, "flooring", "hall", "lay it", quantity, unit, coats, "", unitPrice, labour, total, "2 weeks", "fine"}
}

func form(t testing.TB, rows ...[]any) []byte {
	all := [][]any{{"Bid form: flooring"}, {"27 Elm"}, {"please"}, {"from", "Fern Street"}, {"day", "2026-10-02"}, {}, {}, {}, formHead}
	return workbook(t, pricebook.FormSheet, append(all, rows...)...)
}

func TestFormIsReadBack(t *testing.T) {
	b := read(t, below, nil)
	quotes, ignored, found := pricebook.ReadWorkbook("bid.xlsx", form(t,
		bid("lay oak", 40, 1, 4.35, nil, 300),
		bid("lay oak", 10, 1, 4.35, 43.5, nil), // the same in another room
		bid("oak transition", 3, 1, nil, nil, nil),
	), b)
	require.Empty(t, found)
	require.Equal(t, []string{"total", "lead time", "remarks"}, ignored)
	require.Len(t, quotes, 1)
	q := quotes[0]
	require.Equal(t, "lay oak", q.Name)
	require.True(t, q.Item)
	require.Equal(t, "4.35", q.Price.String())
	require.Equal(t, "Fern Street", q.Source)
	require.Equal(t, "2026-10-02", q.Dated.String())
	require.Equal(t, "bid.xlsx: Bid form!A10", q.Pos.String())
}

// Labour of $174 for 40 sq ft in two coats is 174 / 40 / 2 = $2.175 for a foot and coat.
func TestFormPricesByLabourAndCoats(t *testing.T) {
	b := read(t, below, nil)
	for _, row := range [][]any{bid("lay oak", 40, 2, nil, 174, nil), bid("lay oak", 40, 2, 4.35, 174, nil), bid("lay oak", 40, 2, "$4.35", nil, nil), bid("lay oak", 40, 2, "$4.35 per sq ft", nil, nil)} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row), b)
		require.Empty(t, found)
		require.Equal(t, "2.175", quotes[0].Price.String())
	}
}

// A price for all coats is not taken for one of a single coat where the form lost them.
func TestAFormWithoutCoatsIsRefused(t *testing.T) {
	b := read(t, below, nil)
	for _, row := range [][]any{bid("lay oak", 40, 2, 4.35, nil, nil), bid("lay oak", 40, 2, nil, 174, nil)} {
		row[6] = nil
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row), b)
		require.Empty(t, quotes)
		require.Equal(t, "the row has a price, but not for how many coats", found[0].Message)
	}
	empty := bid("lay oak", 40, 2, nil, nil, nil) // nobody bids on it
	empty[6] = nil
	_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, empty, bid("lay oak", 10, 1, 4.35, nil, nil)), b)
	require.Empty(t, found)
}

// Labour rounded to whole dollars is of one price where the roundings allow one: of $0.70
// for a foot, 101 and 33 ft come to $70.70 and $23.10, so $71 and $23; those allow $0.698 to
// $0.708 and $0.682 to $0.712. The price is the first's, $0.703, as far as both allow it, and
// the one unit price where there is one. $24 for 33 ft is of $0.712 at least.
func TestRoundedLabourIsOfOnePrice(t *testing.T) {
	b := read(t, below, nil)
	one, two := bid("lay oak", 101, 1, nil, 71, nil), bid("lay oak", 33, 1, nil, 23, nil)
	for _, x := range []struct {
		rows []([]any)
		want string
	}{
		{[][]any{one, two}, "0.703"}, {[][]any{two, one}, "0.698"},
		{[][]any{one, bid("lay oak", 10, 1, 0.7, nil, nil), two}, "0.7"},
		{[][]any{bid("lay oak", 101, 1, 0.7, 71, nil), two}, "0.7"},
	} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, x.rows...), b)
		require.Empty(t, found)
		require.Equal(t, x.want, quotes[0].Price.String())
	}
	_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, one, bid("lay oak", 33, 1, nil, 24, nil)), b)
	require.Equal(t, "quotes-twice", found[0].Code)
}

// What a sheet holds as a number is one, not a text that could be read as one.
func TestNumbersOfASheetAreNumbers(t *testing.T) {
	good := form(t, bid("lay oak", 40, 1, 4.35, nil, nil))
	z, err := zip.NewReader(bytes.NewReader(good), int64(len(good)))
	require.NoError(t, err)
	sheet := partOf(t, z, sheetPart)
	require.Contains(t, sheet, "<v>4.35</v>")
	for _, x := range []string{"1_0", "0x10", "$10", "inf", "1,000"} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", repacked(t, good, sheetPart, strings.NewReader(strings.Replace(sheet, "<v>4.35</v>", "<v>"+x+"</v>", 1))), read(t, below, nil))
		require.Empty(t, quotes, x)
		require.Equal(t, "quotes-cell", found[0].Code)
		require.Contains(t, found[0].Message, `holds "`+x+`" as a number`)
	}
}

// A price of 0 is doubted: whoever does not bid may have typed it.
func TestPriceOfNothingIsDoubted(t *testing.T) {
	for _, row := range [][]any{bid("lay oak", 40, 1, 0, nil, nil), bid("lay oak", 40, 1, nil, 0, nil)} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row), read(t, below, nil))
		require.Len(t, quotes, 1)
		require.Len(t, found, 1)
		require.False(t, found.HasErrors())
		require.Contains(t, found[0].Message, `the price of "lay oak" is 0`)
		require.Contains(t, found[0].Hint, "leave the price empty")
	}
	_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, "none", nil, nil)), read(t, below, nil))
	require.Empty(t, found)
}

// Money in the format of a currency, of any country's sheet, is no date.
func TestFormatsOfMoney(t *testing.T) {
	for _, format := range []string{`[$$-409]#,##0.00`, `_-$* #,##0.00_-;\-$* #,##0.00_-`, `[Red]0.00`, `[$USD] #,##0.00`, `[$US$-409]0`} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, custom(5, format), nil, nil)), read(t, below, nil))
		require.Empty(t, found, format)
		require.Equal(t, "5", quotes[0].Price.String())
	}
}

// Money in the format of another currency is no price, wherever it stands.
func TestFormatsOfOtherMoney(t *testing.T) {
	for format, sign := range map[string]string{`[$€-407]#,##0.00`: "€", `#,##0.00\ "€"`: "€", `#,##0.00\ [$kr-41D]`: "kr", `#,##0.00" EUR"`: "EUR", `[$CA$-1009]0.00`: "CA$", `£#,##0`: "£", `_-* #,##0.00\ [$CHF]_-`: "CHF"} {
		for i, row := range [][]any{bid("lay oak", 40, 1, custom(5, format), nil, nil), bid("lay oak", 40, 1, nil, custom(5, format), nil), bid("lay oak", 40, 1, nil, nil, custom(5, format)), bid("", 40, 1, custom(5, format), nil, nil)} {
			quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row), read(t, below, nil))
			require.Empty(t, quotes, format)
			require.Len(t, found.Errors(), 1, format)
			require.Equal(t, "quotes-price", found[0].Code)
			require.Equal(t, "Bid form!"+[]string{"I10", "J10", "K10", "I10"}[i], found[0].Pos.Cell)
			require.Equal(t, `the cell shows its number in "`+sign+`", which is not US dollars`, found[0].Message)
		}
	}
	_, _, found := pricebook.ReadWorkbook("q.xlsx", workbook(t, "x", []any{"Name", "Price"}, []any{"oak strip", custom(95, "0.00 [$€-1]")}), read(t, below, nil))
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, `shows its number in "€"`)
}

// A sheet of another country may say its own format for one that has a number everywhere.
func TestFormatOfANumberSaidAnew(t *testing.T) {
	f, err := excelize.OpenReader(bytes.NewReader(form(t, bid("lay oak", 40, 1, formatted{5, excelize.Style{NumFmt: 44}}, nil, nil))))
	require.NoError(t, err)
	plain := saved(t, f)
	quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", plain, read(t, below, nil))
	require.Empty(t, found)
	require.Len(t, quotes, 1)
	z, err := zip.NewReader(bytes.NewReader(plain), int64(len(plain)))
	require.NoError(t, err)
	styles := partOf(t, z, "xl/styles.xml")
	at := strings.Index(styles, "<fonts")
	require.Positive(t, at)
	styles = styles[:at] + `<numFmts count="1"><numFmt numFmtId="44" formatCode="_-* #,##0.00\ &quot;€&quot;_-"/></numFmts>` + styles[at:]
	_, _, found = pricebook.ReadWorkbook("bid.xlsx", repacked(t, plain, "xl/styles.xml", strings.NewReader(styles)), read(t, below, nil))
	require.Contains(t, found[0].Message, `shows its number in "€"`)
}

// A price in a cell that reaches over three rows is the first's, and the rows without one
// are told; another sheet with prices is told to be left unread, an empty one is not.
func TestWhatOfAFormIsNotRead(t *testing.T) {
	f, err := excelize.OpenReader(bytes.NewReader(form(t, bid("lay oak", 40, 1, 4.35, nil, nil), bid("oak transition", 3, 1, nil, nil, nil), bid("oak transition", 3, 1, nil, nil, nil))))
	require.NoError(t, err)
	require.NoError(t, f.MergeCell(pricebook.FormSheet, "I10", "I12"))
	require.NoError(t, f.MergeCell(pricebook.FormSheet, "M10", "M12"))
	for _, sheet := range []string{"second", "empty"} {
		_, err = f.NewSheet(sheet)
		require.NoError(t, err)
		sheetOf(t, f, sheet, [][]any{formHead, bid("lay oak", 40, 1, map[string]any{"second": 9}[sheet], nil, nil)})
	}
	quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", saved(t, f), read(t, below, nil))
	require.Len(t, quotes, 1)
	require.Len(t, found, 2)
	require.False(t, found.HasErrors())
	require.Equal(t, "bid.xlsx: second", found[0].Pos.String())
	require.Contains(t, found[0].Message, "is not read")
	require.Equal(t, "bid.xlsx: Bid form!I10", found[1].Pos.String())
	require.Contains(t, found[1].Message, "its unit price is read for row 10 alone, and rows 11 to 12 have none")
}

// A table with the columns of a CSV is read by the same rules.
func TestTableOnASheet(t *testing.T) {
	b := read(t, below, nil)
	quotes, ignored, found := pricebook.ReadWorkbook("q.xlsx", workbook(t, "Sheet9", []any{"sku", "name", "price"}, []any{7, "Oak Strip", 95.1}, []any{}, []any{8, "lay oak", "none"}), b)
	require.Empty(t, found)
	require.Equal(t, []string{"sku"}, ignored)
	require.Len(t, quotes, 2)
	require.True(t, quotes[0].Price.Equal(decimal.RequireFromString("95.1")))
	require.True(t, quotes[1].None)
}

// A day that the spreadsheet keeps as a number is a day: 46297 is October 2, 2026.
func TestDayKeptAsNumber(t *testing.T) {
	data := workbook(t, "x", []any{"from", "Fern"}, []any{"day", 46297}, formHead, bid("lay oak", 40, 1, 5, nil, nil))
	quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", data, read(t, below, nil))
	require.Empty(t, found)
	require.Equal(t, "2026-10-02", quotes[0].Dated.String())
}

// A day in a column of a table is read where the cell is shown as one; counted from 1904 it has
// 1,462 days less. A number shown as one is no day.
func TestDayInATableKeptAsNumber(t *testing.T) {
	b := read(t, below, nil)
	for _, from1904 := range []bool{false, true} {
		f := excelize.NewFile()
		require.NoError(t, f.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &from1904}))
		n := 46297.0 // 2026-10-02
		if from1904 {
			n -= 1462
		}
		sheetOf(t, f, "Sheet1", [][]any{{"Name", "Price", "Dated"}, {"lay oak", 4.35, custom(n, "m/d/yyyy")}})
		quotes, _, found := pricebook.ReadWorkbook("q.xlsx", saved(t, f), b)
		require.Empty(t, found)
		require.Equal(t, "2026-10-02", quotes[0].Dated.String())
		sheetOf(t, f, "Sheet1", [][]any{{"Bid form"}, {"day", n}, {}, formHead, bid("lay oak", 40, 1, 4.35, nil, nil)})
		quotes, _, found = pricebook.ReadWorkbook("q.xlsx", saved(t, f), b)
		require.Empty(t, found)
		require.Equal(t, "2026-10-02", quotes[0].Dated.String())
	}
	_, _, found := pricebook.ReadWorkbook("q.xlsx", workbook(t, "Prices", []any{"name", "price", "dated"}, []any{"lay oak", 4.35, 46297}), b)
	require.Equal(t, "quotes-dated", found[0].Code)
}

func TestMistakesOfAForm(t *testing.T) {
	b := read(t, below, nil)
	for _, m := range []struct {
		rows                    [][]any
		place, code, says, hint string
	}{
		{[][]any{bid("lay oka", 40, 1, 5, nil, nil)}, "A10", "quotes-name", `no item "lay oka"`, `did you mean "lay oak"`},
		{[][]any{bid("lay oak", 40, 1, "cheap", nil, nil)}, "I10", "quotes-price", `"cheap"`, "an amount in dollars"},
		{[][]any{bid("lay oak", 40, 1, "n/c", nil, nil)}, "I10", "quotes-price", `"n/c"`, "; 0 where it costs nothing; and leave the cell empty where there is no price"},
		{[][]any{bid("lay oak", 40, 1, nil, "included", nil)}, "J10", "quotes-price", `"included"`, "; 0 where it costs nothing; and leave the cell empty where there is no price"},
		{[][]any{bid("lay oak", 40, 1, "4.5/sq ft", nil, nil)}, "I10", "quotes-price", "no dollar sign", "write the plain number 4.50, or $4.5/sq ft"},
		{[][]any{bid("lay oak", 40, 1, "4.5 ea", nil, nil)}, "I10", "quotes-price", "no dollar sign", "write the plain number 4.50, or $4.5 ea"},
		{[][]any{bid("oak lay", 40, 1, 5, nil, nil)}, "A10", "quotes-name", `no item "oak lay"`, `did you mean "lay oak"`},
		{[][]any{bid("lay oak", 40, 1, -5, nil, nil)}, "I10", "quotes-price", "below zero", "what it costs"},
		{[][]any{bid("lay oak", 40, 1, "$5 per ft", nil, nil)}, "I10", "quotes-price", "it is for each ft", "each sq ft"},
		{[][]any{bid("lay oak", 40, 1, "=2+3", nil, nil)}, "I10", "quotes-cell", "a formula stands", "paste it back as a value"},
		{[][]any{bid("lay oak", 40, 1, nil, nil, "=I10*E10")}, "K10", "quotes-cell", "a formula stands", "paste it back as a value"},
		{[][]any{bid("lay oak", 40, 1, true, nil, nil)}, "I10", "quotes-cell", "yes or no", "type the value again"},
		{[][]any{bid("lay oak", 40, 1, 5, 210, nil)}, "J10", "quotes-form", "labour is $210.00, but the unit price of $5.00 for 40 comes to $200.00", "keep the one"},
		{[][]any{bid("lay oak", 40, 1, nil, nil, "lots")}, "K10", "quotes-price", `"lots"`, "an amount in dollars"},
		{[][]any{bid("lay oak", 40, 0, 5, nil, nil)}, "G10", "quotes-form", `coats is "0"`, "put back"},
		{[][]any{bid("lay oak", 40, 1, 5, nil, nil), bid("lay oak", 40, 1, 6, nil, nil)}, "I11", "quotes-twice", `"lay oak" comes to $6 per sq ft here, but to $5 per sq ft in Bid form!A10`, "write the same unit price in both"},
		{[][]any{bid("lay oak", 40, 2, nil, 174, nil), bid("lay oak", 10, 2, nil, 60, nil)}, "J11", "quotes-twice", "$3 per sq ft and coat here, but to $2.175 per sq ft and coat in", "write the same unit price in both"},
		{[][]any{bid("lay oak", 40, 1, strings.Repeat("9", 5000)+"x", nil, nil)}, "I10", "quotes-price", `"` + strings.Repeat("9", 60) + `…": `, "an amount in dollars"},
		{[][]any{bid("lay oak", 40, 1, time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC), nil, nil)}, "I10", "quotes-cell", "the cell holds a date", "format of a number"},
		{[][]any{bid("lay oak", 40, 1, nil, share(0.05), nil)}, "J10", "quotes-cell", "the cell holds a percentage", "format of a number"},
		{[][]any{bid("lay oak", 40, 1, custom(46023, "[$-409]mmmm d, yyyy"), nil, nil)}, "I10", "quotes-cell", "the cell holds a date", "format of a number"},
		{[][]any{{"lay oak", "", "", "", 40, "ft", 1, "", 5}}, "F10", "quotes-unit", `priced for each sq ft, not for each "ft"`, "each sq ft"},
		{[][]any{{"oak transition", "", "", "", 3, "sf", 1, "", 5}}, "F10", "quotes-unit", `priced for each piece, not for each "sf"`, "for each piece"},
	} {
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, m.rows...), b)
		require.NotEmpty(t, found, m.says)
		require.Equal(t, m.code, found[0].Code, found[0])
		require.Equal(t, "bid.xlsx: Bid form!"+m.place, found[0].Pos.String())
		require.Contains(t, found[0].Message, m.says)
		require.Contains(t, found[0].Hint, m.hint)
	}
}

// A row that a bidder added below the form is no line of the deal, whether it says that it
// sums up the others or not, and though it is a formula; one that the form had is one,
// whatever it is called.
func TestRowsThatABidderAdded(t *testing.T) {
	row := bid("lay oak", 40, 1, 4.35, nil, nil)
	for _, x := range []struct {
		row         []any
		place, says string
	}{
		{[]any{"TOTAL", "", "", "", "", "", "", "", "", 174, 300}, "J11", `the row "TOTAL" is passed over`},
		{[]any{"Subtotal paint", "", "", "", "", "", "", "", "", "", 300}, "K11", `the row "Subtotal paint" is passed over`},
		{[]any{"", "", "", "", "", "", "", "Sum:", "", "", 300}, "K11", `the row "Sum:" is passed over`},
		{[]any{"", "", "", "", "", "", "", "", "", "", "=SUM(K10:K10)"}, "K11", "it has an amount, and nothing says what for"},
		{[]any{"", "", "", "all in", "", "", "", "", "", "", 300}, "A11", `the row "all in" has a price, but no item`},
		{[]any{"", "total", "", "gut", 1, "job", 1, "", "", "", 300}, "A11", `the row "total: gut" has a price, but no item`},
	} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row, x.row), read(t, below, nil))
		require.Len(t, quotes, 1)
		require.Len(t, found, 1)
		require.False(t, found.HasErrors())
		require.Equal(t, "Bid form!"+x.place, found[0].Pos.Cell)
		require.Contains(t, found[0].Message, x.says)
	}
}

// Work that a bidder added has no line in the deal yet, so the hint gives it one; a price for a
// unit is no amount without how many.
func TestWorkThatABidderAdded(t *testing.T) {
	for _, x := range []struct {
		row  []any
		hint string
	}{
		{[]any{"", "", "", "haul away tile", "", "", "", "", "", "", 300}, "where you want it, add a line to the deal file, under renovation, lines:   - {work: haul away tile, amount: $300.00}"},
		{[]any{"", "tile", "", "seal: twice", 40, "sq ft", "", "", 3, "", 150}, `   - {trade: tile, work: "seal: twice", labour: $120.00, materials: $30.00}`},
		{[]any{"", "tile", "", "seal", "", "", "", "", 3}, "ask what all of it comes to, and then where you want it, add a line to the deal file, under renovation, lines:   - {trade: tile, work: seal, amount: ...}"},
		{[]any{"", "tile", "", "seal", "", "", "", "", "", 90, 50}, "ask which of them holds (its labour is $90.00, and its total, with materials, $50.00)"},
		{[]any{"seal it", "", "", "", "", "", "", "", 3}, "or name it under what is done, not under item"},
		{[]any{"", "", "", "", "", "", "", "", "", "", 300}, "where it is a piece of work, name that under what is done"},
	} {
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, 4.35, nil, nil), x.row), read(t, below, nil))
		require.Len(t, found, 1)
		require.Contains(t, found[0].Hint, x.hint)
	}
}

// What does not fit together is no amount for a line of the deal, and its name keeps what
// she herself wrote in brackets.
func TestLinesOfTheDealInAForm(t *testing.T) {
	for _, x := range []struct {
		price, labour, total any
		says, hint           string
	}{
		{9000, 5000, nil, `the row "roof: new [30 yr]" says two things: its labour is $5,000.00, and its unit price comes to $9,000.00`, "ask which"},
		{nil, 9000, 5000, "its labour is $9,000.00, and its total, with materials, $5,000.00", "ask which"},
		{9000, 9000, 9500, "has a price, but no item", "   labour: $9,000.00, materials: $500.00   and take out its own hours, where the trade does it all"},
		{9000.3, 9000, nil, "has a price, but no item", "   labour: $9,000.00   and take out its own hours, where the trade does it all"},
		{nil, nil, 9500, "has a price, but no item", "   amount: $9,500.00   and take out its own hours, where the trade does it all"},
	} {
		row := []any{"", "roof", "", "new [30 yr]" + pricebook.FormPartOwner, 1, "job", 1, "", x.price, x.labour, x.total}
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, 4.35, nil, nil), row), read(t, below, nil))
		require.Len(t, found, 1)
		require.Contains(t, found[0].Message, x.says)
		require.True(t, strings.HasPrefix(found[0].Hint, x.hint) || strings.HasSuffix(found[0].Hint, x.hint), found[0].Hint)
	}
}

// A total alone is a quote for the deal file: its row is told and passed over, and the
// prices of the others are read.
func TestTotalAloneIsNoPrice(t *testing.T) {
	quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, nil, nil, 300), []any{"oak transition", "", "", "", 3, "each", 1, "", 12}), read(t, below, nil))
	require.Len(t, quotes, 1)
	require.Equal(t, "oak transition", quotes[0].Name)
	require.False(t, found.HasErrors())
	require.Len(t, found, 1)
	require.Equal(t, "Bid form!K10", found[0].Pos.Cell)
	require.Contains(t, found[0].Message, `"lay oak" has a total, but no labour`)
	require.Contains(t, found[0].Hint, "beside what that work says already in \"hall\":   quote: $300.00, from: Fern Street, dated: 2026-10-02   or")
	require.True(t, strings.HasSuffix(found[0].Hint, "   lay oak: {quote: $300.00, from: Fern Street, dated: 2026-10-02}"), found[0].Hint)

	_, _, found = pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, nil, nil, 300)), read(t, below, nil))
	require.Len(t, found, 2)
	require.Contains(t, found.Errors()[0].Message, "only totals are filled in")
	require.Contains(t, found.Errors()[0].Hint, "into the deal file as quotes")
}

// A number is in cents whatever a bidder's sheet multiplied it out to; nobody is asked for
// the comma of a thousand in it, and is told once that it was rounded. As a text it is refused,
// as in the deal file. A product of a table has no such price.
func TestNumbersAreRoundedToCents(t *testing.T) {
	quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, nil, 102.375, 130), []any{"oak transition", "", "", "", 3, "each", 1, "", 4, nil, 17.255}), read(t, below, nil))
	require.Len(t, found, 1)
	require.False(t, found.HasErrors())
	require.Equal(t, "Bid form!J10", found[0].Pos.Cell)
	require.Equal(t, `the cell holds "102.375", more than dollars and cents: it is read as $102.38`, found[0].Message)
	require.Contains(t, found[0].Hint, "; likewise in 1 other cell")
	require.Equal(t, "2.5595", quotes[0].Price.String()) // 102.38 / 40
	_, _, found = pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, nil, nil, 7.255)), read(t, below, nil))
	require.Contains(t, found[0].Message+found[1].Message, "it is read as $7.26")
	require.Contains(t, found[0].Hint+found[1].Hint, "quote: $7.26")
	_, _, found = pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, nil, nil, "7.255")), read(t, below, nil))
	require.Contains(t, found[0].Message, "more than 2 decimals")
	_, _, found = pricebook.ReadWorkbook("q.xlsx", workbook(t, "x", []any{"name", "price"}, []any{"oak strip", 95.125}), read(t, below, nil))
	require.Len(t, found, 1)
	require.Contains(t, found[0].Message, "it is not in whole cents")
	require.Equal(t, "write 95.13", found[0].Hint)
}

// A form that was saved as CSV is told from a table.
func TestFormAsCSV(t *testing.T) {
	_, _, found := pricebook.ReadQuotes("bid.csv", "Bid form,,\n\"Elm, 2\",,\nitem,trade,unit price\nlay oak,flooring,5\n", read(t, below, nil))
	require.Len(t, found, 1)
	require.Equal(t, "quotes-form", found[0].Code)
	require.Contains(t, found[0].Hint, "give the form as .xlsx")
	_, _, found = pricebook.ReadQuotes("mine.csv", "item,unit price\nlay oak,5\n", read(t, below, nil)) // a table of one's own
	require.Len(t, found, 1)
	require.Equal(t, `there is no column "name"`, found[0].Message)
	require.Contains(t, found[0].Hint, "name,price")
}

func TestCoatsOfATableAreDoubted(t *testing.T) {
	quotes, ignored, found := pricebook.ReadQuotes("q.csv", "name,price,coats\nlay oak,5,2\n", read(t, below, nil))
	require.Len(t, quotes, 1)
	require.Equal(t, []string{"coats"}, ignored)
	require.Len(t, found, 1)
	require.False(t, found.HasErrors())
	require.Contains(t, found[0].Message, "coats are not read of a table")
}

// A day that is none stands above all rows, and is told once, in its cell.
func TestWrongDayIsToldOnce(t *testing.T) {
	data := workbook(t, pricebook.FormSheet, []any{"day", "20 Aug"}, []any{pricebook.FormUntil, "soon"}, formHead, bid("lay oak", 40, 1, 5, nil, nil), []any{"oak transition", "", "", "", 3, "each", 1, "", 12})
	_, ignored, found := pricebook.ReadWorkbook("bid.xlsx", data, read(t, below, nil))
	require.Len(t, found, 1)
	require.Equal(t, "bid.xlsx: Bid form!B1", found[0].Pos.String())
	require.Equal(t, 1, found[0].Pos.Line)
	require.Equal(t, []string{"lead time", "remarks", pricebook.FormUntil}, ignored)
}

// Who asks it and when are typed, as other texts are: a formula is refused, once, though
// nobody has worked it out.
func TestFormulasAboveAForm(t *testing.T) {
	for label, formula := range map[string]string{pricebook.FormFrom: `="Fern"&"1"`, pricebook.FormDay: "=TODAY()"} {
		data := workbook(t, pricebook.FormSheet, []any{label, formula}, formHead, bid("lay oak", 40, 1, 5, nil, nil), []any{"oak transition", "", "", "", 3, "each", 1, "", 12})
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", data, read(t, below, nil))
		require.Len(t, found, 1)
		require.Equal(t, "quotes-cell", found[0].Code)
		require.Equal(t, "bid.xlsx: Bid form!B1", found[0].Pos.String())
		require.Contains(t, found[0].Message, "a formula stands")
	}
}

// Money in the remarks is in no price, so it is doubted in its cell; other numbers are not.
func TestMoneyInRemarks(t *testing.T) {
	for remark, is := range map[any]bool{"plus $300 delivery": true, "300 dollars more": true, "+ USD 300": true, "$ 1,200.50 if rotten": true, "2k$": true, 300: true, "€300": true,
		"2 coats, 3 weeks": false, "call 555 0101": false, "$ as agreed": false, "": false} {
		row := bid("lay oak", 40, 1, 4.35, nil, nil)
		row[12] = remark
		quotes, found := pricebook.CheckWorkbook("bid.xlsx", form(t, row), read(t, below, nil))
		require.Len(t, quotes, 1)
		require.False(t, found.HasErrors())
		if !is {
			require.Empty(t, found, remark)
			continue
		}
		require.Len(t, found, 1, remark)
		require.Equal(t, "bid.xlsx: Bid form!M10", found[0].Pos.String())
		require.Contains(t, found[0].Message, "the remarks hold money, which is not counted")
		require.Contains(t, found[0].Hint, "general: {delivery: $300}")
	}
}

// Money anywhere else in a form is doubted too: below the table, beside it, among its words.
func TestMoneyBesideAForm(t *testing.T) {
	for _, x := range []struct {
		col   int
		value any
		below bool
		is    bool
	}{
		{0, "plus $600 for travel", true, true}, {3, "plus $600 for travel", true, true}, {13, "+ $400 materials", false, true}, {13, 400, false, true},
		{3, "surround, min $600", false, true}, {11, "3 weeks, +$200", false, true}, {11, 3, false, false}, {7, "12 x 8", false, false}, {13, "ready in May", false, false},
	} {
		row, last := append(bid("lay oak", 40, 1, 4.35, nil, nil), "", ""), make([]any, 14)
		for len(row) < 14 {
			row = append(row, "")
		}
		if x.below {
			last[x.col] = x.value
		} else {
			row[x.col] = x.value
		}
		quotes, found := pricebook.CheckWorkbook("bid.xlsx", form(t, row, last), read(t, below, nil))
		require.Len(t, quotes, 1)
		require.Equal(t, x.is, slices.ContainsFunc(found, func(d diag.Diag) bool { return strings.Contains(d.Message, "money, which is not counted") }), "%v: %v", x, found)
	}
}

// Money in what a form says itself, in its heads, in notes at cells and on other sheets is
// doubted in its cell; who quotes is read, as the name.
func TestMoneyInTheWordsOfAForm(t *testing.T) {
	const unread, words = "a cell that is not read holds money", "the words of the form hold money"
	for _, x := range []struct {
		sheet, cell string
		value       any
		says        string
	}{
		{"Notes", "A1", "Travel $350 on top", unread}, {"Notes", "B2", 350, ""}, {"Notes", "A1", "12 days", ""},
		{pricebook.FormSheet, "A2", "Pine Hollow: $45 fuel", words}, {pricebook.FormSheet, "A3", "All prices plus $45 fuel", words}, {pricebook.FormSheet, "A4", "from $25 trip charge", words},
		{pricebook.FormSheet, "A5", "day: minimum charge $300", words}, {pricebook.FormSheet, "M9", "remarks ($45 fuel extra)", words},
		{pricebook.FormSheet, "B4", "Creek Plumbing, $75 trip", "the name of who quotes holds money"}, {pricebook.FormSheet, "B6", "$75 trip", unread},
	} {
		f, err := excelize.OpenReader(bytes.NewReader(form(t, bid("lay oak", 40, 1, 4.35, nil, nil))))
		require.NoError(t, err)
		_, err = f.NewSheet("Notes")
		require.NoError(t, err)
		require.NoError(t, f.SetCellValue(x.sheet, x.cell, x.value))
		doubtedMoney(t, f, x.sheet+"!"+x.cell, x.says)
	}
	f, err := excelize.OpenReader(bytes.NewReader(form(t, bid("lay oak", 40, 1, 4.35, nil, nil))))
	require.NoError(t, err)
	require.NoError(t, f.AddComment(pricebook.FormSheet, excelize.Comment{Cell: "A10", Text: "call first"}))
	doubtedMoney(t, f, "", "")
	require.NoError(t, f.AddComment(pricebook.FormSheet, excelize.Comment{Cell: "I10", Text: "plus $90 for the drain"}))
	doubtedMoney(t, f, pricebook.FormSheet+"!I10", "a note at a cell holds money")
	require.NoError(t, f.DeleteComment(pricebook.FormSheet, "I10"))
	require.NoError(t, f.AddComment(pricebook.FormSheet, excelize.Comment{Cell: "I10", Paragraph: []excelize.RichTextRun{{Text: "plus $"}, {Text: "90 for the drain"}}}))
	doubtedMoney(t, f, pricebook.FormSheet+"!I10", "a note at a cell holds money")
	_, err = f.NewSheet("More")
	require.NoError(t, err)
	style, err := f.NewStyle(&excelize.Style{NumFmt: 44}) // dollars and cents
	require.NoError(t, err)
	require.NoError(t, f.DeleteComment(pricebook.FormSheet, "I10"))
	require.NoError(t, f.SetCellValue("More", "B2", 350))
	require.NoError(t, f.SetCellStyle("More", "B2", "B2", style))
	doubtedMoney(t, f, "More!B2", unread)
}

// doubtedMoney sees that a form is doubted in one cell, or nowhere.
func doubtedMoney(t *testing.T, f *excelize.File, cell, says string) {
	t.Helper()
	quotes, found := pricebook.CheckWorkbook("bid.xlsx", saved(t, f), read(t, below, nil))
	require.Len(t, quotes, 1)
	if says == "" {
		require.Empty(t, found)
		return
	}
	require.Len(t, found, 1)
	require.Equal(t, cell, found[0].Pos.Cell)
	require.Contains(t, found[0].Message, says+", which is not counted")
}

// A unit that a cell only shows, by the format of its number, counts as if it were typed.
func TestUnitsInTheFormatOfANumber(t *testing.T) {
	for format, refused := range map[string]bool{`"$"0.00"/sq yd"`: true, `"$"0"/hr"`: true, `#,##0.00" dollars a day"`: true, `0.00" per sq yd"`: true, `"$"0.00"/sq ft"`: false, `0.00" per sq ft"`: false, `"$"#,##0.00`: false, `0.00" USD"`: false, `"approx "0.00`: false} {
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, custom(4.35, format), nil, nil)), read(t, below, nil))
		require.Equal(t, refused, found.HasErrors(), "%s: %v", format, found)
	}
}

// A total below the labour of its row is doubted: 40 at $4.35 come to $174. Whole dollars may
// be rounded.
func TestTotalBelowItsLabour(t *testing.T) {
	for _, x := range []struct {
		price, labour, total any
		doubted              bool
	}{
		{4.35, nil, 150, true}, {"$4.35 per sq ft", nil, 173, true}, {nil, 174.4, 174, false}, {nil, 174, 173.98, true}, {4.35, 174, 17.4, true}, {4.35, 174, "$150", true},
		{4.35, nil, 174, false}, {4.36, nil, 174, false}, {nil, 174, 300, false}, {"none", nil, 150, false},
	} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, x.price, x.labour, x.total)), read(t, below, nil))
		require.Len(t, quotes, 1)
		if !x.doubted {
			require.NotContains(t, found.Error(), "is below", "%v", x)
			continue
		}
		require.Len(t, found, 1, "%v", x)
		require.False(t, found.HasErrors())
		require.Equal(t, "Bid form!K10", found[0].Pos.Cell)
		require.Contains(t, found[0].Message, `for "lay oak" is below its labour of $174.00`)
	}
}

// A total of no more than the labour of a work that takes materials, or a remark that they are in
// the price, is doubted: they would count twice.
func TestAPriceWithMaterialsInIt(t *testing.T) {
	for _, x := range []struct {
		item, remark  string
		labour, total any
		says          string
	}{
		{"lay oak", "fine", nil, 174, "is no more than its labour"},
		{"lay oak", "fine", 174, 174, "is no more than its labour"},
		{"lay oak", "fine", nil, 300, ""},
		{"lay oak", "oak included", nil, nil, `the remark for "lay oak" is "oak included"`},
		{"lay oak", "all in", nil, 300, `is "all in"`},
		{"lay oak", "oak not included", nil, nil, ""},
		{"oak transition", "oak included", nil, 174, ""},
	} {
		row := bid(x.item, 40, 1, 4.35, x.labour, x.total)
		row[len(row)-1] = x.remark
		if x.item == "oak transition" {
			row[slices.Index(row, any("sq ft"))] = "each"
		}
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row), read(t, below, nil))
		if x.says == "" {
			require.Empty(t, found, "%v", x)
			continue
		}
		require.Len(t, found, 1, "%v", x)
		require.False(t, found.HasErrors())
		require.Contains(t, found[0].Message, x.says)
	}
}

// A form of a day after it holds is doubted, whether its days are texts or numbers: 46297 is
// October 2, 2026.
func TestDayAfterABidHolds(t *testing.T) {
	for _, x := range []struct {
		day, until any
		doubted    bool
	}{{"2027-10-02", "2026-11-02", true}, {46297, "2026-10-01", true}, {"2026-10-02", 46297, false}, {"2026-10-03", 46297, true}, {"2027-10-02", "60 days", false}, {nil, "2026-10-02", false}, {"2026-10-02", nil, false}} {
		data := workbook(t, pricebook.FormSheet, []any{"day", x.day}, []any{pricebook.FormUntil, x.until}, formHead, bid("lay oak", 40, 1, 5, nil, nil))
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", data, read(t, below, nil))
		require.Len(t, quotes, 1)
		require.False(t, found.HasErrors())
		if !x.doubted {
			require.Empty(t, found, "%v", x)
			continue
		}
		require.Len(t, found, 1, "%v", x)
		require.Equal(t, "bid.xlsx: Bid form!B1", found[0].Pos.String())
		require.Contains(t, found[0].Message, "after the last day on which it holds (2026-1")
	}
}

func TestNothingFilledIn(t *testing.T) {
	_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("lay oak", 40, 1, nil, nil, nil)), read(t, below, nil))
	require.Len(t, found, 1)
	require.Equal(t, "quotes-form", found[0].Code)
	require.Contains(t, found[0].Message, "nothing is filled in")
}

// A line that is no item of the book is told and left out.
func TestLineWithoutAnItem(t *testing.T) {
	quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, bid("", 1, 1, nil, nil, 900), bid("lay oak", 40, 1, 5, nil, nil)), read(t, below, nil))
	require.Len(t, quotes, 1)
	require.Len(t, found.Warnings(), 1)
	require.False(t, found.HasErrors())
	require.Equal(t, "Bid form!A10", found[0].Pos.Cell)
	require.Contains(t, found[0].Message, `the row "flooring: lay it" has a price`)
	require.Contains(t, found[0].Hint, "at that line of the renovation, in the place of its amount, or of its labour and materials:   amount: $900.00")
}

// Work of a room whose item is gone is no line of the renovation: its name is to be put back.
func TestItemThatIsGone(t *testing.T) {
	row := bid("", 30, 1, 5, nil, nil)
	row[5] = "sq ft"
	_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, row, bid("lay oak", 40, 1, 5, nil, nil)), read(t, below, nil))
	require.Len(t, found, 1)
	require.Contains(t, found[0].Hint, "put back under item what the form said")
	require.NotContains(t, found[0].Hint, "of the renovation")
}

// Amounts of lines of the deal alone are filled in, and say how a line of the deal has them:
// labour, and what the total is above it for materials.
func TestAmountsOfLinesAlone(t *testing.T) {
	done := bid("", 1, 1, nil, 900, nil)
	done[3] = "lay it [planned by own hands]"
	for _, x := range []struct {
		row  []any
		want string
	}{
		{bid("", 1, 1, 900, nil, nil), "in the place of its labour, or of its amount with   materials: ...   beside it:   labour: $900.00"}, {done, "in the place of its labour, or of its amount with   materials: ...   beside it:   labour: $900.00   and take out its own hours, where the trade does it all"}, {bid("", 1, 1, nil, 900, 1250.5), "in the place of its labour and materials, or of its amount:   labour: $900.00, materials: $350.50"},
		{bid("", 2, 1, 900, nil, nil), "in the place of its labour, or of its amount with   materials: ...   beside it:   labour: $1,800.00"}, {bid("", 1, 1, nil, 900, 900), "in the place of its labour, or of its amount with   materials: ...   beside it:   labour: $900.00"}, {bid("", 1, 1, "n/c", nil, nil), "  labour: ... and materials: ..., or amount: ... for both"},
	} {
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", form(t, x.row), read(t, below, nil))
		require.Len(t, found, 2)
		require.Contains(t, found.Warnings()[0].Message, `the row "flooring: lay it" has`)
		require.Contains(t, found.Warnings()[0].Hint, "into the deal file, at that line of the renovation")
		require.True(t, strings.HasSuffix(found.Warnings()[0].Hint, x.want), found.Warnings()[0].Hint)
		require.Contains(t, found.Errors()[0].Message, "all amounts are for lines of the deal")
		require.Contains(t, found.Errors()[0].Hint, "renovation lines")
	}
	data := form(t, bid("", 1, 1, nil, nil, 900), bid("lay oak", 40, 1, nil, nil, 300))
	_, _, found := pricebook.ReadWorkbook("bid.xlsx", data, read(t, below, nil))
	require.Contains(t, found.Errors()[0].Message, "for lines of the deal, or totals")
	_, found = pricebook.CheckWorkbook("bid.xlsx", data, read(t, below, nil))
	require.False(t, found.HasErrors(), "the form is as it should be")
	require.Contains(t, found[0].Message+found[len(found)-1].Message, "for lines of the deal, or totals")
}
