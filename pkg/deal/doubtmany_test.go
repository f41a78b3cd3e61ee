package deal_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// told counts the doubts of one code in a deal with these keys.
func told(t *testing.T, code, keys string) (n int) {
	t.Helper()
	_, found := deal.Read("a.yaml", []byte(minimal+"renovation: {contingency: 20%}\n"+keys))
	require.False(t, found.HasErrors(), "%s: %v", keys, found)
	for _, d := range found {
		if d.Code == code {
			n++
		}
	}
	return n
}

// What stands in a place once or twice, lights of its floor and what is counted of the whole house are
// held against it.
func TestCountsThatAPlaceHardlyHas(t *testing.T) {
	const kitchen, attic = "rooms: {kitchen: {size: 12' x 14', work: {WORK}}}\n", "rooms: {den: {size: 10' x 12', work: {paint walls: hired}}}\n"
	for keys, want := range map[string]int{
		"house: {units: 1}\nwhole house: {work: {furnace: {by: hired, count: 11}}}\n":                                                          1,
		"house: {units: 1}\nwhole house: {work: {furnace: {by: hired, count: 2}}}\n":                                                           0,
		"house: {units: 4}\nwhole house: {work: {furnace: {by: hired, count: 8}}}\n":                                                           0,
		"whole house: {work: {furnace: {quote: $21k, count: 11}}}\n":                                                                           0,
		"whole house: {work: {mini-split: {by: hired, count: 5}}}\n":                                                                           0,
		"rooms: {kitchen: {size: 12' x 14', work: {range electric: {by: hired, count: 4}}}}\n":                                                 1,
		"rooms: {kitchen: {size: 12' x 14', work: {range electric: {by: hired, count: 2}}}}\n":                                                 0,
		"whole house: {work: {circuit: {by: hired, count: 60}}}\n":                                                                             1,
		"whole house: {work: {circuit: {by: hired, count: 24}}}\n":                                                                             0,
		"house: {units: 3}\nwhole house: {work: {circuit: {by: hired, count: 60}}}\n":                                                          0,
		"whole house: {work: {circuit: {quote: $9k, count: 60}}}\n":                                                                            0,
		"outside: {work: {outside outlet: {by: hired, count: 22}}}\n":                                                                          1,
		"outside: {work: {outside outlet: {by: hired, count: 4}, mulch: {by: hired, count: 6}, outside light: {by: hired, count: 9}}}\n":       0,
		"outside: {deck: 12' x 16', work: {deck stairs: {by: hired, count: 40}}}\n":                                                            1,
		"outside: {deck: 12' x 16', work: {deck stairs: {by: hired, count: 28}}}\n":                                                            0, // two from an upper level
		"house: {units: 2}\noutside: {deck: 12' x 16', work: {deck stairs: {by: hired, count: 40}}}\n":                                         0,
		"outside: {work: {mulch: {by: hired, count: 40}}}\n":                                                                                   1,
		"whole house: {work: {thermostat: {by: hired, count: 9}, ceiling fan: {by: hired, count: 7}, joist sister: {by: hired, count: 22}}}\n": 0,
		"rooms: {kitchen: {size: 12' x 14', work: {circuit: {by: hired, count: 8}, protected outlet: {by: hired, count: 11}}}}\n":              0,
		"rooms: {kitchen: {size: 12' x 14', work: {circuit: {by: hired, count: 20}}}}\n":                                                       1,
		"rooms: {kitchen: {size: 12' x 14', work: {circuit: {by: hired, count: 10}}}}\n":                                                       1,
		"rooms: {kitchen: {size: 12' x 14', work: {circuit: {quote: $3k, count: 10}}}}\n":                                                      0,
		"rooms: {kitchen and dining: {size: 12' x 24', work: {circuit: {by: hired, count: 14}}}}\n":                                            0,
		"rooms: {basement: {size: 30' x 24', work: {circuit: {by: hired, count: 12}}}}\n":                                                      0,
		"rooms: {basement: {size: 30' x 24', work: {circuit: {by: hired, count: 20}}}}\n":                                                      1,
		"whole house: {work: {baseboard heater: {by: hired, count: 40}}}\n":                                                                    1,
		"whole house: {work: {baseboard heater: {by: hired, count: 14}}}\n":                                                                    0,
		"rooms: {den: {size: 10' x 11', work: {baseboard heater: {by: hired, count: 10}}}}\n":                                                  1,
		"whole house: {work: {old appliance hauled away: {by: hired, count: 40}}}\n":                                                           1,
		"rooms: {kitchen: {size: 12' x 14', work: {old appliance hauled away: {by: hired, count: 5}}}}\n":                                      0,
		"rooms: {den: {size: 10' x 11', work: {drain replaced: {by: hired, count: 1}, supply lines: {by: hired, count: 1}}}}\n":                0,
		"rooms: {kitchen: {size: 12' x 14', work: {take out appliances: {by: hired, count: 3}}}}\n":                                            1,
		"rooms: {kitchen: {size: 12' x 14', work: {take out appliances: {by: hired, count: 1}}}}\n":                                            0,
		"rooms: {kitchen: {size: 12' x 14', work: {take out appliances: {quote: $200, count: 3}}}}\n":                                          0,
		"rooms: {kitchen and laundry: {size: 12' x 14', work: {take out appliances: {by: hired, count: 2}}}}\n":                                0,
		"whole house: {work: {take out appliances: {by: hired, count: 2}}}\n":                                                                  0,
		"house: {units: 3}\nwhole house: {work: {take out appliances: {by: hired, count: 6}}}\n":                                               0,
		"rooms: {den: {size: 10' x 11', work: {spot prime repairs: {by: hired, count: 6}, drywall patch: {by: own hands, count: 2}}}}\n":       1, // places counted
		"rooms: {stairs: {size: 3' x 11', stairs: {treads: 13}, work: {handrail: {by: hired, count: 120 ft}}}}\n":                              1,
		"rooms: {stairs: {size: 3' x 11', stairs: {treads: 13}, work: {handrail: {by: hired, count: 24 ft}}}}\n":                               0,
		"rooms: {stairs: {size: 3' x 11', stairs: {treads: 13, rail: 12 ft}, work: {handrail: {by: hired, count: 120 ft}}}}\n":                 1, // once
		"rooms: {basement: {size: 30' x 24', work: {foundation wall braced: {by: hired, count: 4}, basement post: {by: hired, count: 12}, egress window: {by: hired, count: 3}, electrical rough room: {by: hired, count: 4}}}}\n": 0,
		"whole house: {work: {building permit: {by: own hands, count: 2}, structural engineer visit: {by: hired, count: 2}, asbestos test: {by: hired, count: 2}, joist sister: {by: hired, count: 62}}}\n":                        0,
		"outside: {around: 120 ft, work: {foundation wall braced: {by: hired, count: 4}}}\n":                                                                                                                                       1, // braces of one wall
		"outside: {around: 120 ft, work: {foundation wall braced: {by: hired, count: 3}}}\n":                                                                                                                                       0,
		"house: {units: 2}\noutside: {around: 120 ft, work: {foundation wall braced: {by: hired, count: 4}}}\n":                                                                                                                    0,
		"whole house: {work: {foundation piers: {by: hired, count: 3}}}\n":                                                                                                                                                         1,
		"whole house: {work: {foundation piers: {by: hired, count: 2}}}\n":                                                                                                                                                         0,
		"whole house: {work: {foundation piers: {quote: $14k, count: 5}}}\n":                                                                                                                                                       0,
		"whole house: {work: {asbestos test: {by: hired, count: 12}, foundation piers: {by: hired, count: 6}}}\n":                                                                                                                  2, // samples and piers counted
		"whole house: {work: {portable toilet: {by: hired, count: 30 months}}}\n":                                                                                                                                                  1,
		"whole house: {work: {lawn care: {by: hired, count: 5 months}}}\n":                                                                                                                                                         0, // until the sale, and by guess
		"rooms: {kitchen: {size: 12' x 14', work: {recessed light: {by: hired, count: 30}}}}\n":                                                                                                                                    1,
		"rooms: {kitchen: {size: 12' x 14', work: {recessed light: {by: hired, count: 14}}}}\n":                                                                                                                                    0,
		"rooms: {bath: {size: 5' x 8', work: {light fixture: {by: hired, count: 6}}}}\n":                                                                                                                                           0,
		"rooms: {den: {size: 10' x 11', work: {bearing wall opening: {by: hired, count: 11}}}}\n":                                                                                                                                  1,
		"rooms: {den: {size: 10' x 11', work: {bearing wall opening: {by: hired, count: 3}}}}\n":                                                                                                                                   0,
		"rooms: {den: {size: 10' x 11', work: {beam: {by: hired, count: 11}}}}\n":                                                                                                                                                  1,
		"rooms: {den: {size: 10' x 11', work: {beam: {by: hired, count: 5}}}}\n":                                                                                                                                                   0,
		"rooms: {den: {size: 10' x 11', work: {gas line: {by: hired, count: 11}}}}\n":                                                                                                                                              1,
		"rooms: {den: {size: 14' x 12', work: {joist sister: {by: hired, count: 60}}}}\n":                                                                                                                                          1,
		"rooms: {den: {size: 14' x 12', work: {joist sister: {by: hired, count: 12}}}}\n":                                                                                                                                          0,
		"rooms: {basement: {size: 26' x 22', work: {joist sister: {by: hired, count: 44}}}}\n":                                                                                                                                     0, // on two spans
		"rooms: {den: {size: 10' x 11', work: {gas line: {by: hired, count: 3}}}}\n":                                                                                                                                               0,
		"rooms: {den: {size: 10' x 11', work: {fixture rough-in: {by: hired, count: 11}}}}\n":                                                                                                                                      1,
		"rooms: {den: {size: 10' x 11', work: {fixture rough-in: {by: hired, count: 7}}}}\n":                                                                                                                                       0,
		"rooms: {den: {size: 10' x 11', work: {drain replaced: {by: hired, count: 10}}}}\n":                                                                                                                                        1,
		"rooms: {den: {size: 10' x 11', work: {drain replaced: {by: hired, count: 2}}}}\n":                                                                                                                                         1,
		"rooms: {den: {size: 10' x 11', work: {supply lines: {by: hired, count: 10}}}}\n":                                                                                                                                          1,
		"rooms: {den: {size: 10' x 11', work: {supply lines: {by: hired, count: 2}}}}\n":                                                                                                                                           1,
		"rooms: {den: {size: 10' x 11', work: {duct run: {by: hired, count: 20}}}}\n":                                                                                                                                              1,
		"rooms: {den: {size: 10' x 11', work: {duct run: {by: hired, count: 8}}}}\n":                                                                                                                                               0,
		"rooms: {den: {size: 10' x 11', work: {outlet: {by: hired, count: 60}}}}\n":                                                                                                                                                1,
		"rooms: {den: {size: 10' x 11', work: {outlet: {by: hired, count: 16}}}}\n":                                                                                                                                                0,
		"whole house: {work: {fixture rough-in: {by: hired, count: 14}, drain replaced: {by: hired, count: 9}, supply lines: {by: hired, count: 9}, duct run: {by: hired, count: 22}, outlet: {by: hired, count: 60}}}\n":          0,
		"rooms: {shop: {size: 10' x 11', outlets: 24, work: {outlet: hired}}}\n":                                                                                                                                                   0,
		"whole house: {work: {light fixture: {by: hired, count: 20}}}\n":                                                                                                                                                           0,
		attic + "whole house: {work: {attic blown: {by: hired, count: 12000 sq ft}}}\n":                                                                                                                                            1,
		attic + "whole house: {work: {attic blown: {by: hired, count: 1200 sq ft}}}\n":                                                                                                                                             0,
		attic + "house: {levels: 1}\noutside: {around: 120 ft}\nwhole house: {work: {paint ceiling: {by: hired, count: 1700 sq ft}}}\n":                                                                                            0, // with a basement
		attic + "house: {levels: 1}\noutside: {roof: [{size: 40' x 28', pitch: 6/12}]}\nwhole house: {work: {attic blown: {by: hired, count: 4000 sq ft}}}\n":                                                                      1,
	} {
		require.Equal(t, want, told(t, "count-large", keys), keys)
	}
}

