package comps

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/internal/sums"
	"ledgerboard/pkg/quantity"
)

// Options say how a list is read.
type Options struct {
	Columns map[string]string // the header of a field or of an own line, where it is not found by itself: "price": "AMT"
	Own     []string          // the names of extras, which a column of their own or one called has may hold
	Plane   bool              // of two kinds of places, those in metres are read and not the degrees
	Today   quantity.Date     // sales after it are flagged; none if zero
	Comma   rune              // between the cells; told from the first line if zero
}

// enough is how many bad cells are told one by one.
const enough = 100

func month(m int) time.Month { return time.Month(m) }

// reader holds one reading.
type reader struct {
	file     string
	table    table
	columns  []column
	row      row
	found    diag.List
	more     int // bad cells beyond enough
	list     *List
	record   []string
	width    int // how many columns the first row names
	headers  []string
	doubts   []doubted
	ofRow    []rowDoubt // of the row in hand
	nameless []int      // columns without a heading, of which no cell was met
	metres   []int      // sales whose distance is of few metres, among miles
	year     *diag.Diag // what is said where the column called year tells of the sales
	placed   placed
	offers   []offersIn
}

// column is a column that is read.
type column struct {
	at int
	field
	header string
}

// Read reads a list of sales from a table, row by row: CSV, or text with tabs,
// semicolons, bars or two and more blanks between its columns. The first row names the
// columns; those it does not know are left alone and named in List.Unread. file is the name for messages.
//
// A row whose date or price cannot be read is left out and said as a mistake; any
// other cell that cannot be read is said as a doubt and counts as not known. The
// list is nil only if the columns cannot be told or the text cannot be read on.
func Read(from io.Reader, file string, o Options) (*List, diag.List) {
	r := &reader{file: file, list: &List{}}
	r.table = newTable(from, o.Comma, o.Columns)
	r.row.words, r.row.own = map[string]string{}, o.Own
	header, err := r.table.Read()
	if err != nil {
		r.found.Add(diag.Errorf(diag.Pos{File: file}, "no-sales", "there is no list of sales: %v", reason(err)).
			WithHint("write a first line that names the columns, e.g. address, sale date, price, living area"))
		return nil, r.found
	}
	r.width, r.headers = len(header), slices.Clone(header)
	if !r.mapped(header, o) {
		return nil, r.found
	}
	r.lookForStatus()
	if !r.rows() {
		return nil, r.found
	}
	r.tellStatus()
	r.list.toldOwn(r.row.told)
	r.yearsOfSales()
	r.allMiles()
	r.tellDoubts()
	r.tellShort()
	r.list.settle(o.Today, file, &r.found)
	if r.more > 0 {
		r.found.Warnf(diag.Pos{File: file}, "more-bad-cells", "%d more cells could not be read", r.more)
	}
	r.found.Sort()
	return r.list, r.found
}

// yearsOfSales leaves out a column called year that only says when the houses were sold, or
// listed or taxed: each is that of the sale or later, or the year before, since deeds are
// recorded later.
func (r *reader) yearsOfSales() {
	other := func(s Sold) bool {
		return s.Built.Known && int(s.Built.Value) < s.Date.Year-1
	}
	if r.year == nil || slices.ContainsFunc(r.list.sales, other) || !slices.ContainsFunc(r.list.sales, func(s Sold) bool { return s.Built.Known }) {
		return
	}
	for i := range r.list.sales {
		r.list.sales[i].Built = Fact{}
	}
	r.found.Add(*r.year)
}

// reason says why reading failed, without what package csv says of places.
func reason(err error) string {
	if err == io.EOF {
		return "it is empty"
	}
	if e, ok := errors.AsType[*csv.ParseError](err); ok {
		return e.Err.Error()
	}
	return err.Error()
}

