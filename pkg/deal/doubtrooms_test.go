package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

// doubted are the codes that a deal with more keys brings.
func doubted(t *testing.T, keys string) []string {
	d, found := deal.Read("den.yaml", []byte(den+keys))
	require.NotNil(t, d, "%v", found)
	return codesIn(found)
}

func codesIn(found diag.List) (out []string) {
	for _, d := range found {
		out = append(out, d.Code)
	}
	return out
}

func TestWhatWasSeenBadWantsWork(t *testing.T) {
	for _, c := range []struct {
		keys   string
		doubts bool
	}{
		{"seen: {water heater: bad}\n", true},
		{"seen: {water heater: {state: bad, likely: $900}}\n", true},
		{"seen: {water heater: good}\n", false},
		{"seen: {water heater: not seen}\n", false},
		{"seen: {water heater: bad}\nwhole house: {work: {water heater gas: hired}}\n", false},
		{"seen: {water heater: bad}\nwhole house: {work: {water heater electric: $1,700}}\n", false},
		{"seen: {water heater: bad}\nwhole house: {work: {furnace: hired}}\n", true},
		{"seen: {foundation: bad}\nwhole house: {work: {foundation piers: hired}}\n", false},
		{"seen: {foundation: bad}\noutside: {around: 90', work: {foundation painted: hired}}\n", true},
		{"seen: {chimney: bad}\noutside: {roof: [{size: 30' x 24'}], work: {shingle roof gable: hired}}\n", true}, // which brings its flashing
		{"seen: {chimney: bad}\nwhole house: {work: {chimney sweep and look: hired}}\n", true},
		{"seen: {chimney: bad}\nwhole house: {work: {chimney crown and cap: hired}}\n", false},
		{"seen: {chimney: bad}\nwhole house: {work: {chimney rebuilt above roof: hired}}\n", false},
		{"seen: {water heater: bad}\nwhole house: {work: {water heater drain pan and expansion: hired}}\n", true},
		{"seen: {oil tank: bad}\nwhole house: {work: {oil tank sweep: hired}}\n", true},
		{"seen: {oil tank: bad}\nwhole house: {work: {oil tank removed: hired}}\n", false},
		{"seen: {termites: bad}\nwhole house: {work: {termite report: hired}}\n", true},
		{"seen: {heating: bad}\nwhole house: {work: {heating service visit: hired}}\n", true},
		{"seen: {heating: bad}\nwhole house: {work: {boiler: hired}}\n", false},
		{"seen: {heating: bad}\nwhole house: {work: {mini-split: {quote: $9,800, count: 3}}}\n", false},
		{"seen: {heating: bad}\nwhole house: {work: {baseboard heater: {by: hired, count: 5}}}\n", false},
		{"seen: {heating: bad}\nwhole house: {work: {thermostat: hired}}\n", true},
		{"seen: {wiring: bad}\nwhole house: {work: {old wiring made safe: hired}}\n", false},
		{"seen: {electrical panel: bad}\nwhole house: {work: {service upgrade: {quote: $3,900, from: an electrician (invented), dated: 2026-08-10}}}\n", false}, // which holds the panel
		{"seen: {wiring: bad}\nwhole house: {work: {panel 200 amp: {quote: $7,900, from: an electrician (invented), dated: 2026-08-10, holds more: yes}}, without: [rewire]}\n", false},
		{"seen: {wiring: bad}\nwhole house: {work: {panel 200 amp: {quote: $7,900, from: an electrician (invented), dated: 2026-08-10}}, without: [rewire]}\n", true},
		{"seen: {wiring: bad}\nwhole house: {work: {panel 200 amp: {quote: $7,900, from: an electrician (invented), dated: 2026-08-10, holds more: yes}}, without: [bonding]}\n", true},
		{"seen: {chimney: bad}\nhouse: {year built: 1960}\nwhole house: {work: {furnace: {quote: $7,900, from: a heater (invented), dated: 2026-08-10, holds more: yes}}, without: [chimney liner]}\n", false},
		{"seen: {chimney: bad}\nhouse: {year built: 1960}\nwhole house: {work: {furnace: hired, panel 200 amp: {quote: $7,900, from: an electrician (invented), dated: 2026-08-10, holds more: yes}}, without: [chimney liner]}\n", true}, // which the furnace goes without
		{"seen: {sewer line: bad}\nwhole house: {work: {service upgrade: {quote: $3,900, from: an electrician (invented), dated: 2026-08-10}}}\n", true},
		{"seen: {roof: {state: bad, likely: $4,900}}\n", true},
		{"seen: {roof: {state: good}}\n", false},
		{"seen: {roof: {state: bad}}\nwhole house: {work: {rewire: hired}}\n", true},
		{"seen: {roof: {state: bad}}\noutside: {roof: [{size: 30' x 24'}], work: {shingle roof gable: hired}}\n", false},
		{"seen: {sewer line: bad}\nwhole house: {work: {sewer spot repair: hired}}\n", false},
	} {
		got := doubted(t, c.keys)
		require.Equal(t, c.doubts, slices.Contains(got, "bad-not-planned"), c.keys)
	}
}

