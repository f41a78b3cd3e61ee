package deal

import (
	"bytes"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// Sales are told apart by a number: the line of the file that they stand in, and from
// these on those of the table of the deal file and those that it writes out.
const (
	fromTable  = 1_000_000
	fromRecord = 2_000_000
)

// A salesList is all sales that the deal names, with where they stand.
type salesList struct {
	sales []comps.Sold
	at    map[int]diag.Pos
	own   []int    // written out or pasted, so meant to be used
	file  bool     // some are of a file
	lost  []string // of each row of a table that is left out, why
	lent  []int    // rows that tell what one that is written out leaves unsaid of the same sale

	unread []string // headers of columns that were not read
}

// salesOf gathers the sales of the deal.
func (r *reader) salesOf() *salesList {
	l := &salesList{at: map[int]diag.Pos{}}
	r.allMiles()
	r.namedColumns()
	told := r.writtenHas()
	for i, s := range r.items["<comp>"] {
		sale := r.entry(s.path).Sold()
		sale.Label, sale.Line, sale.Has, sale.Origin = r.labels[s.path], fromRecord+i, r.has(s.path), comps.Written
		sale.Told = told
		l.at[sale.Line] = s.at
		l.own = append(l.own, sale.Line)
		l.sales = append(l.sales, sale)
	}
	if g := r.good("comps.table"); g != nil {
		r.pasted(l, g)
	}
	switch g := r.good("comps.file"); {
	case r.asked.From != "":
		r.listed(l, r.asked.From, r.asked.Text, diag.Pos{}, 0)
	case g != nil && r.open == nil:
		r.say("sales-unreadable", g.at(), "%s cannot be found beside %s", diag.Quote(g.choice), r.name)("save the deal as a file in the folder of the sales, and name that file instead")
	case g != nil:
		text, err := r.open(g.choice)
		if err != nil {
			r.say("sales-unreadable", g.at(), "%s cannot be read: %v", diag.Quote(g.choice), err)("write the path of the file, from the folder of the deal file")
			return l
		}
		r.listed(l, g.choice, text, diag.Pos{}, 0)
	case len(r.columns) > 0 && r.got["comps.table"] == nil && r.got["comps.file"] == nil:
		r.say("columns-unread", r.where("comps.columns"), "columns says nothing here: there is no table and no file that has any")("take it away, or name the sales in a   table   or a   file   under comps; what stands under sold has keys of its own")
	}
	return l
}

// pasted reads a table that stands in the deal file itself.
func (r *reader) pasted(l *salesList, g *reading) {
	if strings.TrimSpace(g.node.text) == "" {
		r.say("no-sales", g.at(), "the table is empty")("write a first line below it that names the columns, e.g.   address  sold on  price  sq ft   and a sale in each line after that")
		return
	}
	first := g.node.at.Line
	if strings.Contains(g.node.text, "\n") { // a block below its key
		for first++; strings.TrimSpace(string(r.src.line(first))) == "" && first < len(r.src.lines); first++ {
		}
	}
	line := r.src.line(first)
	off := diag.Pos{Line: first - 1, Col: len(line) - len([]rune(strings.TrimLeft(string(line), " ")))}
	before := len(l.sales)
	r.listed(l, g.node.at.File, []byte(g.node.text), off, fromTable)
	for i := range l.sales[before:] {
		s := &l.sales[before+i]
		s.Origin = comps.Pasted
		l.own = append(l.own, s.Line)
	}
}

// listed reads a table of sales; its lines and columns count from a place on.
func (r *reader) listed(l *salesList, name string, text []byte, off diag.Pos, from int) {
	if from == 0 {
		l.file = true
		r.books[name] = string(text)
	}
	if bad := unreadable(name, text); bad != nil && bad.Code != "file-too-large" {
		r.diags.Add(*bad)
		return
	}
	list, found := comps.Read(bytes.NewReader(text), name, comps.Options{Columns: r.columns, Own: r.ownNames(), Plane: r.onPlane()})
	r.tableSays(found, off)
	if list == nil {
		return
	}
	if from == 0 && list.Rows == 0 {
		r.say("no-sales", diag.Pos{File: name, Line: 1, Col: 1}, "the list names its columns and no sale")("write a sale in each line below, or name another file")
	}
	l.lost = append(l.lost, list.LeftOut...)
	l.unread = append(l.unread, list.Unread...)
	r.doubtUnread(list.Unread, diag.Pos{File: name, Line: 1 + off.Line, Col: 1 + off.Col})
	for _, s := range list.Sales() {
		at := diag.Pos{File: name, Line: s.Line + off.Line, Col: 1 + off.Col}
		s.Line += from
		s.Flags = 0 // they are told once all sales are together
		l.at[s.Line] = at
		l.sales = append(l.sales, s)
	}
}

// onPlane reports whether the house says where it stands in metres.
func (r *reader) onPlane() bool {
	at := r.entry("house.").Sold().Place
	return at.Known && !at.Degrees
}

// doubtUnread names the columns of a table that are not read: one may hold what matters.
func (r *reader) doubtUnread(headers []string, at diag.Pos) {
	n := len(headers)
	if n == 0 {
		return
	}
	names := strings.Join(headers[:min(n, mostSaid)], ", ")
	if n > mostSaid {
		names += fmt.Sprintf(" and %d more", n-mostSaid)
	}
	tell := r.say("columns-unread", at, "%s not read: %s", areOf(n, "column of the table is", "columns of the table are"), names)
	if strings.HasSuffix(headers[0], comps.NoHeading) {
		tell("if it tells of the house or the sale, name it in the first row of the table, e.g.   sq ft")
		return
	}
	like := max(0, slices.IndexFunc(headers, func(h string) bool { return comps.FieldLike(h, "") != "" }))
	const hint = "if one tells of the house or the sale, say what it holds, e.g.   columns: {%s: %s}"
	if field := comps.FieldLike(headers[like], ""); field != "" {
		tell(hint, field, diag.Quote(headers[like]))
	} else {
		tell(hint+"   with living area, lot, baths, condition, terms or what else it is for NAME", "NAME", diag.Quote(headers[like]))
	}
}

// mostSaid is how many remarks on single rows of a table are told.
const mostSaid = 12

// tableSays tells what was found in a table: what its rows hold is doubtful, what it
// lacks as a whole is a mistake.
func (r *reader) tableSays(found diag.List, off diag.Pos) {
	said, more := 0, 0
	for _, d := range found {
		if d.Code == "doubtful-sale" {
			continue
		}
		if d.Severity = severities()[d.Code]; d.Severity == diag.Warning {
			if said++; said > mostSaid {
				more++
				continue
			}
		}
		if d.Pos.Line > 0 || off.Line > 0 { // of a pasted table as a whole, its first line
			d.Pos.Line = max(d.Pos.Line, 1) + off.Line
		}
		if d.Pos.Col > 0 {
			d.Pos.Col += off.Col
		}
		if d.Hint == "" {
			d.Hint = "look at the row in the table"
		}
		r.diags.Add(d)
	}
	if more > 0 {
		r.say("more-bad-cells", diag.Pos{File: found[0].Pos.File}, "%s in the table cannot be read", areOf(more, "more cell or row", "more cells and rows"))("what cannot be read is left out; mend it where it matters")
	}
}

// dayOfValue is the day that sales are used up to.
func (r *reader) dayOfValue(sales []comps.Sold) quantity.Date {
	if g := r.good("comps.day"); g != nil {
		return g.date
	}
	if g := r.good("purchase.date"); g != nil {
		return g.date
	}
	var last quantity.Date
	for _, s := range sales {
		if s.Date.Compare(last) > 0 {
			last = s.Date
		}
	}
	return last.AddDays(1)
}

// farOn is how long after all others a sale must be for the day of the value by it to be
// worth a word, days.
const farOn = 365

// filled are sales of which those that are written out have what they leave unsaid from a row of
// the same sale, one that was pasted before one of a list.
func (r *reader) filled(l *salesList, sales []comps.Sold) []comps.Sold {
	for i := range sales {
		s := &sales[i]
		if s.Origin != comps.Written {
			continue
		}
		for _, from := range []comps.Origin{comps.Pasted, comps.Listed} {
			for j := range sales {
				o := &sales[j]
				if o.Origin != from || !comps.OneSale(s, o) {
					continue
				}
				before, said := *s, func(key string) bool { return r.good(r.pathOf(s.Line)+key) != nil }
				filled := s.Fill(o)
				if said("concessions") {
					s.Concessions = before.Concessions
				}
				if said("has") { // has: [] too
					s.Has = before.Has
				}
				if filled && !reflect.DeepEqual(*s, before) {
					l.lent = append(l.lent, o.Line)
				}
			}
		}
	}
	return sales
}

// doubtDay warns of a day of the value that comes from one sale long after all others,
// which a slip in its year does.
func (r *reader) doubtDay(l *salesList, list *comps.List) {
	n := list.Len()
	if n < 2 || r.good("comps.day") != nil || r.good("purchase.date") != nil {
		return
	}
	last, before := list.Sale(n-1), list.Sale(n-2)
	if quantity.DaysBetween(before.Date, last.Date) > farOn {
		r.say("day-far-on", l.at[last.Line], "the value is for %s, the day after %s was sold, though all other sales are of %s or before", last.Date.AddDays(1), last.Name(), before.Date)("look at the year of that sale, or say   day: %s   under comps for the day of the value", before.Date.AddDays(1))
	}
}

// fewDollars are what a deed often states for a house that was given, and no price cut short.
var fewDollars = decimal.NewFromInt(20)

// doubtSales tells which sales are set aside, and why. Of a file, which may be a whole
// county's, those too late are told by their number.
func (r *reader) doubtSales(l *salesList, all []comps.Sold, day quantity.Date, wished []int) {
	told, more, late, first := 0, 0, 0, ""
	for i := range all {
		s := &all[i]
		if slices.Contains(wished, s.Line) {
			continue
		}
		if s.Date.Compare(day) >= 0 && s.Line < fromTable {
			if late++; late == 1 {
				first = s.Name()
			}
			continue
		}
		why, hint := s.Doubts(), "it is set aside; name it under   add   in comps if it should count"
		if s.Flags.Has(comps.Token) && s.Price.GreaterThan(fewDollars) {
			hint = fmt.Sprintf("did you mean %s or so, or is it a price per square foot? write out what it sold for, in whole dollars; it is set aside, and counts with   add   in comps as sold for %s", quantity.FormatDollars(s.Price.Shift(3)), quantity.FormatDollars(s.Price))
		}
		if s.Label == "" && s.Flags == comps.Duplicate {
			why = "all that is said of it is said of another row of that day and price, and no address tells them apart"
		}
		if other := otherOf(s, all); other != nil {
			if lines := s.Differs(other); len(lines) > 0 {
				why += ", and differs in " + comps.Names(lines)
				hint = fmt.Sprintf("it is set aside, since line %d counts before it; look which is right, and strike the other", l.at[other.Line].Line)
			}
			if slices.Contains(l.lent, s.Line) {
				why += fmt.Sprintf("; what line %d leaves unsaid of it is taken from this row", l.at[other.Line].Line)
			}
		}
		if s.Date.Compare(day) >= 0 {
			why = fmt.Sprintf("sold on %s, not before the day of the value, %s", s.Date, day)
			hint = fmt.Sprintf("it is not used; say   day: %s   under comps if that is the day of the value", s.Date.AddDays(1))
		}
		if why == "" {
			continue
		}
		if told++; told > mostSaid {
			more++
			continue
		}
		r.say("doubtful-sale", l.at[s.Line], "%s: %s", s.Name(), why)("%s", hint)
	}
	if more > 0 {
		r.say("doubtful-sale", r.needed("comps"), "%s doubtful and set aside", areOf(more, "more sale is", "more sales are"))("ledgerboard comps --all   lists them")
	}
	if late > 0 {
		r.say("doubtful-sale", r.needed("comps.file", "comps"), "%s of %s or later, so not used: %s", areOf(late, "sale of the file is", "sales of the file are"), day, andMore(first, late-1))("say   day: ...   under comps if the value is for a later day")
	}
}

// otherOf is the sale that counts in place of one that is there twice, or nil.
func otherOf(s *comps.Sold, all []comps.Sold) *comps.Sold {
	if !s.Flags.Has(comps.Duplicate | comps.Again) {
		return nil
	}
	for i := range all {
		if o := &all[i]; o.Flags == 0 && comps.OneSale(s, o) {
			return o
		}
	}
	return nil
}

// andMore names the first of some and counts the others.
func andMore(first string, others int) string {
	if others == 0 {
		return first
	}
	return fmt.Sprintf("%s and %d more", first, others)
}

// areOf counts things by a word for one and another for several.
func areOf(n int, one, several string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, several)
}
