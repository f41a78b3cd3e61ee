package takeoff

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// smallJob draws a packing problem of some kinds and bins.
func smallJob(t *rapid.T, kinds int) *job {
	var stock []Stock
	for range rapid.IntRange(1, 5).Draw(t, "bins") {
		stock = append(stock, Stock{rapid.Int64Range(50, 200).Draw(t, "length"), rapid.Int64Range(100, 3000).Draw(t, "price")})
	}
	longest := slices.MaxFunc(stock, func(a, b Stock) int { return int(a.Length - b.Length) }).Length
	var pieces []Piece
	for range rapid.IntRange(1, kinds).Draw(t, "kinds") {
		p := Piece{Length: rapid.Int64Range(5, longest).Draw(t, "size")}
		pieces = append(pieces, slices.Repeat([]Piece{p}, rapid.IntRange(1, 3).Draw(t, "need"))...)
	}
	return newJob(pieces, stock, rapid.Int64Range(0, 3).Draw(t, "kerf"))
}

// knapsack is the greatest value in each room up to most, by tables, not by branches.
func knapsack(j *job, value []int64, most int64) []int64 {
	best := make([]int64, most+1)
	for k, size := range j.size {
		for range j.need[k] {
			for room := most; room >= size; room-- {
				best[room] = max(best[room], best[room-size]+value[k])
			}
		}
	}
	return best
}

// The certificate holds: no way to cut a stick is worth more than its price.
func TestNoStickIsWorthMoreThanItsPrice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := smallJob(t, 30)
		m := newMaster(j, &pool{list: j.greedy()})
		m.run(huge, rapid.SampledFrom([]int{100, 5000, masterWork}).Draw(t, "work"))
		best := knapsack(j, m.best.value, j.most())
		var worth int64
		for k, v := range m.best.value {
			worth += v * int64(j.need[k])
		}
		require.Equal(t, worth, m.best.worth)
		for _, b := range j.bins {
			require.LessOrEqual(t, best[b.room], b.price*m.best.unit)
		}
	})
}

func TestFillFindsTheGreatestValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := smallJob(t, 12)
		value := make([]int64, len(j.size))
		for k := range value {
			value[k] = rapid.Int64Range(0, 100).Draw(t, "value")
		}
		best := knapsack(j, value, j.most())
		f := newFill(j, value)
		for _, b := range j.bins {
			f.run(j.need, b.room, 1_000_000)
			require.Equal(t, best[b.room], f.value)
			require.Equal(t, f.value, f.bound)
			require.LessOrEqual(t, j.used(f.kinds()), b.room)
			f.run(j.need, b.room, 1)
			require.GreaterOrEqual(t, f.bound, best[b.room], "a cut-off search still bounds")
		}
	})
}

// cover is the least of all numbers of sticks, tried one by one.
func TestCoverIsTheLeast(t *testing.T) {
	many := func(t *rapid.T) {
		j := smallJob(t, 3)
		j.bins = j.bins[max(0, len(j.bins)-3):]
		atop := rapid.Int64Range(0, 20000).Draw(t, "at least")
		want := cost{price: huge}
		var try func(k int, size int64, spent cost)
		try = func(k int, size int64, spent cost) {
			if k == len(j.bins) {
				if size <= 0 && spent.price >= atop && spent.less(want) {
					want = spent
				}
				return
			}
			for n := range int64(j.count() + 1) {
				try(k+1, size-n*j.bins[k].room, spent.plus(j.bins[k].times(n)))
			}
		}
		try(0, j.total, cost{})
		if got, sure := j.cover(atop); sure {
			require.Equal(t, want, got)
		} else {
			require.LessOrEqual(t, got.price, want.price)
		}
	}
	rapid.Check(t, many)
}

// Work stops at the limit: what goes beyond is the way back.
func TestTheSearchStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := smallJob(t, 60)
		limit := rapid.IntRange(1, 3000).Draw(t, "limit")
		s := newSearch(j, j.bySize(), j.cost(j.greedy()), limit)
		whole := s.run(rapid.Bool().Draw(t, "ties"))
		require.Equal(t, whole, s.steps <= limit)
		require.Less(t, s.steps, limit+2000)
		require.Equal(t, j.need, s.left, "all is put back")
	})
}
