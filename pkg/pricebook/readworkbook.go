package pricebook

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// ReadWorkbook reads a workbook of quotes by the rules of ReadQuotes: a form for bids that
// is filled in, by its columns item and unit price or labour, or a table with the columns
// name and price. Rows of a form that nobody filled in are passed over, and what is filled
// in beside prices is returned by name: ignored. Places are cells.
// Nothing in the workbook is worked out; a formula where a value belongs is a mistake, and
// so is a workbook with macros or beyond what is read.
func ReadWorkbook(name string, data []byte, b *Book) (quotes []Quote, ignored []string, found diag.List) {
	return readWorkbook(name, data, b, diag.Errorf)
}

// CheckWorkbook reads a workbook as ReadWorkbook does, for who only looks: that all amounts
// of a form belong into the deal file is no mistake of the form.
func CheckWorkbook(name string, data []byte, b *Book) (quotes []Quote, found diag.List) {
	quotes, _, found = readWorkbook(name, data, b, diag.Warnf)
	return quotes, found
}

// A severity makes a mistake or a doubt.
type severity func(at diag.Pos, code, format string, args ...any) diag.Diag

func readWorkbook(name string, data []byte, b *Book, elsewhere severity) (quotes []Quote, ignored []string, found diag.List) {
	defer func() {
		if recover() != nil { // the library takes parts for sound that are not
			quotes, ignored = nil, nil
			found = diag.List{unsound(name, refuse(anewXLSX, "it is no sound workbook: its parts do not fit together"))}
		}
	}()
	rows, err := openRows(name, data)
	if err != nil {
		return nil, nil, diag.List{unsound(name, err)}
	}
	r := &tableReader{rows: rows, book: b, form: rows.form}
	quotes, ignored, found = r.read()
	if rows.form {
		ignored = rows.passed()
		found.Add(rows.rounding()...)
		found.Add(rows.above...)
		found.Add(rows.reaching()...)
		found.Add(rows.remarked()...)
	}
	for _, sheet := range rows.others {
		found.Add(diag.Warnf(diag.Pos{File: name, Cell: sheet}, "quotes-form", "this sheet has a table of quotes too, and is not read").
			WithHint("put all into the sheet %s, or read this one from a workbook of its own", diag.Quote(rows.sheet)))
	}
	found.Sort()
	if len(quotes) == 0 && !found.HasErrors() {
		found.Add(rows.nothing(r.totals, elsewhere))
	}
	return quotes, ignored, found
}

// nothing says that no price for the book is in the sheet, and where what is in it goes; in
// some rows stand totals alone.
func (r *sheetRows) nothing(totals int, elsewhere severity) diag.Diag {
	at := diag.Pos{File: r.name, Cell: r.sheet}
	wrong := func(words string) diag.Diag { return elsewhere(at, "quotes-form", "%s", words) }
	switch {
	case r.lines > 0 && totals > 0:
		return wrong("no row has a price for a price book: all amounts are for lines of the deal, or totals").
			WithHint("put them into the deal file, as is said for each row")
	case r.lines > 0:
		return wrong("no row has a price for a price book: all amounts are for lines of the deal").
			WithHint("put them into the renovation lines of the deal file, as is said for each row")
	case totals > 0:
		return wrong("no row has a price for a price book: only totals are filled in").
			WithHint("put them into the deal file as quotes, as is said for each row, or fill in the unit price or the labour")
	}
	return diag.Errorf(at, "quotes-form", "nothing is filled in: no row has a price").WithHint("fill in the unit price, or the labour, of what is bid on")
}

// unsound is why a workbook is not read.
func unsound(name string, err error) diag.Diag {
	var no *refusal
	if !errors.As(err, &no) {
		no = &refusal{"it is no workbook that can be read", anewXLSX}
	}
	return diag.Errorf(diag.Pos{File: name}, "quotes-workbook", "%s", no.why).WithHint("%s", no.instead)
}

