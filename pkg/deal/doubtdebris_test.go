package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The debris of quoted work is told where it takes containers besides, until the file says who takes it
// away; not where it is little, where containers cost nothing, or where no quote stands for all of it.
func TestDebrisBesideAQuoteIsTold(t *testing.T) {
	told := func(size, work, more string) int {
		return len(toldOf(t, "debris-besides", "  den: {size: 12' x 10', work: {paint walls: hired}}\n", more+"outside: {driveway: "+size+", work: {driveway concrete: "+work+"}}\n"))
	}
	for work, want := range map[string]int{
		"{quote: $9800}": 1, "$9800": 1, "{quote: $9800, hauls: yes}": 0, "{quote: $9800, hauls: no}": 0,
		"{quote: $5800, covers: labour}": 0, "hired": 0,
	} {
		require.Equal(t, want, told("16' x 34'", work, ""), work)
	}
	require.Zero(t, told("16' x 4'", "{quote: $1900}", ""), "64 sq ft weigh 2,816 lb, less than half of what a container may")
	require.Zero(t, told("16' x 34'", "{quote: $9800}", "local prices: {container: {costs: $0}}\n"))
}

// 544 sq ft at 44 lb are 23,936 lb, 4 containers of 6,000 lb at $540; hauled, there are none.
func TestHauledDebrisTakesNoContainer(t *testing.T) {
	for hauls, want := range map[string]string{"": "2160", ", hauls: no": "2160", ", hauls: yes": "0"} {
		d := readDeal(t, minimal+"renovation: {contingency: 20%}\noutside: {driveway: 16' x 34', work: {driveway concrete: {quote: $9800"+hauls+"}}}\n")
		require.Equal(t, want, worth(t, d, "disposal"), hauls)
	}
}

// What is taken away is the debris of the work itself, not that of what comes along. The house is invented.
func TestHaulingOfNothingIsDoubted(t *testing.T) {
	for work, want := range map[string]int{
		"shingle roof gable: {quote: $6200, covers: labour, hauls: yes}": 1, "shingle roof gable: {quote: $6200, covers: labour, hauls: no}": 0,
		"shingle roof gable: {quote: $9200, hauls: yes}": 0, "shingle roof gable: hired, roof tear-off: {by: hired, hauls: yes}": 0,
	} {
		require.Len(t, toldOf(t, "quote-detail", "  den: {size: 12' x 10', work: {paint walls: hired}}\n", "outside: {roof: [{size: 40' x 28', pitch: 6/12, overhang: 1'}], work: {"+work+"}}\n"), want, work)
	}
}
