package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The factors of NIST SP 811 and Handbook 44, appendix C, from memory.
func TestExactFactors(t *testing.T) {
	tests := []struct {
		from, to Unit
		want     string
	}{
		{"ft", "m", "0.3048"},
		{"in", "mm", "25.4"},
		{"yd", "m", "0.9144"},
		{"sq ft", "m2", "0.09290304"},
		{"sq yd", "m2", "0.83612736"},
		{"cu yd", "m3", "0.764554857984"},
		{"gal", "cu in", "231"},
		{"gal", "L", "3.785411784"},
		{"lb", "kg", "0.45359237"},
		{"acre", "sq ft", "43560"},

		{"square", "sq ft", "100"}, // common practice, no source
		{"cu yd", "cu ft", "27"},   // these by hand
		{"sq yd", "sq ft", "9"},
		{"sq ft", "sq in", "144"},
		{"m", "cm", "100"},
		{"cu in", "cu ft", "0.0005787037037037037037037037037037037037"}, // 1/1728
		{"day", "day", "1"},
	}
	for _, tt := range tests {
		got, ok := tt.from.In(tt.to)
		assert.True(t, ok)
		assert.Equal(t, tt.want, got.String(), "%s in %s", tt.from, tt.to)
	}
	for _, pair := range [][2]Unit{{"ft", "sq ft"}, {"day", "week"}, {"each", "hour"}, {"ft", "cubit"}, {"cubit", "ft"}} {
		_, ok := pair[0].In(pair[1])
		assert.False(t, ok, pair)
	}
}

// Feet, inches and sixteenths: derived, common practice, no source.
func TestSixteenths(t *testing.T) {
	a, b := mustLength(t, "12 ft 7-5/8 in"), mustLength(t, "9 ft 10-3/16 in")
	assert.Equal(t, sixteenths(2426), a)
	assert.Equal(t, sixteenths(1891), b)
	assert.Equal(t, sixteenths(4317), a.Add(b))
	assert.Equal(t, mustLength(t, "22 ft 5-13/16 in"), a.Add(b))
	assert.InDelta(t, 124.4457, a.Times(b).SquareFeet().InexactFloat64(), 0.0001)
}

// A name means one unit, and every unit is read under the name it is printed with.
func TestUnitNames(t *testing.T) {
	names := 0
	for unit, row := range unitTable {
		names += len(row.names)
		for _, name := range []string{string(unit), row.many} {
			p, err := ParsePer("2 per " + name)
			if unit == "yd" || unit == "m" { // refused, as they could be two
				require.Error(t, err)
				continue
			}
			require.NoError(t, err)
			assert.Equal(t, unit, p.Bottom)
		}
	}
	assert.Len(t, unitsByName, names)
}
