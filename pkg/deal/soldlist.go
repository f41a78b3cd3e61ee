package deal

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

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
	own   []int // written out or pasted, so meant to be used
	file  bool  // some are of a file
}

// salesOf gathers the sales of the deal.
func (r *reader) salesOf() *salesList {
	l := &salesList{at: map[int]diag.Pos{}}
	for i, s := range r.items["<comp>"] {
		sale := r.entry(s.path).Sold()
		sale.Label, sale.Line, sale.Has = r.labels[s.path], fromRecord+i, r.has(s.path)
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
	}
	return l
}

// pasted reads a table that stands in the deal file itself.
func (r *reader) pasted(l *salesList, g *reading) {
	first := g.node.at.Line
	if strings.Contains(g.node.text, "\n") { // a block below its key
		for first++; strings.TrimSpace(string(r.src.line(first))) == "" && first < len(r.src.lines); first++ {
		}
	}
	line := r.src.line(first)
	off := diag.Pos{Line: first - 1, Col: len(line) - len([]rune(strings.TrimLeft(string(line), " ")))}
	before := len(l.sales)
	r.listed(l, g.node.at.File, []byte(g.node.text), off, fromTable)
	for _, s := range l.sales[before:] {
		l.own = append(l.own, s.Line)
	}
}

// listed reads a table of sales; its lines and columns count from a place on.
func (r *reader) listed(l *salesList, name string, text []byte, off diag.Pos, from int) {
	if off.Line == 0 {
		l.file = true
		if off.Line == 0 && from == 0 {
			r.books[name] = string(text)
		}
	}
	if bad := unreadable(name, text); bad != nil && bad.Code != "file-too-large" {
		r.diags.Add(*bad)
		return
	}
	list, found := comps.Read(bytes.NewReader(text), name, comps.Options{Columns: r.columns})
	r.tableSays(found, off)
	if list == nil {
		return
	}
	for _, s := range list.Sales() {
		at := diag.Pos{File: name, Line: s.Line + off.Line, Col: 1 + off.Col}
		s.Line += from
		s.Flags = 0 // they are told once all sales are together
		l.at[s.Line] = at
		l.sales = append(l.sales, s)
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
		d.Pos.Line += off.Line
		if d.Pos.Col > 0 {
			d.Pos.Col += off.Col
		}
		if d.Hint == "" {
			d.Hint = "look at the row in the table"
		}
		r.diags.Add(d)
	}
	if more > 0 {
		r.say("more-bad-cells", diag.Pos{File: found[0].Pos.File}, "%d more cells and rows of the table cannot be read", more)("they are left out; mend them where they matter")
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

// doubtSales tells which sales are set aside, and why. Of a file, which may be a whole
// county's, those too late are told by their number.
func (r *reader) doubtSales(l *salesList, all []comps.Sold, day quantity.Date, wished []int) {
	told, more, late := 0, 0, 0
	for i := range all {
		s := &all[i]
		if s.Date.Compare(day) >= 0 && s.Line < fromTable && !slices.Contains(wished, s.Line) {
			late++
			continue
		}
		why, hint := s.Flags.String(), "it is set aside; name it under   add   in comps if it should count"
		if s.Date.Compare(day) >= 0 {
			why = fmt.Sprintf("sold on %s, not before the day of the value, %s", s.Date, day)
			hint = fmt.Sprintf("it is not used; say   day: %s   under comps if that is the day of the value", s.Date.AddDays(1))
		} else if slices.Contains(wished, s.Line) {
			continue
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
		r.say("doubtful-sale", r.needed("comps"), "doubtful and set aside: %s more", quantity.Counted(more, "sale"))("ledgerboard comps --all   lists them")
	}
	if late > 0 {
		r.say("doubtful-sale", r.needed("comps.file", "comps"), "not used, for they are of %s or later: %s of the file", day, quantity.Counted(late, "sale"))("say   day: ...   under comps if the value is for a later day")
	}
}

// salesNamed are the numbers of the sales that some words name: by label, or by line.
func (r *reader) salesNamed(l *salesList, key string, beside []string) (out []int) {
	one := func(name string, at diag.Pos) {
		var labels []string
		hit := len(out)
		for _, s := range l.sales {
			line := strings.TrimPrefix(plainKey(name), "line ")
			if plainKey(s.Label) == plainKey(name) || line == strconv.Itoa(l.at[s.Line].Line) && (s.Label == "" || line != plainKey(name)) {
				out = append(out, s.Line)
			}
			labels = append(labels, s.Label)
		}
		if len(out) > hit {
			return
		}
		tell := r.say("unknown-sale", at, "there is no sale %s to %s", diag.Quote(name), key)
		if near, ok := diag.Nearest(name, labels); ok {
			tell("did you mean %q?", near)
		} else {
			tell("write its address as the list has it, or its line: line 7")
		}
	}
	if g := r.good("comps." + key); g != nil {
		for _, w := range g.words() {
			one(w.text, w.at)
		}
	}
	for _, name := range beside {
		one(name, diag.Pos{File: "--" + key, Line: 1})
	}
	return out
}
