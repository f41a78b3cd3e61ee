package pricebook_test

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/pricebook"
)

// repacked is a workbook with a part put in or replaced.
func repacked(t testing.TB, data []byte, name string, content io.Reader) []byte {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	require.NoError(t, err)
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range z.File {
		if f.Name == name {
			continue
		}
		r, err := f.Open()
		require.NoError(t, err)
		to, err := w.Create(f.Name)
		require.NoError(t, err)
		_, err = io.Copy(to, r)
		require.NoError(t, err)
	}
	to, err := w.Create(name)
	require.NoError(t, err)
	_, err = io.Copy(to, content)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return out.Bytes()
}

// endless is so many bytes of the same.
func endless(n int64) io.Reader { return io.LimitReader(same{}, n) }

type same struct{}

func (same) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}

const sheetPart = "xl/worksheets/sheet1.xml"

func sheetXML(rows string) io.Reader {
	return strings.NewReader(`<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>` + rows + `</sheetData></worksheet>`)
}

func TestHostileWorkbooks(t *testing.T) {
	good := form(t, bid("lay oak", 40, 1, 5, nil, nil))
	macros := repacked(t, good, "xl/vbaProject.bin", strings.NewReader("x"))
	z, err := zip.NewReader(bytes.NewReader(good), int64(len(good)))
	require.NoError(t, err)
	types := partOf(t, z, "[Content_Types].xml")
	for name, m := range map[string]struct {
		data       []byte
		says, hint string
	}{
		"zip bomb":          {repacked(t, good, "xl/media/image1.png", endless(200<<20)), "unpacks to more than the 24 MB", "into a new workbook"},
		"bomb in a sheet":   {repacked(t, good, sheetPart, endless(200<<20)), "unpacks to more than the 24 MB", "into a new workbook"},
		"large file":        {append(bytes.Clone(good), make([]byte, 5<<20)...), "more than the 4 MB", "into a new workbook"},
		"macros":            {macros, "holds macros", "which has no macros"},
		"kind with macros":  {repacked(t, good, "[Content_Types].xml", strings.NewReader(strings.Replace(types, "spreadsheetml.sheet.main", "sheet.macroEnabled.main", 1))), "kind with macros", "which has no macros"},
		"far row":           {repacked(t, good, sheetPart, sheetXML(`<row r="1048576"><c r="A1048576"><v>1</v></c></row>`)), `has the row "1048576"`, "below the table"},
		"far column":        {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="XFD1"><v>1</v></c></row>`)), `has the cell "XFD1"`, "beside and below"},
		"many cells":        {repacked(t, good, sheetPart, sheetXML(strings.Repeat(`<row><c/></row>`, 400_000))), "more cells than are read", "into a new workbook"},
		"deep":              {repacked(t, good, sheetPart, sheetXML(strings.Repeat("<a>", 5000)+strings.Repeat("</a>", 5000))), "nested deeper", "into a new workbook"},
		"definitions":       {repacked(t, good, sheetPart, strings.NewReader(`<!DOCTYPE x [<!ENTITY a "aaaa">]><worksheet>&a;</worksheet>`)), "definitions of its own", "into a new workbook"},
		"many parts":        {manyParts(t), "500 parts", "into a new workbook"},
		"no workbook":       {archive(t, "a.txt"), "an archive, but no workbook", ".xlsx"},
		"cut off":           {good[:len(good)/2], "cut off or damaged", "save it again"},
		"damaged":           {repacked(t, good, "xl/workbook.xml", strings.NewReader("<workbook")), "damaged", "save it again"},
		"ends half-way":     {repacked(t, good, sheetPart, strings.NewReader(`<worksheet><sheetData><row r="1"><c r="A1"><v>1</v></c>`)), "damaged", "save it again"},
		"text not listed":   {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>9999</v></c></row>`)), `its cell "B1" holds a text that is not there`, "type its value again"},
		"text below none":   {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1" t="s"><v>-1</v></c></row>`)), `its cell "A1" holds a text that is not there`, "type its value again"},
		"text by no number": {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1" t="s"><v>abc</v></c></row>`)), `its cell "A1" holds a text that is not there`, "type its value again"},
		"two of a cell":     {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><v>1</v></c><c r="A1"><v>2</v></c></row>`)), `two cells "A1"`, "save it again"},
		"in another row":    {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><v>1</v></c><c r="B2"><v>2</v></c></row><row r="2"></row>`)), `its cell "B2" stands in row 1`, "save it again"},
		"row twice":         {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><v>1</v></c></row><row r="1"><c r="A1"><v>2</v></c></row>`)), "a sheet has the row 1 twice", "save it again"},
		"no formula":        {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><f/><v>12.5</v></c></row>`)), `its cell "A1" holds a formula that is not there`, "type its value again"},
		"nothing to share":  {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><f t="shared" si="0"/><v>12.5</v></c></row>`)), `its cell "A1" holds a formula that is not there`, "type its value again"},
		"formula of two":    {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><f t="array" ref="A1:B1">C1</f><v>1</v></c><c r="B1"><v>12.5</v></c></row>`)), `fills the cells "A1:B1"`, "paste them back as values"},
		"older or locked":   {append([]byte{0xD0, 0xCF, 0x11, 0xE0}, make([]byte, 600)...), "older kind, or one with a password", "without a password"},
		"formula shared":    {repacked(t, good, sheetPart, sheetXML(`<row r="1"><c r="A1"><f t="shared" si="0" ref="A1:A2">C1</f><v>1</v></c></row><row r="2"><c r="A2"><f t="shared" si="0"/><v>1</v></c></row>`)), "no sheet of the workbook has a table of quotes", "item and unit price"},
		"wrong sheet":       {workbook(t, "Notes", []any{"hello"}), `no sheet of the workbook has a table of quotes; it has "Notes"`, "item and unit price"},
		"two tables":        {twoTables(t), `several sheets have a table of quotes: "a", "b"`, "Bid form"},
	} {
		t.Run(name, func(t *testing.T) {
			require.True(t, pricebook.IsWorkbook("bid", m.data))
			quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", m.data, read(t, below, nil))
			require.Empty(t, quotes)
			require.Len(t, found, 1)
			require.Equal(t, "quotes-workbook", found[0].Code)
			require.Contains(t, found[0].Message, m.says)
			require.Contains(t, found[0].Hint, m.hint)
		})
	}
}

