package workbook

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
)

// A change is an input changed in the workbook, and the same for the program.
type change struct {
	member, line string // the input, by the member's path
	set          deal.Set
}

// Changes of the scenarios: what a lender or the owner would try first.
var changes = map[string][]change{
	"juniper-lane": {
		{"", "price", deal.Set{Path: "purchase.price", Value: "$231,400"}},
		{"", "after_repair_value", deal.Set{Path: "value.after-repair value", Value: "$362,750"}},
		{"", "renovation", deal.Set{Path: "time.renovation", Value: "4 months"}},
		{"", "marketing", deal.Set{Path: "time.marketing", Value: "5 months"}},
		{"first loan", "rate", deal.Set{Path: "loans.1.rate", Value: "12.375%"}},
		{"first loan", "price_share", deal.Set{Path: "loans.1.price share", Value: "80%"}},
	},
	"walnut-row": {
		{"", "price", deal.Set{Path: "purchase.price", Value: "$199,950"}},
		{"", "marketing", deal.Set{Path: "time.marketing", Value: "4 months"}},
		{"basement, floor", "length", deal.Set{Path: "basement.size", Value: `29' 5" x 24'`}},
		{"recording", "fixed", deal.Set{Path: "closing.recording", Value: "$410"}},
	},
}

// Changed one by one and all together, the workbook comes to what the program does.
func TestChangedInputsRecomputed(t *testing.T) {
	all := newBatch(t)
	afters := map[string]*answer.Answer{}
	for name, list := range changes {
		path := filepath.Join("../../scenarios", name+".yaml")
		groups := [][]change{list}
		for _, c := range list {
			groups = append(groups, []change{c})
		}
		for _, group := range groups {
			b, err := made(answerOf(t, path), Options{Uncached: true})
			require.NoError(t, err)
			var sets []deal.Set
			for _, c := range group {
				sets = append(sets, c.set)
			}
			after := answerOf(t, path, sets...)
			require.Len(t, after.Model.Cells, len(b.model.Cells))
			for _, c := range group {
				b.enter(t, c, after)
			}
			all.add(t, name, b)
			afters[all.paths[len(all.paths)-1]] = after
		}
	}
	for path, f := range recomputed(t, all.paths...) {
		compareCells(t, filepath.Base(path), all.books[path], afters[path], f)
	}
}

// enter types an input over in the workbook.
func (b *book) enter(t *testing.T, x change, after *answer.Answer) {
	for i, c := range b.model.Cells {
		if c.Member.Path() == x.member && c.Line.Name == x.line {
			at := b.places[i]
			require.NotNil(t, at.grid, x)
			at.grid.rows[at.row-1][at.col-1].value = near(after.Values.Of(after.Model.Cells[i]))
			return
		}
	}
	require.Fail(t, "no such input", "%v", x)
}

// compareCells compares what the workbook comes to with another answer, cell by cell of
// the model.
func compareCells(t *testing.T, name string, b *book, after *answer.Answer, f *excelize.File) {
	moved := 0
	for i, c := range b.model.Cells {
		at := b.places[i]
		if at.grid == nil {
			continue
		}
		last := 0
		if c.Line.Monthly {
			last = b.last
		}
		for m := 0; m <= last; m++ {
			if at.grid.rows[at.row-1][at.col+m-1].formula == "" {
				continue
			}
			got, err := f.GetCellValue(at.grid.name, address(at.row, at.col+m, false, false))
			require.NoError(t, err)
			want := near(after.Values.In(after.Model.Cells[i], m))
			if want != near(b.answer.Values.In(c, m)) {
				moved++
			}
			require.True(t, same(want, got), "%s, %s, month %d: %s, not %v", name, c.Name(), m, got, want)
		}
	}
	require.Greater(t, moved, 20, name)
}
