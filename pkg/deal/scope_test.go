package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

const walked = `
purchase: {price: $160k}
value: {after-repair value: $260k}
time: {marketing: 5 weeks, escrow: 1 month}
`

func readDeal(t *testing.T, text string, sets ...deal.Set) *deal.Deal {
	t.Helper()
	d, found := deal.Read("house.yaml", []byte(text), sets...)
	require.NotNil(t, d, found)
	return d
}

func labels(all []*model.Member) (out []string) {
	for _, m := range all {
		out = append(out, m.Label)
	}
	return out
}

// The rooms with slanting walls of docs/measuring.md, against their true shapes by elementary geometry: a bay
// and a corner at 45 degrees, and eight sides 8 ft across, whose floor is 2(root 2 - 1) times 8 squared and
// whose sides are root 2 - 1 times 8 each.
func TestSlantingWalls(t *testing.T) {
	const root2 = 1.4142136
	for shape, want := range map[string]struct{ floor, walls, over float64 }{
		"size: [14' x 12', 6' x 2' sharing 6']":                                       {180, 44 + 4 + 4*root2, 0.045},
		"walls: [east 12', north 10' 6\", west 3', north 1' 6\", west 9', south 12']": {139.5, 42 + 3*root2, 0.039},
		"size: 7' 3\" x 7' 3\"":                                                       {128 * (root2 - 1), 64 * (root2 - 1), 0.095},
	} {
		d := readDeal(t, walked+"rooms: {den: {"+shape+", work: {paint walls: hired}}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		den := d.Root.In("inside")[0]
		require.InEpsilon(t, want.floor, v.Of(d.Model.Find(den, "floor_area")).InexactFloat64(), 0.01, shape)
		over := v.Of(d.Model.Find(den, "perimeter")).InexactFloat64()/want.walls - 1
		require.InDelta(t, want.over, over, 0.002, shape)
	}
}

// A measured room takes the place of a counted one of its sort.
func TestQuickRoomsMakeWayForMeasuredOnes(t *testing.T) {
	d := readDeal(t, walked+`
quick: {bedrooms: 3, baths: 1}
rooms: {front bedroom: {size: 10' x 11', work: {paint walls: own hands}}}
`)
	require.ElementsMatch(t, []string{"front bedroom", "bedroom 2", "bedroom 3", "bath 1"}, labels(d.Root.In("inside")))
}

// No counted room takes the name of a measured one.
func TestQuickRoomsHaveNamesOfTheirOwn(t *testing.T) {
	for rooms, names := range map[string][]string{
		"Bedroom 3: {size: 10' x 12'}":                                       {"Bedroom 3", "bedroom 1", "bedroom 2"},
		"bedroom 1: {size: 10' x 12'}":                                       {"bedroom 1", "bedroom 2", "bedroom 3"},
		"bedroom 2: {size: 9' x 9'}, bedroom 3: {size: 9' x 12'}":            {"bedroom 2", "bedroom 3", "bedroom 1"},
		"bedroom 2: {size: 9' x 9', kind: living}, nursery: {size: 9' x 9'}": {"bedroom 2", "nursery", "bedroom 1", "bedroom 3"},
	} {
		d := readDeal(t, walked+"quick: {bedrooms: 3}\nrooms: {"+rooms+"}\n")
		require.ElementsMatch(t, names, labels(d.Root.In("inside")), rooms)
	}
}

// What a quote covers changes nothing where there is none: a trade is still paid.
func TestCoversWithoutAQuoteLeavesThePrice(t *testing.T) {
	const den = walked + "rooms: {den: {size: 10' x 12', work: {tile floor: {by: hired%s}}}}\n"
	require.Equal(t, quantities(t, fmt.Sprintf(den, ""))["$"].String(), quantities(t, fmt.Sprintf(den, ", covers: labour"))["$"].String())
	require.Equal(t, quantities(t, fmt.Sprintf(den, ""))["$"].String(), quantities(t, fmt.Sprintf(den, ", covers: all"))["$"].String())
}

// A surround of which nothing is said goes 6 ft up at a tub and 7 ft at a shower, and no
// higher than the room at its highest; around 9 ft of a shower, 10 ft of a tub, by hand.
func TestASurroundIsNoHigherThanItsRoom(t *testing.T) {
	for room, walls := range map[string]string{
		"size: 8' x 9', fixed: {shower: 3' x 3'}":                                                 "63",
		"size: 8' x 9', ceiling: 6'6\", fixed: {shower: 3' x 3'}":                                 "58.5",
		"size: 8' x 9', ceiling: 5'6\", fixed: {tub: 5' x 2'6\"}":                                 "55",
		"size: 8' x 9', ceiling: 6'6\", fixed: {shower: {size: 3' x 3', surround: 6'}}":           "54",
		"size: 8' x 9', ceiling: 6' to 6'8\", fixed: {shower: 3' x 3'}":                           "60",
		"walls: [east 8', north 9', west 8', south 9'], ceiling: 6'6\", fixed: {shower: 3' x 3'}": "58.5",
	} {
		require.Equal(t, walls, quantities(t, walked+"rooms: {bath: {"+room+", work: {tile shower walls: hired}}}\n")["tile shower walls"].Round(9).String(), room)
	}
}

// A tub opens the walls of its surround alone, so these are what is insulated, at the
// measure of the surround: 5 + 2 x 2.5 ft, 6 ft high, are 60 sq ft.
func TestATubInsulatesBehindItsSurround(t *testing.T) {
	d := readDeal(t, walked+`
rooms: {bath: {size: 9' x 8', fixed: {tub: {size: 5' x 2.5', walls: 3, surround: 6'}}, work: {tub: hired}}}
`)
	v, err := exact.Known(d.Known)
	require.NoError(t, err)
	var feet []string
	for _, it := range d.Root.In("inside")[0].In("option")[0].In("item") {
		require.NotEqual(t, "outside wall insulation", it.Label)
		if it.Label == "surround insulation" {
			c := d.Model.Find(it, "quantity")
			require.NoError(t, v.Work(c))
			feet = append(feet, v.Of(c).String())
		}
	}
	require.Equal(t, []string{"60"}, feet)
}

// Every sort of counted room has work of the price book in both options.
func TestQuickRoomsAreWhole(t *testing.T) {
	for _, scope := range []string{"cosmetic", "full gut"} {
		d := readDeal(t, walked+"scope: "+scope+"\nquick: {bedrooms: 1, baths: 1, kitchens: 1, living rooms: 1, halls: 1, laundries: 1, basements: 1, by: own hands}\n")
		rooms := d.Root.In("inside")
		require.Len(t, rooms, 7)
		for _, r := range rooms {
			require.Len(t, r.In("option"), 1, r.Label)
			items := r.In("option")[0].In("item")
			require.NotEmpty(t, items, r.Label)
			require.Equal(t, "own", items[0].Given.Of("who").Choice, r.Label)
		}
	}
}

const twoScopes = `
purchase: {price: $160k}
value: {after-repair value: $260k, low: $240k}
time: {renovation: 2 months, marketing: 5 weeks, escrow: 1 month}
scope: full gut
rooms:
  den:
    size: 10' x 12'
    options:
      cosmetic: {adds: $2k, work: {paint walls: own hands}}
      full gut: {adds: $9k, work: {hang wall board: hired}}
`

// The value was stated for the file's own scope; with another it holds what that adds.
// By hand: 260 - 9 + 2 = 253, and with nothing done 251; the low value likewise.
func TestValuesFollowTheScope(t *testing.T) {
	for scope, want := range map[string][2]string{"full gut": {"260000", "240000"}, "cosmetic": {"253000", "233000"}, "as it is": {"251000", "231000"}} {
		d := readDeal(t, twoScopes, deal.Set{Path: "scope", Value: scope})
		require.Equal(t, want[0], worth(t, d, "after_repair_value"), scope)
		require.Equal(t, want[1], worth(t, d, "low_value"), scope)
		d = readDeal(t, replaced(t, twoScopes, "after-repair value: $260k", "before work: $251k"), deal.Set{Path: "scope", Value: scope})
		require.Equal(t, want[0], worth(t, d, "after_repair_value"), scope)
		require.Equal(t, want[1], worth(t, d, "low_value"), scope)
	}
}

// So do a range and a bad day of it, which the file states for its own scope too; what a bad
// day adds or scales stays.
func TestRangesAndBadDaysFollowTheScope(t *testing.T) {
	text := twoScopes + "ranges: {after-repair value: {low: $230k, likely: $258k, high: $270k}, overrun: {low: 0%, high: 40%}}\nbad days: {soft: {after-repair value: $240k}, softer: {after-repair value: -$20k}}\n"
	d := readDeal(t, text, deal.Set{Path: "scope", Value: "cosmetic"})
	x := d.Ranges[0]
	require.Equal(t, []string{"223000", "251000", "263000", "-7000"}, []string{x.Low.String(), x.Likely.String(), x.High.String(), x.Moved.String()})
	require.True(t, d.Ranges[1].Moved.IsZero())
	require.Equal(t, "233000", d.BadDays[0].Changes[0].Value.String())
	require.Contains(t, d.BadDays[0].Changes[0].Text, "$233,000 ($240k stated")
	require.Equal(t, "233000", d.BadDays[1].Changes[0].Value.String()) // of 253, by hand
	d = readDeal(t, text)
	require.Equal(t, "230000", d.Ranges[0].Low.String())
	require.Equal(t, "240000", d.BadDays[0].Changes[0].Value.String())
}

func TestASetChangesTheScopeOfOneRoom(t *testing.T) {
	d := readDeal(t, twoScopes, deal.Set{Path: "scope.den", Value: "cosmetic"})
	require.Equal(t, []string{"cosmetic"}, labels(d.Root.In("inside")[0].In("option")))
}

// What another piece of work does already does not come along.
func TestCompanionsMakeWay(t *testing.T) {
	text := walked + "rooms: {den: {size: 10' x 12', doors: 1, work: {resilient plank floor: hired%s}}}\n"
	items := func(more string) []string {
		d := readDeal(t, replaced(t, text, "%s", more))
		return labels(d.Root.In("inside")[0].In("option")[0].In("item"))
	}
	require.Contains(t, items(""), "base off and on")
	require.NotContains(t, items(", baseboard: hired"), "base off and on")
}

// What stands beside the only work of a place is left out there, as in an option; without
// such work there is nothing to leave out.
func TestWithoutBesideWork(t *testing.T) {
	for text, gone := range map[string]string{
		"rooms: {den: {size: 10' x 12', doors: 1, work: {resilient plank floor: hired}, without: [base off and on]}}": "base off and on",
		"outside: {roof: [{size: 38' x 26'}], work: {shingle roof gable: hired}, without: [drip edge at eaves]}":      "drip edge at eaves",
		"whole house: {work: {water heater gas: hired}, without: [water heater drain pan and expansion]}":             "water heater drain pan and expansion",
	} {
		d := readDeal(t, walked+text+"\n")
		for _, w := range d.Work {
			require.NotEqual(t, gone, w.Item.Name)
		}
		with := readDeal(t, walked+replaced(t, text, ", without: ["+gone+"]", "")+"\n")
		require.Greater(t, len(with.Work), len(d.Work), gone)
	}
	_, found := deal.Read("house.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', options: {a: {work: {paint walls: hired}}}, without: [mask room]}}\n"))
	require.Contains(t, fmt.Sprint(found), "no work here would bring \"mask room\" along")
}

