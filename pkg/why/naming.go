package why

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// A naming says what units are called where a value stands.
type naming struct {
	units func(x *model.Member, unit string) (one, several string)
	x     *model.Member
}

func (t *Tree) naming() naming {
	if t.reader == nil || t.Cell == nil {
		return naming{}
	}
	return naming{t.reader.Units, t.Cell.Member}
}

// unitWords are units whose names are other than the model's, of one and of several.
var unitWords = map[string][2]string{
	"sqft": {"sq ft", "sq ft"}, "cuft": {"cu ft", "cu ft"}, "ft ft": {"sq ft", "sq ft"}, "ft ft ft": {"cu ft", "cu ft"},
	"day": {"day", "days"}, "week": {"week", "weeks"}, "quarter": {"quarter", "quarters"}, "year": {"year", "years"},
	"pack": {"pack", "packs"},
}

// of is what so many of a unit are called.
func (n naming) of(unit string, x decimal.Decimal) string {
	one, several := unit, unit
	if words, ok := unitWords[unit]; ok {
		one, several = words[0], words[1]
	}
	if n.units != nil {
		if a, b := n.units(n.x, unit); a != "" {
			one, several = a, b
		}
	}
	if x.Equal(decimal.NewFromInt(1)) {
		return one
	}
	return several
}