// Of each item that is held by the piece, one more than a room or a house has is told, and as many are not.
func TestCountsByThePieceAtTheirMost(t *testing.T) {
	most := maps.Clone(deal.MostOf)
	for _, name := range deal.FewInRoom {
		require.NotContains(t, most, name)
		most[name] = deal.Most{2, 4}
	}
	for name, most := range most {
		require.NotNil(t, pricebook.Starter().Item(name), name)
		require.Equal(t, "one", pricebook.Starter().Item(name).Measure, name)
		for place, most := range map[string]int64{"rooms: {den: {size: 10' x 11', work: {%s: {by: hired, count: %d}}}}\n": most.Room, "outside: {around: 136 ft, roof: [{size: 40' x 28', pitch: 6/12}], work: {%s: {by: hired, count: %d}}}\n": most.House} {
			require.Zero(t, told(t, "count-large", fmt.Sprintf(place, name, most)), "%s in %s", name, place)
			require.Equal(t, 1, told(t, "count-large", fmt.Sprintf(place, name, most+1)), "%s in %s", name, place)
		}
	}
}

// An item of the owner's book that makes what stands once may say nothing of its work.
func TestACountOfAnItemWithoutWords(t *testing.T) {
	_, found := booked("items: {pellet stove: {trade: heating, measure: one, hours: none, hired: $900 each, materials: none, brings: none, makes: heating, source: me}}\n", "pellet stove: {by: hired, count: 11}")
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "count-large" })
	require.NotEqual(t, -1, i, found)
	require.Equal(t, "pellet stove: a count of 11, and a room hardly has more than 2", found[i].Message)
}

