package workbook

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// saved writes a workbook without cached values to a file.
func saved(t *testing.T, path string, b *book) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, b.stream())
	_, err := b.file.WriteTo(&out)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, out.Bytes(), 0o600))
}

// The pages of a lender, and those with other options beside, are worked out to what is
// cached in them as well.
func TestPagesRecomputed(t *testing.T) {
	const walnut = "../../scenarios/walnut-row.yaml"
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	dir, books := t.TempDir(), map[string]*book{}
	add := func(name string, b *book) {
		path := filepath.Join(dir, name+".xlsx")
		saved(t, path, b)
		books[path] = b
	}
	for _, path := range files {
		add(filepath.Base(path), bookOf(t, path, Options{For: Lender, Uncached: true, Columns: besides(t, path)}))
	}
	add("beside", bookOf(t, walnut, Options{Uncached: true, Columns: besides(t, walnut)}))
	var paths []string
	for path := range books {
		paths = append(paths, path)
	}
	for path, f := range recomputed(t, paths...) {
		compare(t, filepath.Base(path), books[path], f)
	}
}

// sheetOf is a sheet of a workbook, or nil.
func sheetOf(b *book, name string) *grid {
	for _, g := range b.all() {
		if g.name == name {
			return g
		}
	}
	return nil
}

// texts are the texts of a sheet.
func texts(g *grid) (all []string) {
	for _, row := range g.rows {
		for _, c := range row {
			if s, is := c.value.(string); is && s != "" {
				all = append(all, s)
			}
		}
	}
	return all
}

// At the maximum offer every target is met, one dollar higher one is missed: in the page
// as a reader sees it, by its words.
func TestOffersCanBeCheckedByEye(t *testing.T) {
	files, err := filepath.Glob("../../scenarios/*.yaml")
	require.NoError(t, err)
	seen := 0
	for _, path := range files {
		b := bookOf(t, path, Options{})
		g := sheetOf(b, "Offers")
		require.NotNil(t, g, path)
		missed, heads := map[int]int{}, map[int]string{}
		for _, row := range g.rows {
			for i, c := range row {
				switch s, _ := c.value.(string); {
				case s == "missed":
					missed[i]++
				case strings.HasPrefix(s, "maximum offer"), strings.HasPrefix(s, "one dollar higher"):
					heads[i] = s
				}
			}
		}
		for i, head := range heads {
			seen++
			if strings.HasPrefix(head, "maximum") {
				require.Zero(t, missed[i], "%s: %s", path, head)
			} else {
				require.Positive(t, missed[i], "%s: %s", path, head)
			}
		}
	}
	require.Greater(t, seen, 2*len(files))
}

// told is a deal with a price, a value, a loan and targets. Every figure is invented.
const told = `
purchase: {price: %s}
value: {after-repair value: $330k}
time: {renovation: 3 months, marketing: 1 month, escrow: 1 month}
renovation: {contingency: 10%%, own labour rate: $37/hour, lines: [{trade: all, work: works, amount: $40k, own hours: 20}]}
loans: [{name: bank, price share: 80%%, renovation share: 100%%, rate: 11%%}]
%s
`

func house(t *testing.T, price, rest string) *answer.Answer {
	path := filepath.Join(t.TempDir(), "house.yaml")
	require.NoError(t, os.WriteFile(path, fmt.Appendf(nil, told, price, rest), 0o600))
	return answerOf(t, path)
}

// Where no price works, or none is refused, the pages say so in words.
func TestOffersInWords(t *testing.T) {
	for _, x := range []struct{ price, rest, says string }{
		{"$200k", "targets: {profit: $900k}", "even with the house as a gift you would miss your profit target of $900,000 by $"},
		{"$200k", "", "As the file stood: the deal file states no target"},
	} {
		b, err := made(house(t, x.price, x.rest), Options{})
		require.NoError(t, err)
		said := strings.Join(texts(sheetOf(b, "Offers")), "\n")
		require.Contains(t, said, x.says)
		require.Equal(t, b.answer.Offer.Found, strings.Contains(said, "At the maximum offer every target is met"), "only of an offer that there is")
	}
}

