package cli_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// A deal whose sales give no value says why not in every verb.
func TestNoSaleToValueBySaysWhy(t *testing.T) {
	late := strings.NewReplacer("sold: 2026-03-01", "sold: 2026-06-01", "sold: 2025-12-01", "sold: 2026-07-01", "condition: good}", "condition: good, terms: sheriff}").Replace(soldDeal)
	for _, verb := range []string{"comps", "bid", "stress", "odds"} {
		out, wrong, code := run(t, late, verb, "-")
		require.Empty(t, out)
		require.Equal(t, 1, code)
		require.Contains(t, wrong, "the after-repair value is not given, and none")
		require.Contains(t, wrong, "1 A St: sold on 2026-06-01, not before")
		require.Contains(t, wrong, "3 C St: its terms speak against an open sale")
		require.Contains(t, wrong, "holds 1 mistake\n")
	}
	_, wrong, _ := run(t, soldDeal, "comps", "-", "--add", "9 X St")
	require.Contains(t, wrong, "there is no sale")
	require.NotContains(t, wrong, "is not given")
}

// What was added is not said to be left out, and what is left out stands there with why.
func TestNotUsedOnThePage(t *testing.T) {
	text := strings.Replace(soldDeal, "condition: good}", "condition: good, terms: sheriff}", 1) + "  table: |\n    address  sold on     price\n    8 H St   2026-02-30  300000\n    9 J St   2026-02-20  300000  nice  garden\n    Average  2026-03-01  310000\n"
	_, after, found := strings.Cut(page(t, text), "Not used\n")
	require.True(t, found)
	require.Contains(t, after, "3 C St, $325,000 on 2026-05-01: its terms")
	require.Contains(t, after, "- 1 row without a day or a price that can be read")
	require.Contains(t, after, "- 1 row with more cells than there are columns")
	require.Contains(t, after, "- 1 row of sums")
	require.Contains(t, after, "8 H St is left out: sold on:")
	require.Regexp(t, `8 H St is left out: [^;]*; write a`, strings.Join(strings.Fields(after), " "), "what is accepted")
	_, after, _ = strings.Cut(page(t, text, "--add", "3 C St", "--strike", "1 A St"), "Not used\n")
	require.NotContains(t, after, "3 C St")
	require.Contains(t, after, "1 A St, $300,000 on 2026-03-01: struck")
}

// Beside one sale there are no others to say anything.
func TestOneSaleOnThePage(t *testing.T) {
	require.Contains(t, page(t, soldDeal), "others say")
	require.NotContains(t, page(t, soldDeal, "--strike", "1 A St", "--strike", "2 B St"), "others say")
}

// A list that holds no sale is named, not the deal that asks for it.
func TestAListWithoutRowsIsNamed(t *testing.T) {
	list := filepath.Join(t.TempDir(), "only.csv")
	require.NoError(t, os.WriteFile(list, []byte("address,sale date,price\n"), 0o644))
	_, wrong, code := run(t, "", "comps", saved(t, soldDeal), "--from", list)
	require.Equal(t, 1, code)
	require.Contains(t, strings.Join(strings.Fields(wrong), " "), "only.csv:1:1: error: the list names its columns and no sale")
}

// Garages are adjusted by their kind too, so the grid shows it.
func TestGaragesOnThePage(t *testing.T) {
	text := strings.NewReplacer("baths: 2}", "baths: 2, garage: attached}", "condition: average", "condition: average, garage: 2 car detached", "condition: excellent", "condition: excellent, garage: 1 car", "condition: good", "condition: good, garage: none").Replace(soldDeal)
	require.Regexp(t, `garage, cars +attached +none +1 +2 detached\n`, page(t, text))
}

