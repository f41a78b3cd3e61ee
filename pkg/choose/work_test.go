package choose

import (
	"math"
	"math/bits"
	"testing"

	"github.com/stretchr/testify/require"
)

// Besides the dives, one each time the expansions double, only such choices are
// worked out as may be as good as the runner-up by their bound.
func TestLeavesAreFew(t *testing.T) {
	for n := range 20 {
		p := newPacks(house(n), 7, 3, 2, benchUnit, 50_000)
		r, err := Search(p)
		require.NoError(t, err)
		may := 0
		every(p.Rooms(), func(c []int) {
			if b, possible := p.Bound(c); possible && b >= r.RunnerUp.Value {
				may++
			}
		})
		require.LessOrEqual(t, r.Leaves, may+bits.Len(uint(r.Nodes)))
		require.Less(t, r.Leaves, 2187/4, "of 3^7 choices")
	}
}

// The ceilings are a tenth over what this very test counted; each part of the bound and
// the order of rooms matters more than that.
func TestWorkIsLittle(t *testing.T) {
	var deepest, wide int
	var gap float64
	for n := range 20 {
		list, limits := alike(house(n), 10, 4, 3, benchUnit)
		a, err := NewAdditive(list, limits)
		require.NoError(t, err)
		d := &deep{a: a, order: ranked(a.Rooms(), a.Bound), partial: open(10), value: never}
		d.branch(0)
		deepest += d.nodes
		r, err := Search(a)
		require.NoError(t, err)
		wide += r.Nodes
		root, _ := a.Bound(open(10))
		gap += float64(root-d.value) / float64(d.value)
	}
	t.Logf("nodes: %d depth first, %d best first; bound %.4f over the best on average", deepest, wide, gap/20)
	require.Less(t, deepest, 130_000)
	require.Less(t, wide, 175_000)
	require.Less(t, gap/20, 0.046)
}

func TestOrderOfChoices(t *testing.T) {
	list := []*Choice{ // each better than the next
		{[]int{1, 1}, 7, [2]int64{9, 9}},
		{[]int{1, 0}, 5, [2]int64{1, 8}},
		{[]int{0, 3}, 5, [2]int64{2, 1}},
		{[]int{0, 1}, 5, [2]int64{2, 2}},
		{[]int{0, 2}, 5, [2]int64{2, 2}},
		{[]int{2, 0}, 5, [2]int64{2, 2}},
		{[]int{0, 0}, -1, [2]int64{0, 0}},
	}
	for i := range list {
		require.Zero(t, list[i].order(list[i]))
		for _, worse := range list[i+1:] {
			require.Negative(t, list[i].order(worse))
			require.Positive(t, worse.order(list[i]))
		}
	}
}

// By hand: of the first resource a fourth of the step fits, 0 + 40 × 1/4; of the second
// all but a unit in 20, 40 × 19/20; a row of both can say no less than the first.
func TestBoundIsTheLeastOfTheRows(t *testing.T) {
	rooms := [][]Option{{{}, {40, []int64{4, 20}}}}
	for _, tt := range []struct {
		limits []int64
		want   int64
	}{
		{[]int64{1, 20}, 10},
		{[]int64{4, 19}, 38},
		{[]int64{1, 19}, 10},
		{[]int64{3}, 30},
		{[]int64{4, 20}, 40},
		{[]int64{math.MaxInt64, math.MaxInt64}, 40},
		{nil, 40},
	} {
		a, err := NewAdditive(rooms, tt.limits)
		require.NoError(t, err)
		b, possible := a.Bound([]int{-1})
		require.True(t, possible)
		require.Equal(t, tt.want, b, "limits %v", tt.limits)
	}
}

// The lowest limit of all must not run over and become a high one.
func TestLowestLimit(t *testing.T) {
	a, err := NewAdditive([][]Option{{{1, []int64{1, 1}}, {40, []int64{4, 20}}}}, []int64{math.MinInt64, 19})
	require.NoError(t, err)
	_, possible := a.Bound([]int{-1})
	require.False(t, possible)
}

// By hand, the best mix of parts is half of the first two, 10 together, using 1 of
// both resources. Either limit alone lets more through; the row of both does not.
func TestBoundOfBothLimits(t *testing.T) {
	rooms := [][]Option{{{}, {10, []int64{2, 0}}}, {{}, {10, []int64{0, 2}}}, {{}, {9, []int64{1, 1}}}}
	a, err := NewAdditive(rooms, []int64{1, 1})
	require.NoError(t, err)
	b, possible := a.Bound(open(3))
	require.True(t, possible)
	require.EqualValues(t, 10, b)
	require.Len(t, a.rows, 3)
	for _, r := range a.rows[:2] {
		alone, _ := r.bound(open(3))
		require.Greater(t, alone, b)
	}
}
