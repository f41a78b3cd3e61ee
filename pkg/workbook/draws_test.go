package workbook

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand, for the roof of $9,650, of which $2,000 was drawn: $6,000 is asked for, but 70%
// is done, so 0.7 x 9,650 - 2,000 = $4,755 is approved; a tenth of it, $475.50, is kept;
// 9,650 - 2,000 - 4,755 = $2,895 is left to draw, and 0.3 x 9,650 = $2,895 to finish. With no
// cash proven, that and the lines of own work are more than is left to draw.
func TestDrawIsWorkedOut(t *testing.T) {
	b, err := made(scenario(t, "juniper-lane"), Options{For: Lender, Uncached: true})
	require.NoError(t, err)
	g := sheetOf(b, "Draws")
	row, cash, says := 0, 0, 0
	for i, r := range g.rows {
		if len(r) < drawWork {
			continue
		}
		switch s, _ := r[drawWork-1].value.(string); {
		case s == "roof: reroof":
			row = i + 1
		case strings.HasPrefix(s, "owner's cash as proven"):
			require.Contains(t, s, "a statement from after this draw is paid") // its net is in nothing else
			cash = i + 1
		case strings.HasPrefix(s, "Yes: "):
			says = i + 1
		}
	}
	set := func(row, col int, x float64) {
		c := g.rows[row-1][col-1]
		require.Equal(t, blank, c.look.role, "it can be filled in")
		c.value, c.formula = x, ""
		g.set(row, col, c)
	}
	set(row, drawBefore, 2000)
	set(row, drawAsked, 6000)
	set(row, drawInspected, 0.7)
	set(cash, drawToFinish, 0)
	file := filepath.Join(t.TempDir(), "draw.xlsx")
	saved(t, file, b)
	f := recomputed(t, file)[file]
	is := func(col int, want string) {
		got, err := f.GetCellValue("Draws", address(row, col, false, false))
		require.NoError(t, err)
		require.Equal(t, want, got, drawHeads[col-1].words)
	}
	is(drawRevised, "9650")
	is(drawNow, "4755")
	is(drawRetained, "475.5")
	is(drawNet, "4279.5")
	is(drawLeft, "2895")
	is(drawToFinish, "2895")
	said, err := f.GetCellValue("Draws", address(says, drawWork, false, false))
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(said, "NO: THE WORK TAKES MORE"), said)
}

// By hand: inspected in full with nothing asked for, or "all" asked for in words, nothing is
// approved; words in any other framed cell count as nothing too, and no sum fails.
func TestWordsInADrawCountAsNothing(t *testing.T) {
	b, err := made(scenario(t, "juniper-lane"), Options{For: Lender, Uncached: true})
	require.NoError(t, err)
	g := sheetOf(b, "Draws")
	put := func(row, col int, x any) {
		c := g.rows[row-1][col-1]
		require.Equal(t, blank, c.look.role, "it can be filled in")
		c.value, c.formula = x, ""
		g.set(row, col, c)
	}
	start := func(words string) int {
		return 1 + slices.IndexFunc(g.rows, func(r []cell) bool {
			s, is := append(r, make([]cell, drawWork)...)[drawWork-1].value.(string)
			return is && strings.HasPrefix(s, words)
		})
	}
	for _, col := range []int{drawChanges, drawBefore, drawAsked, drawInspected} {
		put(drawHead+1, col, "none")
	}
	put(drawHead+2, drawInspected, 1.0)
	put(drawHead+3, drawInspected, 1.0)
	put(drawHead+3, drawAsked, "all")
	agreed, cash, together := start("what lenders have agreed"), start("owner's cash"), start("All together")
	put(agreed, drawToFinish, "not yet")
	put(cash, drawToFinish, "see letter")
	file := filepath.Join(t.TempDir(), "draw.xlsx")
	saved(t, file, b)
	f := recomputed(t, file)[file]
	for i, r := range g.rows {
		for j, c := range r {
			if c.formula == "" {
				continue
			}
			got, err := f.GetCellValue("Draws", address(i+1, j+1, false, false))
			require.NoError(t, err)
			require.NotContains(t, got, "#", address(i+1, j+1, false, false))
			if i+1 <= together && (j+1 == drawNow || j+1 == drawClaimed) {
				require.Equal(t, "0", got, address(i+1, j+1, false, false))
			}
		}
	}
	spare, err := f.GetCellValue("Draws", address(start("to spare for"), drawToFinish, false, false))
	require.NoError(t, err)
	require.Empty(t, spare, "no cash is proven")
	says, err := f.GetCellValue("Draws", address(start("Yes: "), drawWork, false, false))
	require.NoError(t, err)
	require.Equal(t, "Fill in the cash as proven.", says, "the file does say what there is")
	told, err := f.GetCellValue("Draws", address(start("Every framed amount"), drawWork, false, false))
	require.NoError(t, err)
	require.True(t, strings.HasPrefix(told, "WORDS STAND WHERE AN AMOUNT BELONGS"), told)
}

