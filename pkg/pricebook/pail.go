package pricebook

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// A pail of 5 gal costs between 3.3 and 5.5 times what a gallon does; common practice, no source.
var leastOfPail, mostOfPail = decimal.RequireFromString("3.3"), decimal.RequireFromString("5.5")

// LikeAPail says that a price of a product that is sold by the gallon looks like that of a pail
// of 5 gal beside another for the gallon, as in "4.6 times"; "" where it does not.
func (p *Product) LikeAPail(price, base decimal.Decimal) string {
	if p.Pack.Unit != "gal" || !p.Pack.Number.Equal(decimal.NewFromInt(1)) || !base.IsPositive() {
		return ""
	}
	if times := price.DivRound(base, 4); !times.LessThan(leastOfPail) && !times.GreaterThan(mostOfPail) {
		return times.Round(1).String() + " times"
	}
	return ""
}

// PailHint is what to do about such a price, by what a gallon of the pail comes to.
func PailHint(price decimal.Decimal) string {
	return fmt.Sprintf("if a pail of 5 gal costs that, write what a gallon of it does, %s; it is used as it stands", quantity.FormatMoney(price.DivRound(decimal.NewFromInt(5), 2)))
}

// pail says that the price of a product looks like that of a pail beside the starter book's.
func (p *Product) pail() string {
	base := Starter().Product(p.Name)
	if base == nil || base == p || base.Unit() != p.Unit() {
		return ""
	}
	times := p.LikeAPail(p.Price, base.UnitPrice())
	if times == "" {
		return ""
	}
	return fmt.Sprintf("%s a %s is %s the starter book's %s, about what a pail of 5 gal costs", quantity.FormatMoney(p.Price), p.SoldIn(), times, quantity.FormatMoney(base.UnitPrice()))
}
