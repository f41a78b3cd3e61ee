package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// A permit comes once for the house; a room that names it calls for no other, and the house
// does without it where its option says so, inside the option or beside it.
func TestWhatComesOnceForTheHouseIsNotBesideWhatIsNamed(t *testing.T) {
	const kitchen = walked + "rooms: {kitchen: {size: 10' x 12', work: {circuit: hired%s}}%s}\n%s"
	for _, c := range []struct{ with, rooms, house, permits, says string }{
		{"", "", "", "1", ""},
		{", electrical permit: $90", "", "", "1", ""},
		{", electrical permit: $90", ", bath: {size: 8' x 8', work: {circuit: hired}}", "", "2", `"electrical permit" stands in kitchen, and comes along once for the whole house too`},
		{"", "", "whole house: {options: {a: {work: {final cleaning: hired}, without: [electrical permit]}}}\n", "0", ""},
		{"", "", "whole house: {options: {a: {work: {final cleaning: hired}}}, without: [electrical permit]}\n", "0", ""},
		{"", "", "scope: as it is\nwhole house: {options: {a: {work: {final cleaning: hired}, without: [electrical permit]}}}\n", "0", ""},
		{"", "", "scope: {whole house: as it is}\nwhole house: {options: {a: {work: {final cleaning: hired}, without: [electrical permit]}}}\n", "1", ""},
		{"", "", "whole house: {options: {a: {work: {final cleaning: hired}, without: [water heater gas]}}}\n", "1", `nothing here would bring "water heater gas" along`},
	} {
		text := fmt.Sprintf(kitchen, c.with, c.rooms, c.house)
		require.Equal(t, c.permits, quantities(t, text)["electrical permit"].String(), text)
		_, found := deal.Read("house.yaml", []byte(text))
		for _, says := range []string{"comes along once for", "would bring"} {
			if c.says == "" {
				require.NotContains(t, fmt.Sprint(found), says, text)
			}
		}
		require.Contains(t, fmt.Sprint(found), c.says, text)
	}
}

// ownBook reads a deal with items of an own price book.
func ownBook(t *testing.T, options deal.Options, items, text string) *deal.Deal {
	options.Open = func(string) ([]byte, error) { return []byte("items:\n" + items), nil }
	d, found := deal.ReadWith(options, "house.yaml", []byte(walked+"own book: mine.yaml\n"+text))
	require.NotNil(t, d, found)
	return d
}

// What an option of the whole house brings plainly and other work once for the house comes
// once, with all that it brings, and by own hands if any of these is.
func TestWhatComesOnceForTheHouseIsNotBesideWhatTheHouseBringsPlainly(t *testing.T) {
	const items = `
  za: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zx], source: x}
  zb: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zx in house], source: x}
  zx: {trade: y, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zy], source: x}
  zy: {trade: y, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: none, source: x}
`
	for text, want := range map[string]string{
		"whole house: {work: {za: hired}}":                                                                        "zx 1 hired, zy 1 hired",
		"whole house: {work: {za: hired, zb: hired}}":                                                             "zx 1 hired, zy 1 hired",
		"whole house: {work: {za: own hands, zb: hired}}":                                                         "zx 1 own, zy 1 own",
		"whole house: {work: {za: hired, zb: own hands}}":                                                         "zx 1 own, zy 1 own",
		"whole house: {work: {za: hired}}\nrooms: {den: {size: 10' x 12', work: {zb: hired}}}":                    "zx 1 hired, zy 1 hired",
		"whole house: {work: {za: hired, zx: hired}}\nrooms: {den: {size: 10' x 12', work: {zb: own hands}}}":     "zx 1 hired, zy 1 hired",
		"whole house: {work: {za: hired}, without: [zx]}\nrooms: {den: {size: 10' x 12', work: {zb: own hands}}}": "",
	} {
		for _, all := range []bool{false, true} {
			d := ownBook(t, deal.Options{AllOptions: all}, items, text+"\n")
			v, err := exact.Evaluate(d.Model)
			require.NoError(t, err)
			var got []string
			for m, w := range d.Work {
				if n := v.Of(d.Model.Find(m, "quantity")); (w.Item.Name == "zx" || w.Item.Name == "zy") && n.IsPositive() {
					got = append(got, fmt.Sprintf("%s %s %s", w.Item.Name, n, m.Given.Of("who").Choice))
				}
			}
			slices.Sort(got)
			require.Equal(t, want, strings.Join(got, ", "), "%s, all options: %t", text, all)
		}
	}
	for _, works := range []string{"crawlspace put right: hired, sill replaced: {by: hired, count: 10 ft}", "sill replaced: {by: hired, count: 10 ft}, crawlspace put right: hired"} {
		require.Equal(t, "1", quantities(t, walked+"whole house: {work: {"+works+"}}\n")["termite report"].String())
	}
}

