package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// What people write for something else is told with the form that is read.
func TestHintsNameTheFormThatIsRead(t *testing.T) {
	for _, c := range []struct{ old, add, code, hint string }{
		{"", "\n    height: 8'", "unknown-key", `did you mean "ceiling"?`},
		{"", "\n    length: 8'", "unknown-key", "size: 8' x 5'"},
		{"", "\n    width: 5'", "unknown-key", "size: 8' x 5'"},
		{"", "\n    dimensions: 8' x 5'", "unknown-key", "size: 8' x 5'"},
	} {
		old := c.old
		if old == "" {
			old = denSize
			c.add = denSize + c.add
		}
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, old, c.add, 1)))
		require.Contains(t, codesIn(found), c.code, c.add)
		require.Contains(t, found[slices.Index(codesIn(found), c.code)].Hint, c.hint, c.add)
	}
}