// sheetRows are the rows of a table on a sheet of a workbook.
type sheetRows struct {
	file   *excelize.File
	name   string
	sheet  string
	rows   [][]string // as they stand, from the first
	head   int        // the index of the header
	at     int        // the index of the last row given
	form   bool
	fields []field
	others []string  // other sheets with a table of quotes
	lines  int       // rows with a price that are for a line of the deal, not for an item
	round  diag.List // numbers that were rounded to cents
	above  diag.List // what is wrong with what stands above a form's table
}

// A field is where a value of a row stands: in a column, or always in the same cell.
type field struct {
	name  string
	col   int    // from 1
	row   int    // from 1, of a cell that is the same for all rows, or 0
	value string // of that cell
}

// openRows finds the table in a workbook.
func openRows(name string, data []byte) (*sheetRows, error) {
	data, err := gate(data)
	if err != nil {
		return nil, err
	}
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{RawCellValue: true, UnzipSizeLimit: 2 * mostUnzipped, UnzipXMLSizeLimit: 2 * mostUnzipped})
	if err != nil {
		return nil, err
	}
	var with []*sheetRows
	sheets := f.GetSheetList()
	for _, sheet := range sheets {
		r := &sheetRows{file: f, name: name, sheet: sheet}
		if r.rows, err = f.GetRows(sheet); err != nil {
			continue // a chart has none
		}
		if r.findHead() {
			with = append(with, r)
		}
	}
	if i := slices.IndexFunc(with, func(r *sheetRows) bool { return r.sheet == FormSheet }); i >= 0 {
		for _, r := range slices.Delete(slices.Clone(with), i, i+1) {
			if r.filled() {
				with[i].others = append(with[i].others, r.sheet)
			}
		}
		with = with[i : i+1]
	}
	switch len(with) {
	case 0:
		return nil, refuse("it takes a sheet with the heads item and unit price, as in a form of   ledgerboard workbook --trade,   or name and price",
			"no sheet of the workbook has a table of quotes; it has %s", some(sheets))
	case 1:
		return with[0], with[0].lay()
	}
	names := make([]string, len(with))
	for i, r := range with {
		names[i] = r.sheet
	}
	return nil, refuse("keep one of them, or name it "+FormSheet, "several sheets have a table of quotes: %s", some(names))
}

// some are names in words, not too many of them.
func some(names []string) string {
	const most = 6
	out := make([]string, 0, most)
	for _, n := range names[:min(most, len(names))] {
		out = append(out, diag.Quote(n))
	}
	if len(names) > most {
		out = append(out, fmt.Sprintf("and %d more", len(names)-most))
	}
	return strings.Join(out, ", ")
}

// findHead looks for the header in the first rows of the sheet.
func (r *sheetRows) findHead() bool {
	for i, row := range r.rows[:min(50, len(r.rows))] {
		has := func(name string) bool {
			return slices.ContainsFunc(row, func(s string) bool { return even(s) == name })
		}
		switch {
		case has("item") && has("unit price"):
			r.head, r.form = i, true
			return true
		case has("name") && has("price"):
			r.head = i
			return true
		}
	}
	return false
}

// lay finds out what the columns are for. A form's item is a name, its unit price a price;
// who fills it in and when stands above.
func (r *sheetRows) lay() error {
	r.at = r.head - 1
	for i, s := range r.rows[r.head] {
		name := s
		if r.form {
			switch name = even(s); {
			case name == "item":
				name = "name"
			case name == "unit price":
				name = "price"
			case name != "unit" && !slices.Contains(formOnly, name):
				name = ""
			}
		}
		r.fields = append(r.fields, field{name: name, col: i + 1})
	}
	if !r.form {
		return nil
	}
	r.fields = append(r.fields, field{name: "kind", value: "item", row: r.head + 1, col: 1})
	for label, name := range map[string]string{FormFrom: "source", FormDay: "dated"} {
		row := r.labelled(label)
		if row == 0 {
			continue
		}
		r.at = row - 1
		value, bad := r.value(2)
		if bad != nil {
			r.above.Add(*bad)
		}
		if name == "dated" {
			value = r.dayOf(value)
		}
		r.fields = append(r.fields, field{name: name, value: value, row: row, col: 2})
	}
	r.at = r.head - 1
	r.doubtDay()
	return nil
}

