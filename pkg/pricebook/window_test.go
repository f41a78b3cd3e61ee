package pricebook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What puts a window in is told from other work on doors and windows by its name.
func TestWhatPutsAWindowIn(t *testing.T) {
	for name, want := range map[string]bool{
		"replacement window": true, "new casement window": true, "basement window": true, "egress window": true,
		"locks re-keyed": false, "doors eased": false, "window screens": false, "window cleaning": false, "old window hauled away": false, "outside door": false,
	} {
		require.Equal(t, want, Starter().Item(name).IsWindow(), name)
	}
}