// A size outside is held against the same bound where it is the count of work.
func TestCountsOfSizesOutside(t *testing.T) {
	for outside, want := range map[string]int{
		"work: {wood fence: {by: hired, count: 1100 ft}}":                                   1,
		"work: {wood fence: {by: hired, count: 340 ft}}":                                    0,
		"work: {wood fence: {quote: $9k, count: 1100 ft}}":                                  0,
		"fence: 1100 ft, work: {wood fence: {by: hired, count: 1100 ft}}":                   1,
		"fence: 110 ft, work: {wood fence: {by: hired, count: 1100 ft}}":                    1, // once
		"yard: 40000 sq ft, work: {wood fence: {by: hired, count: 840 ft}}":                 0,
		"yard: 9000 sq ft, work: {fence stained: {by: own hands, count: 620 ft}}":           0, // which costs little
		"deck: 12' x 16', work: {deck rail: {by: hired, count: 400 ft}}":                    1,
		"deck: 12' x 16', work: {deck rail: {by: hired, count: 44 ft}}":                     0,
		"deck: 12' x 16', work: {deck footing: {by: hired, count: 40}}":                     1,
		"deck: 12' x 16', work: {deck footing: {by: hired, count: 8}}":                      0,
		"work: {deck boards: {by: hired, count: 1920 sq ft}}":                               1,
		"work: {deck boards: {by: hired, count: 320 sq ft}}":                                0,
		"work: {sod: {by: hired, count: 21000 sq ft}}":                                      1,
		"work: {sod: {by: hired, count: 2100 sq ft}}":                                       0,
		"work: {seed: {by: own hands, count: 42000 sq ft}}":                                 0,
		"work: {tree removal: {by: hired, count: 20}}":                                      1,
		"work: {tree removal: {by: hired, count: 3}, tree trimming: {by: hired, count: 9}}": 0,
		"work: {walk concrete: {by: hired, count: 1200 sq ft}}":                             1,
		"work: {driveway concrete: {by: hired, count: 900 sq ft}}":                          0,
		"gutters: 112 ft, work: {buried downspout drain: {by: hired, count: 40}}":           1,
		"gutters: 112 ft, work: {buried downspout drain: {by: hired, count: 4}}":            0,
		"work: {basement drain: {by: hired, count: 1360 ft}}":                               1,
		"work: {basement drain: {by: hired, count: 136 ft}}":                                0,
		"work: {sod: {by: hired, count: 1200 sq ft}}, yard: 900 sq ft":                      1, // more than the yard
	} {
		require.Equal(t, want, told(t, "count-large", "outside: {"+outside+"}\n"), outside)
	}
	require.Equal(t, 1, told(t, "count-large", "outside: {work: {driveway sealed: {by: hired, count: 180' x 40'}}}\n"))
	require.Equal(t, 1, told(t, "count-large", "whole house: {work: {wood fence: {by: hired, count: 1100 ft}}}\n"))
}

