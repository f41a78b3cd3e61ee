package pricebook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestAheadReadsWhatATextNamesWithWhatItBringsAndTakes(t *testing.T) {
	b := index()
	b.Ahead("hall bath:\n  work: [Tile  floor]\n")
	require.NotNil(t, b.items["tile floor"].item)
	require.NotNil(t, b.products[b.items["tile floor"].item.Uses[0].Product].product)
	require.NotNil(t, b.items[b.items["tile floor"].item.Brings[0].Item].item)
	require.Nil(t, b.items["flat roof"].item, "the text does not name it")
}
