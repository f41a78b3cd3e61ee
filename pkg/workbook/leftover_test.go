package workbook

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// A house bought wholly on credit that is rented out until the sale leaves money over. By
// hand: 6 x (2,600 - 100 - 200,000 x 8% / 12) = 7,000.02, which is a use and no source below
// zero, for the owner and for a lender; the engine works the page out to the same.
func TestWhatIsLeftOverIsAUse(t *testing.T) {
	a := answered(t, `
purchase: {price: $200k}
value: {after-repair value: $230k}
time: {marketing: 5 months, escrow: 1 month}
holding: {rent: {amount: $2600/month, credit: yes}, tax: $100/month}
loans: [{name: bank, price share: 100%, rate: 8%, interest on: balance, term: 12 months}]
`)
	dir, books := t.TempDir(), map[string]*book{}
	var paths []string
	for name, x := range map[string]struct {
		how   Options
		words string
	}{
		"owner":  {Options{Uncached: true}, "left over, paid out to you"},
		"lender": {Options{For: Lender, Uncached: true}, "left over, paid out to the borrower"},
	} {
		b, err := made(a, x.how)
		require.NoError(t, err)
		of := labelled(sheetOf(b, "Sources and uses"))
		require.Equal(t, 7000.02, of[x.words], name)
		require.Equal(t, 215600.0, of["total"], name)
		for label, figure := range of {
			if n, is := figure.(float64); is {
				require.GreaterOrEqual(t, n, 0.0, "%s: %s", name, label)
			}
		}
		path := filepath.Join(dir, name+".xlsx")
		saved(t, path, b)
		books[path] = b
		paths = append(paths, path)
	}
	for path, f := range recomputed(t, paths...) {
		compare(t, filepath.Base(path), books[path], f)
	}
}