// The plot, its walls and what hangs along its roof are held against each other, where work goes by them.
func TestSizesOutsideOfADigitMore(t *testing.T) {
	for outside, want := range map[string]int{
		"yard: 5600 sq ft, fence: 1400 ft, work: {wood fence: hired}":                 1,
		"yard: 5600 sq ft, fence: 340 ft, work: {wood fence: hired}":                  0,
		"yard: 40000 sq ft, fence: 840 ft, work: {wood fence: hired}":                 0,
		"fence: 1400 ft, work: {wood fence: {by: hired, count: 90 ft}}":               0,
		"yard: 5600 sq yd, work: {sod: hired}":                                        1,
		"yard: 43000 sq ft, work: {sod: {by: hired, count: 1200 sq ft}}":              0,
		"yard: 43000 sq ft, work: {sod: {quote: $30k}}":                               0,
		"trees: 20, work: {tree removal: hired}":                                      1,
		"trees: 6, work: {tree removal: hired}":                                       0,
		"trees: 40, work: {tree removal: {by: hired, count: 2}}":                      0,
		"trees: 20, work: {tree removal: {quote: $9k}}":                               0,
		"trees: 12, work: {tree trimming: hired}":                                     0, // which costs little
		"deck: 12' x 16', deck footings: 40, work: {deck frame: hired}":               1,
		"deck: 12' x 16', deck footings: 12, work: {deck frame: hired}":               0,
		"deck: 6' x 8', deck footings: 6, work: {deck frame: hired}":                  0,
		"deck: 30' x 20', deck footings: 40, work: {deck frame: hired}":               0,
		"deck footings: 80, work: {deck footing: hired}":                              1,
		"deck footings: 18, work: {deck footing: hired}":                              0,
		"yard: 43000 sq ft, work: {seed: own hands}":                                  0, // which costs little
		"driveway: 16' x 340', work: {driveway concrete: hired}":                      1,
		"driveway: 20' x 38', work: {driveway concrete: hired}":                       0,
		"yard: 5200 sq ft, driveway: 18' x 400', work: {driveway sealed: own hands}":  1,
		"yard: 5200 sq ft, driveway: 7200 sq ft, work: {driveway patched: own hands}": 1,
		"yard: 5200 sq ft, driveway: 12' x 500', work: {driveway sealed: own hands}":  0, // of one lane
		"yard: 12000 sq ft, driveway: 18' x 400', work: {driveway sealed: own hands}": 0,
		"driveway: 18' x 400', work: {driveway sealed: own hands}":                    0, // a long country drive
		"driveway: 180' x 40', work: {driveway sealed: own hands}":                    1,
		"driveway: 180' x 40', work: {driveway sealed: {quote: $1,900}}":              0,
		"driveway: 180' x 40'": 0,
		"driveway: 40' x 36', work: {driveway sealed: own hands}":                                                                                   0,
		"yard: 5200 sq ft, fence: 1400 ft, work: {fence repair: {by: own hands, part: 25%}}":                                                        1,
		"yard: 5200 sq ft, fence: 500 ft, work: {fence repair: {by: own hands, part: 25%}}":                                                         0,
		"fence: 1400 ft, work: {fence repair: {by: own hands, part: 25%}}":                                                                          0, // of a large lot, for all that is known
		"yard: 5200 sq ft, fence: 1400 ft, work: {fence repair: {by: own hands, part: 2%}}":                                                         0,
		"walk: 30' x 30', work: {walk concrete: hired}":                                                                                             1,
		"walk: 3' x 60', work: {walk concrete: hired}":                                                                                              0,
		"around: 140 ft, soffit: 1900 sq ft":                                                                                                        1,
		"around: 166 ft, roof: [{size: 46' x 28', pitch: 5/12, overhang: 18\"}, {size: 22' x 22', pitch: 5/12, overhang: 18\"}], soffit: 920 sq ft": 1,
		"around: 166 ft, roof: [{size: 46' x 28', pitch: 5/12, overhang: 18\"}, {size: 22' x 22', pitch: 5/12, overhang: 18\"}], soffit: 290 sq ft": 0,
		"around: 166 ft, roof: [{size: 46' x 28', pitch: 5/12, overhang: 18\"}, {size: 22' x 22', pitch: 5/12, overhang: 18\"}], soffit: 560 sq ft": 0, // with the ceiling of a porch
		"around: 166 ft, roof: [{size: 46' x 28', pitch: 5/12, overhang: 18\"}, {size: 22' x 22', pitch: 5/12}], soffit: 920 sq ft":                 0,
		"around: 140 ft, soffit: 420 sq ft":                                                                                                         0,
		"gutters: 112 ft, downspouts: 50":                                                                                                           1,
		"gutters: 112 ft, downspouts: 12":                                                                                                           0,
		"around: 160 ft, wall height: 19' 4\"":                                                                                                      1,
		"around: 160 ft, wall height: 16' 4\"":                                                                                                      0,
		"around: 150 ft, wall height: 8' 6\", windows: [4 of 3' x 36', 3]":                                                                          1,
		"around: 150 ft, wall height: 16', windows: [2' x 14', 9]":                                                                                  0, // of a stair
		"around: 150 ft, wall height: 6', doors: 3' x 6'8\"":                                                                                        0, // in the gable of a roof down to the ground
		"around: 150 ft, doors: [3' x 6'8\", 60' x 6'8\"]":                                                                                          1,
		"around: 150 ft, doors: [3' x 6'8\", 18' x 7']":                                                                                             0, // of a garage
		"doors: 12": 1,
		"doors: 8":  0,
		"around: 160 ft, roof: [{size: 44' x 28'}, {size: 44' x 28'}]":                   1,
		"around: 144 ft, roof: [{size: 44' x 28'}, {size: 32' x 28'}]":                   1,
		"around: 144 ft, roof: [{size: 44' x 28'}, {size: 24' x 24'}, {size: 24' x 8'}]": 0,
		"around: 160 ft, roof: [{size: 44' x 28'}, {size: 112' x 10', pitch: 3/12}]":     1,
		"around: 160 ft, roof: [{size: 66' x 14'}]":                                      0,
	} {
		require.Equal(t, want, told(t, "outside-size", "house: {levels: 1}\noutside: {"+outside+"}\n"), outside)
	}
	require.Zero(t, told(t, "outside-size", "house: {levels: 1}\noutside: {around: 120 ft, wall height: 18'}\nrooms: {basement: {size: 20' x 20'}}\n"), "which opens to a slope")
}

