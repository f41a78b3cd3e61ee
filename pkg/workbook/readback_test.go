package workbook

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
)

// bookOf is the workbook of a deal file.
func bookOf(t testing.TB, path string, how Options) *book {
	t.Helper()
	b, err := made(answerOf(t, path), how)
	require.NoError(t, err)
	return b
}

func answerOf(t testing.TB, path string, sets ...deal.Set) *answer.Answer {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	d, found := deal.Read(filepath.Base(path), text, sets...)
	require.NotNil(t, d, found)
	a, err := answer.Of(d, found)
	require.NoError(t, err)
	return a
}

// besides are the deals with each option taken for all rooms.
func besides(t testing.TB, path string) (out []answer.Column) {
	for _, name := range answerOf(t, path).Deal.Options {
		out = append(out, answer.Column{Name: name, Answer: answerOf(t, path, deal.Set{Path: "scope", Value: name})})
	}
	return out
}

// reopened is a workbook as it is in the file.
func reopened(t *testing.T, b *book) (*excelize.File, []byte) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, b.stream())
	_, err := b.file.WriteTo(&out)
	require.NoError(t, err)
	f, err := excelize.OpenReader(bytes.NewReader(out.Bytes()), excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	return f, out.Bytes()
}

// What the file holds is what was put in it: values of their kind beside formulas, no
// error, and all that a stream loses when it is set too late.
func TestReadBack(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	for _, path := range files {
		for _, r := range []Reader{Owner, Lender} {
			b := bookOf(t, path, Options{For: r})
			f, _ := reopened(t, b)
			for _, g := range b.all() {
				name := filepath.Base(path) + " " + g.name
				cellsRead(t, name, f, g)
				dressRead(t, name, f, g)
			}
			namesRead(t, f, b)
		}
	}
}

// cellsRead compares every cell with what was written.
func cellsRead(t *testing.T, name string, f *excelize.File, g *grid) {
	notes := map[string]string{}
	all, err := f.GetComments(g.name)
	require.NoError(t, err)
	for _, n := range all {
		notes[n.Cell] = n.Text
	}
	for i, row := range g.rows {
		for j, c := range row {
			if c.value == nil || c.value == "" && c.formula == "" { // or one of several that are one
				continue
			}
			at := address(i+1, j+1, false, false)
			got, err := f.GetCellValue(g.name, at)
			require.NoError(t, err)
			require.False(t, strings.HasPrefix(got, "#"), "%s!%s shows %s", name, at, got)
			written, err := f.GetCellFormula(g.name, at)
			require.NoError(t, err)
			require.Equal(t, c.formula, written, "%s!%s", name, at)
			kind, err := f.GetCellType(g.name, at)
			require.NoError(t, err)
			if x, number := c.value.(float64); number {
				y, err := strconv.ParseFloat(got, 64)
				require.NoError(t, err, "%s!%s", name, at)
				require.InDelta(t, x, y, 1e-13*max(1, math.Abs(x)), "%s!%s", name, at) // reading shows 15 digits
				require.Contains(t, []excelize.CellType{excelize.CellTypeNumber, excelize.CellTypeUnset}, kind, "%s!%s holds %q as text", name, at, got)
			} else {
				require.Equal(t, c.value, got, "%s!%s", name, at)
			}
			if g.noted && c.note != "" {
				require.Equal(t, c.note, notes[at], "%s!%s", name, at)
			}
		}
	}
}

// dressRead looks for what a sheet has besides its cells.
func dressRead(t *testing.T, name string, f *excelize.File, g *grid) {
	panes, err := f.GetPanes(g.name)
	require.NoError(t, err)
	require.Equal(t, g.heads > 0 || g.left > 0, panes.Freeze, name)
	require.Equal(t, [2]int{g.left, g.heads}, [2]int{panes.XSplit, panes.YSplit}, name)
	layout, err := f.GetPageLayout(g.name)
	require.NoError(t, err)
	require.Positive(t, *layout.FitToWidth, name)
	require.Equal(t, "The deal", f.GetSheetList()[0], "it is read first")
	props, err := f.GetSheetProps(g.name)
	require.NoError(t, err)
	require.True(t, *props.FitToPage, name)
	head, err := f.GetHeaderFooter(g.name)
	require.NoError(t, err)
	require.Contains(t, head.OddFooter, "&P of &N", name)
	titled := false
	for _, n := range f.GetDefinedName() {
		titled = titled || n.Name == "_xlnm.Print_Titles" && n.Scope == g.name
	}
	require.Equal(t, g.heads > 0 || g.left > 0, titled, name)
	lockedRead(t, name, f, g)
}

// lockedRead sees that a sheet is protected without a password and only its inputs are
// unlocked.
func lockedRead(t *testing.T, name string, f *excelize.File, g *grid) {
	protection, err := f.GetSheetProtection(g.name)
	require.NoError(t, err)
	require.Empty(t, protection.Password, name)
	require.True(t, protection.SelectLockedCells, name)
	require.False(t, protection.FormatCells, name)
	for i, row := range g.rows {
		for j, c := range row {
			if c == (cell{}) {
				continue
			}
			id, err := f.GetCellStyle(g.name, address(i+1, j+1, false, false))
			require.NoError(t, err)
			style, err := f.GetStyle(id)
			require.NoError(t, err)
			open := c.look.role == input || c.look.role == fallback || c.look.role == blank
			require.Equal(t, !open, style.Protection.Locked, "%s!%s", name, address(i+1, j+1, false, false))
		}
	}
}

// namesRead looks for the names of the deal's lines.
func namesRead(t *testing.T, f *excelize.File, b *book) {
	names := map[string]bool{}
	for _, n := range f.GetDefinedName() {
		names[n.Name] = true
	}
	for _, name := range []string{"price", "profit", "cash_needed", "after_repair_value", "sale_month"} {
		require.True(t, names[name], name)
	}
	require.Equal(t, b.how.For == Owner, names["profit_to_spare"], "targets are hers alone")
}

func TestTwoRunsAreTheSame(t *testing.T) {
	const path = "../../scenarios/salt-creek.yaml"
	_, one := reopened(t, bookOf(t, path, Options{}))
	_, other := reopened(t, bookOf(t, path, Options{}))
	require.Equal(t, one, other)
}
