package answer_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
)

// Gas, what carries the house and heights by own hands have cautions of their own; hired,
// or of a ceiling, they have none.
func TestOwnHandsOnWhatKillsAreCautioned(t *testing.T) {
	for work, want := range map[string][]string{
		"rooms: {den: {size: 10' x 12', work: {gas line: own hands}}}":                                  {"own-gas"},
		"rooms: {den: {size: 10' x 12', work: {gas line: hired}}}":                                      nil,
		"rooms: {den: {size: 10' x 12', work: {bearing wall opening: own hands}}}":                      {"own-structure"},
		"rooms: {den: {size: 10' x 12', work: {subfloor repair: own hands, paint ceiling: own hands}}}": nil,
		"outside: {roof: [{size: 38' x 26', pitch: 6/12}], work: {shingle roof gable: own hands}}":      {"own-height"},
		"whole house: {work: {panel 200 amp: own hands}}":                                               {"own-wiring"},
		"whole house: {work: {panel 200 amp: hired}}":                                                   nil,
		"outside: {roof: [{size: 38' x 26', pitch: 6/12}], work: {shingle roof gable: hired}}":          nil,
		"renovation: {lines: [{trade: gas, work: new line, materials: $90, own hours: 8}]}":             {"own-gas"},
		"renovation: {lines: [{trade: gas, work: new line, amount: $900}]}":                             nil,
	} {
		d, found := deal.Read("a.yaml", []byte("purchase: {price: $160k}\nvalue: {after-repair value: $260k}\ntime: {renovation: 2 months, marketing: 5 weeks, escrow: 1 month}\n"+work+"\n"))
		require.False(t, found.HasErrors(), "%v", found)
		a, err := answer.Worked(d, nil)
		require.NoError(t, err)
		var got []string
		for _, c := range a.Cautions {
			if slices.Contains([]string{"own-gas", "own-wiring", "own-structure", "own-height"}, c.ID) {
				got = append(got, c.ID)
			}
		}
		require.Equal(t, want, got, work)
	}
}