// Some programs write every row of a sheet, and cells beside the table, though they are
// empty; those are passed over.
func TestEmptyRowsFarOut(t *testing.T) {
	good := form(t, bid("lay oak", 40, 1, 5, nil, nil))
	z, err := zip.NewReader(bytes.NewReader(good), int64(len(good)))
	require.NoError(t, err)
	sheet := partOf(t, z, sheetPart)
	for _, empty := range []string{`<row r="1048575" ht="12.8"></row><row r="1048576"/>`, `<row r="3001"><c r="A3001" s="1"/><c r="XFD3001"></c></row>`, `<row r="2000"><c r="XFD2000" s="1"/></row>`} {
		quotes, _, found := pricebook.ReadWorkbook("bid.xlsx", repacked(t, good, sheetPart, strings.NewReader(strings.Replace(sheet, "</sheetData>", empty+"</sheetData>", 1))), read(t, below, nil))
		require.Empty(t, found)
		require.Len(t, quotes, 1)
		require.Equal(t, "Fern Street", quotes[0].Source)
	}
}

func partOf(t testing.TB, z *zip.Reader, name string) string {
	f, err := z.Open(name)
	require.NoError(t, err)
	text, err := io.ReadAll(f)
	require.NoError(t, err)
	return string(text)
}

func archive(t testing.TB, names ...string) []byte {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, n := range names {
		_, err := w.Create(n)
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	return out.Bytes()
}

func manyParts(t testing.TB) []byte {
	names := make([]string, 500)
	for i := range names {
		names[i] = fmt.Sprintf("%d.txt", i)
	}
	return archive(t, names...)
}

func twoTables(t testing.TB) []byte {
	f := excelize.NewFile()
	require.NoError(t, f.SetSheetName("Sheet1", "a"))
	_, err := f.NewSheet("b")
	require.NoError(t, err)
	for _, s := range []string{"a", "b"} {
		sheetOf(t, f, s, [][]any{{"name", "price"}, {"lay oak", 5}})
	}
	return saved(t, f)
}

// cellRow is a row of texts as a sheet holds it.
func cellRow(texts ...string) string {
	var b strings.Builder
	b.WriteString("<row>")
	for _, s := range texts {
		b.WriteString(`<c t="inlineStr"><is><t>`)
		_ = xml.EscapeText(&b, []byte(s)) // a builder takes all
		b.WriteString(`</t></is></c>`)
	}
	return b.String() + "</row>"
}

// FuzzReadQuotesWorkbook reads a form around any cells, and any bytes as a sheet: it ends,
// and every mistake has a way out.
func FuzzReadQuotesWorkbook(f *testing.F) {
	over, _ := pricebook.Read("below.yaml", below, nil)
	plain := form(f, bid("lay oak", 40, 1, 5, nil, nil))
	f.Add("lay oak", "5", []byte(`<row r="1"><c r="A1" t="inlineStr"><is><t>name</t></is></c><c r="B1" t="str"><v>price</v></c></row>`))
	f.Add("lay oak", "$4 per sq ft", []byte(`<row r="2"><c r="B2" t="s"><v>9</v></c></row><row r="1"><c r="A1"><f t="shared" si="0"/></c></row>`))
	f.Add("oak strip", "=1", []byte(`<row><c r="A0"/></row>`))
	f.Fuzz(func(t *testing.T, item, price string, sheet []byte) {
		for _, data := range [][]byte{
			repacked(t, plain, sheetPart, sheetXML(string(sheet))),
			repacked(t, plain, sheetPart, sheetXML(cellRow("name", "price")+cellRow(item, price))),
			sheet,
		} {
			quotes, _, found := pricebook.ReadWorkbook("q.xlsx", data, over)
			for _, d := range found {
				require.NotEmpty(t, d.Message)
				require.NotEmpty(t, d.Hint, d.Message)
			}
			if !found.HasErrors() {
				book, _, err := pricebook.LayQuotes("", quotes, over, "")
				require.NoError(t, err)
				_, wrong := pricebook.Read("mine.yaml", book, over)
				require.Empty(t, wrong, book)
			}
		}
	})
}

// A file that is a workbook by its name alone is told to be none, not to be damaged.
func TestWorkbooksByNameAlone(t *testing.T) {
	for data, says := range map[string][2]string{
		"":                  {"no .xlsx file: it is empty", "save it again"},
		"item,unit price\n": {"no .xlsx file, whatever its name says", "spreadsheet program"},
	} {
		require.True(t, pricebook.IsWorkbook("bid.xlsx", []byte(data)))
		_, _, found := pricebook.ReadWorkbook("bid.xlsx", []byte(data), read(t, below, nil))
		require.Len(t, found, 1)
		require.Contains(t, found[0].Message, says[0])
		require.Contains(t, found[0].Hint, says[1])
	}
}
