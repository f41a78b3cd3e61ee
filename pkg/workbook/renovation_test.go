package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A part that may hide a repair is called by what was seen of it, and follows its input.
func TestRenovationSaysWhatWasSeen(t *testing.T) {
	for state, words := range map[string]string{"not seen": "  not seen: sewer line", "good": "  seen, good: sewer line", "bad": "  seen, bad: sewer line"} {
		text := strings.Replace(twoLoans, "sewer line: not seen", "sewer line: "+state, 1)
		for _, reader := range []Reader{Owner, Lender} {
			b, err := made(answered(t, text), Options{For: reader})
			require.NoError(t, err)
			found := 0
			for _, row := range sheetOf(b, "Renovation").rows {
				for _, c := range row {
					if s, _ := c.value.(string); strings.HasSuffix(s, "seen: sewer line") || strings.HasPrefix(s, "  seen, ") && strings.HasSuffix(s, "sewer line") {
						require.Equal(t, words, s)
						require.Contains(t, c.formula, `="not seen"`)
						found++
					}
				}
			}
			require.Equal(t, 1, found, state)
		}
	}
}
