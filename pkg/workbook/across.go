package workbook

import (
	"iter"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// across writes the words that look along the months or over a set.
func (p *printer) across(x *model.Expr) string {
	here := p.month
	defer func() { p.month = here }()
	switch x.Op.Code {
	case formula.Month:
		return p.book.monthNumber(p.at, here)
	case formula.Prior:
		if p.month--; p.month < 0 {
			return "0"
		}
		return p.number(x.Args[0], bindsAll)
	case formula.Ago:
		back := p.number(x.Args[1], bindsProduct)
		at := p.row(x.Args[0])
		n := p.book.monthNumber(p.at, here) + "-" + back
		return "IF(" + n + "<0,0,INDEX(" + at.span(p.at, 0, p.last) + ",1," + n + "+1))"
	case formula.At:
		if v, known := p.fixed(x.Args[1], p.of); known {
			if n := int(v.IntPart()); n >= 0 && n <= p.last {
				p.month = n
				return p.number(x.Args[0], bindsAll)
			}
			return "0"
		}
		n := p.number(x.Args[1], bindsSum)
		return "IF(OR(" + n + "<0," + n + ">" + itoa(p.last) + "),0,INDEX(" + p.row(x.Args[0]).span(p.at, 0, p.last) + ",1," + n + "+1))"
	case formula.Running:
		return "SUM(" + p.row(x.Args[0]).span(p.at, 0, here) + ")"
	case formula.Sum:
		return "SUM(" + p.row(x.Args[0]).span(p.at, 0, p.last) + ")"
	case formula.Lowest:
		all := p.row(x.Args[0]).span(p.at, 0, p.last)
		first, _, _ := strings.Cut(all, ":")
		return "MIN(" + first + ":INDEX(" + all + ",1,MIN(" + p.ref(p.model.Cells[p.model.Horizon]) + "," + itoa(p.last) + ")+1))"
	case formula.FirstMonth:
		all := p.row(x.Args[0]).span(p.at, 0, p.last)
		return "IF(SUM(" + all + ")=0,0,MATCH(1," + all + ",0)-1)"
	}
	return p.overSet(x)
}

// row is the row of months of an expression: that of a monthly line, or a working row.
func (p *printer) row(x *model.Expr) place {
	if x.Op == nil {
		if i := x.Reads(p.of); i >= 0 && p.model.Cells[i].Line.Monthly {
			if at := p.places[i]; at.grid != nil {
				return at
			}
		}
	}
	return p.workingRow(x, p.of)
}

// overSet adds up, or takes the largest, over the members of a set.
func (p *printer) overSet(x *model.Expr) string {
	word := "SUM"
	if x.Op.Code == formula.Largest {
		word = "MAX"
	}
	var all []reading
	for m, a := range x.Over(p.of) {
		if v, known := p.fixed(a, m); !known || !v.IsZero() || word == "MAX" {
			all = append(all, p.simple(reading{a, m}))
		}
	}
	switch len(all) {
	case 0:
		return "0"
	case 1:
		return p.read(all[0], bindsAll)
	}
	return p.over(word, p.members(word, all))
}

// over is a function of many parts; where they would be too long for a formula, groups of them
// get cells of their own.
func (p *printer) over(word string, parts []part) string {
	all := make([]string, len(parts))
	for i, x := range parts {
		all[i] = x.text
	}
	if whole := nested(word+"(", all); len(whole) <= long || p.month >= 0 || p.private {
		return whole
	}
	here := p.at
	defer func() { p.at = here }()
	p.at = p.workingSheet()
	for i, x := range parts {
		all[i] = p.text(x)
	}
	var cells []string
	for some := range groups(all) {
		var of []reading
		for _, x := range parts[:len(some)] {
			of = append(of, x.of...)
		}
		var value decimal.Decimal
		for i, r := range of {
			v := p.valueIn(r.expr, r.of, -1)
			switch {
			case word == "SUM":
				value = value.Add(v)
			case i == 0:
				value = v
			default:
				value = decimal.Max(value, v)
			}
		}
		cells = append(cells, p.working("part of what the sheets before add up", nested(word+"(", some), near(value)))
		parts = parts[len(some):]
	}
	return nested(word+"(", cells)
}

// A part is what stands in a function over a set, and what it is the text of.
type part struct {
	text   string
	of     []reading
	placed bool // it is a range of workings, the same from every sheet
}

// text writes a part anew, as seen from where the printer is.
func (p *printer) text(x part) string {
	if x.placed {
		return x.text
	}
	if at, run := p.column(x.of); run {
		return at
	}
	return p.read(x.of[0], bindsNothing)
}

// read is an expression of any member as a number.
func (p *printer) read(r reading, least int) string {
	here := p.of
	defer func() { p.of = here }()
	p.of = r.of
	return p.number(r.expr, least)
}

// simple is the part of an expression that is left once what is fixed is known.
func (p *printer) simple(r reading) reading {
	x := r.expr
	for x.Op != nil {
		next := x
		switch x.Op.Code {
		case formula.If:
			if yes, known := p.fixed(x.Args[0], r.of); known {
				next = x.Args[1]
				if yes.IsZero() {
					next = x.Args[2]
				}
			}
		case formula.Add:
			for i, a := range x.Args {
				if v, known := p.fixed(a, r.of); known && v.IsZero() {
					next = x.Args[1-i]
				}
			}
		case formula.Mul:
			for i, a := range x.Args {
				if v, known := p.fixed(a, r.of); known && v.Equal(one) {
					next = x.Args[1-i]
				}
			}
		}
		if next == x {
			break
		}
		x = next
	}
	return reading{x, r.of}
}

// members are the parts of a function over a set: ranges where they stand in columns.
func (p *printer) members(word string, all []reading) []part {
	if word == "SUM" {
		all = addends(all)
	}
	var parts []part
	for i := 0; i < len(all); {
		n := 1
		for i+n < len(all) {
			if _, run := p.column(all[i : i+n+1]); !run {
				break
			}
			n++
		}
		if at, run := p.column(all[i : i+n]); run {
			parts = append(parts, part{text: at, of: all[i : i+n]})
		} else if p.month < 0 && all[i].expr.Op != nil && len(all) > few {
			n = 1
			for i+n < len(all) && all[i+n].expr.Op != nil {
				n++
			}
			parts = append(parts, part{p.workingColumn(all[i : i+n]), all[i : i+n], true})
		} else {
			parts = append(parts, part{text: p.read(all[i], bindsNothing), of: all[i : i+1]})
		}
		i += n
	}
	return parts
}

// addends takes sums apart where all members are one, so that each part may be a column.
func addends(all []reading) []reading {
	for _, r := range all {
		if r.expr.Op == nil || r.expr.Op.Code != formula.Add {
			return all
		}
	}
	left, right := make([]reading, len(all)), make([]reading, len(all))
	for i, r := range all {
		left[i], right[i] = reading{r.expr.Args[0], r.of}, reading{r.expr.Args[1], r.of}
	}
	return append(addends(left), addends(right)...)
}

// few is how many expressions stand in one formula before each gets a cell of its own.
const few = 8

// column is the range of expressions that are cells one below the other.
func (p *printer) column(all []reading) (string, bool) {
	if len(all) < 2 || p.month >= 0 {
		return "", false
	}
	var first, last place
	for i, r := range all {
		if r.expr.Op != nil {
			return "", false
		}
		c := r.expr.Reads(r.of)
		if c < 0 || p.model.Cells[c].Line.Monthly {
			return "", false
		}
		at := p.places[c]
		p.reads = append(p.reads, c)
		if at.grid == nil || at.name != "" || i > 0 && (at.grid != first.grid || at.col != first.col || at.row != last.row+1) {
			return "", false
		}
		if i == 0 {
			first = at
		}
		last = at
	}
	return first.from(p.at, 0) + ":" + address(last.row, last.col, true, true), true
}

// nested is a function of many parts, in groups, for one takes 255 at most.
func nested(word string, parts []string) string {
	for len(parts) > many {
		var groups []string
		for some := range slices.Chunk(parts, many) {
			groups = append(groups, word+strings.Join(some, ",")+")")
		}
		parts = groups
	}
	return word + strings.Join(parts, ",") + ")"
}

// What a function takes of parts, and how long what it is of may be in characters before it is
// split: a formula may have several of them, and longest in all.
const (
	many    = 200
	long    = 2000
	longest = 8192
)

// groups are parts in their order, as many together as a formula takes.
func groups(parts []string) iter.Seq[[]string] {
	return func(yield func([]string) bool) {
		for len(parts) > 0 {
			n, letters := 1, len(parts[0])
			for n < min(many, len(parts)) && letters+1+len(parts[n]) <= long {
				letters += 1 + len(parts[n])
				n++
			}
			if !yield(parts[:n]) {
				return
			}
			parts = parts[n:]
		}
	}
}
