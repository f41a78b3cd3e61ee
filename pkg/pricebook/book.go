package pricebook

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A Product is something that is bought.
type Product struct {
	Name   string
	Aisle  string // where it is found in a shop
	Grade  string // builder, standard, better, or ""
	Pack   quantity.Pack
	Price  decimal.Decimal // dollars a pack; for a roll, a roll
	Sticks []Stick         // the lengths it is sold in, shortest first, where it is sold by the stick
	Roll   *Roll           // where it is wallpaper
	NoTax  bool            // sales tax is not charged on it
	Dated  quantity.Date   // of the price; zero if unknown
	Source string          // of the price
	Pos    diag.Pos
}

// A Stick is one length in which a product is sold.
type Stick struct {
	Length quantity.Length
	Price  decimal.Decimal // dollars
	Own    bool            // it is the owner's or a supplier's, not one of the starter book
}

// A Roll is how wallpaper is sold.
type Roll struct {
	Width, Length, Repeat quantity.Length
	HalfDrop              bool
}

// An Item is a piece of work.
type Item struct {
	Name        string
	Trade       string
	Work        string // what is done, for a lender
	Category    string // of a lender's breakdown
	Element     string // of the public-domain element classification
	Measure     string // what it is measured by, as in "open floor"
	Unit        quantity.Unit
	Hours       decimal.Decimal // of a trained hand, for each unit and coat
	SetUp       decimal.Decimal // hours, once for each room
	HoursSource string
	Hired       decimal.Decimal // dollars for each unit and coat, labour alone
	HiredSource string
	Dated       quantity.Date // of the hired price; zero if unknown
	Uses        []Use
	Brings      []Companion
	Debris      decimal.Decimal // loose cubic feet for each unit
	Weight      decimal.Decimal // pounds for each unit
	Waits       decimal.Decimal // days
	Coats       int             // how often it is gone over; 1 if the book does not say
	NewFloor    bool            // it lays a floor, so what lies there is taken up
	Makes       string          // what of a place it makes new, "" where nothing else makes that; see Thing
	TakesOut    string          // what of a place it takes out whole, "" where nothing need be put back
	InsteadOf   []string        // other work that has no place where all of this is done
	ShareByAge  string          // "subfloor" or "roof deck": the table that says how much of the measure; "" for all of it
	InPart      bool            // it is rarely done to all of its measure
	Once        bool            // measured by one and brought along, it comes once for a room, whatever the count or part of what brings it
	ForEach     bool            // measured by one and brought along, it comes for each piece of work that brings it; never beside Once
	Permit      bool            // a permit is usual
	Licence     bool            // a licensed trade is usual or required
	Cautions    []string
	Source      string
	Pos         diag.Pos
}

// A Use is what an item takes of a product. Exactly one of Takes, Covers and ForJob is
// above 0.
type Use struct {
	Product string
	Takes   decimal.Decimal // of the pack's unit, for each unit of work
	Covers  decimal.Decimal // units of work that one pack does
	ForJob  decimal.Decimal // of the pack's unit, however large the job
	Along   string          // the measure that it follows, "" for the item's
	PerCoat bool            // taken again for each coat
	Waste   decimal.Decimal // share
	Source  string
	Pos     diag.Pos
	starter bool // of the starter book, whose packs it counts
	unsaid  bool // nobody says how much
}

// TakesOf is how much of a product is taken for each unit of an item's work, in the product's
// unit: what the item says, or else one, which is so much in another unit of the same kind.
func (u *Use) TakesOf(p *Product, it *Item) decimal.Decimal {
	if p == nil || !u.unsaid {
		return u.Takes
	}
	if x, ok := u.Unit(it).In(p.Unit()); ok {
		return x
	}
	return u.Takes
}

// Unit is what a use follows of an item's work: the item's unit, or that of what it goes along.
func (u *Use) Unit(it *Item) quantity.Unit {
	if m := MeasureNamed(u.Along); m != nil {
		return m.Unit
	}
	return it.Unit
}

// PackOf is the pack of which one does what a use covers: that of the book that says so.
func (b *Book) PackOf(u Use) quantity.Pack {
	if u.starter {
		b = Starter()
	}
	if p := b.Product(u.Product); p != nil {
		return p.Pack
	}
	return quantity.Pack{}
}

// IsWindow reports whether the work puts a window in, old or new frame: never minor repair under
// the federal lead rule.
func (it *Item) IsWindow() bool {
	return it.Makes == "windows" || strings.HasSuffix(it.Name, " window")
}

// IsPermit reports whether a name, evened out, is what people call the town's leave to build.
// The name says it, for an own book's permit need have none of the marks of the starter's.
func IsPermit(name string) bool {
	return strings.Contains(name, "permit") && permitName().MatchString(name) // few names ask for more
}

var permitName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\bpermits\b|\bpermit( fees?)?$`) })

// MayCoat reports whether work may be gone over more than once: the book has it in coats, or
// its words tell of what is put on in coats.
func (it *Item) MayCoat() bool {
	perCoat := func(u Use) bool { return u.PerCoat }
	return it.Coats > 1 || slices.ContainsFunc(it.Uses, perCoat) || inCoats().MatchString(it.Name+" "+it.Work)
}

var inCoats = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(re)?(coat|paint|prim(e|ing)|stain|seal|enamel|varnish|oil|wax|wash|plaster|skim|spray|finish|fill|sand)`)
})

// WoodFinish is what sanding and coating a wood floor makes, old or new.
const WoodFinish = "wood floor finish"

// Finish is what is done on what an item makes, where something is: a floor, siding or a deck may
// be finished by other work.
func (it *Item) Finish() string {
	switch {
	case it.NewFloor:
		return WoodFinish
	case it.Makes == "siding":
		return "siding finish"
	case it.Makes == "deck":
		return "deck finish"
	}
	return ""
}

// Thing is what of a place the item makes new, "" where nothing else makes that.
func (it *Item) Thing() string {
	if it.NewFloor {
		return cmp.Or(it.Makes, "floor")
	}
	return it.Makes
}

// A Companion is work that an item brings with it.
type Companion struct {
	Item   string
	If     string   // a condition of Conditions, or "" for always
	House  bool     // once for the whole house
	Unless []string // items beside which it does not come
	Pos    diag.Pos
}

// A Book is a price book.
type Book struct {
	products, items map[string]*entry
	names           [2][]string // of products and of items, in the order of the book
	below           *Book       // what it adds to, or nil
}

// Product returns the product of that name, or nil.
func (b *Book) Product(name string) *Product {
	for ; b != nil; b = b.below {
		if e := b.products[name]; e != nil {
			return e.read().product
		}
	}
	return nil
}

// Item returns the item of that name, or nil.
func (b *Book) Item(name string) *Item {
	for ; b != nil; b = b.below {
		if e := b.items[name]; e != nil {
			return e.read().item
		}
	}
	return nil
}

// Products returns the names of all products, each once, in the order of the book.
func (b *Book) Products() []string { return b.all(0) }

// Items returns the names of all items, each once, in the order of the book.
func (b *Book) Items() []string { return b.all(1) }

func (b *Book) all(kind int) []string {
	var out []string
	seen := map[string]bool{}
	var layers []*Book
	for ; b != nil; b = b.below {
		layers = append(layers, b)
	}
	for _, l := range slices.Backward(layers) {
		for _, n := range l.names[kind] {
			if !seen[n] {
				seen[n] = true
				out = append(out, n)
			}
		}
	}
	return out
}