func (r *reader) rows() bool {
	for {
		record, err := r.table.Read()
		if err == io.EOF {
			return true
		}
		if err != nil {
			line := 0
			if e, ok := errors.AsType[*csv.ParseError](err); ok {
				line = e.Line
			}
			r.found.Add(diag.Errorf(diag.Pos{File: r.file, Line: line}, "unreadable", "the list cannot be read on: %s", reason(err)).
				WithHint("save it again as plain CSV"))
			return false
		}
		r.record = record
		r.sale()
	}
}

// NoHeading ends what a column without a heading is called in List.Unread.
const NoHeading = " without a heading"

// unsaid are cells that say that nothing is known.
var unsaid = []string{"n/a", "na", "-", "--", "?", "unknown", "null"}

// sale reads one row.
func (r *reader) sale() {
	if blank(r.record) || ruled(r.record) {
		return
	}
	r.list.Rows++
	if r.heads() {
		r.leaveOut(LikeFirst)
		return
	}
	if r.openQuote() || r.uneven() || r.tooMany() {
		return
	}
	r.nameless = slices.DeleteFunc(r.nameless, func(at int) bool {
		some := at < len(r.record) && strings.TrimSpace(r.record[at]) != ""
		if some {
			r.list.Unread = append(r.list.Unread, fmt.Sprintf("column %d%s", at+1, NoHeading))
		}
		return some
	})
	r.row.Sold, r.row.halves, r.row.total, r.row.metres, r.row.oddGarage = Sold{}, false, false, false, false
	r.row.onPlane, r.row.inDegrees = Place{}, Place{}
	r.row.Line, _ = r.table.FieldPos(0)
	r.ofRow = r.ofRow[:0]
	good := true
	for _, c := range r.columns {
		text := r.cell(c)
		if text == "" || slices.Contains(unsaid, strings.ToLower(text)) {
			continue
		}
		r.row.unit, r.row.doubt = c.unit, nil
		if err := c.read(&r.row, text); err != nil {
			good = r.refuse(c, text, err) && good
			r.row.oddGarage = r.row.oddGarage || strings.HasPrefix(c.name, "garage")
		} else if r.row.doubt != nil {
			r.row.oddGarage = r.row.oddGarage || r.row.doubt == &garageDoubt
			r.ofRow = append(r.ofRow, rowDoubt{c, text, r.row.doubt})
		} else if c.name == "date" && r.row.eitherFirst {
			r.ofRow = append(r.ofRow, rowDoubt{c, text, &monthDoubt})
		}
	}
	name, at := r.nameOf()
	switch {
	case sums.Named(name) && !(sums.MayBeOne(name) && !r.row.Date.IsZero() && r.row.Price.IsPositive()):
		r.leaveOut("of sums")
		r.say(r.pos(at), true, "row-of-sums", fmt.Sprintf("a row named %s is left out: it sums up the others, and is no sale", diag.Quote(name)), "take that row out of the table, or write the address of the house")
		return
	case !good:
	case r.row.Date.IsZero():
		good = r.missing("date")
	case r.row.Price.Sign() <= 0:
		good = r.missing("price")
	}
	if !good {
		r.leaveOut("without a day or a price that can be read")
		return
	}
	if r.row.noBath() {
		c := r.columns[slices.IndexFunc(r.columns, func(c column) bool { return c.name == "full baths" })]
		r.ofRow = append(r.ofRow, rowDoubt{c, strings.TrimSpace(r.record[c.at]), &noBathDoubt})
	}
	if r.row.oddGarage && r.row.Garage == "" {
		r.row.unmeasured()
	}
	if some := func(c column) bool { return c.name == "garage area" || c.name == "garage cars" }; r.row.twoGarages() {
		if at := slices.IndexFunc(r.columns, func(c column) bool { return some(c) && r.cell(c) != "" }); at >= 0 {
			r.ofRow = append(r.ofRow, rowDoubt{r.columns[at], r.cell(r.columns[at]), &garagesDoubt})
		}
	}
	r.keepDoubts()
	r.finish()
	r.tooFew()
	r.seeStatus()
	if r.row.metres {
		r.metres = append(r.metres, len(r.list.sales))
	}
	r.list.sales = append(r.list.sales, r.row.Sold)
}

