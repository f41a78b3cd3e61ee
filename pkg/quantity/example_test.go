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
