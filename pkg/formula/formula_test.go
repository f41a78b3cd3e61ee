package formula_test

import (
	"encoding/json"
	"os"
	"regexp"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
)

// The words that look along the months or over a set have no rule of their own.
var acrossMonthsOrSets = []formula.Code{
	formula.Month, formula.Prior, formula.Ago, formula.Running, formula.Sum, formula.Lowest,
	formula.FirstMonth, formula.At, formula.Total, formula.Largest, formula.Previous,
}

func TestTable(t *testing.T) {
	names, isWord := map[string]bool{}, regexp.MustCompile(`^[a-z_]+$`).MatchString
	for i, o := range formula.Table {
		assert.Equal(t, formula.Code(i), o.Code, o.Name)
		assert.False(t, names[o.Name], "%s is there twice", o.Name)
		names[o.Name] = true
		assert.NotEmpty(t, o.Words, o.Name)
		assert.NotNil(t, o.Unit, o.Name)
		assert.LessOrEqual(t, o.Least, o.Most, o.Name)
		if o.Binds > 0 {
			assert.Zero(t, o.Most, "%s stands between its values", o.Name)
		} else {
			assert.True(t, isWord(o.Name), o.Name)
		}
		across := o.Code >= formula.Month
		assert.Equal(t, across, o.Exact == nil, "%s: the exact rule", o.Name)
		assert.Equal(t, across, o.Range == nil, "%s: the range rule", o.Name)
		if across {
			assert.Equal(t, acrossMonthsOrSets[i-int(formula.Month)], o.Code, o.Name)
		}
	}
	assert.Equal(t, int(formula.Month)+len(acrossMonthsOrSets), len(formula.Table))
}

// Every operator with a rule stands in a data file.
func TestDataCoversTheTable(t *testing.T) {
	seen := map[*formula.Op]bool{}
	for _, name := range []string{"arithmetic", "compare", "rounding", "power", "level-payment", "units"} {
		for _, p := range pairs(t, "../../testdata/expr/"+name+".txt") {
			if n, err := formula.Parse(p.text); err == nil && p.expect == "" {
				n.Walk(func(n *formula.Node) { seen[n.Op] = true })
			}
		}
	}
	for _, o := range formula.Table[:formula.Month] {
		assert.True(t, seen[o], "no data for %s", o.Name)
	}
}

// The values and where they come from stand in the file.
func TestPublishedLevelPayments(t *testing.T) {
	b, err := os.ReadFile("../../testdata/published/level-payment.json")
	require.NoError(t, err)
	var all []struct {
		ID, Quantity, Rate, Value    string
		Principal                    string
		Periods                      int64
		Tolerance, RelativeTolerance decimal.Decimal
	}
	require.NoError(t, json.Unmarshal(regexp.MustCompile(`relative_tolerance`).ReplaceAll(b, []byte("relativetolerance")), &all))
	checked := 0
	for _, c := range all {
		if c.Quantity != "payment" {
			continue
		}
		checked++
		n, err := formula.Parse("level_payment(" + c.Principal + ", " + c.Rate + ", " + decimal.NewFromInt(c.Periods).String() + ")")
		require.NoError(t, err, c.ID)
		got, err := evaluate(n)
		require.NoError(t, err, c.ID)
		want := decimal.RequireFromString(c.Value)
		near := decimal.Max(c.Tolerance, c.RelativeTolerance.Mul(want))
		assert.True(t, got.exact.Sub(want).Abs().LessThanOrEqual(near), "%s: %s", c.ID, got.exact)
	}
	require.Equal(t, 5, checked)
}

func TestUnits(t *testing.T) {
	for _, name := range []string{"$", "month", "quarter", "year", "day", "hour", "ft", "each", "$/month", "share/year", "month/year", "$/hour", "/month"} {
		u, err := formula.ParseUnit(name)
		require.NoError(t, err, name)
		again, err := formula.ParseUnit(u.String())
		require.NoError(t, err, name)
		assert.Equal(t, u, again, name)
	}
	for _, name := range []string{"", "share", "flag", "choice", "count"} {
		u, err := formula.ParseUnit(name)
		require.NoError(t, err, name)
		assert.Equal(t, formula.Unit{}, u, name)
	}
	for name, words := range map[string]string{
		"dollars": `unknown unit "dollars"`, "$/month/year": `unknown unit "month/year"`, "$ month": `unknown unit "$ month"`, "$/moon": `unknown unit "moon"`,
	} {
		_, err := formula.ParseUnit(name)
		assert.EqualError(t, err, words, name)
	}
	assert.Equal(t, "any", formula.AnyUnit.String())
}

// The units of the words that the data files cannot work out.
func TestUnitsAcrossMonthsAndSets(t *testing.T) {
	unit := func(name string) formula.Unit {
		u, err := formula.ParseUnit(name)
		require.NoError(t, err)
		return u
	}
	money, months, plain := unit("$"), unit("month"), unit("share")
	tests := []struct {
		code formula.Code
		in   []formula.Unit
		want string // a unit or, after !, a refusal
	}{
		{formula.Month, nil, "month"},
		{formula.Prior, []formula.Unit{money}, "$"},
		{formula.Ago, []formula.Unit{money, months}, "$"},
		{formula.Ago, []formula.Unit{money, formula.AnyUnit}, "$"},
		{formula.Ago, []formula.Unit{money, plain}, "!expected months, found a plain number"},
		{formula.Running, []formula.Unit{money}, "$"},
		{formula.Sum, []formula.Unit{money}, "$"},
		{formula.Lowest, []formula.Unit{months}, "month"},
		{formula.FirstMonth, []formula.Unit{plain}, "month"},
		{formula.FirstMonth, []formula.Unit{money}, "!expected a yes or no, found $"},
		{formula.At, []formula.Unit{money, months}, "$"},
		{formula.At, []formula.Unit{money, money}, "!expected months, found $"},
		{formula.Total, []formula.Unit{money}, "$"},
		{formula.Previous, []formula.Unit{money}, "$"},
	}
	for _, tt := range tests {
		o := formula.Table[tt.code]
		u, err := o.Unit(tt.in)
		if tt.want[0] == '!' {
			assert.EqualError(t, err, tt.want[1:], o.Name)
			continue
		}
		assert.NoError(t, err, o.Name)
		assert.Equal(t, tt.want, u.String(), o.Name)
	}
}

// A number of many digits is cut; one of few is not.
func TestTrim(t *testing.T) {
	short := decimal.RequireFromString("1234567890.123456789")
	assert.Equal(t, short, formula.Trim(short))
	third := decimal.New(1, 0).DivRound(decimal.New(3, 0), 200)
	assert.Equal(t, 60, formula.Trim(third).NumDigits())
	assert.Equal(t, 60, formula.Trim(third.Shift(150)).Round(0).NumDigits()-90) // 150 places before the point
}