// An item of the starter book with the name of a part of one's own mends it, unless it only
// goes over it or takes it out.
func TestOnlyWhatMendsAPartOfOnesOwnSeesToIt(t *testing.T) {
	for item, doubts := range map[string]bool{"wood fence": false, "fence repair": false, "fence stained": true, "paint walls": true} {
		work := strings.Replace(den, "paint walls: hired", "paint walls: hired, "+item+": {by: hired, count: 40 ft}", 1)
		if item == "paint walls" {
			work = den
		}
		d, found := deal.Read("den.yaml", []byte(work+"seen: {fence: {state: bad, likely: $900}}\n"))
		require.NotNil(t, d, "%v", found)
		require.Equal(t, doubts, slices.Contains(codesIn(found), "bad-not-planned"), item)
	}
}

// A line beside the rooms or an item of an own book silences what was seen bad where it tells
// of a mend, and not by the name of the part alone.
func TestOnlyMendingSeesToWhatWasSeenBad(t *testing.T) {
	for part, c := range map[string]struct{ mends, leaves []string }{
		"sewer line": {
			[]string{"sewer line replaced", "replace 40 ft of sewer line", "new sewer line to the street", "sewer repair", "sewer line replacement", "plumbing: main sewer line relined", "sewer line", "replace sewer lateral"},
			[]string{"sewer line inspected", "sewer line look", "sewer camera", "new cleanout on sewer line", "sewer line replacement permit", "new roof, sewer line inspected"},
		},
		"water heater": {
			[]string{"water heater replaced", "new water heater", "install gas water heater", "water heater, new", "new hot water tank"},
			[]string{"water heater blanket", "water heater flush", "new blanket for water heater", "water heater pan replaced", "water heater gas line"},
		},
		"oil tank": {
			[]string{"oil tank removal", "remove buried oil tank", "oil tank: removed"},
			[]string{"oil tank sweep", "oil tank gauge replaced", "oil tank removal permit"},
		},
		"electrical panel": {
			[]string{"electrical panel upgrade", "electrical: panel replaced", "new electrical panel and feeder", "new breaker box", "new panel", "electrical: new panel", "200 amp panel upgrade"},
			[]string{"electrical panel cover", "replace electrical panel cover", "panel doors", "new panel doors", "end panel replaced"},
		},
		"chimney":             {[]string{"chimney rebuilt", "masonry: rebuild chimney", "chimney relined", "chimney liner"}, []string{"chimney sweep", "new chimney flashing", "chimney cap painted"}},
		"wiring":              {[]string{"new wiring", "new wiring throughout", "whole house rewiring", "wiring made safe", "rewire the house", "rewire house", "electrical: rewire", "knob and tube replaced"}, []string{"wiring look", "new wiring closet", "wiring cover replaced", "rewire lamp"}},
		"heating":             {[]string{"heating replaced", "new heating system", "heating system replacement", "furnace", "new furnace", "heating: boiler, 80k", "three mini-splits", "new baseboard heaters", "new HVAC system"}, []string{"heating service", "heating: new filter", "furnace filter", "clean boiler", "new heating registers", "mini-split look", "paint baseboard heaters", "HVAC service"}},
		"foundation":          {[]string{"foundation repair", "repair of foundation", "foundation: repaired"}, []string{"foundation painted", "foundation planting removed", "new plants at foundation"}},
		"hazards":             {[]string{"asbestos removal", "remove asbestos", "lead paint abatement", "mould removed"}, []string{"asbestos test", "asbestos removal report"}},
		"termites":            {[]string{"termite treatment and report", "treat termites", "termite damage repair"}, []string{"termite report", "termite inspection"}},
		"supply pipes":        {[]string{"replace supply pipes", "repiping", "new water pipes", "replumb the house", "new water lines"}, []string{"supply pipes insulated", "water pipe insulation", "new plumbing fixtures"}},
		"roof":                {[]string{"new roof", "roof replaced"}, []string{"new fence", "roof look"}},
		"crawlspace and sill": {[]string{"crawlspace encapsulation", "sill repair", "sill plate replaced"}, []string{"window sill painted", "crawlspace look"}},
	} {
		for doubts, labels := range map[bool][]string{false: c.mends, true: c.leaves} {
			for _, label := range labels {
				line := "{contingency: 20%, lines: [{work: \"" + label + "\", amount: $300}]}"
				if trade, work, ok := strings.Cut(label, ": "); ok {
					line = "{contingency: 20%, lines: [{trade: " + trade + ", work: \"" + work + "\", amount: $300}]}"
				}
				_, found := deal.Read("den.yaml", []byte(strings.Replace(den, "{contingency: 20%}", line, 1)+"seen: {"+part+": {state: bad}}\n"))
				require.False(t, found.HasErrors(), "%v", found)
				require.Equal(t, doubts, slices.Contains(codesIn(found), "bad-not-planned"), "%s: %s", part, label)
			}
		}
	}
	own := func(string) ([]byte, error) {
		const about = "trade: plumbing, measure: one, hours: none, hired: $290 each, materials: none, brings: none, source: mine"
		return []byte("items: {sewer line look: {work: camera, " + about + "}, sewer line renewed: {work: new pipe, " + about + "}}"), nil
	}
	for item, doubts := range map[string]bool{"sewer line look": true, "sewer line renewed": false} {
		text := den + "own book: mine.yaml\nseen: {sewer line: bad}\nwhole house: {work: {" + item + ": hired}}\n"
		_, found := deal.ReadWith(deal.Options{Open: own}, "den.yaml", []byte(text))
		require.False(t, found.HasErrors(), "%v", found)
		require.Equal(t, doubts, slices.Contains(codesIn(found), "bad-not-planned"), item)
	}
}

