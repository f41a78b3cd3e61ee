package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// stream writes all sheets, each from its first row to its last: the only way in which a
// formula keeps the type of its cached value.
func (b *book) stream() error {
	for i, g := range b.all() {
		if i == 0 {
			if err := b.file.SetSheetName("Sheet1", g.name); err != nil {
				return err
			}
		} else if _, err := b.file.NewSheet(g.name); err != nil {
			return err
		}
	}
	if err := b.names(); err != nil {
		return err
	}
	b.file.SetZipWriter(newSteadyZip)
	if err := b.properties(); err != nil {
		return err
	}
	for _, g := range b.all() {
		if err := b.write(g); err != nil {
			return err
		}
	}
	return b.file.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &yes})
}

var yes = true

// names gives the lines of the deal their names.
func (b *book) names() error {
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if at.name == "" {
			continue
		}
		n := &excelize.DefinedName{Name: at.name, RefersTo: sheetPrefix(at.grid, nil) + address(at.row, at.col, true, true), Comment: c.Line.Meaning}
		if err := b.file.SetDefinedName(n); err != nil {
			return err
		}
	}
	return nil
}

// write writes one sheet. What is no cell goes before them, or it would be lost.
func (b *book) write(g *grid) error {
	if err := b.dress(g); err != nil {
		return err
	}
	w, err := b.file.NewStreamWriter(g.name)
	if err != nil {
		return err
	}
	for i, width := range g.widths {
		if width == 0 {
			continue
		}
		if err := w.SetColWidth(i+1, i+1, width); err != nil {
			return err
		}
	}
	if g.heads > 0 || g.left > 0 {
		if err := w.SetPanes(panes(g)); err != nil {
			return err
		}
	}
	for i, r := range g.rows {
		for j, c := range r {
			if len(c.formula) > longest {
				return fmt.Errorf("the formula of %s%s would have %d characters, and spreadsheet programs take %d at most: the deal has more parts than a workbook can hold", sheetPrefix(g, nil), address(i+1, j+1, false, false), len(c.formula), longest)
			}
		}
		out, err := b.cells(r)
		if err != nil {
			return err
		}
		if err := w.SetRow(address(i+1, 1, false, false), out, excelize.RowOpts{Height: g.high[i+1]}); err != nil {
			return err
		}
	}
	for _, m := range g.merges {
		if err := w.MergeCell(address(m.row, m.col, false, false), address(m.toRow, m.toCol, false, false)); err != nil {
			return err
		}
	}
	return w.Flush()
}

func (b *book) cells(row []cell) ([]any, error) {
	out := make([]any, len(row))
	for i, c := range row {
		if c == (cell{}) {
			continue
		}
		style, err := b.style(c.look)
		if err != nil {
			return nil, err
		}
		v := c.value
		if b.how.Uncached && c.formula != "" {
			v = nil
		}
		out[i] = excelize.Cell{StyleID: style, Formula: c.formula, Value: v}
	}
	return out, nil
}

func panes(g *grid) *excelize.Panes {
	corner, pane := address(g.heads+1, g.left+1, false, false), "bottomRight"
	switch {
	case g.left == 0:
		pane = "bottomLeft"
	case g.heads == 0:
		pane = "topRight"
	}
	return &excelize.Panes{Freeze: true, XSplit: g.left, YSplit: g.heads, TopLeftCell: corner, ActivePane: pane}
}
