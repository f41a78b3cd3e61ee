package workbook

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A bill that is paid ahead is paid as it falls due once its months are 0, as its words say, and
// comes to what it does in a file that does not pay it ahead.
func TestABillIsNotPaidAheadAnyMore(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/harbor-view.yaml")
	require.NoError(t, err)
	const ahead = ", paid ahead: 6 months"
	require.Contains(t, string(text), ahead)
	after := answered(t, strings.Replace(string(text), ahead, "", 1))
	b := bookOf(t, "../../scenarios/harbor-view.yaml", Options{Uncached: true})
	b.enter(t, change{member: "property tax", line: "paid_ahead"}, after)
	path := filepath.Join(t.TempDir(), "ahead.xlsx")
	saved(t, path, b)
	f := recomputed(t, path)[path]
	require.NotContains(t, printed(t, f, "The deal"), cannotBe)
	compareCells(t, "ahead", b, after, f)
}
