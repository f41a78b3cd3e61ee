package model_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/internal/walk"
	"ledgerboard/pkg/model"
)

// uncut are the exact rules without rounding to the cent.
type uncut struct{ walk.Decimals }

func (uncut) Apply(op *formula.Op, args []decimal.Decimal) (decimal.Decimal, error) {
	if op.Code == formula.Cents {
		return args[0], nil
	}
	return op.Exact(args)
}

// An uncut model comes to what rules that leave cents out come to, in all cells, and the
// model that it is made of stays as it is.
func TestUncut(t *testing.T) {
	modeltest.Check(t, 100, func(t *rapid.T) {
		doc, err := model.Standard()
		require.NoError(t, err)
		m, err := model.Bind(doc, modeltest.RandomHouse(t).Deal)
		require.NoError(t, err)
		before, err := all[walk.Decimals](m)
		require.NoError(t, err)
		want, err := all[uncut](m)
		require.NoError(t, err)
		got, err := all[walk.Decimals](m.Uncut())
		require.NoError(t, err)
		same(t, m, want, got)
		after, err := all[walk.Decimals](m)
		require.NoError(t, err)
		same(t, m, before, after)
	})
}

// By hand: a price of 1000 ÷ 3, for each of two loans, with cents wherever a formula may
// have them.
func TestUncutOverMembers(t *testing.T) {
	d := priced()
	for _, label := range []string{"first loan", "second loan"} {
		d.Add("loan", "", label).GiveNumber("points", number("0"))
	}
	m, err := laid(t, d, "thirds | deal | $\n  = total(cents(price / 3) of loan)\n  x\ntwice | deal | $\n  = max(0, cents(cents(price / 3) * 2))\n  x\n")
	require.NoError(t, err)
	v, err := exact.Evaluate(m.Uncut())
	require.NoError(t, err)
	for _, name := range []string{"thirds", "twice"} {
		require.Equal(t, "666.66666667", v.Of(m.Find(m.Root, name)).Round(8).String(), name)
	}
}

func all[R walk.Rules[decimal.Decimal]](m *model.Model) (*walk.Values[decimal.Decimal], error) {
	w := walk.Walker[decimal.Decimal, R]{Values: walk.New[decimal.Decimal](m)}
	return w.Values, w.Steps(m.Needed())
}

func same(t *rapid.T, m *model.Model, want, got *walk.Values[decimal.Decimal]) {
	for i, c := range m.Cells {
		require.Zero(t, want.Scalar[i].Cmp(got.Scalar[i]), c.Name())
		for month, x := range want.Month(i) {
			require.Zero(t, x.Cmp(got.Month(i)[month]), "%s, month %d", c.Name(), month)
		}
	}
}
