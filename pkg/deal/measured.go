package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// measured read the kinds that a tape measure or a scale gives, in the model's units:
// feet, square feet, cubic feet, pounds, days. Never written to.
var measured = map[Kind]func(string) (decimal.Decimal, error){
	Length: in(quantity.ParseLength, quantity.Length.Feet),
	Area:   in(quantity.ParseArea, quantity.Area.SquareFeet),
	Volume: in(quantity.ParseVolume, quantity.Volume.CubicFeet),
	Pitch:  in(quantity.ParsePitch, func(p quantity.Pitch) decimal.Decimal { return p.Rise.DivRound(p.Run, quantity.Places) }),
	Weight: quantity.ParsePounds,
	Days:   quantity.ParseDays,
}

func in[T any](parse func(string) (T, error), unit func(T) decimal.Decimal) func(string) (decimal.Decimal, error) {
	return func(text string) (decimal.Decimal, error) {
		x, err := parse(text)
		if err != nil {
			return decimal.Zero, err
		}
		return unit(x), nil
	}
}