// A lender sees nothing of targets, offers, own hours or tax on the pages in front; what
// own work would cost if trades did it is in the lines at trade price.
func TestLendersPagesLeaveOut(t *testing.T) {
	a := house(t, "$200k", "targets: {profit: $23,457}\ntax: {set aside: 31%}\n")
	b, err := made(a, Options{For: Lender})
	require.NoError(t, err)
	require.Nil(t, sheetOf(b, "Offers"))
	for _, g := range b.pages {
		all := strings.ToLower(strings.Join(texts(g), "\n"))
		for _, word := range []string{"target", "maximum offer", "own hours", "set aside: 31", "rule of thumb", "walk away", "23,457", "self-employment"} {
			require.NotContains(t, all, word, g.name)
		}
		for _, row := range g.rows {
			for _, c := range row {
				require.NotContains(t, []any{23457.0, 37.0, near(a.Offer.Price)}, c.value, g.name)
			}
		}
	}
}

// A longer hold fills the months that looked empty, and the chart's rows are those of the
// table; the engine works it out from the changed input alone.
func TestALongerHoldFillsTheMonths(t *testing.T) {
	const path = "../../scenarios/juniper-lane.yaml"
	b := bookOf(t, path, Options{Uncached: true})
	c := b.model.Find(b.model.Root, "marketing")
	at := b.places[c.Index]
	now := at.grid.rows[at.row-1][at.col-1].value.(float64)
	at.grid.rows[at.row-1][at.col-1].value = now + 5
	file := filepath.Join(t.TempDir(), "later.xlsx")
	saved(t, file, b)
	f := recomputed(t, file)[file]
	last := b.answer.Values.Months() + 5
	g := sheetOf(b, "Cash by month")
	sale, err := f.GetCellValue(g.name, address(g.heads+1+last, 3, false, false)) // money in
	require.NoError(t, err)
	require.NotEqual(t, "0", sale)
	words, err := f.GetCellValue("The deal", wordsAt(t, sheetOf(b, "The deal")))
	require.NoError(t, err)
	require.Contains(t, words, "Inputs have changed")
	conditional, err := fileOf(t, b).GetConditionalFormats(g.name)
	require.NoError(t, err)
	require.Len(t, conditional, 1)
}

// Past the last month no cell is an error, and the first page says that figures are wrong.
func TestASalePastTheLastMonthIsSaid(t *testing.T) {
	file := filepath.Join(t.TempDir(), "late.xlsx")
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{For: Lender, Uncached: true})
	at := b.places[b.model.Find(b.model.Root, "late_sale").Index]
	at.grid.rows[at.row-1][at.col-1].value = 40.0
	saved(t, file, b)
	f := recomputed(t, file)[file]
	said := ""
	for _, name := range f.GetSheetList() {
		rows, err := f.GetRows(name)
		require.NoError(t, err)
		for _, row := range rows {
			for _, text := range row {
				require.NotContains(t, text, "#", name)
				if strings.HasPrefix(text, "The sale comes after month") {
					said = name
				}
			}
		}
	}
	require.Equal(t, "The deal", said)
}

// A text of any length stands in a workbook, in a row as high as a row can be.
func TestALongNoteFits(t *testing.T) {
	g := &grid{widths: []float64{10}}
	g.paragraph(1, 1, 1, strings.Repeat("as the roofer wrote ", 400), look{})
	require.LessOrEqual(t, g.high[1], float64(excelize.MaxRowHeight))
}

// The words rest on every input: on a target's share to the last hundredth of a percent, and on
// what moves the offer at the low value alone. Nothing changed, they fit; an input of nothing that
// is a word or emptied is not as it stood.
func TestWordsFitOnlyTheInputsAsTheyStood(t *testing.T) {
	for i, x := range []struct {
		member, line string
		by           any
		says         string
	}{
		{"", "price", 0.0, "The words above fit"}, {"first loan", "value_cap", -0.035, "Inputs have changed"}, {"", "target_roi", 0.0001, "Inputs have changed"},
		{"", "late_sale", "two weeks", "Inputs have changed"}, {"", "standstill", nil, "Inputs have changed"},
	} {
		b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true})
		n := slices.IndexFunc(b.model.Cells, func(c *model.Cell) bool { return c.Member.Path() == x.member && c.Line.Name == x.line })
		at := b.places[n]
		c := &at.grid.rows[at.row-1][at.col-1]
		was := c.value.(float64)
		if by, is := x.by.(float64); is {
			c.value = was + by
		} else {
			require.Zero(t, was)
			c.value = x.by
		}
		file := filepath.Join(t.TempDir(), itoa(i)+".xlsx")
		saved(t, file, b)
		words, err := recomputed(t, file)[file].GetCellValue("The deal", wordsAt(t, sheetOf(b, "The deal")))
		require.NoError(t, err)
		require.Contains(t, words, x.says, x.line)
	}
}

