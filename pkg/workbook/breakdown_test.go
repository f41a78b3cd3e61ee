package workbook

import (
	"os"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/pricebook"
)

// twoLoans is an invented deal in which two lenders pay the work, each by its own rule, and
// in which one line is a third of the budget in one sum.
const twoLoans = `
deal: Two loans
purchase: {price: $100,000}
value: {after-repair value: $190,000}
time: {lead-in: 2 weeks, renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation:
  contingency: 10%
  own labour rate: $40/hour
  lines:
    - {trade: tile, work: bath, materials: $901.37, own hours: 73}
    - {trade: roof, work: reroof, amount: $9,000}
    - {trade: paint, work: all rooms, materials: $1100.11, labour: $3,000.10}
  general: {permits: $400.05, dumpster: $333.33, cleaning: $77.77}
rooms:
  bath: {size: 8' x 5', fixed: {toilet: 1}, work: {tile floor: hired, paint bath walls: own hands, toilet: {quote: $611, from: Elm Plumbing (invented), dated: 2026-03-01}}}
seen: {sewer line: not seen}
loans:
  - {name: first loan, price share: 70%, renovation share: 33%, budget with contingency: no, rate: 10%, draws: {retainage: 10%}}
  - {name: second loan, renovation share: 41%, own work at trade price: yes, rate: 12%, draws: {retainage: 5%}}
selling: {commission: 5%}
cash: {available: $90,000}
`

// twoLenders is an invented deal in which a second lender counts own work at trade price and
// pays of what the first, which counts money alone, leaves open.
const twoLenders = `
deal: Two lenders
purchase: {price: $150,000}
value: {after-repair value: $260,000}
time: {renovation: 3 months, marketing: 1 month}
renovation:
  contingency: 10%
  own labour rate: $45/hour
  lines:
    - {trade: roof, work: reroof, amount: $12,000}
    - {trade: paint, work: all rooms, materials: $1,000, own hours: 200}
loans:
  - {name: bank, price share: 80%, renovation share: 90%, rate: 9%}
  - {name: second, of remainder: yes, renovation share: 80%, own work at trade price: yes, rate: 12%}
selling: {agents: 5%}
`

// By hand: the bank pays 90% of the $13,000 of work in cash and of the $1,300 contingency. It
// leaves open a tenth of both, and the $9,000 of own work: of each dollar of that the second
// pays 80 cents. So of a dollar of cash lenders pay 98 cents, of own work 80.
func TestSecondLenderPaysOfWhatTheFirstLeaves(t *testing.T) {
	b, err := made(answered(t, twoLenders), Options{For: Lender})
	require.NoError(t, err)
	b.pages = nil
	d := b.breakdownPage()
	var paid []string
	for _, r := range d.rows {
		paid = append(paid, d.exactly(r.row, colLender).StringFixed(2))
	}
	require.Equal(t, []string{"11760.00", "8180.00", "1274.00"}, paid)
}

