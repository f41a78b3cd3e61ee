package quantity

import (
	"math/big"
	"slices"

	"github.com/shopspring/decimal"
)

const wantArea = "an area, e.g. 168 sq ft, 15.6 m2 or 3 squares, or a size, e.g. 12' x 14'"

// Area is an exact area, held in square metres for the reason given at Length.
type Area struct{ metres decimal.Decimal }

// SquareMetres returns the area in square metres, exactly.
func (a Area) SquareMetres() decimal.Decimal { return a.metres }

// SquareFeet returns the area in square feet, rounded half away from zero to Places
// decimals. What was written in square feet is exact.
func (a Area) SquareFeet() decimal.Decimal { return quotient(a.metres, unitTable["sq ft"].size) }

// AreaOf is a number of a unit of area, such as the "acre" or "m2", exactly; of another
// unit it panics.
func AreaOf(n decimal.Decimal, unit Unit) Area {
	u := unitTable[unit]
	if u == nil || u.of != areas {
		panic("quantity: no unit of area")
	}
	return Area{n.Mul(u.size)}
}

// Add returns the sum, exactly.
func (a Area) Add(other Area) Area { return Area{trim(a.metres.Add(other.metres))} }

// String prints square feet with at most two decimals: 168 sq ft.
func (a Area) String() string { return FormatCount(a.SquareFeet(), 2) + " sq ft" }

// ParseArea reads 168 sq ft, 168 sf, 20 sq yd, 15.6 m2, 3 squares (of 100 sq ft each,
// as roofers count), 2 acres, or the size of a rectangle: 12' x 14'. A number without
// a unit is refused, and so is more than 10,000,000,000 sq ft.
func ParseArea(text string) (Area, error) { return parse(text, wantArea, (*cursor).area) }

func (c *cursor) area() (Area, error) {
	c.splitX()
	if slices.ContainsFunc(c.toks, isBy) {
		s, err := c.size()
		return s.Area(), err
	}
	first := c.peek()
	n, err := c.unsigned(areas)
	if err != nil {
		return Area{}, err
	}
	u, err := c.unitOf(areas, first)
	if err != nil {
		return Area{}, err
	}
	d, err := c.kept(first, c.last(), new(big.Rat).Mul(n, u.size.Rat()), areas, Places)
	return Area{d}, err
}
