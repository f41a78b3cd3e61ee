package deal_test

import (
	"fmt"
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
		{framed, ", without: [hang wall board]", 0},
		{"interior wall: {quote: $1800, from: Oak Frames, count: 96 sq ft}", "", 0},
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
