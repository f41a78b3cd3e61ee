package diag

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFold(t *testing.T) {
	require.Equal(t, "a: short   and wide\n", Fold("a: ", "   ", "short   and wide"))
	long := strings.Repeat("x", 62)
	require.Equal(t, "a: "+long+"\n   \"a name of two\", more\n", Fold("a: ", "   ", long+` "a name of two", more`))
	require.Equal(t, "a: "+long+"\n   to be typed now\n", Fold("a: ", "   ", long+"   to be typed now"))
	require.Equal(t, "a:\n", Fold("a: ", "   ", ""))
}

// Folding loses no word and nothing is wider than a page.
func TestFoldKeepsTheText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOf(rapid.StringMatching(`[a-zü,]{1,12}`)).Draw(t, "words")
		folded := Fold("lead: ", "      ", strings.Join(words, " "))
		require.Equal(t, append([]string{"lead:"}, words...), append([]string{}, strings.Fields(folded)...))
		for _, line := range strings.Split(folded, "\n") {
			require.LessOrEqual(t, width(line), columns)
		}
	})
}
