package comps

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A status in an agent's short hand sets a sale aside as one in full does, one that says that it
// closed does not, and one that says neither is told and counts.
func TestStatusOfASale(t *testing.T) {
	for status, want := range map[string]string{
		"ACT": "offered", "Active": "offered", "PND": "offered", "pend": "offered", "U/C": "offered", "CTG": "offered", "Exp": "offered", "WTH": "offered", "Coming Soon": "offered",
		"Back on Market": "offered", "Price Change": "offered", "Off Market": "offered", "Temp Off Market": "offered", "Accepted offer": "offered", "Option pending": "offered", "Available": "offered",
		"Delisted": "offered", "Leased": "offered", "Not sold": "offered", "Active Under Contract": "offered", "Pending": "offered", "BOM": "offered",
		"Sold": "", "S": "", "Closed": "", "CLSD": "", "Sold - conventional": "", "Settled": "", "Recorded": "", "Qualified": "", "Valid": "",
		"P": "told", "X": "told", "A": "told", "17": "told",
	} {
		l, found := read(t, "address,status,date,price\n1 Elm St,"+status+",2026-03-01,250000\n2 Elm St,Sold,2026-03-02,252000\n", Options{})
		got := ""
		for _, d := range found {
			switch {
			case d.Code == "doubtful-cell" && strings.Contains(d.Message, "counts as sold"):
				got += "told"
			case d.Code == "doubtful-sale" && strings.Contains(d.Message, "offered, not sold"):
				got += "offered"
			default:
				got += d.Message
			}
		}
		require.Equal(t, want, got, status)
		require.Equal(t, want == "offered", l.Sale(0).Flags.Has(NotSold), status)
	}
}
