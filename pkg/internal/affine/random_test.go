package affine_test

import (
	"flag"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/affine"
	"ledgerboard/pkg/internal/modeltest"
)

var randomTrees = flag.Int("trees", 10_000, "random expressions to try; a twentieth of them with -short")

// points are the t at which an expression's value is compared with its enclosure.
var points = []decimal.Decimal{decimal.Zero, decimal.New(1, -3), decimal.New(25, -2), decimal.New(5, -1), decimal.New(77, -2), decimal.NewFromInt(1)}

// GoString keeps the report of a failure short.
func (v value) GoString() string { return v.text }

// A value is what an expression comes to at each point, and what encloses it.
type value struct {
	text  string
	at    []decimal.Decimal
	bound affine.Number
}

// largest is how large values may get: with dollar-sized numbers the error of
// float64 stays far below affine.Noise.
const largest = 5e6

// The rules of the operator table enclose the exact ones, alone and on top of each
// other: an operator's values may be any that came before, so that equal ones meet.
func TestRangesEncloseExactValues(t *testing.T) {
	modeltest.Check(t, *randomTrees, func(t *rapid.T) {
		known := []value{line(t), fixed(t), fixed(t), fixed(t)} // one thing varies, so there is one line
		for range rapid.IntRange(1, 12).Draw(t, "operations") {
			op := local()[rapid.IntRange(0, len(local())-1).Draw(t, "operator")]
			v, ok := apply(t, op, known)
			if !ok {
				continue
			}
			v.check(t)
			known = append(known, v)
		}
	})
}

// local are the operators that do not look along months or over sets.
func local() []*formula.Op {
	var out []*formula.Op
	for _, o := range formula.Table {
		if o.Exact != nil && o.Code != formula.LevelPayment && o.Code != formula.Power {
			out = append(out, o)
		}
	}
	return out
}

// number draws a number as deals have them: whole, cents, or a share.
func number(t *rapid.T) decimal.Decimal {
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		return decimal.NewFromInt(rapid.Int64Range(-3, 12).Draw(t, "small"))
	case 1:
		return decimal.NewFromInt(rapid.Int64Range(-2000, 400_000).Draw(t, "dollars"))
	case 2:
		return decimal.New(rapid.Int64Range(-20_000, 4_000_000).Draw(t, "cents"), -2)
	}
	return decimal.New(rapid.Int64Range(0, 10_000).Draw(t, "share"), -4)
}

// line is a number that goes straight from one value to another.
func line(t *rapid.T) value {
	if rapid.Bool().Draw(t, "fine") {
		return between(number(t), number(t), affine.Fine)
	}
	// A thousand steps apart, all points are at a step.
	grain, step := affine.Whole, decimal.NewFromInt(1)
	if rapid.Bool().Draw(t, "by cents") {
		grain, step = affine.OfCents, decimal.New(1, -2)
	}
	a := step.Mul(decimal.NewFromInt(rapid.Int64Range(-2000, 400_000).Draw(t, "from")))
	return between(a, a.Add(step.Mul(decimal.NewFromInt(1000*rapid.Int64Range(-5, 300).Draw(t, "thousands")))), grain)
}

func between(a, b decimal.Decimal, g affine.Grain) value {
	v := value{text: fmt.Sprintf("[%s to %s by grain %d]", a, b, g), bound: affine.Stepping(a.InexactFloat64(), b.InexactFloat64(), g)}
	for _, p := range points {
		v.at = append(v.at, a.Add(b.Sub(a).Mul(p)))
	}
	return v
}

func fixed(t *rapid.T) value { return constant(number(t)) }

func constant(a decimal.Decimal) value {
	v := value{text: a.String(), bound: affine.Exactly(a.InexactFloat64())}
	for range points {
		v.at = append(v.at, a)
	}
	return v
}

// apply carries an operator out on values that are known. It is not ok where the
// exact rule has no value or one that is no longer dollar-sized.
func apply(t *rapid.T, op *formula.Op, known []value) (value, bool) {
	n := max(2*min(op.Binds, 1), op.Least)
	args := make([]value, n)
	names, bounds := make([]string, n), make([]affine.Number, n)
	for i := range args {
		args[i] = rapid.SampledFrom(known).Draw(t, "value")
		if i == 0 && op.Code == formula.If || op.Code == formula.And || op.Code == formula.Or || op.Code == formula.Not {
			args[i] = truth(t, args[i])
		}
		names[i], bounds[i] = args[i].text, args[i].bound
	}
	out := value{text: fmt.Sprintf("%s(%s)", op.Name, strings.Join(names, ", "))}
	for p := range points {
		each := make([]decimal.Decimal, n)
		for i := range args {
			each[i] = args[i].at[p]
		}
		x, err := op.Exact(each)
		if err != nil || tooNear(op, each) || math.Abs(x.InexactFloat64()) > largest {
			return out, false
		}
		out.at = append(out.at, formula.Trim(x))
	}
	out.bound = op.Range(bounds)
	return out, true
}

