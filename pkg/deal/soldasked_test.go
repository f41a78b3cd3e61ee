package deal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

const askedSales = unvalued + `comps:
  sold:
    1 A St: {sold: 2025-11-14, price: $300k}
    2 B St: {sold: 2025-11-15, price: $310k}
    3 C St: {sold: 2025-11-16, price: $320k, terms: sheriff}
    4 D St: {sold: 2026-03-02, price: $330k}
`

func asking(t *testing.T, text string, strike, add []string) *deal.Deal {
	t.Helper()
	d, found := deal.ReadWith(deal.Options{Comps: deal.CompsAsked{Strike: strike, Add: add}}, "a.yaml", []byte(text))
	require.NotNil(t, d, "%v", found)
	return d
}

func mistake(t *testing.T, text string, strike, add []string) string {
	t.Helper()
	d, found := deal.ReadWith(deal.Options{Comps: deal.CompsAsked{Strike: strike, Add: add}}, "a.yaml", []byte(text))
	require.Nil(t, d)
	require.Len(t, found.Errors(), 1)
	return found.Errors()[0].Error()
}

func whyNot(d *deal.Deal) map[string]string {
	out := map[string]string{}
	for _, p := range d.Comps.NotUsed {
		out[d.Comps.ID(&p.Sold)] = p.Why
	}
	return out
}

// Each sale that is written out is either used or named with why not, never both.
func TestEverySaleIsUsedOrSaysWhyNot(t *testing.T) {
	const terms, late, less = `its terms speak against an open sale at arm's length ("sheriff")`, "not before the day of the value", "less like the house than those that are used"
	d := asking(t, askedSales, nil, nil)
	require.Equal(t, map[string]string{"3 C St": terms, "4 D St": late}, whyNot(d))
	d = asking(t, askedSales, []string{"1 A St"}, []string{"3 C St"})
	require.Equal(t, map[string]string{"1 A St": "struck", "4 D St": late}, whyNot(d))
	require.Equal(t, 1, d.Comps.Struck)
	d = asking(t, askedSales+"  take: 1\n", nil, nil)
	require.Equal(t, map[string]string{"1 A St": less, "3 C St": terms, "4 D St": late}, whyNot(d))
}

// The command line goes before the file; what one of them asks both ways is refused.
func TestStruckAndAdded(t *testing.T) {
	d := asking(t, askedSales+"  strike: [1 A St]\n  add: [3 C St]\n", []string{"3 C St"}, []string{"1 A St"})
	require.Equal(t, "struck", whyNot(d)["3 C St"])
	require.NotContains(t, whyNot(d), "1 A St")
	require.Contains(t, mistake(t, askedSales, []string{"1 A St"}, []string{"1 a st"}), `--add:1: error: "1 a st" is both struck and added`)
	require.Contains(t, mistake(t, askedSales, nil, []string{"4 D St"}), "4 D St cannot be added: it was sold on 2026-03-02, and the value is for 2026-03-02")
	require.Contains(t, mistake(t, unvalued, nil, nil), "the after-repair value is not given")
	require.Contains(t, mistake(t, askedSales, nil, []string{"9 X"}), `there is no sale "9 X" to add`, "and not that the value is missing")
}

// Of a sale that stands in a table twice, striking one row leaves the other.
func TestStrikingOneOfTwoRowsLeavesTheOther(t *testing.T) {
	text := unvalued + "comps:\n  table: |\n    address  sold on     price\n" + strings.Repeat("    1 A St   2025-11-14  300000\n", 2) + "    2 B St   2025-11-15  310000\n"
	require.Len(t, asking(t, text, nil, nil).Comps.Members, 2)
	for _, line := range []string{"line 6", "line 7"} {
		require.Len(t, asking(t, text, []string{line}, nil).Comps.Members, 2, line)
	}
	require.Len(t, asking(t, text, []string{"1 A St"}, nil).Comps.Members, 1, "an address is that of both rows")
}

// Where no sale can be used, the mistake is said once, with what is the matter.
func TestNoSaleToValueBy(t *testing.T) {
	one := unvalued + "comps:\n  sold:\n    1 A St: {sold: 2025-11-14, price: $300k}\n"
	const begin = "a.yaml:3:1: error: the after-repair value is not given, and "
	for text, want := range map[string]string{
		unvalued + "comps: {sold: {}}\n":                                           "comps names no sale",
		unvalued + "comps:\n  table: |\n    address  sold on  price\n":             "comps names no sale",
		strings.Replace(one, "2025-11-14", "2026-03-02", 1):                        "the one sale under comps cannot be used",
		strings.Replace(one, "$300k", "$300k, concessions: $301k", 1):              "the one sale under comps cannot be used",
		one + "  strike: [1 A St]\n":                                               "the one sale under comps is struck",
		one + "    2 B St: {sold: 2026-11-14, price: $300k}\n  strike: [1 A St]\n": "none of the 2 sales under comps can be used, 1 of them struck",
	} {
		require.Equal(t, begin+want, mistake(t, text, nil, nil))
	}
	from := deal.CompsAsked{From: "b.csv", Text: []byte("a,b\n1,2\n")}
	_, found := deal.ReadWith(deal.Options{Comps: from}, "a.yaml", []byte(unvalued))
	require.Len(t, found.Errors(), 2, "that its columns are missing, and not that the value is")
}

