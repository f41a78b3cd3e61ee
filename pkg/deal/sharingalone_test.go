package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A joint is of two rectangles of a room, and a ceiling of a room.
func TestWhatStandsAloneSharesNothing(t *testing.T) {
	for room, want := range map[string]bool{
		"size: 12' x 11' sharing 4'":                                  true,
		"size: 18' x 13' sharing 25'":                                 true,
		"size: [12' x 11']":                                           false,
		"size: [12' x 11', 4' x 6' sharing 4']":                       false,
		"size: 12' x 11' ceiling 9 ft":                                false,
		"size: 12' x 11', closets: 5' x 2' sharing 5'":                true,
		"size: 12' x 11', fixed: {tub: 5' x 2'6\" sharing 5'}":        true,
		"size: 12' x 11', fixed: {tub: 5' x 2'6\" ceiling 8 ft}":      true,
		"size: 12' x 11', fixed: {base cabinets: 6' x 2' sharing 2'}": true,
		"size: 12' x 11', fixed: {base cabinets: 6' x 2', sink: 1}":   false,
	} {
		_, found := deal.Read("a.yaml", []byte(walked+"rooms: {den: {"+room+", work: {paint walls: hired}}}\n"))
		require.Equal(t, want, found.HasErrors(), "%s: %v", room, found.Errors())
		for _, d := range found.Errors() {
			require.Equal(t, "bad-size", d.Code, room)
			require.Positive(t, d.Pos.Line, room)
		}
	}
	_, found := deal.Read("a.yaml", []byte(walked+"outside: {roof: [{size: 38' x 26' sharing 20', pitch: 6/12}], work: {shingle roof: hired}}\n"))
	require.True(t, found.HasErrors())
	require.Equal(t, "bad-size", found.Errors()[0].Code)
}