// Conditions by option beside a stated value move the low value, or where that is stated as
// well nothing, and every page says so.
func TestConditionByOptionBesideAStatedValue(t *testing.T) {
	text := soldDeal + "  condition by option: {cosmetic: average, full gut: good}\n" +
		"rooms: {hall: {size: 4' x 9', options: {cosmetic: {work: {paint walls: own hands}}, full gut: {work: {paint walls: hired}}}}}\nvalue: {after-repair value: $325k}\n"
	for verb, want := range map[string]string{"compare": "Condition by option moves the low value at most", "bid": "the condition that an option leaves", "comps": "the condition that an option leaves"} {
		out, wrong, code := run(t, "", verb, saved(t, text))
		require.Zero(t, code, wrong)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want, verb)
	}
	out, wrong, code := run(t, "", "compare", saved(t, strings.Replace(text, "value: {after-repair value: $325k}\n", "", 1)))
	require.Zero(t, code, wrong)
	require.NotContains(t, out, "low value at most")
	out, wrong, code = run(t, "", "compare", saved(t, strings.Replace(text, "$325k}", "$325k, low: $300k}", 1)))
	require.Zero(t, code, wrong)
	require.Contains(t, strings.Join(strings.Fields(out), " "), "Condition by option changes nothing")
}

// What is low beside a stated value is said alike by bid, comps and odds, and from where.
func TestLowBesideAStatedValue(t *testing.T) {
	for value, want := range map[string][2]string{
		"$450k": {"That does not lift the low end", "by 3 sold houses, as ledgerboard comps shows"},
		"$400k": {"That lifts neither end of it", "by 3 sold houses, as ledgerboard comps shows"},
		"$150k": {"its low value with it", "by as large a share below your value as the low end by 3 sold houses is below theirs"},
	} {
		text := soldDeal + "value: {after-repair value: " + value + "}\n"
		out, wrong, code := run(t, text, "bid", "-")
		require.Zero(t, code, wrong)
		out = strings.Join(strings.Fields(out), " ")
		require.Contains(t, out, want[1])
		_, said, _ := strings.Cut(out, "low: ")
		said, _, _ = strings.Cut(said, ".00 (")
		sold := strings.Join(strings.Fields(page(t, text)), " ")
		require.Contains(t, sold, want[0])
		require.Contains(t, sold, said, "the same low value")
		out, wrong, code = run(t, text, "odds", "-", "--trials", "1000")
		require.Zero(t, code, wrong)
		require.Regexp(t, `what the house will be worth +`+strings.ReplaceAll(said, "$", `\$`), out)
	}
}

// What the whole value lacks stands before doubts about single rows, and what the page
// leaves out it shows where it says.
func TestWeightyDoubtsFirst(t *testing.T) {
	text := strings.Replace(soldDeal, "house: {", "house: {lot: 7000 sq ft, ", 1) + "  table: |\n    address  sold on     price   how sold\n"
	for i := range 14 {
		text += fmt.Sprintf("    %d H St   2026-0%d-30  300000  x\n", i+20, 1+i%5)
		text += fmt.Sprintf("    %d J St   2/%d/26  30000%d  x\n    %d K St   never       300000  x\n", i+20, i+1, i, i+20)
	}
	_, doubts, found := strings.Cut(page(t, text), "Doubtful; look again\n")
	require.True(t, found)
	lot, row := strings.Index(doubts, "the house says lot"), strings.Index(doubts, "is left out")
	require.Positive(t, lot)
	require.Less(t, lot, row)
	require.Contains(t, doubts, "1 column of the table is not read: how sold")
	require.Contains(t, doubts, "more; --all tells them")
	_, all, _ := strings.Cut(page(t, text, "--all"), "Doubtful; look again\n")
	require.NotContains(t, all, "--all tells them")
	require.Greater(t, strings.Count(all, "\n  - "), strings.Count(doubts, "\n  - "))
}

// A sale of years ago that is written out is used, so it is not said to be left out.
func TestAnOldSaleThatIsUsedIsNotSaidToBeLeftOut(t *testing.T) {
	out := page(t, soldDeal+"    4 D St: {sold: 2018-04-02, price: $243,000, living area: 1200 sq ft, baths: 2, condition: good}\n")
	require.Contains(t, strings.Join(strings.Fields(out), " "), "Drawn from 4 sales")
	require.NotContains(t, out, "since nearer ones suffice")
}

