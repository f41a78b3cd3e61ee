package takeoff_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/takeoff"
)

// A job is what a cut list is asked for.
type job struct {
	pieces []takeoff.Piece
	stock  []takeoff.Stock
	kerf   int64
}

func (j job) cut(t require.TestingT) takeoff.Plan {
	p, err := takeoff.CutList(j.pieces, j.stock, j.kerf)
	require.NoError(t, err)
	require.NoError(t, feasible(p, j.pieces, j.stock, j.kerf))
	return p
}

// randomJob draws stock of some lengths, priced by length, nearly so or at will, and
// pieces of a coarse or fine measure, which often fill a stick just or just not.
func randomJob(t *rapid.T, least, most, lengths int) job {
	fine := rapid.SampledFrom([]int64{1, 1, 3, 16, 127}).Draw(t, "fine")
	j := job{kerf: rapid.SampledFrom([]int64{0, 0, 1, fine, 5}).Draw(t, "kerf")}
	priced := rapid.SampledFrom([]string{"length", "nearly", "any", "equal"}).Draw(t, "priced")
	var longest int64
	for range rapid.IntRange(1, lengths).Draw(t, "lengths") {
		s := takeoff.Stock{Length: fine * rapid.Int64Range(4, 40).Draw(t, "stock")}
		switch priced {
		case "length":
			s.Price = s.Length
		case "nearly":
			s.Price = 10*s.Length + rapid.Int64Range(-20, 20).Draw(t, "more")
		case "any":
			s.Price = rapid.Int64Range(1, 30).Draw(t, "price")
		case "equal":
			s.Price = 7
		}
		longest = max(longest, s.Length)
		j.stock = append(j.stock, s)
	}
	for range rapid.IntRange(least, most).Draw(t, "pieces") {
		l := fine * rapid.Int64Range(1, longest/fine).Draw(t, "length")
		l -= min(l-1, rapid.SampledFrom([]int64{0, 0, 0, 1, j.kerf}).Draw(t, "less"))
		j.pieces = append(j.pieces, takeoff.Piece{Length: l, ID: rapid.SampledFrom([]string{"hall", "bath", "den"}).Draw(t, "room")})
	}
	return j
}

// many repeats a property on more random jobs than rapid draws by itself.
func many(t *testing.T, times int, property func(*rapid.T)) {
	if testing.Short() {
		times = max(1, times/20)
	}
	for range times {
		rapid.Check(t, property)
	}
}

// exact asserts price, sticks and waste, and that they are proved.
func (j job) exact(t require.TestingT, want [3]int64) {
	p := j.cut(t)
	var length int64
	for _, s := range p.Sticks {
		length += s.Length
	}
	require.Equal(t, want, [3]int64{p.Price, int64(len(p.Sticks)), length})
	require.True(t, p.Proved(), "bound %d", p.Bound)
}

func TestSmallJobsAreExact(t *testing.T) {
	many(t, 40, func(t *rapid.T) {
		j := randomJob(t, 1, 8, 3)
		j.exact(t, brute(j.pieces, j.stock, j.kerf))
	})
	many(t, 10, func(t *rapid.T) {
		j := randomJob(t, 7, 8, 3)
		j.exact(t, brute(j.pieces, j.stock, j.kerf))
	})
}

func TestMiddlingJobsAreExact(t *testing.T) {
	many(t, 1, func(t *rapid.T) {
		j := randomJob(t, 9, 12, 5)
		j.exact(t, bySubsets(j.pieces, j.stock, j.kerf))
	})
}

// Pieces and stock in another order give the same plan, label by label.
func TestOrderPlaysNoPart(t *testing.T) {
	many(t, 3, func(t *rapid.T) {
		j := randomJob(t, 8, 24, 5)
		k := j
		k.pieces = rapid.Permutation(j.pieces).Draw(t, "pieces in another order")
		k.stock = rapid.Permutation(j.stock).Draw(t, "stock in another order")
		require.Equal(t, j.cut(t), k.cut(t))
	})
}

func TestALongerPieceNeverCostsLess(t *testing.T) {
	many(t, 3, func(t *rapid.T) {
		j := randomJob(t, 6, 14, 4)
		p := j.cut(t)
		k := j
		k.pieces = slices.Clone(j.pieces)
		at := rapid.IntRange(0, len(j.pieces)-1).Draw(t, "piece")
		longest := slices.MaxFunc(j.stock, func(a, b takeoff.Stock) int { return int(a.Length - b.Length) }).Length
		k.pieces[at].Length = rapid.Int64Range(j.pieces[at].Length, longest).Draw(t, "longer")
		q := k.cut(t)
		require.GreaterOrEqual(t, q.Price, p.Bound)
		if p.Proved() && q.Proved() {
			require.GreaterOrEqual(t, q.Price, p.Price)
		}
	})
}

// With one more length on sale nothing gets dearer; with a thinner kerf neither.
func TestMoreChoiceNeverCostsMore(t *testing.T) {
	many(t, 3, func(t *rapid.T) {
		j := randomJob(t, 6, 14, 4)
		p := j.cut(t)
		k := j
		k.stock = append(slices.Clone(j.stock), takeoff.Stock{Length: rapid.Int64Range(1, 5000).Draw(t, "length"), Price: rapid.Int64Range(1, 50).Draw(t, "price")})
		k.kerf = rapid.Int64Range(0, j.kerf).Draw(t, "kerf less")
		q := k.cut(t)
		require.LessOrEqual(t, q.Bound, p.Price)
		if p.Proved() && q.Proved() {
			require.LessOrEqual(t, q.Price, p.Price)
		}
	})
}

// Large jobs are feasible, and within the gap they state; lengths in another unit
// change nothing but the unit.
func TestLargeJobs(t *testing.T) {
	many(t, 1, func(t *rapid.T) {
		j := randomJob(t, 40, 120, 6)
		p := j.cut(t)
		require.GreaterOrEqual(t, p.Gap(), int64(0))
		k := job{slices.Clone(j.pieces), slices.Clone(j.stock), 10 * j.kerf}
		for n := range k.pieces {
			k.pieces[n].Length *= 10
		}
		for n := range k.stock {
			k.stock[n].Length *= 10
		}
		q := k.cut(t)
		require.Equal(t, []int64{p.Price, p.Bound, int64(len(p.Sticks)), 10 * p.Waste}, []int64{q.Price, q.Bound, int64(len(q.Sticks)), q.Waste})
	})
}
