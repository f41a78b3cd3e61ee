package comps

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// Fact is a number that may not be known.
type Fact struct {
	Value float64
	Known bool
}

// Known returns a fact.
func Known(v float64) Fact { return Fact{v, true} }

// Place is where a house stands: metres east and north on a plane, or degrees of
// longitude and latitude. The zero Place is not known.
type Place struct {
	X, Y    float64 // metres, or degrees with east and north above zero
	Degrees bool
	Known   bool
}

// House is what is known of a house, sold or not. Words are compared as they stand,
// in lower case; "" is not known.
type House struct {
	Area       Fact // living area, sq ft
	Lot        Fact // sq ft
	Bedrooms   Fact
	FullBaths  Fact
	HalfBaths  Fact
	Built      Fact // year
	GarageArea Fact // sq ft
	GarageCars Fact
	Condition  Fact // 1 poor to 5 excellent
	Kind       string
	Storeys    string
	Wall       string
	Garage     string
	Place      Place
}

// Subject is the house to be valued, as it will be when it is sold.
type Subject struct {
	House
	Label string
	Has   []string // the extras that it has
}

// Sold is one sale of the list.
type Sold struct {
	House
	Label       string
	Source      string
	Terms       string // how it was sold, as the list says
	Date        quantity.Date
	Price       decimal.Decimal // as recorded, dollars
	Concessions decimal.Decimal // what the seller paid for the buyer, dollars
	Has         []string        // the extras that it had
	Told        []string        // the extras of which it, or another of its list, says whether they had them
	Stated      Fact            // distance to the subject as the list says, metres
	Line        int             // of the file; 0 if it came from none
	Origin      Origin          // whose row it is: of two of the same sale the nearer to whoever asks counts
	Flags       Flags
}

// Origin says how near a row is to whoever asks.
type Origin int

// A list's row, one of a table that was pasted, and a sale that was written out.
const (
	Listed Origin = iota
	Pasted
	Written
)

// Net returns the price less what the seller gave back.
func (s *Sold) Net() decimal.Decimal {
	if s.Concessions.IsZero() {
		return s.Price
	}
	return s.Price.Sub(s.Concessions)
}

// Extra is something that the caller prices: a pool, or a busy street below zero.
type Extra struct {
	Name  string
	Worth decimal.Decimal
}
