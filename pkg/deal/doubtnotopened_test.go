package deal_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// Board for open studs wants the old walls off first, unless something says that they are.
func TestWallsAreOpenedBeforeBoardGoesOn(t *testing.T) {
	require.NotNil(t, pricebook.Starter().Item("hang wall board"))
	const room = "  %s: {size: 14' x 20', doors: 1, work: {%s}%s}\n"
	for _, c := range []struct {
		name, work, without, more string
		told                      int
	}{
		{"den", "hang wall board: hired", "", "", 1},
		{"den", "hang wall board: hired, strip wall plaster: own hands", "", "", 0},
		{"den", "hang wall board: hired, strip wall board: {quote: $700, from: Oak Frames}", "", "", 0},
		{"den", "hang wall board: hired, interior wall: {by: hired, count: 96 sq ft}", "", "", 0},
		{"den", "hang wall board: {by: hired, count: 192 sq ft}", "", "", 0},
		{"den", "hang wall board: {quote: $1900, from: Oak Frames}", "", "", 1},
		{"den", "hang wall board: {quote: $1900, from: Oak Frames, holds more: yes}", "", "", 0},
		{"den", "hang wall board: hired", ", without: [strip wall board]", "", 0},
		{"den", "hang wall board: hired", ", without: [strip wall plaster]", "", 0},
		{"den", "overlay wall board: hired", "", "", 0},
		{"den", "hang wall board: hired", "", "renovation: {lines: [{trade: demolition, work: gut to the studs, amount: $4,800}]}\n", 0},
		{"garage", "hang wall board: hired", "", "", 0}, {"unfinished attic", "hang wall board: hired", "", "", 0}, {"basement", "hang wall board: hired", "", "", 0},
	} {
		for code, want := range map[string]int{"not-opened": c.told, "without-unneeded": 0} {
			require.Len(t, toldOf(t, code, fmt.Sprintf(room, c.name, c.work, c.without), c.more), want, "%s: %s: %s%s", code, c.name, c.work, c.without)
		}
	}
}
