package deal_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// Sizes of the outside are held against each other and against the floors of the rooms, and each
// slip is told once.
func TestTheOutsideIsHeldAgainstTheGround(t *testing.T) {
	const (
		house   = "rooms: {living room: {size: 24' x 16', work: {paint walls: hired}}, kitchen: {size: 16' x 12'}, bedroom: {size: 14' x 12'}}\n" // 744 sq ft
		oneRoom = "rooms: {den: {size: 12' x 10', work: {paint walls: hired}}}\n"
	)
	for _, c := range []struct{ rooms, keys, outside, says string }{
		{house, "levels: 1", "around: 118 ft, roof: [{size: 34' x 25'}], windows: 11, doors: 2, deck: 12' x 16'", ""},
		{house, "levels: 1", "around: 118 ft, roof: [{size: 34' x 12.5'}]", "the roof covers 425 sq ft in plan, both slopes together, and the rooms have 744 sq ft on each of one level"},
		{oneRoom, "levels: 1", "around: 118 ft, roof: [{size: 34' x 12.5'}]", "the roof covers 425 sq ft in plan, both slopes together, and a house 118 ft around usually has 490 sq ft or more"},
		{oneRoom, "levels: 1", "roof: [{size: 34' x 12.5'}]", ""}, // nothing tells
		{oneRoom, "levels: 1", "roof: [{size: 3.4' x 25'}]", "the roof covers 85 sq ft"},
		{house, "levels: 1", "around: 118 ft, roof: [{size: 34' x 25'}, {size: 10' x 8'}]", ""},
		{house, "levels: 1", "around: 118 ft, roof: 1,020 sq ft", ""},
		{house, "levels: 1", "around: 118 ft, roof: 102 sq ft", "roof is \"102 sq ft\", and the rooms have"},
		{house, "levels: 1", "around: 118 ft, roof: [{size: 64' x 45'}]", "the roof covers 2,880 sq ft"},
		{oneRoom, "levels: 2", "around: 36.8 m, wall height: 18 ft, roof: [{size: 11 m x 14.8 m, overhang: 0.3 m}]", "the roof covers 1,752 sq ft in plan, both slopes together, and a house 36.8 m around encloses 911 sq ft at most"}, // for 11 m x 7.4 m
		{oneRoom, "levels: 2", "around: 36.8 m, wall height: 18 ft, roof: [{size: 11 m x 7.4 m, overhang: 3 m}]", "the roof stands 3 m over the walls (its overhang)"},
		{oneRoom, "levels: 2", "around: 36.8 m, wall height: 18 ft, roof: [{size: 11 m x 7.4 m, overhang: 1.2 m}]", ""},
		{house, "levels: 1", "around: 118 ft, roof: [{size: 36' x 27'}, {size: 22' x 20'}]", ""}, // and a garage
		{oneRoom, "levels: 1", "around: 102 ft, roof: [{size: 40' x 11'}]", ""},                  // narrow houses
		{oneRoom, "levels: 1", "around: 120 ft, roof: [{size: 50' x 10'}]", ""},
		{oneRoom, "levels: 1", "around: 56 ft, roof: [{size: 20' x 8'}]", ""},
		{house, "levels: 1", "around: 124 ft, roof: [{size: 36' x 26'}, {size: 24' x 24'}, {size: 36' x 8'}]", ""}, // and a garage and a porch
		{house, "levels: 1", "around: 124 ft, roof: \"2,100 sq ft\"", ""},
		{oneRoom, "levels: 1", "around: 88 ft, roof: [{size: 24' x 20'}, {size: 24' x 24'}]", ""},
		{oneRoom, "levels: 1", "around: 108 ft, roof: [{size: 34' x 20'}, {size: 34' x 20'}]", "the roof covers 1,360 sq ft in plan"}, // each slope
		{house, "levels: 1", "around: 118 ft, roof: 1,600 sq ft", ""},                                                                 // along the slope
		{house, "levels: 2", "around: 84 ft, roof: [{size: 22' x 20'}], wall height: 18 ft", ""},
		{house, "units: 1", "around: 84 ft, roof: [{size: 22' x 20'}]", ""}, // levels may be two
		{house, "levels: 1", "around: 59 ft", "around is \"59 ft\", which encloses 218 sq ft at most"},
		{"rooms: {basement: {size: 30' x 16', work: {paint walls: hired}}}\n", "units: 1", "around: 59 ft", "and basement has 480 sq ft"},
		{"rooms: {basement: {size: 30' x 16', sized: guessed, work: {paint walls: hired}}}\n", "units: 1", "around: 59 ft", ""},
		{"rooms: {attic bedroom: {size: 14' x 10', work: {paint walls: hired}}}\n", "levels: 1", "around: 59 ft", ""},
		{house, "levels: 1", "around: 118 ft, roof: [{size: 34' x 25'}], deck: 24' x 38'", "deck is \"24' x 38'\", 912 sq ft, and a house 118 ft around encloses 870 sq ft"},
		{house, "levels: 1", "roof: [{size: 34' x 25'}], deck: 24' x 38'", "deck is \"24' x 38'\", 912 sq ft, and the roof covers 850 sq ft"},
		{house, "levels: 1", "around: 118 ft, roof: [{size: 34' x 25'}], deck: 10' x 140'", "deck is \"10' x 140'\", which houses rarely have"},
		{house, "levels: 1", "around: 1180 ft, roof: [{size: 34' x 25'}]", "around is \"1180 ft\", which houses rarely have"},
		{oneRoom, "levels: 1", "windows: 120", "there are 120 windows outside"},
		{oneRoom, "units: 4", "windows: 120, doors: 16", ""},
		{oneRoom, "levels: 1", "doors: 20", "there are 20 doors outside"},
		{oneRoom, "levels: 1", "around: 118 ft, windows: [2 of 3' x 4', 12 of 8' x 6']", "take 600 sq ft, over half of the 1,062 sq ft"},
		{oneRoom, "levels: 1", "around: 118 ft, windows: [2 of 3' x 4', 6 of 8' x 6'], doors: 3", ""},
	} {
		_, found := deal.Read("den.yaml", []byte(minimal+"house: {"+c.keys+"}\n"+c.rooms+"outside: {"+c.outside+"}\n"))
		require.False(t, found.HasErrors(), "%s: %v", c.outside, found)
		var got diag.List
		for _, d := range found {
			if d.Code == "outside-size" {
				got = append(got, d)
			}
		}
		if c.says == "" {
			require.Empty(t, got, c.outside)
			continue
		}
		require.Len(t, got, 1, "%s: %v", c.outside, found)
		require.Contains(t, got[0].Message, c.says, c.outside)
	}
}