// What is done once for the house brings once for the house, though the quote of a room holds
// it: an inspection, $50 for each of two rooms, of a permit within a quote for all of a fix.
func TestWhatAQuoteHoldsForTheHouseBringsOnceForTheHouse(t *testing.T) {
	const items = `
  q fix: {trade: plumbing, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [q perm in house], source: x}
  q perm: {trade: plumbing, measure: one, hours: 1 each, hired: $100 each, materials: none, brings: [q insp], source: x}
  q insp: {trade: general, measure: house rooms, hours: 1 each, hired: $50 each, materials: none, brings: none, source: x}
`
	for _, works := range [][2]string{{"q fix: $500", "q fix: hired"}, {"q fix: hired", "q fix: $500"}, {"q fix: $500", "q fix: $500"}} {
		d := ownBook(t, deal.Options{}, items, fmt.Sprintf("rooms: {hall: {size: 14' x 11', work: {%s}}, den: {size: 14' x 11', work: {%s}}}\n", works[0], works[1]))
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		var where []string
		for m, w := range d.Work {
			if w.Item.Name == "q insp" {
				where = append(where, m.Parent.Parent.Label+" "+v.Of(d.Model.Find(m, "quantity")).String())
			}
		}
		require.Equal(t, []string{"whole house 2"}, where, works)
	}
}

// Work that goes by the whole house and stands in two rooms is doubted where it is more than
// all of the house.
func TestMoreThanAllTheHouseIsDoubted(t *testing.T) {
	for works, says := range map[[3]string]string{
		{"rewire: hired", "rewire: hired", "lawn care: hired"}:                            `"rewire" goes by the whole house, and stands in den and in nook`,
		{"rewire: {part: 50%}", "rewire: {part: 50%}", "lawn care: hired"}:                "",
		{"rewire: {part: 50%}", "rewire: {part: 60%}", "lawn care: hired"}:                "goes by the whole house",
		{"circuit: hired", "final cleaning: own hands", "final cleaning: hired"}:          `"final cleaning" goes by the whole house, and stands in nook and in whole house`,
		{"circuit: hired", "final cleaning: {count: 100 sq ft}", "final cleaning: hired"}: "",
		{"circuit: hired", "circuit: hired", "final cleaning: hired"}:                     "",
	} {
		_, found := deal.Read("house.yaml", []byte(fmt.Sprintf(walked+"rooms: {den: {size: 10' x 12', work: {%s}}, nook: {size: 10' x 12', work: {%s}}}\nwhole house: {work: {%s}}\n", works[0], works[1], works[2])))
		if says == "" {
			require.NotContains(t, fmt.Sprint(found), "goes by the whole house", works)
		}
		require.Contains(t, fmt.Sprint(found), says, works)
	}
}

