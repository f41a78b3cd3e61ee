package cashflow_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/cashflow"
)

var one = decimal.New(1, 0)

// cents draws an amount in dollars and cents, either sign.
func cents(t *rapid.T, label string) decimal.Decimal {
	return decimal.New(rapid.Int64Range(-50_000_000, 50_000_000).Draw(t, label), -2)
}

func drawFlows(t *rapid.T) []decimal.Decimal {
	n := rapid.IntRange(2, 36).Draw(t, "n")
	flows := make([]decimal.Decimal, n)
	for k := range flows {
		flows[k] = cents(t, fmt.Sprint("flow ", k))
	}
	return flows
}

// future is the sum of flows carried to the last period at rate i: the net
// present value times a positive power, without a division.
func future(flows []decimal.Decimal, i decimal.Decimal) decimal.Decimal {
	sum := decimal.Zero
	for _, f := range flows {
		sum = sum.Mul(one.Add(i)).Add(f)
	}
	return sum
}

func changes(flows []decimal.Decimal) (n int) {
	last := 0
	for _, f := range flows {
		if s := f.Sign(); s != 0 {
			if s == -last {
				n++
			}
			last = s
		}
	}
	return n
}

// times multiplies the polynomial of the flows in y = 1+i, highest power first.
func times(a []decimal.Decimal, b ...decimal.Decimal) []decimal.Decimal {
	r := make([]decimal.Decimal, len(a)+len(b)-1)
	for i, x := range a {
		for j, y := range b {
			r[i+j] = r[i+j].Add(x.Mul(y))
		}
	}
	return r
}

// nearest is the policy, written once more.
func nearest(roots []decimal.Decimal) decimal.Decimal {
	return slices.MinFunc(roots, func(a, b decimal.Decimal) int {
		if c := a.Abs().Cmp(b.Abs()); c != 0 {
			return c
		}
		return a.Cmp(b)
	})
}

// Beside every root, at a distance of a few units of the 34th digit, the value of
// the flows has opposite signs, unless the root repeats an even number of times.
// Descartes: the roots that do cross are as many as the changes of sign, or
// fewer by an even number.
func TestRootsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flows := drawFlows(t)
		r, err := cashflow.IRR(flows)
		if err != nil {
			require.ErrorIs(t, err, cashflow.ErrNoRate)
			require.Zero(t, changes(flows)%2, "an odd number of changes of sign forces a root")
			return
		}
		require.True(t, slices.IsSortedFunc(r.Roots, decimal.Decimal.Cmp))
		require.True(t, r.Rate.Equal(nearest(r.Roots)))
		crossings := 0
		for _, i := range r.Roots {
			require.True(t, i.GreaterThan(one.Neg()))
			step := decimal.Min(i.Abs(), one.Add(i)).Mul(decimal.New(1, -32))
			if i.IsZero() {
				require.True(t, future(flows, i).IsZero())
				step = decimal.New(1, -32)
			}
			below, above := future(flows, i.Sub(step)), future(flows, i.Add(step))
			if below.Sign() != above.Sign() {
				crossings++
				continue
			}
			require.True(t, within(future(flows, i), decimal.Zero, 25))
		}
		require.LessOrEqual(t, crossings, changes(flows))
		require.Equal(t, changes(flows)%2, crossings%2)
	})
}

// Products of factors y - (1+i) with known rates, some repeated, and of factors
// without a real root: every rate is found, and no other.
func TestKnownRootsAreFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flows := []decimal.Decimal{decimal.New(rapid.Int64Range(1, 99999).Draw(t, "scale"), -2)}
		percents := rapid.SliceOfNDistinct(rapid.Int64Range(-99, 400), 1, 6, rapid.ID).Draw(t, "percents")
		var want []decimal.Decimal
		for _, p := range percents {
			i := decimal.New(p, -2)
			want = append(want, i)
			for range rapid.IntRange(1, 3).Draw(t, "times") {
				flows = times(flows, one, one.Add(i).Neg())
			}
		}
		for range rapid.IntRange(0, 4).Draw(t, "pairs") { // (y - b)^2 + c > 0
			b := decimal.New(rapid.Int64Range(-200, 200).Draw(t, "b"), -2)
			c := decimal.New(rapid.Int64Range(1, 200).Draw(t, "c"), -3)
			flows = times(flows, one, b.Mul(decimal.New(-2, 0)), b.Mul(b).Add(c))
		}
		slices.SortFunc(want, decimal.Decimal.Cmp)
		r, err := cashflow.IRR(flows)
		require.NoError(t, err)
		require.Len(t, r.Roots, len(want))
		for k := range want {
			require.Truef(t, r.Roots[k].Equal(want[k]), "root %s, want %s", r.Roots[k], want[k])
		}
		require.True(t, r.Rate.Equal(nearest(want)))
		require.Equal(t, len(want) > 1, r.Several())
	})
}

