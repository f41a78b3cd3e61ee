package comps_test

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// The sales are invented.
func ExampleRead() {
	const sold = `label,sale date,price,living area,baths,year built,garage
1 Elm,2026-01-12,$201k,"1,400",2,1962,attached
3 Elm,2026-02-20,"$186,000","1,400",2,1962,none
9 Oak,2026-04-02,199500,"1,390 sq ft",2,1965,attached
`
	list, found := comps.Read(strings.NewReader(sold), "sold.csv", comps.Options{})
	house := comps.House{Area: comps.Known(1400), FullBaths: comps.Known(2), HalfBaths: comps.Known(0), Built: comps.Known(1962), Garage: "attached"}
	day := quantity.Date{Year: 2026, Month: 5, Day: 1}
	value, err := list.Before(day).Choose(comps.Subject{House: house}, comps.Wish{}).Value()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(found), "remarks;", quantity.FormatDollars(value.Likely), "likely")
	for _, r := range value.Rows {
		fmt.Println(r.Name(), r.Price, "adjusted to", r.Adjusted)
	}
	// Output:
	// 0 remarks; $200,250 likely
	// 1 Elm 201000 adjusted to 201000
	// 9 Oak 199500 adjusted to 199500
	// 3 Elm 186000 adjusted to 200250
}
