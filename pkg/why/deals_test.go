package why_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/why"
)

const workedDeals = "../../testdata/worked-deals.json"

func worked(t testing.TB) []modeltest.Worked {
	deals, err := modeltest.ReadWorked(workedDeals)
	require.NoError(t, err)
	require.Len(t, deals, 5)
	return deals
}

func evaluate(t require.TestingT, d *model.Member) (*model.Model, *exact.Values) {
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	return m, v
}

// each calls visit for every line of a deal in every month.
func each(m *model.Model, v *exact.Values, visit func(*why.Tree)) {
	r := why.NewReader(m, v)
	for _, c := range m.Cells {
		last := 0
		if c.Line.Monthly {
			last = v.Months()
		}
		for month := 0; month <= last; month++ {
			visit(r.Explain(c, month))
		}
	}
}

func TestPartsOfEveryFigureAddUpToIt(t *testing.T) {
	for _, w := range worked(t) {
		m, v := evaluate(t, w.Deal.Member())
		each(m, v, func(x *why.Tree) {
			require.True(t, x.Value.Equal(v.In(x.Cell, x.Month)))
			var sum decimal.Decimal
			for _, p := range x.Parts() {
				sum = sum.Add(p.Value.Mul(decimal.NewFromInt(int64(p.Sign))))
			}
			require.True(t, sum.Equal(x.Value), "%s: %s", why.Label(x.Cell, x.Month), sum)
		})
	}
}

func TestEveryWalkEndsAtInputsNumbersOrDefaults(t *testing.T) {
	for _, w := range worked(t) {
		m, v := evaluate(t, w.Deal.Member())
		given := 0
		each(m, v, func(x *why.Tree) {
			if x.Kind == why.Line {
				require.NotEmpty(t, x.Terms(), x.Cell.Name())
			}
			for _, y := range x.Terms() {
				y.Walk(func(z *why.Tree) {
					if len(z.Terms()) > 0 {
						return
					}
					switch z.Kind {
					case why.Given:
						given++
						require.NotNil(t, z.Cell.Given)
					case why.Operation: // the number of the month, or a total over no members
						require.Contains(t, []string{"month", "total", "largest"}, z.Op.Name)
					default:
						require.Contains(t, []why.Kind{why.Number, why.Word, why.Nothing, why.Rounding}, z.Kind)
					}
				})
				return // one formula deep is enough: what it reads is visited by itself
			}
		})
		require.Positive(t, given)
	}
}

func TestTamperedValuesAreCaught(t *testing.T) {
	deals := worked(t)
	rapid.Check(t, func(t *rapid.T) {
		m, v := evaluate(t, rapid.SampledFrom(deals).Draw(t, "deal").Deal.Member())
		c := rapid.SampledFrom(m.Cells).Draw(t, "cell")
		x := why.Explain(m, v, c, rapid.IntRange(0, v.Months()).Draw(t, "month"))
		require.NoError(t, x.Check())
		var all []*why.Tree
		x.Walk(func(y *why.Tree) { all = append(all, y) })
		y := rapid.SampledFrom(all).Draw(t, "node")
		by := decimal.New(rapid.Int64Range(1, 1e9).Draw(t, "by"), -rapid.Int32Range(0, 30).Draw(t, "places"))
		y.Value = y.Value.Add(by)
		var wrong *why.CheckError
		require.ErrorAs(t, x.Check(), &wrong)
	})
}

func TestTamperedSignsAreCaught(t *testing.T) {
	m, v := evaluate(t, worked(t)[0].Deal.Member())
	x := why.Explain(m, v, m.Find(m.Root, "profit_by_parts"), 0)
	x.Parts()[1].Sign = 1 // selling costs added, not taken away
	require.ErrorContains(t, x.Check(), "its terms give")
}

func TestValuesOfAnotherDealAreCaught(t *testing.T) {
	m, _ := evaluate(t, worked(t)[0].Deal.Member())
	price := m.Find(m.Root, "price")
	v, err := exact.NewPlan(m).Evaluate(exact.Change{Cell: price, Value: decimal.NewFromInt(200000)})
	require.NoError(t, err)
	err = why.Explain(m, v, m.Find(m.Root, "profit"), 0).Check()
	require.EqualError(t, err, "price: the value is 200000, but its terms give 212500")
}

func TestNothingPrintedIsWiderThanAsked(t *testing.T) {
	for _, w := range worked(t) {
		d := w.Deal.Member()
		d.Give("price", model.Value{Number: w.Deal.Price, Text: w.Deal.Price.String(), Pos: diag.Pos{File: "house.yaml", Line: 14, Col: 8}})
		m, v := evaluate(t, d)
		r := why.NewReader(m, v)
		for _, c := range m.Cells {
			for _, width := range []int{80, 100} {
				var b bytes.Buffer
				require.NoError(t, r.Explain(c, v.Months()).Write(&b, why.Options{Depth: 3, Width: width}))
				require.True(t, strings.HasPrefix(b.String(), c.Name()))
				for line := range strings.SplitSeq(b.String(), "\n") {
					require.LessOrEqual(t, utf8.RuneCountInString(line), width, "%s\n%s", line, b.String())
					require.Equal(t, strings.TrimRight(line, " "), line)
				}
			}
		}
	}
}

func TestAllTheWayDownEveryInputThatCountsIsThere(t *testing.T) {
	m, v := evaluate(t, house(t))
	x := why.Explain(m, v, m.Find(m.Root, "profit"), 0)
	all := printed(t, x, why.Options{Depth: -1, Width: 400})
	for _, place := range []string{"house.yaml:4  price: $212,500", "house.yaml:6  expected_discount: 2%", "house.yaml:31  rate: 11.25%", "house.yaml:21  lump: $68,431.27"} {
		require.Contains(t, all, place)
	}
	require.NotEmpty(t, printed(t, x, why.Options{Depth: -1}), "deeper than 80 columns are wide")
	b, err := json.Marshal(x.JSON(-1))
	require.NoError(t, err)
	require.Less(t, len(b), 4<<20, "a line is laid open once only")
	require.Contains(t, string(b), `"given":{"text":"11.25%","at":{"file":"house.yaml","line":31,"col":12}}`)
}

func BenchmarkCheckAll(b *testing.B) {
	m, v := evaluate(b, worked(b)[0].Deal.Member())
	for b.Loop() {
		why.CheckAll(m, v)
	}
}

func BenchmarkExplainProfit(b *testing.B) {
	m, v := evaluate(b, worked(b)[0].Deal.Member())
	for b.Loop() {
		var out bytes.Buffer
		why.Explain(m, v, m.Find(m.Root, "profit"), 0).Write(&out, why.Options{})
	}
}
