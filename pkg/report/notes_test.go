package report

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/diag"
)

// A page that tells only some doubts tells those about the value.
func TestDoubtsAboutTheValueComeFirst(t *testing.T) {
	all := diag.List{{Code: "insurance-missing"}, {Code: "targets-missing"}, {Code: "value-outside-comps"}}
	got := weightiest(all)
	require.Equal(t, []string{"value-outside-comps", "insurance-missing", "targets-missing"}, []string{got[0].Code, got[1].Code, got[2].Code})
	require.Equal(t, "insurance-missing", all[0].Code, "the list itself stays as it was")
}
