package choose

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// many problems are drawn in one check, since each is small.
const many = 30

func requireTried(t require.TestingT, p Problem, r Result) {
	all := tried(p)
	require.True(t, r.Proved)
	require.True(t, r.RunnerUpProved)
	switch len(all) {
	case 0:
		require.Nil(t, r.Best)
		require.Nil(t, r.RunnerUp)
		return
	case 1:
		require.Nil(t, r.RunnerUp)
	default:
		require.Equal(t, all[1], r.RunnerUp)
	}
	require.Equal(t, all[0], r.Best)
	require.Equal(t, all[0].Value, r.Bound)
}

func TestSearchEqualsTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range many {
			p := drawnTable(t)
			r, err := Search(p, starts(t, p.sizes)...)
			require.NoError(t, err)
			require.Equal(t, p.calls, r.Leaves)
			requireTried(t, p, r)
		}
	})
}

func starts(t *rapid.T, sizes []int) [][]int {
	var out [][]int
	for range rapid.IntRange(0, 2).Draw(t, "starts") {
		var c []int
		for _, n := range sizes {
			c = append(c, rapid.IntRange(0, n-1).Draw(t, "option"))
		}
		out = append(out, c)
	}
	return out
}

func TestSearchWithAdditiveBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
		for range many {
			unit := []int64{4, 100, 1_000_000}[random.IntN(3)]
			p := newPacks(random, 1+random.IntN(5), 1+random.IntN(4), random.IntN(4), unit, random.Int64N(unit))
			r, err := Search(p)
			require.NoError(t, err)
			requireTried(t, p, r)
		}
	})
}

// With a limit reached, what is said must still be true.
func TestSearchWithinLimits(t *testing.T) {
	cut := 0
	rapid.Check(t, func(t *rapid.T) {
		for range many {
			p := drawnTable(t)
			l := Limits{Nodes: rapid.IntRange(0, 60).Draw(t, "nodes"), Leaves: rapid.IntRange(0, 20).Draw(t, "leaves")}
			first := starts(t, p.sizes)
			r, err := l.Search(p, first...)
			require.NoError(t, err)
			require.LessOrEqual(t, r.Leaves, max(l.Leaves, len(first)))
			if !r.Proved || !r.RunnerUpProved {
				cut++
			}
			requireTrue(t, tried(p), r)
		}
	})
	require.Positive(t, cut)
}

func requireTrue(t require.TestingT, all []*Choice, r Result) {
	is := func(want *Choice) func(*Choice) bool {
		return func(c *Choice) bool { return c.order(want) == 0 }
	}
	for _, c := range []*Choice{r.Best, r.RunnerUp} {
		require.True(t, c == nil || slices.ContainsFunc(all, is(c)))
	}
	if r.RunnerUp != nil {
		require.Negative(t, r.Best.order(r.RunnerUp))
	}
	if len(all) > 0 {
		require.GreaterOrEqual(t, r.Bound, all[0].Value)
	}
	if r.Proved {
		require.Equal(t, len(all) > 0, r.Best != nil)
		if r.Best != nil {
			require.Equal(t, all[0], r.Best)
			require.Equal(t, r.Bound, r.Best.Value)
		}
	}
	if r.RunnerUpProved {
		require.True(t, r.Proved)
		require.Equal(t, len(all) > 1, r.RunnerUp != nil)
		if r.RunnerUp != nil {
			require.Equal(t, all[1], r.RunnerUp)
		}
	}
}

// What is found within few leaves cannot be bettered by changing one room.
func TestPolish(t *testing.T) {
	polished := 0
	for seed := range uint64(40) {
		p := newPacks(rand.New(rand.NewPCG(seed, 1)), 10, 4, 2, 1_000_000, 1_000_000)
		r, err := Limits{Nodes: 90, Leaves: 4000}.Search(p)
		require.NoError(t, err)
		if r.Proved || r.Best == nil {
			continue
		}
		polished++
		for i, n := range p.Rooms() {
			for o := range n {
				c := slices.Clone(r.Best.Options)
				c[i] = o
				v, ok, _ := p.Worth(c)
				require.False(t, ok && v > r.Best.Value, "seed %d: %v is worth more than %v", seed, c, r.Best)
			}
		}
	}
	require.Greater(t, polished, 20)
}

// wrong is a problem whose bound is too low, or says that all is impossible.
type wrong struct {
	*table
	low      int64
	possible bool
}

func (w wrong) Bound(partial []int) (int64, bool) {
	best, _ := w.table.Bound(partial)
	return best - w.low, w.possible
}

func TestSearchErrors(t *testing.T) {
	fine := &table{sizes: []int{2}, value: []int64{1, 5}, ok: []bool{true, true}, tie: make([][2]int64, 2)}
	for _, tt := range []struct {
		name  string
		p     Problem
		start []int
		want  string
	}{
		{"low bound", wrong{fine, 2, true}, nil, "choice [1] is worth 5; its bound is 3"},
		{"impossible", wrong{fine, 0, false}, []int{0}, "choice [0] keeps the limits; its bound says that it does not"},
		{"no options", &table{sizes: []int{2, 0}}, nil, "room 1 has 0 options; want 1 to 32768"},
		{"rooms", &table{sizes: make([]int, 1025)}, nil, "1025 rooms; want 1024 at most"},
		{"short start", fine, []int{}, "start [] has 0 rooms; want 1"},
		{"start beyond", fine, []int{2}, "start [2] has option 2 in room 0; want 0 to 1"},
		{"open start", fine, []int{-1}, "start [-1] has option -1 in room 0; want 0 to 1"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var first [][]int
			if tt.start != nil {
				first = [][]int{tt.start}
			}
			_, err := Search(tt.p, first...)
			require.EqualError(t, err, tt.want)
		})
	}
}
