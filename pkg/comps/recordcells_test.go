package comps

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Where one "m" of a column of miles can be no metres, none of them is; where none shows it,
// they are.
func TestEveryMOfAColumnIsTheSame(t *testing.T) {
	const head = "address,sold,price,distance\n"
	l, found := read(t, head+"a,2026-01-05,300000,15.5m\nb,2026-01-06,300000,0.4m\nc,2026-01-07,300000,12 m\nd,2026-01-08,300000,2 km\n", Options{})
	for i, miles := range []float64{15.5, 0.4, 12, 2000 / Mile} {
		require.InDelta(t, miles, l.Sale(i).Stated.Value/Mile, 1e-9)
	}
	require.Len(t, found, 2)
	require.Contains(t, found[0].Message, `"15.5m" is taken for miles, as other distances are; and 1 more like it`)
	require.Contains(t, found[1].Message, `"0.4m" is taken for miles: so few metres lie between no two houses`)
	for first, miles := range map[string]float64{"0.4 mi": 12, "0.4": 12 / Mile} { // which says that they are miles, or does not
		l, found = read(t, head+"a,2026-01-05,300000,12m\nb,2026-01-06,300000,"+first+"\n", Options{})
		require.Len(t, found, 1)
		require.InDelta(t, miles, l.Sale(0).Stated.Value/Mile, 1e-9)
	}
	l, found = read(t, head+"a,2026-01-05,300000,600m\nb,2026-01-06,300000,0.4 mi\n", Options{})
	require.Empty(t, found)
	require.InDelta(t, 600, l.Sale(0).Stated.Value, 1e-9)
}

// A number of baths with a part of one holds the half ones, whatever else is said of those.
func TestPartsOfABathBesideHalfBaths(t *testing.T) {
	for cells, want := range map[string]float64{"1.75,0": 1.75, "2.5,0": 2.5, "2.5,1": 2.5, "2.75,1": 2.75, "2,1": 2.5, "2,0": 2, "2 full 1 half,0": 2.5} {
		l, found := read(t, "sale date,price,baths,half baths\n2026-01-05,300000,"+cells+"\n", Options{})
		require.Empty(t, found)
		sale := l.Sale(0)
		require.Equal(t, Known(want), sale.Baths(), cells)
	}
}

// A house on Grand, and one of three sales called high, mid and low, are sales where they have
// a day and a price of their own.
func TestNamesThatLookLikeSums(t *testing.T) {
	const day = "2026-06-03,268000\n"
	l, found := read(t, "address,sold,price\n412 Grand,"+day+"18 High,"+day+"7 Max,"+day+"High,"+day+"Mid,"+day+"Low,"+day+"9 Low,,268000\nLow,,260000\nAverage,"+day+"Median price,"+day+"Low / High,"+day+"3 sales average,"+day, Options{})
	var names []string
	for _, s := range l.Sales() {
		names = append(names, s.Label)
	}
	require.ElementsMatch(t, []string{"412 Grand", "18 High", "7 Max", "High", "Mid", "Low"}, names)
	require.Len(t, found, 6)
}

// A unit in a column of its own is part of the address, unless that tells it already.
func TestUnitsOfAnAddress(t *testing.T) {
	l, found := read(t, "Unit #,address,sold,price,Miles\n4,12 Elm St,2026-06-03,268000,0.5\n5,12 Elm St,2026-06-03,268000,0.5\nApt 6,12 Elm St,2026-06-04,268000,0.5\n4,12 Oak St # 4,2026-06-05,268000,0.5\nB,12 Oak St Unit B,2026-06-06,268000,0.5\n,12 Fir St,2026-06-07,268000,0.5\n", Options{})
	require.Empty(t, found)
	require.Empty(t, l.Unread)
	var names []string
	for _, s := range l.Sales() {
		names = append(names, s.Label)
		require.InDelta(t, 0.5*Mile, s.Stated.Value, 1e-9)
	}
	require.Equal(t, []string{"12 Elm St unit 4", "12 Elm St unit 5", "12 Elm St Apt 6", "12 Oak St # 4", "12 Oak St Unit B", "12 Fir St"}, names)
}

// Concessions below zero are not known, so that they add nothing.
func TestConcessionsBelowZeroAreNotKnown(t *testing.T) {
	l, found := read(t, "address;sold;price;concessions\n3 Oak St;2026-04-02;243000;-3000\n4 Oak St;2026-04-03;244000;3000\n", Options{})
	require.Len(t, found, 1)
	require.True(t, l.Sale(0).Concessions.IsZero())
	require.Equal(t, "3000", l.Sale(1).Concessions.String())
}