// The names of the targets follow the targets, on the first page and on that of the offers.
func TestTargetsAreNamedAsTheyStandNow(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true})
	for line, x := range map[string]float64{"target_profit": 12345.5, "target_roi": 0.1225, "cash_available": 90000, "cash_reserve": 100} {
		at := b.places[b.model.Find(b.model.Root, line).Index]
		at.grid.rows[at.row-1][at.col-1].value = x
	}
	file := filepath.Join(t.TempDir(), "targets.xlsx")
	saved(t, file, b)
	f := recomputed(t, file)[file]
	for _, page := range []string{"The deal", "Offers"} {
		rows, err := f.GetRows(page)
		require.NoError(t, err)
		said := strings.Join(slices.Concat(rows...), "\n")
		for _, want := range []string{"your profit target of $12,345.50", "your return on cash (ROI) target of 12.25%", "the $89,900 of cash you can use"} {
			require.Contains(t, said, want, page)
		}
	}
}

// At the prices that a search found, what is to spare is of the figures there, by the target as
// it is now: with one of $45,000 the profit at the maximum offer is as much too low as it lies
// below it, and no sentence says that every target is met there.
func TestOffersAreHeldToTheTargetsAsTheyAreNow(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true})
	now := map[string]float64{"target_profit": 45000, "target_roi": 0.4, "cash_available": 50000}
	for line, x := range now {
		at := b.places[b.model.Find(b.model.Root, line).Index]
		at.grid.rows[at.row-1][at.col-1].value = x
	}
	file := filepath.Join(t.TempDir(), "targets.xlsx")
	saved(t, file, b)
	rows, err := recomputed(t, file)[file].GetRows("Offers")
	require.NoError(t, err)
	said := strings.Join(slices.Concat(rows...), "\n")
	require.NotContains(t, said, "every target is met")
	require.Contains(t, said, "Inputs have changed")
	trials := b.trials()
	held := 0
	for i, row := range rows {
		for n, x := range trials {
			if x.at == nil || len(row) < n+2 {
				continue
			}
			want := 0.0
			switch profit := near(x.at.Line("owner_profit")); {
			case strings.HasPrefix(row[0], "your profit target"):
				want = profit - now["target_profit"]
			case strings.HasPrefix(row[0], "your return on cash"):
				want = profit - now["target_roi"]*near(x.at.Line("cash_needed"))
			case strings.HasPrefix(row[0], "the $"):
				want = near(x.at.Line("cash_to_spare").Add(decimal.NewFromFloat(now["cash_available"])).Sub(b.answer.Line("cash_available")))
			default:
				continue
			}
			held++
			require.True(t, same(want, row[n+1]), "%s, %s: %s, not %v", row[0], x.head, row[n+1], want)
			require.Equal(t, map[bool]string{true: "met", false: "missed"}[want >= 0], rows[i+1][n+1])
		}
	}
	require.Equal(t, 3*(len(trials)-1), held)
}

// A target that the file does not state is no input of the workbook, for no verdict there would
// follow it; without any, that no money is lost is one, and follows its amount.
func TestOnlyStatedTargetsAreInputs(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/juniper-lane.yaml")
	require.NoError(t, err)
	for stated, want := range map[string][]string{
		"targets: {profit: $25000, roi: 30%}": {"target_profit", "target_roi"}, "targets: {margin: 10%}": {"target_margin"}, "": {"target_profit"},
	} {
		b, err := made(answered(t, strings.Replace(string(text), "targets: {profit: $25000, roi: 30%}", stated, 1)), Options{})
		require.NoError(t, err)
		var open []string
		for i, c := range b.model.Cells {
			if at := b.places[i]; strings.HasPrefix(c.Line.Name, "target_") && at.grid == b.inputs {
				open = append(open, c.Line.Name)
			}
		}
		require.Equal(t, want, open, stated)
	}
}

// wordsAt is where it says whether the words still fit.
func wordsAt(t *testing.T, g *grid) string {
	for i, row := range g.rows {
		for j, c := range row {
			if s, is := c.value.(string); is && strings.HasPrefix(s, "The words above fit") {
				return address(i+1, j+1, false, false)
			}
		}
	}
	t.Fatal("it is not said whether the words fit")
	return ""
}