// A certificate of one's own comes with own work that disturbs old paint, once for the
// house, and not where trades do all of it.
func TestCertificateComesWithOwnHands(t *testing.T) {
	count := func(den, attic string) (n int) {
		d := readDeal(t, walked+"house: {year built: 1955}\nrooms: {den: {size: 10' x 12', work: {paint walls: "+den+"}}, attic: {size: 10' x 12', work: {paint walls: "+attic+"}}}\n")
		for m, w := range d.Work {
			if w.Item.Name == "lead-safe firm certificate" {
				require.NotEmpty(t, m.In("caller"))
				n++
			}
		}
		return n
	}
	require.Equal(t, 0, count("hired", "hired"))
	require.Equal(t, 1, count("hired", "own hands"))
	require.Equal(t, 1, count("own hands", "own hands"))
}

// By hand: carpet off 120 sq ft in a house of 1960, of whose subfloors 5% are mended.
func TestSubfloorByAge(t *testing.T) {
	d := readDeal(t, walked+"house: {year built: 1960}\nrooms: {den: {size: 10' x 12', layers: [carpet], work: {resilient plank floor: hired}}}\n")
	for _, m := range d.Root.In("inside")[0].In("option")[0].In("item") {
		if d.Work[m].Item.Name == "subfloor repair" {
			require.Equal(t, "0.05", m.Given.Of("part").Number.String())
			return
		}
	}
	require.Fail(t, "no subfloor repair came along")
}

