package comps

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Where blanks part a table, a cell left out is told unless the others stand below their heads: then
// their place says which it is.
func TestACellLeftOutBetweenBlanks(t *testing.T) {
	for _, c := range []struct {
		name, table string
		want        []string
	}{
		{"two blanks everywhere", "address  sold on  sale price  concessions  sq ft\n17 Plum St  2026-07-10  $238,700  $2,000  1,210\n31 Alder Ln  2026-07-14  $219,300  1,190\n",
			[]string{`31 Alder Ln: the row has 4 cells, and the first row names 5 columns; "1,190" is taken for concessions, and sq ft as empty`}},
		{"the price under another head", "address  sold on  price  concessions  sq ft\n17 Plum St  2026-07-10  $238,700  $2,000  1,210\n31 Alder Ln  2026-07-14  $219,300  1,190\n",
			[]string{`31 Alder Ln is left out: price: nothing is given: the row has 4 cells, and the first row names 5 columns; "$219,300" is taken for concessions, and price as empty`}},
		{"below their heads", "address      sold on     price     concessions  sq ft\n17 Plum St   2026-07-10  $238,700  $2,000       1,210\n31 Alder Ln  2026-07-14  $219,300               1,190\n3 Oak Ave    2026-07-14  $219,300  $1,000\n", nil},
		{"to the right", "    address     sold on     price  concessions  sq ft\n 17 Plum St  2026-07-10  $238,700       $2,000  1,210\n31 Alder Ln  2026-07-14  $219,300               1,190\n", nil},
		{"to either side", "address      sold on     price     concessions         sq ft\n17 Plum St   2026-07-10  $238,700            0         1,210\n31 Alder Ln  2026-07-14  $219,300                      1,190\n", nil},
		{"one row out of line", "address      sold on     price     concessions  sq ft\n17 Plum St   2026-07-10  $238,700  $2,000       1,210\n3 Oak Ave    2026-07-14  $219,300               1,190\n31 Alder Ln  2026-07-14  $219,300  1,190\n4 Fir Rd, corner  2026-07-14  $219,300  1,190\n",
			[]string{`4 Fir Rd, corner: the row has 4 cells, and the first row names 5 columns; "1,190" is taken for concessions, and sq ft as empty`}},
		{"a short one in line of others out of it", "id  sold on  price  lot  sq ft\n17 Plum  2026-07-10  $238,700  6,000  1,210\n31  2026-07  $2193  1190\n", nil},
	} {
		_, found := Read(strings.NewReader(c.table), "a.txt", Options{})
		var got []string
		for _, d := range found {
			if d.Code == "few-cells" || d.Code == "no-price" {
				got = append(got, d.Message)
			}
		}
		require.Equal(t, c.want, got, "%s: %v", c.name, found)
	}
}
