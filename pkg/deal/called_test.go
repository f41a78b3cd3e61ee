package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
)

// A water heater brings bonding, which a trade does, and alarms, which its own hands do
// and of which there are none without bedrooms. Both bring a permit for wiring: it comes
// for the bonding, from the trade, and with a bedroom by own hands for both.
func TestWorkOfNothingCallsForNothing(t *testing.T) {
	permit := func(rooms string) (done, who string) {
		d := readDeal(t, walked+rooms+"whole house: {work: {water heater gas: own hands}}\n")
		v, err := exact.Evaluate(d.Model)
		require.NoError(t, err)
		for m, w := range d.Work {
			if w.Item.Name == "electrical permit" {
				require.Empty(t, done, "there are two")
				done, who = v.Of(d.Model.Find(m, "quantity")).String(), m.Given.Of("who").Choice
			}
		}
		return done, who
	}
	done, who := permit("")
	require.Equal(t, []string{"1", "hired"}, []string{done, who})
	done, who = permit("rooms: {bedroom: {size: 12' x 10'}}\n")
	require.Equal(t, []string{"1", "own"}, []string{done, who})
}
