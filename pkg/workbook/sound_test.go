package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// The children of a worksheet in the order of the standard: ECMA-376 part 1, 18.3.1.99,
// from memory.
var worksheetOrder = strings.Fields(`sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection
	protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr
	conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks
	colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF picture
	oleObjects controls webPublishItems tableParts extLst`)

// Functions that are in use, all of them older than 2010.
var functions = strings.Fields("SUM MAX MIN IF ROUND INT ABS AND OR NOT SQRT PMT INDEX MATCH COUNT COUNTIF SUMIF SUMPRODUCT TEXT ROUNDUP ROUNDDOWN ISNUMBER ISTEXT ISERROR LEFT LEN N")

var (
	calls  = regexp.MustCompile(`([A-Z][A-Z0-9.]*)\(`)
	quotes = regexp.MustCompile(`"[^"]*"|'[^']*'`)
)

// TestThePackageIsSound checks what a reader of the file format asks for: every part is
// well-formed, declared and pointed to, sheets are in the order of the schema, rows and
// cells ascend, types and styles exist, formulas are made of known functions.
func TestThePackageIsSound(t *testing.T) {
	for _, name := range []string{"walnut-row", "orchard-street", "cedar-court"} {
		for _, reader := range []Reader{Owner, Lender} {
			var file bytes.Buffer
			require.NoError(t, Write(&file, answerOf(t, "../../scenarios/"+name+".yaml"), Options{For: reader}))
			parts := unzipped(t, file.Bytes())
			declared(t, parts)
			styles := strings.Count(parts["xl/styles.xml"][strings.Index(parts["xl/styles.xml"], "<cellXfs"):], "<xf ")
			for part, text := range parts {
				wellFormed(t, part, text)
				if strings.HasPrefix(part, "xl/worksheets/sheet") {
					soundSheet(t, part, text, styles)
				}
			}
			f, err := excelize.OpenReader(&file)
			require.NoError(t, err)
			soundNames(t, f)
		}
	}
}

func unzipped(t *testing.T, file []byte) map[string]string {
	z, err := zip.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	parts := map[string]string{}
	for _, f := range z.File {
		r, err := f.Open()
		require.NoError(t, err)
		text, err := io.ReadAll(r)
		require.NoError(t, err)
		require.NotContains(t, parts, f.Name)
		parts[f.Name] = string(text)
	}
	return parts
}

func wellFormed(t *testing.T, part, text string) {
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			require.NoError(t, err, part)
		}
	}
}

// declared: every part has a content type, and every relationship leads to a part.
func declared(t *testing.T, parts map[string]string) {
	types := parts["[Content_Types].xml"]
	for part, text := range parts {
		if part == "[Content_Types].xml" {
			continue
		}
		ext := `Extension="` + strings.TrimPrefix(path.Ext(part), ".") + `"`
		require.True(t, strings.Contains(types, `PartName="/`+part+`"`) || strings.Contains(types, ext), part)
		if path.Ext(part) != ".rels" {
			continue
		}
		from := path.Dir(path.Dir(part))
		for _, m := range regexp.MustCompile(`Target="([^"]+)"`).FindAllStringSubmatch(text, -1) {
			to := strings.TrimPrefix(m[1], "/")
			if !strings.HasPrefix(m[1], "/") {
				to = path.Join(from, m[1])
			}
			require.Contains(t, parts, to, part)
		}
	}
}

