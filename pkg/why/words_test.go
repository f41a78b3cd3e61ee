package why_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/why"
)

// small is a document to try single operators in: a deal of three months with two fees.
const small = `
set fee of deal; a charge
sale_month | deal | month
  = 3 month
  the month of the sale
price | deal | $
  = input
  the price
extra | deal | $
  = input, else 0
  an extra
half | deal | share
  = input, assume 0.5
  a half
way | deal | choice
  = input of up, down; else "up"
  a way
sure | deal | flag
  = input, else 1
  a yes
flow | deal by month | $
  = if(month = 0, -price, price / 2)
  a flow
amount | fee | $
  = input
  what it charges
sum_so_far | fee | $
  = previous(sum_so_far) + amount
  this and the fees before it
`

func tiny(t *testing.T, unit, formula string) (*model.Model, *exact.Values, *model.Cell) {
	doc, err := model.Parse(model.Source{Name: "small.txt", Text: small + "tried | deal" + unit + "\n  = " + formula + "\n  what is tried\n"})
	require.NoError(t, err)
	d := model.NewDeal("tiny")
	d.Give("price", model.Value{Number: decimal.RequireFromString("1000.01"), Text: "1,000.01", Pos: diag.Pos{File: "tiny.yaml", Line: 3, Col: 8}})
	for i := range 2 {
		d.Add("fee", "", fmt.Sprintf("fee %d", i+1)).GiveNumber("amount", decimal.NewFromInt(int64(10*i+10)))
	}
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	require.NoError(t, why.CheckAll(m, v))
	return m, v, m.Find(m.Root, "tried")
}

// The figures follow from price $1,000.01, half 50% and the fees $10 and $20 by hand.
func TestEveryOperatorHasItsWords(t *testing.T) {
	for _, c := range []struct {
		unit, formula string
		month         int
		words         string
		because       []string
	}{
		{" | $", "price + 5 $ - half * price", 0, "$1,000.01 + $5.00 - 50% x $1,000.01 = $505.005", nil},
		{" | $", "-price", 0, "-$1,000.01", nil},
		{" | $", "price - (extra - 5 $)", 0, "$1,000.01 + $5.00 = $1,005.01", nil},
		{" | $", "cents(half * price)", 0, "50% x $1,000.01 = $500.005, rounded to the cent: $500.01", nil},
		{" | $", "cents(price * (1 + half))", 0, "$1,000.01 x (100% + 50%) = $1,500.015, rounded to the cent: $1,500.02", nil},
		{" | $", "cents(price * 2)", 0, "$1,000.01 x 2 = $2,000.02", nil},
		{" | share", "2 $ / price", 0, "$2.00 / $1,000.01 = 0.2%", nil},
		{" | $/month", "price / 3 month", 0, "$1,000.01 / 3 months = $333.336667 a month", nil},
		{" | $", "min(price, 7 $, half * price)", 0, "the smallest of $1,000.01, $7.00 and 50% x $1,000.01 = $7.00", nil},
		{" | $", "max(0, price)", 0, "$1,000.01", []string{"at least $0.00, which changes nothing here"}},
		{" | $", "max(0, -price)", 0, "the largest of $0.00 and -$1,000.01 = $0.00", nil},
		{" | $", "max(0, extra)", 0, "$0.00", []string{"at least $0.00, which changes nothing here"}},
		{" | $", "cents(price / 3 * 3)", 0, "$1,000.01 / 3 x 3 = $1,000.01", nil}, // off by the 42nd digit
		{" | $", "min(price, 5000 $)", 0, "$1,000.01", []string{"at most $5,000.00, which changes nothing here"}},
		{" | $", "if(price > 5 $, price, 0)", 0, "$1,000.01", []string{"because price ($1,000.01) is more than $5.00"}},
		{" | $", "if(price <= 5 $, 0, extra)", 0, "$0.00", []string{"because price ($1,000.01) is more than $5.00"}},
		{" | $", `if(way = "down", 1 $, 2 $)`, 0, "$2.00", []string{"because way is up, not down"}},
		{" | $", `if(way <> "down" and sure = 1, 1 $, 2 $)`, 0, "$1.00", []string{"because way is up, not down and sure is yes"}},
		{" | $", `if(price < 5 $ or half >= 0.5, 1 $, 2 $)`, 0, "$1.00", []string{"because half (50%) is at least 50%"}},
		{" | $", `if(price < 5 $ or half > 0.5, 1 $, 2 $)`, 0, "$2.00", []string{"because price ($1,000.01) is at least $5.00 and half (50%) is at most 50%"}},
		{" | $", `if(not(price = 5 $), 1 $, 2 $)`, 0, "$1.00", []string{"because price ($1,000.01) is not $5.00"}},
		{" | flag", "price > 5 $", 0, "price ($1,000.01) is more than $5.00", nil},
		{" | flag", "price < 5 $", 0, "price ($1,000.01) is at least $5.00", nil},
		{" | flag", "price + extra > half * price", 0, "price + extra ($1,000.01) is more than half * price ($500.005)", nil},
		{" | count", "ceil(price / 300 $)", 0, "($1,000.01 / $300.00) rounded up to a whole number = 4", nil},
		{" | count", "floor(price / 300 $)", 0, "($1,000.01 / $300.00) rounded down to a whole number = 3", nil},
		{" | share", "power(1 + half, 2)", 0, "(100% + 50%) to the power of 2 = 225%", nil},
		{" | share", "root(half / 2)", 0, "the square root of (50% / 2) = 50%", nil},
		// by hand: 1000.01 × 0.01 ÷ (1 − 1.01^−2)
		{" | $", "level_payment(price, 0.01, 2)", 0, "the level payment that clears $1,000.01 at 1% a month over 2 months = $507.517513", nil},
		{" by month | $", "prior(flow)", 2, "$500.005", nil},
		{" by month | $", "prior(flow)", 0, "$0.00", nil},
		{" by month | $", "ago(flow, 2 month)", 2, "-$1,000.01", []string{"month 0: 2 months before month 2"}},
		{" by month | $", "running(flow)", 1, "-$500.005", nil},
		{" by month | month", "month - 1 month", 2, "month 2 - 1 month = 1 month", nil},
		{" | $", "at(flow, sale_month)", 0, "$500.005", []string{"in sale_month (month 3)"}},
		{" | $", "sum(flow)", 0, "$500.005", nil},
		{" | $", "lowest(flow)", 0, "the lowest is that of month 0", nil},
		{" | month", "first_month(flow > 0)", 0, "month 1 is the first in which flow ($500.005) is more than $0.00", nil},
		{" | month", "first_month(flow > price)", 0, "it holds in no month, which counts as month 0", nil},
		{" | $", "total(amount of fee)", 0, "$30.00", nil},
	} {
		t.Run(c.formula, func(t *testing.T) {
			m, v, cell := tiny(t, c.unit, c.formula)
			x := why.Explain(m, v, cell, c.month)
			require.Equal(t, c.words, x.Words())
			require.Equal(t, c.because, x.Because())
		})
	}
}