// The height of the walls outside is assumed for one level; of several it is asked for, where work
// goes by it.
func TestWallsOfSeveralLevelsWantTheirHeight(t *testing.T) {
	for _, c := range []struct {
		levels, outside string
		doubted         bool
	}{
		{"2", "around: 128 ft, work: {outside wall paint: hired}", true},
		{"1", "around: 128 ft, work: {outside wall paint: hired}", false},
		{"2", "around: 128 ft, wall height: 9 ft, work: {outside wall paint: hired}", false},
		{"2", "around: 128 ft, siding: 2,100 sq ft, work: {outside wall paint: hired}", false},
		{"2", "around: 128 ft, yard: 4,000 sq ft, work: {front planting: hired}", false},
		{"2", "around: 128 ft, work: {outside wall paint: {by: hired, count: 1,900 sq ft}, pressure wash: {by: hired, count: 1,900 sq ft}}", false},
	} {
		_, found := deal.Read("den.yaml", []byte(den+"house: {levels: "+c.levels+"}\noutside: {"+c.outside+"}\n"))
		require.False(t, found.HasErrors(), "%s: %v", c.outside, found)
		require.Equal(t, c.doubted, slices.Contains(codesIn(found), "wall-height-missing"), "%s: %v", c.outside, found)
	}
}

// Outside walls of two levels that are as high as a room are those of one, unless the upper level
// lies under the roof.
func TestWallsOfSeveralLevelsAreHigherThanARoom(t *testing.T) {
	const paint = ", work: {outside wall paint: hired}"
	sloped := "  attic bedroom: {size: 14' x 12', ceiling: 4' to 8' both sides, work: {paint walls: hired}}\n"
	for _, c := range []struct {
		levels, rooms, outside string
		doubted                bool
	}{
		{"2", "", "around: 128 ft, wall height: 8 ft" + paint, true},
		{"2", "", "around: 128 ft, wall height: 9 ft" + paint, true},
		{"3", "", "around: 128 ft, wall height: 9 ft" + paint, true},
		{"2", "", "around: 128 ft, wall height: 9 ft, roof: [{size: 38' x 26', pitch: 4/12}]" + paint, true},
		{"1", "", "around: 128 ft, wall height: 9 ft" + paint, false},
		{"2", "", "around: 128 ft, wall height: 17' 6\"" + paint, false},
		{"2", "", "around: 128 ft, wall height: 11 ft" + paint, false}, // a split level, in the middle
		{"3", "", "around: 128 ft, wall height: 11 ft" + paint, false},
		{"2", sloped, "around: 128 ft, wall height: 9 ft" + paint, false},
		{"2", "  loft: {size: 14' x 12', work: {paint walls: hired}}\n", "around: 128 ft, wall height: 9 ft" + paint, false},
		{"2", "", "around: 128 ft, wall height: 9 ft, roof: [{size: 38' x 26', pitch: 8/12}]" + paint, false}, // room for a level under it
		{"2", "", "around: 128 ft, wall height: 9 ft, roof: 1200 sq ft, siding: 2,100 sq ft" + paint, false},
		{"2", "", "around: 128 ft, wall height: 9 ft, yard: 4,000 sq ft, work: {front planting: hired}", false},
	} {
		_, found := deal.Read("den.yaml", []byte(den+c.rooms+"house: {levels: "+c.levels+"}\noutside: {"+c.outside+"}\n"))
		require.False(t, found.HasErrors(), "%s: %v", c.outside, found)
		i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "wall-height-low" })
		require.Equal(t, c.doubted, i >= 0, "%s: %v", c.outside, found)
		if c.doubted && c.levels == "2" {
			require.Contains(t, found[i].Hint, "18 ft", c.outside)
			require.Contains(t, found[i].Hint, "2,304 sq ft", c.outside) // 128 x 18
		}
	}
}
