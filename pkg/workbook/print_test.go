package workbook

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// With three loans the months lie on their side, and the chart stands below them on one page; below many
// months it begins a page of its own.
func TestCashKeepsItsChartWhole(t *testing.T) {
	for _, x := range []struct {
		n            int
		across, long bool
	}{{1, false, false}, {3, true, false}, {3, true, true}} {
		n, across := x.n, x.across
		text := sentinels[:strings.Index(sentinels, "selling:")]
		for i := 1; i < n; i++ {
			text += "  - {name: loan " + itoa(i) + ", fixed amount: $500, rate: 9%}\n"
		}
		text += sentinels[strings.Index(sentinels, "selling:"):]
		if x.long {
			text = strings.Replace(text, "marketing: ", "standstill: 20 months, marketing: ", 1)
		}
		b, err := made(answered(t, text), Options{For: Lender})
		require.NoError(t, err)
		require.NoError(t, b.stream())
		g := sheetOf(b, "Cash by month")
		require.Equal(t, across, g.across(), "%d loans: %v", n, g.widths)
		require.Len(t, g.breaks, map[bool]int{true: 1}[x.long], "%d loans", n)
		require.Equal(t, across && !x.long, g.once, "%d loans", n)
	}
}

// A head that fills its column in one line runs into the one before it: its lines leave room.
func TestHeadsOfCashAreApart(t *testing.T) {
	for _, whom := range []Reader{Owner, Lender} {
		b, err := made(answered(t, twoLoans), Options{For: whom})
		require.NoError(t, err)
		g := sheetOf(b, "Cash by month")
		for i, c := range g.rows[g.heads-1] {
			if head, is := c.value.(string); is && strings.HasSuffix(head, "so far") {
				for _, line := range strings.Split(head, "\n") {
					n, width := float64(len(line))*c.look.wider(), g.width(i+1)
					require.False(t, n <= width+4 && n > width-0.5, "%q in a column %g wide", line, width) // a longer one is wrapped
				}
			}
		}
	}
}

// The heads of a table are repeated in print where they are those of all rows of the sheet;
// a sheet of several tables repeats none, and every table names its own.
func TestHeadsAreRepeatedOverTheirOwnRows(t *testing.T) {
	seen := map[bool]int{}
	for _, name := range []string{"walnut-row", "larkspur-way", "juniper-lane"} {
		b, err := made(scenario(t, name), Options{})
		require.NoError(t, err)
		for _, s := range shelves {
			g := sheetOf(b, s.sheet)
			if g == nil {
				continue
			}
			tables := 0
			for _, row := range g.rows {
				if len(row) > 0 && row[0].look.role == heading {
					tables++
				}
			}
			require.Positive(t, tables, g.name)
			require.Equal(t, tables == 1, g.heads > 0, "%s: %s", name, g.name)
			seen[tables == 1]++
		}
	}
	require.Positive(t, seen[true])
	require.Positive(t, seen[false])
}

// What the lines of loans mean is wrapped within the page, a step away from the figures.
func TestMeaningsOfLoansAreWrapped(t *testing.T) {
	b, err := made(answered(t, twoLoans), Options{For: Lender})
	require.NoError(t, err)
	g, seen := sheetOf(b, "Loans"), 0
	for _, row := range g.rows[1:] {
		if len(row) == 5 {
			require.True(t, row[4].look.wrap && row[4].look.off, row[4].value)
			seen++
		}
	}
	require.Greater(t, seen, 20)
}

// A name of hundreds of letters is no wider than a page: the file can be written.
func TestLongNamesAreWritten(t *testing.T) {
	long := strings.Repeat("x", 240)
	for _, whom := range []Reader{Owner, Lender} {
		var w bytes.Buffer
		require.NoError(t, Write(&w, answered(t, strings.Replace(twoLoans, "name: first loan", "name: "+long, 1)), Options{For: whom}))
	}
}

// Where an input is from is told by the name of its file, without the folders of whoever
// wrote the workbook.
func TestFoldersAreNotInTheBook(t *testing.T) {
	path, err := filepath.Abs("../../scenarios/juniper-lane.yaml")
	require.NoError(t, err)
	for _, whom := range []Reader{Owner, Lender} {
		b := bookOf(t, path, Options{For: whom})
		all := strings.Join(texts(b.inputs), "\n")
		require.Contains(t, all, "juniper-lane.yaml:")
		for _, g := range b.all() {
			require.NotContains(t, strings.Join(texts(g), "\n"), filepath.Dir(path), g.name)
		}
	}
}

// The first page says which sheets are for paper.
func TestFirstPageSaysWhatToPrint(t *testing.T) {
	for _, whom := range []Reader{Owner, Lender} {
		b, err := made(scenario(t, "salt-creek"), Options{For: whom})
		require.NoError(t, err)
		require.Contains(t, strings.Join(texts(b.pages[0]), "\n"), "To print, choose the sheets as far as Notes")
		require.Equal(t, "Notes", b.pages[len(b.pages)-1].name)
		require.Equal(t, "Inputs", b.grids[0].name)
	}
}

// A first page of many loans is read on paper: it runs on to another page, which begins with a heading, where
// its letters would be under 8 points on one, and each page holds its rows at the scale of its width.
func TestFirstPageIsRead(t *testing.T) {
	for n, pages := range map[int]int{0: 1, 3: 2} {
		at := strings.Index(sentinels, "selling:")
		text := sentinels[:at]
		for i := range n {
			text += "  - {name: loan " + itoa(i) + ", fixed amount: $500, rate: 9%}\n"
		}
		for _, whom := range []Reader{Owner, Lender} {
			b, err := made(answered(t, text+sentinels[at:]), Options{For: whom})
			require.NoError(t, err)
			require.NoError(t, b.stream())
			g, tall, page := b.pages[0], 0.0, 1
			scale := min(1, upright/g.full())
			for row := 1; row <= len(g.rows); row++ {
				if slices.Contains(g.breaks, row) {
					require.Equal(t, heading, g.rows[row-1][0].look.role)
					tall, page = 0, page+1
				}
				tall += g.high[row]
				if len(g.breaks) > 0 {
					require.Less(t, tall*scale, paperOf["portrait"].tall, "page %d", page)
				}
			}
			require.GreaterOrEqual(t, page, pages)
			layout, err := b.file.GetPageLayout(g.name)
			require.NoError(t, err)
			require.Equal(t, page == 1, *layout.FitToHeight == 1)
			if page == 1 {
				require.GreaterOrEqual(t, paperOf["portrait"].tall/tall, readable)
			}
		}
	}
}
