package pricebook_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

func TestSearch(t *testing.T) {
	b := read(t, below, nil)
	for words, want := range map[string][2][]string{
		"oak":             {{"oak strip", "oak base"}, {"lay oak", "oak transition"}},
		"STRIP  oak":      {{"oak strip"}, {"lay oak"}}, // its line of work has both
		"flooring":        {{"oak strip"}, {"lay oak", "oak transition"}},
		"trim oak":        {{"oak base"}, nil},
		"oak strip maple": {nil, nil},
		"":                {b.Products(), b.Items()},
	} {
		products, items := b.Search(words)
		require.Equal(t, want[0], products, words)
		require.Equal(t, want[1], items, words)
	}
	p, it := b.Named(" Oak  Strip ")
	require.Equal(t, "oak strip", p.Name)
	require.Nil(t, it)
	require.Equal(t, []string{"lay oak"}, b.TakenBy("oak strip"))
	require.Equal(t, []string{"lay oak"}, b.BroughtBy("oak transition"))
}

// Other names of common things find what the book has.
func TestSearchKnowsOtherNames(t *testing.T) {
	b := pricebook.Starter()
	for words, want := range map[string]string{
		"stove": "range electric", "commode": "toilet", "tap": "vanity faucet and drain", "worktop": "stone counter", "refrigerator": "fridge",
		"railing": "handrail", "skirting": "baseboard", "kitchen taps": "sink and faucet set",
		"gfci": "protected outlet", "granite": "stone counter", "quartz counter": "stone counter", "hvac": "furnace", "mold": "mould cleaning",
		"popcorn ceiling": "strip textured ceiling", "smoke detector": "smoke and carbon monoxide alarms", "smoke detectors": "smoke and carbon monoxide alarms",
		"can lights": "recessed light", "rekey": "locks re-keyed", "rekey locks": "locks re-keyed", "wallpaper removal": "strip wallpaper", "remove carpet": "strip carpet", "ductwork": "duct run", "downlights": "recessed light",
	} {
		_, items := b.Search(words)
		require.Contains(t, items, want, words)
	}
	products, found := b.Search("mold")
	require.NotContains(t, products, "primed shoe moulding")
	require.NotContains(t, found, "crown")
	require.NotContains(t, b.Near("sheetrock"), "strip sheet vinyl")
	products, _ = b.Search("tap")
	require.NotContains(t, products, "painter tape")
	_, items := b.Search("board and batten")
	require.NotEmpty(t, items)
	require.NotContains(t, b.Near("board and batten"), "tub ledger board and screws")
	for _, words := range []string{"stoves", "wallboard", "commodes", "lavatory", "receptacle", "linoleum", "eavestrough", "cladding", "dumpster"} {
		products, items := b.Search(words)
		require.NotEmpty(t, append(products, items...), words)
	}
}

// Who has the words right and not the name is told what has them all, one or many of each
// and in any order; a slip in a word is for Near.
func TestItemsWithAllWords(t *testing.T) {
	b := pricebook.Starter()
	require.Equal(t, []string{"refinish wood floor"}, b.ItemsWith("refinish floors"))
	require.Equal(t, []string{"tile shower walls", "tile shower floor"}, b.ItemsWith("shower tile"))
	require.Contains(t, b.ItemsWith("stoves"), "range electric")
	require.Empty(t, b.ItemsWith("paint wals"))
	_, items := b.Search("refinish floors")
	require.Contains(t, items, "refinish wood floor")
}

// What people call a floor or who does the work finds what the book has.
func TestSearchKnowsFloorsAndPeople(t *testing.T) {
	b := pricebook.Starter()
	for words, want := range map[string]string{
		"hardwood": "prefinished wood floor", "LVP": "resilient plank floor", "vinyl plank": "resilient plank floor", "refinish hardwood": "refinish wood floor",
	} {
		_, items := b.Search(words)
		require.Contains(t, items, want, words)
	}
	_, items := b.Search("wood floor")
	require.NotContains(t, items, "nail-down oak floor", "the words go one way")
	for words, trade := range map[string]string{
		"plumber": "plumbing", "Painters": "paint", "electrician": "electrical", "roofer": "roofing", "tiler": "tile", "carpenter": "carpentry",
	} {
		_, items := b.Search(words)
		for _, name := range b.Items() {
			if b.Item(name).Trade == trade {
				require.Contains(t, items, name, words)
			}
		}
		require.NotEmpty(t, items, words)
	}
	products, _ := b.Search("painter tape")
	require.Equal(t, []string{"painter tape"}, products)
	_, items = b.Search("plumber tub")
	require.Contains(t, items, "tub rough-in")
	require.NotContains(t, items, "take out tub", "another trade does it")
}

func TestNearNames(t *testing.T) {
	b := pricebook.Starter()
	require.Equal(t, "porcelain floor tile", b.Near("porcelian floor tile")[0])
	require.Contains(t, b.Near("tiled florr"), "tile floor")
	require.LessOrEqual(t, len(b.Near("floor")), 5)
	require.Empty(t, b.Near("xyzzy"))
}

// Of words that the book knows, the rarer one decides: new is in many names.
func TestNearNamesHaveTheRarerWord(t *testing.T) {
	b := pricebook.Starter()
	products, items := b.Search("new shingles")
	require.Empty(t, append(products, items...))
	near := b.Near("new shingles")
	require.Len(t, near, 5)
	for _, name := range near {
		require.Contains(t, name, "shingle")
	}
	require.Equal(t, near, b.Near("shingles new"))
	for _, name := range b.Near("cabinets and tops") {
		require.Regexp(t, "cabinet|counter|top", name)
	}
}

// An item that the book has by another name is found by the words of it that the book knows.
func TestItemsNear(t *testing.T) {
	b := pricebook.Starter()
	for words, want := range map[string]string{
		"crown moulding": "crown",
		"privacy fence":  "wood fence",
		"cedar fence":    "wood fence", // no word of the book but fence
		"zzz qqq":        "",
		"":               "",
	} {
		near := append(b.ItemsNear(words), "")
		require.Equal(t, want, near[0], words)
	}
}