// doubtDay doubts a form of a day after the last on which it holds: the day is a slip, such as
// another year. The clock is not asked, so that a form says the same tomorrow.
func (r *sheetRows) doubtDay() {
	dayOf := func(label string) (day quantity.Date, at diag.Pos) {
		row := r.labelled(label)
		if row == 0 || len(r.rows[row-1]) < 2 {
			return day, at
		}
		day, _ = quantity.ParseDate(r.dayOf(strings.TrimSpace(r.rows[row-1][1])))
		return day, diag.Pos{File: r.name, Line: row, Col: 2, Cell: r.address(row, 2)}
	}
	day, at := dayOf(FormDay)
	if until, _ := dayOf(FormUntil); !until.IsZero() && day.Compare(until) > 0 {
		r.above.Add(diag.Warnf(at, "quotes-dated", "the bid is of %s, after the last day on which it holds (%s)", day, until).WithHint("check the year of both; the day is used as it stands"))
	}
}

// labelled is the row above the table that a label stands in, 0 where none does.
func (r *sheetRows) labelled(label string) int {
	return 1 + slices.IndexFunc(r.rows[:r.head], func(row []string) bool { return len(row) > 0 && even(row[0]) == label })
}

// priced are the columns of a form that prices come from.
var priced = []string{"unit price", "labour", "total"}

// filled reports whether a sheet has a price below its head.
func (r *sheetRows) filled() bool {
	for _, row := range r.rows[r.head+1:] {
		for i, s := range row {
			if head := r.rows[r.head]; i < len(head) && strings.TrimSpace(s) != "" && (even(head[i]) == "price" || slices.Contains(priced, even(head[i]))) {
				return true
			}
		}
	}
	return false
}

// reaching doubts prices in cells that reach over several rows: a sheet keeps such a price
// in the first alone.
func (r *sheetRows) reaching() (found diag.List) {
	merged, err := r.file.GetMergeCells(r.sheet, true)
	if err != nil {
		return nil
	}
	for _, m := range merged {
		col, row, err := excelize.CellNameToCoordinates(m.GetStartAxis())
		_, last, other := excelize.CellNameToCoordinates(m.GetEndAxis())
		if err != nil || other != nil || last == row || row <= r.head+1 || row > len(r.rows) || col > len(r.rows[r.head]) || col > len(r.rows[row-1]) {
			continue
		}
		if name := even(r.rows[r.head][col-1]); slices.Contains(priced, name) && strings.TrimSpace(r.rows[row-1][col-1]) != "" {
			left := fmt.Sprintf("row %d has", row+1)
			if last > row+1 {
				left = fmt.Sprintf("rows %d to %d have", row+1, last)
			}
			found.Add(diag.Warnf(diag.Pos{File: r.name, Line: row, Col: col, Cell: r.address(row, col)}, "quotes-form",
				"the cell reaches over several rows: its %s is read for row %d alone, and %s none", name, row, left).
				WithHint("part the cell, and write in each row what is for that row"))
		}
	}
	return found
}

// rounding tells once that numbers were rounded to cents; a bidder's own sheet may have
// multiplied out all of them.
func (r *sheetRows) rounding() diag.List {
	if len(r.round) == 0 {
		return nil
	}
	more := ""
	if n := len(r.round) - 1; n > 0 {
		more = "; likewise in " + quantity.Counted(n, "other cell")
	}
	return diag.List{r.round[0].WithHint("write dollars and cents where it is another amount%s", more)}
}