// The names of what lies on floors lead to work of the price book.
func TestLayersLeadToWork(t *testing.T) {
	for _, layer := range []string{"carpet", "vinyl", "tile", "wood", "laminate"} {
		d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', layers: ["+layer+"], work: {resilient plank floor: hired}}}\n")
		items := d.Root.In("inside")[0].In("option")[0].In("item")
		require.True(t, slices.ContainsFunc(items, func(m *model.Member) bool {
			return d.Work[m].By == "resilient plank floor" && d.Work[m].Item.Trade == "demolition"
		}), layer)
	}
	require.NotNil(t, pricebook.Starter().Item("strip carpet"))
}

// worth is the value of a line of the deal.
func worth(t *testing.T, d *deal.Deal, line string) string {
	t.Helper()
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	return v.Of(d.Model.Find(d.Root, line)).String()
}

func replaced(t *testing.T, text, old, new string) string {
	t.Helper()
	require.Contains(t, text, old)
	return strings.Replace(text, old, new, 1)
}

// Work on the floor that is there takes up the carpet over it, once, unless it is said
// to be left; without carpet there is nothing to take up.
func TestWorkOnTheFloorTakesUpTheCarpetOverIt(t *testing.T) {
	for _, c := range []struct {
		room string
		want int
	}{
		{"layers: [carpet], work: {refinish wood floor: hired}", 1},
		{"layers: [carpet], work: {refinish wood floor: $900}", 1},
		{"layers: [carpet], work: {refinish wood floor: hired, stain wood floor: hired}", 1},
		{"layers: [carpet], work: {strip carpet: own hands, refinish wood floor: hired}", 1},
		{"layers: [carpet], options: {fresh: {work: {refinish wood floor: hired}, without: [strip carpet]}}", 0},
		{"layers: [carpet], work: {screen and recoat wood floor: hired}", 1},
		{"layers: [carpet], work: {paint concrete floor: hired}", 1},
		{"layers: [carpet], work: {nail-down oak floor: hired}", 1},
		{"layers: [carpet], work: {carpet cleaning: hired}", 0},
		{"layers: [vinyl], work: {refinish wood floor: hired}", 0},
		{"doors: 1, work: {refinish wood floor: hired}", 0},
	} {
		d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', "+c.room+"}}\n")
		n := 0
		for _, w := range d.Work {
			if w.Item.Name == "strip carpet" {
				n++
			}
		}
		require.Equal(t, c.want, n, c.room)
	}
}

