package workbook

import (
	"slices"
	"strings"

	"ledgerboard/pkg/model"
)

// fill writes what stands in every place, in tables and beside them.
func (b *book) fill(tables []*table) {
	for _, c := range b.model.Cells {
		if at := b.places[c.Index]; at.grid != nil && (at.name != "" || at.grid == b.inputs) {
			at.grid.set(at.row, at.col, b.cell(c, at.grid))
		}
	}
	for _, t := range tables {
		b.fillTable(t)
	}
	b.fillMonths()
}

// cell is what stands in the place of a cell of the model.
func (b *book) cell(c *model.Cell, g *grid) cell {
	out := cell{value: b.value(c), look: look{format: formatFor(c.Line)}}
	if c.Line.Unit == "choice" {
		out.look.right = true
	}
	if b.editable(c) {
		out.look.role = fallback
		if c.Given != nil {
			if out.look.role = input; drawn(c) {
				out.look.role = result
			}
			return out
		}
	}
	if edge := b.edgeBefore(c); edge != nil && b.places[edge.Index].grid != nil {
		b.read[edge.Index] = true
		out.formula = b.places[edge.Index].from(g, 0)
		return out
	}
	if c.Line.Unit == "choice" || c.Expr.IsNumber() {
		return out
	}
	if unknown(c) {
		out.look.format = notKnown
	}
	p := &printer{book: b, at: g, of: c.Member, month: -1}
	out.formula = p.open(p.number(c.Expr, bindsNothing))
	return out
}

// drawn reports whether a cell stands as a value, locked: the weight of a sold house, for the
// value is not divided by the sum of the weights, the width of the range of sales, and what a cut
// list takes, which is of a search.
func drawn(c *model.Cell) bool {
	return slices.Contains([]string{"comp.weight", "comps_low_share", "comps_high_share", "stock.sticks", "stock.stick_length"}, c.Line.ID())
}

// unknown reports whether a cell is a fact of a sold house that nobody knows: the number in it
// is the house's, for formulas read it.
func unknown(c *model.Cell) bool { return strings.HasPrefix(c.Line.Name, "comp_") && c.Given == nil }

// copied shows a cell that stands on another sheet.
func (b *book) copied(c *model.Cell, g *grid) cell {
	l := look{format: formatFor(c.Line), right: c.Line.Unit == "choice"}
	return cell{value: b.value(c), formula: b.places[c.Index].from(g, 0), look: l}
}

func (b *book) value(c *model.Cell) any {
	if c.Line.Unit == "choice" {
		return b.choice(c)
	}
	return near(b.answer.Values.Of(c))
}
