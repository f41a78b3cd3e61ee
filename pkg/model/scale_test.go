package model_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// roundDeal draws a deal whose every figure falls on a whole cent, so that the
// one step that does not scale with money, rounding to the cent, never bites:
// whole months, 1% a month, amounts that divide by what they are divided by.
func roundDeal(t *rapid.T) *model.Member {
	draw := func(name string, least, most, each int64) decimal.Decimal {
		return decimal.NewFromInt(rapid.Int64Range(least, most).Draw(t, name) * each)
	}
	d := model.NewDeal("round")
	d.GiveNumber("price", draw("price", 1, 40, 12000))
	d.GiveNumber("after_repair_value", draw("value", 1, 60, 12000))
	d.GiveNumber("lead_in", draw("lead-in", 0, 1, 1))
	d.GiveNumber("renovation", draw("renovation", 0, 4, 1))
	d.GiveNumber("marketing", draw("marketing", 0, 2, 1))
	d.GiveNumber("escrow", draw("escrow", 1, 2, 1))
	d.GiveNumber("cash_available", draw("cash", 0, 10, 12000))
	d.GiveNumber("target_profit", draw("target", 0, 4, 12000))
	works := d.Add("cost", "", "works")
	works.GiveNumber("lump", draw("works", 0, 20, 12000))
	works.GiveNumber("own_hours", draw("hours", 0, 100, 1))
	works.GiveNumber("hired_rate", draw("hired", 0, 100, 1))
	roundFees(d, draw)
	for range rapid.IntRange(0, 2).Draw(t, "loans") {
		l := d.Add("loan", "", "loan")
		for line, share := range map[string]string{
			"price_share": "0.8", "renovation_share": "0.5", "value_cap": "0.7", "cost_cap": "0.9", "rate": "0.12", "points_share": "0.02", "exit_share": "0.01",
		} {
			l.GiveNumber(line, number(share))
		}
		l.GiveNumber("draw_fee", draw("draw fee", 0, 3, 50))
	}
	return d
}

func roundFees(d *model.Member, draw func(string, int64, int64, int64) decimal.Decimal) {
	closing := d.Add("fee", "purchase_fee", "closing")
	closing.Give("base", model.Value{Refers: "price"})
	closing.GiveNumber("share", number("0.01"))
	closing.GiveNumber("least", draw("least", 0, 10, 100))
	holding := d.Add("fee", "holding_fee", "holding")
	holding.GiveNumber("a_month", draw("a month", 0, 10, 100))
	holding.GiveNumber("a_year", draw("a year", 0, 10, 1200))
	stamps := d.Add("fee", "selling_fee", "stamps") // so much for each $500 or part
	stamps.Give("base", model.Value{Refers: "sale_price"})
	stamps.GiveNumber("unit_size", number("500"))
	stamps.GiveNumber("unit_price", draw("stamps", 0, 4, 1))
	tax := d.Add("fee", "selling_fee", "transfer tax")
	tax.Give("base", model.Value{Refers: "sale_price"})
	table := tax.Add("table", "", "rates")
	low, high := table.Add("bracket", "", "low"), table.Add("bracket", "", "high")
	edge := draw("edge", 1, 60, 10000)
	low.GiveNumber("upper", edge)
	low.GiveNumber("rate", number("0.01"))
	high.GiveNumber("lower", edge)
	high.GiveNumber("rate", number("0.02"))
}

func isMoney(l *model.Line) bool { return strings.HasPrefix(l.Unit, "$") }

// scaled multiplies every amount of money that a deal gives.
func scaled(m *model.Member, by decimal.Decimal, doc *model.Document) {
	for _, g := range m.Given {
		name, v := g.Line, *g.Value
		l := doc.Line(m.Kind, name)
		if l == nil {
			l = doc.Line(m.Set, name)
		}
		if isMoney(l) && v.Refers == "" {
			m.GiveNumber(name, v.Number.Mul(by))
		}
	}
	for _, c := range m.Children {
		scaled(c, by, doc)
	}
}

// hasDollars reports whether a line has an amount of its own, such as the trillion
// dollars that stand for no limit; it does not scale.
func hasDollars(l *model.Line) bool {
	found := false
	if l.Formula() != nil {
		l.Formula().Walk(func(n *formula.Node) { found = found || n.IsNumber() && n.Unit == "$" && !n.Num.IsZero() })
	}
	return found
}

// splits are the lines that share cents out, so that rounding bites whatever the figures.
var splits = []string{"lender_pays", "lenders_pay_disposal", "lenders_pay_contingency"}

// keptApart is more than the digits that a line does not keep can differ by.
var keptApart = decimal.New(1, -39)

func TestMoneyScales(t *testing.T) {
	doc, err := model.Standard()
	require.NoError(t, err)
	hundred := decimal.NewFromInt(100)
	rapid.Check(t, func(t *rapid.T) {
		d := roundDeal(t)
		before, m := values(t, doc, d)
		scaled(d, hundred, doc)
		after, _ := values(t, doc, d)
		for i, c := range m.Cells {
			if hasDollars(c.Line) || slices.Contains(splits, c.Line.Name) {
				continue
			}
			for month, x := range before[i] {
				if isMoney(c.Line) {
					x = x.Mul(hundred)
				}
				require.True(t, x.Sub(after[i][month]).Abs().LessThan(keptApart), "%s, month %d: %s, not %s", c.Name(), month, after[i][month], x)
			}
		}
	})
}

// values are those of every cell; a cell of one value has one.
func values(t require.TestingT, doc *model.Document, d *model.Member) ([][]decimal.Decimal, *model.Model) {
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	v, err := exact.Evaluate(m)
	require.NoError(t, err)
	out := make([][]decimal.Decimal, len(m.Cells))
	for i, c := range m.Cells {
		out[i] = []decimal.Decimal{v.Of(c)}
		if c.Line.Monthly {
			out[i] = v.ByMonth(c)
		}
	}
	return out, m
}
