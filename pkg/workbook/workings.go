package workbook

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/model"
)

// A reading is an expression and the member whose lines it reads.
type reading struct {
	expr *model.Expr
	of   *model.Member
}

// workingRow is the row of months of an expression that is no line: it has a cell in each.
func (b *book) workingRow(x *model.Expr, of *model.Member) place {
	key := reading{x, of}
	if at, known := b.workings[key]; known {
		return at
	}
	g := b.months
	at := place{grid: g, row: g.next(), col: firstMonth}
	b.workings[key] = at
	g.set(at.row, 1, text("working: "+b.naming(written(x)), look{role: small}))
	for m := 0; m <= b.last; m++ {
		p := &printer{book: b, at: g, of: of, month: m}
		value := 0.0
		if m <= b.answer.Values.Months() {
			value = near(b.valueIn(x, of, m))
		}
		g.set(at.row, at.col+m, cell{value: value, formula: p.open(p.inDeal(x)), look: look{format: plain}})
	}
	return at
}

// open is a formula, or nothing where it needs what is private: then its value stands.
func (p *printer) open(formula string) string {
	if p.private {
		return ""
	}
	for _, i := range p.reads {
		p.book.read[i] = true
	}
	return formula
}

// inDeal is an expression in the printer's month: 0 after the sale.
func (p *printer) inDeal(x *model.Expr) string {
	if v, known := p.fixed(x, p.of); known && v.IsZero() {
		return "0"
	}
	return "IF(" + address(ownedRow, firstMonth+p.month, true, false) + "=1," + p.number(x, bindsNothing) + ",0)"
}

// workingColumn is the range of cells that expressions get one below the other.
func (b *book) workingColumn(all []reading) string {
	g := b.workingSheet()
	first := g.next()
	for i, r := range all {
		p := &printer{book: b, at: g, of: r.of, month: -1}
		g.set(first+i, 1, text(b.naming(written(r.expr)), look{role: small}))
		g.set(first+i, 2, cell{value: near(b.valueIn(r.expr, r.of, -1)), formula: p.open(p.number(r.expr, bindsNothing)), look: look{format: plain}})
	}
	return sheetPrefix(g, nil) + address(first, 2, true, true) + ":" + address(first+len(all)-1, 2, true, true)
}

func (b *book) workingSheet() *grid {
	if b.workingGrid == nil {
		b.workingGrid = b.sheet(&grid{name: "Workings", widths: []float64{60, 16}, heads: 1})
		b.workingGrid.set(1, 1, text("what the sheets before add up", look{role: heading}))
		b.workingGrid.set(1, 2, text("value", look{role: heading, right: true}))
	}
	return b.workingGrid
}

// working adds a row to the sheet of workings and returns where its value stands.
func (b *book) working(words, formula string, value float64) string {
	g := b.workingSheet()
	row := g.next()
	g.set(row, 1, text(words, look{role: small}))
	g.set(row, 2, cell{value: value, formula: formula, look: look{format: plain}})
	return sheetPrefix(g, nil) + address(row, 2, true, true)
}

func written(x *model.Expr) string {
	if x.Node == nil {
		return ""
	}
	return x.Node.String()
}

// valueIn is what an expression comes to in a month; below 0 in none.
func (b *book) valueIn(x *model.Expr, of *model.Member, month int) decimal.Decimal {
	v, err := b.answer.Values.Value(x, of, month)
	if err != nil && b.err == nil {
		b.err = err
	}
	return v
}

func near(x decimal.Decimal) float64 { return float.Near(x) }