// tooNear reports divisors of less than a cent, which float64 cannot tell from
// nothing, and comparisons of numbers that only the last digits of a quotient or a
// root tell apart: the model has neither.
func tooNear(op *formula.Op, x []decimal.Decimal) bool {
	switch op.Code {
	case formula.Div:
		return x[1].Abs().LessThan(decimal.New(1, -2))
	case formula.Less, formula.LessEqual, formula.More, formula.MoreEqual, formula.Equal, formula.NotEqual:
		gap := x[0].Sub(x[1]).Abs()
		return !gap.IsZero() && gap.LessThan(decimal.New(1, -7))
	}
	return false
}

// truth turns a value into a condition.
func truth(t *rapid.T, v value) value {
	c, ok := apply(t, formula.Table[formula.LessEqual], []value{v, v, fixed(t)})
	if !ok {
		return constant(decimal.NewFromInt(1))
	}
	return c
}

// check compares the values with their enclosure.
func (v value) check(t *rapid.T) {
	for i, p := range points {
		along, x := p.InexactFloat64(), v.at[i].InexactFloat64()
		if places, known := map[affine.Grain]int32{affine.OfCents: 2, affine.Whole: 0}[v.bound.Grain()]; known {
			off := v.at[i].Sub(v.at[i].Round(places)).Abs()
			seen := v.at[i].Abs().Mul(decimal.New(1, -14)).Add(decimal.New(1, -9)) // float64 shows no cents less far off
			require.True(t, off.LessThan(seen), "%s at %s of the range: %s is not of grain %d", v.text, p, v.at[i], v.bound.Grain())
		}
		low, high := v.bound.C+v.bound.S*along+v.bound.Lo, v.bound.C+v.bound.S*along+v.bound.Hi
		if math.IsNaN(low) || math.IsNaN(high) {
			return // as where something unknown is multiplied by nothing: no more is known
		}
		require.LessOrEqual(t, low-affine.Noise, x, "%s at %s of the range: %+v", v.text, p, v.bound)
		require.GreaterOrEqual(t, high+affine.Noise, x, "%s at %s of the range: %+v", v.text, p, v.bound)
	}
}

// Where nothing varies, a range is one value.
func TestRangeOfFixedValuesIsExact(t *testing.T) {
	modeltest.Check(t, *randomTrees/4, func(t *rapid.T) {
		op := local()[rapid.IntRange(0, len(local())-1).Draw(t, "operator")]
		v, ok := apply(t, op, []value{fixed(t), fixed(t), fixed(t)})
		if !ok {
			return
		}
		low, high := v.bound.Bounds()
		require.InDelta(t, v.at[0].InexactFloat64(), low, 0.01+affine.Noise, v.text)
		require.InDelta(t, v.at[0].InexactFloat64(), high, 0.01+affine.Noise, v.text)
	})
}

// A power of a positive base, for exponents and bases that vary.
func TestPowersEncloseExactValues(t *testing.T) {
	power := formula.Table[formula.Power]
	modeltest.Check(t, *randomTrees/20, func(t *rapid.T) {
		small := rapid.Custom(func(t *rapid.T) decimal.Decimal {
			return decimal.New(rapid.Int64Range(1, 300).Draw(t, "hundredths"), -2)
		})
		base := between(small.Draw(t, "base"), small.Draw(t, "base"), affine.Fine)
		exponent := rapid.SampledFrom([]value{base, constant(small.Draw(t, "exponent"))}).Draw(t, "exponent")
		out := value{text: "power(" + base.text + ", " + exponent.text + ")"}
		for p := range points {
			x, err := power.Exact([]decimal.Decimal{base.at[p], exponent.at[p]})
			require.NoError(t, err)
			out.at = append(out.at, x)
		}
		out.bound = power.Range([]affine.Number{base.bound, exponent.bound})
		out.check(t)
	})
}

// A level payment for a principal that varies.
func TestLevelPaymentsEncloseExactValues(t *testing.T) {
	payment := formula.Table[formula.LevelPayment]
	modeltest.Check(t, *randomTrees/10, func(t *rapid.T) {
		principal := line(t)
		rate := decimal.New(rapid.Int64Range(0, 250).Draw(t, "rate"), -4)
		months := decimal.NewFromInt(rapid.Int64Range(1, 480).Draw(t, "months"))
		out := value{text: fmt.Sprintf("level_payment(%s, %s, %s)", principal.text, rate, months)}
		for p := range points {
			x, err := payment.Exact([]decimal.Decimal{principal.at[p], rate, months})
			require.NoError(t, err)
			out.at = append(out.at, x)
		}
		out.bound = payment.Range([]affine.Number{principal.bound, affine.Exactly(rate.InexactFloat64()), affine.Exactly(months.InexactFloat64())})
		out.check(t)
	})
}