// To leave out what would take up a layer for a new floor is of use, and of none where no
// floor is laid or no such layer lies there.
func TestTakingUpALayerMayBeLeftOut(t *testing.T) {
	for room, doubted := range map[string]bool{
		"layers: [tile], work: {resilient plank floor: own hands}, without: [strip floor tile]":                       false,
		"layers: [vinyl], options: {fresh: {work: {resilient plank floor: own hands}, without: [strip sheet vinyl]}}": false,
		"layers: [carpet], work: {resilient plank floor: own hands}, without: [strip carpet]":                         false,
		"layers: [carpet], work: {resilient plank floor: own hands}, without: [strip floor tile]":                     true,
		"layers: [tile], work: {paint walls: own hands}, without: [strip floor tile]":                                 true,
	} {
		d, found := deal.Read("a.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', "+room+"}}\n"))
		require.False(t, found.HasErrors(), "%v", found)
		require.Equal(t, doubted, slices.Contains(codesIn(found), "without-unneeded"), room)
		for _, w := range d.Work {
			require.False(t, !doubted && strings.HasPrefix(w.Item.Name, "strip "), room)
		}
	}
}

// Where one new floor covers a part of the room, so much of what lies there is taken up;
// where several share the room, all of it. 120 sq ft by hand.
func TestANewFloorTakesUpAsMuchAsItCovers(t *testing.T) {
	for work, want := range map[string]string{
		"tile floor: hired":                        "120",
		"tile floor: {by: hired, part: 50%}":       "60",
		"tile floor: {by: hired, count: 45 sq ft}": "45",
		"tile floor: {by: hired, part: 50%}, resilient plank floor: {by: hired, part: 50%}": "120",
	} {
		d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', layers: [carpet], work: {"+work+"}}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		seen := 0
		for m, w := range d.Work {
			if w.Item.Name == "strip carpet" {
				seen++
				require.Equal(t, want, v.Of(d.Model.Find(m, "quantity")).String(), work)
			}
		}
		require.Equal(t, 1, seen, work)
	}
}

