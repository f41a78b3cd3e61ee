package why

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/formula"
)

// widest is how many columns a label may take before its value moves on.
const widest = 40

// A row is one part in print.
type row struct {
	sign, label, value, note string
	tree                     *Tree // what is laid open below it
	reasons                  []string
	role                     string
	month                    int
	shut                     bool // not to be laid open
	decides                  bool // laid open also where it is no, or nothing
}

// row lays a part out; month is that of the formula it stands in.
func (p *printer) row(x Term, month int) row {
	t, reasons := x.telling()
	r := row{value: x.Text(), tree: t, reasons: reasons, role: x.Role, month: x.Month}
	switch {
	case t.Kind == Rounding:
		r.label = "rounding to the cent"
	case t.Kind == Line:
		r.label = t.called(month)
		r.value, r.note = t.Text(), p.note(t, x.Role != "")
		if x.Month != NoMonth {
			r.label = x.Role
		}
	case x.Role != "":
		r.label = x.Role
		if t.is(formula.Mul) {
			r.note = t.say(false)
		}
	default:
		r.label = short(x.Tree)
		if x.Tree != t && t.Kind == Operation {
			r.label = short(t)
		}
		if t.is(formula.Mul) {
			r.note = t.say(false)
		}
	}
	return r
}

// note tells where an input comes from, and of other lines what they mean, the
// first time; of one of many alike that stands above them.
func (p *printer) note(t *Tree, alike bool) string {
	from, meaning := t.source(), t.Meaning()
	if alike || t.Source() == FromDeal || t.Value.IsZero() || p.told[t.Cell.Line] {
		return from
	}
	p.told[t.Cell.Line] = true
	if from != "" {
		return from + ": " + meaning
	}
	return meaning
}

// short is a formula cut to fit a label.
func short(t *Tree) string {
	s := t.Formula()
	if t.Kind == Number {
		return "fixed in the rule"
	}
	if len(s) > widest {
		s = s[:widest-3] + "..."
	}
	return s
}

// rows prints parts below each other, labels and values aligned.
func (p *printer) rows(indent, depth int, rows []row) {
	label, value := 0, 0
	for _, r := range rows {
		label, value = max(label, min(runes(r.label), widest)), max(value, runes(r.value))
	}
	for _, r := range rows {
		opened := p.opens(r, depth)
		if !opened && r.tree.Kind == Line && p.open[r.tree] && !r.shut && !r.tree.Value.IsZero() {
			r.note = "see above"
		}
		p.put(indent, label, value, r)
		p.below(r, indent+4, depth, opened)
	}
}

// opens reports whether a row's line is laid open, and takes note of it.
func (p *printer) opens(r row, depth int) bool {
	t := r.tree
	if r.shut || t.Kind != Line || depth == 1 || p.open[t] || t.Value.IsZero() && !r.decides {
		return false
	}
	if k := t.rule().Kind; k == Given || k == Number {
		return false
	}
	p.open[t] = true
	return true
}

func (p *printer) below(r row, indent, depth int, opened bool) {
	for _, why := range slices.Compact(r.reasons) {
		p.paragraph(indent, 2, plain, why)
	}
	switch {
	case opened:
		p.rule(r.tree, indent, depth-1)
	case r.tree.Kind == Operation && !r.shut && !r.tree.Value.IsZero():
		p.body(r.tree, indent, depth, !r.tree.is(formula.Mul))
	}
}

// rule prints a line's formula, the first time, and how the line came out.
func (p *printer) rule(t *Tree, indent, depth int) {
	if t.rule().Kind == Operation && !p.laws[t.Cell.Line] {
		p.laws[t.Cell.Line] = true
		p.paragraph(indent, 4, faint, "rule: "+t.Formula())
	}
	p.body(t.rule(), indent, depth, true)
}

// zeros joins runs of months that are 0 into one row.
func zeros(rows []row) []row {
	var out []row
	for _, r := range rows {
		if n := len(out) - 1; n >= 0 && r.month != NoMonth && r.tree.Value.IsZero() &&
			out[n].month != NoMonth && out[n].tree.Value.IsZero() && out[n].shut == r.shut {
			first := strings.TrimPrefix(out[n].role, "month ")
			out[n].label = fmt.Sprintf("months %s to %d", first, r.month)
			out[n].reasons, out[n].note = nil, ""
			continue
		}
		out = append(out, r)
	}
	return out
}
