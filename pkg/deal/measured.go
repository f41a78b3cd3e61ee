package deal

import (
	"strings"

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
	Weight: pounds,
	Days:   waitingDays,
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

// counted reads a number and a word behind it that says how many of the model's unit
// it is.
func counted(text, want string, words map[string]int64) (decimal.Decimal, error) {
	number, word, _ := strings.Cut(strings.TrimSpace(text), " ")
	x, err := quantity.ParseCount(number)
	if err != nil {
		return x, err
	}
	times, known := words[strings.ToLower(strings.TrimSpace(word))]
	if !known || x.IsNegative() {
		return x, &quantity.Error{Found: text, Why: "its unit is not read", Want: want}
	}
	return x.Mul(decimal.NewFromInt(times)), nil
}

// pounds reads a weight; a ton is 2,000 lb.
func pounds(text string) (decimal.Decimal, error) {
	return counted(text, "pounds or tons, e.g. 6000 lb or 3 tons",
		map[string]int64{"lb": 1, "lbs": 1, "pound": 1, "pounds": 1, "ton": 2000, "tons": 2000})
}

func waitingDays(text string) (decimal.Decimal, error) {
	return counted(text, "days or weeks, e.g. 15 days", map[string]int64{"day": 1, "days": 1, "week": 7, "weeks": 7})
}
