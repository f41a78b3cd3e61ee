package comps

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Of a garage in words that cannot be read nothing is known, though another column holds a nought.
func TestNoughtsBesideWordsOfAGarageThatCannotBeRead(t *testing.T) {
	for _, c := range [][2]string{
		{"garage,garage spaces", "\"Attached, Opener\",0"},
		{"garage,garage spaces", "2 car w/ workshop,0"},
		{"garage,garage sqft", "Multi,0"},
		{"garage spaces,garage", "0,480 sq ft"},
		{"garage spaces,garage sqft", "attached,0"},
	} {
		l, found := read(t, "sale date,price,"+c[0]+"\n2026-06-03,268000,"+c[1]+"\n", Options{})
		require.Len(t, found, 1, c)
		h := l.Sales()[0].House
		require.Equal(t, [3]any{"", Fact{}, Fact{}}, [3]any{h.Garage, h.GarageCars, h.GarageArea}, c)
	}
}

// Words of parking in the open are none of a garage, and a size of none is no garage: a nought of cars
// beside either stands.
func TestNoughtsBesideWordsOfParking(t *testing.T) {
	for _, c := range []struct {
		heads, row string
		told       int
		kind       string
	}{
		{"parking,garage spaces", "\"Driveway, Paved\",0", 1, "none"},
		{"parking,garage spaces", "Assigned,0", 1, "none"},
		{"parking,garage spaces", "\"Attached, Opener\",0", 1, ""},
		{"garage sqft,garage spaces", "none,0", 0, "none"},
		{"garage sqft,garage spaces", "no garage,0", 0, "none"},
		{"garage sqft,garage spaces", "none,2", 1, ""},
	} {
		l, found := read(t, "sale date,price,"+c.heads+"\n2026-06-03,268000,"+c.row+"\n", Options{})
		require.Len(t, found, c.told, "%v: %v", c, found)
		require.Equal(t, c.kind, l.Sales()[0].House.Garage, c.row)
	}
}

// A nought of cars beside a garage of some kind and size is one that nobody counted; beside a size
// alone it is told.
func TestNoughtCarsBesideASize(t *testing.T) {
	for _, c := range []struct {
		heads, row string
		told       int
		kind       string
		area       Fact
	}{
		{"garage,garage spaces,garage sqft", "attached,0,480", 0, "attached", Known(480)},
		{"garage,garage spaces,garage sqft", "yes,0,480", 0, SomeGarage, Known(480)},
		{"garage spaces,garage sqft", "0,480", 1, "", Fact{}},
		{"garage,garage spaces,garage sqft", "none,0,480", 1, "", Fact{}},
		{"garage,garage spaces,garage sqft", "none,0,0", 0, "none", Known(0)},
	} {
		l, found := read(t, "sale date,price,"+c.heads+"\n2026-06-03,268000,"+c.row+"\n", Options{})
		require.Len(t, found, c.told, "%v: %v", c, found)
		h := l.Sales()[0].House
		require.Equal(t, c.kind, h.Garage, c.row)
		require.Equal(t, c.area, h.GarageArea, c.row)
	}
}

// All baths in one figure beside full ones alone must be as many, but for half ones that it tells.
func TestAllBathsBesideFullOnes(t *testing.T) {
	for row, want := range map[string]struct{ full, half Fact }{
		"3,2":   {},
		"2,3":   {},
		"2.5,3": {},
		"2,2":   {Known(2), Known(0)},
		"2.5,2": {Known(2), Known(1)},
		",2":    {Known(2), Fact{}},
	} {
		for _, heads := range []string{"total baths,full baths", "baths,full baths"} {
			l, found := read(t, "sale date,price,"+heads+"\n2026-06-03,268000,"+row+"\n", Options{})
			told := 0
			if want.full == (Fact{}) {
				told = 1
			}
			require.Len(t, found, told, "%s %s: %v", heads, row, found)
			h := l.Sales()[0].House
			require.Equal(t, want.full, h.FullBaths, row)
			require.Equal(t, want.half, h.HalfBaths, row)
		}
	}
}
