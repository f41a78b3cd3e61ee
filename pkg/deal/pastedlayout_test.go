package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A pasted table that YAML does not keep as it stands is told as that, however its cells are
// parted; a key that lacks its colon behind a table, and a table that is set in, are not.
func TestAPastedTableIsSetInBelowItsBar(t *testing.T) {
	const bar, indent = "table: |   and indent every line", "indent every line of the table further than   table:"
	for _, c := range []struct{ table, hint string }{
		{"  table: |\n  address  sold on  price\n  1 A St  2026-01-02  $200,000\n", indent},
		{"  table: |\naddress,sold on,price\n1 A St,2026-01-02,200000\n", indent},
		{"  table: |\n\naddress\tsold on\tprice\n1 A St\t2026-01-02\t$200,000\n", indent},
		{"  table: |\n    address  sold on  price\n1 A St  2026-01-02  $200,000\n", indent},
		{"  table:\n    address  sold on  price\n    1 A St  2026-01-02  $200,000\n", bar},
		{"  table:\n    address,sold on,price\n    1 A St,2026-01-02,200000\n", bar},
		{"  table:\n    | address | sold on | price |\n    | 1 A St | 2026-01-02 | $200,000 |\n", bar},
		{"  table:\n  address  sold on  price\n  1 A St  2026-01-02  $200,000\n", bar},
		{"  table: # from the county\naddress  sold on  price\n", bar},
		{"  table: |\n    address  sold on  price\n    1 A St  2026-01-02  $200,000\n  strike\n", "write the key, a colon"},
		{"  table: |\n    address  sold on  price\n    1 A St  2026-01-02  $200,000\n", ""},
		{"  table: |-\n    address  sold on  price\n    1 A St  2026-01-02  $200,000\n", ""},
	} {
		_, found := deal.Read("a.yaml", []byte(unvalued+"comps:\n"+c.table))
		if c.hint == "" {
			require.False(t, found.HasErrors(), "%v", found)
			continue
		}
		require.NotEmpty(t, found, c.table)
		require.Contains(t, found[0].Hint, c.hint, c.table)
	}
}
