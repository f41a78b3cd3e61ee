package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/internal/together"
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
	var sheets []func() error
	for _, g := range b.all() {
		w, err := b.opened(g)
		if err != nil {
			return err
		}
		sheets = append(sheets, func() error { return b.write(w, g) })
	}
	if err := together.Run(sheets...); err != nil {
		return err
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

// opened is one sheet with all but its cells, which would lose what comes after them, and
// with their looks known to the file, so that sheets can be written side by side.
func (b *book) opened(g *grid) (*excelize.StreamWriter, error) {
	if err := b.dress(g); err != nil {
		return nil, err
	}
	w, err := b.file.NewStreamWriter(g.name)
	if err != nil {
		return nil, err
	}
	for i, width := range g.widths {
		if width == 0 {
			continue
		}
		if err := w.SetColWidth(i+1, i+1, width); err != nil {
			return nil, err
		}
	}
	if g.heads > 0 || g.left > 0 {
		if err := w.SetPanes(panes(g)); err != nil {
			return nil, err
		}
	}
	for i, r := range g.rows {
		for j, c := range r {
			if len(c.formula) > longest {
				return nil, fmt.Errorf("the formula of %s%s would have %d characters, and spreadsheet programs take %d at most: the deal has more parts than a workbook can hold", sheetPrefix(g, nil), address(i+1, j+1, false, false), len(c.formula), longest)
			}
			if c == (cell{}) {
				continue
			}
			if err := b.style(c.look); err != nil {
				return nil, err
			}
		}
	}
	return w, nil
}

// write writes the cells of one sheet.
func (b *book) write(w *excelize.StreamWriter, g *grid) error {
	for i, r := range g.rows {
		if err := w.SetRow(address(i+1, 1, false, false), b.cells(r), excelize.RowOpts{Height: g.high[i+1]}); err != nil {
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

func (b *book) cells(row []cell) []any {
	out := make([]any, len(row))
	for i, c := range row {
		if c == (cell{}) {
			continue
		}
		v := c.value
		if b.how.Uncached && c.formula != "" {
			v = nil
		}
		out[i] = excelize.Cell{StyleID: b.styles[c.look], Formula: c.formula, Value: v}
	}
	return out
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
