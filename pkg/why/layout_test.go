package why

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestWrapping(t *testing.T) {
	for _, c := range []struct {
		text           string
		first, further int
		want           []string
	}{
		{"", 10, 10, []string{""}},
		{"one two three", 7, 7, []string{"one two", "three"}},
		{"one two three", 3, 9, []string{"one", "two three"}},
		{"a.yaml:1  price: 5", 80, 80, []string{"a.yaml:1  price: 5"}},
		{"a.yaml:1  price: 5", 9, 9, []string{"a.yaml:1", "price: 5"}},
		{"abcdefgh ij", 3, 4, []string{"abc", "defg", "h ij"}},
	} {
		require.Equal(t, c.want, wrap(c.text, c.first, c.further), c.text)
	}
}

func TestWrappingLosesNoWordAndKeepsTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z$é ]{0,60}`).Draw(t, "text")
		width := rapid.IntRange(1, 20).Draw(t, "width")
		lines := wrap(text, width, width)
		for _, l := range lines {
			require.LessOrEqual(t, runes(l), width)
		}
		squeezed := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		require.Equal(t, squeezed(text), squeezed(strings.Join(lines, "")))
	})
}