// cell is what the row in hand says in a column, nothing where it has no such cell.
func (r *reader) cell(c column) string {
	if c.at >= len(r.record) {
		return ""
	}
	return strings.TrimSpace(r.record[c.at])
}

// LikeFirst is why a row is left out, and in List.LeftOut, that names the columns again, as
// pasted pages do.
const LikeFirst = "like the first, which names the columns"

// heads reports whether a row has the headers of all columns that are read.
func (r *reader) heads() bool {
	return !slices.ContainsFunc(r.columns, func(c column) bool {
		return c.at >= len(r.record) || !strings.EqualFold(strings.TrimSpace(r.record[c.at]), c.header)
	})
}

// leaveOut counts the row in hand among those that are left out, and why.
func (r *reader) leaveOut(why string) { r.list.LeftOut = append(r.list.LeftOut, why) }

// nameOf is what a row is named by and in which cell that stands: its address, or where it
// has none the first cell, unless that is of a column that says something else.
func (r *reader) nameOf() (string, int) {
	if r.row.Label != "" {
		return r.row.Label, r.named()
	}
	at := slices.IndexFunc(r.record, func(cell string) bool { return strings.TrimSpace(cell) != "" })
	if slices.ContainsFunc(r.columns, func(c column) bool { return c.at == at && c.name != "address" }) {
		return "", at
	}
	return strings.TrimSpace(r.record[at]), at
}

// uneven leaves out a row of which it is not told which cells are empty: tabs part it, not
// into as many cells as there are columns, which blanks part.
func (r *reader) uneven() bool {
	s, ok := r.table.(*spaced)
	if !ok || !s.uneven {
		return false
	}
	r.leaveOut("of which it is not told which cells are empty")
	r.say(r.pos(0), false, "uneven-cells", fmt.Sprintf("%s is left out: tabs part its row into %d cells, and the first row names %d columns, so which is empty is not told", r.name(), len(r.record), r.width), "write n/a where nothing is known, or part the first row by tabs too")
	return true
}

// tooMany leaves out a row with more cells than there are columns: one of them, often
// an amount with a comma, was cut in two, and what stands behind it is of other columns.
func (r *reader) tooMany() bool {
	n := len(r.record)
	for n > r.width && strings.TrimSpace(r.record[n-1]) == "" {
		n--
	}
	if n <= r.width {
		return false
	}
	r.leaveOut("with more cells than there are columns")
	r.say(r.pos(r.width), false, "too-many-cells", fmt.Sprintf("the row is left out: it has %d cells, and the first row names %d columns", n, r.width), `name each column in the first row, or leave out cells that have none; where commas part the cells, put an amount with one in quotes, "$341,000"`)
	return true
}

// tooFew doubts a row with fewer cells than there are columns: an empty one before the last may be
// missing, and what stands behind it is of other columns. Blanks that part a table say by their
// place which is empty, where its cells stand below their heads.
func (r *reader) tooFew() {
	if s, ok := r.table.(*spaced); ok {
		r.place(s)
		return
	}
	if len(r.record) >= r.width {
		return
	}
	r.say(r.pos(len(r.record)-1), true, "few-cells", fmt.Sprintf("%s: the row has %d cells, and the first row names %d columns; the last are taken as empty", r.name(), len(r.record), r.width), "see whether an empty cell is missing before the last; part an empty one like the others")
}

// mostLines is how many line ends a cell may well hold.
const mostLines = 2

