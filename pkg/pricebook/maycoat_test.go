package pricebook_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

func TestWhatMayBeDoneInCoats(t *testing.T) {
	b := pricebook.Starter()
	for name, may := range map[string]bool{"paint walls": true, "coat wood floor": true, "deck stain": true, "stain wood floor": true, "slab moisture barrier": true, "kitchen cabinets": false, "tile floor": false, "carpet": false, "vanity": false} {
		require.Equal(t, may, b.Item(name).MayCoat(), name)
	}
}