// What is not known of a sale is null, though the model has the house's in its place.
func TestUnknownOfASaleIsNull(t *testing.T) {
	var o struct {
		Figures map[string]any `json:"figures"`
		Sales   []struct {
			Name  string         `json:"name"`
			Lines map[string]any `json:"lines"`
		} `json:"sales"`
	}
	require.NoError(t, json.Unmarshal([]byte(page(t, strings.Replace(soldDeal, "1100 sq ft, baths: 1.5", "1100 sq ft", 1), "--json")), &o))
	require.Contains(t, o.Figures, "subject_garage")
	require.Nil(t, o.Figures["subject_garage"], "nor is it nought of the house")
	require.Equal(t, "1200", o.Figures["subject_area"])
	for _, s := range o.Sales {
		if s.Name == "1 A St" {
			require.Nil(t, s.Lines["comp_baths"])
		} else {
			require.NotNil(t, s.Lines["comp_baths"])
		}
		require.Nil(t, s.Lines["comp_built"])
		require.NotNil(t, s.Lines["comp_area"])
		require.NotNil(t, s.Lines["comp_condition"], "the sales say it, and the house does not")
	}
	out, wrong, code := run(t, soldDeal, "why", "-", "subject_built")
	require.Zero(t, code, wrong)
	require.Contains(t, out, "subject_built = 1961\n", "a year of the calendar, no count of them")
}

// A target of no profit at all is said as what it is, where it is missed and held.
func TestBreakingEven(t *testing.T) {
	text := strings.Replace(soldDeal, "comps:", "targets: {profit: $0, margin: 5%}\ncomps:", 1)
	out, wrong, code := run(t, text, "bid", "-", "--set", "price=$400k")
	require.Zero(t, code, wrong)
	require.Contains(t, out, "you lose $95,907.00 and miss your margin target of 5% by")
	out, wrong, code = run(t, text, "odds", "-", "--trials", "1000")
	require.Zero(t, code, wrong)
	require.NotContains(t, out, "you miss breaking even", "that is to lose money, which stands there")
	require.Contains(t, out, "you miss your margin target of 5%")
}

