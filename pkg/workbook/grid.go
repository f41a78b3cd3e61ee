package workbook

import (
	"strconv"

	"github.com/xuri/excelize/v2"
)

// A cell is what stands in one place of a sheet. A text is never taken for a formula.
type cell struct {
	value   any    // float64, string or nil
	formula string // without the equals sign, or "" for a value
	look    look
	note    string
	named   string // in a list, the formula of its label where that follows the inputs
}

// A grid is a sheet before it is written. Rows and columns count from 1.
type grid struct {
	name   string
	rows   [][]cell
	widths []float64                             // by column
	heads  int                                   // rows that stay in sight and are repeated in print
	left   int                                   // columns that stay in sight
	wide   bool                                  // printed on its side
	once   bool                                  // printed on one page
	closed bool                                  // no last few lines are printed on a page of their own
	noted  bool                                  // meanings are shown as notes
	breaks []int                                 // rows that begin a new page
	merges []area                                // cells that are one
	high   map[int]float64                       // rows of a stated height, in points
	before func(f *excelize.File, g *grid) error // what else it has: charts, choices, colours
}

// An area is cells from the first row and column to the last.
type area struct{ row, col, toRow, toCol int }

// set puts a cell in its place.
func (g *grid) set(row, col int, c cell) {
	for len(g.rows) < row {
		g.rows = append(g.rows, nil)
	}
	r := g.rows[row-1]
	if r == nil && row > 1 {
		r = make([]cell, 0, max(col, len(g.rows[row-2]))) // most are as long as the one above
	}
	for len(r) < col {
		r = append(r, cell{})
	}
	r[col-1] = c
	g.rows[row-1] = r
}

// next is the first row below all that is set.
func (g *grid) next() int { return len(g.rows) + 1 }

// columns is how many there are.
func (g *grid) columns() (n int) {
	for _, r := range g.rows {
		n = max(n, len(r))
	}
	return n
}

func text(s string, l look) cell { return cell{value: s, look: l} }

// address is a place as in F12, with dollar signs before what stays when it is copied.
func address(row, col int, fixRow, fixCol bool) string {
	name, _ := excelize.ColumnNumberToName(col) // columns are counted, so the number is sound
	out := make([]byte, 0, 16)
	if fixCol {
		out = append(out, '$')
	}
	out = append(out, name...)
	if fixRow {
		out = append(out, '$')
	}
	return string(strconv.AppendInt(out, int64(row), 10))
}
