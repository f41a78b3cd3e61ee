package pricebook

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// A LargerPack is what some product is sold in besides its own pack, and how many times the price
// of that it costs.
type LargerPack struct {
	Name, pack  string // "a pail of 5 gal", and as the price book has it
	one         string
	holds       int64
	least, most decimal.Decimal
}

// A pail of 5 gal costs between 3.3 and 5.5 times what a gallon does, and a square of three bundles of
// shingles about three times what a bundle does; common practice, no source.
var (
	pail   = &LargerPack{"a pail of 5 gal", "pail of 5 gal", "a gallon of it", 5, decimal.RequireFromString("3.3"), decimal.RequireFromString("5.5")}
	square = &LargerPack{"a square of 3 bundles", "square of 3 each", "one bundle", 3, decimal.RequireFromString("2.6"), decimal.RequireFromString("3.5")}
)

// LikeLarger returns the larger pack that a price of a product looks like beside another for its own
// pack, and how many times that it is, as in "4.6 times"; nil where it looks like none.
func (p *Product) LikeLarger(price, base decimal.Decimal) (*LargerPack, string) {
	var in *LargerPack
	switch {
	case !p.Pack.Number.Equal(decimal.NewFromInt(1)):
	case p.Pack.Unit == "gal":
		in = pail
	case p.Pack.Unit == "each" && strings.HasSuffix(p.Name, "bundle"):
		in = square
	}
	if in == nil || !base.IsPositive() {
		return nil, ""
	}
	times := price.DivRound(base, 4)
	if times.LessThan(in.least) || times.GreaterThan(in.most) {
		return nil, ""
	}
	return in, times.Round(1).String() + " times"
}

// Hint is what to do about such a price, by what one of those in the larger pack comes to.
func (l *LargerPack) Hint(price decimal.Decimal) string {
	return fmt.Sprintf("if %s costs that, write what %s does, %s; it is used as it stands", l.Name, l.one, quantity.FormatMoney(price.DivRound(decimal.NewFromInt(l.holds), 2)))
}

// larger says that the price of a product looks like that of a larger pack beside the starter book's.
func (p *Product) larger() (*LargerPack, string) {
	base := Starter().Product(p.Name)
	if base == nil || base == p || base.Unit() != p.Unit() {
		return nil, ""
	}
	in, times := p.LikeLarger(p.Price, base.UnitPrice())
	if in == nil {
		return nil, ""
	}
	price := quantity.FormatMoney(p.Price)
	if pack := p.SoldIn(); pack != "each" {
		price += " a " + pack
	}
	return in, fmt.Sprintf("%s is %s the starter book's %s, about what %s costs", price, times, quantity.FormatMoney(base.UnitPrice()), in.Name)
}
