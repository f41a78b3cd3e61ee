package cashflow_test

import (
	"errors"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cashflow"
)

func errorIsNoRate(err error) bool { return errors.Is(err, cashflow.ErrNoRate) }

// stream is so many equal flows, every so many unit periods from the first on.
type stream struct {
	Amount   decimal.Decimal
	N, Whole int
	Part     decimal.Decimal
	Every    int
}

func flowsOf(streams []stream) []cashflow.Flow {
	var flows []cashflow.Flow
	for _, s := range streams {
		for k := range s.N {
			flows = append(flows, cashflow.Flow{Amount: s.Amount, Whole: s.Whole + k*s.Every, Part: s.Part})
		}
	}
	return flows
}

type aprCase struct {
	origin
	PeriodsPerYear     string `json:"periods_per_year"`
	Advances, Payments []stream
	Percent            decimal.Decimal  `json:"apr_percent"`
	PublishedPercent   *decimal.Decimal `json:"published_percent"`
}

// Left out: App. J (c)(7)(ii), whose printed answer could not be confirmed, and
// annuities over a broken number of periods, which are not flows.
func TestPublishedAPR(t *testing.T) {
	hundred := decimal.New(100, 0)
	for _, c := range published[aprCase](t, "apr.json") {
		t.Run(c.name(), func(t *testing.T) {
			r, err := cashflow.APR(flowsOf(c.Advances), flowsOf(c.Payments), number(t, c.PeriodsPerYear))
			require.NoError(t, err)
			got := r.Rate.Mul(hundred)
			c.assertNear(t, c.Percent, got)
			assert.False(t, r.Several())
			if c.PublishedPercent != nil { // printed short of the root, see the case's note
				assert.True(t, within(*c.PublishedPercent, got, 4))
			}
		})
	}
}

func TestAPRRefuses(t *testing.T) {
	at := func(amount string, whole int, part string) []cashflow.Flow {
		return []cashflow.Flow{{Amount: number(t, amount), Whole: whole, Part: number(t, part)}}
	}
	many := at("1", 0, "0")
	for k := range 20 {
		many = append(many, cashflow.Flow{Amount: number(t, "1"), Whole: 1, Part: decimal.New(int64(k), -2)})
	}
	lend := at("100", 0, "0")
	for _, c := range []struct {
		name               string
		advances, payments []cashflow.Flow
		perYear            string
		want               error
	}{
		{"no year", lend, at("110", 1, "0"), "0", cashflow.ErrPeriods},
		{"before the start", lend, at("110", -1, "0"), "12", cashflow.ErrTime},
		{"part of 1", lend, at("110", 0, "1"), "12", cashflow.ErrTime},
		{"negative part", lend, at("110", 1, "-0.5"), "12", cashflow.ErrTime},
		{"part of absurd size", lend, at("110", 1, "1e9000"), "12", cashflow.ErrTime},
		{"part of absurd fineness", lend, at("110", 1, "1e-9000"), "12", cashflow.ErrTime},
		{"absurd amount", lend, at("1e9000", 1, "0.5"), "12", cashflow.ErrTooLarge},
		{"centuries", lend, at("110", 5000, "0"), "12", cashflow.ErrTooLarge},
		{"too many parts", lend, many, "12", cashflow.ErrTooLarge},
		{"nothing", nil, nil, "12", cashflow.ErrNoFlows},
		{"cancel", lend, lend, "12", cashflow.ErrNoFlows},
		{"never paid back", lend, nil, "12", cashflow.ErrNoSignChange},
		// 100 = 50 / (1 + i/2) needs i = -1, which is not above -1.
		{"only at the limit", lend, at("50", 0, "0.5"), "12", cashflow.ErrNoRoot},
		// 100 = 40 / (1 + i/2) needs i = -1.2.
		{"beyond the limit", lend, at("40", 0, "0.5"), "12", cashflow.ErrNoRoot},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := cashflow.APR(c.advances, c.payments, number(t, c.perYear))
			require.ErrorIs(t, err, c.want)
		})
	}
}

// By hand: 100 = 110 / (1 + i/2) gives i = 0.2; with two advances
// 100 + 50/(1+i) = 165/(1+i)^1 gives i = 0.15.
func TestAPRByHand(t *testing.T) {
	one := decimal.New(1, 0)
	lend := cashflow.Flow{Amount: number(t, "100")}
	r, err := cashflow.APR([]cashflow.Flow{lend}, []cashflow.Flow{{Amount: number(t, "110"), Part: number(t, "0.5")}}, one)
	require.NoError(t, err)
	assert.Equal(t, "0.2", r.Rate.String())
	draw := cashflow.Flow{Amount: number(t, "50"), Whole: 1}
	r, err = cashflow.APR([]cashflow.Flow{lend, draw}, []cashflow.Flow{{Amount: number(t, "165"), Whole: 1}}, one)
	require.NoError(t, err)
	assert.Equal(t, "0.15", r.Rate.String())
}
