package quantity

import (
	"math/big"

	"github.com/shopspring/decimal"
)

const wantVolume = "a volume, e.g. 10 cu yd, 3 cu ft or 20-yard for a container"

// Volume is an exact volume, held in cubic metres for the reason given at Length.
type Volume struct{ metres decimal.Decimal }

// CubicMetres returns the volume in cubic metres, exactly.
func (v Volume) CubicMetres() decimal.Decimal { return v.metres }

// CubicFeet returns the volume in cubic feet, rounded half away from zero to Places
// decimals. What was written in cubic feet or cubic yards is exact.
func (v Volume) CubicFeet() decimal.Decimal { return quotient(v.metres, unitTable["cu ft"].size) }

// CubicYards returns the volume in cubic yards, rounded half away from zero to
// Places decimals: a cubic foot (1/27) has no end.
func (v Volume) CubicYards() decimal.Decimal { return quotient(v.metres, unitTable["cu yd"].size) }

// String prints cubic yards with at most two decimals: 20 cu yd.
func (v Volume) String() string { return FormatCount(v.CubicYards(), 2) + " cu yd" }

// ParseVolume reads 10 cu yd, 3 cu ft, 5 gal, 1.5 m3, and 20-yard or 20 yards, by
// which cubic yards are meant. A number without a unit is refused, and so is more
// than 1,000,000,000 cu yd.
func ParseVolume(text string) (Volume, error) { return parse(text, wantVolume, (*cursor).volume) }

func (c *cursor) volume() (Volume, error) {
	first := c.peek()
	n, err := c.unsigned(volumes)
	if err != nil {
		return Volume{}, err
	}
	u, err := c.volumeUnit(first)
	if err != nil {
		return Volume{}, err
	}
	d, err := c.kept(first, c.last(), new(big.Rat).Mul(n, u.size.Rat()), volumes, Places)
	return Volume{d}, err
}

func (c *cursor) volumeUnit(first token) (*unitRow, error) {
	c.hyphen()
	if _, n := c.unitAhead(volumes); n == 0 && c.take("yd", "yds", "yard", "yards") {
		return unitTable["cu yd"], nil
	}
	return c.unitOf(volumes, first)
}