// The lines of the breakdown come to the deal's own totals, to the cent: at trade price, and
// what lenders hold back.
func TestBreakdownComesToTheDeal(t *testing.T) {
	for _, name := range []string{"two loans", "two lenders", "walnut-row", "juniper-lane", "salt-creek", "orchard-street", "harbor-view", "mill-road", "cedar-court"} {
		var a *answer.Answer
		switch name {
		case "two loans":
			a = answered(t, twoLoans)
		case "two lenders":
			a = answered(t, twoLenders)
		default:
			a = scenario(t, name)
		}
		for _, whom := range []Reader{Owner, Lender} {
			b, err := made(a, Options{For: whom})
			require.NoError(t, err)
			b.pages = nil
			d := b.breakdownPage()
			require.True(t, d.exactly(d.last, colTotal).Equal(a.Line("trade_cost").Add(a.Line("contingency"))), "%s: %s", name, d.exactly(d.last, colTotal))
			require.True(t, d.exactly(d.last, colLender).Equal(a.Line("holdback")), "%s: %s of %s", name, d.exactly(d.last, colLender), a.Line("holdback"))
			require.True(t, d.exactly(d.last, colOwner).Equal(d.exactly(d.last, colTotal).Sub(d.exactly(d.last, colLender))))
			for row := d.heads[0]; row <= d.last; row++ {
				parts := d.exactly(row, colMaterials).Add(d.exactly(row, colLabour)).Add(d.exactly(row, colOneSum))
				require.True(t, parts.Equal(d.exactly(row, colTotal)), "%s: row %d", name, row)
			}
			for _, r := range d.rows {
				require.False(t, d.exactly(r.row, colOwner).IsNegative(), "%s: %s", name, r.number)
				require.Equal(t, r.line.oneSum || len(r.line.materials) == 0, !d.exactly(r.row, colOneSum).IsZero(), "%s: %s", name, r.number)
				require.True(t, d.g.rows[r.row-1][colTotal-1].formula != "" || r.line.total.Line.Name == "trade_price" && b.stays(r.line.total), "%s: %s", name, r.number)
			}
		}
	}
}

// They do so for a part of the work too, where what comes along once for the house stands
// beside the work that is named there.
func TestLendersPartOfEveryLineAddsUp(t *testing.T) {
	for _, share := range []string{"45%", "60%", "75%", "90%", "95%"} {
		text, err := os.ReadFile("../../scenarios/walnut-row.yaml")
		require.NoError(t, err)
		a := answered(t, strings.Replace(string(text), "renovation share: 100%", "renovation share: "+share, 1))
		b, err := made(a, Options{For: Lender})
		require.NoError(t, err)
		b.pages = nil
		d := b.breakdownPage()
		require.True(t, d.exactly(d.last, colLender).Equal(a.Line("holdback")), "%s: %s of %s", share, d.exactly(d.last, colLender), a.Line("holdback"))
	}
}

// Categories stand in the published order, the contingency last; each line once.
func TestBreakdownOrder(t *testing.T) {
	b, err := made(scenario(t, "walnut-row"), Options{})
	require.NoError(t, err)
	b.pages = nil
	d := b.breakdownPage()
	lines, _ := b.workLines()
	require.Len(t, d.rows, len(lines)+1)
	last, seen := -1, map[string]bool{}
	for _, r := range d.rows[:len(d.rows)-1] {
		require.False(t, seen[r.number], r.number)
		seen[r.number] = true
		at := indexOf(pricebook.Categories, r.line.category)
		require.GreaterOrEqual(t, at, last, r.number)
		last = at
	}
	require.Equal(t, "99.01", d.rows[len(d.rows)-1].number)
}

func indexOf(all []string, s string) int {
	for i, x := range all {
		if x == s {
			return i
		}
	}
	return -1
}

// The roof of $9,000 is more than a tenth of the budget in one sum, and is said to be; the
// foundation's $4,500 is watched, and permits are far from it.
func TestBreakdownSpeaksUpAboutLargeSums(t *testing.T) {
	b, err := made(answered(t, twoLoans), Options{For: Lender})
	require.NoError(t, err)
	said := map[string]string{}
	for _, row := range sheetOf(b, "Cost breakdown").rows {
		if len(row) >= colWho && (row[colNumber-1].value != nil || row[colRoom-1].value == "all others in one sum") && row[colWho-1].formula != "" && row[colRoom-1].value != nil {
			said[row[colRoom-1].value.(string)] = row[colWho-1].value.(string)
		}
	}
	require.Contains(t, said["roof: reroof"], "OVER A TENTH OF ALL TOGETHER")
	require.Equal(t, "under a tenth of all together", said["set aside: foundation, not seen"])
	require.NotContains(t, said, "permits")
	require.NotContains(t, said, "tile: bath")
	require.Equal(t, "under a tenth of all together", said["all others in one sum"])
}