// soundSheet checks one sheet against the schema of worksheets.
func soundSheet(t *testing.T, part, text string, styles int) {
	var sheet struct {
		Inner []struct {
			XMLName xml.Name
		} `xml:",any"`
	}
	require.NoError(t, xml.Unmarshal([]byte(text), &sheet), part)
	soundMerges(t, part, text)
	at := -1
	for _, x := range sheet.Inner {
		i := slices.Index(worksheetOrder, x.XMLName.Local)
		require.GreaterOrEqual(t, i, 0, "%s: %s", part, x.XMLName.Local)
		require.True(t, i > at || i == at && x.XMLName.Local == "conditionalFormatting", "%s: %s is out of order", part, x.XMLName.Local)
		at = i
	}
	var data struct {
		Rows []struct {
			R     int `xml:"r,attr"`
			Cells []struct {
				R string  `xml:"r,attr"`
				T string  `xml:"t,attr"`
				S int     `xml:"s,attr"`
				F *string `xml:"f"`
				V string  `xml:"v"`
			} `xml:"c"`
		} `xml:"sheetData>row"`
	}
	require.NoError(t, xml.Unmarshal([]byte(text), &data), part)
	row := 0
	for _, r := range data.Rows {
		require.Greater(t, r.R, row, part)
		row = r.R
		column := 0
		for _, c := range r.Cells {
			col, at, err := excelize.CellNameToCoordinates(c.R)
			require.NoError(t, err)
			require.Equal(t, r.R, at, "%s: %s", part, c.R)
			require.Greater(t, col, column, "%s: %s", part, c.R)
			column = col
			require.Contains(t, []string{"", "n", "b", "str", "inlineStr", "s"}, c.T, "%s: %s", part, c.R)
			require.Less(t, c.S, styles, "%s: %s", part, c.R)
			if c.T == "" || c.T == "n" {
				_, err := strconv.ParseFloat(c.V, 64)
				require.True(t, err == nil || c.V == "", "%s: %s is %q", part, c.R, c.V)
			}
			if c.F != nil {
				soundFormula(t, part+" "+c.R, *c.F)
			}
		}
	}
}

// soundMerges: no cell is merged twice, which a spreadsheet program takes for damage.
func soundMerges(t *testing.T, part, text string) {
	merged := map[[2]int]bool{}
	for _, m := range regexp.MustCompile(`<mergeCell ref="(\w+):(\w+)"`).FindAllStringSubmatch(text, -1) {
		col, row, err := excelize.CellNameToCoordinates(m[1])
		require.NoError(t, err)
		toCol, toRow, err := excelize.CellNameToCoordinates(m[2])
		require.NoError(t, err)
		for ; row <= toRow; row++ {
			for c := col; c <= toCol; c++ {
				require.False(t, merged[[2]int{row, c}], "%s: %s", part, m[0])
				merged[[2]int{row, c}] = true
			}
		}
	}
}

func soundFormula(t *testing.T, at, formula string) {
	require.LessOrEqual(t, len(formula), 8192, at)
	require.False(t, strings.HasPrefix(formula, "="), at)
	bare := quotes.ReplaceAllString(formula, "")
	require.Equal(t, strings.Count(bare, "("), strings.Count(bare, ")"), "%s: %s", at, formula)
	for _, m := range calls.FindAllStringSubmatch(bare, -1) {
		require.Contains(t, functions, m[1], "%s: %s", at, formula)
	}
}

// soundNames: a name is no reference, and leads to one cell of a sheet.
func soundNames(t *testing.T, f *excelize.File) {
	reference := regexp.MustCompile(`^(?i:[a-z]{1,3}[0-9]+|r[0-9]*c?[0-9]*|c[0-9]*|true|false)$`)
	sheets := f.GetSheetList()
	for _, name := range sheets {
		require.LessOrEqual(t, len(name), 31)
	}
	seen := map[string]bool{}
	for _, n := range f.GetDefinedName() {
		require.False(t, reference.MatchString(n.Name), n.Name)
		key := strings.ToLower(n.Name) + "|" + n.Scope
		require.False(t, seen[key], n.Name)
		seen[key] = true
		for _, to := range strings.Split(n.RefersTo, ",") {
			sheet, _, found := strings.Cut(to, "!")
			require.True(t, found, n.RefersTo)
			require.Contains(t, sheets, strings.ReplaceAll(strings.Trim(sheet, "'"), "''", "'"), n.Name)
		}
	}
}
