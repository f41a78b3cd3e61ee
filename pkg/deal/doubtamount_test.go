package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Who quoted, or when, is told where no amount stands beside it, for nothing of it is used; not beside
// any amount, nor a word about who comes.
func TestAQuoteWithoutAnAmountIsTold(t *testing.T) {
	for detail, want := range map[string]int{
		"from: Fern Tile, dated: 2026-09-01": 1, "by: own hands, dated: 2026-09-01": 1, "by: hired, from: Fern Tile": 1,
		"quote: $900, from: Fern Tile": 0, "by: own hands, price: $31.20, from: Fern Tile": 0, "hired: $9 per sq ft, dated: 2026-09-01": 0,
		"by: own hands, allowance: $140, from: Fern Tile": 0, "by: hired, note: Fern Tile comes": 0,
	} {
		require.Len(t, toldOf(t, "amount-missing", "  den: {size: 12' x 10', work: {tile floor: {"+detail+"}}}\n", ""), want, detail)
	}
}