func fileOf(t *testing.T, b *book) *excelize.File {
	t.Helper()
	var out bytes.Buffer
	_, err := b.file.WriteTo(&out)
	require.NoError(t, err)
	f, err := excelize.OpenReader(&out)
	require.NoError(t, err)
	return f
}

// The headline is a formula: at a price far above the offer it says that a target is missed,
// while the advice stays marked as that of the file.
func TestHeadlineFollowsThePrice(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true})
	g := sheetOf(b, "The deal")
	row := 0
	for i, r := range g.rows {
		if len(r) > 0 && r[0].look.role == lead {
			require.Zero(t, row, "one line is read first")
			row = i + 1
			require.NotEmpty(t, r[0].formula)
		}
	}
	require.Contains(t, strings.Join(texts(g), "\n"), "As the file stood: ")
	prices := map[string]string{"$100,000": "every target holds", "$900,000.50": "a target is missed"}
	files := map[string]string{}
	var paths []string
	for said, x := range map[string]float64{"$100,000": 100000, "$900,000.50": 900000.5} {
		b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true})
		at := b.places[b.model.Find(b.model.Root, "price").Index]
		at.grid.rows[at.row-1][at.col-1].value = x
		path := filepath.Join(t.TempDir(), "house.xlsx")
		path = strings.Replace(path, "house", "at"+itoa(int(x)), 1)
		saved(t, path, b)
		paths, files[path] = append(paths, path), said
	}
	for path, f := range recomputed(t, paths...) {
		got, err := f.GetCellValue("The deal", address(row, 1, false, false))
		require.NoError(t, err)
		require.Contains(t, got, files[path]+" "+prices[files[path]])
	}
}

// A day of a dated table may lie before the purchase, below nothing.
func TestATableFromBeforeThePurchaseIsSound(t *testing.T) {
	path := filepath.Join(t.TempDir(), "early.xlsx")
	b, err := made(answered(t, `purchase: {price: $150k, date: 2026-03-30}
value: {after-repair value: $250k}
time: {renovation: 2 months, marketing: 1 month, escrow: 1 month}
selling: {tax: {tables: [{until: 2026-03-01, amount: 1%}, {from: 2026-03-01, amount: 1.1%}]}}
`), Options{Uncached: true})
	require.NoError(t, err)
	saved(t, path, b)
	for _, f := range recomputed(t, path) {
		said, err := f.GetCellValue("The deal", "A2")
		require.NoError(t, err)
		require.Equal(t, "At a price of $150,000 no money is lost.", said)
	}
}

