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