func TestLargestOfManyCells(t *testing.T) {
	require.Equal(t, "MAX(K5:K7,K9)", largestOf([]int{9, 6, 5, 7}, 11))
	var odd []int
	for i := range 450 {
		odd = append(odd, 2*i+1)
	}
	got := largestOf(odd, 11)
	require.True(t, strings.HasPrefix(got, "MAX(MAX(K1,K3,"), got)
	require.Equal(t, 4, strings.Count(got, "MAX("))
}

// By hand: 10% of the first loan's draws and 5% of the second's are kept, in proportion to
// what each holds back.
func TestDrawsKeepByWhatEachLenderKeeps(t *testing.T) {
	a := answered(t, twoLoans)
	first, second := a.Of(a.Loans()[0], "holdback"), a.Of(a.Loans()[1], "holdback")
	want := first.Mul(decimal.RequireFromString("0.1")).Add(second.Mul(decimal.RequireFromString("0.05"))).DivRound(first.Add(second), 12)
	require.Equal(t, want.String(), a.Line("retained_of_draws").Round(12).String())
}

// A lender that holds nothing back charges for no draw: of $100, $75 and $90, only $175.
func TestDrawFeesAreOfLendersThatHoldBack(t *testing.T) {
	text := strings.NewReplacer("{retainage: 10%}", "{retainage: 10%, fee: $100}", "{retainage: 5%}", "{retainage: 5%, fee: $75}",
		"selling:", "  - {name: seller note, fixed amount: $5k, rate: 6%, draws: {fee: $90}}\nselling:").Replace(twoLoans)
	b, err := made(answered(t, text), Options{For: Lender})
	require.NoError(t, err)
	for _, row := range sheetOf(b, "Draws").rows {
		if len(row) >= drawToFinish && row[drawWork-1].value == "what each draw costs in fees, all lenders together" {
			require.InDelta(t, 175, row[drawToFinish-1].value, 1e-9)
			return
		}
	}
	require.Fail(t, "the draws do not say what each costs")
}

// What is set aside for a part not seen wants a report, not a quote: of the foundation's
// $4,500 and of a sewer line that is over a tenth of the budget.
func TestUnseenPartsAskForAReport(t *testing.T) {
	text := strings.Replace(twoLoans, "sewer line: not seen", "sewer line: {state: not seen, likely: $12,000}", 1)
	b, err := made(answered(t, text), Options{For: Lender})
	require.NoError(t, err)
	papers := map[string][]string{}
	for _, row := range sheetOf(b, "Attachments").rows[3:] {
		if len(row) > 2 {
			paper, _ := row[1].value.(string)
			about, _ := row[2].value.(string)
			papers[paper] = append(papers[paper], about)
		}
	}
	reports := strings.Join(papers["inspection's report"], "\n")
	require.Contains(t, reports, "set aside: sewer line, not seen")
	require.Contains(t, reports, "set aside: foundation, not seen")
	require.NotContains(t, strings.Join(papers["quote, signed, with its day"], "\n"), "not seen")
	said := strings.Join(texts(sheetOf(b, "Cost breakdown")), "\n")
	require.Contains(t, said, "OVER A TENTH OF ALL TOGETHER IN ONE SUM: have it inspected, and attach the report")
}

// Grades are named where they are not the usual one, and containers are said to be one sum.
func TestBreakdownSaysWhatMatters(t *testing.T) {
	b, err := made(scenario(t, "walnut-row"), Options{For: Lender})
	require.NoError(t, err)
	g := sheetOf(b, "Cost breakdown")
	all := strings.Join(texts(g), "\n")
	require.NotContains(t, all, ", standard")
	require.Contains(t, all, ", builder grade")
	seen := false
	for _, row := range g.rows {
		if len(row) > colMaterials && row[colWork-1].value == "containers for debris" {
			seen = true
			require.Equal(t, row[colTotal-1].value, row[colOneSum-1].value)
		}
	}
	require.True(t, seen)
}
