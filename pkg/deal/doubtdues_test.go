package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Dues and upkeep of a nought too many are told; those of a dear or a very cheap flat, and other charges, are not.
// The houses are invented.
func TestDuesOfANoughtTooMany(t *testing.T) {
	for _, c := range []struct {
		price, holding string
		want           int
	}{
		{"$198k", "HOA dues: $2850/month", 1},
		{"$198k", "HOA dues: $285/month", 0},
		{"$198k", "association: $34,200/year", 1},
		{"$60k", "condo dues: $950/month", 0},
		{"$2,400k", "condo dues: $6,500/month", 0},
		{"$198k", "yard: $800/month", 1},
		{"$198k", "yard: $80/month", 0},
		{"$1,900k", "lawn and snow: $1,200/month", 0},
		{"$198k", "interest of my brother: $2,600/month", 0},
		{"$198k", "storage: $900/month", 0},
	} {
		_, found := deal.Read("a.yaml", []byte("purchase: {price: "+c.price+"}\nvalue: {after-repair value: "+c.price+"}\ntime: {marketing: 1 month}\nholding: {"+c.holding+"}\n"))
		require.False(t, found.HasErrors(), "%v", found)
		n := 0
		for _, d := range found {
			if d.Code == "charge-high" {
				n++
			}
		}
		require.Equal(t, c.want, n, "%s: %s", c.price, c.holding)
	}
}
