package comps

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Garages as lists write them: the cars, and the kind where one is named.
func TestGarage(t *testing.T) {
	for cell, want := range map[string]House{
		"2": {GarageCars: Known(2)}, "2.0": {GarageCars: Known(2)}, "2.5 car": {GarageCars: Known(2.5)}, "two car": {GarageCars: Known(2)}, "2 Car Garage": {GarageCars: Known(2)},
		"2-car": {GarageCars: Known(2)}, "2car": {GarageCars: Known(2)}, "double": {GarageCars: Known(2)}, "3 stall": {GarageCars: Known(3)}, "1 space": {GarageCars: Known(1)},
		"2 attached": {GarageCars: Known(2), Garage: "attached"}, "2 car det.": {GarageCars: Known(2), Garage: "detached"}, "Detached, 1 car": {GarageCars: Known(1), Garage: "detached"},
		"2-car carport": {GarageCars: Known(2), Garage: "carport"}, "attached": {Garage: "attached"}, "Built-In": {Garage: "built in"}, "garage": {Garage: "garage"}, "yes": {Garage: "garage"},
		"0": {GarageCars: Known(0), Garage: "none"}, "none": {Garage: "none"}, "No Garage": {Garage: "none"}, "n": {Garage: "none"}, "none - driveway only": {Garage: "none"},
		"street": {Garage: "none"}, "on-street parking": {Garage: "none"}, "driveway": {Garage: "none"}, "Street parking 2 cars": {Garage: "none"}, "Driveway, 2 spaces": {Garage: "none"}, "1 car garage and driveway": {GarageCars: Known(1)}, "driveway, 2 car garage": {GarageCars: Known(2)}, "driveway, 1 car attached": {GarageCars: Known(1), Garage: "attached"}, "0 car": {GarageCars: Known(0), Garage: "none"},
	} {
		l, found := read(t, "sale date,price,garage\n2026-06-03,268000,\""+cell+"\"\n", Options{})
		require.Empty(t, found, cell)
		if want.Garage == "none" {
			want.GarageCars, want.GarageArea = Known(0), Known(0)
		}
		require.Equal(t, want, l.Sale(0).House, cell)
	}
	for _, cell := range []string{"None", "no", "No Garage", "0"} {
		l, found := read(t, "sale date,price,garage spaces\n2026-06-03,268000,"+cell+"\n2026-06-03,278000,2\n", Options{})
		require.Empty(t, found, cell)
		require.Equal(t, House{Garage: "none", GarageCars: Known(0), GarageArea: Known(0)}, l.Sale(0).House, cell)
	}
	for cells, want := range map[string]House{
		"2 car,,0": {GarageCars: Known(2)}, ",2,0": {GarageCars: Known(2)}, "attached,0,0": {Garage: "attached"}, "attached,2,480": {Garage: "attached", GarageCars: Known(2), GarageArea: Known(480)},
		",,0": {Garage: "none", GarageCars: Known(0), GarageArea: Known(0)}, ",0,": {Garage: "none", GarageCars: Known(0), GarageArea: Known(0)}, ",,480": {GarageArea: Known(480)},
		"none,2,": {}, "none,,480": {}, ",0,480": {},
	} {
		for _, heads := range [][3]int{{0, 1, 2}, {2, 0, 1}} { // whatever the order of the columns
			head, cell := [3]string{"garage", "garage cars", "garage sqft"}, strings.Split(cells, ",")
			l, found := read(t, fmt.Sprintf("sale date,price,%s,%s,%s\n2026-06-03,268000,%s,%s,%s\n", head[heads[0]], head[heads[1]], head[heads[2]], cell[heads[0]], cell[heads[1]], cell[heads[2]]), Options{})
			require.Equal(t, want, l.Sale(0).House, cells)
			if want == (House{}) {
				require.Len(t, found, 1, cells)
				require.Contains(t, found[0].Message, "one that there is none, so it counts as not known")
			} else {
				require.Empty(t, found, cells)
			}
		}
	}
	for _, cell := range []string{"tbd", "see remarks", "off street", "480", "22x24", "1-2 car", "2 1/2 car", "no 2", "two or three", "A", "2 car driveway"} {
		l, found := read(t, "sale date,price,garage\n2026-06-03,268000,"+cell+"\n", Options{})
		require.Len(t, found, 1, cell)
		require.Contains(t, found[0].Message, `does not tell for how many cars the garage is, so it counts as not known`)
		require.Equal(t, House{}, l.Sale(0).House, cell)
	}
	require.True(t, (&House{Garage: "attached"}).CarsGuessed())
	require.False(t, (&House{Garage: "none"}).CarsGuessed())
	require.False(t, (&House{Garage: "attached", GarageCars: Known(2)}).CarsGuessed())
}

