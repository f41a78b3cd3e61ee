package choose_test

import (
	"fmt"

	"ledgerboard/pkg/choose"
)

// Amounts are invented: what an option adds to the price of the house, and what it
// costs, both in cents.
func ExampleBest() {
	rooms := [][]choose.Option{
		{{}, {Value: 350000, Uses: []int64{180000}}, {Value: 1550000, Uses: []int64{950000}}},
		{{}, {Value: 640000, Uses: []int64{320000}}},
	}
	choice, value, ok := choose.Best(rooms, []int64{1000000})
	fmt.Println(choice, value, ok)
	_, _, ok = choose.Best(rooms, []int64{-1})
	fmt.Println(ok)
	// Output:
	// [2 0] 1550000 true
	// false
}

// tiled are baths that may be tiled. Tile comes in boxes of 10 sq ft for $60, bought
// for all baths together, so that no bath has a cost of its own.
type tiled struct {
	*choose.Additive
	area []int64
}

func (t tiled) Worth(choice []int) (value int64, ok bool, tie [2]int64) {
	value, ok, tie = t.Additive.Worth(choice)
	var area int64
	for i, o := range choice {
		area += int64(o) * t.area[i]
	}
	for i, o := range choice {
		value += int64(o) * t.area[i] * 600 // the bound's price of a part of a box
	}
	return value - (area+9)/10*6000, ok, tie
}

// The second bath alone loses $30: $150 less three boxes. After the first it gains as
// much, for the two fill seven boxes where the first alone opens five.
func ExampleSearch() {
	added := []int64{36000, 15000, 33000}
	t := tiled{area: []int64{45, 25, 64}}
	var rooms [][]choose.Option
	for i, a := range t.area {
		rooms = append(rooms, []choose.Option{{}, {Value: added[i] - a*600}})
	}
	t.Additive, _ = choose.NewAdditive(rooms, nil)
	r, err := choose.Search(t)
	fmt.Println(r.Best.Options, r.Best.Value, r.Proved, err)
	fmt.Println(r.RunnerUp.Options, r.RunnerUp.Value)
	// Output:
	// [1 1 0] 9000 true <nil>
	// [1 0 0] 6000
}
