package takeoff

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By hand, in inches: baths with a tub of 60 by 30 across the end, and a door of 32.
func TestATubLiesAcrossAWall(t *testing.T) {
	tub := []Alcove{{Across: 60, Deep: 30}}
	for name, c := range map[string]struct {
		walls []int64
		gaps  Gaps
		want  []int64
	}{
		"10' 9\" x 5'":            {[]int64{129, 129, 60, 60}, Gaps{Alcoves: tub, Doors: []int64{32}}, []int64{99, 99, 14, 14}},
		"8' x 5' with a vanity":   {[]int64{96, 96, 60, 60}, Gaps{Alcoves: tub, Doors: []int64{32}, Corners: []int64{36}}, []int64{66, 30, 14, 14}},
		"along the longer wall":   {[]int64{60, 60, 50, 50}, Gaps{Alcoves: tub}, []int64{60, 20, 20}},
		"square":                  {[]int64{60, 60, 60, 60}, Gaps{Alcoves: tub}, []int64{60, 30, 30}},
		"in a longer wall":        {[]int64{96, 96, 72, 72}, Gaps{Alcoves: tub}, []int64{72, 66, 66, 12}},
		"longer than any wall":    {[]int64{48, 48, 40, 40}, Gaps{Alcoves: tub}, []int64{40, 16}},
		"deeper than those there": {[]int64{60, 60, 20, 20}, Gaps{Alcoves: tub}, []int64{20, 20}},
	} {
		require.Equal(t, c.want, Walls(c.walls, c.gaps), name)
	}
}

// The pieces add up to the walls less the gaps, or to nothing, and none is empty.
func TestPiecesAddUpToWallsLessGaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lengths := func(name string, most int) []int64 {
			return rapid.SliceOfN(rapid.Int64Range(1, 200), 0, most).Draw(t, name)
		}
		walls := lengths("walls", 8)
		gaps := Gaps{Doors: lengths("doors", 3), Corners: lengths("corners", 3)}
		rest := total(walls) - total(gaps.Doors) - total(gaps.Corners)
		for range rapid.IntRange(0, 2).Draw(t, "alcoves") {
			a := Alcove{rapid.Int64Range(1, 100).Draw(t, "across"), rapid.Int64Range(0, 60).Draw(t, "deep")}
			gaps.Alcoves = append(gaps.Alcoves, a)
			rest -= a.Across + 2*a.Deep
		}
		got := Walls(walls, gaps)
		require.Equal(t, max(0, rest), total(got))
		require.NotContains(t, got, int64(0))
	})
}

func total(all []int64) (sum int64) {
	for _, x := range all {
		sum += x
	}
	return sum
}