// openQuote leaves out a row in which a quote that is not closed takes up what is
// behind it: a cell of several lines that holds quotes or whole rows, or of many lines.
func (r *reader) openQuote() bool {
	at := slices.IndexFunc(r.record, func(cell string) bool {
		n := strings.Count(cell, "\n")
		return n > mostLines || n > 0 && (len(r.record) != r.width || strings.Contains(cell, `"`) || strings.Count(cell, ",") >= max(1, r.width-1))
	})
	if at < 0 {
		return false
	}
	p := r.pos(at)
	r.leaveOut("in which a quote is not closed")
	p.Len = 1
	r.say(p, false, "open-quote", fmt.Sprintf("a quote that opens here takes up this row and the next %d; all of it is left out", strings.Count(r.record[at], "\n")), "close it in the same cell, or take it away")
	return true
}

// finish draws what follows from the cells of a row together.
func (r *reader) finish() {
	s := &r.row.Sold
	for i, p := range [...]Place{r.row.onPlane, r.row.inDegrees} { // half of either is none
		if p.X != 0 && p.Y != 0 {
			s.Place = Place{p.X, p.Y, i == 1, true}
		}
	}
	s.settleGarage()
}

// ruled reports whether a row is the line that parts the headers from the rest.
func ruled(record []string) bool {
	line := strings.Join(record, "")
	return strings.Contains(line, "---") && strings.Trim(line, "-:=+| \t") == ""
}

func blank(record []string) bool {
	for _, c := range record {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

// refuse says what is wrong with a cell, and whether the row can be used without.
func (r *reader) refuse(c column, text string, err error) (usable bool) {
	why, want := wanted(err)
	if q := diag.Quote(text); !strings.Contains(why, q) {
		why = q + ": " + why
	}
	if c.name == "date" || c.name == "price" {
		r.say(r.pos(c.at), false, "bad-sale", fmt.Sprintf("%s is left out: %s: %s", r.name(), c.header, why), "write "+want)
		return false
	}
	r.say(r.pos(c.at), true, "bad-cell", fmt.Sprintf("%s: %s: %s, so it counts as not known", r.name(), c.header, why), "write "+want)
	return true
}

// name is what the row in hand calls its sale, or "the row".
func (r *reader) name() string {
	if at := r.named(); at >= 0 {
		return strings.TrimSpace(r.record[at])
	}
	return "the row"
}

// named is where the row in hand says what its sale is called, or -1.
func (r *reader) named() int {
	for _, c := range r.columns {
		if c.name == "address" && c.at < len(r.record) && strings.TrimSpace(r.record[c.at]) != "" {
			return c.at
		}
	}
	return -1
}

func (r *reader) missing(name string) bool {
	for _, c := range r.columns {
		if c.name != name {
			continue
		}
		at := min(c.at, len(r.record)-1)
		says, hint := "nothing is given", "write it, or leave the row out"
		if s, ok := r.table.(*spaced); ok && s.short && s.astray {
			_, taken := r.taken()
			says, hint = says+": "+taken, aDash+", so that the others stand in their columns"
		}
		r.say(r.pos(at), false, "no-"+name, fmt.Sprintf("%s is left out: %s: %s", r.name(), c.header, says), hint)
	}
	return false
}

func (r *reader) say(p diag.Pos, doubt bool, code, message, hint string) {
	if len(r.found) >= enough {
		r.more++
		return
	}
	d := diag.Errorf(p, code, "%s", message)
	if doubt {
		d = diag.Warnf(p, code, "%s", message)
	}
	r.found.Add(d.WithHint("%s", hint))
}

// pos returns the place of a cell, its column in characters. Package csv counts
// bytes: those of longer characters in the cells before it on its line come off.
func (r *reader) pos(at int) diag.Pos {
	line, col := r.table.FieldPos(at)
	for i := range at {
		cell := r.record[i]
		if cut := strings.LastIndexByte(cell, '\n'); cut >= 0 {
			cell = cell[cut+1:]
		} else if l, _ := r.table.FieldPos(i); l != line {
			continue
		}
		col -= len(cell) - utf8.RuneCountInString(cell)
	}
	return diag.Pos{File: r.file, Line: line, Col: col, Len: utf8.RuneCountInString(r.record[at])}
}
