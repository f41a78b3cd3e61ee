package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

func worked(t testing.TB) []modeltest.Worked {
	deals, err := modeltest.ReadWorked("../../testdata/worked-deals.json")
	require.NoError(t, err)
	require.Len(t, deals, 5)
	return deals
}

func standard(t testing.TB, d *model.Member) *model.Model {
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	return m
}

// Every cell is worked out once, after all that it needs.
func TestStepsStandInOrder(t *testing.T) {
	for _, w := range worked(t) {
		m := standard(t, w.Deal.Member())
		done := map[int]bool{}
		for _, s := range m.Needed() {
			inside := map[int]bool{}
			for _, c := range s.Cells {
				require.False(t, done[c] || inside[c], m.Cells[c].Name())
				inside[c] = true
			}
			for _, c := range s.Cells {
				eachNeed(m.Cells[c].Expr, m.Cells[c].Member, func(n int) {
					require.True(t, done[n] || inside[n], "%s needs %s", m.Cells[c].Name(), m.Cells[n].Name())
				})
				done[c] = true
			}
		}
		require.Len(t, done, len(m.Cells))
	}
}

func eachNeed(e *model.Expr, of *model.Member, visit func(int)) {
	if e.Op == nil && !e.IsNumber() {
		visit(e.Reads(of))
	}
	for x, a := range e.Over(of) {
		eachNeed(a, x, visit)
	}
}

func TestNeededAndReached(t *testing.T) {
	m := standard(t, worked(t)[0].Deal.Member())
	find := func(name string) int { return m.Find(m.Root, name).Index }
	months := m.Needed(find("hold_months"))
	assert.True(t, holds(months, m.Horizon), "the number of months is always needed")
	assert.False(t, holds(months, find("price")))

	profit := m.Needed(find("profit"))
	assert.True(t, holds(profit, find("price")))
	assert.False(t, holds(profit, find("roi")))

	fixed, varying := m.Reached(profit, []int{find("price")})
	assert.Len(t, profit, len(fixed)+len(varying))
	for _, name := range []string{"price", "net_cash", "profit"} {
		assert.True(t, holds(varying, find(name)), name)
	}
	for _, name := range []string{"sale_month", "spend", "sale_price"} {
		assert.True(t, holds(fixed, find(name)), name)
	}
	assert.True(t, m.Moves(m.Find(m.Root, "price"), m.Find(m.Root, "profit")))
	assert.False(t, m.Moves(m.Find(m.Root, "price"), m.Find(m.Root, "sale_month")))
	for _, s := range fixed {
		for _, c := range s.Cells {
			eachNeed(m.Cells[c].Expr, m.Cells[c].Member, func(n int) { assert.False(t, holds(varying, n), m.Cells[c].Name()) })
		}
	}
}

func holds(steps []model.Step, cell int) bool {
	for _, s := range steps {
		for _, c := range s.Cells {
			if c == cell {
				return true
			}
		}
	}
	return false
}
