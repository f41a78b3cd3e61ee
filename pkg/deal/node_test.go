package deal

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A key that is taken for plain is one that evening out would not change.
func TestPlainKeys(t *testing.T) {
	letter := rapid.SampledFrom([]rune("abzAZ09 -_.,'’\t\u00a0\u2011\x7féÉ/()"))
	word := rapid.OneOf(rapid.SampledFrom([]string{"labor", "labour", "amortizing", "own labor", "collaboration"}), rapid.StringOf(letter))
	rapid.Check(t, func(t *rapid.T) {
		key := word.Draw(t, "key") + rapid.SampledFrom([]string{"", " "}).Draw(t, "space") + word.Draw(t, "more")
		require.Equal(t, evened(key), plainKey(key))
	})
	require.True(t, isPlain("paint walls"))
	require.Equal(t, "own labour", plainKey(" Own_labor "))
}