// What the column of the garage says goes before a count of its own, which may fill in what that
// leaves open; two that differ are doubted.
func TestGarageAndItsSpaces(t *testing.T) {
	none := House{Garage: "none", GarageCars: Known(0), GarageArea: Known(0)}
	const other, without = "not for how many cars the column of the garage says it is", "one that there is none"
	for _, c := range []struct {
		garage, spaces string
		want           House
		doubt          string
	}{
		{"2 car attached", "0", House{Garage: "attached", GarageCars: Known(2)}, ""},
		{"2 car attached", "2", House{Garage: "attached", GarageCars: Known(2)}, ""},
		{"2 car attached", "4", House{Garage: "attached", GarageCars: Known(2)}, other},
		{"2", "1", House{GarageCars: Known(2)}, other},
		{"2", "0", House{GarageCars: Known(2)}, ""},
		{"0", "2", House{}, without},
		{"0", "0", none, ""},
		{"attached", "2 car", House{Garage: "attached", GarageCars: Known(2)}, ""},
		{"", "2 car", House{GarageCars: Known(2)}, ""},
		{"", "two", House{GarageCars: Known(2)}, ""},
		{"", "1-car", House{GarageCars: Known(1)}, ""},
		{"", "2 Attached", House{Garage: "attached", GarageCars: Known(2)}, ""},
	} {
		l, found := read(t, "sale date,price,garage,garage spaces\n2026-06-03,268000,"+c.garage+","+c.spaces+"\n", Options{})
		require.Equal(t, c.want, l.Sale(0).House, "%s %s", c.garage, c.spaces)
		if c.doubt == "" {
			require.Empty(t, found, "%s %s", c.garage, c.spaces)
			continue
		}
		require.Len(t, found, 1, "%s %s", c.garage, c.spaces)
		require.Contains(t, found[0].Message, c.doubt)
		require.Contains(t, found[0].Message, "garage spaces")
	}
	// A row cut short says nothing of the last column.
	_, found := read(t, "sale date,price,garage,garage cars,garage sqft\n2026-06-03,268000,none,2\n", Options{})
	require.Contains(t, found[0].Message+found[1].Message, `say "2" and otherwise`)
}

// Spaces to park in are in the drive too: a column of them is not read, and one called parking only
// where it tells of a garage.
func TestParkingIsNoGarage(t *testing.T) {
	for _, head := range []string{"Parking Spaces", "Parking Total"} {
		l, found := read(t, "sale date,price,garage,"+head+"\n2026-06-03,268000,2 car attached,4\n", Options{})
		require.Empty(t, found)
		require.Equal(t, []string{head}, l.Unread)
		require.Equal(t, House{Garage: "attached", GarageCars: Known(2)}, l.Sale(0).House)
	}
	for cell, want := range map[string]House{
		"2 car garage": {GarageCars: Known(2)}, "garage": {Garage: SomeGarage}, "2 attached": {Garage: "attached", GarageCars: Known(2)}, "carport": {Garage: "carport"},
		"none": {Garage: "none", GarageCars: Known(0), GarageArea: Known(0)}, "0": {Garage: "none", GarageCars: Known(0), GarageArea: Known(0)},
		"4": {}, "4 spaces": {}, "2 car": {}, "yes": {},
	} {
		l, found := read(t, "sale date,price,parking\n2026-06-03,268000,"+cell+"\n", Options{})
		require.Equal(t, want, l.Sale(0).House, cell)
		if want != (House{}) {
			require.Empty(t, found, cell)
			continue
		}
		require.Len(t, found, 1, cell)
		require.Contains(t, found[0].Message, "may be of cars in the drive")
	}
	l, found := read(t, "sale date,price,parking\n2026-06-03,268000,2\n", Options{Columns: map[string]string{"garage": "Parking"}})
	require.Empty(t, found)
	require.Equal(t, Known(2), l.Sale(0).GarageCars)
}
