package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Where a bracket begins at the end of the one before, that end alone is an input: the beginning
// is locked and follows it.
func TestOneEdgeIsOneInput(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{})
	followed := 0
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if c.Line.ID() != "bracket.lower" || at.grid == nil || c.Given == nil {
			continue
		}
		edge := b.edgeBefore(c)
		require.NotNil(t, edge, c.Member.Path())
		require.False(t, b.editable(c))
		require.True(t, b.typed(edge))
		require.Equal(t, b.places[edge.Index].from(at.grid, 0), at.grid.rows[at.row-1][at.col-1].formula)
		followed++
	}
	require.Positive(t, followed)
}
