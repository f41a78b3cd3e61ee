package deal

import (
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What givers can give is, by the theorem of the least cut, the least that a set of takers has
// room for with what all givers have for the others.
func TestMostGivenIsTheLeastCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		takers := rapid.IntRange(1, 4).Draw(t, "takers")
		numbers := rapid.SliceOfN(rapid.IntRange(0, 6), takers, takers)
		has, room := rapid.SliceOfN(numbers, 1, 4).Draw(t, "has"), numbers.Draw(t, "room")
		least := -1
		for set := range 1 << takers {
			cut := 0
			for taker := range takers {
				if set>>taker&1 == 1 {
					cut += room[taker]
				}
			}
			for _, own := range has {
				others := 0
				for taker, n := range own {
					if set>>taker&1 == 0 {
						others += n
					}
				}
				cut += min(slices.Max(own), others)
			}
			if least < 0 || cut < least {
				least = cut
			}
		}
		var all [][]decimal.Decimal
		for _, own := range has {
			all = append(all, decimals(own))
		}
		require.Equal(t, int64(least), mostGiven(all, decimals(room)).IntPart())
	})
}

func decimals(numbers []int) (out []decimal.Decimal) {
	for _, n := range numbers {
		out = append(out, decimal.NewFromInt(int64(n)))
	}
	return out
}
