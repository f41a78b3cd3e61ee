package workbook

import (
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/model"
)

// A columnOf is one of a sheet, of cells of one kind.
type columnOf struct {
	grid *grid
	col  int
	kind string
}

// inColumns are the rows of some cells by column and kind, from the top, and the columns in the
// order of the model.
func (b *book) inColumns(of func(*model.Cell) bool, kind func(*model.Cell) string) (rows map[columnOf][]int, order []columnOf) {
	rows = map[columnOf][]int{}
	for i, c := range b.model.Cells {
		if at := b.places[i]; at.grid != nil && of(c) {
			x := columnOf{at.grid, at.col, kind(c)}
			if rows[x] == nil {
				order = append(order, x)
			}
			rows[x] = append(rows[x], at.row)
		}
	}
	for _, x := range order {
		slices.Sort(rows[x])
	}
	return rows, order
}

// runs are the parts of a column in which some of its rows follow each other.
func (x columnOf) runs(rows []int, fix bool) (out []string) {
	for i := 0; i < len(rows); {
		n := 1
		for i+n < len(rows) && rows[i+n] == rows[i]+n {
			n++
		}
		out = append(out, address(rows[i], x.col, fix, fix)+":"+address(rows[i+n-1], x.col, fix, fix))
		i += n
	}
	return out
}

// ranges are the places of some cells, in one as far as nothing else stands between them.
func (b *book) ranges(of func(*model.Cell) bool) (out []string) {
	rows, order := b.inColumns(of, func(*model.Cell) string { return "" })
	for _, x := range order {
		for _, at := range x.runs(rows[x], true) {
			out = append(out, sheetPrefix(x.grid, nil)+at)
		}
	}
	return out
}

// marked marks the inputs of a sheet that cannot be so: those of a column for which the same
// holds in one go, by the address of the first of them.
func (b *book) marked(g *grid) error {
	if b.flaws == nil { // a form to fill in
		return nil
	}
	here := func(c *model.Cell) bool { return b.places[c.Index].grid == g && b.flaws.formulas[c.Index] != "" }
	rows, order := b.inColumns(here, func(c *model.Cell) string { return b.flaws.formulas[c.Index] })
	for _, x := range order {
		says := strings.ReplaceAll(x.kind, whereAt, address(rows[x][0], x.col, false, true)) + ">0"
		if err := b.mark(g, strings.Join(x.runs(rows[x], false), " "), says); err != nil {
			return err
		}
	}
	return nil
}

// markWhere makes the words of a row of a page red where a condition on their place holds.
func (b *book) markWhere(g *grid, row int, condition func(at string) string) {
	before := g.before
	g.before = func(f *excelize.File, g *grid) error {
		if before != nil {
			if err := before(f, g); err != nil {
				return err
			}
		}
		return b.mark(g, address(row, 1, false, false), condition(address(row, 1, false, true)))
	}
}

// mark makes cells red where a condition holds.
func (b *book) mark(g *grid, at, condition string) error {
	const red = "E8B4A8"
	if b.red == nil {
		look, err := b.file.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Color: warned, Bold: true}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{red}}})
		if err != nil {
			return err
		}
		b.red = &look
	}
	return b.file.SetConditionalFormat(g.name, at, []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: condition, Format: b.red}})
}
