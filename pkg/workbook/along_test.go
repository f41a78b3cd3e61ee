package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
)

// Where a part or a count that brings work along is typed over, or the size of a room of which something is
// counted, the first page says that what comes along stays as it was; a price changes nothing of that.
func TestAChangedCountIsToldOfBesideWhatComesAlong(t *testing.T) {
	const counted = `
purchase: {price: $148k, date: 2026-10-20}
value: {after-repair value: $300k}
time: {renovation: 1 month, marketing: 4 weeks, escrow: 1 month}
house: {year built: 1995}
rooms:
  bed: {size: 14' x 12', work: {paint walls: {by: hired, count: 300 sq ft}}}
  bath: {size: 10' x 10', work: {tile floor: {by: hired, part: 60%}}}
  kitchen: {kind: kitchen, size: 12' x 12', work: {dishwasher fitted: {by: hired, count: 1}}}
  hall: {size: 14' x 9', work: {tile floor: hired, crack isolation on slab: {by: hired, count: 40 sq ft}}}
`
	item := func(b *book, name string) *model.Member {
		for _, room := range b.model.Root.In("room") {
			for _, m := range room.In("option")[0].In("item") {
				if m.Label == name {
					return m
				}
			}
		}
		return nil
	}
	dir, files := t.TempDir(), map[string]bool{}
	var paths []string
	for name, change := range map[string]func(b *book) *model.Cell{
		"same.xlsx":  nil,
		"part.xlsx":  func(b *book) *model.Cell { return b.model.Find(item(b, "tile floor"), "part") },
		"count.xlsx": func(b *book) *model.Cell { return b.model.Find(item(b, "paint walls"), "measure") },
		"one.xlsx":   func(b *book) *model.Cell { return b.model.Find(item(b, "dishwasher fitted"), "measure") },
		"under.xlsx": func(b *book) *model.Cell { return b.model.Find(item(b, "crack isolation on slab"), "measure") },
		"side.xlsx": func(b *book) *model.Cell {
			return b.model.Find(b.model.Root.In("room")[3].In("section")[0], "length")
		},
		"price.xlsx": func(b *book) *model.Cell { return b.model.Find(item(b, "tile floor"), "hired_price") },
	} {
		b, err := made(answered(t, counted), Options{Uncached: true})
		require.NoError(t, err)
		if change != nil {
			at := b.places[change(b).Index]
			c := &at.grid.rows[at.row-1][at.col-1]
			c.value = c.value.(float64) * 1.25
		}
		path := filepath.Join(dir, name)
		saved(t, path, b)
		paths, files[path] = append(paths, path), change != nil && name != "price.xlsx"
	}
	for path, f := range recomputed(t, paths...) {
		rows, err := f.GetRows("The deal")
		require.NoError(t, err)
		told := false
		for _, row := range rows {
			told = told || strings.Contains(strings.Join(row, " "), alongAnew)
		}
		require.Equal(t, files[path], told, path)
	}
}

// A roll of which no drop can be cut, typed in, is told as an input that cannot be.
func TestARollOfNoDropSpeaksUp(t *testing.T) {
	b, err := made(answered(t, `
purchase: {price: $148k, date: 2026-10-20}
value: {after-repair value: $300k}
time: {renovation: 1 month, marketing: 4 weeks, escrow: 1 month}
house: {year built: 1995}
rooms: {bed: {size: 14' x 12', work: {hang wallpaper: hired}}}
`), Options{Uncached: true})
	require.NoError(t, err)
	typed := false
	for i, c := range b.model.Cells {
		if at := b.places[i]; c.Line.ID() == "drop.roll_long" && at.grid != nil {
			at.grid.rows[at.row-1][at.col-1].value, typed = 6.0, true
		}
	}
	require.True(t, typed)
	path := filepath.Join(t.TempDir(), "roll.xlsx")
	saved(t, path, b)
	all := printed(t, recomputed(t, path)[path], "The deal")
	require.Contains(t, all, cannotBe)
	require.Contains(t, all, "roll long cannot be so")
}
