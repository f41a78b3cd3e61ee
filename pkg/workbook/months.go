package workbook

import "ledgerboard/pkg/model"

// months is the sheet of what has a value for each month.
const months = "Months"

// Where its months are.
const (
	monthRow   = 2
	ownedRow   = 3
	firstMonth = 4 // the column of month 0
)

func (b *book) layMonths() {
	b.months = b.sheet(&grid{name: months, heads: ownedRow, left: firstMonth - 1, widths: []float64{28, 26, 8}})
	g := b.months
	g.set(1, 1, text("Month by month", look{role: title}))
	g.set(monthRow, 1, text("month", look{role: heading}))
	g.set(monthRow, 2, text("", look{role: heading}))
	g.set(monthRow, 3, text("unit", look{role: heading}))
	g.set(ownedRow, 1, text("whether it is no later than the sale", look{role: small}))
	for m := 0; m <= b.last; m++ {
		g.set(monthRow, firstMonth+m, cell{value: float64(m), look: look{role: heading, format: whole}})
	}
	for _, c := range b.model.Cells {
		if c.Line.Monthly && !b.secret(c) {
			b.places[c.Index] = place{grid: g, row: g.next(), col: firstMonth}
			g.set(g.next(), 1, text(b.called(c.Member), look{role: small}))
		}
	}
}

func (b *book) fillMonths() {
	g, sale := b.months, b.model.Cells[b.model.Horizon]
	for m := 0; m <= b.last; m++ {
		owned := 0.0
		if m <= b.answer.Values.Months() {
			owned = 1
		}
		p := &printer{book: b, at: g, month: m}
		g.set(ownedRow, firstMonth+m, cell{value: owned, formula: "IF(" + b.monthNumber(g, m) + "<=" + p.ref(sale) + ",1,0)", look: look{format: yesNo, role: small, right: true}})
		g.widths = append(g.widths, 13)
	}
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if !c.Line.Monthly || at.grid == nil {
			continue
		}
		g.set(at.row, 2, cell{value: words(c.Line), note: c.Line.Meaning})
		g.set(at.row, 3, text(c.Line.Unit, look{role: small}))
		for m := 0; m <= b.last; m++ {
			p := &printer{book: b, at: g, of: c.Member, month: m}
			g.set(at.row, firstMonth+m, b.inMonth(c, p))
		}
	}
}

func (b *book) inMonth(c *model.Cell, p *printer) cell {
	return cell{value: near(b.answer.Values.In(c, p.month)), formula: p.open(p.inDeal(c.Expr)), look: look{format: formatOf(c.Line.Unit)}}
}

// monthNumber is how a formula refers to the number of a month.
func (b *book) monthNumber(g *grid, m int) string {
	if g == b.months {
		return address(monthRow, firstMonth+m, true, false)
	}
	return itoa(m)
}