// What is done to a part does not go by all of a yard.
func TestWhatGoesByAPartOfAYardIsNotSaidToGoByAllOfIt(t *testing.T) {
	for work, by := range map[string]string{"{by: hired, part: 20%}": "goes by it", "hired": "goes by all of it"} {
		_, found := deal.Read("a.yaml", []byte(walked+"outside: {around: 200 ft, yard: 5 acres, work: {seed: "+work+"}}\n"))
		require.Contains(t, fmt.Sprint(found), by, work)
	}
}

// Rooms, cabinets and ceilings of which digits changed places or were lost.
func TestSlipsOfDigitsInRooms(t *testing.T) {
	kitchen := func(size, fixed string) string {
		return "rooms: {kitchen: {size: " + size + ", fixed: {" + fixed + ", sink: 1}, work: {paint walls: hired}}}\n"
	}
	bed := func(name, size string) string {
		return "rooms: {" + name + ": {" + size + ", work: {paint walls: hired}}}\n"
	}
	for _, c := range []struct {
		code, keys string
		want       int
	}{
		{"fixed-long", kitchen("13' x 14'", "base cabinets: 41' x 2', wall cabinets: 11' x 1'"), 1},
		{"fixed-long", kitchen("13' x 14'", "base cabinets: 26' x 2', wall cabinets: 8' x 1'"), 0},
		{"fixed-long", kitchen("8' x 14'", "base cabinets: 28' x 2', wall cabinets: 12' x 1'"), 0}, // a galley
		{"fixed-long", kitchen("13' x 14'", "base cabinets: 14' x 2', island: 13' x 2' 6\""), 1},
		{"fixed-long", kitchen("11' x 11'", "base cabinets: 14' x 2', island: 9' x 2' 6\""), 0},
		{"room-large", bed("bedroom", "size: 12' 4\" x 31' 8\""), 1},
		{"room-large", bed("attic bedroom", "size: 12' 4\" x 31' 8\""), 0},
		{"room-large", bed("main bedroom", "size: 15' x 24'"), 0},
		{"room-narrow", bed("bedroom", "size: 12' 4\" x 3' 8\""), 1},
		{"room-narrow", bed("bedroom", "size: 12' 4\" x 6'"), 0},
		{"room-narrow", bed("bedroom", "size: [12' x 5', 12' x 5' sharing 12']"), 0},
		{"room-narrow", bed("living room", "size: 18' 4\" x 3' 6\""), 1},
		{"room-narrow", bed("dining room", "size: 12' x 4' 11\""), 1},
		{"room-narrow", bed("kitchen", "size: 12' x 3' 6\""), 1},
		{"room-narrow", bed("kitchen", "size: 12' x 5'"), 0}, // a galley
		{"room-narrow", bed("kitchenette", "size: 8' x 4'"), 0},
		{"room-narrow", bed("dining nook", "size: 8' x 4'"), 0},
		{"room-narrow", bed("pocket office", "size: 8' x 4'"), 0},
		{"room-narrow", bed("office", "kind: other, size: 8' x 4'"), 0},
		{"room-narrow", bed("laundry", "size: 12' x 3' 6\""), 0},
		{"room-narrow", bed("hall", "size: 12' x 3' 6\""), 0},
		{"room-narrow", bed("living room", "size: [18' x 13', 8' x 3' 6\" sharing 3' 6\"]"), 0},
		{"fixed-long", kitchen("14' x 15'", "base cabinets: 12' x 2', wall cabinets: 31' x 1'"), 1},
		{"fixed-long", kitchen("14' x 15'", "base cabinets: 12' x 2', wall cabinets: 21' x 1'"), 0},
		{"fixed-long", kitchen("14' x 15'", "base cabinets: 9' x 2', wall cabinets: 22' x 1'"), 0}, // a short run beside a pantry
		{"many-in-room", "rooms: {kitchen: {size: 12' x 14', lights: 22, work: {light fixture: hired}}}\n", 1},
		{"many-in-room", "rooms: {kitchen: {size: 12' x 14', lights: 18, work: {light fixture: hired}}}\n", 0},
		{"many-in-room", "rooms: {kitchen: {size: 12' x 14', lights: 22, work: {paint walls: hired}}}\n", 0},
		{"many-in-room", "rooms: {kitchen: {size: 12' x 14', lights: 22, work: {light fixture: {by: hired, count: 2}}}}\n", 0},
		{"many-in-room", "rooms: {bath: {size: 5' x 8', lights: 6, work: {light fixture: hired}}}\n", 0},
		{"ceiling-high", bed("attic bedroom", "size: 19' x 14' 6\", ceiling: 4' to 18' both sides"), 1},
		{"ceiling-high", bed("attic bedroom", "size: 19' x 14' 6\", ceiling: 4' to 12' both sides"), 0},
		{"ceiling-high", bed("attic bedroom", "size: [19' x 14', 6' x 3' sharing 6'], ceiling: 4' to 8' both sides"), 0}, // over a dormer
	} {
		require.Equal(t, c.want, told(t, c.code, c.keys), c.keys)
	}
}

