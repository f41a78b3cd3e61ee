package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// tellsIn counts how often a code is told of the starter file with some of its text changed, by pairs of old
// and new.
func tellsIn(t *testing.T, code string, pairs ...string) (n int) {
	t.Helper()
	text := deal.Starter("a")
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, text, pairs[i])
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	_, found := deal.Read("a.yaml", []byte(text))
	require.False(t, found.HasErrors(), "%v: %v", pairs, found)
	for _, c := range codesIn(found) {
		if c == code {
			n++
		}
	}
	return n
}

// A nought too many in a line is told by its trade; dear houses, several trades in one line, what lasts, and
// the whole of the work are let stand. All figures are invented; the house is to sell for $359,000.
func TestLinesWithANoughtTooMany(t *testing.T) {
	const shingles = "trade: roof, work: new shingles, amount: $9800"
	for line, want := range map[string]int{
		"trade: roof, work: new shingles, amount: $98000":                               1,
		"trade: roof, materials: $41k, labour: $57k":                                    1,
		"trade: kitchen, work: cabinets and tops, materials: $114k, labour: $3.2k":      1,
		"trade: kitchen, work: cabinets and tops, materials: $11.4k, labour: $32k":      1,
		"trade: kitchen, work: full remodel, amount: $114k":                             1,
		"trade: demolition, work: kitchen and baths, amount: $64k":                      1,
		"trade: demolition, work: kitchen and baths, amount: $44k":                      0,
		"trade: plumbing, work: 'kitchen, bath and new windows', amount: $90k":          0,
		"trade: electrical, work: new panel, amount: $43k":                              1,
		"trade: plumbing, work: water heater, amount: $14.5k":                           1,
		"trade: kitchen, work: cabinets and stone counter, amount: $98k":                1,
		"trade: tile, work: bath and kitchen, materials: $16400, own hours: 60":         1,
		"trade: tile, work: bath and kitchen, materials: $6400, own hours: 60":          0,
		"trade: paint, materials: $9000, own hours: 80":                                 1,
		"trade: paint, materials: $2900, own hours: 80":                                 0,
		"trade: gutters, amount: $19k":                                                  1,
		"trade: roof, work: shingles and gutters, amount: $98k":                         1,
		"trade: roof, work: shingles and gutters, amount: $41k":                         0,
		"trade: paint, work: inside, amount: $94k":                                      1,
		"work: new kitchen cabinets, amount: $110k":                                     1,
		"trade: cleaning, work: final, amount: $12,500":                                 1,
		"trade: kitchen, work: all of the work, amount: $114k":                          0, // as the hint says
		"trade: general contractor, work: whole renovation, amount: $140k":              0,
		"trade: all, work: everything, amount: $180k":                                   0,
		"trade: renovation, amount: $160k":                                              0,
		"work: whole house by one firm, amount: $140k":                                  0,
		"trade: contractor, work: kitchen and baths, amount: $120k":                     0,
		"trade: carpentry, work: second floor addition, amount: $150k":                  0,
		"trade: foundation, work: underpinning, amount: $95k":                           0,
		"trade: roof, work: slate, amount: $88k":                                        0,
		"trade: roof, work: 'shingles, siding and windows', amount: $140k":              0,
		"trade: bath, work: three baths, amount: $72k":                                  0,
		"trade: electrical, work: rewire and panel, amount: $38k":                       0,
		"trade: kitchen, work: opened to the dining room, materials: $9k, labour: $38k": 0,
		"trade: windows, work: 22 sash restored, materials: $2k, labour: $30k":          0,
		"trade: paint, work: inside and out, materials: $6k, labour: $34k":              0,
		"trade: cleaning, work: trash-out of a hoard, amount: $14k":                     0,
	} {
		require.Equal(t, want, tellsIn(t, "work-large", shingles, line), line)
	}
	const dearer = "trade: roof, work: new shingles, amount: $98000"
	require.Zero(t, tellsIn(t, "work-large", shingles, dearer, "$359k", "$990k"))
	require.Zero(t, tellsIn(t, "work-large", shingles, dearer, "units: 1", "units: 4"))
}

// So it is of what a renovation hires by the month, and of its cleaning.
func TestHiresWithANoughtTooMany(t *testing.T) {
	for line, want := range map[string]int{
		"dumpster: $4,800/month": 1, "dumpster: $57,600/year": 1, "dumpster: $14,000": 1, "portable toilet: $1,150/month": 1, "final cleaning: $12,500": 1,
		"dumpster: $1,400/month": 0, "dumpster: $6,800": 0, "dumpster permit: $90": 0, "portable toilet: $220/month": 0, "final cleaning: $1,400": 0, "trash-out and cleaning: $12,500": 0,
		"debris hauled by a crew: $11,000": 0, "office and toilets: $1,900/month": 0, "duct cleaning: $5,800": 0,
	} {
		require.Equal(t, want, tellsIn(t, "charge-high", "dumpster: $480/month", line), line)
	}
}
