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
		{"seen: {wiring: bad}\nwhole house: {work: {old wiring made safe: hired}}\n", false},
		{"seen: {sewer line: bad}\nwhole house: {work: {sewer spot repair: hired}}\n", false},
	} {
		got := doubted(t, c.keys)
		require.Equal(t, c.doubts, slices.Contains(got, "bad-not-planned"), c.keys)
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
