package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Work and materials that go once around the house are asked for where nobody says how long that is;
// not where a quote holds them, where they are left out or where they are counted.
func TestOnceAroundTheHouse(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	const told = "nothing is priced of "
	const trim, starter, board = "outside trim painted", "vinyl starter and channel", "fibre cement trim board"
	for outside, want := range map[string]string{
		"siding: 900 sq ft, work: {outside wall paint: hired}":                                                                  trim,
		"eaves: 80 ft, siding: 900 sq ft, work: {outside wall paint: hired, fascia: hired}":                                     trim,
		"siding: 900 sq ft, work: {outside wall paint: {quote: $4200, covers: labour}}":                                         trim,
		"work: {fibre cement siding: {by: hired, count: 900 sq ft}}":                                                            board + ", " + trim,
		"siding: 900 sq ft, work: {vinyl siding: hired}":                                                                        starter,
		"siding: 900 sq ft, around: 120 ft, work: {outside wall paint: hired}":                                                  "",
		"siding: 900 sq ft, work: {outside wall paint: hired}, without: [outside trim painted]":                                 "",
		"siding: 900 sq ft, work: {outside wall paint: hired, outside trim painted: {by: hired, count: 36 ft}}":                 "",
		"siding: 900 sq ft, work: {outside wall paint: {quote: $4200}}":                                                         "",
		"siding: 900 sq ft, work: {vinyl siding: {quote: $9200}}":                                                               "",
		"work: {wood siding repair: {by: hired, count: 60 sq ft}, pressure wash: {by: own hands, count: 900 sq ft}}":            "",
		"roof: 1400 sq ft, eaves: 140 ft, rakes: 0 ft, work: {shingle roof hip: hired}":                                         "",
		"roof: 1400 sq ft, eaves: 140 ft, work: {shingle roof hip: hired}":                                                      "drip edge at rakes",
		"roof: 1400 sq ft, work: {shingle roof gable: {quote: $7200}}, without: [rafter vents]":                                 "",
		"roof: [{size: 40' x 28', pitch: 6/12}], siding: 900 sq ft, around: 120 ft, work: {vinyl siding: hired, fascia: hired}": "",
	} {
		var all []string
		if want != "" {
			all = []string{told + want + ": what they are measured by is 0"}
		}
		require.Equal(t, all, toldOf(t, "edges-missing", den, "outside: {"+outside+"}\n"), outside)
	}
}
