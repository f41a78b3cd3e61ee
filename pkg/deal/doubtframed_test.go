package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// A wall that is framed wants board on its two faces, which counts on walls may have in them.
func TestAFramedWallIsClosed(t *testing.T) {
	require.NotNil(t, pricebook.Starter().Item("interior wall"))
	const framed, place = "interior wall: {by: own hands, count: 96 sq ft}", "  den: {size: 14' x 20', doors: 1, work: {%s}%s}\n"
	for _, c := range []struct {
		work, without string
		bare          int
	}{
		{framed, "", 1},
		{framed + ", hang wall board: {by: own hands, count: 192 sq ft}", "", 0},
		{framed + ", hang wall board: hired", "", 0}, // the den as it will be
		{framed + ", tile wall: hired", "", 0},
		{framed + ", tile wainscot: hired", "", 1}, // it stands on a wall
		{framed, ", without: [hang wall board]", 0},
		{"interior wall: {quote: $1800, from: Oak Frames, count: 96 sq ft}", "", 1},
		{"interior wall: {quote: $1800, from: Oak Frames, count: 96 sq ft, holds more: yes}", ", without: [hang wall board]", 0},
		{"interior wall: {quote: $1800, from: Oak Frames, count: 96 sq ft, holds more: yes}", "", 0},
		{"paint walls: hired", "", 0},
	} {
		require.Len(t, toldOf(t, "not-put-back", fmt.Sprintf(place, c.work, c.without), ""), c.bare, c.work)
	}
	for work, large := range map[string]int{ // of 544 sq ft of walls and 65 ft of base
		"paint walls: {by: own hands, count: 720 sq ft}":              1,
		framed + ", paint walls: {by: own hands, count: 720 sq ft}":   0,
		framed + ", paint walls: {by: own hands, count: 960 sq ft}":   1,
		framed + ", baseboard: {by: own hands, count: 89 ft}":         0,
		framed + ", baseboard: {by: own hands, count: 108 ft}":        1,
		framed + ", paint ceiling: {by: own hands, count: 400 sq ft}": 1,
	} {
		require.Len(t, toldOf(t, "count-large", fmt.Sprintf(place, work, ""), ""), large, work)
	}
}

// A bath closes the wall with backer board, tile or panels, and may say that it stays bare.
func TestAFramedWallOfABathIsClosed(t *testing.T) {
	require.NotNil(t, pricebook.Starter().Item("wall backer board"))
	require.NotNil(t, pricebook.Starter().Item("tile wall"))
	for work, bare := range map[string]int{
		"toilet: hired": 1,
		"toilet: hired}, without: [hang wall board":         0,
		"toilet: hired}, without: [wall backer board":       0,
		"toilet: hired}, without: [outside wall insulation": 1,
		"wall backer board: hired":                          0,
		"tile shower walls: hired":                          0,
		"tub surround tile: hired":                          0,
		"tub wall panels: hired":                            0,
		"tub: hired":                                        0, // with its tile
		"tub: {quote: $7,400, from: Elm, holds more: yes}, tub wall panels: hired": 0,
		"shower base: {quote: $5,200, from: Elm}":                                  0, // its quote holds its panels
	} {
		shut := "}"
		if strings.Contains(work, "[") {
			shut = "]"
		}
		rooms := "  bath: {size: 8' x 10', doors: 1, fixed: {tub: 5' x 2'6\", shower: 4' x 3', toilet: 1}, work: {interior wall: {by: own hands, count: 32 sq ft}, " + work + shut + "}\n"
		told := slices.DeleteFunc(toldOf(t, "not-put-back", rooms, ""), func(s string) bool { return !strings.Contains(s, "frames a wall") })
		require.Len(t, told, bare, work)
		if strings.Contains(work, "board") {
			require.Empty(t, toldOf(t, "without-unneeded", rooms, ""), work)
		}
	}
}
