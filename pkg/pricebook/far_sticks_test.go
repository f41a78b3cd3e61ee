package pricebook

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// One length of which a point has slipped is told, though all lengths together are near.
func TestOneLengthFarFromTheOthers(t *testing.T) {
	const name = "primed baseboard 3-1/4 in"
	for price, far := range map[string]bool{"0": true, "0.84": true, "8.40": false, "12": false, "84": true} {
		p := *Starter().Product(name)
		p.Sticks = append([]Stick(nil), p.Sticks...)
		p.Sticks[0].Price = decimal.RequireFromString(price)
		require.Equal(t, far, p.Far() != "", price)
		require.NotEmpty(t, p.FarHint())
	}
	own := Product{Name: "batten of my own", Sticks: []Stick{{Length: Starter().Product(name).Sticks[0].Length}}}
	require.Empty(t, own.Far())
	require.Contains(t, own.FarHint(), "write what it costs")
}
