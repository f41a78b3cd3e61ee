package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A house valued by sold ones, with an option that adds to it and a toilet rented by the month.
const rentedAndSold = `house: {living area: 1240, year built: 1985}
purchase: {price: 150k, date: 2026-12-10}
time: {marketing: 1 month, escrow: 1 month}
labour: {own hours a week: 10}
local prices: {labour factor: 93%}
comps:
  amounts: {square foot: $85, market a month: 0.3%}
  table: |
    address;sold;price;sq ft
    12 Elm St;2026-06-03;268000;1310
    31 Elm St;2026-04-17;251500;1180
    7 Oak Ct;2026-08-09;279900;1402
rooms:
  den: {size: 10' x 12', options: {fresh: {adds: $18k, work: {paint walls: own hands}}}}
whole house: {work: {portable toilet: hired}}
`

// What an option adds is taken off what the sold houses say before the work, and a rent is at
// the prices of the place: both follow their inputs in the sheet as in the program.
func TestRentsAndWhatOptionsAddFollow(t *testing.T) {
	for _, x := range []struct {
		old, new, member, line string
		value                  float64
		moves                  []string
	}{
		{"adds: $18k", "adds: $10,800", "den, fresh", "value_added", 10_800, []string{"value_before_work"}},
		{"labour factor: 93%", "labour factor: 74.4%", "", "labour_factor", 0.744, []string{"rent_a_month", "rents", "budget"}},
	} {
		b, err := made(answered(t, rentedAndSold), Options{Uncached: true})
		require.NoError(t, err)
		after := answered(t, strings.Replace(rentedAndSold, x.old, x.new, 1))
		typed := false
		for i, c := range b.model.Cells {
			if at := b.places[i]; at.grid != nil && c.Member.Path() == x.member && c.Line.Name == x.line {
				at.grid.rows[at.row-1][at.col-1].value = x.value
				typed = true
			}
		}
		require.True(t, typed, x.line)
		file := t.TempDir() + "/house.xlsx"
		saved(t, file, b)
		f := recomputed(t, file)[file]
		for _, line := range append(x.moves, "after_repair_value", "low_value", "cash_needed", "owner_profit") {
			c := b.model.Find(b.model.Root, line)
			at := b.places[c.Index]
			require.NotNil(t, at.grid, line)
			got, err := f.GetCellValue(at.grid.name, address(at.row, at.col, false, false))
			require.NoError(t, err)
			want := after.Line(line)
			require.True(t, same(near(want), got), "%s: %s, not %s", line, got, want)
		}
		for _, line := range x.moves {
			require.False(t, after.Line(line).Equal(b.answer.Line(line)), line)
		}
	}
}