// Scale, sign, and zeros before and after don't matter, to the last digit.
func TestScalingChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flows := drawFlows(t)
		factor := decimal.New(rapid.Int64Range(1, 999_999).Draw(t, "factor"), rapid.Int32Range(-9, 9).Draw(t, "exp"))
		if rapid.Bool().Draw(t, "negative") {
			factor = factor.Neg()
		}
		other := make([]decimal.Decimal, rapid.IntRange(0, 3).Draw(t, "before"))
		for _, f := range flows {
			other = append(other, f.Mul(factor))
		}
		other = append(other, make([]decimal.Decimal, rapid.IntRange(0, 3).Draw(t, "after"))...)
		a, errA := cashflow.IRR(flows)
		b, errB := cashflow.IRR(other)
		require.Equal(t, errA, errB)
		require.Equal(t, fmt.Sprint(a), fmt.Sprint(b))
	})
}

// An investment has one rate; a factor adds a second, and the nearer one wins.
func TestSecondRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flows := []decimal.Decimal{decimal.New(-rapid.Int64Range(1, 50_000_000).Draw(t, "paid"), -2)}
		for k := range rapid.IntRange(1, 24).Draw(t, "n") {
			flows = append(flows, decimal.New(rapid.Int64Range(1, 50_000_000).Draw(t, fmt.Sprint("back ", k)), -2))
		}
		first, err := cashflow.IRR(flows)
		require.NoError(t, err)
		require.False(t, first.Several())
		second := decimal.New(rapid.Int64Range(-999, 9999).Draw(t, "second"), -3).Add(decimal.New(1, -7))
		both, err := cashflow.IRR(times(flows, one, one.Add(second).Neg()))
		require.NoError(t, err)
		require.Len(t, both.Roots, 2)
		require.True(t, both.Several())
		require.True(t, both.Rate.Equal(nearest([]decimal.Decimal{first.Rate, second})))
	})
}

// A loan with draws, interest paid monthly and no charges has its own rate as
// its APR, the payoff at a broken month included.
func TestAPRWithoutChargesIsTheRate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		monthly := decimal.New(rapid.Int64Range(1, 3000).Draw(t, "rate"), -5)
		months := rapid.IntRange(0, 24).Draw(t, "months")
		part := decimal.New(rapid.Int64Range(0, 999).Draw(t, "part"), -3)
		balance := decimal.New(rapid.Int64Range(1, 50_000_000).Draw(t, "loan"), -2)
		advances := []cashflow.Flow{{Amount: balance}}
		var payments []cashflow.Flow
		for m := 1; m <= months; m++ {
			payments = append(payments, cashflow.Flow{Amount: balance.Mul(monthly), Whole: m})
			draw := decimal.New(rapid.Int64Range(0, 5_000_000).Draw(t, "draw"), -2)
			advances = append(advances, cashflow.Flow{Amount: draw, Whole: m})
			balance = balance.Add(draw)
		}
		owed := balance.Mul(one.Add(monthly.Mul(part)))
		payments = append(payments, cashflow.Flow{Amount: owed, Whole: months, Part: part})
		r, err := cashflow.APR(advances, payments, decimal.New(12, 0))
		if months == 0 && part.IsZero() {
			require.ErrorIs(t, err, cashflow.ErrNoFlows)
			return
		}
		require.NoError(t, err)
		require.True(t, within(r.Rate, monthly.Mul(decimal.New(12, 0)), 30))
	})
}

// At whole periods the APR is the IRR times the periods in a year.
func TestAPRAtWholePeriodsIsTheIRR(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		flows := drawFlows(t)
		var advances, payments []cashflow.Flow
		for k, f := range flows {
			if f.IsNegative() {
				advances = append(advances, cashflow.Flow{Amount: f.Neg(), Whole: k})
			} else {
				payments = append(payments, cashflow.Flow{Amount: f, Whole: k})
			}
		}
		i, errI := cashflow.IRR(flows)
		a, errA := cashflow.APR(advances, payments, decimal.New(12, 0))
		require.Equal(t, errI, errA)
		require.True(t, i.Rate.Mul(decimal.New(12, 0)).Equal(a.Rate))
		require.Len(t, a.Roots, len(i.Roots))
		for k := range i.Roots {
			require.True(t, i.Roots[k].Mul(decimal.New(12, 0)).Equal(a.Roots[k]))
		}
	})
}

// The rate of a loan repaid by its level payment is the rate it was made for.
func TestLevelPaymentRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		principal := decimal.New(rapid.Int64Range(1, 100_000_000).Draw(t, "principal"), -2)
		rate := decimal.New(rapid.Int64Range(-99_999, 200_000).Draw(t, "rate"), -5)
		n := rapid.IntRange(1, 60).Draw(t, "n")
		pay, err := cashflow.LevelPayment(principal, rate, n)
		require.NoError(t, err)
		flows := []decimal.Decimal{principal.Neg()}
		for range n {
			flows = append(flows, pay)
		}
		r, err := cashflow.IRR(flows)
		require.NoError(t, err)
		require.Truef(t, within(r.Rate, rate, 30), "rate %s, want %s", r.Rate, rate)
	})
}

// The effective rate is plain repeated multiplication.
func TestEffectiveIsThePower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		i := decimal.New(rapid.Int64Range(-1_000_000, 5_000_000).Draw(t, "rate"), -6)
		n := rapid.IntRange(1, 24).Draw(t, "n")
		want := one
		for range n {
			want = want.Mul(one.Add(i))
		}
		want = want.Sub(one)
		off := cashflow.Effective(i, n).Sub(want).Abs()
		require.True(t, off.LessThanOrEqual(want.Abs().Mul(decimal.New(1, -44))))
	})
}
