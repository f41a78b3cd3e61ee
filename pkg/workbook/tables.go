package workbook

import (
	"strings"

	"ledgerboard/pkg/model"
)

// layDeal lists the figures of the deal, by the sections of the document.
func (b *book) layDeal() {
	g := b.sheet(&grid{name: "Figures", widths: []float64{30, 18, 12, 60, 70}, heads: 2})
	g.set(1, 1, text("All figures of the deal", look{role: title}))
	g.height(1, titleHeight)
	for i, head := range []string{"figure", "value", "unit", "meaning", "rule"} {
		g.set(2, i+1, text(head, look{role: heading, right: i == 1, off: i == 2}))
	}
	section := ""
	for _, c := range b.model.Cells {
		if c.Line.Set != model.Deal || c.Line.Monthly || b.secret(c) || b.places[c.Index].grid != nil || b.stays(c) {
			continue
		}
		if c.Line.Section != section {
			section = c.Line.Section
			g.set(g.next(), 1, text(section, look{role: strong}))
		}
		at := place{grid: g, row: g.next(), col: 2, name: c.Line.Name}
		b.places[c.Index] = at
		g.set(at.row, 1, text("  "+words(c.Line), look{}))
		g.set(at.row, 3, text(unitWords(c.Line.Unit), look{role: small, off: true}))
		g.set(at.row, 4, text(c.Line.Meaning, look{role: small, wrap: true}))
		g.set(at.row, 5, text(b.naming(c.Line.Rule()), look{role: small, wrap: true}))
	}
}

// layTable finds places for the members of one kind: each in a row, or in a column where
// they are few and have many lines.
func (b *book) layTable(t *table) {
	var lines []*model.Line
	for _, l := range t.lines {
		if !b.hidden(l) && b.shown(t, l) {
			lines = append(lines, l)
		}
	}
	if t.lines = lines; len(lines) == 0 {
		return
	}
	g := t.grid
	if len(g.rows) > 0 {
		g.set(g.next(), 1, cell{})
	}
	t.head = g.next()
	for i, m := range t.members {
		for j, l := range lines {
			c := t.cells[m][l]
			if c == nil || b.secret(c) || b.places[c.Index].grid != nil || b.stays(c) && !b.editable(c) {
				continue
			}
			at := place{grid: g, row: t.head + 1 + i, col: 3 + j}
			if t.across {
				at = place{grid: g, row: t.head + 1 + j, col: 3 + i}
			}
			b.places[c.Index] = at
		}
	}
	rows := len(t.members)
	if t.across {
		rows = len(lines)
	}
	g.set(t.head+rows, 1, cell{})
}

// shown reports whether a line of a table has a place: some member's can change.
func (b *book) shown(t *table, l *model.Line) bool {
	for _, m := range t.members {
		if c := t.cells[m][l]; c != nil && !b.secret(c) && (b.editable(c) || !b.stays(c)) {
			return true
		}
	}
	return false
}

// fillTable writes the heads of a table and what is in it.
func (b *book) fillTable(t *table) {
	g := t.grid
	if g == nil || len(t.lines) == 0 {
		return
	}
	head, headed := look{role: heading, wrap: true}, look{role: heading, wrap: true, right: true}
	g.set(t.head, 1, text(plural(t.title), head))
	g.set(t.head, 2, text("", head))
	for len(g.widths) < 2 {
		g.widths = append(g.widths, 28)
	}
	for t.across && len(g.widths) < 3+len(t.members) {
		g.widths = append(g.widths, 0)
	}
	if t.across {
		g.widths[2+len(t.members)] = 70
	}
	for j, l := range t.lines {
		name := cell{value: words(l) + "\n" + unitWords(l.Unit), look: headed, note: l.Meaning}
		if t.across {
			g.set(t.head+1+j, 1, text(words(l), look{}))
			g.set(t.head+1+j, 2, text(unitWords(l.Unit), look{role: small}))
			g.set(t.head+1+j, 3+len(t.members), text(t.meaning(l), look{role: small, wrap: true, off: true}))
			continue
		}
		g.set(t.head, 3+j, name)
	}
	for i, m := range t.members {
		if t.across {
			g.set(t.head, 3+i, text(m.Label, look{role: heading, right: true}))
		} else {
			g.set(t.head+1+i, 1, text(m.Label, look{}))
			g.set(t.head+1+i, 2, text(m.Parent.Path(), look{role: small}))
		}
		for j, l := range t.lines {
			c := t.cells[m][l]
			if c == nil || b.secret(c) {
				continue
			}
			row, col := t.head+1+i, 3+j
			if t.across {
				row, col = t.head+1+j, 3+i
			}
			at := b.places[c.Index]
			switch {
			case at.grid == nil && b.answer.Values.Of(c).IsZero():
			case at.grid == nil, at.grid == g && at.row == row && at.col == col:
				g.set(row, col, b.cell(c, g))
			default: // it stands on another sheet
				g.set(row, col, b.copied(c, g))
			}
		}
	}
}

// meaning is that of a line, and what stands in for a fact that is not known.
func (t *table) meaning(l *model.Line) string {
	if !strings.HasPrefix(l.Name, "comp_") {
		return l.Meaning
	}
	for _, m := range t.members {
		if c := t.cells[m][l]; c != nil && unknown(c) {
			return l.Meaning + "; where it is not known the number in the cell is the house's, and counts so" + ifBlank
		}
	}
	return l.Meaning + ifBlank
}

// ifBlank is what a fact that is cleared means.
const ifBlank = "; one left blank is not known, and not adjusted"

func plural(word string) string {
	switch word {
	case "whole_house":
		return "whole house"
	case "before_fee":
		return "charges before the closing"
	case "purchase_fee":
		return "charges of the purchase"
	case "holding_fee":
		return "holding costs"
	case "general_fee":
		return "general lines"
	case "selling_fee":
		return "charges of the sale"
	case "loan_fee":
		return "fees of loans"
	}
	return word + "s"
}
