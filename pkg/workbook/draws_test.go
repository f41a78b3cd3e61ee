package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand, for the roof of $9,650, of which $2,000 was drawn: $6,000 is asked for, but 70%
// is done, so 0.7 x 9,650 - 2,000 = $4,755 is approved; a tenth of it, $475.50, is kept;
// 9,650 - 2,000 - 4,755 = $2,895 is left to draw, and 0.3 x 9,650 = $2,895 to finish. With no
// cash proven, that and the lines of own work are more than is left to draw.
func TestDrawIsWorkedOut(t *testing.T) {
	b, err := made(scenario(t, "juniper-lane"), Options{For: Lender, Uncached: true})
	require.NoError(t, err)
	g := sheetOf(b, "Draws")
	row, cash, says := 0, 0, 0
	for i, r := range g.rows {
		if len(r) < drawWork {
			continue
		}
		switch s, _ := r[drawWork-1].value.(string); {
		case s == "roof: reroof":
			row = i + 1
		case strings.HasPrefix(s, "owner's cash as proven"):
			cash = i + 1
		case strings.HasPrefix(s, "Yes: "):
			says = i + 1
		}
	}
	set := func(row, col int, x float64) {
		c := g.rows[row-1][col-1]
		require.Equal(t, blank, c.look.role, "it can be filled in")
		c.value, c.formula = x, ""
		g.set(row, col, c)
	}
	set(row, drawBefore, 2000)
	set(row, drawAsked, 6000)
	set(row, drawInspected, 0.7)
	set(cash, drawToFinish, 0)
	file := filepath.Join(t.TempDir(), "draw.xlsx")
	saved(t, file, b)
	f := recomputed(t, file)[file]
	is := func(col int, want string) {
		got, err := f.GetCellValue("Draws", address(row, col, false, false))
		require.NoError(t, err)
		require.Equal(t, want, got, drawHeads[col-1].words)
	}
	is(drawRevised, "9650")
	is(drawNow, "4755")
	is(drawRetained, "475.5")
	is(drawNet, "4279.5")
	is(drawLeft, "2895")
	is(drawToFinish, "2895")
	said, err := f.GetCellValue("Draws", address(says, drawWork, false, false))
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(said, "NO: THE WORK TAKES MORE"), said)
}

// Lists are offered for the releases and receipts, and shares are kept between 0 and 1.
func TestDrawsOfferChoices(t *testing.T) {
	f := opened(t, answered(t, twoLoans), Options{For: Lender})
	all, err := f.GetDataValidations("Draws")
	require.NoError(t, err)
	require.Len(t, all, 3)
	require.Contains(t, all[0].Formula1, "conditional,final")
	require.Equal(t, "decimal", all[2].Type)
}

// A deal without a lender has a breakdown, and nothing to draw.
func TestNoDrawsWithoutALender(t *testing.T) {
	sheets := opened(t, scenario(t, "salt-creek"), Options{}).GetSheetList()
	require.Contains(t, sheets, "Cost breakdown")
	require.NotContains(t, sheets, "Draws")
	require.NotContains(t, sheets, "Attachments")
}
