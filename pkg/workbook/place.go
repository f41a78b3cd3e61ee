package workbook

import (
	"strconv"
	"strings"

	"ledgerboard/pkg/model"
)

func itoa(n int) string { return strconv.Itoa(n) }

// A place is where a cell of the model stands. Without a grid it stands nowhere: it is a
// default that nobody changed, or private.
type place struct {
	grid     *grid
	row, col int    // of a monthly cell, the column of month 0
	name     string // the defined name of a line of the deal, or ""
}

// from is how a formula on a sheet refers to the place, off columns further right.
func (p place) from(g *grid, off int) string {
	if p.name != "" {
		return p.name
	}
	at := address(p.row, p.col+off, true, true)
	if off > 0 || p.grid.name == months {
		at = address(p.row, p.col+off, false, false)
	}
	return sheetPrefix(p.grid, g) + at
}

// span is how a formula refers to columns of a row, from the first to the last.
func (p place) span(g *grid, first, last int) string {
	return sheetPrefix(p.grid, g) + address(p.row, p.col+first, false, true) + ":" + address(p.row, p.col+last, false, true)
}

func sheetPrefix(of, from *grid) string {
	switch {
	case of == from:
		return ""
	case strings.ContainsAny(of.name, " '"):
		return "'" + strings.ReplaceAll(of.name, "'", "''") + "'!"
	}
	return of.name + "!"
}

// words is a line's name for people.
func words(l *model.Line) string { return strings.ReplaceAll(l.Name, "_", " ") }
