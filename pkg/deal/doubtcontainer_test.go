package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A container for debris is doubted under holding as under general, once for both; what else stands in a yard
// is not, nor any where the rooms count none.
func TestAContainerIsNotHeldBesideThoseThatRoomsCount(t *testing.T) {
	const debris, none = "  den: {size: 12' x 13', work: {strip carpet: hired, paint walls: hired}}\n", "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for line, want := range map[string]int{
		"dumpster: $480/month": 1, "Roll-off container: $480/month": 1, "debris hauling: $300/month": 1, "dumpster: $1,180": 1,
		"storage container: $150/month": 0, "trash hauling: $60/month": 0, "recycling container: $20/month": 0, "dumpster permit: $75": 0, "dumpster: $0/month": 0,
	} {
		require.Len(t, toldOf(t, "containers-twice", debris, "holding: {"+line+"}\n"), want, line)
		require.Empty(t, toldOf(t, "containers-twice", none, "holding: {"+line+"}\n"), line)
	}
	both := toldOf(t, "containers-twice", debris, "renovation: {general: {dumpster: $480/month}}\nholding: {skip: $480/month}\n")
	require.Len(t, both, 1)
	require.Contains(t, both[0], `"dumpster", "skip" are beside`)
	require.Empty(t, toldOf(t, "containers-twice", debris, "local prices: {container: {costs: $0}}\nholding: {dumpster: $480/month}\n"))
}
