package why

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// UsualDepth is how many lines deep an explanation goes unless told otherwise.
const UsualDepth = 2

// Options say how a tree is printed.
type Options struct {
	Depth int  // how many lines deep to go; 0 means 2, below 0 all the way to the inputs
	Width int  // columns; 0 means 80
	Color bool // whether escape codes for a terminal are written
}

// Write prints the tree: the answer first, then how it came out. A line that was
// laid open once is not laid open again, and zeros that come only from inputs not
// given are left out. The error is the writer's.
func (t *Tree) Write(w io.Writer, opt Options) error {
	if opt.Depth == 0 {
		opt.Depth = UsualDepth
	}
	if opt.Width <= 0 {
		opt.Width = 80
	}
	p := printer{layout: layout{width: opt.Width, color: opt.Color}, open: map[*Tree]bool{t: true}, told: map[*model.Line]bool{t.Cell.Line: true}, laws: map[*model.Line]bool{}}
	p.paragraph(0, 2, bold, fmt.Sprintf("%s = %s", Label(t.Cell, t.Month), t.Text()))
	p.paragraph(2, 0, plain, t.Meaning())
	p.line(t, 2, opt.Depth)
	if p.deep {
		p.paragraph(0, 0, plain, "A number at the left is how deep a line stands that has no room further in.")
	}
	_, err := io.WriteString(w, p.String())
	return err
}

type printer struct {
	layout
	open map[*Tree]bool       // lines laid open already
	told map[*model.Line]bool // lines whose meaning was said
	laws map[*model.Line]bool // lines whose formula was said
}

// line prints how a line came out.
func (p *printer) line(t *Tree, indent, depth int) {
	if s := t.source(); s != "" {
		p.paragraph(indent, 2, plain, s)
	}
	rule := t.rule()
	switch {
	case rule.Kind == Nothing:
		p.paragraph(indent, 2, plain, "the deal has no such month")
		return
	case rule.Kind == Given || rule.Kind == Number:
		return
	}
	p.rule(t, indent, depth)
}

// body prints what a formula is made of: reasons, the sum or product in numbers,
// then a row for each part.
func (p *printer) body(t *Tree, indent, depth int, speak bool) {
	month, deciding := t.Month, t.deciding()
	t, reasons := t.telling()
	for _, r := range slices.Compact(reasons) {
		p.paragraph(indent, 2, plain, r)
	}
	parts := shown(t.parts())
	switch {
	case t.Kind != Operation:
		var rows []row
		if t.Kind == Line {
			rows = append(rows, p.row(plus(t), month))
		}
		for _, x := range deciding {
			r := p.row(x, month)
			r.decides = true
			rows = append(rows, r)
		}
		p.rows(indent, depth, rows)
	case t.is(formula.Cents) && alone(parts):
		p.speak(t, indent)
		p.body(t.terms[0].Tree, indent, depth, false)
	case t.is(formula.Cents) && len(parts) == 1 && !t.terms[1].visible():
		p.body(t.terms[0].Tree, indent, depth, false) // nothing to round
	case t.adds() || t.is(formula.Cents):
		p.sum(t, parts, indent, depth)
	default:
		if speak {
			p.speak(t, indent)
		}
		p.operands(t, indent, depth)
	}
}

// speak prints the formula in numbers, unless that only repeats a value.
func (p *printer) speak(t *Tree, indent int) {
	if s := t.Words(); s != t.Text() {
		p.paragraph(indent, 2, plain, s)
	}
}

// alone reports whether a rounded sum is one part that is no sum, so that the
// rounding goes into the sentence about it.
func alone(parts []Term) bool {
	n := len(parts)
	if n > 0 && parts[n-1].Kind == Rounding {
		n--
	}
	return n == 1 && parts[0].Sign > 0 && parts[0].Kind == Operation
}

// shown leaves out the zeros that say nothing.
func shown(parts []Term) []Term {
	var out []Term
	for _, x := range parts {
		if !x.hidden() && x.visible() {
			out = append(out, x)
		}
	}
	return out
}

func (p *printer) sum(t *Tree, parts []Term, indent, depth int) {
	if t.is(formula.Cents) {
		_, reasons := t.terms[0].telling()
		for _, r := range reasons {
			p.paragraph(indent, 2, plain, r)
		}
	}
	if same := common(parts); same != nil {
		p.paragraph(indent, 2, plain, same.Cell.Line.Name+": "+same.Meaning())
	}
	var rows []row
	for _, x := range parts {
		r := p.row(x, t.Month)
		r.sign = "+"
		if x.Sign < 0 {
			r.sign = "-"
		}
		rows = append(rows, r)
	}
	if len(rows) == 0 {
		p.paragraph(indent, 2, plain, "nothing is given for it, so it is "+t.Text())
	}
	p.rows(indent, depth, zeros(rows))
}

// common returns the line that all parts of a sum over months or members are of.
func common(parts []Term) *Tree {
	var first *Tree
	for _, x := range parts {
		switch {
		case x.Role == "" || x.Kind != Line || first != nil && x.Cell.Line != first.Cell.Line:
			return nil
		case first == nil:
			first = x.Tree
		}
	}
	if len(parts) < 2 {
		return nil
	}
	return first
}

// operands prints a row for each value that an operation works on.
func (p *printer) operands(t *Tree, indent, depth int) {
	var rows []row
	if t.is(formula.FirstMonth) {
		if t.Took >= 0 {
			p.body(t.terms[t.Took].Tree, indent, depth, false)
		}
		return
	}
	seen := map[*Tree]bool{}
	for i, x := range t.terms {
		inner, _ := x.through()
		if seen[inner] || inner.fixed() && !t.is(formula.Min, formula.Max) {
			continue
		}
		seen[inner] = true
		r := p.row(x, t.Month)
		if t.is(formula.Min, formula.Max, formula.Lowest, formula.Largest) && i == t.Took {
			r.note = strings.TrimSuffix("decides; "+r.note, "; ")
		}
		r.shut = t.is(formula.Lowest) && i != t.Took
		rows = append(rows, r)
	}
	p.rows(indent, depth, rows)
}
