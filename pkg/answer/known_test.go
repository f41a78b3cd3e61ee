package answer

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
)

// What a deal file was read with is the same as if all were worked out afresh, also
// where an input is given in between.
func TestKnownIsAsWorkedOutAfresh(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	for _, path := range files {
		d := scenario(t, path)
		alike(t, path, d)
		c := d.Model.Find(d.Root, "price")
		d.Model.Give(c, model.Value{Number: c.Given.Number.Add(c.Given.Number)})
		alike(t, path, d)
	}
}

func scenario(t *testing.T, path string) *deal.Deal {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	beside := func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(path), name)) }
	d, found := deal.ReadWith(deal.Options{Open: beside}, path, text)
	require.NotNil(t, d, found.Error())
	return d
}

func alike(t *testing.T, path string, d *deal.Deal) {
	t.Helper()
	known, err := exact.Known(d.Known)
	require.NoError(t, err, path)
	afresh, err := exact.Evaluate(d.Model)
	require.NoError(t, err, path)
	require.Equal(t, afresh.Months(), known.Months(), path)
	for _, c := range d.Model.Cells {
		for m := range afresh.Months() + 1 {
			require.True(t, afresh.In(c, m).Equal(known.In(c, m)), "%s: %s, month %d", path, c.Name(), m)
		}
	}
}
