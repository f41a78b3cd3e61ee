package importgraph

import (
	"fmt"
	"go/build"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const (
	module = "ledgerboard/"
	root   = "../../.."
)

// levels list every package of the module, from the bottom up. A package imports
// only from levels under its own, so those of one level never import each other.
var levels = [][]string{
	{"pkg/quantity", "pkg/diag", "pkg/cashflow", "pkg/caution", "pkg/takeoff", "pkg/choose", "pkg/odds", "pkg/internal/affine", "pkg/internal/float", "pkg/internal/sums", "pkg/internal/together", "pkg/internal/importgraph", "pkg/internal/published"},
	{"pkg/formula", "pkg/comps"},
	{"pkg/model", "pkg/comps/measure"},
	{"pkg/internal/walk", "pkg/internal/modeltest"},
	{"pkg/pricebook", "pkg/internal/flat"},
	{"pkg/deal"},
	append([]string{"pkg/internal/conform"}, readers...),
	{"pkg/solve", "pkg/best"},
	{"pkg/chance"},
	{"pkg/stress"},
	{"pkg/answer"},
	{"pkg/report", "pkg/workbook"},
	{"pkg/cli", "cmd/ledgerboard/internal/heap"},
	{"cmd/ledgerboard", "cmd/gendocs", "cmd/measurecomps"},
}

// readers know the model and nothing else, so not the deal file either.
var readers = []string{"pkg/exact", "pkg/bound", "pkg/fast", "pkg/slope", "pkg/why"}

// except are imports that break a rule, with the reason.
var except = map[[2]string]string{
	{"pkg/internal/conform", "pkg/internal/modeltest"}: "it is for tests too",
}

func level(name string) int {
	return slices.IndexFunc(levels, func(l []string) bool { return slices.Contains(l, name) })
}

// wrong says what is wrong with one package importing another, or "".
func wrong(from, to string) string {
	a, b := level(from), level(to)
	switch {
	case except[[2]string{from, to}] != "":
		return ""
	case a < 0:
		return from + " is in no level; give it its place in the list"
	case b < 0:
		return to + " is in no level; give it its place in the list"
	case to == "pkg/internal/modeltest", to == "pkg/internal/conform":
		return fmt.Sprintf("%s imports %s, which is for tests", from, to)
	case slices.Contains(readers, from) && to == "pkg/deal":
		return fmt.Sprintf("%s is a reader and imports %s", from, to)
	case b >= a:
		return fmt.Sprintf("%s imports %s, which is not below it", from, to)
	}
	return ""
}

// graph is every package with what it imports of the module, without its tests.
func graph(t *testing.T) map[string][]string {
	out := map[string][]string{}
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if n := d.Name(); path != root && (strings.HasPrefix(n, ".") || strings.HasPrefix(n, "_") || n == "testdata") {
			return filepath.SkipDir
		}
		p, err := build.ImportDir(path, 0)
		if _, none := err.(*build.NoGoError); none {
			return nil
		}
		name, _ := filepath.Rel(root, path)
		out[filepath.ToSlash(name)] = inside(p)
		return err
	}))
	return out
}

func inside(p *build.Package) []string {
	var out []string
	for _, i := range p.Imports {
		if name, ours := strings.CutPrefix(i, module); ours {
			out = append(out, name)
		}
	}
	return out
}

func TestImportsPointDown(t *testing.T) {
	g := graph(t)
	require.Contains(t, g, "pkg/model")
	require.Contains(t, g["pkg/model"], "pkg/formula", "the imports are seen")
	var found []string
	for from, imports := range g {
		if level(from) < 0 {
			found = append(found, from+" is in no level; give it its place in the list")
		}
		for _, to := range imports {
			if w := wrong(from, to); w != "" {
				found = append(found, w)
			}
		}
	}
	slices.Sort(found)
	require.Empty(t, slices.Compact(found))
	for pair := range except {
		require.Contains(t, g[pair[0]], pair[1], "the exception is no longer needed")
	}
}

func TestRules(t *testing.T) {
	for _, tt := range [][3]string{
		{"pkg/model", "pkg/formula", ""},
		{"pkg/cli", "pkg/quantity", ""},
		{"pkg/formula", "pkg/model", "pkg/formula imports pkg/model, which is not below it"},
		{"pkg/bound", "pkg/exact", "pkg/bound imports pkg/exact, which is not below it"},
		{"pkg/exact", "pkg/deal", "pkg/exact is a reader and imports pkg/deal"},
		{"pkg/solve", "pkg/deal", ""},
		{"pkg/exact", "pkg/internal/modeltest", "pkg/exact imports pkg/internal/modeltest, which is for tests"},
		{"pkg/new", "pkg/model", "pkg/new is in no level; give it its place in the list"},
		{"pkg/model", "pkg/new", "pkg/new is in no level; give it its place in the list"},
	} {
		require.Equal(t, tt[2], wrong(tt[0], tt[1]))
	}
}
