package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand: a page of 504 points at three quarters holds 672 points of rows, of which the three
// heads take 39.6; 47 rows of 13.2 points are 98.1% of a page, and it does not matter; 48 to 53
// are up to 12% over, and are drawn in; 54 are more than that. Two pages hold 95.8 rows.
func TestTheLastFewLinesAreDrawnIn(t *testing.T) {
	for rows, want := range map[int]int{45: 0, 47: 1, 48: 1, 53: 1, 54: 0, 80: 0, 96: 2, 101: 2, 108: 0} {
		g := &grid{heads: 3}
		for range rows + g.heads {
			g.set(g.next(), 1, text("words", look{}))
		}
		require.Equal(t, want, g.down(0.75, 504), rows)
		require.Len(t, g.high, rows+g.heads)
	}
	g := &grid{}
	g.set(1, 1, text("small", look{size: tableSize}))
	g.down(1, 504)
	require.InDelta(t, 0.9*lineHeight, g.high[1], 1e-9)
}

// The short breakdown of this deal, which ran over by two lines of notes, is one page; a long
// one takes as many as it needs.
func TestAShortBreakdownIsOnePage(t *testing.T) {
	for name, want := range map[string]bool{"juniper-lane": true, "walnut-row": false} {
		for _, whom := range []Reader{Owner, Lender} {
			b, err := made(scenario(t, name), Options{For: whom})
			require.NoError(t, err)
			f, _ := reopened(t, b)
			fit, err := f.GetPageLayout("Cost breakdown")
			require.NoError(t, err)
			require.NotNil(t, fit.FitToHeight)
			require.Equal(t, want, *fit.FitToHeight == 1, name)
		}
	}
}
