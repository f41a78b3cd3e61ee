package pricebook

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// value is what stands in a column of the row, if it is a text or a number.
func (r *sheetRows) value(col int) (string, *diag.Diag) {
	cell, _ := excelize.CoordinatesToCellName(col, r.at+1) // both are counted, so they are sound
	at := diag.Pos{File: r.name, Line: r.at + 1, Col: col, Cell: r.sheet + "!" + cell}
	wrong := func(hint, format string, args ...any) (string, *diag.Diag) {
		d := diag.Errorf(at, "quotes-cell", format, args...).WithHint("%s", hint)
		return "", &d
	}
	kind, err := r.file.GetCellType(r.sheet, cell)
	if err != nil {
		return wrong("clear it and type the value again", "the cell cannot be read")
	}
	formula, err := r.file.GetCellFormula(r.sheet, cell)
	switch {
	case err != nil || formula != "" || kind == excelize.CellTypeFormula:
		return wrong("copy the cell and paste it back as a value", "a formula stands where a value belongs")
	case kind == excelize.CellTypeError:
		return wrong("clear it and type the value again", "the cell holds an error")
	case kind == excelize.CellTypeBool:
		return wrong("type the value again", "the cell holds yes or no, not a value")
	}
	row := r.rows[r.at]
	if col > len(row) {
		return "", nil
	}
	if kind == excelize.CellTypeNumber || kind == excelize.CellTypeUnset {
		text := strings.TrimSpace(row[col-1])
		if text != "" && strings.Trim(text, "0123456789+-.eE") != "" {
			return wrong("clear it and type the value again", "the cell holds %.20q as a number, which is none", text)
		}
		return plainNumber(text), nil
	}
	return strings.Trim(row[col-1], " \t\r\n"), nil
}

// noMoney refuses a number that the sheet shows as a day, a time or a share, or in another
// currency.
func (r *sheetRows) noMoney(col int) *diag.Diag {
	at := diag.Pos{File: r.name, Line: r.at + 1, Col: col, Cell: r.address(r.at+1, col)}
	if holds := r.shows(col); holds != "" {
		d := diag.Errorf(at, "quotes-cell", "the cell holds %s, not an amount in dollars", holds).
			WithHint("give the cell the format of a number, and type the amount again")
		return &d
	}
	if money := r.currency(col); money != "" {
		d := diag.Errorf(at, "quotes-price", "the cell shows its number in %s, which is not US dollars", diag.Quote(money)).
			WithHint("write the amount in US dollars, e.g. $24.90, and give the cell the format of a number")
		return &d
	}
	return nil
}

// currency is what a number of the row is shown in by the sheet, where that is not dollars.
func (r *sheetRows) currency(col int) string {
	if !r.number(col) {
		return ""
	}
	cell, _ := excelize.CoordinatesToCellName(col, r.at+1) // both are counted, so they are sound
	_, code := r.formatCode(cell)
	for _, m := range signOfMoney().FindAllStringSubmatch(code, -1) {
		if _, err := quantity.ParseMoney(m[1] + "1"); err != nil {
			return strings.TrimSpace(m[1])
		}
	}
	return quantity.ForeignMoney(code)
}

