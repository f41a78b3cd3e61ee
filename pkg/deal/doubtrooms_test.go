package deal_test

import (
	"slices"
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
