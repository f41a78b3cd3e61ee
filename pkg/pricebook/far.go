package pricebook

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// FarTimes is how many times a price may be that of the starter book, or the other way
// round, before a comma or a pack has probably slipped; common practice, no source.
var FarTimes = decimal.NewFromInt(5)

// FarHint is what to do about a price of the first product of some work, or of its labour,
// that is far from another.
func FarHint(price decimal.Decimal, labour bool) string {
	switch {
	case price.IsPositive():
		return "check the price and what it is for, for a point or nought that has slipped; it is used as it stands"
	case labour:
		return "write what a trade charges, or in the deal file   own hands   if nobody is paid for it; it is used as it stands"
	}
	return "write what it costs, or   allowance: $0   for the work in the deal file if it is given to you; it is used as it stands"
}

// FarHint is what to do about a price of a product that is far from the starter book's.
func (p *Product) FarHint() string {
	if in, _ := p.larger(); in != nil {
		return fmt.Sprintf("if it is for %s, give its pack too:   %s   ; it is used as it stands", in.Name, in.pack)
	}
	return FarHint(p.farthest(), false)
}

// FarHint is what to do about a price of labour that is.
func (it *Item) FarHint() string { return FarHint(it.Hired, true) }

// Far says that the price of a product is far from the starter book's for the same
// thing and unit, in words that go behind the name; "" where it is not.
func (p *Product) Far() string {
	base := Starter().Product(p.Name)
	if base == nil || base == p || base.Unit() != p.Unit() {
		return ""
	}
	if in, words := p.larger(); in != nil {
		return words
	}
	return far(p.farthest(), base.UnitPrice(), p.Unit())
}

// farthest is its price a unit; of one in sticks of which a length is far from the starter book's price a
// foot, that of the length.
func (p *Product) farthest() decimal.Decimal {
	if base := Starter().Product(p.Name); base != nil && base != p {
		for _, s := range p.Sticks {
			if x := s.Price.DivRound(s.Length.Feet(), 4); FarFrom(x, base.UnitPrice()) != "" {
				return x
			}
		}
	}
	return p.UnitPrice()
}

// Far says the same of the price of hired labour.
func (it *Item) Far() string {
	base := it.started()
	if base == nil {
		return ""
	}
	return far(it.Hired, base.Hired, it.Unit)
}

// HoursFar says the same of the hours of a trained hand for each unit.
func (it *Item) HoursFar() string {
	base := it.started()
	if base == nil || FarFrom(it.Hours, base.Hours) == "" {
		return ""
	}
	each := func(x decimal.Decimal) string { return quantity.Per{Number: x.Round(4), Bottom: it.Unit}.String() }
	return fmt.Sprintf("%s is %s the starter book's %s", each(it.Hours), FarFrom(it.Hours, base.Hours), each(base.Hours))
}

// started is the item of the starter book of the same name and unit, nil where it is that or
// there is none.
func (it *Item) started() *Item {
	if base := Starter().Item(it.Name); base != nil && base != it && base.Unit == it.Unit {
		return base
	}
	return nil
}

// UnitPrice is dollars for each unit that a product is counted in.
func (p *Product) UnitPrice() decimal.Decimal {
	price, holds := p.Price, p.Pack.Number
	if p.Roll != nil {
		holds = decimal.NewFromInt(1)
	}
	for _, s := range p.Sticks {
		price, holds = price.Add(s.Price), holds.Add(s.Length.Feet())
	}
	if !holds.IsPositive() {
		return decimal.Zero
	}
	return price.DivRound(holds, 4)
}

// FarFrom says that a price is over 5 times another or under a fifth of it, as in "over 5
// times"; "" where it is not, or where the other is nothing.
func FarFrom(price, base decimal.Decimal) string {
	switch {
	case !base.IsPositive():
	case price.GreaterThan(base.Mul(FarTimes)):
		return "over 5 times"
	case price.Mul(FarTimes).LessThan(base):
		return "under a fifth of"
	}
	return ""
}

func far(price, base decimal.Decimal, unit quantity.Unit) string {
	words := FarFrom(price, base)
	if words == "" {
		return ""
	}
	each := func(x decimal.Decimal) string {
		return quantity.Per{Number: x.Round(4), Money: true, Bottom: unit}.String()
	}
	return fmt.Sprintf("%s is %s the starter book's %s", each(price), words, each(base))
}
