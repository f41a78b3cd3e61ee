package cashflow_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cashflow"
)

type paymentCase struct {
	origin
	Quantity  string
	Principal decimal.Decimal
	Rate      string
	Periods   int
	From, To  int // periods of the schedule, both included
	Value     decimal.Decimal
}

// Left out: schedules with payments at the start of a period or with a future
// value, which nothing here computes.
func TestPublishedLevelPayment(t *testing.T) {
	for _, c := range published[paymentCase](t, "level-payment.json") {
		t.Run(c.name(), func(t *testing.T) {
			rate := number(t, c.Rate)
			pay, err := cashflow.LevelPayment(c.Principal, rate, c.Periods)
			require.NoError(t, err)
			interest, repaid, left := schedule(c, rate, pay)
			assert.Truef(t, within(left, decimal.Zero, 20), "the last payment leaves %s", left)
			switch c.Quantity {
			case "payment":
				c.assertNear(t, c.Value, pay)
			case "payment at the start":
				c.assertNear(t, c.Value, pay.DivRound(rate.Add(decimal.New(1, 0)), 40))
			case "interest":
				c.assertNear(t, c.Value, interest)
			case "principal":
				c.assertNear(t, c.Value, repaid)
			case "total interest":
				c.assertNear(t, c.Value, pay.Mul(decimal.NewFromInt(int64(c.Periods))).Sub(c.Principal))
			default:
				require.Fail(t, "unknown quantity", c.Quantity)
			}
		})
	}
}

// schedule pays the loan off and returns what fell to interest and to principal
// in the periods asked for, and the balance at the end.
func schedule(c paymentCase, rate, pay decimal.Decimal) (interest, repaid, left decimal.Decimal) {
	left = c.Principal
	for k := 1; k <= c.Periods; k++ {
		due := left.Mul(rate).Round(60)
		if c.From <= k && k <= c.To {
			interest, repaid = interest.Add(due), repaid.Add(pay.Sub(due))
		}
		left = left.Add(due).Sub(pay)
	}
	return interest, repaid, left
}

// The long digits are from mpmath 60-digit arithmetic: p*r/(1-(1+r)**-n).
func TestLevelPaymentDigits(t *testing.T) {
	for _, c := range []struct {
		name, principal, rate string
		periods               int
		want                  string
	}{
		{"30 years", "162000", "0.03875/12", 360, "761.78407586346975197841026354928614573899617091844"},
		{"rate zero", "1000", "0", 7, "142.85714285714285714285714285714285714285714285714"},
		{"tiny rate", "250000", "1e-30", 360, "694.44444444444444444444444456979166666666666666667"},
		{"negative rate", "250000", "-0.01", 60, "3020.6727845112089440510979770992584636078420380336"},
		{"near -100%", "1000", "-0.999", 24, "9.99e-70"},
		{"one period", "250000", "0.0085", 1, "252125.0"},
		{"a century", "99999.99", "0.25/12", 1200, "2083.3331250374065397119908083187979354604096111986"},
		{"high rate", "1000", "3", 36, "3000.0000000000000000006352747104407252543013764002"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := cashflow.LevelPayment(number(t, c.principal), number(t, c.rate), c.periods)
			require.NoError(t, err)
			want := number(t, c.want)
			off := got.Sub(want).Abs()
			assert.Truef(t, off.LessThanOrEqual(want.Abs().Mul(decimal.New(1, -40))), "got %s, want %s", got, want)
		})
	}
}

func TestLevelPaymentRefuses(t *testing.T) {
	for _, c := range []struct {
		name, rate string
		periods    int
	}{
		{"no period", "0.01", 0},
		{"negative periods", "0.01", -3},
		{"-100%", "-1", 12},
		{"below -100%", "-2", 12},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := cashflow.LevelPayment(number(t, "1000"), number(t, c.rate), c.periods)
			require.ErrorIs(t, err, cashflow.ErrTerms)
		})
	}
}

type effectiveCase struct {
	origin
	Periodic  string
	Periods   int
	Effective decimal.Decimal
}

func TestPublishedEffective(t *testing.T) {
	for _, c := range published[effectiveCase](t, "effective-rate.json") {
		t.Run(c.name(), func(t *testing.T) {
			c.assertNear(t, c.Effective, cashflow.Effective(number(t, c.Periodic), c.Periods))
		})
	}
}

// By hand: 1.01^12 - 1 written out, and the edges.
func TestEffective(t *testing.T) {
	for _, c := range []struct {
		periodic string
		periods  int
		want     string
	}{
		{"0.01", 12, "0.126825030131969720661201"},
		{"0", 12, "0"},
		{"0.07", 1, "0.07"},
		{"0.07", 0, "0"},
		{"-0.5", 3, "-0.875"},
		{"-1", 12, "-1"},
		{"-1.5", 2, "-1"},
		{"1e-30", 2, "2.000000000000000000000000000001e-30"},
	} {
		got := cashflow.Effective(number(t, c.periodic), c.periods)
		assert.Truef(t, got.Equal(number(t, c.want)), "%s over %d: %s, want %s", c.periodic, c.periods, got, c.want)
	}
}
