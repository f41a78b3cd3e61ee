package takeoff_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// Trim at invented lengths and prices: 25 pieces or fewer are proved; more are within
// half a percent of the least price, mostly far nearer.
func TestNearTheLeastPrice(t *testing.T) {
	seeds := uint64(6)
	if testing.Short() {
		seeds = 1
	}
	for _, n := range []int{20, 25, 60, 200} {
		for _, name := range []string{"one length", "by the foot", "shop prices"} {
			t.Run(fmt.Sprintf("%d pieces, %s", n, name), func(t *testing.T) {
				for seed := range seeds {
					j := job{randomTrim(n, seed), benchStock[name], eighth}
					p := j.cut(t)
					require.LessOrEqual(t, p.Gap(), p.Price/200, "seed %d", seed)
					require.True(t, p.Proved() || n > 25, "seed %d", seed)
				}
			})
		}
	}
}

// A house has many pieces alike. Five rooms with the same windows and doors, and
// invented walls: casings of 84 and 37 in, stools and aprons of 40 in.
func TestAHouse(t *testing.T) {
	var lengths []int64
	for room := range int64(5) {
		lengths = append(lengths, slices.Repeat([]int64{84}, 4)...)
		lengths = append(lengths, 37, 37, 40, 40, 59, 59, 59, 59)
		lengths = append(lengths, 100+room*7, 131+room*5, 92+room*3, 40+room*11)
	}
	for _, name := range []string{"one length", "by the foot", "shop prices"} {
		plan(t, inches(lengths...), benchStock[name], eighth)
	}
}
