package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// An option set in the place of a room's size is told where it belongs; set there, it is
// taken.
func TestOptionSetAsSize(t *testing.T) {
	_, found := deal.Read("slip.yaml", []byte(twoOptions), deal.Set{Path: "den", Value: "Gut"})
	require.Len(t, found, 1)
	require.Equal(t, `--set den: "Gut" is an option of the room, and no size`, found[0].Message)
	require.Equal(t, `write   --set 'scope.den=Gut'`, found[0].Hint)
	d, found := deal.Read("slip.yaml", []byte(twoOptions), deal.Set{Path: "scope.den", Value: "Gut"})
	require.False(t, found.HasErrors())
	for _, room := range d.Root.In("room") {
		if room.Label == "den" {
			require.Equal(t, "gut", room.In("option")[0].Label)
		}
	}
	_, found = deal.Read("slip.yaml", []byte(twoOptions), deal.Set{Path: "den", Value: "marble"})
	require.Contains(t, found[0].Hint, "two lengths", "no option of the room")
}
