package cashflow_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// origin is what every published case carries besides its own fields.
type origin struct {
	ID, Source, Section string
	HowObtained         string `json:"how_obtained"`
	Tolerance           decimal.Decimal
	RelativeTolerance   decimal.Decimal `json:"relative_tolerance"`
}

// name is the subtest's name: who published the case, and where.
func (o origin) name() string {
	n := o.ID + " " + o.Source + " " + o.Section
	if strings.Contains(o.HowObtained, "from memory") {
		n += " (from memory)"
	}
	return n
}

// assertNear compares within the tolerance the case states.
func (o origin) assertNear(t *testing.T, want, got decimal.Decimal) {
	t.Helper()
	within := o.Tolerance
	if o.RelativeTolerance.IsPositive() {
		within = want.Abs().Mul(o.RelativeTolerance)
	}
	assert.Truef(t, got.Sub(want).Abs().LessThanOrEqual(within),
		"got %s, published %s, tolerance %s (%s)", got, want, within, o.HowObtained)
}

// published reads the cases of one file.
func published[T any](t *testing.T, file string) []T {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", file))
	require.NoError(t, err)
	var cases []T
	require.NoError(t, json.Unmarshal(text, &cases))
	require.NotEmpty(t, cases)
	return cases
}

// number reads a decimal or a quotient of two, to 40 places.
func number(t require.TestingT, s string) decimal.Decimal {
	top, bottom, found := strings.Cut(s, "/")
	a, err := decimal.NewFromString(top)
	require.NoError(t, err)
	if !found {
		return a
	}
	b, err := decimal.NewFromString(bottom)
	require.NoError(t, err)
	return a.DivRound(b, 40)
}

func numbers(t require.TestingT, list ...string) []decimal.Decimal {
	r := make([]decimal.Decimal, len(list))
	for k, s := range list {
		r[k] = number(t, s)
	}
	return r
}

// within reports |a - b| <= 10^-places.
func within(a, b decimal.Decimal, places int32) bool {
	return a.Sub(b).Abs().LessThanOrEqual(decimal.New(1, -places))
}