// The number of a lot on a plat is no area.
func TestTheNumberOfALotIsNoArea(t *testing.T) {
	l, _ := read(t, "address;sold;price;Lot #\n3 Oak St;2026-04-02;243000;4500\n", Options{})
	require.False(t, l.Sale(0).Lot.Known)
	l, found := read(t, "address;sold;price;Lot\n3 Oak St;2026-04-02;243000;112\n4 Oak St;2026-04-03;243000;4500\n", Options{})
	require.Len(t, found, 1)
	require.Equal(t, []Fact{{}, Known(4500)}, []Fact{l.Sale(0).Lot, l.Sale(1).Lot})
}

// A row that is too short is told, for an empty cell before its last may be missing.
func TestARowWithTooFewCells(t *testing.T) {
	const head = "address,sale date,price,concessions,sq ft\n"
	l, found := read(t, head+"11 Oak St,2026-01-05,300000,1340\n12 Oak St,2026-01-06,300000,,1340\n", Options{})
	require.Equal(t, 2, l.Len())
	require.Len(t, found, 1)
	require.Equal(t, "few-cells", found[0].Code)
	require.Equal(t, 2, found[0].Pos.Line)
	require.Contains(t, found[0].Message, "11 Oak St: the row has 4 cells, and the first row names 5 columns")
}

// Full and half baths are whole: a part of one stands for the other sort.
func TestPartsOfFullAndHalfBaths(t *testing.T) {
	for cells, want := range map[string]string{"2,0.5": `"0.5" is no whole number of half baths`, "2.5,1": `"2.5" is no whole number of full baths`, "2.0,1": ""} {
		_, found := read(t, "sale date,price,full baths,half baths\n2026-01-05,300000,"+cells+"\n", Options{})
		if want == "" {
			require.Empty(t, found)
			continue
		}
		require.Len(t, found, 1, cells)
		require.Contains(t, found[0].Message, want)
	}
}

// A garage of no size is none, unless a column of its own says what it is.
func TestAGarageOfNoSize(t *testing.T) {
	for cells, want := range map[string]string{"0,": "none", "280,": "", "0,attached": "attached"} {
		l, found := read(t, "sale date,price,garage sqft,garage\n2026-01-05,300000,"+cells+"\n", Options{})
		require.Empty(t, found)
		require.Equal(t, want, l.Sale(0).Garage, cells)
	}
}

// So few are never written in powers of ten.
func TestCountsInPowersOfTen(t *testing.T) {
	for _, name := range []string{"bedrooms", "baths", "full baths", "half baths", "garage cars"} {
		l, found := read(t, "sale date,price,"+name+"\n2026-01-05,300000,1e1\n", Options{})
		require.Len(t, found, 1, name)
		require.Equal(t, "bad-cell", found[0].Code)
		s := l.Sale(0)
		require.False(t, s.Bedrooms.Known || s.FullBaths.Known || s.HalfBaths.Known || s.GarageCars.Known, name)
	}
}

// How many bedrooms or baths there are may have a word behind it, as agents write it.
func TestRoomsWithTheirWord(t *testing.T) {
	for _, c := range []struct {
		beds, full, half string
		bedrooms, baths  Fact
	}{
		{"3 bd", "2 baths", "1", Known(3), Known(2.5)},
		{"3 beds", "2 full", "1 half", Known(3), Known(2.5)},
		{"3BR", "2 Full Baths", "1 half bath", Known(3), Known(2.5)},
		{"3 Bedrooms", "1 ba.", "0", Known(3), Known(1)},
		{"1 bed", "1 bath", "", Known(1), Known(1)},
	} {
		l, found := read(t, "sale date,price,beds,full baths,half baths\n2026-01-05,300000,"+c.beds+","+c.full+","+c.half+"\n", Options{})
		require.Empty(t, found, c)
		sale := l.Sale(0)
		require.Equal(t, c.bedrooms, sale.Bedrooms, c)
		require.Equal(t, c.baths, sale.Baths(), c)
	}
	for _, cells := range []string{"3BR/2BA,2", "3.5 beds,2", "3,2 half", "3,2.5 baths", "3 rooms,2"} {
		_, found := read(t, "sale date,price,beds,full baths\n2026-01-05,300000,"+cells+"\n", Options{})
		require.Len(t, found, 1, cells)
	}
}
