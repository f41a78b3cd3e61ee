package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Edges of a roof are held against its parts, its area or the way around the house: a nought more or less
// is told once, and what else goes by it is not; roofs of many shapes, and parts of one, are let be.
func TestEdgesAreHeldAgainstTheRoof(t *testing.T) {
	const gable = "roof: [{size: 38' x 26', pitch: 5/12, overhang: 1'}], "
	for outside, want := range map[string]string{
		gable + "eaves: 800 ft":                                        `eaves is "800 ft", and the roof is 136 ft around`, // 2 x (40 + 28)
		gable + "eaves: 800 ft, gutters: 80 ft":                        `eaves is "800 ft", and the roof is 136 ft around`,
		gable + "rakes: 620 ft":                                        `rakes is "620 ft", and the roof is 136 ft around`,
		gable + "around: 140 ft, eaves: 800 ft":                        `eaves is "800 ft", and the house is 140 ft around`,
		"around: 124 ft, eaves: 800 ft":                                `eaves is "800 ft", and the house is 124 ft around`,
		"roof: 1400 sq ft, eaves: 800 ft":                              `eaves is "800 ft", and the roof has 1,400 sq ft`,
		gable + "eaves: 8 ft":                                          `eaves is "8 ft", and the shorter side of the roof is 26 ft`,
		gable + "eaves: 8 ft, gutters: 80 ft":                          `eaves is "8 ft", and the shorter side of the roof is 26 ft`,
		"roof: 1400 sq ft, eaves: 8 ft":                                `eaves is "8 ft", and the roof has 1,400 sq ft`,
		"roof: [{size: 36' x 27'}, {size: 20' x 18'}], eaves: 1200 ft": `eaves is "1200 ft", and the roof is 202 ft around`, // 126 + 76

		gable + "eaves: 80 ft, rakes: 62 ft":                                            "",
		gable + "eaves: 136 ft, rakes: 0 ft":                                            "", // a hip
		gable + "eaves: 40 ft":                                                          "", // a slope to one side
		gable + "eaves: 27 ft":                                                          "", // likewise, the other way
		gable + "eaves: 240 ft":                                                         "", // with a garage and a porch that are left as they are
		"roof: [{size: 8' x 6', pitch: 3/12}], eaves: 170 ft":                           "", // the porch alone gets a roof
		"roof: [{size: 8' x 6', pitch: 3/12}], around: 170 ft, eaves: 330 ft":           "",
		"roof: [{size: 16' x 60'}], eaves: 16 ft":                                       "", // of a row house, flat
		"roof: 960 sq ft, eaves: 16 ft":                                                 "",
		"roof: 5200 sq ft, eaves: 340 ft":                                               "",
		"roof: [{size: 36' x 27'}, {size: 20' x 18'}, {size: 10' x 8'}], eaves: 150 ft": "", // an L with a porch
		"roof: [{size: 36' x 27'}, {size: 20' x 18'}, {size: 10' x 8'}], eaves: 238 ft": "", // around each part
		"roof: [{size: 66' x 14', pitch: 3/12, overhang: 6\"}], eaves: 134 ft":          "", // a mobile home
		"around: 130 ft, eaves: 300 ft":                                                 "",
		"roof: 220 sq ft, eaves: 96 ft":                                                 "", // a part of the roof alone
	} {
		told := toldOf(t, "outside-size", "  den: {size: 12' x 13', work: {paint walls: hired}}\n", "outside: {"+outside+", work: {pressure wash: {by: hired, count: 90 sq ft}}}\n")
		if want == "" {
			for _, says := range told {
				require.NotRegexp(t, "^(eaves|rakes) is", says, outside)
			}
			continue
		}
		require.Equal(t, []string{want}, told, outside)
	}
}

// Where the roof itself has slipped, its edges are not told as well.
func TestEdgesOfARoofThatSlippedAreLetBe(t *testing.T) {
	require.Equal(t, []string{"a part of the roof is 380' long"},
		toldOf(t, "outside-size", "  den: {size: 12' x 13', work: {paint walls: hired}}\n", "outside: {roof: [{size: 380' x 260', pitch: 5/12}], eaves: 80 ft, work: {shingle roof gable: hired}}\n"))
}