// One late sale of a file is one, two are two.
func TestLateSalesOfAFileAreCounted(t *testing.T) {
	for rows, want := range map[string]string{"": "1 sale of the file is of 2026-03-02 or later, so not used: 2 B St\n", "3 C St,2026-07-01,300000\n": "2 sales of the file are of 2026-03-02 or later, so not used: 2 B St and 1 more\n"} {
		from := deal.CompsAsked{From: "b.csv", Text: []byte("address,sold on,price\n1 A St,2025-11-14,300000\n2 B St,2026-03-02,300000\n" + rows)}
		d, found := deal.ReadWith(deal.Options{Comps: from}, "a.yaml", []byte(unvalued))
		require.NotNil(t, d)
		require.Equal(t, "b.csv", d.Comps.InPlace)
		require.Contains(t, found.Error(), want)
	}
}

// A line that two files have is asked about, and so is an address that two sales have parts
// of; an address finds its sale however it is spelt.
func TestWhichSaleIsNamed(t *testing.T) {
	const text = unvalued + `comps:
  file: small.csv
  table: |
    address,sold,price
    1 Pine Ct,2025-11-14,310000
    2 Pine Ct,2025-11-15,320000
`
	open := func(string) ([]byte, error) {
		return []byte("address,sold,price\n1 Elm St,2025-11-14,300000\n2 Elm St,2025-11-15,305000\n3 Elm St,2025-11-16,307000\n4 Elm St,2025-11-17,301000\n12 ELM ST TOLEDO,2025-11-18,302000\n12 ELM ST MAUMEE,2025-11-19,303000\n,2025-11-20,304000\n,2025-11-21,306000\n"), nil
	}
	strike := func(names ...string) (*deal.Deal, string) {
		d, found := deal.ReadWith(deal.Options{Open: open, Comps: deal.CompsAsked{Strike: names}}, "a.yaml", []byte(text))
		if d == nil {
			require.Len(t, found.Errors(), 1)
			return nil, found.Errors()[0].Error() + "; " + found.Errors()[0].Hint
		}
		return d, ""
	}
	for name, want := range map[string]string{
		"line 7":    `"line 7" names 1 Pine Ct (line 7 of a.yaml) and 12 ELM ST MAUMEE (line 7 of small.csv); write which to strike: its address in full, or its line with the file, e.g.   line 7 of a.yaml`,
		"12 Elm St": `"12 Elm St" names 12 ELM ST TOLEDO (line 6 of small.csv) and 12 ELM ST MAUMEE (line 7 of small.csv)`,
		"line 8":    `"line 8" names 2 Pine Ct (line 8 of a.yaml) and sale of 2025-11-20 for $304,000 (line 8 of small.csv)`,
		"5 Elm St":  "there is no sale",
	} {
		_, says := strike(name)
		require.Contains(t, says, want)
	}
	for name, want := range map[string]string{
		"line 7 of a.yaml": "1 Pine Ct", "line 7 of small.csv": "12 ELM ST MAUMEE", "line 9": "line 9", "line 2": "1 Elm St",
		"1 elm street": "1 Elm St", "2 Pine Court, Toledo OH": "2 Pine Ct", "2 Pine": "2 Pine Ct", "12 Elm Street, Toledo": "12 ELM ST TOLEDO",
	} {
		d, says := strike(name)
		require.NotNil(t, d, says)
		require.Equal(t, 1, d.Comps.Struck, name)
		require.Equal(t, "struck", whyNot(d)[want], name)
	}
}

