package workbook

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// Of the numbers that are neither inputs nor results of a search, nearly all are formulas;
// the rest are figures that nothing in the workbook can move, such as a lender's part
// where there is no lender.
func TestNearlyAllNumbersAreFormulas(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	for _, name := range files {
		for _, reader := range []Reader{Owner, Lender} {
			b, err := made(answerOf(t, name), Options{For: reader})
			require.NoError(t, err)
			formulas, values := b.counted()
			require.Greater(t, formulas, 500, name)
			require.GreaterOrEqual(t, float64(formulas), 0.95*float64(formulas+values), "%s for %d: %d formulas, %d values", name, reader, formulas, values)
		}
	}
}

// counted counts the numbers that are formulas, and those that are neither formula nor
// input, heading or result of a search.
func (b *book) counted() (formulas, values int) {
	for _, g := range b.all() {
		for _, row := range g.rows {
			for _, c := range row {
				_, is := c.value.(float64)
				switch {
				case !is:
				case c.formula != "":
					formulas++
				case c.look.role != input && c.look.role != fallback && c.look.role != heading && c.look.role != found && c.look.role != foundStrong:
					values++
				}
			}
		}
	}
	for _, c := range b.model.Cells { // inputs at their defaults, in tables
		if c.Line.Input && c.Given == nil && c.Line.Unit != "choice" && b.places[c.Index].grid != nil && !b.editable(c) {
			values--
		}
		if at := b.places[c.Index]; at.grid != nil && b.editable(c) && !b.read[c.Index] && c.Line.Unit != "choice" { // inputs that nothing reads
			values--
		}
	}
	return formulas, values
}
