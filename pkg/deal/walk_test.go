package deal

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// A walk around the walls of a room meets none of them on the way.
func TestWalksThatCross(t *testing.T) {
	for walk, want := range map[string]string{
		"e12 n10 w12 s10":                 "",
		"e5 e7 n10 w12 s10":               "",
		"e12 n10 w5 s1 w2 n1 w5 s10":      "", // a chimney
		"e6 n4 e6 n6 w12 s10":             "", // an L
		"n10 w12 s10 e12":                 "",
		"e12 n10 w5 s12 w2 n12 w5 s10":    "e12 s12",
		"e12 n10 w12 s10 e12 n10 w12 s10": "e12 s10",
		"n10 e12 s5 w20 s5 e8":            "n10 w20",
		"e12 e12 w24":                     "e12 w24",
		"e12 w12":                         "e12 w12",
		"e4 n4 e4 n4 w4 s4 w4 s4":         "n4 s4", // two rooms that touch at a corner
		"e12 n10 w6 s4 n4 w6 s10":         "w6 n4", // a wall without a thickness
	} {
		var walls []wall
		var east, north decimal.Decimal
		for _, w := range strings.Fields(walk) {
			x := decimal.RequireFromString(w[1:])
			from := corner{east, north}
			switch w[0] {
			case 'e':
				east = east.Add(x)
			case 'w':
				east = east.Sub(x)
			case 'n':
				north = north.Add(x)
			case 's':
				north = north.Sub(x)
			}
			walls = append(walls, wall{from, corner{east, north}, &node{span: span{text: w}}})
		}
		before, at := crossing(walls)
		got := ""
		if at != nil {
			got = before.text + " " + at.text
		}
		require.Equal(t, want, got, walk)
	}
}
