package workbook

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

func scenario(t testing.TB, name string) *answer.Answer {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../scenarios", name+".yaml"))
	require.NoError(t, err)
	return answered(t, string(text))
}

func opened(t testing.TB, a *answer.Answer, how Options) *excelize.File {
	t.Helper()
	var w bytes.Buffer
	require.NoError(t, Write(&w, a, how))
	f, err := excelize.OpenReader(&w, excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	return f
}

// The form of a trade names every piece of its work with its room and how much, and no
// price; filled in, it is read back as quotes for those items.
func TestTradeFormIsReadBack(t *testing.T) {
	a := scenario(t, "walnut-row")
	f := opened(t, a, Options{Trade: "Tile"})
	require.Equal(t, []string{pricebook.FormSheet}, f.GetSheetList())
	rows, err := f.GetRows(pricebook.FormSheet)
	require.NoError(t, err)
	want := map[string]bool{}
	for m, w := range a.Deal.Work {
		if w.Item.Trade == "tile" && !a.Of(m, "quantity").IsZero() {
			want[w.Item.Name] = true
		}
	}
	got := map[string]bool{}
	for i, row := range rows {
		for j := range row {
			formula, err := f.GetCellFormula(pricebook.FormSheet, address(i+1, j+1, false, false))
			require.NoError(t, err)
			require.Empty(t, formula)
		}
		if len(row) > 5 && i > 8 {
			got[row[0]] = true
			require.Equal(t, "tile", row[1])
			require.LessOrEqual(t, len(row), 8, "what is to be filled in is blank: %v", row)
			require.NoError(t, f.SetCellValue(pricebook.FormSheet, address(i+1, 9, false, false), 7.77))
		}
	}
	require.Equal(t, want, got)
	var back bytes.Buffer
	_, err = f.WriteTo(&back)
	require.NoError(t, err)
	quotes, _, found := pricebook.ReadWorkbook("tile.xlsx", back.Bytes(), pricebook.Starter())
	require.Empty(t, found)
	require.Len(t, quotes, len(want))
	for _, q := range quotes {
		require.True(t, want[q.Name])
		coats := decimal.NewFromInt(int64(pricebook.Starter().Item(q.Name).Coats))
		require.True(t, q.Price.Sub(decimal.RequireFromString("7.77").Div(coats)).Abs().LessThan(decimal.New(1, -3)), "%s %s", q.Name, q.Price)
	}
}

// The trade stands off the item beside it: a long name fills its column.
func TestTradesOfAFormStandOff(t *testing.T) {
	b := bookOf(t, "../../scenarios/larkspur-way.yaml", Options{BlankPrices: true})
	for _, row := range sheetOf(b, pricebook.FormSheet).rows[8:] {
		require.True(t, row[1].look.off, row[0].value)
	}
}

// The form of the whole job has every trade, and a deal of stated lines has them too.
func TestFormOfTheWholeJob(t *testing.T) {
	rows, err := opened(t, scenario(t, "juniper-lane"), Options{BlankPrices: true}).GetRows(pricebook.FormSheet)
	require.NoError(t, err)
	require.Len(t, rows, 9+13)
	for _, row := range rows[9:] {
		for _, cell := range row {
			require.NotContains(t, cell, "$")
		}
	}
}

// Lines of the file with own hours are marked as own work, with labour beside them in part.
func TestOwnWorkInLinesIsMarked(t *testing.T) {
	rows, err := opened(t, answered(t, strings.Replace(twoLoans, "labour: $3,000.10", "labour: $3,000.10, own hours: 5", 1)), Options{BlankPrices: true}).GetRows(pricebook.FormSheet)
	require.NoError(t, err)
	var done []string
	for _, row := range rows[9:12] {
		done = append(done, row[3])
	}
	require.Equal(t, []string{"bath [planned by own hands]", "reroof", "all rooms [in part planned by own hands]"}, done)
}

// Work that a bidder adds below a form goes into the deal as the hint says it: the line costs
// what was asked.
func TestWorkAddedBelowAFormIsTaken(t *testing.T) {
	f := opened(t, answered(t, twoLoans), Options{BlankPrices: true})
	rows, err := f.GetRows(pricebook.FormSheet)
	require.NoError(t, err)
	for col, v := range map[int]any{2: "tile", 4: "haul: all of it", 11: 300} {
		require.NoError(t, f.SetCellValue(pricebook.FormSheet, address(len(rows)+1, col, false, false), v))
	}
	var back bytes.Buffer
	_, err = f.WriteTo(&back)
	require.NoError(t, err)
	_, found := pricebook.CheckWorkbook("form.xlsx", back.Bytes(), pricebook.Starter())
	require.Len(t, found, 2)
	_, line, is := strings.Cut(found[0].Hint+found[1].Hint, "under renovation, lines:   ")
	require.True(t, is)
	line, _, _ = strings.Cut(line, "}")
	before, after := answered(t, twoLoans), answered(t, strings.Replace(twoLoans, "  lines:\n", "  lines:\n    "+line+"}\n", 1))
	require.Equal(t, "300", after.Line("base_cost").Sub(before.Line("base_cost")).String())
}

func TestFormOfATradeWithoutWork(t *testing.T) {
	var w bytes.Buffer
	err := Write(&w, scenario(t, "salt-creek"), Options{Trade: "chimneys"})
	require.ErrorIs(t, err, ErrNoTrade)
	require.ErrorContains(t, err, "chimneys; there is work of: ")
	require.ErrorContains(t, err, "roofing")
	require.Zero(t, w.Len())
	err = Write(&w, answered(t, "purchase: {price: $148k}\nvalue: {after-repair value: $214k}\ntime: {marketing: 4 weeks}\n"), Options{BlankPrices: true})
	require.EqualError(t, err, "no form: the deal names no work to bid on")
}

// Whatever a deal is called, and whatever is called by it, is text: a spreadsheet program
// works none of it out.
func TestTextIsNeverAFormula(t *testing.T) {
	evil := []string{`=HYPERLINK("http://x","y")`, `+1+1`, `-1+1`, `@SUM(1)`, "=1+1"}
	text := strings.Replace(sentinels, "deal: Sentinel", "deal: '"+evil[0]+"'", 1)
	text = strings.Replace(text, "work: reroof", "work: '"+evil[1]+"'", 1)
	text = strings.Replace(text, "work: bath,", "work: '"+evil[2]+"',", 1)
	text = strings.Replace(text, "name: first loan", "name: '"+evil[3]+"'", 1)
	text = strings.Replace(text, "  bath: {size", "  '"+evil[4]+"': {size", 1)
	a := answered(t, text)
	for _, how := range []Options{{For: Owner}, {For: Lender}, {BlankPrices: true}, {Trade: "plumbing"}} {
		b, err := made(a, how)
		require.NoError(t, err)
		seen := 0
		for _, g := range b.all() {
			for _, row := range g.rows {
				for _, c := range row {
					if s, is := c.value.(string); is && c.formula == "" && strings.ContainsAny(firstOf(s), "=+-@") {
						seen++
					}
				}
			}
		}
		require.Positive(t, seen)
		f := opened(t, a, how)
		for _, sheet := range f.GetSheetList() {
			rows, err := f.GetRows(sheet)
			require.NoError(t, err)
			for i, row := range rows {
				for j, v := range row {
					if !strings.ContainsAny(firstOf(v), "=+@") {
						continue
					}
					at := address(i+1, j+1, false, false)
					formula, err := f.GetCellFormula(sheet, at)
					require.NoError(t, err)
					require.Empty(t, formula, "%s!%s %s", sheet, at, v)
					kind, err := f.GetCellType(sheet, at)
					require.NoError(t, err)
					require.Contains(t, []excelize.CellType{excelize.CellTypeInlineString, excelize.CellTypeSharedString}, kind)
				}
			}
		}
		for part, text := range parts(t, a, how) {
			for _, f := range strings.Split(text, "<f>")[1:] {
				f, _, _ = strings.Cut(f, "</f>")
				require.NotContains(t, f, "HYPERLINK", part)
				require.NotContains(t, f, "1+1", part)
			}
		}
	}
}

// However long names are, no formula has more than 255 characters in quotes or 8,192 in all,
// beyond which a spreadsheet program takes the file for damaged.
func TestLongNamesFitIntoFormulas(t *testing.T) {
	a := answered(t, sentinels)
	var named []*model.Member
	for _, set := range []string{"loan", "cost", "room"} {
		named = append(named, a.Model.Root.In(set)...)
	}
	require.Len(t, named, 5) // among the rooms is the house
	rapid.Check(t, func(t *rapid.T) {
		for _, m := range named {
			m.Label = rapid.StringOfN(rapid.SampledFrom([]rune("abc é\U0001F600'\"=")), 200, 300, -1).Draw(t, "name")
		}
		for _, whom := range []Reader{Owner, Lender} {
			b, err := made(a, Options{For: whom})
			require.NoError(t, err)
			for _, g := range b.all() {
				for _, row := range g.rows {
					for _, c := range row {
						require.LessOrEqual(t, len(c.formula), 8192, "%s: %.200s", g.name, c.formula)
						for i, part := range strings.Split(strings.ReplaceAll(c.formula, `""`, "__"), `"`) {
							require.False(t, i%2 == 1 && len(utf16.Encode([]rune(part))) > 255, "%s: in quotes: %s", g.name, part)
						}
					}
				}
			}
			require.NoError(t, b.file.Close())
		}
	})
}

// A house of many rooms has sums and checks that no formula could hold in one, so that they stand
// in several cells; what cannot be split is not written.
func TestFormulasOfAHouseOfManyRooms(t *testing.T) {
	var text strings.Builder
	text.WriteString("purchase: {price: 200k, date: 2026-05-01}\nvalue: {after-repair value: 400k}\ntime: {renovation: 3 months}\nrooms:\n")
	for i := range 80 {
		fmt.Fprintf(&text, "  room %d: {size: 10' x 12' %d\", doors: 1, windows: 1, layers: [carpet], work: {paint walls: own hands, paint ceiling: own hands, resilient plank floor: hired, baseboard: own hands}}\n", i, i%11)
	}
	a := answered(t, text.String())
	b, err := made(a, Options{Uncached: true})
	require.NoError(t, err)
	for _, g := range b.all() {
		for _, row := range g.rows {
			for _, c := range row {
				require.LessOrEqual(t, len(c.formula), 8192, "%s: %.200s", g.name, c.formula)
			}
		}
	}
	require.Contains(t, texts(sheetOf(b, "Workings")), "part of what the sheets before add up")
	all := newBatch(t)
	all.add(t, "many", b)
	all.compare(t)

	b, err = made(answerOf(t, larkspur), Options{})
	require.NoError(t, err)
	b.pages[0].set(40, 30, cell{formula: "SUM(" + strings.Repeat("1,", 4100) + "1)"})
	require.ErrorContains(t, b.stream(), "would have 8206 characters")
}

func firstOf(s string) string {
	if s == "" {
		return ""
	}
	return s[:1]
}