// What is typed over in the sheet may be what the program would refuse in a file: a room whose
// floor is less than what stands on it or whose walls do not meet, a price under the deposit,
// a share of more than the whole. The checks then speak
// up, and the headline does not say that every target holds.
func TestInputsThatCannotBeSpeakUp(t *testing.T) {
	files, paths := map[string]string{}, []string{}
	for _, x := range []struct {
		name, deal, member, line string
		value                    any
		says                     string
	}{
		{"words", "mill-road", "", "seller_credit", "7.4k", "NOT SO"}, {"minus", "mill-road", "", "seller_credit", -7400.0, "BELOW NOTHING"},
		{"lump", "juniper-lane", "electrical", "labour", "$3,900", "NOT SO"}, {"choice", "juniper-lane", "first loan", "interest_on", "whole loan", "NOT SO"},
		{"phase", "juniper-lane", "", "renovation", "three months", "NOT SO"}, {"value", "juniper-lane", "", "after_repair_value", "359k", "NOT SO"},
		{"blank", "juniper-lane", "first loan", "rate", nil, "NOT SO"}, {"half", "juniper-lane", "first loan", "of_remainder", 0.5, "NOT SO"},
		{"holds", "salt-creek", "", "container_holds", 0.0, "NOT SO"}, {"hours", "salt-creek", "", "own_hours_a_week", 0.0, "NOT SO"},
		{"asis", "walnut-row", "", "marketing", 1, ""}, {"loan", "juniper-lane", "first loan", "renovation_share", 1, ""}, {"falling", "juniper-lane", "", "market_change", -0.05, ""},
		{"room", "walnut-row", "hall bath, floor", "length", 2, "BELOW NOTHING"}, {"wall", "walnut-row", "hall bath", "opening_width", 60, "BELOW NOTHING"},
		{"walk", "walnut-row", "living room, east 17'", "walk_east", 17, "THEY DO NOT"}, {"price", "walnut-row", "", "price", 100, "OVER THE PRICE"}, {"credit", "juniper-lane", "", "seller_credit", 900_000, "OVER THE PRICE"},
		{"over", "juniper-lane", "first loan", "renovation_share", 1.2, "BEYOND IT"}, {"price_share", "juniper-lane", "first loan", "price_share", 1.01, "BEYOND IT"},
		{"curve", "juniper-lane", "", "curve", "sometimes", "NOT SO"}, {"unstated", "juniper-lane", "", "curve", "stated", "NOT SO"},
		{"amortised", "orchard-street", "second loan", "amortising_months", 360, "THEY DO NOT"}, {"level", "juniper-lane", "first loan", "amortising_months", 360, ""}, {"reserve", "juniper-lane", "first loan", "reserve_wanted", 4_000, "THEY DO NOT"}, {"remainder", "juniper-lane", "first loan", "of_remainder", 1, "THEY DO NOT"},
		{"ways", "juniper-lane", "first loan", "fixed_amount", 50_000, "ONE HAS"},
		{"nothing", "juniper-lane", "", "after_repair_value", 0, "UNDER IT"}, {"worthless", "juniper-lane", "", "after_repair_value", 999, "UNDER IT"},
		{"outside", "mill-road", "", "renovation", 0, "NONE DOES"}, {"timeless", "juniper-lane", "", "lead_in renovation standstill marketing late_sale escrow", 0, "NO TIME"},
		{"side", "walnut-row", "hall bath, floor", "length", 0, "NOT ALL"}, {"doors", "walnut-row", "hall bath", "number", 1.5, "NOT ALL"},
		{"lag", "juniper-lane", "first loan", "lag", 1.5, "NOT ALL"}, {"edge", "juniper-lane", "transfer tax", "upper", 0, "NOT ALL"},
		{"contingency", "juniper-lane", "", "contingency_share", 1.01, "BEYOND IT"}, {"discount", "walnut-row", "", "expected_discount", 1, "BEYOND IT"},
		{"hourly", "juniper-lane", "", "own_labour_rate", 1_000_000, "NOT ALL"}, {"term", "mill-road", "hard money", "term", 601, "NOT ALL"}, {"extension", "mill-road", "hard money", "extension_months", 61, "NOT ALL"},
		{"charge", "juniper-lane", "listing side commission", "share", 5, "BEYOND IT"}, {"exit", "mill-road", "hard money", "exit_share", 0.26, "BEYOND IT"},
	} {
		for _, whom := range []Reader{Owner, Lender} {
			if x.name == "hourly" && whom == Lender { // who is not shown it
				continue
			}
			b := bookOf(t, "../../scenarios/"+x.deal+".yaml", Options{Uncached: true, For: whom})
			typed := false
			for i, c := range b.model.Cells {
				if at := b.places[i]; at.grid != nil && strings.HasPrefix(c.Member.Path(), x.member) && slices.Contains(strings.Fields(x.line), c.Line.Name) {
					at.grid.rows[at.row-1][at.col-1].value = x.value
					typed = true
				}
			}
			require.True(t, typed, x.name)
			path := filepath.Join(t.TempDir(), x.name+itoa(int(whom))+".xlsx")
			saved(t, path, b)
			paths, files[path] = append(paths, path), x.says
		}
	}
	for path, f := range recomputed(t, paths...) {
		all := printed(t, f, "The deal")
		if filepath.Base(path) == "curve0.xlsx" { // the words of no other input give an error either
			for _, sheet := range f.GetSheetList() {
				require.NotContains(t, printed(t, f, sheet), "#", sheet)
			}
		}
		require.Contains(t, all, "shares are within their whole", path)
		if files[path] == "" {
			require.NotContains(t, all, "BELOW NOTHING", path)
			require.NotContains(t, all, "OVER THE PRICE", path)
			require.NotContains(t, all, "BEYOND IT", path)
			require.NotContains(t, all, "THEY DO NOT", path)
			require.NotContains(t, all, "NOT ALL", path)
			require.NotContains(t, all, cannotBe, path)
			continue
		}
		require.Contains(t, all, files[path], path)
		if !strings.Contains(path, "1.xlsx") {
			require.Contains(t, all, cannotBe, path)
			require.NotContains(t, all, "every target holds.", path)
		}
	}
}

// printed is all that stands in a sheet.
func printed(t *testing.T, f *excelize.File, sheet string) (all string) {
	rows, err := f.GetRows(sheet)
	require.NoError(t, err)
	for _, row := range rows {
		all += strings.Join(row, "\n") + "\n"
	}
	return all
}

