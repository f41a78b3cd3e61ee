package why_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/why"
)

var update = flag.Bool("update", false, "write testdata/why anew")

// house is the first worked deal with places for some of what it gives, as if
// read from a file.
func house(t *testing.T) *model.Member {
	d := worked(t)[0].Deal.Member()
	loan := d.In("loan")[0]
	for _, g := range []struct {
		m    *model.Member
		line string
		text string
		at   int
	}{
		{d, "price", "$212,500", 4}, {d, "after_repair_value", "$359,000", 5}, {d, "expected_discount", "2%", 6},
		{d, "contingency_share", "12%", 18}, {loan, "rate", "11.25%", 31}, {loan, "price_share", "85%", 28},
		{loan, "renovation_share", "90%", 29}, {d.In("cost")[0], "lump", "$68,431.27", 21},
	} {
		v := g.m.Given.Of(g.line)
		v.Text, v.Pos = g.text, diag.Pos{File: "house.yaml", Line: g.at, Col: 12}
		g.m.Give(g.line, v)
	}
	return d
}

// The figures in these files are proved elsewhere; the files are for the shape.
func TestPrintedTrees(t *testing.T) {
	m, v := evaluate(t, house(t))
	loan := m.Root.In("loan")[0]
	for _, g := range []struct {
		file  string
		of    *model.Member
		line  string
		month int
		depth int
	}{
		{"profit", m.Root, "profit", 0, 2},
		{"cash_needed", m.Root, "cash_needed", 0, 2},
		{"contingency", m.Root, "contingency", 0, 3},
		{"sale_price", m.Root, "sale_price", 0, 2},
		{"price", m.Root, "price", 0, 2},
		{"spent_share", m.Root, "spent_share", 3, 2},
		{"annualised_roi", m.Root, "annualised_roi", 0, 1},
		{"loan-interest_charged", loan, "interest_charged", 3, 1},
		{"loan-loan_at_closing", loan, "loan_at_closing", 0, 1},
		{"loan-draw_paid", loan, "draw_paid", 3, 2},
		{"transfer-tax", m.Root.In("selling_fee")[2], "by_table", 0, 3},
	} {
		t.Run(g.file, func(t *testing.T) {
			var b bytes.Buffer
			x := why.Explain(m, v, m.Find(g.of, g.line), g.month)
			require.NoError(t, x.Write(&b, why.Options{Depth: g.depth}))
			path := filepath.Join("..", "..", "testdata", "why", g.file+".txt")
			if *update {
				require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
				require.NoError(t, os.WriteFile(path, b.Bytes(), 0o644))
			}
			want, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, string(want), b.String())
		})
	}
}
