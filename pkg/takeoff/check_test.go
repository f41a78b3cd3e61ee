package takeoff_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/takeoff"
)

func TestRefusals(t *testing.T) {
	one := []takeoff.Piece{{Length: 10, ID: "hall"}}
	stock := []takeoff.Stock{{Length: 20, Price: 3}}
	for _, tt := range []struct {
		pieces []takeoff.Piece
		stock  []takeoff.Stock
		kerf   int64
		want   string
	}{
		{one, nil, 0, "no lengths of stock to cut from"},
		{one, stock, -1, "a kerf is from 0 to 1000000000 units"},
		{one, stock, 1 << 62, "a kerf is from 0 to 1000000000 units"},
		{[]takeoff.Piece{{Length: 21, ID: "den"}, {Length: 20}, {Length: 0, ID: "bath"}}, stock, 1,
			`piece 0 "den" has length 21, over the longest stock of 20; split it first` + "\n" +
				`piece 2 "bath" has length 0; want 1 to 1000000000`},
		{one, append(stock, takeoff.Stock{Length: 0, Price: 1}), 0, "stock 1 has length 0; want 1 to 1000000000"},
		{one, append(stock, takeoff.Stock{Length: 8, Price: 0}), 0, "stock 1 has price 0; want 1 to 100000000 cents"},
		{make([]takeoff.Piece, 5001), stock, 0, "a cut list takes at most 5000 pieces and 32 lengths of stock"},
		{one, make([]takeoff.Stock, 33), 0, "a cut list takes at most 5000 pieces and 32 lengths of stock"},
	} {
		_, err := takeoff.CutList(tt.pieces, tt.stock, tt.kerf)
		require.EqualError(t, err, tt.want)
	}
}

func TestATooLongPieceIsPointedAt(t *testing.T) {
	_, err := takeoff.CutList(inches(90, 200, 40), byLength(96, 192), eighth)
	var e *takeoff.InputError
	require.ErrorAs(t, err, &e)
	require.Equal(t, 1, e.Piece)
	require.Equal(t, int64(192*takeoff.PerInch), e.Longest)
}

func TestNothingToCut(t *testing.T) {
	p, err := takeoff.CutList(nil, nil, 0)
	require.NoError(t, err)
	require.Empty(t, p.Sticks)
	require.True(t, p.Proved())
}

// Of equal prices the fewest sticks count, then the least waste. By hand.
func TestTies(t *testing.T) {
	// Two of 96 in or one of 192 in, at one price.
	p := plan(t, inches(60, 60), byLength(96, 192), 0)
	require.Len(t, p.Sticks, 1)
	// Two sticks at one price each way: 96 in is enough for either piece.
	p = plan(t, inches(90, 90), []takeoff.Stock{{Length: 120 * takeoff.PerInch, Price: 5}, {Length: 96 * takeoff.PerInch, Price: 5}}, 0)
	require.Equal(t, int64(12*takeoff.PerInch), p.Waste)
}

// A piece of the very length of a stick takes all of it, kerf or not; with a kerf and
// less than that over, the saw eats the rest. By hand.
func TestKerfAtTheEnd(t *testing.T) {
	whole := plan(t, []takeoff.Piece{{Length: 96}}, []takeoff.Stock{{Length: 96, Price: 1}}, 3)
	require.Equal(t, int64(0), whole.Sticks[0].Offcut)
	require.Equal(t, int64(0), whole.Waste)
	two := plan(t, []takeoff.Piece{{Length: 46}, {Length: 46}}, []takeoff.Stock{{Length: 97, Price: 1}}, 3)
	require.Len(t, two.Sticks, 1)
	require.Equal(t, int64(0), two.Sticks[0].Offcut) // 97 - 46 - 3 - 46 = 2, under a kerf
	require.Equal(t, int64(5), two.Waste)
}
