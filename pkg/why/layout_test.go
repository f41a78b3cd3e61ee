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

// However deep a part stands and however long its words are, a page keeps its width,
// and no word is lost.
func TestRowsAndParagraphsKeepTheWidthAtAnyDepth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := layout{width: 80}
		words := rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,9}`)
		indent := rapid.IntRange(0, 400).Draw(t, "indent")
		r := row{
			sign: rapid.SampledFrom([]string{"", "+", "-"}).Draw(t, "sign"), label: words.Draw(t, "label"),
			value: rapid.StringMatching(`\$[0-9]{1,12}\.[0-9]{2}`).Draw(t, "value"), note: words.Draw(t, "note"),
		}
		said := words.Draw(t, "text")
		l.put(indent, rapid.IntRange(1, widest).Draw(t, "label column"), rapid.IntRange(len(r.value), 17).Draw(t, "value column"), r)
		l.paragraph(indent, rapid.IntRange(0, 4).Draw(t, "more"), plain, said)
		for _, line := range strings.Split(l.String(), "\n") {
			require.LessOrEqual(t, runes(line), 80, line)
		}
		squeezed := func(s string) string { return strings.Join(strings.Fields(s), "") }
		require.Contains(t, squeezed(l.String()), squeezed(said))
	})
}
