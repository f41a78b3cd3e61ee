package workbook

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// The first page names the place of an input that cannot be so: its sheet, cell and line.
func TestAnInputThatCannotBeIsNamed(t *testing.T) {
	says, paths := map[string]string{}, []string{}
	for _, x := range []struct {
		name, deal, member, line string
		value                    any
		check                    string
	}{
		{"share", "juniper-lane", "first loan", "price_share", 70.0, "BEYOND IT"},
		{"blank", "juniper-lane", "first loan", "rate", nil, "NOT SO"},
		{"choice", "juniper-lane", "first loan", "interest_on", "whole loan", "NOT SO"},
		{"minus", "juniper-lane", "", "seller_credit", -7400.0, "BELOW NOTHING"},
		{"words", "harbor-view", "", "price", "about 220k", "NOT SO"},
		{"term", "mill-road", "hard money", "term", 601.0, "NOT ALL"},
		{"cleared", "larkspur-way", "", "comp_area", nil, ""}, // a fact that is not known
		{"product", "larkspur-way", "", "pack_price", nil, "NOT SO"},
		{"length", "larkspur-way", "", "length", "13' 9\"", "NOT SO"},
		{"week", "larkspur-way", "", "own_hours_a_week", "33 h", "NOT SO"},
	} {
		b := bookOf(t, "../../scenarios/"+x.deal+".yaml", Options{Uncached: true})
		for _, c := range b.model.Cells {
			if at := b.places[c.Index]; b.typed(c) && strings.HasPrefix(c.Member.Path(), x.member) && c.Line.Name == x.line {
				at.grid.rows[at.row-1][at.col-1].value = x.value
				path := filepath.Join(t.TempDir(), x.name+".xlsx")
				saved(t, path, b)
				paths, says[path] = append(paths, path), flawless
				if x.check != "" {
					more := ". What"
					if slices.Contains([]string{"words", "length", "week"}, x.name) { // another input follows it
						more = " (and 1 more). What"
					}
					says[path] = b.whereIs(c) + " cannot be so" + more + "\n" + x.check
				}
				break
			}
		}
		require.Contains(t, paths[len(paths)-1], x.name)
	}
	for path, f := range recomputed(t, paths...) {
		all := printed(t, f, "The deal")
		where, check, bad := strings.Cut(says[path], "\n")
		require.Contains(t, all, where, path)
		require.Contains(t, all, check, path)
		require.Equal(t, bad, strings.Contains(all, cannotBe), path)
	}
}

// What marks an input on its sheet is what the checks go by, seen from the first cell of its
// column; every input is marked by one rule.
func TestInputsThatCannotBeAreMarked(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{})
	f, _ := reopened(t, b)
	all, err := f.GetConditionalFormats("Inputs")
	require.NoError(t, err)
	rules := map[string]string{} // by cell
	for at, x := range all {
		require.Len(t, x, 1)
		for _, run := range strings.Fields(at) {
			first, last, _ := strings.Cut(run, ":")
			for row := rowNumber(t, first); row <= rowNumber(t, last); row++ {
				require.NotContains(t, rules, address(row, 2, false, false))
				rules[address(row, 2, false, false)] = x[0].Criteria
			}
		}
	}
	n := 0
	for _, c := range b.model.Cells {
		if at := b.places[c.Index]; at.grid == b.inputs && b.typed(c) {
			n++
			require.NotEmpty(t, rules[address(at.row, at.col, false, false)], c.Name())
		}
	}
	require.Len(t, rules, n)
	require.Contains(t, strings.Join(values(rules), "\n"), "ISNUMBER($B")
	require.NotContains(t, strings.Join(values(rules), "\n"), "{", "no list stands in such a rule")
}

func rowNumber(t *testing.T, at string) int {
	_, row, err := excelize.CellNameToCoordinates(at)
	require.NoError(t, err)
	return row
}

func values(m map[string]string) (out []string) {
	for _, v := range m {
		out = append(out, v)
	}
	return out
}
