package quantity_test

import (
	"fmt"

	"ledgerboard/pkg/quantity"
)

func Example() {
	price, _ := quantity.ParseMoney("$285k")
	hold, _ := quantity.ParseDuration("3 1/2 months")
	fmt.Println(quantity.FormatDollars(price), "for", quantity.FormatMonths(hold, 1))

	_, err := quantity.ParsePercent("0.5")
	fmt.Println(err)
	// Output:
	// $285,000 for 3.5 months
	// "0.5" has no percent sign; want a percent sign: 0.5% or 50%
}

func ExampleParseSize() {
	size, _ := quantity.ParseSize(`12 x 14 ft`)
	fmt.Println(size, "is", size.Area())

	_, err := quantity.ParseLength(`8'14"`)
	fmt.Println(err)
	// Output:
	// 12' x 14' is 168 sq ft
	// `14"` is a foot or more of inches; want fewer than 12 inches behind feet, or inches alone: 9' 2" or 110"
}
