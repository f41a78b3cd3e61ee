package deal_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/takeoff"
)

// Pieces follow the walls whatever way their lengths are written, and however much is
// bought for spoiled ones. By hand.
func TestStickPiecesFollowTheWalls(t *testing.T) {
	for _, c := range []struct {
		size, work string
		inches     []string
	}{
		{"12.33 ft x 10.41 ft", "baseboard: hired", []string{"124.92", "124.92", "147.96", "147.96"}},
		{"3.76 m x 3.17 m", "baseboard: hired", []string{"124.80", "124.80", "148.03", "148.03"}},
		{"14' x 11', closets: 6' x 2', doors: [2'6\" x 6'8\", 5' x 6'8\"]", "baseboard: hired", // all doors are in the room's walls
			[]string{"3.00", "3.00", "24.00", "24.00", "36.00", "72.00", "72.00", "132.00", "168.00", "168.00"}},
		{"4' x 3', closets: 6' x 2', doors: 5 of 2'8\" x 6'8\"", "baseboard: hired", // 160 in, and the room has 168
			[]string{"2.00", "2.00", "2.00", "2.00", "24.00", "24.00", "72.00", "72.00"}},
		{"14' x 11'", "crown: hired", []string{"30.00", "132.00", "132.00", "168.00", "168.00"}}, // 5% of 50 ft for spoiled copes
		{"14' x 11'", "baseboard: {by: hired, part: 50%}", []string{"132.00", "168.00"}},
		{"14' x 11'", "baseboard: {by: hired, count: 20 ft}", []string{"48.00", "192.00"}},
		{"14' x 11', doors: 1", "door casing: hired", []string{"41.40", "78.00", "84.00", "84.00", "84.00", "84.00"}},                                    // 34.5 ft for each, and 10%
		{"14' x 11', doors: 3", "door casing: hired", slices.Concat([]string{"40.20", "78.00", "78.00", "78.00"}, slices.Repeat([]string{"84.00"}, 13))}, // 124.2 in to spare: 84 and the rest
	} {
		d := readDeal(t, walked+"\nrooms: {den: {size: "+c.size+", work: {"+c.work+"}}}\n")
		var got []takeoff.Piece
		for _, s := range d.Cuts[0].Plan.Sticks {
			got = append(got, s.Cuts...)
		}
		slices.SortFunc(got, func(a, b takeoff.Piece) int { return int(a.Length - b.Length) })
		var lengths []string
		for _, p := range got {
			lengths = append(lengths, fmt.Sprintf("%.2f", float64(p.Length)/takeoff.PerInch))
		}
		require.Equal(t, c.inches, lengths, c)
	}
}

// What renews broken pieces of a base that is taken off and set back is no wall's: a tenth of
// 50 ft, by hand, all of it to spare. A base of its own is a wall's.
func TestPiecesThatRenewBrokenOnesAreSpare(t *testing.T) {
	for work, want := range map[string][]string{
		"base off and on: hired":                     {"den (spare) 60.00"},
		"base off and on: {by: hired, count: 20 ft}": {"den (spare) 24.00"},
		"baseboard: {by: hired, count: 10 ft}":       {"den 120.00"},
	} {
		d := readDeal(t, walked+"\nrooms: {den: {size: 14' x 11', work: {"+work+"}}}\n")
		var got []string
		for _, s := range d.Cuts[0].Plan.Sticks {
			for _, p := range s.Cuts {
				got = append(got, fmt.Sprintf("%s %.2f", p.ID, float64(p.Length)/takeoff.PerInch))
			}
		}
		require.Equal(t, want, got, work)
	}
}

// What is left of sticks is what the cut list leaves: saw cuts and corners are gone.
func TestWhatIsLeftOfSticksIsWhatTheCutListLeaves(t *testing.T) {
	d := readDeal(t, walked+"rooms: {den: {size: 10' x 12', doors: 2'8\" x 6'8\", windows: 2 of 3' x 5', work: {casing: hired, baseboard: hired}}}\n")
	v, err := exact.Known(d.Known)
	require.NoError(t, err)
	require.NotEmpty(t, d.Cuts)
	for _, list := range d.Cuts {
		var left int64
		for _, s := range list.Plan.Sticks {
			left += s.Offcut
		}
		c := d.Model.Find(list.Product, "left_over")
		require.NoError(t, v.Work(c))
		require.InDelta(t, float64(left)/float64(12*takeoff.PerInch), v.Of(c).InexactFloat64(), 0.01, list.Product.Label)
	}
}
