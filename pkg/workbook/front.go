package workbook

import (
	"ledgerboard/pkg/model"
)

// front makes the pages that are read first. They arrange what stands behind them.
func (b *book) front() {
	if b.how.For == Lender {
		b.request()
	} else {
		b.verdict()
	}
	b.sourcesAndUses()
	b.cash()
	if b.how.For == Owner {
		b.offers()
		b.stress()
	}
	b.sideBySide()
	b.comparables()
	b.renovation()
	b.lenderPages()
	b.notes()
}

// shownAt is a cell of the model on a page: a formula that takes it from its place. In a
// month where it has one for each.
func (b *book) shownAt(g *grid, c *model.Cell, month int) cell {
	at, l := b.places[c.Index], look{format: formatOf(c.Line.Unit), right: c.Line.Unit == "choice"}
	out := cell{value: b.value(c), look: l, note: c.Line.Meaning}
	off := 0
	if c.Line.Monthly {
		out.value, off, out.note = near(b.answer.Values.In(c, month)), month, ""
	}
	if at.grid != nil {
		out.formula = at.from(g, off)
	}
	return out
}

// figure is a line of the deal on a page.
func (b *book) figure(line string) cell {
	return b.shownAt(nil, b.model.Find(b.model.Root, line), 0)
}

// of is a line of a member on a page.
func (b *book) of(m *model.Member, line string) cell {
	return b.shownAt(nil, b.model.Find(m, line), 0)
}

// ref is how a formula of a page refers to a line of the deal, in a month.
func (b *book) ref(line string, month int) string {
	c := b.model.Find(b.model.Root, line)
	if at := b.places[c.Index]; at.grid != nil {
		if c.Line.Monthly {
			return at.from(nil, month)
		}
		return at.from(nil, 0)
	}
	return numeral(b.answer.Values.In(c, month), bindsAll)
}

// as shows a cell in another format.
func (c cell) as(format string) cell {
	c.look.format = format
	return c
}

// like shows a cell in another role.
func (c cell) like(r role) cell {
	c.look.role = r
	return c
}