// Lists are offered for the releases and receipts, and shares are kept between 0 and 1.
func TestDrawsOfferChoices(t *testing.T) {
	f := opened(t, answered(t, twoLoans), Options{For: Lender})
	all, err := f.GetDataValidations("Draws")
	require.NoError(t, err)
	require.Len(t, all, 8)
	require.Contains(t, all[0].Formula1, "conditional,final")
	for _, x := range all[2:] {
		require.Equal(t, "decimal", x.Type, x.Sqref)
	}
}

// A deal without a lender has a breakdown, and nothing to draw.
func TestNoDrawsWithoutALender(t *testing.T) {
	sheets := opened(t, scenario(t, "salt-creek"), Options{}).GetSheetList()
	require.Contains(t, sheets, "Cost breakdown")
	require.NotContains(t, sheets, "Draws")
	require.NotContains(t, sheets, "Attachments")
}

// An overrun that no one has agreed to pay is the owner's: $60,000 in the changes of one line
// lowers what is to spare by 60,000 and is named. Taken off the contingency it is covered;
// agreed to by the lender it is too, but for the tenth of it that is kept until the end. All
// that is asked for and inspected is approved up to what the lender holds back, and the
// column of what is left adds up.
func TestChangesAreNotTheLendersMoney(t *testing.T) {
	type filled struct{ roof, contingency, agreed, cash, before, asked, inspected float64 }
	const cash = 30000
	all := []filled{{cash: cash}, {roof: 60000, cash: cash}, {roof: 5000, contingency: -5000, cash: cash}, {roof: 60000, agreed: 60000, cash: cash}, {roof: -2000, cash: cash},
		{roof: 3000, cash: cash, asked: 1e6}, {cash: cash, before: 10000}, {roof: -1e6, cash: cash}, {cash: cash, asked: 1e6, inspected: 1.4}, {roof: -1e6, before: 100, cash: cash}}
	var paths []string
	rows := map[string]int{}
	for i, x := range all {
		b, err := made(scenario(t, "juniper-lane"), Options{For: Lender, Uncached: true})
		require.NoError(t, err)
		g := sheetOf(b, "Draws")
		for j, r := range g.rows {
			if len(r) < drawWork {
				continue
			}
			words, _ := r[drawWork-1].value.(string)
			for _, start := range []string{"roof: reroof", "contingency:", "All together", "Is the cost", "Changes come", "what lenders have agreed", "owner's cash", "left to finish", "less what no lender", "left to draw", "No line is drawn", "No change takes", "No more is asked", "kept of all draws", "to spare", "Yes: "} {
				if strings.HasPrefix(words, start) {
					rows[start] = j + 1
				}
			}
		}
		put := func(row, col int, x float64) {
			c := g.rows[row-1][col-1]
			require.Equal(t, blank, c.look.role, "it can be filled in")
			c.value, c.formula = x, ""
			g.set(row, col, c)
		}
		put(rows["roof: reroof"], drawChanges, x.roof)
		put(rows["contingency:"], drawChanges, x.contingency)
		put(rows["what lenders have agreed"], drawToFinish, x.agreed)
		put(rows["owner's cash"], drawToFinish, x.cash)
		put(rows["roof: reroof"], drawBefore, x.before)
		for row := drawHead + 1; row < rows["less what no lender"] && x.asked > 0; row++ {
			put(row, drawAsked, x.asked)
			put(row, drawInspected, max(1, x.inspected))
		}
		path := filepath.Join(t.TempDir(), itoa(i)+".xlsx")
		saved(t, path, b)
		paths = append(paths, path)
	}
	files := recomputed(t, paths...)
	is := func(i int, start string, col int) string {
		got, err := files[paths[i]].GetCellValue("Draws", address(rows[start], col, false, false))
		require.NoError(t, err)
		return got
	}
	number := func(i int, start string, col int) float64 {
		x, err := strconv.ParseFloat(is(i, start, col), 64)
		require.NoError(t, err)
		return x
	}
	for i, x := range all[:5] {
		spare := number(0, "to spare", drawToFinish) - x.agreed*0.1
		switch {
		case x.roof < 0:
			spare -= x.roof * 0.1
		case x.agreed == 0 && x.contingency == 0:
			spare -= x.roof
		}
		require.InDelta(t, spare, number(i, "to spare", drawToFinish), 0.005, "%+v", x)
	}
	require.InDelta(t, number(0, "All together", drawLeft), number(1, "All together", drawLeft), 0.005)
	require.InDelta(t, number(0, "All together", drawLeft)-2000, number(4, "All together", drawLeft), 0.005)
	held := number(0, "All together", drawApproved)
	require.InDelta(t, held*0.9+cash-number(0, "left to finish", drawToFinish), number(0, "to spare", drawToFinish), 0.01)
	require.InDelta(t, held, number(5, "All together", drawNow), 0.005)
	require.InDelta(t, -3000, number(5, "less what no lender", drawNow), 0.005)
	require.InDelta(t, held*0.1, number(5, "kept of all draws", drawToFinish), 0.01)
	for i, x := range all {
		require.InDelta(t, number(i, "All together", drawRevised)-x.before-number(i, "All together", drawNow), number(i, "All together", drawLeft), 0.005, "%+v", x)
		require.InDelta(t, number(i, "All together", drawNow)-number(i, "All together", drawRetained), number(i, "All together", drawNet), 0.005, "%+v", x)
	}
	require.InDelta(t, 0, number(7, "roof: reroof", drawRevised), 0.005, "no more is taken off a line than it has")
	require.InDelta(t, number(0, "to spare", drawToFinish)+9650*0.1, number(7, "to spare", drawToFinish), 0.01)
	for _, slip := range []struct {
		i                   int
		drawn, taken, asked string
	}{
		{0, "No line", "No change", "No more"}, {5, "No line", "No change", "MORE IS ASKED"}, {6, "MORE IS DRAWN", "No change", "No more"},
		{7, "No line", "MORE IS TAKEN", "No more"}, {9, "MORE IS DRAWN", "MORE IS TAKEN", "No more"},
	} {
		require.Contains(t, is(slip.i, "No line is drawn", drawWork), slip.drawn, "none hides another")
		require.Contains(t, is(slip.i, "No change takes", drawWork), slip.taken)
		require.Contains(t, is(slip.i, "No more is asked", drawWork), slip.asked)
	}
	require.InDelta(t, 9650, number(8, "roof: reroof", drawNow), 0.005, "a line is inspected to no more than the whole")
	require.InDelta(t, 0, number(8, "roof: reroof", drawToFinish), 0.005)
	require.Equal(t, "Yes: ", is(0, "Yes: ", drawWork)[:5])
	require.Equal(t, "NO: T", is(1, "Yes: ", drawWork)[:5])
	for i, want := range []string{"Changes come to nothing", "CHANGES ADD $60,000.00 THAT NO ONE HAS AGREED TO PAY", "Changes come to nothing", "What changes add, lenders have agreed to pay", "Changes take $2,000.00 off what lenders pay"} {
		require.Contains(t, is(i, "Changes come", drawWork), want)
	}
}

