package caution_test

import (
	"fmt"
	"time"

	"ledgerboard/pkg/caution"

	"github.com/shopspring/decimal"
)

// An invented house, bought on January 15 and sold too soon for some buyers.
func ExampleFor() {
	bought := time.Date(2026, time.January, 15, 0, 0, 0, 0, time.UTC)
	list := caution.For(caution.House{
		YearBuilt: 1995, Trades: []string{"paint"}, Bought: bought, OfferAccepted: bought.AddDate(0, 0, 75),
		PurchasePrice: decimal.NewFromInt(200000), SalePrice: decimal.NewFromInt(215000),
		ContingencyShare: decimal.New(12, -2), HasInsuranceLine: true, HasVacantInsurance: true,
	})
	for _, c := range list {
		fmt.Println(c.ID)
	}
	fmt.Println(list[0].Text)
	fmt.Println(list[0].Source)
	// Output:
	// fha-too-soon
	// tax
	// due-diligence
	// Buyer's contract planned on day 75 after the purchase: a buyer with an FHA-insured loan may be shut out until day 91 (2026-04-16), which shrinks the pool of buyers. Ask a lender.
	// HUD Handbook 4000.1 (Property Flipping standard), mirroring 24 CFR 203.37a(b), time restriction on transfers of title
}
