package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A bill that is charged once is told, until its name says that it is; what is truly paid once is let stand.
func TestABillPaidOnce(t *testing.T) {
	for charge, want := range map[string]int{
		"utilities: $310": 1, "electric: $120": 1, "gas: $60": 1, "water: 0.2%": 1, "builder's risk: $1,900": 1, "HOA dues: $250": 1, "yard: $88": 1, "mowing: $300": 1, "storage: $120": 1, "interest of my brother: $2,000": 1,
		"septic pumping: $450": 0, "oil fill: $900": 0, "heating oil: $900": 0, "vacant property registration: $300": 0, "locksmith: $200": 0, "special assessment: $2,000": 0, "water turn-on: $90": 0, "yard clean-up: $600": 0,
		"utilities once: $310": 0, "mowing, once: $300": 0, "county charge once: 0.1%": 0,
	} {
		name, costs, _ := strings.Cut(strings.ReplaceAll(charge, "'", "’"), ": ")
		require.Len(t, toldOf(t, "holding-once", smallDen, "holding: {'"+name+"': "+costs+"}\n"), want, charge)
	}
}