// saved is a file with a deal.
func saved(t *testing.T, text string) string {
	path := filepath.Join(t.TempDir(), "deal.yaml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	return path
}

func page(t *testing.T, text string, args ...string) string {
	t.Helper()
	out, wrong, code := run(t, text, append([]string{"comps", "-"}, args...)...)
	require.Zero(t, code, wrong)
	return out
}

// Where values go by condition, what options add plays no part in them and is not shown.
func TestComparisonByConditionLeavesOutWhatOptionsAdd(t *testing.T) {
	text := soldDeal + "  condition by option: {cosmetic: average, full gut: good}\n" +
		"rooms: {hall: {size: 4' x 9', options: {cosmetic: {adds: $3k, work: {paint walls: own hands}}, full gut: {adds: $5k, work: {paint walls: hired}}}}}\n"
	out, wrong, code := run(t, "", "compare", saved(t, text))
	require.Zero(t, code, wrong)
	require.Contains(t, out, "The values come from sold houses")
	require.NotContains(t, out, "What a room adds")
	out, wrong, code = run(t, "", "compare", saved(t, text+"value: {after-repair value: $325k}\n"))
	require.Zero(t, code, wrong)
	require.Contains(t, out, "What a room adds")
}

// Where options say nothing of the condition that they leave the house in, compare and check show
// how to say it; a dearer plan that leaves it in a worse one is doubted.
func TestConditionByOptionIsShownAndDoubted(t *testing.T) {
	const rooms = "rooms: {hall: {size: 14' x 22', options: {cosmetic: {work: {paint walls: hired}}, full gut: {work: {paint walls: hired, resilient plank floor: hired, paint ceiling: hired}}}}}\n"
	for _, verb := range []string{"compare", "check"} {
		out, wrong, _ := run(t, "", verb, saved(t, soldDeal+rooms))
		require.Contains(t, strings.Join(strings.Fields(out+wrong), " "), "condition by option: {cosmetic: good, full gut: excellent}", verb)
	}
	for by, doubted := range map[string]bool{"{cosmetic: average, full gut: good}": false, "{cosmetic: good, full gut: average}": true} {
		out, wrong, code := run(t, "", "compare", saved(t, soldDeal+"  condition by option: "+by+"\n"+rooms))
		require.Zero(t, code, wrong)
		require.Equal(t, doubted, strings.Contains(strings.Join(strings.Fields(out), " "), "than cosmetic, and is said to leave the house in a worse condition. Were the two changed about"), out)
	}
}

// Two sales that tell an amount by themselves agree whatever they sold for: that is said, and
// not that each is met by the other.
func TestTwoSalesAgreeByThemselves(t *testing.T) {
	const text = "purchase: {price: $212,500, date: 2026-03-02, closing: {title: $1,850}}\ntime: {renovation: 3 months, marketing: 5 weeks, escrow: 1 month}\nhouse: {living area: 1480 sq ft}\n" +
		"comps:\n  sold:\n    12 Elm St: {sold: 2025-11-14, price: $341,000, living area: 1520 sq ft}\n    31 Oak Ave: {sold: 2025-10-03, price: $318,500, living area: 1310 sq ft}\n"
	out, _, code := run(t, text, "comps", "-")
	require.Zero(t, code)
	require.Contains(t, out, "they agree says nothing")
	require.NotContains(t, out, "Left out one by one")
	out, _, _ = run(t, strings.Replace(text, "comps:", "comps:\n  amounts: {square foot: $92}", 1), "comps", "-")
	require.Contains(t, out, "Left out one by one")
}

// What a unit is worth by regression holds for small differences alone, and the page says so.
func TestByRegressionOnThePage(t *testing.T) {
	var list strings.Builder
	list.WriteString("address,sale date,price,sq ft,lot\n")
	for i := range 90 {
		area, lot := 900+i*37%1100, 4000+i*53%9000
		fmt.Fprintf(&list, "%d Elm St,2025-%02d-%02d,%d,%d,%d\n", i+1, 1+i%12, 1+i%28, 60_000+area*100+lot*2+i*7919%9000, area, lot)
	}
	file := filepath.Join(t.TempDir(), "county.csv")
	require.NoError(t, os.WriteFile(file, []byte(list.String()), 0o644))
	out, _, _ := run(t, "", "comps", saved(t, strings.Replace(soldDeal, "square foot: $90, ", "", 1)), "--from", file)
	require.Contains(t, out, "by regression\n")
	require.Contains(t, strings.Join(strings.Fields(out), " "), "times a small difference it comes near what is adjusted above")
}

// A sale that weighs next to nothing is none that the value rests on.
func TestSlightSalesOnThePage(t *testing.T) {
	alike := strings.Replace(soldDeal, "living area: 1300 sq ft, baths: 2.5, condition: excellent", "living area: 3900 sq ft, baths: 5, condition: excellent", 1)
	require.Contains(t, strings.Join(strings.Fields(page(t, alike)), " "), "Drawn from 3 sales before 2026-06-01; next to nothing of it comes of 1 of them, so it rests on 2.")
	require.NotContains(t, page(t, soldDeal), "so it rests on")
}

// The shares of the sales that drive a value add up to the one behind them.
func TestWeightsOnThePageAddUp(t *testing.T) {
	_, after, _ := strings.Cut(page(t, soldDeal), "What drives it\n")
	line, _, found := strings.Cut(strings.Join(strings.Fields(after), " "), " of the weight.")
	require.True(t, found)
	shares := regexp.MustCompile(`([\d.]+)%`).FindAllStringSubmatch(line, -1)
	var sum decimal.Decimal
	for i, s := range shares {
		if x := decimal.RequireFromString(s[1]); i < len(shares)-1 {
			sum = sum.Add(x)
		} else {
			require.True(t, x.Equal(sum), line)
		}
	}
}

// Types stand in the grid where some sale's is known to be another than the house's.
func TestTypesOnThePage(t *testing.T) {
	typed := strings.ReplaceAll(soldDeal, "living area:", "type: condo, living area:")
	require.NotContains(t, page(t, typed), "\ntype  ")
	typed = strings.Replace(typed, "type: condo", "type: duplex", 1)
	require.Regexp(t, `\ntype +duplex( +condo)+`, page(t, typed))
}

// What own lines are worth stands with the worth of all else, a long name above its amount.
func TestOwnLinesAmongTheWorths(t *testing.T) {
	out := page(t, soldDeal+"  own lines: {pool: $12,000, a view of the lake over the neighbors: $9,000}\n")
	require.Contains(t, out, "  pool                        $12,000.00  given in the file\n")
	require.Contains(t, out, "  a view of the lake over the neighbors\n                               $9,000.00  given in the file\n")
}
