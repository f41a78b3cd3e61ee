package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Siding and roofing written in squares for sq ft is doubted by what the way around, the levels
// or the living area say; what goes with them is not, nor a part of the work.
func TestSquaresWrittenAsFeetAreDoubted(t *testing.T) {
	const roof = ", wall height: 9 ft, roof: [{size: 40' x 28', pitch: 6/12}]"
	for _, c := range []struct{ house, outside, says string }{
		{"{levels: 1}", "around: 136 ft, siding: 12 sq ft", `siding is "12 sq ft", and the walls around, at 9 ft high, 1,224 sq ft; a square is 100 sq ft`},
		{"{levels: 2}", "around: 136 ft, siding: 240 sq ft", `siding is "240 sq ft", and the walls around, at 18 ft high, 2,448 sq ft; a square is 100 sq ft`},
		{"{levels: 1, living area: 1600 sq ft}", "siding: 14 sq ft", `siding is "14 sq ft", and the house has 1,600 sq ft on each level: around that, at 9 ft high, about 1,440 sq ft; a square is 100 sq ft`},
		{"{levels: 1, living area: 1600 sq ft}", "siding: 14,000 sq ft", `siding is "14,000 sq ft", and the house has 1,600 sq ft on each level: around that, at 9 ft high, about 1,440 sq ft`},
		{"{levels: 1, living area: 1600 sq ft}", "siding: 1,400 sq ft", ""},
		{"{levels: 1, living area: 1600 sq ft}", "siding: 14 squares", ""},
		{"{living area: 1600 sq ft}", "siding: 14 sq ft", ""}, // of how many levels nobody says
		{"{levels: 1}", "around: 136 ft" + roof + ", work: {vinyl siding: {by: hired, count: 12 sq ft}}", `vinyl siding: a count of 12 sq ft, and siding is 1,224 sq ft; a square is 100 sq ft`},
		{"{levels: 1}", "around: 136 ft" + roof + ", work: {shingle roof gable: {by: hired, count: 13 sq ft}}", `shingle roof gable: a count of 13 sq ft, and roof is 1,252 sq ft; a square is 100 sq ft`},
		{"{levels: 1}", "around: 136 ft" + roof + ", work: {vinyl siding: {by: hired, count: 400 sq ft}}", ""},
		{"{levels: 1}", "around: 136 ft" + roof + ", work: {wood siding repair: {by: hired, count: 3 sq ft}}", ""},
	} {
		_, found := deal.Read("house.yaml", []byte(strings.Replace(den, "rooms:\n", "house: "+c.house+"\noutside: {"+c.outside+"}\nrooms:\n", 1)))
		require.False(t, found.HasErrors(), "%v", found)
		var got []string
		for _, d := range found {
			if d.Code == "outside-size" {
				got = append(got, d.Message)
			}
		}
		require.Equal(t, c.says, strings.Join(got, "; "), c.outside)
	}
}
