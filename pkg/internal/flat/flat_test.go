package flat

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// deal is a small one with a loan and monthly taxes: 2.5 months in all.
func deal(t *testing.T) *model.Model {
	d := model.NewDeal("small")
	for line, x := range map[string]decimal.Decimal{"price": decimal.NewFromInt(100_000), "after_repair_value": decimal.NewFromInt(150_000), "marketing": decimal.New(15, -1), "escrow": decimal.NewFromInt(1)} {
		d.GiveNumber(line, x)
	}
	l := d.Add("loan", "", "loan")
	l.GiveNumber("price_share", decimal.New(8, -1))
	l.GiveNumber("value_cap", decimal.New(7, -1))
	l.GiveNumber("rate", decimal.New(12, -2))
	d.Add("fee", "holding_fee", "taxes").GiveNumber("a_month", decimal.NewFromInt(100))
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	return m
}

func cells(m *model.Model, names ...string) (out []*model.Cell) {
	for _, n := range names {
		out = append(out, m.Find(m.Root, n))
	}
	return out
}

func free(c []*model.Cell) (out []Along) {
	for _, x := range c {
		out = append(out, Along{Cell: x, Least: math.Inf(-1), Most: math.Inf(1)})
	}
	return out
}

func codes(l *List) map[formula.Code]int {
	n := map[formula.Code]int{}
	for _, v := range l.Values {
		n[v.Code]++
	}
	return n
}

// Where no time varies, which month is which is settled, and nothing looks back.
func TestWhatIsKnownIsSettled(t *testing.T) {
	m := deal(t)
	q, err := Ask(m, free(cells(m, "price")), cells(m, "profit"), nil)
	require.NoError(t, err)
	require.Nil(t, q.Months, "the price moves no time")
	require.Equal(t, 3, q.Last)
	l, err := q.List(q.Last)
	require.NoError(t, err)
	for code := range codes(l) {
		require.NotContains(t, []formula.Code{formula.Equal, formula.LessEqual, formula.If}, code, "which month is that of the sale is settled")
	}
	for i, v := range l.Values {
		for _, a := range v.Args[:v.Takes()] {
			require.Less(t, int(a), i, "a value is made of what stands before it")
		}
	}
	again, err := q.List(q.Last)
	require.NoError(t, err)
	require.Same(t, l, again)
}

// The ends of axes settle more, and a hold of known months lies within them.
func TestEndsSettleMore(t *testing.T) {
	m := deal(t)
	axes := free(cells(m, "after_repair_value", "late_sale"))
	open, err := Ask(m, axes, cells(m, "profit", "sale_month"), nil)
	require.NoError(t, err)
	for i := range axes {
		axes[i].Least, axes[i].Most = 0, 1e6 // so the cap is under the trillion that stands for none
	}
	ended, err := Ask(m, axes, cells(m, "profit", "sale_month"), nil)
	require.NoError(t, err)
	a, err := open.List(5)
	require.NoError(t, err)
	b, err := ended.List(5)
	require.NoError(t, err)
	operations := func(l *List) int { return len(l.Values) - codes(l)[Number] }
	require.Less(t, operations(b), operations(a))
	require.Equal(t, Value{Code: Number, Number: 5}, b.Values[b.Out[1]])
	require.NotZero(t, codes(b)[formula.Min], "the last month is part of one")
	for _, months := range []int{-1, longest + 1} {
		_, err = open.List(months)
		require.ErrorIs(t, err, ErrTooLong)
	}
	_, err = open.List(100) // beyond what was prepared at first
	require.NoError(t, err)
}

// A shift is added to what a cell comes to and keeps what that follows from.
func TestShift(t *testing.T) {
	m := deal(t)
	axes := free(cells(m, "contingency_share", "overrun"))
	axes[0].Shift, axes[1].Shift = true, true
	q, err := Ask(m, axes, cells(m, "overrun"), nil)
	require.NoError(t, err)
	l, err := q.List(q.Last)
	require.NoError(t, err)
	require.Equal(t, 2, codes(l)[formula.Add], "the default follows the contingency")
	require.True(t, l.In[0] >= 0 && l.In[1] >= 0)
}

func TestPlainRefusesMonths(t *testing.T) {
	m := deal(t)
	axes, want := cells(m, "price"), cells(m, "profit")
	p, err := walk.Prepare(m, m.Needed(want[0].Index), model.Indexes(axes), nil, 3)
	require.NoError(t, err)
	_, err = Plain(p, axes, want)
	require.ErrorContains(t, err, "runs by month")
}

func TestSpans(t *testing.T) {
	for _, tt := range []struct {
		code    formula.Code
		a, b, c span
		want    span
	}{
		{formula.Sub, span{0, 1}, span{2, 3}, span{}, span{-3, -1}},
		{formula.Mul, span{-2, 3}, span{0, math.Inf(1)}, span{}, anything},
		{formula.Mul, span{-2, 3}, span{-1, 5}, span{}, span{-10, 15}},
		{formula.Div, span{1, 2}, span{0, 2}, span{}, anything},
		{formula.Div, span{1, 2}, span{2, 4}, span{}, span{0.25, 1}},
		{formula.Min, span{1, 5}, span{2, 3}, span{}, span{1, 3}},
		{formula.If, flags, span{1, 2}, span{4, 5}, span{1, 5}},
		{formula.Cents, span{0.011, 0.019}, span{}, span{}, span{0.01, 0.02}},
		{formula.Root, span{4, 9}, span{}, span{}, span{2, 3}},
		{formula.Power, span{4, 9}, span{1, 1}, span{}, anything},
		{formula.Add, span{math.Inf(-1), 0}, span{0, math.Inf(1)}, span{}, anything},
	} {
		require.Equal(t, tt.want, spanOf(tt.code, tt.a, tt.b, tt.c), formula.Table[tt.code].Name)
	}
	for _, tt := range []struct {
		code   formula.Code
		a, b   span
		x      float64
		always bool
	}{
		{formula.Less, span{0, 1}, span{2, 3}, 1, true},
		{formula.Less, span{2, 3}, span{0, 2}, 0, true},
		{formula.Less, span{0, 2}, span{1, 3}, 0, false},
		{formula.MoreEqual, span{2, 3}, span{0, 2}, 1, true},
		{formula.Equal, span{0, 1}, span{2, 3}, 0, true},
		{formula.NotEqual, span{5, 6}, span{2, 3}, 1, true},
		{formula.Equal, span{0, 2}, span{2, 3}, 0, false},
	} {
		x, always := settled(tt.code, tt.a, tt.b)
		require.Equal(t, tt.always, always, tt)
		if always {
			require.Equal(t, tt.x, x, tt)
		}
	}
}