// Rooms have one doubt of the contingency, and say themselves how long they take.
func TestRoomsDoubtTheirContingencyOnce(t *testing.T) {
	got := doubted(t, "house: {year built: 2001}\n")
	require.NotContains(t, got, "contingency-for-age")
	bare := "rooms: {den: {size: 12' x 10', work: {paint walls: hired}}}\n"
	_, found := deal.Read("den.yaml", []byte(minimal+bare+"renovation: {contingency: 8%, general: {permits: $300}}\nhouse: {year built: 2001}\n"))
	got = codesIn(found)
	require.Contains(t, got, "contingency-for-age")
	require.NotContains(t, got, "contingency-low")
	require.NotContains(t, got, "works-missing")
	_, found = deal.Read("den.yaml", []byte("purchase: {price: $200k}\nvalue: {before work: $210k}\ntime: {marketing: 1 month}\nrenovation: {contingency: 20%, general: {permits: $300}}\n"+bare))
	require.NotContains(t, codesIn(found), "works-without-time")
	require.False(t, found.HasErrors())
}

// Who follows the hint of a walk that says too little is not doubted for it.
func TestTheRectanglesOfAHintShareWhatTheyShould(t *testing.T) {
	walk := strings.Replace(den, denSize, "walls: [east 12', north 10', west 12', south 10']", 1) // a den without its size
	_, found := deal.Read("den.yaml", []byte(strings.Replace(walk, "paint walls: hired", "carpet: hired", 1)))
	require.Equal(t, []string{"rolls-of-walk"}, codesIn(found.Errors()))
	_, size, ok := strings.Cut(found.Errors()[0].Hint, "e.g.   ")
	require.True(t, ok)
	d, found := deal.Read("den.yaml", []byte(strings.Replace(den, denSize, size, 1)))
	require.NotNil(t, d, "%v", found)
	require.NotContains(t, codesIn(found), "nothing-shared")
}

// A count in words is told in figures, and those are read.
func TestACountInWordsIsToldInFigures(t *testing.T) {
	for words, want := range map[string]string{
		"doors: four": "doors: 4", "windows: None": "windows: 0", "cased openings: zero": "cased openings: 0", "windows: twelve": "windows: 12",
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, denSize, denSize+"\n    "+words, 1)))
		require.Equal(t, []string{"bad-openings"}, codesIn(found.Errors()), words)
		require.Contains(t, found.Errors()[0].Hint, "   "+want, words)
		_, found = deal.Read("den.yaml", []byte(strings.Replace(den, denSize, denSize+"\n    "+want, 1)))
		require.NotContains(t, codesIn(found), "bad-openings", want)
	}
}