// The lender's page says what a payoff is made of: principal alone where interest is paid as
// it falls due.
func TestPayoffIsWordedByWhatIsInIt(t *testing.T) {
	for _, x := range []struct{ loan, says string }{
		{"", "pays off bank: principal"},
		{", interest paid: at payoff", "pays off bank: principal, interest due with it"},
		{", interest paid: added monthly", "pays off bank: principal, interest added to it"},
		{", exit fee: 1%", "pays off bank: principal, exit fee"},
	} {
		text := strings.Replace(strings.ReplaceAll(fmt.Sprintf(told, "$200k", ""), "%%", "%"), "rate: 11%", "rate: 11%"+x.loan, 1)
		b, err := made(answered(t, text), Options{For: Lender})
		require.NoError(t, err)
		require.Contains(t, texts(sheetOf(b, "The deal")), x.says)
	}
}

// The lender's page tells the day of the purchase beside that of the sale.
func TestLenderSeesThePurchaseDate(t *testing.T) {
	b, err := made(scenario(t, "juniper-lane"), Options{For: Lender})
	require.NoError(t, err)
	for _, row := range sheetOf(b, "The deal").rows {
		for i, c := range row {
			if c.value == "the house is bought" {
				require.Equal(t, 46083.0, row[i+1].value) // 2026-03-02
				require.Equal(t, day, row[i+1].look.format)
				return
			}
		}
	}
	require.Fail(t, "no day of the purchase")
}

// Beside the budget the lender's page shows what of it nobody knows yet.
func TestLenderSeesWhatIsSetAside(t *testing.T) {
	a := answered(t, twoLoans)
	b, err := made(a, Options{For: Lender})
	require.NoError(t, err)
	shown := map[string]any{}
	for _, row := range sheetOf(b, "The deal").rows {
		if len(row) > 1 {
			if s, is := row[0].value.(string); is {
				shown[s] = row[1].value
			}
		}
	}
	require.Positive(t, a.Line("not_seen").Sign())
	require.Equal(t, near(a.Line("not_seen")), shown["  of it set aside for parts not seen yet"])
	require.Equal(t, near(a.Line("contingency")), shown["  of it contingency"])
}

// No heading of the notes stands alone at the foot of a page.
func TestNoHeadingAlone(t *testing.T) {
	g := &grid{widths: []float64{34, 66}}
	for range 40 {
		g.set(g.next(), 1, text("words", look{}))
		g.height(g.next()-1, 16.1)
	}
	for g.next() < 60 {
		g.heading(g.next(), 1, 2, "a heading")
		g.paragraph(g.next(), 1, 2, "words", look{})
	}
	g.together()
	require.Equal(t, []int{41}, g.breaks)
}

// Measures are rounded where they are shown, and units are in words.
func TestMeasuresAreRounded(t *testing.T) {
	for _, whom := range []Reader{Owner, Lender} {
		b, err := made(scenario(t, "walnut-row"), Options{For: whom})
		require.NoError(t, err)
		for _, g := range b.all() {
			for i, row := range g.rows {
				for j, c := range row {
					if s, is := c.value.(string); is && c.look.role == heading || is && c.look.role == small {
						require.NotRegexp(t, "sqft|cuft", s, "%s!%s", g.name, address(i+1, j+1, false, false))
					}
					x, is := c.value.(float64)
					if !is || g == b.workingGrid || g == b.months || c.look.format != plain && c.look.format != "" {
						continue
					}
					require.LessOrEqual(t, len(strconv.FormatFloat(x, 'f', -1, 64)), 8, "%s!%s", g.name, address(i+1, j+1, false, false))
				}
			}
		}
	}
}

// A room that lacks an option says so in the place of its cost, and below stands what that means.
func TestRoomsAsTheyAreBeside(t *testing.T) {
	const path = "../../scenarios/walnut-row.yaml"
	left := answerOf(t, path, deal.Set{Path: "scope.kitchen", Value: "as it is"})
	g := sheetOf(bookOf(t, path, Options{Columns: []answer.Column{{Name: "kitchen left", Answer: left}}}), "Options side by side")
	row := slices.IndexFunc(g.rows, func(r []cell) bool { return len(r) > 0 && r[0].value == "kitchen" })
	require.Positive(t, row)
	require.IsType(t, 0.0, g.rows[row][1].value)
	require.Equal(t, "as it is", g.rows[row][2].value)
	require.Contains(t, texts(g), answer.OfRooms)
}
