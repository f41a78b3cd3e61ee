package pricebook_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// TestStarterIsWhole reads every entry of the book that ships: nothing is missing, every
// name leads somewhere and no work brings itself.
func TestStarterIsWhole(t *testing.T) {
	book := pricebook.Starter()
	for _, d := range pricebook.Audit(book) {
		t.Error(d)
	}
	require.GreaterOrEqual(t, len(book.Items()), 150)
	for _, name := range book.Items() {
		require.Nil(t, book.Product(name), "%s is both an item and a product", name)
	}
}

// TestPublishedFigures counts the items with a yield, waste or hours from a published
// table; the others say that theirs are common practice.
func TestPublishedFigures(t *testing.T) {
	book := pricebook.Starter()
	published := 0
	for _, name := range book.Items() {
		it := book.Item(name)
		sources := []string{it.Source, it.HoursSource}
		for _, u := range it.Uses {
			require.NotEmpty(t, u.Source, "%s: %s", name, u.Product)
			sources = append(sources, u.Source)
		}
		if !it.Hours.IsZero() {
			require.NotEmpty(t, it.HoursSource, name)
		}
		if slices.ContainsFunc(sources[1:], func(s string) bool {
			return s != "" && !strings.Contains(s, "no source") && !strings.Contains(s, "from memory")
		}) {
			published++
		}
	}
	t.Logf("%d items, %d with a published figure", len(book.Items()), published)
	require.GreaterOrEqual(t, published, 40)
}

// Each item stands in a line of the breakdown, does work that no other does, and has a
// name as names are looked up; each product is of use.
func TestItemsAreToldApart(t *testing.T) {
	book := pricebook.Starter()
	work := map[string]string{}
	for _, name := range book.Items() {
		it := book.Item(name)
		require.Contains(t, pricebook.Categories, it.Category, name)
		require.Regexp(t, `^([A-G][0-9]{4}|none)$`, it.Element, name)
		require.Empty(t, work[it.Work+it.Measure], "%s does the same: %s", name, it.Work)
		work[it.Work+it.Measure] = name
		require.Regexp(t, `^[a-z0-9 /.-]+$`, name)
	}
	for _, name := range book.Products() {
		require.NotEmpty(t, book.TakenBy(name), "nothing takes %s", name)
		require.Regexp(t, `^[a-z0-9 /.-]+$`, name)
		require.NotContains(t, name, "  ")
	}
	crown := book.Item("crown").Brings
	require.True(t, slices.ContainsFunc(crown, func(c pricebook.Companion) bool { return c.Item == "paint crown" }))
}

// What goes over the whole house goes under its slopes too, where living area does not.
func TestWorkOnTheHouseGoesByAllFinishedFloor(t *testing.T) {
	book := pricebook.Starter()
	for _, name := range []string{"rewire", "repipe", "air sealing", "wall patching after rewire"} {
		require.Equal(t, "house finished floor", book.Item(name).Measure, name)
	}
}

// What is paid by the month of work is a general line, so it has a price and no more.
func TestMonthlyWorkHasAPriceAlone(t *testing.T) {
	book := pricebook.Starter()
	for _, name := range book.Items() {
		it := book.Item(name)
		if it.Measure == pricebook.Months {
			require.True(t, it.Hired.IsPositive(), name)
			require.Empty(t, it.Uses, name)
			require.True(t, it.Hours.IsZero(), name)
		}
	}
}

func TestTablesByAge(t *testing.T) {
	checks := pricebook.Checks()
	require.Len(t, checks, 12)
	for _, c := range checks {
		require.Len(t, c.Rows, 4, c.Name)
		for _, name := range slices.Concat([]string{c.Item}, c.Also, c.Pieces) {
			require.NotNil(t, pricebook.Starter().Item(name), "%s: %s", c.Name, name)
		}
		for _, year := range []int{0, 1900, 1949, 1950, 1977, 1978, 1990, 1991, 2020} {
			row := c.For(year)
			require.True(t, row.Least.LessThanOrEqual(row.Likely) && row.Likely.LessThanOrEqual(row.Most), c.Name)
		}
		require.Equal(t, "before 1950", c.For(0).Years)
		require.Equal(t, "1950 to 1977", c.For(1977).Years)
		require.Equal(t, "after 1990", c.For(1991).Years)
	}
	// common practice, no source; a government programme asks for 10% at least, 15% at 30 years and more
	for year, share := range map[int]string{1940: "0.2", 1960: "0.15", 1985: "0.12", 2000: "0.1"} {
		require.Equal(t, share, pricebook.Contingency(year, false).String())
	}
	require.Equal(t, "0.2", pricebook.Contingency(1960, true).String())
}

// What makes way for one item that makes walls or a ceiling new makes way for all that do,
// but for skim coats, which go over what is there.
func TestWorkMakesWayForAllThatMakesItsSurfaceNew(t *testing.T) {
	book := pricebook.Starter()
	seen := 0
	for _, thing := range []string{"wall surface", "ceiling surface"} {
		var makers []string
		for _, name := range book.Items() {
			if book.Item(name).Makes == thing && !strings.HasPrefix(name, "skim ") {
				makers = append(makers, name)
			}
		}
		for _, name := range book.Items() {
			for _, c := range book.Item(name).Brings {
				if slices.ContainsFunc(c.Unless, func(x string) bool { return slices.Contains(makers, x) }) {
					require.Subset(t, c.Unless, makers, "%s brings %s", name, c.Item)
					seen++
				}
			}
		}
	}
	require.Greater(t, seen, 40)
}

// A toilet is set once, on one seal, whatever comes along with it; a flange is repaired
// under one that is lifted, or under a new one.
func TestAToiletIsSetOnOneSeal(t *testing.T) {
	book := pricebook.Starter()
	seals := func(it *pricebook.Item) (n int) {
		for _, u := range it.Uses {
			if u.Product == "toilet seal" {
				n++
			}
		}
		return n
	}
	toilet := book.Item("toilet")
	all := seals(toilet)
	for _, c := range toilet.Brings {
		all += seals(book.Item(c.Item))
	}
	require.Equal(t, 1, all)
	i := slices.IndexFunc(book.Item("flange repair").Brings, func(c pricebook.Companion) bool { return c.Item == "toilet off and on" })
	require.GreaterOrEqual(t, i, 0)
	require.Equal(t, []string{"toilet"}, book.Item("flange repair").Brings[i].Unless)
}
