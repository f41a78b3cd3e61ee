package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Two loans of an invented deal: the house is owned for 4 months, the bank's runs for 6.
const dues = `purchase: {price: $150k, closing: {title: $1,000}}
value: {after-repair value: $240k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {lines: [{trade: roof, amount: $20k}]}
loans:
  - {name: bank, price share: 70%, rate: 11%, interest on: balance, term: 6 months}
  - {name: aunt, fixed amount: $10k, rate: 8%, interest on: balance, term: 2 years, amortising: 2 years}
`

// A loan that falls due before the sale, with no extension agreed, is told on both first pages in
// the words of the file's doubt: as the deal is written, and as soon as an input of the sheet makes
// it so; not where an extension is typed in, nor where level payments have paid it off by then. So is
// a holdback that comes in too late.
func TestALoanThatFallsDueBeforeTheSaleIsTold(t *testing.T) {
	const late = "bank: $22,000.00 of the holdback never comes in before the sale. Ask the lender how soon draws are paid; what takes no cash, such as own work, is never drawn."
	drawn := strings.Replace(dues, "interest on: balance, term: 6 months", "interest on: balance, term: 6 months, renovation share: 100%, draws: {lag: 1 month}", 1)
	const early = "bank falls due after 6 months, before the sale (8 months), and no extension is agreed. Ask the lender."
	slow := strings.Replace(dues, "marketing: 1 month", "marketing: 5 months", 1)
	says, paths := map[string]string{}, []string{}
	for _, x := range []struct {
		name, text, member, line string
		value                    float64
		says                     string
	}{
		{"planned", dues, "", "", 0, noneDue}, {"written", slow, "", "", 0, early},
		{"near", dues, "", "marketing", 3.04, strings.Replace(early, "(8 months)", "(6.04 months)", 1)},
		{"near as written", strings.Replace(dues, "marketing: 1 month", "marketing: 3.04 months", 1), "", "", 0, strings.Replace(early, "(8 months)", "(6.04 months)", 1)},
		{"slow", dues, "", "marketing", 5, early}, {"quick", slow, "", "marketing", 3, noneDue},
		{"extended", slow, "bank", "extension_months", 3, noneDue}, {"endless", slow, "bank", "term", 0, noneDue},
		{"short", dues, "aunt", "term", 1, "aunt falls due after 1 month, before the sale (4 months), and no extension is agreed. Ask the lender."},
		{"drawn", drawn, "", "", 0, noneUndrawn}, {"late", strings.Replace(drawn, "lag: 1 month", "lag: 9 months", 1), "", "", 0, late}, {"lagging", drawn, "bank", "lag", 10, late},
		{"paid", strings.Replace(dues, "amortising: 2 years", "amortising: 3 months", 1), "aunt", "term", 3.5, noneDue},
	} {
		for _, whom := range []Reader{Owner, Lender} {
			if whom == Lender && x.name != "written" && x.name != "slow" && x.name != "lagging" { // the formula is the owner's
				continue
			}
			a := answered(t, x.text)
			b, err := made(a, Options{Uncached: true, For: whom})
			require.NoError(t, err)
			if x.line == "" {
				require.Contains(t, texts(sheetOf(b, "The deal")), x.says, x.name)
				told := false
				for _, w := range a.Warnings {
					told = told || strings.HasPrefix(x.says, w.Message)
				}
				require.Equal(t, x.says != noneDue && x.says != noneUndrawn, told, x.name)
			}
			for i, c := range b.model.Cells {
				if at := b.places[i]; c.Member.Path() == x.member && c.Line.Name == x.line {
					require.NotNil(t, at.grid)
					at.grid.rows[at.row-1][at.col-1].value = x.value
				}
			}
			path := filepath.Join(t.TempDir(), x.name+itoa(int(whom))+".xlsx")
			saved(t, path, b)
			paths, says[path] = append(paths, path), x.says
		}
	}
	for path, f := range recomputed(t, paths...) {
		require.Contains(t, strings.Split(printed(t, f, "The deal"), "\n"), says[path], path)
	}
}
