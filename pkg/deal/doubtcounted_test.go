package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// Counted work whose place says nothing of what is counted is told with what is not priced beside it.
func TestWorkThatIsCountedAlone(t *testing.T) {
	const counted = " is counted, and nothing is priced of "
	for room, want := range map[string]string{
		"bath: {size: 8' x 5', doors: 1, work: {tub: {by: hired, count: 1}}}":                                                                  `"tub"` + counted + "surround insulation, tub surround tile, strip tub surround panels, nor of what that brings along: wet walls and tub walls of bath are 0",
		"bath: {size: 8' x 5', doors: 1, fixed: {toilet: 1}, work: {tub: {quote: $900, count: 1}}}":                                            `"tub"` + counted + "surround insulation, tub surround tile, strip tub surround panels, nor of what that brings along: wet walls and tub walls of bath are 0",
		"bath: {size: 8' x 5', doors: 1, work: {tile shower walls: {by: hired, count: 63 sq ft}}}":                                             `"tile shower walls"` + counted + "shower niche, shower pan mortar bed, tile shower floor, nor of what that brings along: showers of bath is 0",
		"kitchen: {size: 10' x 12', doors: 1, work: {better kitchen cabinets: {by: hired, count: 12 ft}}}":                                     `"better kitchen cabinets"` + counted + "better wall cabinet, strip counter, nor of what that brings along: wall cabinet run and counter of kitchen are 0",
		"kitchen: {size: 10' x 12', doors: 1, work: {kitchen cabinets: {quote: $4300, count: 12 ft}}}":                                         `"kitchen cabinets"` + counted + "strip counter, nor of what that brings along: counter of kitchen is 0",
		"den: {size: 10' x 12', work: {replacement window: {by: hired, count: 2}}}":                                                            `"replacement window"` + counted + "paint casing, nor of what that brings along: casing run of den is 0",
		"bath: {size: 8' x 5', doors: 1, fixed: {tub: 5' x 2'6\"}, work: {tub: {by: hired, count: 1}}}":                                        "",
		"bath: {size: 8' x 5', doors: 1, fixed: {shower: 3' x 3'}, work: {take out tub: {by: hired, count: 1}}}":                               "",
		"bath: {size: 8' x 5', doors: 1, fixed: {tub: 5' x 2'6\"}, work: {tile shower walls: hired}}":                                          "",
		"bath: {size: 8' x 5', doors: 1, work: {tub reglazed: {by: hired, count: 1}}}":                                                         "",
		"bath: {size: 8' x 5', doors: 1, work: {toilet: {by: hired, count: 1}, vanity: {by: hired, count: 1}}}":                                "",
		"bath: {size: 8' x 5', doors: 1, work: {tub: {quote: $4900, count: 1, holds more: yes}}}":                                              "",
		"kitchen: {size: 10' x 12', doors: 1, fixed: {base cabinets: 12' x 2'}, work: {kitchen cabinets: hired}}":                              "",
		"kitchen: {size: 10' x 12', doors: 1, work: {kitchen cabinets: {by: hired, count: 4 ft}}, without: [strip cabinets]}":                  "",
		"laundry: {size: 10' x 12', doors: 1, work: {kitchen cabinets: {by: hired, count: 6 ft}}}":                                             "",
		"den: {size: 10' x 12', doors: 1, work: {replacement window: {by: hired, count: 2}}}":                                                  "",
		"den: {size: 10' x 12', work: {replacement window: {by: hired, count: 2}}, without: [paint casing]}":                                   "",
		"bath: {size: 8' x 5', doors: 1, work: {tub: {by: hired, count: 1}}, without: [surround insulation, tub surround tile, take out tub]}": "",
	} {
		var all []string
		if want != "" {
			all = []string{want}
		}
		require.Equal(t, all, toldOf(t, "count-alone", "  "+room+"\n", ""), room)
	}
	for outside, want := range map[string]int{
		"work: {gutters: {by: hired, count: 84 ft}}":                                            1,
		"downspouts: 0, work: {gutters: {by: hired, count: 84 ft}}":                             0,
		"gutters: 84 ft, work: {gutters: {by: hired, count: 40 ft}}":                            0,
		"work: {gutters: {by: hired, count: 84 ft}}, without: [downspouts]":                     0,
		"around: 136 ft, work: {grading at foundation: {by: own hands, count: 60 ft}}":          0,
		"work: {lawn care: {by: hired, count: 4 months}, tree trimming: {by: hired, count: 2}}": 0,
	} {
		require.Len(t, toldOf(t, "count-alone", "  den: {size: 12' x 13', work: {paint walls: hired}}\n", "outside: {"+outside+"}\n"), want, outside)
	}
}

