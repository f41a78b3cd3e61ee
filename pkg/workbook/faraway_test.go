package workbook

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A day typed as spreadsheets count them is no number of days from the purchase, and a term in days
// is none in months; both are to be looked at again.
func TestDaysInTheWrongCountAreDoubted(t *testing.T) {
	look := itoa(int(unusual))
	says, paths := map[string]map[string]string{}, []string{}
	for name, typed := range map[string]struct {
		deal string
		line string
		is   float64
		says string
	}{
		"date": {"harbor-view", "table.until_day", 46508, look},
		"days": {"harbor-view", "table.until_day", 400, "0"},
		"term": {"juniper-lane", "loan.term", 270, look},
		"year": {"juniper-lane", "loan.term", 18, "0"},
	} {
		b := bookOf(t, "../../scenarios/"+typed.deal+".yaml", Options{Uncached: true})
		path := filepath.Join(t.TempDir(), name+".xlsx")
		place := b.typeIn(t, typed.line, typed.is)
		if strings.HasPrefix(typed.line, "table") {
			require.Contains(t, place, "in days from the purchase")
		}
		saved(t, path, b)
		says[path], paths = map[string]string{place: typed.says}, append(paths, path)
	}
	for path, f := range recomputed(t, paths...) {
		for place, want := range says[path] {
			require.Equal(t, want, flawAt(t, f, place), path)
			require.Equal(t, want == look, strings.Contains(printed(t, f, "The deal"), "LOOK AGAIN"), path)
		}
	}
}

// A day that the file gives tells how many days from the purchase it is, as its cell holds it.
func TestDaysStandBesideTheirDate(t *testing.T) {
	b := bookOf(t, "../../scenarios/harbor-view.yaml", Options{})
	for _, c := range b.model.Cells {
		if c.Line.ID() == "table.until_day" && c.Given != nil {
			require.Regexp(t, `^harbor-view\.yaml:72  2027-01-01 = [0-9]+ days from the purchase$`, b.source(c))
			return
		}
	}
	require.Fail(t, "no such day")
}
