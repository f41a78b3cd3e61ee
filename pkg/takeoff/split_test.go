package takeoff_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/takeoff"
)

// Worked out by hand, in inches; common practice, no source.
func TestSplit(t *testing.T) {
	for _, tt := range []struct {
		length, longest int64
		want            []int64
	}{
		{100, 192, []int64{100}},
		{7, 192, []int64{7}}, // nothing to take from
		{192, 192, []int64{192}},
		{384, 192, []int64{192, 192}},
		{193, 192, []int64{177, 16}},
		{207, 192, []int64{191, 16}},
		{208, 192, []int64{192, 16}},
		{300, 192, []int64{192, 108}},
		{390, 192, []int64{192, 182, 16}},
		{32, 31, []int64{16, 16}},
		{31, 30, []int64{30, 1}}, // cannot be helped: together under 32
		{45, 20, []int64{20, 20, 5}},
	} {
		got, err := takeoff.Split(tt.length*takeoff.PerInch, tt.longest*takeoff.PerInch)
		require.NoError(t, err)
		for k := range tt.want {
			tt.want[k] *= takeoff.PerInch
		}
		require.Equal(t, tt.want, got, "%d by %d", tt.length, tt.longest)
	}
}

func TestSplitRefuses(t *testing.T) {
	for _, tt := range [][2]int64{{0, 5}, {-1, 5}, {5, 0}, {5, -1}, {1 << 62, 1}, {5001, 1}} {
		_, err := takeoff.Split(tt[0], tt[1])
		require.ErrorIs(t, err, takeoff.ErrSplit, "%v", tt)
	}
}

func TestSplitAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		longest := rapid.Int64Range(1, 300*takeoff.PerInch).Draw(t, "longest")
		length := rapid.Int64Range(1, 20*longest).Draw(t, "length")
		got, err := takeoff.Split(length, longest)
		require.NoError(t, err)
		require.Len(t, got, int((length+longest-1)/longest), "no more joints than needed")
		var sum, least int64 = 0, length
		for _, l := range got {
			require.Positive(t, l)
			require.LessOrEqual(t, l, longest)
			sum, least = sum+l, min(least, l)
		}
		require.Equal(t, length, sum)
		if length > longest && longest >= 32*takeoff.PerInch {
			require.GreaterOrEqual(t, least, int64(16*takeoff.PerInch))
		}
	})
}
