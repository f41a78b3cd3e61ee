package pricebook

import (
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
)

// A rowSource gives the rows of a table of quotes, its header first, and says where they
// stand.
type rowSource interface {
	// next is the next row with something in it; false at the end. What cannot be read is
	// added to what was found, and left out.
	next(found *diag.List) (row []string, more bool)
	place(i int) diag.Pos   // of a field of the last row; of the row for one that it has not
	begin() (hint string)   // how a table begins, where there is none
	row(at diag.Pos) string // how a row is called
}

// csvRows are the rows of a CSV.
type csvRows struct {
	name  string
	lines []string
	csv   *csv.Reader
	last  []string
}

func newCSVRows(name, text string) *csvRows {
	r := &csvRows{name: name, lines: strings.Split(text, "\n"), csv: csv.NewReader(strings.NewReader(text))}
	r.csv.FieldsPerRecord = -1
	return r
}

// isForm reports whether the table is a form for bids that was a workbook before.
func (r *csvRows) isForm() bool {
	for _, line := range r.lines[:min(50, len(r.lines))] {
		heads := strings.FieldsFunc(line, func(c rune) bool { return strings.ContainsRune(",;\t", c) })
		has := func(name string) bool {
			return slices.ContainsFunc(heads, func(s string) bool { return even(strings.Trim(s, `"`)) == name })
		}
		if has("item") && has("trade") && has("unit price") {
			return true
		}
	}
	return false
}

func (r *csvRows) begin() string { return "begin with the line   name,price,pack,dated,source" }

func (r *csvRows) row(at diag.Pos) string { return "line " + strconv.Itoa(at.Line) }

func (r *csvRows) next(found *diag.List) ([]string, bool) {
	for {
		row, err := r.csv.Read()
		var bad *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return nil, false
		case errors.As(err, &bad):
			found.Add(r.broken(bad))
			if len(*found) >= mostWrong {
				return nil, false
			}
			continue
		case err != nil: // a text in memory has no other
			return nil, false
		}
		if slices.ContainsFunc(row, func(s string) bool { return strings.TrimSpace(s) != "" }) {
			r.last = row
			return row, true
		}
	}
}

// broken is about quotes in the wrong place.
func (r *csvRows) broken(bad *csv.ParseError) diag.Diag {
	if errors.Is(bad.Err, csv.ErrQuote) && bad.StartLine != bad.Line {
		return diag.Errorf(r.at(bad.StartLine, 1, 0), "quotes-csv", "a quote that opens in this row is not closed before line %d", bad.Line).
			WithHint("put a value with a comma in quotes, and close them in the same row")
	}
	return diag.Errorf(r.at(bad.Line, bad.Column, 1), "quotes-csv", "a quote stands inside a value").
		WithHint(`write in for inches, or put the whole value in quotes and double those inside`)
}

// at is a place by the line and the byte in it.
func (r *csvRows) at(line, b, length int) diag.Pos {
	pos := diag.Pos{File: r.name, Line: line, Col: b, Len: length}
	if line >= 1 && line <= len(r.lines) && b >= 1 {
		pos.Col = utf8.RuneCountInString(r.lines[line-1][:min(b-1, len(r.lines[line-1]))]) + 1
	}
	return pos
}

func (r *csvRows) place(i int) diag.Pos {
	switch {
	case len(r.last) == 0:
		return diag.Pos{File: r.name, Line: 1}
	case i < 0 || i >= len(r.last):
		line, _ := r.csv.FieldPos(0)
		return r.at(line, 1, 0)
	}
	line, b := r.csv.FieldPos(i)
	pos := r.at(line, b, max(1, utf8.RuneCountInString(r.last[i])))
	if line <= len(r.lines) && strings.HasPrefix(r.lines[line-1][min(b-1, len(r.lines[line-1])):], `"`) {
		pos.Col++
	}
	return pos
}
