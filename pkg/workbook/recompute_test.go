package workbook

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/conform"
	"ledgerboard/pkg/internal/together"
)

// recomputed has the spreadsheet engine work files out anew and returns them: as many engines
// side by side as there are cores, for one uses one core alone.
func recomputed(t *testing.T, paths ...string) map[string]*excelize.File {
	t.Helper()
	if _, err := exec.LookPath("soffice"); err != nil {
		t.Skip("LibreOffice Calc is not installed (in Debian libreoffice-calc-nogui), so no formula was worked out anew")
	}
	out := t.TempDir()
	each := max(fewest, (len(paths)+runtime.GOMAXPROCS(0)-1)/runtime.GOMAXPROCS(0))
	var engines []func() error
	for some := range slices.Chunk(paths, each) {
		args := append([]string{"--headless", "-env:UserInstallation=file://" + t.TempDir(), "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", out}, some...)
		engines = append(engines, func() error {
			if said, err := exec.Command("soffice", args...).CombinedOutput(); err != nil {
				return fmt.Errorf("%w: %s", err, said)
			}
			return nil
		})
	}
	require.NoError(t, together.Run(engines...))
	all := map[string]*excelize.File{}
	for _, p := range paths {
		f, err := excelize.OpenFile(filepath.Join(out, filepath.Base(p)), excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		all[p] = f
	}
	return all
}

// fewest is how many files are worth starting an engine for, which takes as long as some.
const fewest = 3

// A batch is workbooks that are recomputed in one go.
type batch struct {
	sync.Mutex
	dir   string
	paths []string
	books map[string]*book
}

func newBatch(t *testing.T) *batch { return &batch{dir: t.TempDir(), books: map[string]*book{}} }

// add writes a workbook without cached values.
func (all *batch) add(t require.TestingT, name string, b *book) {
	var file bytes.Buffer
	require.NoError(t, b.stream())
	_, err := b.file.WriteTo(&file)
	require.NoError(t, err)
	all.Lock()
	defer all.Unlock()
	path := filepath.Join(all.dir, fmt.Sprintf("%s-%d.xlsx", name, len(all.paths)))
	require.NoError(t, os.WriteFile(path, file.Bytes(), 0o600))
	all.books[path] = b
	all.paths = append(all.paths, path)
}

// compare has the engine take them some at a time, for it forgets the last of very many.
func (all *batch) compare(t *testing.T) {
	for some := range slices.Chunk(all.paths, 50) {
		for path, f := range recomputed(t, some...) {
			compare(t, filepath.Base(path), all.books[path], f)
		}
	}
}

func TestScenariosRecomputed(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	all := newBatch(t)
	for _, name := range files {
		b, err := made(answerOf(t, name), Options{Uncached: true})
		require.NoError(t, err)
		all.add(t, filepath.Base(name), b)
	}
	all.compare(t)
}

var randomDeals = flag.Int("workbook.deals", 300, "how many random deals are recomputed by the spreadsheet engine, a third of them with rooms")

// What the engine makes of the formulas of any deal is what the exact reader makes of it.
func TestConforms(t *testing.T) {
	all := newBatch(t)
	e := conform.Effort{Random: *randomDeals * 2 / 3, Houses: *randomDeals / 3, Times: 1}
	conform.Run(t, e, func(t *rapid.T, d conform.Deal) {
		v, err := exact.Evaluate(d.Model)
		if err != nil {
			t.Skip(err)
		}
		of := &deal.Deal{Name: "a deal", Root: d.Model.Root, Model: d.Model}
		b := newBook(&answer.Answer{Deal: of, Model: d.Model, Values: v}, Options{Uncached: true})
		b.fill(b.lay())
		require.NoError(t, b.err)
		all.add(t, "deal", b)
	}, func(t *testing.T) {
		require.NotEmpty(t, all.paths)
		all.compare(t)
		all.paths = nil
	})
}

func compare(t *testing.T, name string, b *book, f *excelize.File) {
	formulas, bad := 0, 0
	for _, g := range b.all() {
		for i, row := range g.rows {
			for j, c := range row {
				if c.formula == "" {
					continue
				}
				formulas++
				at := address(i+1, j+1, false, false)
				got, err := f.GetCellValue(g.name, at)
				require.NoError(t, err)
				if same(c.value, got) {
					continue
				}
				if bad++; bad < 20 {
					fmt.Printf("%s %s!%s = %s: got %q, want %v\n", name, g.name, at, c.formula, got, c.value)
				}
			}
		}
	}
	require.Zero(t, bad, "%s: of %d formulas", name, formulas)
}

func same(want any, got string) bool {
	x, is := want.(float64)
	if !is {
		return fmt.Sprint(want) == got
	}
	if got == "" {
		return x == 0
	}
	y, err := strconv.ParseFloat(got, 64)
	return err == nil && math.Abs(x-y) <= 1e-6*max(1, math.Abs(x)/1e3)
}
