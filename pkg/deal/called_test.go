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
	require.Equal(t, []string{"1", ""}, []string{done, who}) // hired, as where nothing is said
	done, who = permit("rooms: {bedroom: {size: 12' x 10'}}\n")
	require.Equal(t, []string{"1", "own"}, []string{done, who})
}

// A den without doors has none to undercut: what own hands would do to them does not make
// the supplies that hired work brings their own, nor bring the certificate. By hand: za of
// the book costs $10 and brings zc, $7 a tread, of which there are none, and zb, $100, unless
// zc is done.
func TestWorkOfNothingDecidesNothing(t *testing.T) {
	done := func(text string) (out []string) {
		open := func(string) ([]byte, error) {
			return []byte(`items:
  za: {trade: z, measure: one, hours: 1 each, hired: $10 each, materials: none, brings: [zb unless zc, zc], source: x}
  zb: {trade: z, measure: one, hours: 1 each, hired: $100 each, materials: none, brings: none, source: x}
  zc: {trade: z, measure: stair treads, hours: 1 each, hired: $7 each, materials: none, brings: none, source: x}
`), nil
		}
		d, found := deal.ReadWith(deal.Options{Open: open}, "house.yaml", []byte(walked+"own book: mine.yaml\nhouse: {year built: 1960}\n"+text))
		require.NotNil(t, d, found)
		for m, w := range d.Work {
			if n := w.Item.Name; strings.HasPrefix(n, "z") || strings.HasPrefix(n, "lead") {
				out = append(out, strings.TrimSpace(n+" "+m.Given.Of("who").Choice+" "+w.By))
			}
		}
		slices.Sort(out)
		return out
	}
	den := "rooms: {den: {size: 20' x 12'%s, options: {a: {work: {resilient plank floor: own hands, strip base: hired}, without: [base off and on]}}}}\n"
	require.Equal(t, []string{"lead-safe supplies hired strip base"}, done(fmt.Sprintf(den, "")))
	require.Equal(t, []string{"lead-safe firm certificate  lead-safe supplies", "lead-safe supplies own undercut doors"}, done(fmt.Sprintf(den, ", doors: 1")))
	za := "rooms: {den: {size: 20' x 12'%s, work: {za: hired}}}\n"
	require.Equal(t, []string{"za hired", "zb hired za"}, done(fmt.Sprintf(za, "")))
	require.Equal(t, []string{"za hired", "zc hired za"}, done(fmt.Sprintf(za, ", stairs: {treads: 4}")))
}