// What the hint says ends the doubt; of what only comes out it is no fixed part.
func TestTheHintsOfWorkThatIsCountedAlone(t *testing.T) {
	for _, c := range [][2]string{
		{"tub: {by: hired, count: 1}", "fixed: {tub: 5' x 2'6\"}"},
		{"shower base: {by: hired, count: 1}", "fixed: {shower: 3' x 3'}"},
		{"tile shower walls: {by: hired, count: 63 sq ft}", "fixed: {shower: 3' x 3'}"},
		{"tile shower walls: {by: hired, count: 60 sq ft}", "fixed: {tub: 5' x 2'6\"}"},
		{"kitchen cabinets: {by: hired, count: 12 ft}", "fixed: {base cabinets: 12' x 2'}"},
		{"replacement window: {by: hired, count: 2}", "windows: 2"},
		{"prehung inside door: {by: hired, count: 1}", "doors: 1"},
		{"replacement window: {by: hired, count: 3}", "windows: 3"},
		{"strip closet shelves: {by: hired, count: 1}", "closet rod and shelf: {by: hired, count: 12 ft}"},
		{"take out tub: {by: own hands, count: 1}", "strip tub surround panels: {by: own hands, count: 40 sq ft}"},
	} {
		room := "    size: 14' x 16'\n    kind: kitchen\n    work: {" + c[0] + "}\n"
		read := func(room string) (out []string) {
			_, found := deal.Read("a.yaml", []byte(walked+"rooms:\n  room:\n"+room))
			require.False(t, found.HasErrors(), "%v", found)
			for _, d := range found {
				if d.Code == "count-alone" {
					out = append(out, d.Hint)
				}
			}
			return out
		}
		hints := read(room)
		require.Len(t, hints, 1, room)
		require.Contains(t, hints[0], c[1])
		done := room + "    " + c[1] + "\n"
		if strings.Contains(c[1], "by:") {
			done = strings.Replace(room, "work: {", "work: {"+c[1]+", ", 1)
		}
		require.Empty(t, read(done), done)
	}
}

// The length that is counted is the one to add.
func TestTheHintOfGuttersThatAreCountedAlone(t *testing.T) {
	_, found := deal.Read("a.yaml", []byte(walked+"outside: {around: 120 ft, work: {gutters: {by: hired, count: 60 ft}}}\n"))
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "count-alone" })
	require.NotEqual(t, -1, i, found)
	require.Contains(t, found[i].Hint, "add   gutters: 60 ft   to outside")
}

// What goes with counted work is what some item by that measure brings in the end, or takes.
func TestWhatGoesWithCountedWorkIsInThePriceBook(t *testing.T) {
	book := pricebook.Starter()
	for measure, others := range deal.GoWith {
		require.NotNil(t, pricebook.MeasureNamed(measure), measure)
		for _, other := range others {
			require.NotNil(t, pricebook.MeasureNamed(other), other)
			found := slices.ContainsFunc(book.Items(), func(name string) bool {
				it := book.Item(name)
				return it.Measure == measure && leadsTo(book, it, other, nil)
			})
			require.True(t, found, "%s: %s", measure, other)
		}
	}
}

// leadsTo reports whether an item takes something by a measure, or brings work by it in the end.
func leadsTo(book *pricebook.Book, it *pricebook.Item, measure string, seen []string) bool {
	if slices.Contains(seen, it.Name) {
		return false
	}
	seen = append(slices.Clone(seen), it.Name)
	return slices.ContainsFunc(it.Uses, func(u pricebook.Use) bool { return u.Along == measure }) ||
		slices.ContainsFunc(it.Brings, func(c pricebook.Companion) bool {
			x := book.Item(c.Item)
			return x.Measure == measure || leadsTo(book, x, measure, seen)
		})
}

// The rail of stairs that do not say how long it is, is asked for where new treads would bring one along.
func TestARailThatNobodyMeasures(t *testing.T) {
	for room, want := range map[string]int{
		"stairs: {treads: 13}, work: {cap stair treads: hired}":                                      1,
		"work: {cap stair treads: {by: hired, count: 13}, plank on stairs: {by: hired, count: 2}}":   1,
		"work: {basement stairs: {by: hired, count: 12}}":                                            1,
		"stairs: {treads: 13, rail: 12 ft}, work: {cap stair treads: hired}":                         0,
		"stairs: {treads: 13, rail: 0 ft}, work: {cap stair treads: hired}":                          0,
		"stairs: {treads: 13}, work: {cap stair treads: hired}, without: [handrail]":                 0,
		"stairs: {treads: 13}, work: {cap stair treads: hired, handrail: {by: hired, count: 12 ft}}": 0,
		"stairs: {treads: 13}, work: {paint stair parts: hired}":                                     0,
	} {
		require.Len(t, toldOf(t, "rail-unsaid", "  hall: {size: 8' x 15', "+room+"}\n", ""), want, room)
	}
}