// A deal that takes too long for the hours of some work points at that work.
func TestTooLongAWorkIsPointedAt(t *testing.T) {
	text := strings.Replace(den, "paint walls: hired", "paint ceiling: hired, paint walls: {by: own hands, hours: 90 per sq ft}", 1)
	_, found := deal.Read("den.yaml", []byte(strings.Replace(text, "renovation: 3 months, ", "", 1)))
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "hold-too-long" })
	require.GreaterOrEqual(t, i, 0, "%v", found)
	require.Contains(t, found[i].Hint, `the most hours are those of "paint walls"`)
}

// A doubt about work that other work would bring once for the house stands at what the file
// names, and says what would bring it.
func TestWhatWouldComeAlongIsToldAtTheWork(t *testing.T) {
	_, found := deal.Read("den.yaml", []byte(den+"house: {year built: 1938, utilities: off}\noutside: {around: 100 ft, work: {outside wall paint: hired}}\n"))
	i := slices.IndexFunc(found, func(d diag.Diag) bool { return d.Code == "no-bedroom" })
	require.GreaterOrEqual(t, i, 0, "%v", found)
	require.Positive(t, found[i].Pos.Line)
	require.Contains(t, found[i].Message, "which")
	for _, d := range found {
		require.Equal(t, "den.yaml", d.Pos.File, d.Message)
	}
}

// A house bought at under half of what it is worth before the work is doubted, once, and a bargain
// is not.
func TestAHouseWorthTwiceItsPriceIsDoubted(t *testing.T) {
	for value, want := range map[string]string{
		"before work: $410k":                            "as-is-far-above-price",
		"after-repair value: $600k, as-is value: $410k": "as-is-far-above-price",
		"before work: $2400k":                           "value-far-above-price",
		"before work: $390k":                            "",
		"after-repair value: $600k, before work: $410k": "",
		"after-repair value: $600k, as-is value: $300k": "",
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(twoOptions, "after-repair value: $300k", value, 1)))
		require.False(t, found.HasErrors(), "%s: %v", value, found)
		var got []string
		for _, code := range codesIn(found) {
			if strings.HasSuffix(code, "-far-above-price") {
				got = append(got, code)
			}
		}
		require.Equal(t, strings.Fields(want), append([]string{}, got...), value)
	}
}

// A value before work over 1.25 times what is paid, or under three quarters of it, is doubted where the
// value is drawn from it, unless an as-is value says the same. The house costs $200k.
func TestAValueBeforeWorkApartFromThePriceIsDoubted(t *testing.T) {
	for value, want := range map[string]bool{
		"before work: $251k":                            true,
		"before work: $250k":                            false,
		"before work: $149k":                            true,
		"before work: $150k":                            false,
		"before work: $251k, as-is value: $251k":        false,
		"before work: $149k, as-is value: $149k":        false,
		"before work: $251k, after-repair value: $300k": false,
		"before work: $410k":                            false, // told as twice the price
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(twoOptions, "after-repair value: $300k", value, 1)))
		require.False(t, found.HasErrors(), "%s: %v", value, found)
		require.Equal(t, want, slices.Contains(codesIn(found), "as-is-apart"), "%s: %v", value, found)
	}
	_, found := deal.Read("den.yaml", []byte(strings.NewReplacer("after-repair value: $300k", "before work: $251k", "price: $200k", "price: $200k, assignment fee: $8k").Replace(twoOptions)))
	require.NotContains(t, codesIn(found), "as-is-apart", "what is paid has the assignment fee in it")
}

// What one option of a room adds is doubted over half of the price of $200k.
func TestAnOptionOfARoomThatAddsHalfThePrice(t *testing.T) {
	for adds, want := range map[string]bool{"$101k": true, "$100k": false} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(twoOptions, "gut: {work", "gut: {adds: "+adds+", work", 1)))
		require.Equal(t, want, slices.Contains(codesIn(found), "adds-high"), "%s: %v", adds, found)
	}
	house := strings.Replace(twoOptions, "rooms:\n", "whole house: {options: {fresh: {adds: $110k, work: {final cleaning: hired}}}}\nrooms:\n", 1)
	_, found := deal.Read("den.yaml", []byte(house))
	require.False(t, found.HasErrors(), "%v", found)
	require.NotContains(t, codesIn(found), "adds-high")
}
