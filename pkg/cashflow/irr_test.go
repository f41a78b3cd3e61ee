package cashflow_test

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cashflow"
)

type irrCase struct {
	origin
	Flows   []decimal.Decimal
	Annuity *struct{ Nper, Pmt, Pv, Fv decimal.Decimal }
	Rate    *decimal.Decimal
	Annual  *decimal.Decimal `json:"annual_rate"`
	Roots   []decimal.Decimal
	None    string
}

// amounts are the flows, or those of the annuity equation: pv now, pmt at the
// end of every period, fv with the last.
func (c irrCase) amounts() []decimal.Decimal {
	if c.Annuity == nil {
		return c.Flows
	}
	n := c.Annuity.Nper.IntPart()
	flows := make([]decimal.Decimal, n+1)
	for k := range flows[1:] {
		flows[k+1] = c.Annuity.Pmt
	}
	flows[0] = flows[0].Add(c.Annuity.Pv)
	flows[n] = flows[n].Add(c.Annuity.Fv)
	return flows
}

func TestPublishedIRR(t *testing.T) {
	for _, c := range published[irrCase](t, "irr.json") {
		t.Run(c.name(), func(t *testing.T) {
			r, err := cashflow.IRR(c.amounts())
			if c.None != "" {
				require.ErrorIs(t, err, cashflow.ErrNoSignChange)
				return
			}
			require.NoError(t, err)
			switch {
			case c.Annual != nil:
				c.assertNear(t, *c.Annual, cashflow.Effective(r.Rate, 12))
			default:
				c.assertNear(t, *c.Rate, r.Rate)
			}
			if c.Roots != nil {
				require.Len(t, r.Roots, len(c.Roots))
				for k, want := range c.Roots {
					assert.Truef(t, within(want, r.Roots[k], 9), "root %s, published %s", r.Roots[k], want)
				}
			}
			assert.Equal(t, len(r.Roots) > 1, r.Several())
		})
	}
}

// Constructed flows: the roots are those of the factors written beside them,
// with y = 1 + i.
func TestIRR(t *testing.T) {
	for _, c := range []struct {
		name, flows, rate, roots string
	}{
		{"one period", "-100 110", "0.1", "0.1"},
		{"exactly zero", "-100 60 40", "0", "0"},
		{"leading zeros", "0 0 -100 110", "0.1", "0.1"},
		{"trailing zeros", "-100 110 0 0", "0.1", "0.1"},
		{"zeros between", "-100 0 121", "0.1", "0.1"},
		{"borrowing", "100 -110", "0.1", "0.1"},
		{"whole dollars with exponent", "-1e2 1.1e2", "0.1", "0.1"},
		{"total loss but a cent", "-1e12 0.01", "-0.99999999999999", "-0.99999999999999"},
		{"a cent becomes a fortune", "-0.01 1e12", "99999999999999", "99999999999999"},
		// So close together, and so near the limit, that a repeated root is suspected.
		{"two near total losses: (y-1e-25)(y-2e-25)", "1 -3e-25 2e-50",
			"-0.9999999999999999999999998", "-0.9999999999999999999999999 -0.9999999999999999999999998"},
		{"two roots: (y-1.1)(y-1.2)", "-100 230 -132", "0.1", "0.1 0.2"},
		{"on both sides: (y-0.95)(y-1.2)", "-100 215 -114", "-0.05", "-0.05 0.2"},
		{"tie goes to the lower: (y-0.9)(y-1.1)", "-100 200 -99", "-0.1", "-0.1 0.1"},
		{"zero among others: (y-1)(y-1.5)", "-2 5 -3", "0", "0 0.5"},
		{"three, one a halving point: (y-0.5)(y-1.1)(y-1.2)", "-100 280 -247 66", "0.1", "-0.5 0.1 0.2"},
		{"halving points only: (y-0.5)(y-2)(y-4)", "-2 13 -22 8", "-0.5", "-0.5 1 3"},
		{"double root: (y-1.1)^2", "-100 220 -121", "0.1", "0.1"},
		{"double root at zero: (y-1)^2", "-1 2 -1", "0", "0"},
		{"double halving point: (y-2)^2", "-1 4 -4", "1", "1"},
		{"triple root: (y-1.1)^3", "-1000 3300 -3630 1331", "0.1", "0.1"},
		{"double and single: (y-1.1)^2 (y-1.3)", "-1000 3500 -4070 1573", "0.1", "0.1 0.3"},
		{"double with a factor without roots: (y-1.1)^2 (y^2+y+1)", "-100 120 -1 99 -121", "0.1", "0.1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := cashflow.IRR(numbers(t, strings.Fields(c.flows)...))
			require.NoError(t, err)
			assert.Truef(t, r.Rate.Equal(number(t, c.rate)), "rate %s", r.Rate)
			want := numbers(t, strings.Fields(c.roots)...)
			require.Lenf(t, r.Roots, len(want), "roots %s", r.Roots)
			for k := range want {
				assert.Truef(t, r.Roots[k].Equal(want[k]), "root %s, want %s", r.Roots[k], want[k])
			}
		})
	}
}

func TestIRRNone(t *testing.T) {
	long := make([]decimal.Decimal, 2000)
	long[0], long[1999] = decimal.New(-1, 0), decimal.New(2, 0)
	for _, c := range []struct {
		name  string
		flows []decimal.Decimal
		want  error
	}{
		{"no flows", nil, cashflow.ErrNoFlows},
		{"all zero", numbers(t, "0", "0", "0.00"), cashflow.ErrNoFlows},
		{"money in only", numbers(t, "5", "0", "3"), cashflow.ErrNoSignChange},
		{"money out only", numbers(t, "-5", "-3"), cashflow.ErrNoSignChange},
		{"a single flow", numbers(t, "-5"), cashflow.ErrNoSignChange},
		// y^2 - y + 1 has the discriminant 1 - 4, so no real root.
		{"in, out, in", numbers(t, "1", "-1", "1"), cashflow.ErrNoRoot},
		// (y^2 - 2.2y + 1.22)(y + 1): a complex pair 0.1 beside 1.1.
		{"a near miss", numbers(t, "-100", "120", "98", "-122"), cashflow.ErrNoRoot},
		{"2,000 periods", long, cashflow.ErrTooLarge},
		{"absurd digits", numbers(t, "-1e-900", "1e900"), cashflow.ErrTooLarge},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := cashflow.IRR(c.flows)
			require.ErrorIs(t, err, c.want)
			assert.Equal(t, c.want != cashflow.ErrTooLarge, errorIsNoRate(err))
		})
	}
}
