package solve

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

func watchedLine(t *rapid.T) string {
	return rapid.SampledFrom([]string{"owner_profit", "profit_to_spare"}).Draw(t, "watched")
}

// along prepares the search of a break-even and counts what it takes.
func along(t *rapid.T, m *model.Model, a Axis, from, to int64, line string) *search {
	held, err := Held(m)
	require.NoError(t, err)
	s, err := newSearch(m, a, from, to, true, held, m.Find(m.Root, line))
	require.NoError(t, err)
	return s
}

func value(t *rapid.T, m *model.Model, line string) decimal.Decimal {
	c := m.Find(m.Root, line)
	v, err := exact.Evaluate(m, c)
	require.NoError(t, err)
	return v.Of(c)
}

func TestRandomSalePricesAreLowest(t *testing.T) {
	var effort counter
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		d, line := modeltest.Random(t), watchedLine(t)
		m := lay(t, d)
		b, err := BreakEvenSalePrice(m, line)
		require.NoError(t, err)
		require.False(t, b.Missed, "a sale price cannot be missed already")
		high, err := reach(m, nil)
		require.NoError(t, err)
		s := along(t, m, Axis{Cell: m.Find(m.Root, "sale_price"), Step: decimal.NewFromInt(1)}, 0, high, line)
		_, _, err = s.last(0, high)
		require.NoError(t, err)
		effort.add(s, d)
		if b.Never {
			require.True(t, s.misses(t, high), "never, yet it holds at %d", high)
			return
		}
		n := b.Value.IntPart()
		require.False(t, n > 0 && !s.misses(t, n-1), "it holds at %d too, below %d", n-1, n)
		if s.trusting {
			return // only that it changes there is claimed
		}
		above := edges(d, n, high, "sale_price")
		for x := n; x <= min(high, n+100); x++ {
			above = append(above, x)
		}
		for range 100 {
			above = append(above, rapid.Int64Range(n, high).Draw(t, "sale price"))
		}
		for _, x := range above {
			require.False(t, s.misses(t, x), "it is missed at %d, above %d", x, n)
		}
	})
	effort.require(t, "break-even sale price")
}

func TestRandomOverrunsAreLargest(t *testing.T) {
	var effort counter
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		d, line := modeltest.Random(t), watchedLine(t)
		m := lay(t, d)
		b, err := BreakEvenOverrun(m, line)
		require.NoError(t, err)
		from := value(t, m, "overrun").Shift(3).Ceil().IntPart()
		s := along(t, m, Axis{Cell: m.Find(m.Root, "overrun"), Step: decimal.New(1, -3)}, from, mostOverrun, line)
		outward(t, d, m, s, b, from, mostOverrun, &effort)
	})
	effort.require(t, "break-even overrun")
}

func TestRandomMonthsAreMost(t *testing.T) {
	var effort counter
	modeltest.Check(t, *randomDeals/2, func(t *rapid.T) {
		d, line := modeltest.Random(t), watchedLine(t)
		m := lay(t, d)
		b, err := BreakEvenMonths(m, line)
		require.NoError(t, err)
		axis := Axis{Cell: m.Find(m.Root, "late_sale"), Start: value(t, m, "late_sale"), Step: decimal.New(1, -1)}
		s := along(t, m, axis, 0, mostMonths, line)
		outward(t, d, m, s, b, 0, mostMonths, &effort)
	})
	effort.require(t, "break-even months")
}

// outward checks a break-even against every step up to it and the next.
func outward(t *rapid.T, d *modeltest.Draw, m *model.Model, s *search, b BreakEven, from, to int64, effort *counter) {
	if v := value(t, m, s.watched[0].Line.Name); v.IsNegative() {
		require.True(t, b.Missed && !b.Found && !b.Never, "%s is %s in the plan", s.watched[0].Line.Name, v)
		return
	}
	require.False(t, b.Missed)
	_, found, err := s.first(from, to)
	require.NoError(t, err)
	effort.add(s, d)
	require.Equal(t, b.Found, found)
	last := to
	if b.Found {
		last = b.Value.DivRound(s.axis.Step, 9).IntPart()
		require.True(t, s.misses(t, last+1), "it holds beyond %s too", b.Value)
	}
	if s.trusting {
		return // only that it changes there is claimed
	}
	for n := from; n <= last; n++ {
		require.False(t, s.misses(t, n), "it is lost at step %d, before %s", n, b.Value)
	}
}
