package takeoff_test

import (
	"fmt"

	"ledgerboard/pkg/takeoff"
)

// Two lengths of base, at invented prices, and a saw that takes an eighth.
func ExampleCutList() {
	const in = takeoff.PerInch
	pieces := []takeoff.Piece{
		{Length: 90 * in, ID: "hall"}, {Length: 48 * in, ID: "bath"},
		{Length: 48 * in, ID: "bath"}, {Length: 41 * in, ID: "den"},
	}
	stock := []takeoff.Stock{{Length: 96 * in, Price: 850}, {Length: 144 * in, Price: 1290}}
	plan, err := takeoff.CutList(pieces, stock, in/8)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range plan.Sticks {
		fmt.Printf("%d in, %d cents:", s.Length/in, s.Price)
		for _, c := range s.Cuts {
			fmt.Printf(" %d %s,", c.Length/in, c.ID)
		}
		fmt.Printf(" %.3f left\n", float64(s.Offcut)/in)
	}
	fmt.Println(plan.Price, "cents; proved:", plan.Proved(), "by", plan.By)
	// Output:
	// 144 in, 1290 cents: 90 hall, 48 bath, 5.750 left
	// 96 in, 850 cents: 48 bath, 41 den, 6.750 left
	// 2140 cents; proved: true by total length
}

// A wall of 33 ft of 16 ft sticks: the rest of 1 ft takes 4 in from the last.
func ExampleSplit() {
	const in = takeoff.PerInch
	pieces, err := takeoff.Split(33*12*in, 16*12*in)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range pieces {
		fmt.Println(l/in, "in")
	}
	// Output:
	// 192 in
	// 188 in
	// 16 in
}
