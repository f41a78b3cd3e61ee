package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// typeIn types a value into the first input of a line; nil clears it.
func (b *book) typeIn(t *testing.T, line string, value any) string {
	for _, c := range b.model.Cells {
		if at := b.places[c.Index]; b.typed(c) && c.Line.ID() == line {
			at.grid.rows[at.row-1][at.col-1].value, at.grid.rows[at.row-1][at.col-1].formula = value, ""
			return b.whereIs(c)
		}
	}
	require.Fail(t, "no such input", line)
	return ""
}

// flawAt is the flaw that the workings say of an input at a place.
func flawAt(t *testing.T, f *excelize.File, place string) string {
	rows, err := f.GetRows("Workings")
	require.NoError(t, err)
	for _, row := range rows {
		if len(row) > 1 && row[0] == place {
			return row[1]
		}
	}
	require.Fail(t, "no flaw of it", place)
	return ""
}

// What the file refuses the sheet does not take, on either side of every limit; each value here is
// just beyond one of the table of the file, or of what is believed of a list of sales. A value
// right at a limit is taken, and a fact of a sold house that is left blank is not known.
func TestTheSheetRefusesWhatTheFileDoes(t *testing.T) {
	plain := func(f flaw) string { return itoa(int(f) + plainly) }
	says, paths := map[string]map[string]string{}, []string{}
	for name, typed := range map[string]map[string]struct {
		value any
		says  string
	}{
		"beyond": {
			"own_hours_a_week": {169.0, plain(beyondRate)}, "own_pace": {0.4, plain(beyondRate)}, "container_limit": {1_000_001.0, plain(beyondRate)},
			"section.length": {501.0, plain(beyondRate)},
			"usual_ceiling":  {96.0, plain(beyondRate)}, "opening.opening_height": {0.5, plain(beyondRate)}, "container_price": {2e9, plain(beyondRate)},
			"comp.concessions": {-3000.0, plain(belowNone)}, "comp.comp_baths": {-2.0, plain(belowNone)}, "comp.months_before": {46000.0, plain(beyondRate)},
			"comp.comp_condition": {9.0, plain(beyondRate)}, "comp.comp_area": {12.0, plain(beyondRate)}, "comp.comp_bedrooms": {2.5, plain(notWhole)},
			"comp.comp_built": {57.0, plain(beyondRate)}, "comp.sold_price": {0.0, plain(beyondRate)}, "bath_rate": {-1.0, plain(belowNone)},
		},
		"within": {
			"own_hours_a_week": {168.0, itoa(int(unusual))}, "own_pace": {0.5, itoa(int(unusual))}, "section.length": {148.0, itoa(int(unusual))}, "usual_ceiling": {21.0, itoa(int(unusual))},
			"comp.comp_area": {nil, "0"}, "comp.comp_condition": {nil, "0"}, "comp.comp_baths": {12.0, itoa(int(unusual))}, "comp.concessions": {0.0, "0"}, "section.width": {40.0, itoa(int(unusual))}, // of that length, more than a room has
		},
	} {
		b := bookOf(t, "../../scenarios/larkspur-way.yaml", Options{Uncached: true})
		path := filepath.Join(t.TempDir(), name+".xlsx")
		says[path] = map[string]string{}
		for line, x := range typed {
			says[path][b.typeIn(t, line, x.value)] = x.says
		}
		saved(t, path, b)
		paths = append(paths, path)
	}
	for path, f := range recomputed(t, paths...) {
		for place, want := range says[path] {
			require.Equal(t, want, flawAt(t, f, place), place)
		}
		all := printed(t, f, "The deal")
		beyond := strings.Contains(path, "beyond")
		require.Equal(t, beyond, strings.Contains(all, "NOT ALL"))
		require.Equal(t, beyond, strings.Contains(all, "BELOW NOTHING"))
		require.Equal(t, beyond, strings.Contains(all, cannotBe))
		require.Contains(t, all, "LOOK AGAIN") // beyond, the floor of the length that cannot be
		require.Equal(t, !beyond, strings.Contains(all, " is not usual, look again (and 5 more)"))
	}
}

// Inches in a cell of feet are asked about as they are typed, and what the file refuses is stopped.
func TestInchesAreAskedAbout(t *testing.T) {
	b := bookOf(t, "../../scenarios/larkspur-way.yaml", Options{})
	for _, c := range b.model.Cells {
		rule, err := b.ruleOf(c)
		switch {
		case !b.typed(c):
		case c.Line.ID() == "section.length":
			require.NoError(t, err)
			require.Equal(t, "warning", *rule.ErrorStyle)
			require.Equal(t, "40", rule.Formula2)
		case c.Line.ID() == "own_pace":
			require.NoError(t, err)
			require.Equal(t, "stop", *rule.ErrorStyle)
			require.Equal(t, "0.5", rule.Formula1)
		}
	}
}
