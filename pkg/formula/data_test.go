package formula_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/affine"
)

// nearFloat is how far a float64 result may lie from the exact one, as a share of
// the largest number on the way: a few roundings of 2^-53 each.
const nearFloat = 1e-13

// widest is how far apart the ends of a range may lie at an edge: one step, and
// the ninth decimal that steps round to first.
const widest = 1 + 2e-9

// leastDigits is the precision promised for quotients, powers and roots.
const leastDigits = 34

// A pair is a formula of a data file with what is expected of it.
type pair struct {
	row        int
	text, want string
	expect     string // the words of the failure, or ""
	edge       bool
}

func pairs(t testing.TB, path string) []pair {
	b, err := os.ReadFile(path)
	require.NoError(t, err)
	var out []pair
	var p pair
	for i, row := range strings.Split(string(b), "\n") {
		switch {
		case strings.HasPrefix(row, "# Expect: "):
			p.expect = strings.TrimPrefix(row, "# Expect: ")
		case row == "# Edge":
			p.edge = true
		case strings.TrimSpace(row) == "" || row[0] == '#':
		case row[0] == '\t':
			require.NotEmpty(t, out, "%s:%d", path, i+1)
			require.Empty(t, out[len(out)-1].want, "%s:%d", path, i+1)
			out[len(out)-1].want = row[1:]
		default:
			p.row, p.text = i+1, row
			out, p = append(out, p), pair{}
		}
	}
	return out
}

func TestExpressions(t *testing.T) {
	files, err := filepath.Glob("../../testdata/expr/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) {
			for _, p := range pairs(t, f) {
				if filepath.Base(f) == "print.txt" {
					p.checkPrint(t)
				} else {
					p.check(t)
				}
			}
		})
	}
}

func (p pair) checkPrint(t *testing.T) {
	n, err := formula.Parse(p.text)
	require.NoError(t, err, "row %d", p.row)
	assert.Equal(t, p.want, n.String(), "row %d", p.row)
	again(t, n)
}

func (p pair) check(t *testing.T) {
	n, err := formula.Parse(p.text)
	var got result
	if err == nil {
		again(t, n)
		got, err = evaluate(n)
	}
	if p.expect != "" {
		assert.Empty(t, p.want, "row %d: a failure has no value", p.row)
		assert.ErrorContains(t, err, p.expect, "row %d: %s", p.row, p.text)
		return
	}
	if assert.NoError(t, err, "row %d: %s", p.row, p.text) {
		p.checkValue(t, got)
		p.checkRange(t, got)
	}
}

func (p pair) checkValue(t *testing.T, got result) {
	value, unit, _ := strings.Cut(p.want, " ")
	shown, goesOn := strings.CutSuffix(value, "...")
	want, err := decimal.NewFromString(shown)
	require.NoError(t, err, "row %d", p.row)
	if !goesOn {
		assert.Equal(t, want.String(), got.exact.String(), "row %d: %s", p.row, p.text)
	} else {
		require.GreaterOrEqual(t, want.NumDigits(), leastDigits, "row %d shows too little", p.row)
		off := got.exact.Sub(want).Abs()
		assert.True(t, off.LessThanOrEqual(decimal.New(1, want.Exponent())), "row %d: %s comes to %s", p.row, p.text, got.exact)
	}
	if got.unit == (formula.Unit{}) || got.unit == formula.AnyUnit {
		assert.Empty(t, unit, "row %d: %s", p.row, p.text)
	} else {
		assert.Equal(t, unit, got.unit.String(), "row %d: %s", p.row, p.text)
	}
}

// checkRange holds for every value: the range rules, at one point, enclose it,
// and away from edges they leave no doubt.
func (p pair) checkRange(t *testing.T, got result) {
	x := got.exact.InexactFloat64()
	slack := nearFloat * max(1, got.size)
	lo, hi := got.bound.Bounds()
	assert.True(t, lo-slack <= x && x <= hi+slack, "row %d: %s is %s, its range from %v to %v", p.row, p.text, got.exact, lo, hi)
	assert.LessOrEqual(t, hi-lo, widest, "row %d: %s", p.row, p.text)
	if !p.edge {
		assert.True(t, got.bound.Fixed(), "row %d: %s: its range is from %v to %v", p.row, p.text, lo, hi)
	}
}

// A result is a formula of constants worked out by all of its rules.
type result struct {
	exact decimal.Decimal
	bound affine.Number
	unit  formula.Unit
	size  float64 // of the largest number on the way
}

func evaluate(n *formula.Node) (result, error) {
	if n.IsNumber() {
		return constant(n)
	}
	var exact []decimal.Decimal
	var bound []affine.Number
	var units []formula.Unit
	var size float64
	for _, a := range n.Args {
		x, err := evaluate(a)
		if err != nil {
			return result{}, err
		}
		exact, bound, units = append(exact, x.exact), append(bound, x.bound), append(units, x.unit)
		size = max(size, x.size)
	}
	u, err := n.Op.Unit(units)
	if err != nil {
		return result{}, err
	}
	x, err := n.Op.Exact(exact)
	return result{x, n.Op.Range(bound), u, max(size, x.Abs().InexactFloat64())}, err
}

func constant(n *formula.Node) (result, error) {
	u, err := formula.ParseUnit(n.Unit)
	if n.Unit == "" && n.Num.IsZero() {
		u = formula.AnyUnit
	}
	x := n.Num.InexactFloat64()
	return result{n.Num, affine.Exactly(x), u, x}, err
}