// A basement is apart from the living area, and so are a garage, a covered patio and what is
// not finished, as in ANSI Z765 (ANSI-02), unless the file says otherwise.
func TestWhatIsNoLivingArea(t *testing.T) {
	for room, floor := range map[string]string{
		"basement: {size: 20' x 30'}":                                 "120",
		"cellar: {size: 20' x 30'}":                                   "120",
		"basement bedroom: {size: 20' x 30'}":                         "120",
		"lower level: {size: 20' x 30', kind: basement}":              "120",
		"basement: {size: 20' x 30', living area: yes}":               "720",
		"lower level: {size: 20' x 30'}":                              "720",
		"lower level: {size: 20' x 30', living area: no}":             "120",
		"basement: {size: 20' x 30', kind: living, living area: yes}": "720",
		"garage: {size: 20' x 30'}":                                   "120",
		"garage 2: {size: 20' x 30'}":                                 "120",
		"screened porch: {size: 20' x 30'}":                           "120",
		"unfinished attic: {size: 20' x 30'}":                         "120",
		"garage: {size: 20' x 30', living area: yes}":                 "720",
		"converted garage: {size: 20' x 30'}":                         "720",
		"room over garage door: {size: 20' x 30'}":                    "720",
		"den off porch kitchen: {size: 20' x 30'}":                    "720",
	} {
		text := walked + "rooms: {den: {size: 10' x 12', work: {paint walls: hired}}, " + room + "}\nwhole house: {work: {rewire: hired, final cleaning: hired}}\n"
		of := quantities(t, text)
		require.Equal(t, floor, of["rewire"].String(), room)
		require.Equal(t, "720", of["final cleaning"].String(), room)
	}
}

// Work on the wood of a floor is doubted under what nothing takes up.
func TestLayersOverWoodThatStayAreDoubted(t *testing.T) {
	for room, says := range map[string]string{
		"layers: [vinyl, wood], work: {refinish wood floor: hired}":                           "nothing takes up the vinyl on it",
		"layers: [carpet, tile], work: {screen and recoat wood floor: hired}":                 "nothing takes up the tile on it",
		"layers: [vinyl, wood], work: {patch wood floor: hired}":                              "nothing takes up the vinyl on it",
		"layers: [carpet], work: {refinish wood floor: hired}":                                "",
		"layers: [wood, vinyl], work: {refinish wood floor: hired}":                           "",
		"layers: [vinyl, wood], work: {refinish wood floor: hired, strip sheet vinyl: hired}": "",
		"layers: [vinyl], work: {nail-down oak floor: hired}":                                 "",
		"layers: [vinyl], work: {self-levelled floor: hired}":                                 "",
	} {
		_, found := deal.Read("house.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', "+room+"}}\n"))
		if says == "" {
			require.NotContains(t, fmt.Sprint(found), "nothing takes up", room)
		}
		require.Contains(t, fmt.Sprint(found), says, room)
	}
}

