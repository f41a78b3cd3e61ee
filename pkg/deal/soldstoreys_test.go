package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Sales may say a style in place of how many storeys they have: it is named, and a house that says the
// one is not compared with sales that say the other.
func TestStoreysAndStylesAreNotCompared(t *testing.T) {
	const style, many = "and the sales their style (ranch, colonial) and not how many storeys they have, so that is not compared", "and the sales how many storeys they have, so that is not compared"
	for _, c := range []struct{ house, sales, says, hint string }{
		{"baths: 2", "Ranch|Colonial|Ranch", "the sales say storeys or style (ranch, colonial), the house does not, so that is not compared", "add under house what it will be when the work is done, e.g.   storeys: ranch"},
		{"baths: 2", "1|2 story|1.5", "the sales say storeys, the house does not", "e.g.   storeys: 1.5"},
		{"baths: 2", "Split: low|Split: low|1", "the sales say storeys or style (split: low), the house", `e.g.   storeys: "split: low"`},
		{"storeys: 1.5", "Ranch|Colonial|Ranch", `the house says "storeys: 1.5", ` + style, "write under house its style in a word that they use, e.g.   storeys: ranch"},
		{"levels: 2", "Ranch|Colonial|Ranch", `the house says "levels: 2", ` + style, "storeys: ranch"},
		{"storeys: Ranch", "Ranch|Colonial|Ranch", "", ""},
		{"storeys: Tudor", "Ranch|Colonial|Ranch", "", ""},
		{"storeys: 1", "Ranch|Colonial|1 story", "", ""}, // one can be compared
		{"storeys: 1", "Ranch||", "", ""},
		{"storeys: 1.5", "1|2|2 stories", "", ""},
		{"storeys: Ranch", "1|2|2 stories", `the house says "storeys: Ranch", ` + many, "write how many it has, e.g.   storeys: 1.5"},
		{"storeys: Ranch", "1|2|Ranch", "", ""},
		{"storeys: 15", "1|2|1.5", `"15" is hardly how many storeys a house has`, "write how many there are, e.g. 1, 1.5 or 2"},
		{"storeys: 0", "1|2|1.5", `"0" is hardly how many storeys a house has`, ""},
		{"storeys: 15", "22|8|8", "", ""}, // flats in towers
		{"storeys: 4", "1|2|1.5", "", ""},
	} {
		text := unvalued + "house: {living area: 1480 sq ft, " + c.house + "}\ncomps:\n  table: |\n    address|sold on|price|sq ft|style\n"
		for i, s := range strings.Split(c.sales, "|") {
			text += fmt.Sprintf("    %d Elm St|2025-11-14|341000|1480|%s\n", i+1, s)
		}
		d, found := deal.Read("a.yaml", []byte(text))
		require.NotNil(t, d, "%v: %v", c, found)
		toldOnce(t, found, func(f diag.Diag) bool { return strings.Contains(f.Message, "storeys") }, c.says, c.hint, c)
	}
}