// remarked doubts money of a form in cells that no price is read from: in the remarks, beside and
// below the table, in what stands above it, in its heads, in notes at cells and on other sheets.
func (r *sheetRows) remarked() (found diag.List) {
	doubt := func(on *sheetRows, row, col int, where, text string) {
		if len(found) < mostWrong {
			found.Add(diag.Warnf(diag.Pos{File: r.name, Line: row, Col: col, Cell: on.address(row, col)}, "quotes-form", "%s money, which is not counted: %s", where, diag.Quote(strings.TrimSpace(text))).
				WithHint("ask whether the price has it in it; what comes on top goes into the deal file, e.g. under renovation:   general: {delivery: $300}"))
		}
	}
	for i, row := range r.rows {
		for j, text := range row {
			if r.holdsMoney(i, j, text) {
				doubt(r, i+1, j+1, r.whereMoney(i, j), text)
			}
		}
	}
	for _, sheet := range r.file.GetSheetList() {
		on := &sheetRows{file: r.file, sheet: sheet}
		if rows, err := r.file.GetRows(sheet); err == nil && sheet != r.sheet && !slices.Contains(r.others, sheet) {
			for i, row := range rows {
				for j, text := range row {
					if moneyIn().MatchString(text) || bareAmount().MatchString(text) && on.showsMoney(i+1, j+1) {
						doubt(on, i+1, j+1, "a cell that is not read holds", text)
					}
				}
			}
		}
		notes, _ := r.file.GetComments(sheet) // what cannot be read has no text
		for _, n := range notes {
			if col, row, err := excelize.CellNameToCoordinates(n.Cell); err == nil && moneyIn().MatchString(textOf(n)) {
				doubt(on, row, col, "a note at a cell holds", textOf(n))
			}
		}
	}
	return found
}

// textOf is all that a note says: most programs write it in pieces of one look each.
func textOf(n excelize.Comment) string {
	out := n.Text
	for _, piece := range n.Paragraph {
		out += piece.Text
	}
	return out
}

// whereMoney says of what stands in a cell of a form that it holds money.
func (r *sheetRows) whereMoney(i, j int) string {
	switch {
	case i > r.head && r.headOf(j) == "remarks":
		return "the remarks hold"
	case slices.ContainsFunc(r.fields, func(f field) bool { return f.name == "source" && f.row == i+1 && f.col == j+1 }):
		return "the name of who quotes holds"
	case i < r.head && j == 0, i == r.head:
		return "the words of the form hold"
	}
	return "a cell that is not read holds"
}

// holdsMoney reports whether a cell that no price is read from holds an amount: where the form
// itself has words, one with a sign or a word of money.
func (r *sheetRows) holdsMoney(i, j int, text string) bool {
	switch head := r.headOf(j); {
	case i > r.head && slices.Contains([]string{"unit price", "price", "labour", "total", "quantity", "coats"}, head):
		return false
	case i > r.head && (head == "remarks" || !inForm(head)):
		return moneyIn().MatchString(text) || bareAmount().MatchString(text)
	}
	return moneyIn().MatchString(text)
}

// showsMoney reports whether the sheet shows the number in a cell with the sign of dollars.
func (r *sheetRows) showsMoney(row, col int) bool {
	cell, _ := excelize.CoordinatesToCellName(col, row) // both are counted, so they are sound
	id, code := r.formatCode(cell)
	return id >= 5 && id <= 8 || id == 42 || id == 44 || // ECMA-376, part 1, 18.8.30; a language alone is [$-409]
		strings.Contains(strings.ReplaceAll(code, "[$-", ""), "$")
}

// headOf is the name of a column, "" where it has none.
func (r *sheetRows) headOf(j int) string {
	if j >= len(r.rows[r.head]) {
		return ""
	}
	return even(r.rows[r.head][j])
}

func inForm(head string) bool {
	return slices.ContainsFunc(FormColumns, func(c FormColumn) bool { return even(c.Name) == head })
}

