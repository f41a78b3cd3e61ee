package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Each line of her notes is a paragraph of its own, and no paragraph is higher than a row can
// be; no word is lost.
func TestLongNotesAreParted(t *testing.T) {
	require.Equal(t, []string{"- well: 1994", "- stairs", "mornings only"}, paragraphs("- well: 1994\n- stairs\n\n  mornings only\n"))
	long := strings.Repeat("ask the county for the log of the well; ", 900)
	parts := paragraphs(long)
	require.Equal(t, strings.Fields(long), strings.Fields(strings.Join(parts, " ")))
	require.Len(t, paragraphs(strings.Repeat("x", 4000)), 3, "a word without end")
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{})
	g := b.page(&grid{name: "x", widths: []float64{34, 66}})
	g.told(1, "notes", parts)
	for row, high := range g.high {
		require.Less(t, high, 409.0, row)
	}
}

// No formula tells a caution, so wherever cautions stand their head says what they are by.
func TestCautionsAreByTheFileAsItStood(t *testing.T) {
	for _, whom := range []Reader{Owner, Lender} {
		b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{For: whom})
		heads := 0
		for _, name := range []string{"The deal", "Notes"} {
			said := strings.Join(texts(sheetOf(b, name)), "\n")
			heads += strings.Count(said, "Be careful, by the deal file as it stood")
			require.NotContains(t, said, "Be careful;", name)
		}
		require.Equal(t, map[Reader]int{Owner: 2, Lender: 1}[whom], heads)
	}
}

// A lender is not told to ask a lender, nor what to do before own labor is priced; the cautions
// themselves stand in both.
func TestCautionsForALender(t *testing.T) {
	told := map[bool]int{}
	for _, path := range []string{"juniper-lane", "walnut-row", "salt-creek", "larkspur-way", "orchard-street"} {
		for _, r := range []Reader{Owner, Lender} {
			b := bookOf(t, "../../scenarios/"+path+".yaml", Options{For: r})
			all := strings.Join(texts(sheetOf(b, "Notes")), "\n")
			told[r == Lender] += strings.Count(all, "Ask a lender") + strings.Count(all, "before pricing own labor")
			for _, c := range b.answer.Cautions {
				require.True(t, c.ID == "tax" || strings.Contains(all, c.Title), c.Title)
			}
		}
	}
	require.Positive(t, told[false])
	require.Zero(t, told[true])
}

// Of a deal without a loan a lender is told so, and of no loan's figures.
func TestALendersPageOfACashDeal(t *testing.T) {
	for path, loans := range map[string]bool{"cedar-court": false, "juniper-lane": true} {
		said := strings.Join(texts(sheetOf(bookOf(t, "../../scenarios/"+path+".yaml", Options{For: Lender}), "The deal")), "\n")
		for _, words := range []string{"The loans asked for", "The loans as a share", "How the loans are repaid"} {
			require.Equal(t, loans, strings.Contains(said, words), "%s: %s", path, words)
		}
		require.Equal(t, !loans, strings.Contains(said, "without a loan"), path)
	}
}
