package caution

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Counts by hand from the calendar; the second row is the published real-estate
// office example beside FHA-1, which says 127 where subtraction gives 126.
func TestDaysBetween(t *testing.T) {
	for _, c := range []struct {
		from, to string
		days     int
	}{
		{"2026-01-15", "2026-04-15", 90},
		{"2003-01-17", "2003-05-23", 126},
		{"2024-02-28", "2024-03-01", 2},
		{"2026-01-15", "2026-01-15", 0},
		{"2026-01-15", "2026-01-14", -1},
	} {
		require.Equal(t, c.days, daysBetween(date(c.from), date(c.to)), "%s to %s", c.from, c.to)
	}
}

// A clock hour or a zone with daylight saving does not move the count.
func TestDaysBetweenReadsTheCalendarDayOnly(t *testing.T) {
	east := time.FixedZone("east", 10*60*60)
	west := time.FixedZone("west", -9*60*60)
	from := time.Date(2026, 1, 15, 23, 59, 0, 0, west)
	to := time.Date(2026, 4, 15, 0, 1, 0, 0, east)
	require.Equal(t, 90, daysBetween(from, to)) // FHA-1, first test
}

func TestFHAWindowNearEdge(t *testing.T) {
	for days, want := range map[int]bool{88: false, 89: false, 90: true, 91: true, 92: false, 179: false, 180: true, 181: true, 182: false} {
		_, near := FHAWindow(days)
		require.Equal(t, want, near, "day %d", days)
	}
}

func TestTradeNames(t *testing.T) {
	for name, want := range map[string][]kind{
		"Electrical":            {electrical},
		"rough-in  PLUMBING":    {plumbing},
		"gas line":              {gas},
		"re-roof":               {roof},
		"hvac":                  {hvac},
		"structure":             {structure},
		"tear-off":              {demolition},
		"window & insulation":   {windows, insulation},
		"flooring":              {flooring},
		"demolition":            {demolition},
		"paint":                 nil,
		"gutters":               nil,
		"gasket":                nil,
		"carpentry":             nil,
		"":                      nil,
		"plumbing, plumbing/el": {plumbing},
	} {
		require.Equal(t, want, kindsOf([]string{name}), name)
	}
}

func TestTextsNameTheFacts(t *testing.T) {
	for _, c := range []struct {
		id, want string
		h        House
	}{
		{"lead-renovation", "Built in 1925: ", House{YearBuilt: 1925}},
		{"lead-renovation", "Year built unknown: ", House{}},
		{"fha-too-soon", "day 60 after the purchase: ", onDay(60, "1", "1")},
		{"fha-too-soon", "until day 91 (2026-04-16)", onDay(60, "1", "1")}, // FHA-1, second test
		{"fha-dates-unknown", "before day 91, counted from the purchase", House{}},
		{"hpml-second-appraisal", "more than 10% above", onDay(60, "100000", "150000")},
		{"hpml-second-appraisal", "more than 20% above", onDay(120, "100000", "150000")},
		{"permit-missing", "permits: electrical, gas and roof.", plan(1990, "roof", "gas", "electrical")},
		{"own-gas", "near gas: gas line and one more.", House{OwnGas: []string{"gas line", "range gas"}}},
		{"own-wiring", "on wiring: rewire.", House{OwnWiring: []string{"rewire"}}},
		{"own-structure", "loads: structure and 2 more.", House{OwnTrades: []string{"structure", "framing", "addition"}}},
		{"own-height", "height: shingle roof gable.", House{OwnHeight: []string{"shingle roof gable"}}},
		{"contingency-low", "Contingency 9.9% is under the customary 10% for a house of this age.",
			House{YearBuilt: 2000, ContingencyShare: dec("0.09999")}},
		{"contingency-missing", "20% is customary for a house of unknown age, utilities off.", House{UtilitiesOff: true}},
	} {
		require.Contains(t, textOf(t, c.h, c.id), c.want)
	}
}

func textOf(t *testing.T, h House, id string) string {
	t.Helper()
	for _, c := range For(h) {
		if c.ID == id {
			return c.Text
		}
	}
	require.Fail(t, "does not show: "+id)
	return ""
}

func TestSourcesSayHowTheyWereObtained(t *testing.T) {
	for id, want := range map[string]string{
		"due-diligence":   "trade habit (common practice, no source)",
		"lead-renovation": "EPA lead frequent question 23002-32412, RRP applicability to house flippers (read on a mirror)",
	} {
		list := For(House{})
		at := -1
		for i, c := range list {
			if c.ID == id {
				at = i
			}
		}
		require.NotEqual(t, -1, at, id)
		require.Contains(t, list[at].Source, want)
	}
}
