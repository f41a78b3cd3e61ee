package deal_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Hours far under the price book's are doubted as those far over it are, from a couple of hours on;
// hours that are right for each unit are told how that is written.
func TestHoursFarFromTheBookAreDoubtedBothWays(t *testing.T) {
	for work, says := range map[string]string{
		"tile floor: {by: own hands, count: 50 sq ft, hours: 0.12}":           "write   hours: 0.12 per sq ft   if",
		"tile floor: {by: own hands, count: 50 sq ft, hours: 0.12 per sq ft}": "-",
		"tile floor: {by: own hands, count: 50 sq ft, hours: 3}":              "-",
		"tile floor: {by: own hands, count: 50 sq ft, hours: 0.9}":            "check it",
		"tile floor: {by: own hands, count: 50 sq ft, hours: 60}":             "check it",
		"tile floor: {by: own hands, count: 4 sq ft, hours: 0.12}":            "-", // next to nothing either way
		"paint walls: {by: own hands, hours: 0.01}":                           "write   hours: 0.01 per sq ft and coat   if",
	} {
		_, found := deal.Read("den.yaml", []byte(strings.Replace(den, "paint walls: hired", work, 1)))
		require.False(t, found.HasErrors(), "%s: %v", work, found)
		i := slices.Index(codesIn(found), "hours-far")
		if says == "-" {
			require.Negative(t, i, "%s: %v", work, found)
			continue
		}
		require.GreaterOrEqual(t, i, 0, work)
		require.Contains(t, found[i].Hint, says, work)
	}
}

// Own hours a week that may be those of a day are doubted where they let the own work run on for over
// a year; not those of few hours for little work, nor where a renovation is stated.
func TestHoursOfADayAreNotThoseOfAWeek(t *testing.T) {
	for _, c := range []struct {
		week, hours, time string
		doubted           bool
	}{
		{"8", "300", "", true},
		{"8", "20", "", false},
		{"10", "900", "", false},
		{"40", "300", "", false},
		{"8", "300", ", renovation: 4 months", false}, // which says how many they are in a week
	} {
		text := strings.Replace(walked, "marketing: 5 weeks", "marketing: 5 weeks"+c.time, 1) + "labour: {own hours a week: " + c.week + "}\nrooms: {den: {size: 12' x 10', work: {paint walls: {by: own hands, hours: " + c.hours + "}}}}\n"
		_, found := deal.Read("den.yaml", []byte(text))
		require.False(t, found.HasErrors(), "%v", found)
		require.Equal(t, c.doubted, slices.Contains(codesIn(found), "own-hours-few"), "%v: %v", c, found)
	}
}
