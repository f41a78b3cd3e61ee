package formula_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/formula"
)

// same reports whether two trees are alike but for their places in the text.
func same(a, b *formula.Node) bool {
	if a.Op != b.Op || a.Name != b.Name || a.Text != b.Text || a.Unit != b.Unit || a.Set != b.Set ||
		!a.Num.Equal(b.Num) || len(a.Args) != len(b.Args) {
		return false
	}
	for i := range a.Args {
		if !same(a.Args[i], b.Args[i]) {
			return false
		}
	}
	return true
}

// again prints a tree and parses what was printed.
func again(t require.TestingT, n *formula.Node) {
	printed := n.String()
	m, err := formula.Parse(printed)
	require.NoError(t, err, printed)
	require.True(t, same(n, m), "%s came back as %s", printed, m)
	require.Equal(t, printed, m.String())
}

// names are rapid's choices of words; the odd ones begin like words of the grammar.
var names = []string{"price", "x", "a_1", "order", "android", "nothing", "of", "minimum", "_"}

func leaf(t *rapid.T) *formula.Node {
	switch rapid.IntRange(0, 3).Draw(t, "leaf") {
	case 0:
		return &formula.Node{Name: rapid.SampledFrom(names).Draw(t, "name")}
	case 1:
		return &formula.Node{Text: rapid.StringMatching(`[^"]{1,8}`).Draw(t, "text")}
	case 2:
		return &formula.Node{Op: formula.Table[formula.Month]}
	}
	return &formula.Node{
		Num:  decimal.New(rapid.Int64Range(0, 1e12).Draw(t, "digits"), rapid.Int32Range(-12, 12).Draw(t, "exponent")),
		Unit: rapid.SampledFrom([]string{"", "$", "month", "share", "ft"}).Draw(t, "unit"),
	}
}

func tree(t *rapid.T, depth int) *formula.Node {
	if depth == 0 || rapid.IntRange(0, 4).Draw(t, "leaf or operator") == 0 {
		return leaf(t)
	}
	n := &formula.Node{Op: rapid.SampledFrom(formula.Table).Draw(t, "operator")}
	values := 2
	if n.Op.Binds == 0 {
		values = rapid.IntRange(n.Op.Least, n.Op.Most).Draw(t, "values")
	}
	for range values {
		n.Args = append(n.Args, tree(t, depth-1))
	}
	if n.Op.OverSet || n.Op.MayOver && rapid.Bool().Draw(t, "over a set") {
		n.Set = rapid.SampledFrom(names).Draw(t, "set")
	}
	return n
}

func TestPrintedTreesParseToThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { again(t, tree(t, rapid.IntRange(0, 5).Draw(t, "depth"))) })
}

func TestWalkVisitsEveryPlaceOnce(t *testing.T) {
	n, err := formula.Parse(`if(a < 2 $, total(b of loan), -c)`)
	require.NoError(t, err)
	var seen []string
	n.Walk(func(n *formula.Node) { seen = append(seen, n.String()) })
	require.Equal(t, []string{"if(a < 2 $, total(b of loan), -c)", "a < 2 $", "a", "2 $", "total(b of loan)", "b", "-c", "c"}, seen)
}

// Places are byte offsets, counted by hand.
func TestPlacesInTheText(t *testing.T) {
	n, err := formula.Parse(`  a + min(b, "c d") * 20 $`)
	require.NoError(t, err)
	at := map[string]int{}
	n.Walk(func(n *formula.Node) { at[n.String()] = n.At })
	require.Equal(t, map[string]int{
		"a": 2, `a + min(b, "c d") * 20 $`: 4, `min(b, "c d")`: 6, "b": 10, `"c d"`: 13, `min(b, "c d") * 20 $`: 20, "20 $": 22,
	}, at)
}

// fuzz: no text makes the parser panic, what it refuses it refuses with a place
// inside the text, and what it reads prints and reads again as the same.
func FuzzParse(f *testing.F) {
	files, err := filepath.Glob("../../testdata/expr/*.txt")
	require.NoError(f, err)
	for _, file := range files {
		for _, p := range pairs(f, file) {
			f.Add(p.text)
		}
	}
	document, err := filepath.Glob("../model/document/*.txt")
	require.NoError(f, err)
	for _, file := range document {
		b, err := os.ReadFile(file)
		require.NoError(f, err)
		for row := range strings.SplitSeq(string(b), "\n") {
			if text, found := strings.CutPrefix(row, "  = "); found {
				f.Add(text)
			}
		}
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := formula.Parse(text)
		if err == nil {
			again(t, n)
			return
		}
		var e *formula.SyntaxError
		require.True(t, errors.As(err, &e))
		require.True(t, 0 <= e.At && e.At <= len(text), "%d of %d", e.At, len(text))
		require.NotEmpty(t, e.Message)
	})
}