// Fixed parts and rooms that are only counted, of a digit twice.
func TestCountsOfADigitTwice(t *testing.T) {
	for keys, want := range map[string]int{
		"rooms: {kitchen: {size: 12' x 14', fixed: {sink: 11}, work: {paint walls: hired}}}\n":                                             1,
		"rooms: {bath: {size: 8' x 5', fixed: {toilet: {count: 11}}, work: {paint walls: hired}}}\n":                                       1,
		"rooms: {bath: {size: 10' x 9', fixed: {sink: 2, toilet: 1, vanity: {size: 3' x 1'9\", count: 2}}, work: {paint walls: hired}}}\n": 0,
		"rooms: {bath: {size: 8' x 5', fixed: {wc: 11}, work: {paint walls: hired}}}\n":                                                    1, // a toilet
		"rooms: {stairs: {size: 3' x 11', stairs: {treads: 13, rail: 120 ft}, work: {handrail: hired}}}\n":                                 1,
		"rooms: {stairs: {size: 3' x 11', stairs: {treads: 13, rail: 28 ft}, work: {handrail: hired}}}\n":                                  0,
		"rooms: {upper hall: {size: 14' x 9', stairs: {treads: 14, rail: 60 ft}, work: {handrail: hired}}}\n":                              0, // on both sides and around the opening
		"rooms: {basement: {size: 26' x 22', stairs: {treads: 12, rail: 110 ft}, work: {handrail: hired}}}\n":                              1,
		"rooms: {basement: {size: 26' x 22', stairs: {treads: 12, rail: 50 ft}, work: {handrail: hired}}}\n":                               0,
		"rooms: {loft: {size: 30' x 20', stairs: {treads: 13, rail: 106 ft}, work: {handrail: hired}}}\n":                                  0, // along three sides
		"rooms: {loft: {size: 14' x 16', stairs: {rail: 30 ft}, work: {handrail: hired}}}\n":                                               0,
		"rooms: {den: {size: 12' x 14', fixed: {showcase: {size: 1' x 1', count: 6}}, work: {paint walls: hired}}}\n":                      0,
		"rooms: {kitchen: {size: 12' x 14', fixed: {base cabinets: {size: 3' x 2', count: 6}}, work: {paint walls: hired}}}\n":             0,
	} {
		require.Equal(t, want, told(t, "many-in-room", keys), keys)
	}
	for keys, want := range map[string]int{
		"quick: {bedrooms: 13, baths: 2}\n": 1, "quick: {bedrooms: 3, baths: 12}\n": 1, "quick: {kitchens: 11}\n": 1,
		"quick: {bedrooms: 5, baths: 4, kitchens: 2, living rooms: 4, halls: 4, laundries: 2, basements: 1}\n": 0,
		"house: {units: 4}\nquick: {bedrooms: 12, kitchens: 4, baths: 8}\n":                                    0,
		"house: {bedrooms: 3, baths: 2}\nquick: {bedrooms: 4, baths: 3}\n":                                     2,
		"house: {bedrooms: 3, baths: 1.5}\nquick: {bedrooms: 3, baths: 2}\n":                                   0,
		"house: {bedrooms: 12, units: 1}\nquick: {bedrooms: 12}\n":                                             0,
	} {
		require.Equal(t, want, told(t, "quick-many", keys), keys)
	}
}

