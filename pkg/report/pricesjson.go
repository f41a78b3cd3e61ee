package report

import (
	"io"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
)

// PricesObject is the JSON of a price book, or of what a search in it found: figures are
// decimals as strings.
type PricesObject struct {
	Schema   int            `json:"schema"`
	Items    []ItemPrice    `json:"items"`
	Products []ProductPrice `json:"products"`
}

// ItemPrice is an item of work.
type ItemPrice struct {
	Name        string          `json:"name"`
	Trade       string          `json:"trade"`
	Work        string          `json:"work"`
	Category    string          `json:"category"`
	Element     string          `json:"element"`
	Measure     string          `json:"measure"`
	Unit        string          `json:"unit"`
	Hours       decimal.Decimal `json:"hours"` // for each unit and coat
	SetUp       decimal.Decimal `json:"set_up_hours"`
	HoursSource string          `json:"hours_source"`
	Hired       decimal.Decimal `json:"hired"` // dollars for each unit and coat; 0 is none
	HiredSource string          `json:"hired_source"`
	Dated       string          `json:"dated"` // of the hired price; "" is unknown
	Materials   []Material      `json:"materials"`
	Brings      []Brought       `json:"brings"`
	Debris      decimal.Decimal `json:"debris_cubic_feet"`
	Weight      decimal.Decimal `json:"weight_pounds"`
	Waits       decimal.Decimal `json:"waits_days"`
	Coats       int             `json:"coats"`
	NewFloor    bool            `json:"new_floor"`
	Makes       string          `json:"makes"`     // what of a place it makes new; "" is nothing that another would
	TakesOut    string          `json:"takes_out"` // whole; "" is nothing that need be made new
	InsteadOf   []string        `json:"instead_of"`
	ShareByAge  string          `json:"share_by_age"` // of which table by year built; "" is all of the measure
	InPart      bool            `json:"in_part"`      // rarely done to all of the measure
	Once        bool            `json:"once"`         // brought along, whatever the count or part of what brings it
	ForEach     bool            `json:"for_each"`     // brought along by several pieces of work, for each of them
	Permit      bool            `json:"permit"`
	Licence     bool            `json:"licence"`
	Cautions    []string        `json:"cautions"`
	Source      string          `json:"source"`
	Own         bool            `json:"own"` // a book of the owner's has a say in it
}

// Material is what an item takes of a product: one of takes, one_for and for_the_job is
// above 0.
type Material struct {
	Product  string          `json:"product"`
	Takes    decimal.Decimal `json:"takes"`
	OneFor   decimal.Decimal `json:"one_for"`
	ForJob   decimal.Decimal `json:"for_the_job"`
	Along    string          `json:"along"`
	EachCoat bool            `json:"each_coat"`
	Waste    decimal.Decimal `json:"waste"` // a share
	Source   string          `json:"source"`
}

// Brought is a companion of an item.
type Brought struct {
	Item    string   `json:"item"`
	If      string   `json:"if"`
	InHouse bool     `json:"in_house"`
	Unless  []string `json:"unless"` // items beside which it does not come
}

// ProductPrice is a product.
type ProductPrice struct {
	Name   string          `json:"name"`
	Aisle  string          `json:"aisle"`
	Grade  string          `json:"grade"`
	Pack   string          `json:"pack"`
	Price  decimal.Decimal `json:"price"` // dollars a pack; 0 where it is sold by the stick
	Sticks []StickPrice    `json:"sticks"`
	// Of wallpaper by the roll, in feet; 0 where there is none.
	RollWidth  decimal.Decimal `json:"roll_width_feet"`
	RollLength decimal.Decimal `json:"roll_length_feet"`
	Repeat     decimal.Decimal `json:"repeat_feet"`
	HalfDrop   bool            `json:"half_drop"`

	Taxed  bool   `json:"taxed"`
	Dated  string `json:"dated"` // "" is unknown
	Source string `json:"source"`
	Own    bool   `json:"own"` // a book of the owner's has a say in it
}

// StickPrice is what a stick of a length costs.
type StickPrice struct {
	Feet  decimal.Decimal `json:"feet"`
	Price decimal.Decimal `json:"price"`
}

// PricesJSON writes products and items of a price book as one object.
func PricesJSON(w io.Writer, b *pricebook.Book, products, items []string) error {
	o := PricesObject{Schema: Schema, Items: []ItemPrice{}, Products: []ProductPrice{}}
	for _, n := range items {
		o.Items = append(o.Items, itemPrice(b, b.Item(n)))
	}
	for _, n := range products {
		o.Products = append(o.Products, productPrice(b, b.Product(n)))
	}
	return writeJSON(w, o)
}

func itemPrice(b *pricebook.Book, it *pricebook.Item) ItemPrice {
	out := ItemPrice{
		Name: it.Name, Trade: it.Trade, Work: it.Work, Category: it.Category, Element: it.Element, Measure: it.Measure, Unit: string(it.Unit),
		Hours: it.Hours, SetUp: it.SetUp, HoursSource: it.HoursSource, Hired: it.Hired, HiredSource: it.HiredSource, Dated: day(it.Dated),
		Materials: []Material{}, Brings: []Brought{}, Debris: it.Debris, Weight: it.Weight, Waits: it.Waits, Coats: it.Coats, NewFloor: it.NewFloor, ShareByAge: it.ShareByAge, InPart: it.InPart, Once: it.Once, ForEach: it.ForEach,
		Makes: it.Makes, TakesOut: it.TakesOut, InsteadOf: append([]string{}, it.InsteadOf...),
		Permit: it.Permit, Licence: it.Licence, Cautions: append([]string{}, it.Cautions...), Source: it.Source, Own: b.Own(it.Name),
	}
	for _, u := range it.Uses {
		out.Materials = append(out.Materials, Material{u.Product, u.TakesOf(b.Product(u.Product), it), u.Covers, u.ForJob, u.Along, u.PerCoat, u.Waste, u.Source})
	}
	for _, c := range it.Brings {
		out.Brings = append(out.Brings, Brought{c.Item, c.If, c.House, append([]string{}, c.Unless...)})
	}
	return out
}

func productPrice(b *pricebook.Book, p *pricebook.Product) ProductPrice {
	out := ProductPrice{
		Name: p.Name, Aisle: p.Aisle, Grade: p.Grade, Pack: p.SoldIn(), Price: p.Price, Sticks: []StickPrice{},
		Taxed: !p.NoTax, Dated: day(p.Dated), Source: p.Source, Own: b.Own(p.Name),
	}
	if r := p.Roll; r != nil {
		out.RollWidth, out.RollLength, out.Repeat, out.HalfDrop = r.Width.Feet(), r.Length.Feet(), r.Repeat.Feet(), r.HalfDrop
	}
	for _, s := range p.Sticks {
		out.Sticks = append(out.Sticks, StickPrice{s.Length.Feet(), s.Price})
	}
	return out
}
