package workbook

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

const larkspur = "../../scenarios/larkspur-way.yaml"

// rowOf is the row of a label on a page, the first one.
func rowOf(t *testing.T, g *grid, label string) int {
	for i, row := range g.rows {
		if len(row) > 0 && row[0].value == label {
			return i + 1
		}
	}
	require.Fail(t, "no such row", label)
	return 0
}

// The grid is live: with another price, area and amount for a square foot, the page
// comes to what the lines of the model do, and says that the weights are not new.
func TestComparablesRecomputed(t *testing.T) {
	b := bookOf(t, larkspur, Options{Uncached: true})
	first := b.answer.Deal.Comps.Members[0]
	changes := []exact.Change{
		{Cell: b.model.Find(first, "sold_price"), Value: decimal.NewFromInt(301_250)},
		{Cell: b.model.Find(first, "comp_area"), Value: decimal.NewFromInt(1101)},
		{Cell: b.model.Find(b.model.Root, "size_rate"), Value: decimal.New(10_155, -2)},
	}
	for _, c := range changes {
		at := b.places[c.Cell.Index]
		require.NotNil(t, at.grid, c.Cell.Name())
		at.grid.rows[at.row-1][at.col-1].value = near(c.Value)
	}
	want := b.model.Find(b.model.Root, "value_by_comps")
	v, err := exact.NewPlan(b.model, want, b.model.Find(first, "adjusted_price")).Evaluate(changes...)
	require.NoError(t, err)
	require.False(t, v.Of(want).Equal(b.answer.Values.Of(want)), "it moves")
	file := t.TempDir() + "/larkspur.xlsx"
	saved(t, file, b)
	page := sheetOf(b, "Comparables")
	require.NotNil(t, page)
	f := recomputed(t, file)[file]
	at := func(row, col int) string {
		s, err := f.GetCellValue("Comparables", address(row, col, false, false), excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		return s
	}
	require.Equal(t, v.Of(want).String(), at(rowOf(t, page, "what they say the house sells for"), 2))
	require.Equal(t, v.Of(b.model.Find(first, "adjusted_price")).String(), at(rowOf(t, page, "adjusted price"), 3))
	require.Contains(t, at(rowOf(t, page, "all is as the weights were drawn"), 2), "NO")
}

// A price of nothing breaks no other cell, and a fact that is cleared is not adjusted, not taken
// for none of it.
func TestSoldHousesCleared(t *testing.T) {
	b := bookOf(t, larkspur, Options{Uncached: true})
	first, second := b.answer.Deal.Comps.Members[0], b.answer.Deal.Comps.Members[1]
	place := func(m *model.Member, line string) *cell {
		at := b.places[b.model.Find(m, line).Index]
		return &at.grid.rows[at.row-1][at.col-1]
	}
	place(first, "sold_price").value = 0.0
	place(second, "comp_area").value = nil
	file := t.TempDir() + "/larkspur.xlsx"
	saved(t, file, b)
	f := recomputed(t, file)[file]
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		require.NoError(t, err)
		for _, row := range rows {
			for _, s := range row {
				require.NotContains(t, s, "#DIV/0!", sheet)
			}
		}
	}
	at := b.places[b.model.Find(second, "size_adjustment").Index]
	s, err := f.GetCellValue("Sold houses", address(at.row, at.col, false, false), excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	require.Equal(t, "0", s)
}

// The weights rest on what a unit is worth too: without an amount for a bath the sales fit
// otherwise, and the page says that its weights are not new, and so does the first one.
func TestWeightsRestOnTheAmounts(t *testing.T) {
	b := bookOf(t, larkspur, Options{Uncached: true})
	at := b.places[b.model.Find(b.model.Root, "bath_rate").Index]
	at.grid.rows[at.row-1][at.col-1].value = 0.0
	file := t.TempDir() + "/larkspur.xlsx"
	saved(t, file, b)
	f := recomputed(t, file)[file]
	is, err := f.GetCellValue("Comparables", address(rowOf(t, sheetOf(b, "Comparables"), "all is as the weights were drawn"), 2, false, false))
	require.NoError(t, err)
	require.Contains(t, is, "NO")
	require.Contains(t, printed(t, f, "The deal"), "The comparables have changed")
}

// A value typed over is no longer what the comparables say, and neither page in front says so.
func TestAValueTypedOverIsNotTheComparables(t *testing.T) {
	paths := []string{}
	for i, how := range []Options{{Uncached: true}, {Uncached: true, For: Lender}} {
		for _, line := range []string{"after_repair_value", ""} {
			b := bookOf(t, larkspur, how)
			if line != "" {
				at := b.places[b.model.Find(b.model.Root, line).Index]
				at.grid.rows[at.row-1][at.col-1] = cell{value: 330000.0, look: at.grid.rows[at.row-1][at.col-1].look}
			}
			paths = append(paths, fmt.Sprintf("%s/%d%s.xlsx", t.TempDir(), i, line))
			saved(t, paths[len(paths)-1], b)
		}
	}
	for path, f := range recomputed(t, paths...) {
		typed := strings.Contains(path, "after_repair_value")
		page := printed(t, f, "The deal")
		require.Equal(t, typed, strings.Contains(page, "The value is typed in"), path)
		require.Equal(t, !typed, strings.Contains(page, "The value is what the comparables say."), path)
	}
}

// Weights stand as values: a sheet does not divide by their sum, so that one typed over would
// move the value as if the sales said so.
func TestWeightsAreLocked(t *testing.T) {
	for _, how := range []Options{{For: Owner}, {For: Lender}} {
		b := bookOf(t, larkspur, how)
		for _, m := range b.answer.Deal.Comps.Members {
			role := func(line string) role {
				at := b.places[b.model.Find(m, line).Index]
				return at.grid.rows[at.row-1][at.col-1].look.role
			}
			require.Equal(t, result, role("weight"))
			require.Equal(t, input, role("sold_price"))
		}
	}
}

// A lender sees the grid and the value, and not the ends of the range: the low one is
// the owner's low value.
func TestLenderSeesComparables(t *testing.T) {
	for _, how := range []Options{{For: Owner}, {For: Lender}} {
		b := bookOf(t, larkspur, how)
		page := sheetOf(b, "Comparables")
		require.NotNil(t, page)
		all := strings.Join(texts(page), "\n")
		require.Contains(t, all, "not an appraisal")
		require.Contains(t, all, "12 Larkspur Way")
		require.Contains(t, all, "As the file stood, a unit was worth: ", "amounts are inputs, and the sentence does not follow them")
		require.Equal(t, how.For == Owner, strings.Contains(all, "one such house in ten sells below"))
		row := rowOf(t, page, "adjusted price")
		for col := 2; col <= 8; col++ {
			require.NotEmpty(t, page.rows[row-1][col-1].formula, "column %d is live", col)
		}
	}
	require.Nil(t, sheetOf(bookOf(t, "../../scenarios/juniper-lane.yaml", Options{}), "Comparables"))
}

// What is not known of a sold house counts as the house's in its formula, and the sheet says
// that it is not known.
func TestUnknownFactsOfSoldHouses(t *testing.T) {
	b, err := made(answered(t, `house: {living area: 1240, baths: 1.5, condition: good}
purchase: {price: 150k, date: 2026-12-10}
time: {renovation: 3 months}
comps:
  amounts: {square foot: $85, bath: $9,500, step of condition: $16,500, market a month: 0.3%}
  table: |
    address;sold;price;sq ft;baths;condition
    12 Elm St;2026-06-03;268000;1310;2;
    31 Elm St;2026-04-17;251500;1180;;average
    7 Oak Ct;2026-08-09;279900;;2;good
`), Options{})
	require.NoError(t, err)
	unknown, known := 0, 0
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if at.grid == nil || !strings.HasPrefix(c.Line.Name, "comp_") {
			continue
		}
		require.Equal(t, c.Given == nil, at.grid.rows[at.row-1][at.col-1].look.format == notKnown, c.Name())
		if c.Given == nil {
			unknown++
		} else {
			known++
		}
	}
	require.Equal(t, 6, known)
	require.Equal(t, 3, unknown)
	said := strings.Join(texts(sheetOf(b, "Sold houses")), "\n")
	require.Contains(t, said, "its living area; where it is not known the number in the cell is the house's")
	require.NotContains(t, said, "what the house sold for, as recorded; where")
}

// Without an amount for any unit nothing is said of what one is worth.
func TestNoUnitHasAnAmount(t *testing.T) {
	b, err := made(answered(t, `house: {living area: 1240}
purchase: {price: 150k, date: 2026-12-10}
time: {renovation: 3 months}
comps:
  table: |
    address;sold;price;sq ft
    12 Elm St;2026-06-03;268000;1240
    7 Oak Ct;2026-08-09;279900;1240
    9 Oak Ct;2026-08-19;275900;1240
`), Options{})
	require.NoError(t, err)
	require.NotContains(t, strings.Join(texts(sheetOf(b, "Comparables")), "\n"), "a unit was worth")
}