// moneyIn finds an amount in words: $300, 300 dollars.
var moneyIn = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)[$€£]\s*\.?\d|\d[km]?\s*(?:[$€£]|(?:dollars?|bucks|usd)\b)|\busd\s*\d`)
})

// bareAmount is nothing but a number.
var bareAmount = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\s*[+-]?[\d.,]*\d\s*$`) })

// passed are what somebody filled in of a form that no price is read from.
func (r *sheetRows) passed() (names []string) {
	for _, name := range []string{"total", "lead time", "remarks"} {
		col := slices.IndexFunc(r.rows[r.head], func(s string) bool { return even(s) == name })
		if col >= 0 && slices.ContainsFunc(r.rows[r.head+1:], func(row []string) bool { return col < len(row) && strings.TrimSpace(row[col]) != "" }) {
			names = append(names, name)
		}
	}
	for _, name := range []string{FormLicence, FormUntil} {
		if row := r.labelled(name); row > 0 && len(r.rows[row-1]) > 1 && strings.TrimSpace(r.rows[row-1][1]) != "" {
			names = append(names, name)
		}
	}
	return names
}

func (r *sheetRows) address(row, col int) string {
	a, _ := excelize.CoordinatesToCellName(col, row) // both are counted, so they are sound
	return r.sheet + "!" + a
}

func (r *sheetRows) begin() string { return "its first row names the columns: name, price" }

func (r *sheetRows) row(at diag.Pos) string { return at.Cell }

func (r *sheetRows) place(i int) diag.Pos {
	at := diag.Pos{File: r.name, Line: max(r.at, 0) + 1, Col: 1}
	if i >= 0 && i < len(r.fields) {
		at.Col = r.fields[i].col
		if row := r.fields[i].row; row > 0 {
			at.Line = row
		}
	}
	at.Cell = r.address(at.Line, at.Col)
	return at
}

func (r *sheetRows) next(found *diag.List) ([]string, bool) {
	for r.at++; r.at < len(r.rows); r.at++ {
		if r.at == r.head {
			return r.names(), true
		}
		if row, fine := r.values(found); fine {
			return row, true
		}
		if len(*found) >= mostWrong {
			break
		}
	}
	return nil, false
}

func (r *sheetRows) names() []string {
	out := make([]string, len(r.fields))
	for i, f := range r.fields {
		out[i] = f.name
	}
	return out
}

// values are those of the row, if there is something to read in it.
func (r *sheetRows) values(found *diag.List) ([]string, bool) {
	if r.form && r.at > r.head {
		if d, is := r.added(); is {
			found.Add(d)
			return nil, false
		}
	}
	out, something, sound := make([]string, len(r.fields)), false, true
	for i, f := range r.fields {
		if out[i] = f.value; f.row > 0 || f.name == "" {
			continue
		}
		text, bad := r.value(f.col)
		if bad == nil && text != "" && slices.Contains([]string{"price", "labour", "total"}, even(f.name)) {
			if bad = r.noMoney(f.col); bad == nil && even(f.name) != "price" && r.number(f.col) {
				text = r.cents(f.col, text)
			}
			if per := r.perShown(f.col); per != "" {
				text = "$" + text + per
			}
		}
		if bad == nil && even(f.name) == "dated" && r.shows(f.col) == aDate {
			text = r.dayOf(text)
		}
		if bad != nil {
			found.Add(*bad)
			sound = false
		}
		out[i] = text
		something = something || strings.TrimSpace(text) != "" && (!r.form || f.name == "price" || f.name == "labour" || f.name == "total")
	}
	if r.form && sound && something && r.at >= 0 {
		if i := slices.IndexFunc(r.fields, func(f field) bool { return f.name == "name" }); strings.TrimSpace(out[i]) == "" {
			r.lines++
			found.Add(r.forLine(r.place(i), out))
			return nil, false
		}
	}
	return out, something && sound
}