// Work that takes up layers may be named once for each of them, or counted so; more is doubted,
// and what is more than one layer and less than the next: 120 sq ft each, by hand.
func TestLayersMayBeTakenUpOneByOne(t *testing.T) {
	for work, says := range map[string]string{
		"strip sheet vinyl: hired": "",
		"strip sheet vinyl: hired, s2: {item: strip sheet vinyl, by: hired}":                                "",
		"strip sheet vinyl: {count: 120 sq ft}, s2: {item: strip sheet vinyl, by: hired}":                   "",
		"strip sheet vinyl: {count: 125 sq ft}":                                                             "",
		"strip sheet vinyl: {count: 240 sq ft}":                                                             "",
		"strip sheet vinyl: {count: 60 sq ft}":                                                              "",
		"strip sheet vinyl: {count: 400 sq ft}":                                                             "strip sheet vinyl: a count of 400 sq ft, but open floor of den, of which there are 2 layers, is 120 sq ft",
		"strip sheet vinyl: {count: 200 sq ft}":                                                             `"strip sheet vinyl" takes up 200 sq ft, more than 1 and less than 2 of the 2 layers of 120 sq ft in den, and nothing takes up the rest`,
		"strip sheet vinyl: {part: 60%}, s2: {item: strip sheet vinyl, by: hired, part: 70%}":               `"strip sheet vinyl" takes up 156 sq ft, more than 1 and less than 2 of the 2 layers of 120 sq ft in den, and nothing takes up the rest`,
		"strip sheet vinyl: hired, s2: {item: strip sheet vinyl}, s3: {item: strip sheet vinyl, part: 10%}": `"strip sheet vinyl", "s2", "s3" are together 210% of the open floor of den, which has 2 layers of it`,
		"strip carpet: hired, s2: {item: strip carpet, by: hired}":                                          `"strip carpet" and "s2" are both strip carpet, all of it, in den`,
	} {
		_, found := deal.Read("house.yaml", []byte(strings.Replace(fmt.Sprintf(walled, "resilient plank floor: hired, "+work), "[carpet]", "[carpet, vinyl, vinyl]", 1)))
		var got []string
		for _, d := range found {
			if d.Code == "done-twice" || d.Code == "layer-in-part" || d.Code == "count-large" {
				got = append(got, d.Message)
			}
		}
		require.Equal(t, says, strings.Join(got, "; "), work)
	}
}

// A name that the price book has not is told all that the work brings, also what comes once for
// the house: a circuit brings the permit, and plates for what it opens.
func TestWithoutOfNoNameListsWhatComesOnceForTheHouseToo(t *testing.T) {
	_, found := deal.Read("house.yaml", []byte(walked+"rooms: {den: {size: 10' x 12', work: {circuit: hired}, without: [gold leaf]}}\n"))
	require.Len(t, found, 1)
	require.Regexp(t, `^the work brings along: .*electrical permit`, found[0].Hint)
}

// What the whole house does without is of use where work of any option could call for it, be that
// option taken or not: scopes are mixed by room.
func TestAnOptionOfTheHouseDoesWithoutWhatAnyOptionCallsFor(t *testing.T) {
	const house = walked + `house: {utilities: off}
scope: %s
rooms:
  bath: {size: 8' x 8', layers: [vinyl], options: {light: {work: {paint walls: hired}}, gut: {work: {supply lines: hired, tile floor: hired}}}}
  den: {size: 8' x 8', options: {light: {work: {paint walls: hired}}}}
whole house: {options: {light: {work: {final cleaning: hired}, without: [%s]}, gut: {work: {deck frame: {by: hired, count: 90 sq ft}}}}}
`
	for _, scope := range []string{"light", "{all rooms: light, bath: gut}", "{all rooms: as it is, whole house: light}", "{all rooms: light, bath: as it is}"} {
		for without, doubted := range map[string]bool{
			"plumbing permit":     false,
			"asbestos test":       false, // by the sheet vinyl under the tile
			"plumbing leak watch": false, // by the turn-on, which the main shutoff calls for
			"building permit":     true,  // which the house has with its other option alone
			"tile transition":     true,  // the tile brings it, but in the bath
		} {
			_, found := deal.Read("house.yaml", fmt.Appendf(nil, house, scope, without))
			require.False(t, found.HasErrors(), "%v", found)
			require.Equal(t, doubted, slices.Contains(codesIn(found), "without-unneeded"), "%s without %s", scope, without)
		}
	}
}

// What the whole house brings by a count is not fewer where a room calls for one of it.
func TestACountedCompanionIsNotFewerWhereARoomCallsForIt(t *testing.T) {
	const text = "house: {year built: 2000}\nrooms: {den: {size: 23' x 15', work: {paint walls: own hands%s}}}\nwhole house: {work: {egress window: {by: hired, count: 2}}}\n"
	for _, more := range []string{"", ", range hood duct: hired"} {
		require.Equal(t, "2", quantities(t, fmt.Sprintf(walked+text, more))["tool rental"].String(), more)
	}
}
