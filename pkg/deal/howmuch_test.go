package deal_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/pricebook"
)

// quantities are how much there is of each item in a deal, by name, and what the rooms cost, by "$".
func quantities(t require.TestingT, text string) map[string]decimal.Decimal {
	d, found := deal.Read("house.yaml", []byte(text))
	require.NotNil(t, d, found)
	return quantitiesOf(t, d)
}

func quantitiesOf(t require.TestingT, d *deal.Deal) map[string]decimal.Decimal {
	v, err := exact.Evaluate(d.Model)
	require.NoError(t, err)
	out := map[string]decimal.Decimal{}
	for m, w := range d.Work {
		out[w.Item.Name] = out[w.Item.Name].Add(v.Of(d.Model.Find(m, "quantity")))
	}
	out["$"] = v.Of(d.Model.Find(d.Root, "rooms_cost"))
	return out
}

const (
	carpeted = walked + "rooms: {den: {size: 10' x 12', doors: 1, windows: 1, layers: [carpet], dark walls: yes, work: {%s}}}\n"
	floated  = walked + "rooms: {den: {size: 10' x 12', layers: [laminate], work: {%s}}}\n"
	walled   = walked + "rooms: {den: {size: 10' x 12', layers: [carpet], work: {%s}}}\n"
	roofed   = walked + "outside: {roof: [{size: 40' x 25'}], around: 130', windows: 6, deck: 12' x 10', work: {%s}}\n"
)

// amountOf is how much of an item two texts of work bring where they are done.
type amountOf struct{ place, one, other, item, want string }

func inEitherOrder(t *testing.T, cases []amountOf) {
	for _, c := range cases {
		for _, work := range []string{c.one + ", " + c.other, c.other + ", " + c.one} {
			require.Equal(t, c.want, quantities(t, fmt.Sprintf(c.place, work))[c.item].String(), "%s of %s", c.item, work)
		}
	}
}

// What several pieces of work bring is done to their parts together, at most to all there
// is, whichever the file names first. 120 sq ft of floor, 1,000 of roof, by hand.
func TestPartsOfWhatBringsACompanionAddUp(t *testing.T) {
	inEitherOrder(t, []amountOf{
		{roofed, "shingle roof gable: {part: 80%}", "flat roof: {part: 20%}", "roof tear-off", "1000"},
		{roofed, "shingle roof gable: {part: 50%}", "flat roof: {count: 200 sq ft}", "roof tear-off", "700"},
		{roofed, "shingle roof gable: {count: 300 sq ft}", "flat roof: {count: 200 sq ft}", "roof tear-off", "500"},
		{roofed, "shingle roof gable: {part: 80%}", "flat roof: {part: 40%}", "roof tear-off", "1000"},
		{roofed, "shingle roof gable: {part: 80%}", "flat roof: hired", "roof tear-off", "1000"},
		{roofed, "shingle roof gable: {count: 1200 sq ft}", "flat roof: {part: 10%}", "roof tear-off", "1200"},
		{carpeted, "tile floor: {part: 60%}", "large tile floor: {part: 30%}", "floor backer board", "108"},
		{carpeted, "tile floor: {part: 60%}", "large tile floor: {part: 30%}", "strip carpet", "108"},
		{carpeted, "tile floor: {part: 60%}", "large tile floor: {count: 30 sq ft}", "strip carpet", "102"},
		{carpeted, "circuit: {count: 3}", "hang wall board: hired", "firestopping", "3"},                  // by another measure once, by the circuits thrice
		{carpeted, "paint walls: {part: 40%}", "paint bath walls: {part: 25%}", "prepare walls", "228.8"}, // 65% of 352
	})
}

// What a room needs once comes once, however many pieces of work are counted in it; what is done
// to each piece follows the count. The file may count it itself.
func TestWhatARoomNeedsOnceFollowsNoCount(t *testing.T) {
	inEitherOrder(t, []amountOf{
		{walled, "drywall patch: {count: 5}", "paint walls: hired", "lead-safe supplies", "1"},
		{walled, "drywall patch: {count: 5}", "paint walls: hired", "spot prime repairs", "5"},
		{walled, "joist sister: {count: 6}", "drywall patch: {part: 50%}", "lead-safe supplies", "1"},
		{walled, "drywall patch: {part: 50%}", "final cleaning: {count: 100 sq ft}", "lead-safe supplies", "1"}, // a whole one for a part, too
		{walled, "circuit: {count: 3}", "carpet: hired", "dust barrier", "1"},
		{walled, "circuit: {count: 3}", "carpet: hired", "wall patching after trades", "3"},
		{walled, "joist sister: {count: 6}", "lead-safe supplies: {count: 2}", "lead-safe supplies", "2"},
		{walled, "termite damage repair: {count: 3}", "carpet: hired", "termite treatment", "1"},
		{walled, "gas line: {count: 2}", "furnace: hired", "gas pressure test", "1"},
		{walled, "washer: {count: 2}", "carpet: hired", "old appliance hauled away", "2"},
	})
}

// What each of several pieces of work takes for itself adds up, with what it brings in its turn; of
// what serves all of them the largest count counts. Worked by hand.
func TestWhatEachTakesForItselfAddsUp(t *testing.T) {
	inEitherOrder(t, []amountOf{
		{walled, "mini-split: {count: 2}", "baseboard heater: {count: 3}", "circuit", "5"},
		{walled, "mini-split: {count: 2}", "baseboard heater: {count: 3}", "firestopping", "5"},
		{walled, "mini-split: {count: 2}", "baseboard heater: {count: 3}", "dust barrier", "1"},
		{walled, "mini-split: hired", "carpet: hired", "circuit", "1"},
		{walled, "range electric: hired", "fridge: hired", "old appliance hauled away", "2"},
		{walled, "washer: {count: 2}", "dryer electric: hired", "old appliance hauled away", "3"},
		{walled, "furnace: {count: 2}", "air conditioner: hired", "thermostat", "2"},
	})
}

