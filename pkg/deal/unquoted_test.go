package deal

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What spares reading the file once more is never less than what that would find.
func TestHeldAtMost(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	asked := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, factor := range []string{"", "local prices: {labour factor: 180%}\n"} {
			if factor != "" && strings.Contains(string(text), "local prices:") {
				continue
			}
			open := func(name string) ([]byte, error) { return os.ReadFile("../../scenarios/" + name) }
			d, found := ReadWith(Options{Open: open}, file, []byte(string(text)+factor))
			require.False(t, found.HasErrors(), "%s: %v", file, found)
			r := d.reader
			for _, w := range r.chosenWorks() {
				labour, known := r.worked(w.member, "computed_labour")
				if !w.quotedAll() || !known || len(w.holds) == 0 || r.good(w.scope.path+"covers") != nil {
					continue
				}
				if most, known := r.heldAtMost(w, labour); known {
					held, _ := r.heldByQuote(w)
					require.True(t, most.GreaterThanOrEqual(held), "%s, %s: %s is less than %s", file, w.label, most, held)
					asked++
				}
			}
		}
	}
	require.Greater(t, asked, 5)
}
