package pricebook

import (
	"encoding/csv"
	"errors"
	"io"
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
	name    string
	lines   []string
	csv     *csv.Reader
	book    *Book
	columns map[string]int // by name
	wide    int            // of the header
	row     []string
	rows    map[string]int // lines of the rows, by what they are for
	found   diag.List
	quotes  []Quote
	ignored []string
}

// ReadQuotes reads a table of quotes as CSV: a header with the columns name and price
// and, if wanted, kind, pack, unit, dated and source, in any order; a row for each quote.
// Names are those of the book. Columns of other names are not read and returned. The
// list holds every mistake; the quotes are of use only without any.
func ReadQuotes(name, text string, b *Book) (quotes []Quote, ignored []string, found diag.List) {
	text = strings.TrimPrefix(text, "\ufeff")
	r := &tableReader{name: name, lines: strings.Split(text, "\n"), csv: csv.NewReader(strings.NewReader(text)), book: b, rows: map[string]int{}}
	r.csv.FieldsPerRecord = -1
	if !utf8.ValidString(text) {
		r.found.Add(diag.Errorf(diag.Pos{File: name, Line: r.firstBad()}, "quotes-not-utf8", "a letter here is not saved as UTF-8").
			WithHint("save the table as CSV in UTF-8"))
		return nil, nil, r.found
	}
	if r.header() {
		for len(r.found) < mostWrong && r.next() {
			r.quote()
		}
	}
	r.found.Sort()
	return r.quotes, r.ignored, r.found
}

func (r *tableReader) firstBad() int {
	return slices.IndexFunc(r.lines, func(l string) bool { return !utf8.ValidString(l) }) + 1
}

// next reads a row that is not blank; false at the end.
func (r *tableReader) next() bool {
	for {
		row, err := r.csv.Read()
		var bad *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return false
		case errors.As(err, &bad):
			r.broken(bad)
			if len(r.found) >= mostWrong {
				return false
			}
			continue
		case err != nil: // a text in memory has no other
			return false
		}
		if slices.ContainsFunc(row, func(s string) bool { return strings.TrimSpace(s) != "" }) {
			r.row = row
			return true
		}
	}
}

// broken is about quotes in the wrong place.
func (r *tableReader) broken(bad *csv.ParseError) {
	if errors.Is(bad.Err, csv.ErrQuote) && bad.StartLine != bad.Line {
		r.found.Add(diag.Errorf(r.at(bad.StartLine, 1, 0), "quotes-csv", "a quote that opens in this row is not closed before line %d", bad.Line).
			WithHint("put a value with a comma in quotes, and close them in the same row"))
		return
	}
	r.found.Add(diag.Errorf(r.at(bad.Line, bad.Column, 1), "quotes-csv", "a quote stands inside a value").
		WithHint(`write in for inches, or put the whole value in quotes and double those inside`))
}

// at is a place by the line and the byte in it.
func (r *tableReader) at(line, b, length int) diag.Pos {
	pos := diag.Pos{File: r.name, Line: line, Col: b, Len: length}
	if line >= 1 && line <= len(r.lines) && b >= 1 {
		pos.Col = utf8.RuneCountInString(r.lines[line-1][:min(b-1, len(r.lines[line-1]))]) + 1
	}
	return pos
}

// place is where a field of the row stands; the end of the row for one that is missing.
func (r *tableReader) place(i int) diag.Pos {
	if i < 0 || i >= len(r.row) {
		line, _ := r.csv.FieldPos(0)
		return r.at(line, 1, 0)
	}
	line, b := r.csv.FieldPos(i)
	pos := r.at(line, b, max(1, utf8.RuneCountInString(r.row[i])))
	if line <= len(r.lines) && strings.HasPrefix(r.lines[line-1][min(b-1, len(r.lines[line-1])):], `"`) {
		pos.Col++
	}
	return pos
}

func (r *tableReader) wrong(i int, code, format string, args ...any) func(hint string, args ...any) {
	d := diag.Errorf(r.place(i), code, format, args...)
	return func(hint string, args ...any) { r.found.Add(d.WithHint(hint, args...)) }
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
			r.found.Add(diag.Errorf(diag.Pos{File: r.name, Line: 1}, "quotes-header", "the table is empty").WithHint("begin with the line   name,price,pack,dated,source"))
		}
		return false
	}
	if len(r.row) == 1 && strings.ContainsAny(r.row[0], ";\t|") {
		r.wrong(0, "quotes-header", "the columns are not parted by commas")("save the table as CSV with commas")
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
		case known:
			r.columns[name] = i
		case isNear:
			r.wrong(i, "quotes-header", "there is no column %q", cell)("did you mean %q?", near)
		default:
			r.ignored = append(r.ignored, cell)
		}
	}
	for _, must := range []string{"name", "price"} {
		if _, ok := r.columns[must]; !ok && len(r.found) == 0 {
			r.wrong(-1, "quotes-header", "there is no column %q", must)("the first line names the columns:   name,price,pack,dated,source")
		}
	}
	return len(r.found) == 0
}

// clean refuses a cell with what cannot be seen.
func (r *tableReader) clean(i int) bool {
	for _, c := range r.row[i] {
		if !unicode.IsPrint(c) {
			r.wrong(i, "quotes-odd-character", "a character that cannot be seen (U+%04X) is in %q", c, r.row[i])("delete it and type the value again, in one line")
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
