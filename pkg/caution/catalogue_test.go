package caution_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/caution"
)

func TestTheCatalogueHoldsWhatForGives(t *testing.T) {
	titles := map[string]string{}
	for _, c := range caution.Catalogue() {
		require.NotContains(t, titles, c.ID, "twice")
		require.NotEmpty(t, c.Source, c.ID)
		titles[c.ID] = c.Title
	}
	for _, c := range caution.For(caution.House{}) {
		require.Equal(t, c.Title, titles[c.ID], c.ID)
	}
	require.Contains(t, caution.Customary(), "built before 1950: 20%")
}