// Sums that a careful friend asks about: a container, a find, what options add, one dear piece of work.
func TestSumsOfADigitMoreOrLess(t *testing.T) {
	option := func(adds, work string) string {
		return "outside: {driveway: 16' x 120', options: {fresh: {adds: " + adds + ", work: {" + work + "}}}}\nscope: fresh\n"
	}
	const strip = "rooms: {den: {size: 12' x 10', work: {strip wall board: own hands}}}\nlocal prices: {container: {"
	for _, c := range []struct {
		code, keys string
		want       int
	}{
		{"container-unusual", strip + "holds: 20 cu yd, costs: $52}}\n", 1},
		{"container-unusual", strip + "holds: 2 cu yd, costs: $525}}\n", 1},
		{"container-unusual", strip + "holds: 3 cu yd, costs: $240, weight limit: 1.5 tons}}\n", 0}, // a bag
		{"container-unusual", strip + "holds: 6 cu yd, costs: $60}}\n", 0},                          // a trailer
		{"container-unusual", strip + "holds: 2 cu yd, costs: $60}}\n", 0},
		{"container-unusual", strip + "holds: 40 cu yd, costs: $690}}\n", 0},
		{"quote-far", "rooms: {kitchen: {size: 12' x 14', work: {fridge: {by: own hands, allowance: $3800, note: thrifted}}}}\n", 1},
		{"quote-far", "rooms: {kitchen: {size: 12' x 14', work: {fridge: {by: own hands, allowance: $380, note: thrifted}}}}\n", 0},
		{"quote-far", "rooms: {kitchen: {size: 12' x 14', work: {fridge: {by: own hands, allowance: $3800}}}}\n", 0},
		{"quote-far", "rooms: {bath: {size: 5' x 8', fixed: {tub: 5' x 2'6\"}, work: {tub: {by: hired, allowance: $1800, note: used antique clawfoot}}}}\n", 0},
		{"quote-far", "outside: {siding: 1315 sq ft, work: {vinyl siding: {quote: $985, covers: labour}}}\n", 1},
		{"quote-far", "outside: {siding: 1315 sq ft, work: {vinyl siding: {quote: $1985, covers: labour}}}\n", 0},
		{"adds-far", option("$1,900", "driveway concrete: {quote: $21k}"), 1},
		{"adds-far", option("$1,900", "driveway concrete: {quote: $14k}"), 0},
		{"adds-far", option("$5,900", "driveway concrete: {quote: $21k}"), 0},
		{"adds-far", option("$0", "driveway concrete: {quote: $21k}"), 0},
		{"work-large", "whole house: {work: {paint accent wall: {by: hired, count: 460}}}\n", 1},
		{"work-large", "whole house: {work: {paint accent wall: {quote: $70k, count: 460}}}\n", 0},
		{"work-large", "whole house: {work: {paint accent wall: {by: hired, count: 26}}}\n", 0},
	} {
		require.Equal(t, c.want, told(t, c.code, c.keys), c.keys)
	}
}