// What one piece of work leads to by several ways counts once, the most of them: by an own book where a
// spa brings a circuit, and a pump that brings one too.
func TestWhatOneLeadsToByTwoWaysCountsOnce(t *testing.T) {
	const items = `
  spa: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [circuit, pump], source: x}
  soaker: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [pump], source: x}
  pump: {trade: z, measure: one, for each: yes, hours: 1 each, hired: $10 each, materials: none, brings: [circuit], source: x}
`
	const shared = `
  za: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zp], source: x}
  zb: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zp], source: x}
  zp: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [circuit], source: x}
  ze: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [circuit, zq], source: x}
  zq: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [circuit, zw], source: x}
  zw: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: none, source: x}
  zt: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zf, zw], source: x}
  zu: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zf, zw], source: x}
  zf: {trade: z, measure: one, for each: yes, hours: 1 each, hired: $10 each, materials: none, brings: [zw], source: x}
`
	for work, want := range map[string]map[string]string{
		"za: hired, zb: hired":            {"circuit": "1"}, // which share what takes it
		"ze: hired":                       {"circuit": "1"},
		"za: hired, zb: hired, ze: hired": {"circuit": "2"},
		"zt: hired, zu: hired":            {"zf": "2", "zw": "2"}, // the largest count of those that bring it
	} {
		of := quantitiesOf(t, ownBook(t, deal.Options{}, shared, "rooms: {den: {size: 10' x 12', work: {"+work+"}}}\n"))
		for item, much := range want {
			require.Equal(t, much, of[item].String(), "%s of %s", item, work)
		}
	}
	for work, want := range map[string]string{
		"spa: hired": "1", "soaker: hired": "1", "spa: hired, soaker: hired": "2",
		"spa: {by: hired, count: 3}, soaker: hired": "4", "spa: hired, pump: hired": "2",
	} {
		d := ownBook(t, deal.Options{}, items, "rooms: {den: {size: 10' x 12', work: {"+work+"}}}\n")
		require.Equal(t, want, quantitiesOf(t, d)["circuit"].String(), work)
	}
}

// Where a part of a room's wiring is done anew, of what each would take for itself so much is left.
func TestWhatEachTakesIsLessByWhatIsDoneInItsPlace(t *testing.T) {
	const old = "purchase: {price: $148k}\nvalue: {after-repair value: $214k}\ntime: {marketing: 1 month}\nhouse: {year built: 1985}\n"
	for part, want := range map[string]string{"25%": "1.5", "50%": "1", "100%": ""} {
		text := old + "rooms: {den: {kind: kitchen, size: 10' x 12', work: {dishwasher fitted: hired, microwave over range: hired, electrical rough room: {by: hired, part: " + part + "}}}}\n"
		got, comes := quantities(t, text)["circuit"]
		require.Equal(t, want != "", comes, part)
		if comes {
			require.Equal(t, want, got.String(), part)
		}
		twice := quantities(t, strings.Replace(text, "hired, microwave over range: hired", "{by: hired, count: 2}", 1))["circuit"]
		require.True(t, got.Equal(twice), "%s of wiring: %s", part, twice)
	}
}

// A circuit that is named stands for those that other work takes, and is doubted without a count.
func TestAnItemNamedOnceBesideSeveralThatTakeOneEach(t *testing.T) {
	for circuit, want := range map[string]int{"hired": 1, "{by: hired, count: 2}": 0, "{by: hired, count: 1}": 0, "{quote: $900}": 1, "{quote: $900, count: 2}": 0} {
		require.Len(t, toldOf(t, "named-once", "  den: {size: 10' x 12', work: {mini-split: hired, baseboard heater: hired, circuit: "+circuit+"}}\n", ""), want, circuit)
	}
	require.Empty(t, toldOf(t, "named-once", "  den: {size: 10' x 12', work: {mini-split: hired, circuit: hired}}\n", ""))
}

// A part that is named beside other work that brings as much along, by the same hands, may be the rest.
func TestAPartThatIsNamedMayBeTheRest(t *testing.T) {
	for sanding, want := range map[string]int{
		"{by: hired, part: 50%}": 1, "{by: hired, part: 25%}": 1, "{by: hired, part: 60%}": 0, "hired": 0,
		"{by: own hands, part: 50%}": 0, "{by: hired, part: 50%, hours: 9}": 0,
	} {
		require.Len(t, toldOf(t, "named-part", "  den: {size: 10' x 12', work: {nail-down oak floor: {by: hired, part: 50%}, refinish wood floor: "+sanding+"}}\n", ""), want, sanding)
	}
}

// What comes once for a room is the room itself by its measure.
func TestWhatComesOnceForARoomIsMeasuredByOne(t *testing.T) {
	for _, name := range pricebook.Starter().Items() {
		if it := pricebook.Starter().Item(name); it.Once || it.ForEach {
			require.Equal(t, "one", it.Measure, name)
			require.False(t, it.Once && it.ForEach, name)
		}
	}
}

