package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What is given and leaves no debris comes to nothing however much of the house is listed; what
// the owner buys for it, or hauls, does not.
func TestWhatIsGivenNeedsNoMeasure(t *testing.T) {
	const house = "house: {living area: \"1,900 sq ft\"}\nrooms: {den: {size: 10' x 12', work: {paint walls: hired}}}\nwhole house: {work: {"
	for work, want := range map[string]int{
		"final cleaning: {quote: $0, note: gift}":                   0,
		"final cleaning: {quote: $0, covers: labour, note: a gift}": 1,
		"final cleaning: {quote: $220}":                             1,
		"final cleaning: hired":                                     1,
		"final cleaning: {quote: $0, note: gift}, rewire: hired":    1,
		"rewire: {quote: $0, note: gift}":                           1,
	} {
		require.Equal(t, want, told(t, "house-part-measured", house+work+"}}\n"), work)
	}
}
