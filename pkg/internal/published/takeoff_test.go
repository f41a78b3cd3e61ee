package published

import (
	"encoding/json"
	"maps"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
)

// A takeoff is a published example of measuring or of reckoning materials.
type takeoff struct {
	origin
	Inputs, Expected map[string]any
	Tolerance        json.Number
}

// in is an input of the example, found by keys and positions.
func (c takeoff) in(path ...any) decimal.Decimal { return dec(dig(c.Inputs, path)) }

// want is a figure that the example comes to.
func (c takeoff) want(path ...any) decimal.Decimal { return dec(dig(c.Expected, path)) }

// about asserts a figure within the tolerance of the example.
func (c takeoff) about(s *site, want, got decimal.Decimal) {
	s.Helper()
	near(s.T, want, got, dec(c.Tolerance.String()).Add(dust))
}

// dust is more than the digits that a quotient does not keep can come to.
var dust = decimal.New(1, -30)

func dig(x any, path []any) string {
	for _, p := range path {
		switch at := p.(type) {
		case string:
			x = x.(map[string]any)[at]
		case int:
			x = x.([]any)[at]
		}
	}
	if n, ok := x.(json.Number); ok {
		return n.String()
	}
	return x.(string)
}

// count is how many there are in a list of inputs.
func (c takeoff) count(key string) int { return len(c.Inputs[key].([]any)) }

func number(n int64) decimal.Decimal { return decimal.NewFromInt(n) }

func over(a, b decimal.Decimal) decimal.Decimal { return formula.Divide(a, b) }

// percent is a share given in percent.
func percent(x decimal.Decimal) decimal.Decimal { return x.Shift(-2) }

// feet reads "2363 ft 4 in".
func feet(text string) decimal.Decimal {
	sum, words := decimal.Zero, strings.Fields(text)
	for i := 0; i < len(words); i += 2 {
		each := map[string]int64{"ft": 1, "in": 12}[words[i+1]]
		sum = sum.Add(over(dec(words[i]), number(each)))
	}
	return sum
}

// inches is a length in inches as feet.
func inches(n decimal.Decimal) decimal.Decimal { return over(n, number(12)) }

// The examples are built from members, since they are of one line or two each;
// every figure is read from a line of the model that was worked out.
func TestTakeoff(t *testing.T) {
	tests := map[string]func(*site, takeoff){}
	for _, some := range []map[string]func(*site, takeoff){roomTakeoffs, livingTakeoffs, packTakeoffs, sheetTakeoffs, rollTakeoffs, roofTakeoffs, debrisTakeoffs, costTakeoffs} {
		maps.Copy(tests, some)
	}
	cases := published[takeoff](t, "takeoff.json")
	require.Len(t, tests, len(cases))
	for id, c := range cases {
		require.Contains(t, tests, id)
		t.Run(c.name(), func(t *testing.T) { tests[id](newSite(t), c) })
	}
}
