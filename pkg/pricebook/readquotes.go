package pricebook

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
)

// mostWrong is how many mistakes of a table are told; the rest is not read.
const mostWrong = 200

// A tableReader reads a table of quotes.
type tableReader struct {
	rows    rowSource
	book    *Book
	columns map[string]int // by name
	wide    int            // of the header
	row     []string
	quoted  map[string]int // the index in quotes, by what they are for
	form    bool           // a form for bids, which says more of labour
	found   diag.List
	quotes  []Quote
	ignored []string
	totals  int // rows of a form with a total alone
}

// ReadQuotes reads a table of quotes as CSV: a header with the columns name and price
// and, if wanted, kind, pack, unit, dated and source, in any order; a row for each quote.
// Names are those of the book. Columns of other names are not read and returned. The
// list holds every mistake; the quotes are of use only without any.
func ReadQuotes(name, text string, b *Book) (quotes []Quote, ignored []string, found diag.List) {
	text = strings.TrimPrefix(text, "\ufeff")
	if !utf8.ValidString(text) {
		lines := strings.Split(text, "\n")
		bad := slices.IndexFunc(lines, func(l string) bool { return !utf8.ValidString(l) })
		found.Add(diag.Errorf(diag.Pos{File: name, Line: bad + 1}, "quotes-not-utf8", "a letter here is not saved as UTF-8").
			WithHint("save the table as CSV in UTF-8"))
		return nil, nil, found
	}
	r := &tableReader{rows: newCSVRows(name, text), book: b}
	return r.read()
}

// read reads all rows.
func (r *tableReader) read() ([]Quote, []string, diag.List) {
	r.quoted = map[string]int{}
	if r.header() {
		for len(r.found) < mostWrong && r.next() {
			r.quote()
		}
	}
	r.found.Sort()
	return r.quotes, r.ignored, r.found
}

// next reads a row that is not blank; false at the end.
func (r *tableReader) next() (more bool) {
	r.row, more = r.rows.next(&r.found)
	return more
}

// place is where a field of the row stands.
func (r *tableReader) place(i int) diag.Pos { return r.rows.place(i) }

func (r *tableReader) wrong(i int, code, format string, args ...any) func(hint string, args ...any) {
	d := diag.Errorf(r.place(i), code, format, args...)
	return func(hint string, args ...any) { r.tell(d.WithHint(hint, args...)) }
}

// tell adds what was found, once: what stands above a form is read with each of its rows.
func (r *tableReader) tell(d diag.Diag) {
	if !slices.Contains(r.found, d) {
		r.found.Add(d)
	}
}

func readColumns() []string {
	var out []string
	for _, c := range Columns {
		if c.read {
			out = append(out, c.Name)
		}
	}
	return out
}

// header reads the names of the columns.
func (r *tableReader) header() bool {
	r.columns = map[string]int{}
	if !r.next() {
		if len(r.found) == 0 {
			r.found.Add(diag.Errorf(r.place(-1), "quotes-header", "the table is empty").WithHint("%s", r.rows.begin()))
		}
		return false
	}
	if len(r.row) == 1 && strings.ContainsAny(r.row[0], ";\t|") {
		r.wrong(0, "quotes-header", "the columns are not parted by commas")("save the table as CSV with commas; give a form for bids as .xlsx")
		return false
	}
	wanted := readColumns()
	r.wide = len(r.row)
	for i, cell := range r.row {
		name := even(cell)
		known := slices.ContainsFunc(Columns, func(c Column) bool { return c.Name == name })
		near, isNear := diag.Nearest(name, wanted)
		_, twice := r.columns[name]
		switch {
		case name == "":
		case !r.clean(i):
		case twice:
			r.wrong(i, "quotes-header", "the column %q is there twice", name)("keep one of them")
		case known || r.form && slices.Contains(formOnly, name):
			r.columns[name] = i
		case isNear:
			r.wrong(i, "quotes-header", "there is no column %s", diag.Quote(cell))("did you mean %q?", near)
		default:
			r.ignored = append(r.ignored, cell)
			if name == "coats" && !r.form {
				r.tell(diag.Warnf(r.place(i), "quotes-header", "coats are not read of a table: its prices are for one coat").
					WithHint("divide a price for more coats by them, or fill in the form of   ledgerboard workbook --blank-prices"))
			}
		}
	}
	if forms, is := r.rows.(interface{ isForm() bool }); is && forms.isForm() {
		r.wrong(-1, "quotes-form", "this is a form for bids that was saved as CSV, with its numbers as they are shown")("give the form as .xlsx: it is read as it is")
		return false
	}
	for _, must := range []string{"name", "price"} {
		if _, ok := r.columns[must]; !ok && len(r.found) == 0 {
			r.wrong(-1, "quotes-header", "there is no column %q", must)("the first line names the columns:   name,price,pack,dated,source")
		}
	}
	return !r.found.HasErrors()
}

// clean refuses a cell with what cannot be seen.
func (r *tableReader) clean(i int) bool {
	for _, c := range r.row[i] {
		if !unicode.IsPrint(c) {
			r.wrong(i, "quotes-odd-character", "a character that cannot be seen (U+%04X) is in %s", c, diag.Quote(r.row[i]))("delete it and type the value again, in one line")
			return false
		}
	}
	return true
}

// cell is the value of a column in the row, "" where it has none.
func (r *tableReader) cell(column string) (text string, at int) {
	i, ok := r.columns[column]
	if !ok || i >= len(r.row) {
		return "", -1
	}
	return harmed(strings.TrimSpace(r.row[i])), i
}
