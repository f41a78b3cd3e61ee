package comps

// A Bound is what a list is believed to say of a field: the least and the most, and whether
// whole numbers alone.
type Bound struct {
	Least, Most float64
	Whole       bool
}

// The bounds of what is measured, in sq ft and years, and of steps of condition.
var (
	boundArea      = Bound{100, 100_000, false}
	boundLot       = Bound{leastLot, 1e9, false}
	boundBuilt     = Bound{1600, 2199, false}
	boundCondition = Bound{1, 5, false}
)

// mostMonths is how long before the day a sale of a list can be: 200 years, which no list reaches
// back and the number of a day is far beyond (common practice, no source).
const mostMonths = 200 * 12

// bounds are those by the name of the field; of "sold" in months before the day.
var bounds = map[string]Bound{
	"living area": boundArea, "lot": boundLot, "bedrooms": {1, mostBedrooms, true}, "baths": {0, mostBaths, false},
	"year built": boundBuilt, "garage": {0, mostCars, false}, "condition": boundCondition, "sold": {0, mostMonths, false},
}

// BoundOf is what is believed of a field; false where nothing is too small or too large.
func BoundOf(field string) (Bound, bool) {
	b, ok := bounds[field]
	return b, ok
}
