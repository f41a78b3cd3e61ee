package comps

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestStrikeAndAdd(t *testing.T) {
	sales := town(300, 0.1, 3)
	s := townSubject()
	v := valued(t, sales, s, Wish{Count: 5})
	require.Len(t, v.Rows, 5)
	struck := v.Rows[0].Line
	far := Sold{House: s.House, Line: 9999, Date: townDay.AddDays(-10), Price: usd(180_000), Terms: "sheriff sale"}
	far.Place.X = 30_000
	sales = append(sales, far)
	require.NotContains(t, linesOf(valued(t, sales, s, Wish{})), 9999, "doubtful sales are set aside")
	l := listOf(sales)
	require.Len(t, l.Before(townDay).Aside(), 1)

	v = valued(t, sales, s, Wish{Count: 5, Strike: []int{struck}, Add: []int{9999}})
	require.Len(t, v.Rows, 6, "16 miles off, it would weigh next to nothing")
	require.NotContains(t, linesOf(v), struck)
	require.Contains(t, linesOf(v), 9999)
	for _, r := range v.Rows {
		if r.Line == 9999 {
			require.Contains(t, r.Why, "asked for")
			require.Contains(t, r.Doubts, "arm's length")
		}
	}
}

// All sales asked for are used, in place of the least alike: the number grows where there are
// more of them, and for those that would weigh next to nothing.
func TestAllThatIsAddedIsUsed(t *testing.T) {
	sales := town(300, 0.1, 3)
	s := townSubject()
	near := listOf(sales).Before(townDay).Choose(s, Wish{Count: 12}).Comps
	var alike, unlike []int
	for _, k := range near[5:8] {
		alike = append(alike, k.Line)
	}
	last := listOf(sales).Before(townDay).Choose(s, Wish{Count: 300}).Comps
	for _, k := range last[len(last)-3:] {
		unlike = append(unlike, k.Line)
	}
	lines := linesOf(valued(t, sales, s, Wish{Count: 5, Add: alike}))
	require.Len(t, lines, 5)
	require.Subset(t, lines, alike)
	require.Subset(t, lines, []int{near[0].Line, near[1].Line})
	lines = linesOf(valued(t, sales, s, Wish{Count: 2, Add: alike}))
	require.ElementsMatch(t, alike, lines)
	lines = linesOf(valued(t, sales, s, Wish{Count: 5, Add: unlike}))
	require.Len(t, lines, 8)
	require.Subset(t, lines, unlike)
}

// An old sale that is kept is chosen by its likeness, as any other.
func TestKeptSalesTakeNoPlaceOfTheirOwn(t *testing.T) {
	s := townSubject()
	near, old := town(3, 0.05, 2), ago(town(2, 0.05, 1), 7*365, 10_000)
	both := append(append([]Sold{}, near...), old...)
	keep := Wish{Count: 3, Keep: linesOf(valued(t, old, s, Wish{}))}
	require.ElementsMatch(t, linesOf(valued(t, near, s, Wish{})), linesOf(valued(t, both, s, keep)))
	keep.Count = 5
	require.Len(t, valued(t, both, s, keep).Rows, 5)
}

func linesOf(v *Value) (out []int) {
	for _, r := range v.Rows {
		out = append(out, r.Line)
	}
	return out
}
