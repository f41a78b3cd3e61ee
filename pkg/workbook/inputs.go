package workbook

import (
	"fmt"
	"path/filepath"
	"slices"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// layInputs finds the places of what can be changed, with where each comes from.
func (b *book) layInputs() {
	g := b.inputs
	g.set(1, 1, text("Inputs", look{role: title}))
	g.height(1, titleHeight)
	g.set(2, 1, text("Shaded cells are what the deal file gives, framed ones what is taken because it does not. Change them, and all sheets follow, but for what was found by a search or cut (Notes).", look{role: small}))
	for i, head := range []string{"what", "value", "unit", "where it is from", "meaning"} {
		g.set(3, i+1, text(head, look{role: heading, right: i == 1, off: i == 2}))
	}
	var of *model.Member
	for _, c := range b.model.Cells {
		if b.secret(c) || !b.editable(c) || slices.Contains(inPlace, c.Member.Set) || c.Line.Monthly {
			continue
		}
		if c.Member != of {
			of = c.Member
			g.set(g.next(), 1, text(b.called(of), look{role: strong}))
		}
		at := place{grid: g, row: g.next(), col: 2}
		if c.Line.Set == model.Deal {
			at.name = c.Line.Name
		}
		b.places[c.Index] = at
		g.set(at.row, 1, text("  "+words(c.Line), look{}))
		g.set(at.row, 3, text(unitWords(c.Line.Unit), look{role: small, off: true}))
		g.set(at.row, 4, text(b.source(c), look{role: small, wrap: true}))
		g.set(at.row, 5, text(c.Line.Meaning, look{role: small, wrap: true}))
	}
}

// called is what a member is called; the second and later of one name have their place in
// the deal file with it, or their number where that does not tell them apart.
func (b *book) called(m *model.Member) string {
	if m.Set == model.Deal {
		return b.answer.Deal.Name
	}
	name := m.Path()
	at := slices.Index(b.named[name], m)
	if at < 0 {
		at, b.named[name] = len(b.named[name]), append(b.named[name], m)
	}
	if at == 0 {
		return name
	}
	path := func(m *model.Member) string { return b.answer.Deal.PathAt(m.Pos) }
	place := path(m)
	if place == "" || slices.ContainsFunc(b.named[name][:at], func(x *model.Member) bool { return path(x) == place }) {
		place = itoa(at + 1)
	}
	return name + " (" + place + ")"
}

// source says where an input is from.
func (b *book) source(c *model.Cell) string {
	switch {
	case c.Assumed():
		return "assumed"
	case c.Given == nil:
		return "not given"
	case c.Given.Pos.Line > 0:
		in := ""
		switch {
		case deal.InWeeks(c):
			in = " = " + quantity.FormatMonths(c.Given.Number, 2)
		case dated(c):
			in = " = " + quantity.FormatCount(c.Given.Number, 0) + " days from the purchase"
		}
		return fmt.Sprintf("%s:%d  %s%s", filepath.Base(c.Given.Pos.File), c.Given.Pos.Line, c.Given.Text, in)
	}
	return c.Given.Text
}

// idle takes the look of an input from those that no figure of the workbook follows, but for what is looked
// at beside another.
func (b *book) idle() {
	beside := b.besideAnother()
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if at.grid == nil || !b.editable(c) || b.read[c.Index] {
			continue
		}
		told := "; changes no figure here"
		if beside[c.Index] {
			told += ", is looked at in the checks"
		} else {
			at.grid.rows[at.row-1][at.col-1].look.role = result
		}
		if at.grid == b.inputs {
			from := &at.grid.rows[at.row-1][3]
			from.value = from.value.(string) + told
		}
	}
}