func printed(t *testing.T, x *why.Tree, opt why.Options) string {
	var b bytes.Buffer
	require.NoError(t, x.Write(&b, opt))
	return b.String()
}

func TestPrintedRows(t *testing.T) {
	for _, c := range []struct{ unit, formula, want string }{
		{" | $", "price + extra + 5 $", `tried = $1,005.01
  what is tried
  rule: price + extra + 5 $
  + price              $1,000.01  tiny.yaml:3  price: 1,000.01
  + fixed in the rule      $5.00
`},
		{" | $", "max(price, 2000 $, half * price)", `tried = $2,000.00
  what is tried
  rule: max(price, 2000 $, half * price)
  the largest of $1,000.01, $2,000.00 and 50% x $1,000.01 = $2,000.00
  price              $1,000.01  tiny.yaml:3  price: 1,000.01
  fixed in the rule  $2,000.00  decides
  half * price        $500.005  50% x $1,000.01
      half         50%  assumed, as it is not given: a half
      price  $1,000.01  tiny.yaml:3  price: 1,000.01
`},
		{" | $", "total(sum_so_far of fee) + cents(price / 2)", `tried = $540.01
  what is tried
  rule: total(sum_so_far of fee) + cents(price / 2)
  + total(sum_so_far of fee)   $40.00
      sum_so_far: this and the fees before it
      + fee 1: sum_so_far  $10.00
          rule: previous(sum_so_far) + amount
          + fee 1: amount  $10.00  given: 10
      + fee 2: sum_so_far  $30.00
          + fee 1: sum_so_far  $10.00  see above
          + fee 2: amount      $20.00  given: 20
  + cents(price / 2)          $500.01
      $1,000.01 / 2 = $500.005, rounded to the cent: $500.01
      price  $1,000.01  tiny.yaml:3  price: 1,000.01
`},
		{" | $", "cents(price / 3 + half * price + extra)", `tried = $833.34
  what is tried
  rule: cents(price / 3 + half * price + extra)
  + price / 3             $333.336667  $1,000.01 / 3
      price  $1,000.01  tiny.yaml:3  price: 1,000.01
  + half * price             $500.005  50% x $1,000.01
      half         50%  assumed, as it is not given: a half
      price  $1,000.01  tiny.yaml:3  price: 1,000.01
  + rounding to the cent   -$0.001667
`},
		{" | $", "extra * 2", `tried = $0.00
  what is tried
  rule: extra * 2
  $0.00 x 2 = $0.00
  extra  $0.00  not given
`},
		{" | $", "total(0 $ of fee) + extra", `tried = $0.00
  what is tried
  rule: total(0 $ of fee) + extra
  nothing is given for it, so it is $0.00
`},
	} {
		t.Run(c.formula, func(t *testing.T) {
			m, v, cell := tiny(t, c.unit, c.formula)
			require.Equal(t, c.want, printed(t, why.Explain(m, v, cell, 0), why.Options{}))
		})
	}
}