// What is to spare is for the work alone, and the page says so.
func TestSpareIsNotRoomToSpend(t *testing.T) {
	b, err := made(scenario(t, "juniper-lane"), Options{})
	require.NoError(t, err)
	require.Contains(t, strings.Join(texts(sheetOf(b, "Draws")), "\n"), "holding costs, interest and draw fees until the sale are not in it, so it is not room to spend")
}

// What is left of a credit lies below nothing from the start, and where the file states no
// cash there is none to hold against the work: neither is an alarm.
func TestChecksOfTheDrawsRaiseNoFalseAlarm(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/juniper-lane.yaml")
	require.NoError(t, err)
	said := func(name, old, new, want string) {
		changed := strings.Replace(string(text), old, new, 1)
		require.NotEqual(t, string(text), changed)
		b, err := made(answered(t, changed), Options{For: Lender, Uncached: true})
		require.NoError(t, err)
		require.Contains(t, texts(sheetOf(b, "Draws")), want)
		file := filepath.Join(t.TempDir(), name+".xlsx")
		saved(t, file, b)
		rows, err := recomputed(t, file)[file].GetRows("Draws")
		require.NoError(t, err)
		require.Contains(t, strings.Join(slices.Concat(rows...), "\n"), want)
		for _, row := range rows {
			if len(row) >= drawWork && strings.HasPrefix(row[drawWork-1], "to spare for") {
				require.Equal(t, name == "cash", len(row) < drawToFinish || row[drawToFinish-1] == "", "what is to spare is known with proven cash alone")
			}
		}
	}
	said("credit", "  general:\n", "  general:\n    salvage sold: {amount: $600, credit: yes}\n", "No line is drawn beyond what it comes to.")
	said("cash", "\ncash:", "\n# cash:", "Fill in the cash as proven: the deal file does not say what there is.")
}

// A tenth of what the second of two lenders leaves, a share that repeats, of 31,068.45 is
// 3,106.845: it is kept to 3,106.85 as the cell's formula rounds, after a look at nine decimals.
func TestKeptOfDrawsRoundsAsItsFormula(t *testing.T) {
	b, err := made(answered(t, `
purchase: {price: 100k}
value: {after-repair value: 200k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 0%, lines: [{trade: roof, work: all, amount: $38835.56}]}
loans:
  - {name: bank, price share: 70%, renovation share: 80%, rate: 9%, interest on: balance, draws: {retainage: 10%}}
  - {name: aunt, of remainder: yes, price share: 40%, renovation share: 50%, rate: 8%, interest on: balance}
`), Options{})
	require.NoError(t, err)
	for _, r := range sheetOf(b, "Draws").rows {
		if len(r) >= drawToFinish {
			if words, _ := r[drawWork-1].value.(string); strings.HasPrefix(words, "of it kept until") {
				require.Equal(t, -3106.85, r[drawToFinish-1].value)
				return
			}
		}
	}
	require.Fail(t, "the draws do not say what is kept")
}
