package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// An option that adds over 15% of the price ($160k) and over five times what its work costs is told: a
// nought too many. Dear work may add as much, and cheap work little of the price.
func TestAnOptionThatAddsFarMoreThanItCosts(t *testing.T) {
	for option, want := range map[string][2]int{
		"adds: $40k, work: {paint walls: hired}":                            {1, 0},
		"adds: $40k, work: {paint walls: own hands}":                        {1, 0}, // what trades would cost counts
		"adds: $81k, work: {paint walls: hired}":                            {0, 1}, // over half of the price
		"adds: $23k, work: {paint walls: hired}":                            {0, 0},
		"adds: $60k, work: {paint walls: hired, vanity: {quote: $40k}}":     {0, 0},
		"adds: $40k, work: {paint walls: hired, vanity: {quote: $7,300}}":   {0, 0}, // with paint over $8k
		"adds: $0, work: {paint walls: hired}":                              {0, 0},
		"adds: $40k, work: {}":                                              {0, 0}, // told as having no work
		"adds: $40k, work: {paint walls: hired, vanity: {quote: \"$730\"}}": {1, 0},
	} {
		room := "  bath: {size: 12' x 13', fixed: {vanity: 3' x 2'}, options: {fresh: {" + option + "}}}\n"
		require.Len(t, toldOf(t, "adds-far", room, ""), want[0], option)
		require.Len(t, toldOf(t, "adds-high", room, ""), want[1], option)
	}
}