// Options of one name are one option whatever the case, as a scope takes them.
func TestOptionsOfOneNameAreOne(t *testing.T) {
	d := readDeal(t, strings.Replace(twoOptions, "{fresh: {work: {paint walls: hired}}}", "{Fresh: {work: {paint walls: hired}}, GUT: {work: {paint ceiling: hired}}}", 1), deal.Set{Path: "scope", Value: "gut"})
	require.Equal(t, []string{"fresh", "gut"}, d.Options)
	for i, room := range d.Root.In("room")[:2] {
		require.Equal(t, []string{[]string{"gut", "GUT"}[i]}, labels(room.In("option")))
	}
}

// The least and the most that go by the year built follow what the file says is likely,
// where that is beyond them.
func TestAmountsByAgeFollowWhatIsLikely(t *testing.T) {
	for likely, want := range map[string][]string{
		"$20k": {"0", "20000", "20000"}, // by the year built $0 to $14,000
		"$2k":  {"0", "2000", "14000"},
	} {
		d := readDeal(t, walked+"house: {year built: 1930}\nseen: {sewer line: {likely: "+likely+"}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		var got []string
		for _, line := range []string{"if_bad_least", "if_bad", "if_bad_most"} {
			got = append(got, v.Of(d.Model.Find(d.Root.In("check")[0], line)).String())
		}
		require.Equal(t, want, got)
	}
}

// Rooms whose new floor takes nothing up are noted, unless they say what lies there, be it
// nothing, or name the work that takes it up.
func TestNewFloorsThatTakeNothingUpAreNoted(t *testing.T) {
	for room, noted := range map[string]bool{
		"work: {resilient plank floor: hired}":                                   true,
		"layers: [carpet], work: {resilient plank floor: hired}":                 false,
		"layers: [], work: {resilient plank floor: hired}":                       false,
		"work: {resilient plank floor: hired, strip carpet: own hands}":          false,
		"work: {paint walls: hired}":                                             false,
		"options: {a: {work: {paint walls: hired}}, b: {work: {carpet: hired}}}": false,
	} {
		d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', doors: 1, "+room+"}}\n")
		require.Equal(t, noted, len(d.Unlayered) == 1, room)
	}
}

// Rooms that the house has beyond those that the file lists are noted by kind, where it lists
// any of the kind.
func TestRoomsThatAreNotListedAreNoted(t *testing.T) {
	const rooms = "rooms: {bedroom 1: {size: 10' x 12', work: {paint walls: hired}}, hall bath: {size: 8' x 5'}}\n"
	for house, want := range map[string][]string{
		"{bedrooms: 3, baths: 1.5}": {"2 bedrooms", "1 bath"}, "{bedrooms: 1, baths: 1}": nil, "{bedrooms: 2}": {"1 bedroom"}, "{year built: 1950}": nil,
	} {
		require.Equal(t, want, readDeal(t, walked+"house: "+house+"\n"+rooms).Unlisted, house)
	}
	require.Empty(t, readDeal(t, walked+"house: {bedrooms: 3}\nrooms: {kitchen: {size: 10' x 12', work: {paint walls: hired}}}\n").Unlisted)
}

// A scope by rooms is doubted where it leaves out a room with a choice, and not one whose
// only option is taken or for which there is one for all.
func TestAScopeThatLeavesOutARoomWithAChoiceIsDoubted(t *testing.T) {
	for scope, doubted := range map[string]bool{
		"scope: {office: fresh}": true, "scope: {den: fresh}": false, "scope: fresh": false, "scope: {all rooms: fresh, office: as it is}": false, "": false,
	} {
		_, found := deal.Read("a.yaml", []byte(strings.Replace(twoOptions, "rooms:", scope+"\nrooms:", 1)))
		require.Equal(t, doubted, slices.Contains(codesIn(found), "rooms-unnamed"), scope)
	}
	_, found := deal.Read("a.yaml", []byte(twoOptions), deal.Set{Path: "scope.office", Value: "fresh"})
	require.NotContains(t, codesIn(found), "rooms-unnamed") // the file names none
	whole := []byte(strings.Replace(twoOptions, "rooms:", "scope: fresh\nrooms:", 1))
	_, found = deal.Read("a.yaml", whole, deal.Set{Path: "scope.office", Value: "fresh"})
	require.NotContains(t, codesIn(found), "rooms-unnamed")
	_, found = deal.Read("a.yaml", whole, deal.Set{Path: "scope", Value: "{office: fresh}"})
	require.Contains(t, codesIn(found), "rooms-unnamed")
}