// What she writes out beside a file is used, all of it, and takes the places of the least
// alike of the file; of sales without a file, take picks the most alike, not the old ones.
func TestAllOfHerOwnAreUsed(t *testing.T) {
	var rows strings.Builder
	rows.WriteString("address,sold,price,sq ft\n")
	for i := range 30 {
		fmt.Fprintf(&rows, "%d Far St,2025-%02d-03,%d,%d\n", i+1, 1+i%12, 250_000+1000*i, 1200+7*i)
	}
	how := deal.Options{Open: func(string) ([]byte, error) { return []byte(rows.String()), nil }}
	const own = "  sold:\n    1 A St: {sold: 2025-06-03, price: $268k, living area: 1700}\n    2 A St: {sold: 2025-06-04, price: $268.5k, living area: 1720}\n    3 A St: {sold: 2025-06-05, price: $269k, living area: 1690}\n"
	for take, want := range map[string]int{"": 16, "  take: 2\n": 3, "  take: 5\n": 5} {
		d, found := deal.ReadWith(how, "a.yaml", []byte(unvalued+"house: {living area: 1240 sq ft}\ncomps:\n  file: county.csv\n"+own+take))
		require.NotNil(t, d, "%v", found)
		var used []string
		for _, m := range d.Comps.Members {
			used = append(used, m.Label)
		}
		require.Len(t, used, want)
		require.Subset(t, used, []string{"1 A St", "2 A St", "3 A St"})
		require.Empty(t, whyNot(d))
	}
	d := asking(t, unvalued+"comps:\n  take: 3\n"+own+"    4 A St: {sold: 2018-06-04, price: $180k, living area: 1690}\n", nil, nil)
	require.Equal(t, map[string]string{"4 A St": "less like the house than those that are used"}, whyNot(d))
	require.Len(t, asking(t, unvalued+"comps:\n"+own+"    4 A St: {sold: 2018-06-04, price: $180k, living area: 1690}\n", nil, nil).Comps.Members, 4)
}

// A house that sold twice within a year for a fifth more and over was likely redone between.
func TestSoldTwice(t *testing.T) {
	said := func(first, day string) (out []string) {
		d, found := deal.Read("a.yaml", []byte(unvalued+"comps:\n  table: |\n    address      sold on     price\n    12 Elm St    "+day+"  "+first+"\n    12 Elm Street  2025-11-14  300000\n    3 Elm St     2025-11-15  310000\n"))
		require.NotNil(t, d, "%v", found)
		for _, f := range found {
			if f.Code == "sold-twice" {
				out = append(out, f.String())
			}
		}
		return out
	}
	require.Equal(t, []string{"a.yaml:6:5: warning: 12 Elm St was sold on 2025-03-14 for $240,000, and on 2025-11-14 for $300,000 (line 7), 25% more: it was likely redone between\n  hint: strike the sale in which it was not what your house will be, by its line: strike: [line 6]   , below the sales, so that their lines stay"}, said("240000", "2025-03-14"))
	require.Empty(t, said("250000", "2025-03-14"), "a fifth and no more")
	require.Empty(t, said("240000", "2024-03-14"))
	require.Empty(t, said("340000", "2025-03-14"))
}

// Of a sale recorded twice within 30 days that which is written out counts, whenever it was
// recorded, but for one that is not before the day of the value.
func TestOfASaleRecordedTwiceHersCounts(t *testing.T) {
	open := func(string) ([]byte, error) {
		return []byte("address,sale date,price,sq ft\n12 Elm St,2025-12-03,268000,1240\n14 Elm St,2025-11-03,262000,1240\n"), nil
	}
	used := func(day string, add ...string) (lines []int, codes []string, all string) {
		text := unvalued + "house: {living area: 1240 sq ft}\ncomps:\n  file: hers.csv\n  sold:\n    12 Elm Street: {sold: " + day + ", price: $268k, concessions: $8,000}\n"
		d, found := deal.ReadWith(deal.Options{Open: open, Comps: deal.CompsAsked{Add: add}}, "a.yaml", []byte(text))
		require.NotNil(t, d, "%v", found)
		for _, row := range d.Comps.Value.Rows {
			if strings.HasPrefix(row.Label, "12 Elm") {
				lines = append(lines, d.Comps.Place(&row.Sold).Line)
			}
		}
		for _, f := range found {
			codes = append(codes, f.Code)
			all += f.String() + "\n"
		}
		slices.Sort(lines)
		return lines, codes, all
	}
	lines, codes, _ := used("2025-12-20")
	require.Equal(t, []int{7}, lines)
	require.NotContains(t, codes, "sale-counted-twice")
	lines, _, _ = used("2025-11-20")
	require.Equal(t, []int{7}, lines)
	lines, codes, all := used("2025-12-20", "line 2 of hers.csv")
	require.Equal(t, []int{2, 7}, lines)
	require.Contains(t, codes, "sale-counted-twice")
	require.Contains(t, all, "hers.csv:2:1: warning: 12 Elm St counts twice: it was sold on 2025-12-03 for $268,000, and on 2025-12-20 for as much (line 7 of a.yaml), likely one sale, recorded twice\n  hint: strike one of them, unless it was sold twice: strike: [line 7 of a.yaml]")
	text := unvalued + "comps:\n  file: hers.csv\n  sold:\n    12 Elm Street: {sold: 2026-03-02, price: $268k, baths: 2}\n"
	late := deal.Options{Open: func(string) ([]byte, error) {
		return []byte("address,sale date,price\n12 Elm St,2026-02-10,268000\n"), nil
	}}
	d, found := deal.ReadWith(late, "a.yaml", []byte(text))
	require.NotNil(t, d, "%v", found)
	require.Len(t, d.Comps.Value.Rows, 1, "the later one is not used, so the list's row is")
}