func TestAMonthThatTheDealDoesNotHaveIsSaid(t *testing.T) {
	m, v, _ := tiny(t, " | $", "price")
	x := why.Explain(m, v, m.Find(m.Root, "flow"), 9)
	require.NoError(t, x.Check())
	require.Equal(t, "flow, month 9 = $0.00\n  a flow\n  the deal has no such month\n", printed(t, x, why.Options{}))
}

func TestWordsOfTheFileCannotDisturbTheTerminal(t *testing.T) {
	doc, err := model.Parse(model.Source{Name: "small.txt", Text: small})
	require.NoError(t, err)
	d := model.NewDeal("tiny")
	d.Give("price", model.Value{Number: decimal.NewFromInt(5), Text: "$5\x1b[2J\n$6"})
	d.Add("fee", "", "one\n\x1b[1mfee").GiveNumber("amount", decimal.NewFromInt(1))
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	require.NotContains(t, printed(t, why.Explain(m, v, m.Find(m.Root, "price"), 0), why.Options{}), "\x1b")
	got := printed(t, why.Explain(m, v, m.Find(m.Root.Children[0], "sum_so_far"), 0), why.Options{})
	require.NotContains(t, got, "\x1b")
	require.Contains(t, got, "+ one  [1mfee: amount  $1.00  given: 1\n")
}

func TestColourOnlyAddsCodes(t *testing.T) {
	m, v, cell := tiny(t, " | $", "max(price, 2000 $, half * price) - sum(flow)")
	x := why.Explain(m, v, cell, 0)
	colored := printed(t, x, why.Options{Color: true})
	require.Contains(t, colored, "\x1b[1m")
	for _, code := range []string{"\x1b[0m", "\x1b[1m", "\x1b[2m"} {
		colored = string(bytes.ReplaceAll([]byte(colored), []byte(code), nil))
	}
	require.Equal(t, printed(t, x, why.Options{}), colored)
}

func TestJSONHoldsDecimalsAsStringsAndZeroTermsToo(t *testing.T) {
	m, v, cell := tiny(t, " | $", "price - extra")
	b, err := json.Marshal(why.Explain(m, v, cell, 0).JSON(1))
	require.NoError(t, err)
	require.JSONEq(t, `{
		"kind": "line", "line": "tried", "name": "tried", "value": "1000.01", "text": "$1,000.01", "unit": "$",
		"meaning": "what is tried", "source": "formula", "formula": "price - extra", "words": "$1,000.01",
		"terms": [{"kind": "operation", "value": "1000.01", "text": "$1,000.01", "unit": "$", "formula": "price - extra", "op": "+", "sign": 1, "terms": [
			{"kind": "line", "line": "price", "name": "price", "value": "1000.01", "text": "$1,000.01", "unit": "$", "meaning": "the price",
				"source": "given", "given": {"text": "1,000.01", "at": {"file": "tiny.yaml", "line": 3, "col": 8}}, "sign": 1},
			{"kind": "line", "line": "extra", "name": "extra", "value": "0", "text": "$0.00", "unit": "$", "meaning": "an extra",
				"source": "default", "formula": "0", "sign": -1}
		]}]
	}`, string(b))
}