// An own book says once of what comes along, and takes it from what the starter book has so.
func TestAnOwnBookSaysWhatARoomNeedsOnce(t *testing.T) {
	const items = `
  za: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zx, zy, lead-safe supplies], source: x}
  zx: {trade: y, measure: one, once: yes, hours: 1 each, hired: $10 each, materials: none, brings: none, source: x}
  zy: {trade: y, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: none, source: x}
`
	for more, want := range map[string]string{"": "1", "  lead-safe supplies: {hired: $150 each}\n": "1", "  lead-safe supplies: {once: no}\n": "4"} {
		d := ownBook(t, deal.Options{}, items+more, "rooms: {den: {size: 10' x 12', work: {za: {by: hired, count: 4}}}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		got := map[string]string{}
		for m, w := range d.Work {
			got[w.Item.Name] = v.Of(d.Model.Find(m, "quantity")).String()
		}
		require.Equal(t, map[string]string{"za": "4", "zx": "1", "zy": "4", "lead-safe supplies": want}, got, more)
	}
}

// A companion of which one piece of work brings a part and another, by another measure, all is
// done whole, and what it brings with it: 44 ft of base, 120 sq ft of floor, by hand.
func TestWhatAnotherMeasureBringsWholeIsWholeFurtherOn(t *testing.T) {
	inEitherOrder(t, []amountOf{
		{walled, "wainscot: {part: 25%}", "hang wall board: hired", "baseboard", "44"},
		{walled, "wainscot: {part: 25%}", "hang wall board: hired", "paint trim", "44"},
		{walled, "wainscot: {part: 25%}", "hang wall board: hired", "caulk base", "44"},
		{walled, "wainscot: {part: 25%}", "baseboard: {part: 50%}", "caulk base", "22"}, // one on the other, as far as the trim is painted
		{walled, "patch wood floor: {count: 1}", "nail-down oak floor: {part: 40%}", "refinish wood floor", "120"},
		{walled, "patch wood floor: {count: 1}", "nail-down oak floor: {part: 40%}", "strip carpet", "120"},
	})
}

// Two pieces of work lie side by side where they make one thing, be it by what they bring:
// base of tile, and base that goes with a wainscot; board that is finished, and a skim coat;
// vinyl, and tile with board under it. 44 ft of base, 352 sq ft of walls, 120 of floor and
// ceiling, by hand.
func TestWhatMakesOneThingLiesSideBySide(t *testing.T) {
	inEitherOrder(t, []amountOf{
		{walled, "wainscot: {part: 40%}", "tile base: {part: 60%}", "strip base", "44"},
		{walled, "wainscot: {part: 40%}", "tile wainscot: {part: 60%}", "strip base", "44"},
		{walled, "hang wall board: {part: 40%}", "skim walls: {part: 60%}", "prime new wall board", "352"},
		{walled, "hang ceiling board: {part: 40%}", "skim ceiling: {part: 60%}", "prime new ceiling board", "120"},
		{walled, "hang wall board: {part: 40%}, skim walls: {part: 60%}", "paint walls: hired", "prepare walls", "0"},
		{walled, "sheet vinyl floor: {part: 40%}", "tile floor: {part: 60%}", "screw down subfloor", "120"},
		{walled, "resilient plank floor: {part: 60%}", "refinish wood floor: {part: 40%}", "strip carpet", "120"},
		{walled, "resilient plank floor: {part: 60%}", "refinish wood floor: {count: 30 sq ft}", "strip carpet", "102"},
		{walled, "carpet: {part: 50%}", "screen and recoat wood floor: {part: 30%}", "strip carpet", "96"},
		{walled, "resilient plank floor: {part: 60%}", "refinish wood floor: {part: 60%}", "strip carpet", "120"},
		{walled, "nail-down oak floor: {part: 40%}", "refinish wood floor: {part: 60%}", "strip carpet", "72"}, // the oak is refinished too
		{walled, "nail-down oak floor: {part: 40%}, resilient plank floor: {part: 20%}", "refinish wood floor: {part: 60%}", "strip carpet", "96"},
		{walled, "subfloor replacement: {part: 40%}", "floor backer board: {part: 60%}", "strip carpet", "72"}, // the new subfloor, and the old under the rest of the board
	})
}

// A companion of the same surface, with more or less of its openings, follows the part or the
// count of what brings it: 352 sq ft of walls and less 12 of a window, by hand.
func TestACompanionOfTheSameSurfaceFollows(t *testing.T) {
	window := strings.Replace(walled, "layers", "windows: 3' x 4', layers", 1)
	inEitherOrder(t, []amountOf{
		{window, "hang wall board: hired", "casing: hired", "outside wall insulation", "340"},
		{window, "hang wall board: {part: 10%}", "casing: hired", "outside wall insulation", "34"},
		{window, "hang wall board: {count: 8 sq ft}", "casing: hired", "outside wall insulation", "8"},
		{window, "hang wall board: {part: 50%}", "hang bath wall board: {part: 30%}", "outside wall insulation", "272"},
		{window, "hang wall board: {part: 50%}", "strip wall board: {part: 50%}", "outside wall insulation", "170"}, // what is taken out lies under what is new
		{window, "hang wall board: {part: 50%}", "wall batts: {part: 60%}", "outside wall insulation", "0"},         // the batts lie under the board
		{window, "hang wall board: hired", "wall batts: {part: 60%}", "outside wall insulation", "136"},
		{window, "hang wallpaper: {part: 25%}", "casing: hired", "prepare walls", "88"},
	})
}

// What a patch brings along for all of the room is doubted, by the work that the file names.
func TestWhatAPatchBringsWholeIsDoubted(t *testing.T) {
	for work, says := range map[string]string{
		"hang wall board: hired":                                    "",
		"hang wall board: {part: 30%}":                              "",
		"hang wall board: {count: 8 sq ft}":                         `"hang wall board" is done to a small part of den, and brings along for all of it: baseboard`,
		"hang wall board: {part: 3%}":                               `"hang wall board" is done to a small part of den, and brings along for all of it: baseboard`,
		"hang wall board: {part: 3%}, skim walls: {part: 50%}":      `"hang wall board" is done to a small part of den, and brings along for all of it: baseboard`,
		"hang wall board: {part: 3%}, tile base: hired":             "",
		"hang wall board: {part: 3%}, baseboard: {count: 4 ft}":     "",
		"resilient plank floor: {part: 20%}, laminate floor: hired": "",
		"resilient plank floor: {part: 20%}":                        `"resilient plank floor" is done to a small part of den, and brings along for all of it: base off and on`,
		"resilient plank floor: {part: 20%}, carpet: {part: 80%}":   `"resilient plank floor" is done to a small part of den, and brings along for all of it: base off and on`,
		"baseboard: {part: 10%}":                                    "",
		"strip wallpaper: {part: 10%}, strip ceiling board: hired":  "",
		"strip wallpaper: {part: 10%}":                              `"strip wallpaper" is done to a small part of den, and brings along for all of it: floor protection`,
	} {
		_, found := deal.Read("house.yaml", []byte(fmt.Sprintf(walled, work)))
		var got []string
		for _, d := range found {
			if d.Code == "part-brings-whole" {
				got = append(got, d.Message)
			}
		}
		require.Equal(t, says, strings.Join(got, "; "), work)
	}
}

// Siding on a small part takes few windows, and one window of several is a patch of its trim.
func TestWhatFewPiecesOrAPatchOfSidingBringWholeIsDoubted(t *testing.T) {
	const flashed = `"vinyl siding" is done to a small part of outside, and brings along for all of it: window and door caulk, window and door flashing`
	outside := func(work, left string) string {
		return "outside: {around: 140 ft, siding: 1220 sq ft, windows: 12, work: {" + work + "}, without: [" + left + "]}\n"
	}
	room := func(windows, work, left string) string {
		return "rooms: {den: {size: 18' x 13', doors: 3, windows: " + windows + " of 3' x 4', work: {" + work + "}, without: [" + left + "]}}\n"
	}
	trim := func(done string) string {
		return "is done to " + done + " of den, and brings along for all of it: paint casing, paint trim"
	}
	for keys, says := range map[string]string{
		outside("vinyl siding: {part: 10%}", ""):                                                          flashed,
		outside("vinyl siding: {count: 122 sq ft}", ""):                                                   flashed,
		outside("vinyl siding: {part: 10%}, window and door caulk: {count: 1}", ""):                       `brings along for all of it: window and door flashing`,
		outside("vinyl siding: {part: 10%}", "window and door caulk, house wrap"):                         "",
		outside("vinyl siding: {part: 30%}", ""):                                                          "",
		outside("vinyl siding: {part: 10%}, fascia: {count: 90 ft}", ""):                                  `brings along for all of it: window and door flashing`,
		strings.Replace(outside("vinyl siding: {part: 10%}", ""), "windows: 12", "windows: 1", 1):         "",
		room("4", "new window: {count: 1}", ""):                                                           `"new window" ` + trim("1 of 4 windows"),
		room("6", "new window: {count: 2}", ""):                                                           `"new window" ` + trim("2 of 6 windows"),
		room("5", "new window: {count: 2}", ""):                                                           "",
		room("4", "new window: {count: 2}", ""):                                                           "",
		room("1", "new window: {count: 1}", ""):                                                           "",
		room("4", "new window: hired", ""):                                                                "",
		room("4", "new window: {count: 1}, paint casing: {count: 18 ft}, paint trim: {count: 18 ft}", ""): "",
		room("4", "new window: {count: 1}, paint casing: hired, paint trim: own hands", ""):               "",
		room("4", "new window: {count: 1}", "paint casing, paint trim"):                                   "",
		room("4", "new window: {count: 1}, prehung inside door: {count: 2}", ""):                          "",
		room("4", "prehung inside door: {count: 1}", ""):                                                  `"prehung inside door" ` + trim("1 of 3 doors"),
	} {
		_, found := deal.Read("a.yaml", []byte(walked+"house: {year built: 1992}\n"+strings.ReplaceAll(strings.ReplaceAll(keys, "{part", "{by: hired, part"), "{count", "{by: hired, count")))
		require.False(t, found.HasErrors(), "%s: %v", keys, found)
		var got []string
		for _, d := range found {
			if d.Code == "part-brings-whole" {
				got = append(got, d.Message)
			}
		}
		if says == "" {
			require.Empty(t, got, keys)
		} else {
			require.Len(t, got, 1, keys)
			require.Contains(t, got[0], says, keys)
		}
	}
}

// What lies one on the other is no more of the room than the larger of the two.
func TestALayerUnderAnotherAddsNoFloor(t *testing.T) {
	of := quantities(t, fmt.Sprintf(carpeted, "tile floor: {part: 50%}, uncoupling membrane under tile: {part: 25%}"))
	require.Equal(t, "60", of["strip carpet"].String())
	require.Equal(t, "60", of["screw down subfloor"].String()) // under the membrane and under the backer board
}

// Work that is done to a part in place of a companion leaves it the rest.
func TestACompanionIsDoneToWhatOtherWorkLeaves(t *testing.T) {
	wide := strings.Replace(carpeted, "doors: 1", "doors: 3' x 7'", 1)
	inEitherOrder(t, []amountOf{
		{carpeted, "tile floor: hired", "uncoupling membrane under tile: {part: 25%}", "floor backer board", "90"},
		{carpeted, "tile floor: hired", "uncoupling membrane under tile: {count: 45 sq ft}", "floor backer board", "75"},
		{carpeted, "tile floor: {part: 50%}", "uncoupling membrane under tile: {part: 25%}", "floor backer board", "30"},
		{carpeted, "tile floor: {part: 50%}", "uncoupling membrane under tile: {part: 50%}", "floor backer board", "0"},
		{carpeted, "tile floor: hired", "uncoupling membrane under tile: {part: 100%}", "floor backer board", "0"},
		{carpeted, "tile floor: {part: 50%}, large tile floor: {part: 50%}", "uncoupling membrane under tile: {part: 60%}", "floor backer board", "48"},
		{carpeted, "tile floor: hired", "uncoupling membrane under tile: {part: 25%}, crack isolation on slab: {part: 50%}", "floor backer board", "30"},
		{carpeted, "paint walls: hired", "hang wall board: {part: 20%}", "prepare walls", "281.6"}, // of 352
		{wide, "laminate floor: hired", "baseboard: {part: 50%}", "base off and on", "20.5"},       // of 41', once although it takes the old base off
		{wide, "laminate floor: hired", "tall baseboard: {part: 30%}, baseboard: {part: 20%}", "base off and on", "20.5"},
		{carpeted, "strip carpet: hired", "refinish wood floor: {part: 50%}", "subfloor repair", "4.8"},  // 8% of 60 by the age of the house, once although it is coated too
		{carpeted, "nail-down oak floor: hired", "refinish wood floor: hired", "subfloor repair", "9.6"}, // named or not
		{carpeted, "nail-down oak floor: hired", "paint walls: hired", "subfloor repair", "9.6"},         // of 120: the oak is sanded, and what is under it is mended
		{carpeted, "nail-down oak floor: hired", "paint walls: hired", "paint base", "0"},                // its shoe moulding has the trim painted
		{carpeted, "nail-down oak floor: {part: 50%}", "prefinished wood floor: {part: 50%}", "subfloor repair", "9.6"},
		{carpeted, "paint walls: hired", "hang wall board: {part: 20%}", "prime dark walls", "281.6"},
		{roofed, "shingle roof gable: hired", "roof deck overlay: {part: 100%}", "roof deck repair", "0"},
		{carpeted, "paint walls: {part: 50%}", "skim walls: {part: 50%}", "prepare walls", "0"},
		{roofed, "outside wall paint: {part: 50%}", "vinyl siding: {part: 50%}", "pressure wash", "549"}, // side by side on 1,098
		{roofed, "outside wall paint: {part: 50%}", "vinyl siding: {part: 70%}", "pressure wash", "329.4"},
		{roofed, "outside wall paint: hired", "fibre cement siding: {part: 60%}", "scrape and fill", "439.2"},
		{roofed, "deck stain: {part: 50%}", "deck boards: {part: 50%}", "pressure wash deck", "0"}, // the new boards are stained
		{roofed, "fibre cement siding: {part: 30%}", "gutters: hired", "pressure wash", "0"},       // as new siding is painted
		{roofed, "fibre cement siding: {part: 30%}", "vinyl siding: {part: 20%}", "scrape and fill", "0"},
		{roofed, "shingle roof gable: {part: 50%}", "roof deck overlay: {part: 50%}", "roof underlayment", "500"}, // of 1,000, once
		{carpeted, "refinish wood floor: {part: 50%}", "paint walls: hired", "subfloor repair", "0"},              // the floor under the carpet stays
		{carpeted, "screen and recoat wood floor: hired", "paint walls: hired", "subfloor repair", "0"},
		{carpeted, "nail-down oak floor: hired", "coat wood floor: hired", "subfloor repair", "9.6"},                 // named or not
		{carpeted, "nail-down oak floor: {part: 75%}", "refinish wood floor: {part: 75%}", "subfloor repair", "7.2"}, // as if it were not named
		{carpeted, "nail-down oak floor: {part: 75%}", "refinish wood floor: hired", "subfloor repair", "7.2"},       // of the new floor, and none under the old quarter
		{floated, "tile floor: {part: 50%}", "refinish wood floor: {part: 49%}", "subfloor repair", "4.8"},           // under the tile, whatever lies beside it
		{floated, "tile floor: {part: 50%}", "refinish wood floor: {part: 50%}", "subfloor repair", "4.8"},           // 8% of 60
		{carpeted, "refinish wood floor: {part: 50%}", "stain wood floor: {part: 50%}", "strip carpet", "60"},        // the stain goes on what is sanded
		{carpeted, "refinish wood floor: {part: 50%}", "stain wood floor: {part: 50%}", "subfloor repair", "0"},      // which stays
		{roofed, "shingle roof gable: {part: 50%}", "roof deck overlay: {part: 50%}", "roof deck repair", "0"},       // under the shingles
		{roofed, "deck stain: {part: 50%}", "composite deck boards: {part: 50%}", "pressure wash deck", "60"},        // beside boards that are not stained
		{strings.Replace(carpeted, "doors: 1", "doors: 3", 1), "prehung inside door: {count: 2}", "varnish doors: {count: 1}", "paint doors", "1"},
	})
}

// Where nobody says how much there is, and work is counted, a count leaves what lies beside it, and
// takes from what lies under it.
func TestACountDoesNotStandForAllThatNobodyKnows(t *testing.T) {
	const unmeasured = walked + "house: {year built: 1960}\nrooms: {den: {size: 12' x 14'}}\noutside: {work: {%s}}\n"
	const doorless = walked + "rooms: {den: {size: 12' x 14', work: {%s}}}\n"
	inEitherOrder(t, []amountOf{
		{unmeasured, "outside wall paint: {count: 800 sq ft}", "vinyl siding: {count: 300 sq ft}", "pressure wash", "800"},
		{unmeasured, "outside wall paint: {count: 800 sq ft}", "fibre cement siding: {count: 300 sq ft}", "pressure wash", "500"},
		{unmeasured, "outside wall paint: {count: 300 sq ft}", "fibre cement siding: {count: 800 sq ft}", "pressure wash", "0"},
		{unmeasured, "deck stain: {count: 200 sq ft}", "deck boards: {count: 50 sq ft}", "pressure wash deck", "150"},
		{unmeasured, "fascia: {count: 100 ft}", "gutters: {count: 40 ft}", "gutters off and on", "100"},
		{unmeasured, "outside wall paint: {count: 400 sq ft}", "vinyl siding: {count: 400 sq ft}", "pressure wash", "400"},
		{unmeasured, "outside wall paint: {count: 250 sq ft}", "vinyl siding: {count: 750 sq ft}", "prime bare wood", "250"},
		{unmeasured, "fascia: {count: 100 ft}", "gutters: {count: 100 ft}", "gutters off and on", "0"},
		{doorless, "prehung inside door: {count: 3}", "varnish doors: {count: 1}", "paint doors", "2"},
	})
}

// What makes way for work that comes along further on brings nothing and says nothing of who
// does what: the trim of a hired door is painted, so base that is put back by own hands is not,
// and the caulk is the painter's.
func TestACompanionMakesWayForWhatComesFurtherOn(t *testing.T) {
	inEitherOrder(t, []amountOf{{carpeted, "prehung inside door: hired", "base off and on: own hands", "paint base", "0"}})
	d := readDeal(t, fmt.Sprintf(carpeted, "prehung inside door: hired, base off and on: own hands"))
	for m, w := range d.Work {
		if w.Item.Name == "caulk base" {
			require.Equal(t, "paint trim", w.By)
			require.Equal(t, "hired", m.Given.Of("who").Choice)
		}
	}
}

// Device plates are electrical work for which no permit or licensed trade is usual; an outlet is not.
func TestAPermitIsUsualByTheItem(t *testing.T) {
	d := readDeal(t, fmt.Sprintf(carpeted, "paint walls: hired"))
	require.Contains(t, d.Trades, "electrical")
	require.NotContains(t, d.Permits, "electrical")
	require.NotContains(t, d.Licences, "electrical")
	d = readDeal(t, fmt.Sprintf(carpeted, "paint walls: hired, circuit: hired"))
	require.Contains(t, d.Permits, "electrical")
	require.Contains(t, d.Licences, "electrical")
}

// Where the two go by measures of which neither is part of the other, nobody knows what is
// left: the companion is done whole, and doubted.
func TestAPartInPlaceOfWorkByAnotherMeasureIsDoubted(t *testing.T) {
	text := fmt.Sprintf(carpeted, "prehung inside door: hired, casing: {part: 50%}")
	require.Equal(t, "1", quantities(t, text)["door casing"].String())
	_, found := deal.Read("house.yaml", []byte(text))
	require.Contains(t, fmt.Sprint(found), `"casing" is done to a part of den, so "door casing" comes along whole`)
	_, found = deal.Read("house.yaml", []byte(strings.Replace(text, "{part: 50%}", "hired", 1)))
	require.NotContains(t, fmt.Sprint(found), "comes along whole")
}

// Of several that bring a companion, the first in the file is named, whether or not it
// makes way for other work.
func TestACompanionIsNamedByTheFirstInTheFile(t *testing.T) {
	for _, work := range []string{"tile floor, resilient plank floor", "resilient plank floor, tile floor"} {
		first, other, _ := strings.Cut(work, ", ")
		d := readDeal(t, fmt.Sprintf(carpeted, first+": {part: 50%}, "+other+": {part: 50%}"))
		for _, w := range d.Work {
			if w.Item.Name == "base off and on" || w.Item.Name == "undercut doors" {
				require.Equal(t, first, w.By, w.Item.Name)
			}
		}
	}
}

// A tub and a shower have walls of their own: 60 sq ft round the tub, 63 round the shower.
func TestATubAndAShowerHaveWallsOfTheirOwn(t *testing.T) {
	bath := walked + "rooms: {bath: {size: 8' x 10', doors: 1, fixed: {FIXED}, work: {WORK}}}\n"
	const tub, shower = `tub: 5' x 2' 6"`, `shower: 3' x 3'`
	for _, c := range []struct{ fixed, work, want string }{
		{tub + ", " + shower, "tub, shower base", "tub surround tile 60, wall backer board 60, tile shower walls 0, shower wall panels 1, strip tub surround panels 60"},
		{tub + ", " + shower, "tub, tile shower walls", "tub surround tile 60, wall backer board 123, tile shower walls 63, shower wall panels 0"},
		{tub + ", " + shower, "tub, tub wall panels, tile shower walls: {part: 50%}", "tub surround tile 0, wall backer board 31.5, tile shower walls 31.5"},
		{tub + ", " + shower, "tub surround tile, tile shower walls: {count: 20 sq ft}", "tub surround tile 60, seal wall grout 80, tile shower walls 20"},
		{tub + ", " + shower, "tub, tile shower walls: {part: 50%}", "tub surround tile 60, tile shower walls 31.5"},
		{tub + ", " + shower, "strip tub surround panels: {part: 40%}, strip wall tile: {part: 40%}", "surround insulation 73.2"}, // 24 and 49.2
		{tub + ", " + shower, "tub, regrout wet walls: {count: 36 sq ft}", "seal wall grout 96"},                                  // the new tile, and beside it the old
		{tub + ", " + shower, "take out tub, tub, strip wall tile: {count: 40 sq ft}, regrout wet walls: {count: 63 sq ft}", "seal wall grout 123"},
		{tub + ", " + shower, "take out tub, strip wall tile: {count: 40 sq ft}", "strip tub surround panels 20, surround insulation 60"},
		{tub + ", " + shower, "tub, strip wall tile: {part: 33%}, regrout wet walls: {part: 50%}", "seal wall grout 121.5"},
		{"toilet: 1", "tub surround tile: {count: 60 sq ft}, tile shower walls: {count: 63 sq ft}", "wall backer board 123, seal wall grout 123"},
		{tub, "tub, tile shower walls", "tub surround tile 0, wall backer board 60, tile shower walls 60"}, // a shower over the tub
		{tub, "tub", "tub surround tile 60, wall backer board 60"},
		{shower, "tile shower walls", "tile shower walls 63, wall backer board 63"},
	} {
		of := quantities(t, strings.NewReplacer("FIXED", c.fixed, "WORK", worksOf(c.work)).Replace(bath))
		for _, x := range strings.Split(c.want, ", ") {
			i := strings.LastIndex(x, " ")
			require.Equal(t, x[i+1:], of[x[:i]].Round(12).String(), "%s of %s with %s", x[:i], c.work, c.fixed)
		}
	}
}

// In whatever order the file names work done to parts, as much is done of everything; and
// what comes along by the floor or the walls is never more than these.
func TestTheOrderOfWorkChangesNothing(t *testing.T) {
	works := []string{"tile floor", "large tile floor", "uncoupling membrane under tile", "resilient plank floor", "self-levelled floor",
		"subfloor replacement", "refinish wood floor", "paint walls", "paint bath walls", "hang wall board", "skim walls", "hang wallpaper",
		"strip wallpaper", "stain-block walls", "baseboard", "paint trim", "strip carpet", "wainscot"}
	rapid.Check(t, func(t *rapid.T) {
		var lines []string
		for _, w := range rapid.SliceOfNDistinct(rapid.SampledFrom(works), 1, 6, rapid.ID).Draw(t, "works") {
			lines = append(lines, w+": {"+rapid.SampledFrom([]string{"by: hired", "by: own hands", "quote: $900"}).Draw(t, "by")+
				rapid.SampledFrom([]string{"", ", part: 25%", ", part: 50%", ", part: 80%"}).Draw(t, "part")+"}")
		}
		first := quantities(t, fmt.Sprintf(carpeted, strings.Join(lines, ", ")))
		other := quantities(t, fmt.Sprintf(carpeted, strings.Join(rapid.Permutation(lines).Draw(t, "order"), ", ")))
		require.Equal(t, fmt.Sprint(first), fmt.Sprint(other))
		for name, much := range first {
			if name != "$" {
				require.True(t, much.LessThanOrEqual(decimal.NewFromInt(352)), "%s: %s", name, much)
				require.False(t, much.IsNegative(), "%s: %s", name, much)
			}
		}
	})
}

// Each layer under a new floor is taken up once, 120 sq ft: work that the file names for it
// stands for one layer, or for as many as it says or counts.
func TestNamingTheStrippingLosesNoLayer(t *testing.T) {
	for work, much := range map[string]string{
		"":                                        "240",
		", strip sheet vinyl: own hands":          "240",
		", strip sheet vinyl: {part: 50%}":        "180",
		", strip sheet vinyl: {count: 60 sq ft}":  "180",
		", strip sheet vinyl: {count: 240 sq ft}": "240",
		", strip sheet vinyl: {count: 125 sq ft}": "245", // one layer, and what a tape slips by
		", strip sheet vinyl: {count: 200 sq ft}": "200",
		", strip sheet vinyl: hired, second layer: {item: strip sheet vinyl, by: own hands}":                "240",
		", strip sheet vinyl: {part: 60%}, rest of it: {item: strip sheet vinyl, by: own hands, part: 40%}": "240",
	} {
		text := strings.Replace(fmt.Sprintf(walled, "resilient plank floor: $1,500"+work), "[carpet]", "[vinyl, vinyl]", 1)
		require.Equal(t, much, quantities(t, text)["strip sheet vinyl"].String(), work)
	}
}

// A door between two rooms is bought, hung, painted and cased on both faces once: in the room
// that names it. In the other it is a doorway, which takes as much wall, base and casing. By
// hand, for 2'8" x 6'8": casing 2 x 6'8" + 2'8" = 16 ft, base 44 ft less 2'8" = 41 1/3 ft.
func TestADoorBetweenTwoRoomsIsBoughtOnce(t *testing.T) {
	const two = walked + "rooms: {hall: {size: 10' x 12', %s: 1, work: {%s}}, den: {size: 10' x 12', doors: 1, work: {%s}}}\n"
	for _, hang := range []string{"prehung inside door", "solid inside door", "slab door"} {
		hung := quantities(t, fmt.Sprintf(two, "doorways", "resilient plank floor: hired", hang+": hired, resilient plank floor: hired"))
		for _, each := range []string{hang, "door latches", "door stops", "paint doors", "plank transition", "undercut doors"} {
			require.Equal(t, "1", hung[each].String(), "%s with %s", each, hang)
		}
	}
	trimmed := quantities(t, fmt.Sprintf(two, "doorways", "baseboard: hired, casing: hired, paint walls: hired", "baseboard: hired, casing: hired, paint walls: hired"))
	named := quantities(t, fmt.Sprintf(two, "doors", "baseboard: hired, casing: hired, paint walls: hired", "baseboard: hired, casing: hired, paint walls: hired"))
	require.Equal(t, "32", trimmed["casing"].Round(6).String())
	require.Equal(t, "82.666667", trimmed["baseboard"].Round(6).String())
	for _, same := range []string{"baseboard", "casing", "paint walls", "$"} {
		require.Equal(t, named[same].String(), trimmed[same].String(), same)
	}
}

// Beside a base of tile, nothing but the casing is painted, by its own run: 2'8" x 6'8" and
// 3' x 5' are 16 and 16 ft, by hand from docs/measuring.md: two legs and a head, and a fourth
// side for the window: 2 x 6'8" + 2'8" = 16 ft, 2 x (3' + 5') = 16 ft.
func TestCasingBesideATileBaseIsPaintedByItsOwnRun(t *testing.T) {
	const den = walked + "rooms: {den: {size: 10' x 12', doors: 2'8\" x 6'8\", windows: 3' x 5', work: {%s}}}\n"
	for work, much := range map[string][2]string{ // of base and of casing
		"casing: hired":                                     {"41.333333", "32"},
		"casing: hired, tile base: hired":                   {"0", "32"},
		"casing: hired, tile wainscot: hired":               {"0", "32"},
		"casing: {count: 10 ft}, tile base: hired":          {"0", "10"},
		"casing: {part: 25%}, tile base: hired":             {"0", "8"},
		"casing: hired, tile base: {part: 75%}":             {"10.333333", "32"},
		"window casing: hired, tile base: hired":            {"0", "32"}, // by the window, so of all
		"sash repair: hired, tile base: hired":              {"0", "32"},
		"casing: hired, tile base: hired, baseboard: hired": {"41.333333", "32"},
		"casing: {count: 10 ft}, baseboard: hired":          {"41.333333", "32"},
	} {
		of := quantities(t, fmt.Sprintf(den, work))
		require.Equal(t, much, [2]string{of["paint trim"].Round(6).String(), of["paint casing"].Round(6).String()}, work)
	}
}

// What lies one on the other is not side by side, at a part as little as at the whole: lining
// and wallpaper, board and its texture, plaster and its skim coat, plywood and a floor, what is
// taken out and what is new, and layers of a floor whether they are named or not.
func TestPartsThatLieOneOnTheOtherCountOnce(t *testing.T) {
	const layers = "rooms: {den: {size: 10' x 10', doors: 2' x 5', layers: [carpet, vinyl], work: {%s}}}\n"
	for work, want := range map[string][2]string{
		"hang lining paper: {part: 25%}, hang wallpaper: {part: 25%}":                                   {"prepare walls", "80"},
		"hang wall board: {part: 30%}, match wall texture: {part: 30%}":                                 {"prime new wall board", "96"},
		"fasten loose plaster: {part: 40%}, skim ceiling: {part: 40%}":                                  {"seal ceiling before skim", "40"},
		"thin plywood underlayment: {part: 30%}, prefinished wood floor: {part: 30%}":                   {"screw down subfloor", "30"},
		"wall batts: {part: 40%}, hang wall board: {part: 40%}":                                         {"outside wall insulation", ""},
		"strip textured ceiling: {part: 40%}, hang ceiling board: {part: 40%}":                          {"skim ceiling", "40"},
		"resilient plank floor: {part: 50%}":                                                            {"subfloor repair", "4"},
		"resilient plank floor: {part: 50%}, strip carpet: {part: 50%}":                                 {"subfloor repair", "4"},
		"resilient plank floor: {part: 50%}, strip carpet: {part: 50%}, strip sheet vinyl: {part: 50%}": {"subfloor repair", "4"},
	} {
		of := quantities(t, walked+"house: {year built: 1940}\n"+fmt.Sprintf(layers, work))
		got := ""
		if x, done := of[want[0]]; done && !x.IsZero() {
			got = x.String()
		}
		require.Equal(t, want[1], got, "%s of %s", want[0], work)
	}
}

// A membrane under a part of the tile leaves the rest to the board, however either is said: 60
// of 100 sq ft less 25.
func TestCountsLessParts(t *testing.T) {
	for _, work := range []string{
		"tile floor: {by: hired, part: 60%}, uncoupling membrane under tile: {by: hired, part: 25%}",
		"tile floor: {by: hired, part: 60%}, uncoupling membrane under tile: {by: hired, count: 25 sq ft}",
		"tile floor: {by: hired, count: 60 sq ft}, uncoupling membrane under tile: {by: hired, part: 25%}",
		"tile floor: {by: hired, count: 60 sq ft}, uncoupling membrane under tile: {by: hired, count: 25 sq ft}",
		"tile floor: {by: hired, part: 30%}, large tile floor: {by: hired, count: 55 sq ft}, uncoupling membrane under tile: {by: hired, part: 50%}",
	} {
		of := quantities(t, walked+"house: {year built: 2001}\nrooms: {den: {size: 10' x 10', work: {"+work+"}}}\n")
		require.Equal(t, "35", of["floor backer board"].String(), work)
	}
}

// The subfloor under two layers that are taken up is mended once, however they are counted: 8%
// of 15' x 16' in a house of before 1950, as the price book has it.
func TestASubfloorUnderLayersIsMendedOnce(t *testing.T) {
	for _, strip := range []string{"", ", strip sheet vinyl: hired", ", strip sheet vinyl: {by: hired, count: 480 sq ft}", ", strip sheet vinyl: {by: hired, part: 200%}"} {
		of := quantities(t, walked+"house: {year built: 1940}\nrooms: {den: {size: 15' x 16', layers: [vinyl, vinyl], work: {resilient plank floor: hired"+strip+"}}}\n")
		require.Equal(t, "19.2", of["subfloor repair"].String(), strip)
	}
}