// signOfMoney is the sign of a currency in a format, [$kr-41D], if it has one, not only the
// language: [$-409].
var signOfMoney = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\[\$([^\]-]+)[^\]]*\]`) })

const aDate = "a date"

// shows is what the sheet shows a number of the row as; "" for a number or a text.
func (r *sheetRows) shows(col int) string {
	cell, _ := excelize.CoordinatesToCellName(col, r.at+1) // both are counted, so they are sound
	kind, err := r.file.GetCellType(r.sheet, cell)
	if err != nil || kind != excelize.CellTypeNumber && kind != excelize.CellTypeUnset && kind != excelize.CellTypeDate {
		return ""
	}
	switch format := r.format(cell); {
	case kind == excelize.CellTypeDate, strings.ContainsAny(format, "ydh"):
		return aDate
	case strings.Contains(format, "%"):
		return "a percentage"
	}
	return ""
}

// number reports whether a cell of the row holds a number, not a text.
func (r *sheetRows) number(col int) bool {
	cell, _ := excelize.CoordinatesToCellName(col, r.at+1) // both are counted, so they are sound
	kind, err := r.file.GetCellType(r.sheet, cell)
	return err == nil && (kind == excelize.CellTypeNumber || kind == excelize.CellTypeUnset)
}

// cents rounds a number in a column of the row to cents, and takes note of it.
func (r *sheetRows) cents(col int, text string) string {
	out := wholeCents(text)
	if x, err := decimal.NewFromString(out); err == nil && out != text {
		r.round.Add(diag.Warnf(diag.Pos{File: r.name, Line: r.at + 1, Col: col, Cell: r.address(r.at+1, col)}, "quotes-price",
			"the cell holds %s, more than dollars and cents: it is read as %s", diag.Quote(text), quantity.FormatMoney(x)))
	}
	return out
}

// wholeCents rounds a number to cents, as the lines round, half away from zero; a bidder's
// own sheet has multiplied it out.
func wholeCents(text string) string {
	x, err := decimal.NewFromString(text)
	if err != nil || x.Round(2).Equal(x) {
		return text
	}
	return x.Round(2).String()
}

// format is how a sheet shows the number in a cell, without what it shows as it stands.
func (r *sheetRows) format(cell string) string {
	switch id, code := r.formatCode(cell); {
	case code != "":
		return asItStands().ReplaceAllString(strings.ToLower(code), "")
	case id == 9 || id == 10: // ECMA-376, part 1, 18.8.30
		return "%"
	case id >= 14 && id <= 22, id >= 27 && id <= 36, id >= 45 && id <= 47, id >= 50 && id <= 58:
		return "d"
	}
	return ""
}

// formatCode is the format of a cell by its number and, where the workbook says it, its code:
// a sheet of another country says its own of a number that has one.
func (r *sheetRows) formatCode(cell string) (id int, code string) {
	at, err := r.file.GetCellStyle(r.sheet, cell)
	if err != nil {
		return 0, ""
	}
	style, err := r.file.GetStyle(at)
	switch {
	case err != nil || style == nil:
		return 0, ""
	case style.CustomNumFmt != nil:
		return 0, *style.CustomNumFmt
	}
	if said := r.file.Styles.NumFmts; said != nil {
		for _, f := range said.NumFmt {
			if f.NumFmtID == style.NumFmt {
				return style.NumFmt, f.FormatCode
			}
		}
	}
	return style.NumFmt, ""
}

// asItStands is what a format shows as it stands: words in quotes, colours and places in
// brackets, letters behind a backslash.
var asItStands = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`"[^"]*"|\[[^\]]*\]|[\\_*].`) })

// plainNumber writes a number without the dust of binary fractions and without an exponent:
// a cell holds 15 digits.
func plainNumber(text string) string {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return text
	}
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// dayOf is a day that a spreadsheet keeps as a number, counted from 1904 in some.
func (r *sheetRows) dayOf(text string) string {
	n, err := strconv.ParseFloat(text, 64)
	if err != nil || n < 30000 || n > 90000 {
		return text
	}
	props, err := r.file.GetWorkbookProps()
	if err != nil {
		return text
	}
	day, err := excelize.ExcelDateToTime(n, props.Date1904 != nil && *props.Date1904)
	if err != nil {
		return text
	}
	return day.Format("2006-01-02")
}

// before is what a number format shows before its number.
var before = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(?:"[^"]*"|\\.|\[[^\]]*\])*`) })

// behind finds the words that a number format shows behind its number.
var behind = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[^;"]*[0#?](?:"[$ ]*")?[^;"]*"([^"]*[A-Za-z][^"]*)"`)
})

// perShown is what the sheet shows behind a number of the row, such as /sq yd, "" where that is
// money alone: it counts as if it were typed.
func (r *sheetRows) perShown(col int) string {
	if !r.number(col) {
		return ""
	}
	cell, _ := excelize.CoordinatesToCellName(col, r.at+1) // both are counted, so they are sound
	_, code := r.formatCode(cell)
	m := behind().FindStringSubmatch(before().ReplaceAllString(code, ""))
	if m == nil {
		return ""
	}
	if _, err := quantity.ParseMoney("1 " + strings.TrimSpace(m[1])); err == nil {
		return ""
	}
	return m[1]
}
