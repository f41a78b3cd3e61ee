package cashflow_test

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/cashflow"
)

// Invented figures: a purchase, two months of costs, a sale in month 3.
func ExampleIRR() {
	flows := []decimal.Decimal{
		decimal.New(-60000, 0), decimal.New(-1200, 0), decimal.New(-1200, 0), decimal.New(68000, 0),
	}
	r, err := cashflow.IRR(flows)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Rate.StringFixed(6), "a month")
	fmt.Println(cashflow.Effective(r.Rate, 12).StringFixed(6), "a year, compounded")
	// Output:
	// 0.029626 a month
	// 0.419567 a year, compounded
}

func ExampleIRR_none() {
	_, err := cashflow.IRR([]decimal.Decimal{decimal.New(-60000, 0), decimal.New(-1200, 0)})
	fmt.Println(errors.Is(err, cashflow.ErrNoRate))
	fmt.Println(err)
	// Output:
	// true
	// no rate of return: the money only goes one way
}
