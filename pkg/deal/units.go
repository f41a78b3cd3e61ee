package deal

import (
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// UnitWords are what one and several of a unit of the model are called for a member:
// its good and its pack as its product is sold, the unit of its work as the price book
// has it. They are empty where the member says nothing of them.
func (d *Deal) UnitWords(x *model.Member, unit string) (one, several string) {
	switch unit {
	case "good":
		if p := d.productOf(x); p != nil {
			return goodWords(p)
		}
	case "pack":
		if p := d.productOf(x); p != nil && p.Pack.Word != string(p.Pack.Unit) {
			return p.Pack.Word, quantity.Plural(p.Pack.Word)
		}
	case "unit":
		if u := d.workUnit(x); u != "" {
			return string(u), u.Several()
		}
	}
	return "", ""
}

// goodWords are what a product is counted in: gal, ft, pieces.
func goodWords(p *pricebook.Product) (one, several string) {
	switch u := p.Unit(); u {
	case "each":
		return "piece", "pieces"
	case "roll":
		return "roll", "rolls"
	default:
		return string(u), u.Several()
	}
}

// productOf is the product that a member is, or takes, or is a part of.
func (d *Deal) productOf(x *model.Member) *pricebook.Product {
	for ; x != nil; x = x.Parent {
		for _, m := range append([]*model.Member{x}, x.Links...) {
			if p := d.Products[m]; p != nil {
				return p
			}
		}
	}
	return nil
}

// workUnit is the unit of the measure that a piece of work, or what it takes, goes by.
func (d *Deal) workUnit(x *model.Member) quantity.Unit {
	if along := pricebook.MeasureNamed(x.Given.Of("along").Text); x.Set == "use" && along != nil {
		return along.Unit
	}
	for ; x != nil; x = x.Parent {
		if w := d.Work[x]; w != nil {
			return w.Item.Unit
		}
	}
	return ""
}
