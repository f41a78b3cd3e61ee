package workbook

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
)

// typeOf types a value into an input of the member that is called so.
func (b *book) typeOf(t *testing.T, label, line string, value any) string {
	for _, c := range b.model.Cells {
		if at := b.places[c.Index]; b.typed(c) && c.Member.Label == label && c.Line.Name == line {
			at.grid.rows[at.row-1][at.col-1].value, at.grid.rows[at.row-1][at.col-1].formula = value, ""
			return b.whereIs(c)
		}
	}
	require.Fail(t, "no such input", "%s of %s", line, label)
	return ""
}

// What the file doubts of charges, of a year's bills and of the contingency the sheet asks to look
// at again, and so weeks in a cell of months.
func TestTheSheetDoubtsWhatTheFileDoes(t *testing.T) {
	look := itoa(int(unusual))
	root := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{}).model.Root.Label
	all := map[string][]typed{
		"beyond": {
			{"property tax", "a_year", 39000.0, look}, {"builder's risk and vacant cover", "a_year", 19400.0, look}, {"county transfer tax", "share", 0.011, look},
			{root, "expected_discount", 0.1, look}, {root, "contingency_share", 0.0, look}, {root, "marketing", 6.0, look}, {root, "escrow", 5.0, look},
		},
		"within": {
			{"property tax", "a_year", 4900.0, "0"}, {"builder's risk and vacant cover", "a_year", 2400.0, "0"}, {"county transfer tax", "share", 0.006, "0"},
			{root, "expected_discount", 0.04, "0"}, {root, "contingency_share", 0.2, "0"}, {root, "marketing", 3.0, "0"}, {root, "escrow", 2.0, "0"},
		},
	}
	says, paths := map[string]map[string]string{}, []string{}
	save := func(name string, b *book) map[string]string {
		path := filepath.Join(t.TempDir(), name+".xlsx")
		saved(t, path, b)
		says[path], paths = map[string]string{}, append(paths, path)
		return says[path]
	}
	for name, inputs := range all {
		b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true})
		want := b.typeAll(t, inputs...)
		maps.Copy(save(name, b), want)
	}
	cheap := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{Uncached: true}) // what a bill is beside the price follows that
	cheap.typeOf(t, root, "price", 40000.0)
	save("beyond-price", cheap)[cheap.whereIs(cheap.model.Find(cheap.member(t, "property tax"), "a_year"))] = look
	b := bookOf(t, "../../scenarios/salt-creek.yaml", Options{Uncached: true})
	place := b.typeOf(t, "deed stamp", "unit_size", 0.0)
	save("stamp", b)[place] = itoa(int(noDivisor) + plainly)
	for path, f := range recomputed(t, paths...) {
		for place, want := range says[path] {
			require.Equal(t, want, flawAt(t, f, place), place)
			if strings.Contains(place, "marketing") {
				require.Contains(t, place, "in months of 4.35 weeks")
			}
		}
		page := printed(t, f, "The deal")
		require.Equal(t, strings.Contains(path, "beyond"), strings.Contains(page, "LOOK AGAIN"), path)
		require.Equal(t, strings.Contains(path, "within"), strings.Contains(page, flawless), path)
	}
}

// member is the first that is called so.
func (b *book) member(t *testing.T, label string) *model.Member {
	for _, c := range b.model.Cells {
		if c.Member.Label == label {
			return c.Member
		}
	}
	require.Fail(t, "no such member", label)
	return nil
}

// A contingency that is low in the file is to be looked at again where it is lower.
func TestAContingencyLowerStillIsDoubted(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{})
	c := b.model.Find(b.model.Root, "contingency_share")
	given := *c.Given
	given.Number = decimal.New(4, -2)
	c.Given = &given
	usual := b.usualOf(c)
	require.Len(t, usual, 1)
	require.Equal(t, "0.04", usual[0].At.String())
}

// What figures are divided by where it is stated, the sheet takes from more than nothing on.
func TestWhatDividesIsMoreThanNothing(t *testing.T) {
	seen := map[string]bool{}
	for _, name := range []string{"salt-creek", "larkspur-way"} {
		b := bookOf(t, "../../scenarios/"+name+".yaml", Options{})
		for _, c := range b.model.Cells {
			if !b.typed(c) || !slices.Contains(divideSome, c.Line.Name) || !b.answer.Values.Of(c).IsPositive() {
				continue
			}
			seen[c.Line.Name] = true
			rule, err := b.ruleOf(c)
			require.NoError(t, err)
			require.Equal(t, "stop", *rule.ErrorStyle)
			require.False(t, rule.AllowBlank, c.Name())
			if low, _, limited := b.rangeOf(c); limited {
				require.True(t, low.Open, c.Name())
			}
			require.Contains(t, b.flawRules(c)[1].holds("B4"), ">0")
		}
	}
	require.True(t, seen["unit_size"] && seen["covers"], seen)
}

// An input that the file says in weeks tells what that is in months, as its cell holds it.
func TestWeeksStandBesideTheirMonths(t *testing.T) {
	b := bookOf(t, "../../scenarios/juniper-lane.yaml", Options{})
	c := b.model.Find(b.model.Root, "marketing")
	require.Equal(t, "juniper-lane.yaml:34  5 weeks = 1.15 months", b.source(c))
}
