package workbook

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// A room with a cut list, waste divided, and a delivery that its one option calls for.
const denInTile = `purchase: {price: $148k}
value: {after-repair value: $214k}
time: {marketing: 4 weeks, escrow: 1 month}
local prices: {waste: divided}
rooms: {den: {size: 12' x 14', doors: 1, work: {baseboard: hired, tile floor: {by: hired, waste: 12%}}}}
`

// What no figure follows, and what is of a search, is locked and has no shade: work that is called
// for either way, how many sticks of which length a cut list takes.
func TestWhatNothingFollowsIsLocked(t *testing.T) {
	b, err := made(answered(t, denInTile), Options{})
	require.NoError(t, err)
	roles := map[string]map[role]int{}
	for _, c := range b.model.Cells {
		if at := b.places[c.Index]; at.grid != nil && c.Given != nil {
			if roles[c.Line.ID()] == nil {
				roles[c.Line.ID()] = map[role]int{}
			}
			roles[c.Line.ID()][at.grid.rows[at.row-1][at.col-1].look.role]++
		}
	}
	for _, line := range []string{"item.called_for", "stock.sticks", "stock.stick_length"} {
		require.Positive(t, roles[line][result], line)
		require.Len(t, roles[line], 1, line)
	}
	require.Positive(t, roles["stock.stick_price"][input])
}

// Waste that leaves nothing of what is bought, a least above the most and more cash kept back
// than there is are told; what is just within is not.
func TestOrderOfInputsSpeaksUp(t *testing.T) {
	const text = denInTile + "selling: {agent: {amount: 5%, at least: $8000, at most: $9500}}\ncash: {available: $90k, keep back: $10k}\n"
	says, paths := map[string]string{}, []string{}
	for _, x := range []struct {
		name, line string
		value      float64
		says       string
	}{
		{"waste", "waste", 1, "NOT SO"}, {"added", "waste", 1, "BEYOND IT"}, {"little", "waste", 0.99, ""},
		{"least", "least", 12_000, "OVER IT"}, {"most", "most", 7_999.99, "OVER IT"}, {"same", "most", 8_000, ""},
		{"kept", "cash_reserve", 90_001, "OVER IT"}, {"all", "cash_reserve", 90_000, ""},
	} {
		file := text
		if x.name == "added" {
			file = strings.Replace(text, "waste: divided", "waste: added", 1)
		}
		b, err := made(answered(t, file), Options{Uncached: true})
		require.NoError(t, err)
		typed := false
		for _, c := range b.model.Cells {
			if at := b.places[c.Index]; c.Line.Name == x.line && b.typed(c) && c.Given != nil {
				at.grid.rows[at.row-1][at.col-1].value = x.value
				typed = true
			}
		}
		require.True(t, typed, x.name)
		path := filepath.Join(t.TempDir(), x.name+".xlsx")
		saved(t, path, b)
		paths, says[path] = append(paths, path), x.says
	}
	for path, f := range recomputed(t, paths...) {
		all := printed(t, f, "The deal")
		if says[path] == "" {
			require.NotContains(t, all, cannotBe, path)
			continue
		}
		require.Contains(t, all, says[path], path)
		require.Contains(t, all, cannotBe, path)
	}
}

// The cell of waste takes less than the whole alone.
func TestWasteTakesLessThanTheWhole(t *testing.T) {
	all, err := opened(t, answered(t, denInTile), Options{}).GetDataValidations("What it takes")
	require.NoError(t, err)
	found := slices.ContainsFunc(all, func(v *excelize.DataValidation) bool {
		return v.ErrorTitle != nil && *v.ErrorTitle == "Waste" && *v.ErrorStyle == "stop" && v.Formula1 == "0" && strings.HasPrefix(v.Formula2, "0.99999")
	})
	require.True(t, found)
}