// What is likely for a mend is held against the most of the price book, where the file says no most.
func TestFarMoreAsideThanThePriceBookTakes(t *testing.T) {
	for seen, want := range map[string]int{
		"{state: not seen, likely: $38,000}":                1,
		"{state: not seen, likely: $19,600}":                0, // twice $14,000
		"{state: not seen, likely: $38,000, most: $45,000}": 0,
		"{state: not seen, likely: $38,000, most: $38,000}": 0,
		"{state: good}":                     0,
		"{state: not seen, likely: $3,800}": 0,
		"{state: not seen, least: $0, likely: $900, most: $4,000}": 0,
	} {
		require.Equal(t, want, told(t, "seen-large", "house: {year built: 1930}\nseen: {sewer line: "+seen+"}\n"), seen)
	}
}

// Gutters along a small part of the eaves are doubted where they are hung by that.
func TestGuttersAlongASmallPartOfTheEaves(t *testing.T) {
	for outside, want := range map[string]int{
		"gutters: 7 ft, work: {gutters: hired}":                     1,
		"gutters: 14 ft, work: {gutters: hired}":                    0,
		"gutters: 7 ft":                                             0,
		"work: {gutters: {by: hired, count: 7 ft}}":                 0,
		"gutters: 7 ft, work: {gutters: {by: hired, count: 70 ft}}": 0,
	} {
		require.Equal(t, want, told(t, "outside-size", "outside: {roof: [{size: 38' x 26', pitch: 6/12}], "+outside+"}\n"), outside)
	}
}
