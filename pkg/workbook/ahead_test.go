package workbook

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A bill that is paid ahead is paid as it falls due once its months are 0, and a loan has no term,
// or no extension, once theirs are: as their words say, and as in a file that does not say them.
func TestMonthsOfNothingAreAsIfUnsaid(t *testing.T) {
	for line, x := range map[string]struct{ path, member, text string }{
		"paid_ahead":       {"harbor-view", "property tax", ", paid ahead: 6 months"},
		"term":             {"harbor-view", "bank loan", "    term: 18 months\n"},
		"extension_months": {"mill-road", "hard money", "    extension: {each: 3 months, fee: 0.75%}\n"},
	} {
		path := "../../scenarios/" + x.path + ".yaml"
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Contains(t, string(text), x.text)
		after := answered(t, strings.Replace(string(text), x.text, "", 1))
		b := bookOf(t, path, Options{Uncached: true})
		b.enter(t, change{member: x.member, line: line}, after)
		to := filepath.Join(t.TempDir(), line+".xlsx")
		saved(t, to, b)
		f := recomputed(t, to)[to]
		require.NotContains(t, printed(t, f, "The deal"), cannotBe)
		if line == "paid_ahead" {
			compareCells(t, line, b, after, f)
		}
	}
}
