package choose

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// bestTried is what Best promises, by trying all.
func bestTried(rooms [][]Option, limits []int64) (best []int, value int64, uses []int64) {
	every(sizesOf(rooms), func(c []int) {
		var v int64
		used := make([]int64, len(limits))
		for i, o := range c {
			v += rooms[i][o].Value
			for k := range used {
				used[k] += rooms[i][o].use(k)
			}
		}
		for k, l := range limits {
			if used[k] > l {
				return
			}
		}
		if best == nil || cmp.Or(cmp.Compare(value, v), slices.Compare(used, uses)) < 0 {
			best, value, uses = append([]int{}, c...), v, used
		}
	})
	return best, value, uses
}

// drawnRooms may cost less than nothing, give uses short, and have equal options.
func drawnRooms(t *rapid.T) ([][]Option, []int64) {
	top := rapid.SampledFrom([]int64{1, 3, 10, 1000, maxAmount}).Draw(t, "top")
	amount := rapid.OneOf(rapid.Int64Range(0, top), rapid.Int64Range(-top, top))
	limits := rapid.SliceOfN(rapid.Int64Range(-top, 4*top), 0, 3).Draw(t, "limits")
	if len(limits) > 0 && rapid.IntRange(0, 9).Draw(t, "edge") == 0 {
		limits[0] = rapid.SampledFrom([]int64{math.MaxInt64, math.MinInt64}).Draw(t, "limit")
	}
	rooms := make([][]Option, rapid.IntRange(0, 5).Draw(t, "rooms"))
	for i := range rooms {
		rooms[i] = make([]Option, rapid.IntRange(1, 4).Draw(t, "options"))
		for o := range rooms[i] {
			uses := rapid.SliceOfN(amount, 0, len(limits)).Draw(t, "uses")
			rooms[i][o] = Option{amount.Draw(t, "value"), uses}
		}
	}
	return rooms, limits
}

func TestBestEqualsTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range many {
			rooms, limits := drawnRooms(t)
			want, most, _ := bestTried(rooms, limits)
			choice, value, ok := Best(rooms, limits)
			require.Equal(t, want != nil, ok)
			require.Equal(t, want, choice)
			require.Equal(t, most, value)
		}
	})
}

// A bound of whole or partial choices never is below what can still be reached, nor
// says that what is possible is not.
func TestAdditiveBoundIsValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range many {
			rooms, limits := drawnRooms(t)
			a, err := NewAdditive(rooms, limits)
			require.NoError(t, err)
			partial := make([]int, len(rooms))
			rest := slices.Clone(rooms)
			for i := range rooms {
				partial[i] = rapid.IntRange(-1, len(rooms[i])-1).Draw(t, "option")
				if o := partial[i]; o >= 0 {
					rest[i] = rooms[i][o : o+1]
				}
			}
			bound, possible := a.Bound(partial)
			if c, value, _ := bestTried(rest, limits); c != nil {
				require.True(t, possible)
				require.GreaterOrEqual(t, bound, value)
			}
		}
	})
}

// Additive is a problem like any other.
func TestSearchAdditive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range many {
			rooms, limits := drawnRooms(t)
			a, err := NewAdditive(rooms, limits)
			require.NoError(t, err)
			r, err := Search(a)
			require.NoError(t, err)
			requireTried(t, a, r)
		}
	})
}

// With every room halfway up its hull the row's bound is the linear program's value:
// 10 + 30 × 2/4 by hand, since half of the step from 1 to 5 fits.
func TestBoundByHand(t *testing.T) {
	a, err := NewAdditive([][]Option{{{10, []int64{1}}, {40, []int64{5}}, {12, []int64{4}}}}, []int64{3})
	require.NoError(t, err)
	b, possible := a.Bound([]int{-1})
	require.True(t, possible)
	require.EqualValues(t, 25, b)
	_, possible = a.Bound([]int{1})
	require.False(t, possible)
}

func TestBestAtTheMargin(t *testing.T) {
	choice, value, ok := Best(nil, []int64{0})
	require.True(t, ok)
	require.Empty(t, choice)
	require.Zero(t, value)

	_, _, ok = Best(nil, []int64{-1})
	require.False(t, ok, "nothing uses 0, over a limit of -1")
	_, _, ok = Best([][]Option{{{}}, {}}, nil)
	require.False(t, ok, "a room without options")
	require.Panics(t, func() { Best([][]Option{{{Value: maxAmount + 1}}}, nil) })

	_, err := NewAdditive([][]Option{{{Uses: []int64{0, -maxAmount - 1}}}}, []int64{1, 1})
	require.ErrorIs(t, err, ErrAmount)
	_, err = NewAdditive([][]Option{{{Uses: []int64{0, -maxAmount - 1}}}}, []int64{1})
	require.NoError(t, err, "what has no limit is not added up")
	_, err = NewAdditive([][]Option{{}}, nil)
	require.EqualError(t, err, "room 0 has 0 options; want 1 to 32768")
}

// A limit that is a sum of large uses must not run over.
func TestLargeAmounts(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	rooms, limits := additive(random, 5, 3, 3, maxAmount/10)
	want, most, _ := bestTried(rooms, limits)
	choice, value, ok := Best(rooms, limits)
	require.True(t, ok)
	require.Equal(t, want, choice)
	require.Equal(t, most, value)
}
