package comps

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/quantity"
)

// Line is a line of the adjustment grid.
type Line int

// The lines, in the order in which they are shown.
const (
	Concessions Line = iota
	Time
	Location
	Size
	Lot
	Rooms
	Baths
	Age
	Condition
	Garage
	Style
	Own
	lineCount
)

var lineWords = [...]string{
	"concessions", "time", "location", "size", "lot", "bedrooms", "baths", "age", "condition", "garage", "style", "own lines",
}

// String returns the line's name.
func (l Line) String() string { return lineWords[l] }

// trait is a column of the regression: a figure drawn from a house.
type trait struct {
	line Line
	name string
	of   func(*House) (v float64, known bool)
	mean float64 // over the sales where it is known
	// aged is, of a product with the age, what the age is multiplied by: of what the
	// product says of two houses, that which their ages make is the age's.
	aged func(*House) float64
}

// aged is a product of a figure and the age.
func aged(line Line, name string, year int, figure func(*House) (float64, bool)) trait {
	times := func(h *House) float64 {
		v, _ := figure(h)
		return v
	}
	return trait{line: line, name: name, aged: times, of: func(h *House) (float64, bool) {
		v, ok := figure(h)
		return v * ageOf(h, year), ok && h.Built.Known
	}}
}

// byAge is what two houses differ in a product by their ages: their difference times the
// mean of the figure; what is left is by the figure, at the mean of the ages.
func (d *design) byAge(t *trait, a, b *House) float64 {
	return (ageOf(a, d.year) - ageOf(b, d.year)) * (t.aged(a) + t.aged(b)) / 2
}

// ageOf is the age of a house in steps of 50 years, two at most.
func ageOf(h *House, year int) float64 { return min(max(float64(year)-h.Built.Value, 0), 100) / 50 }

// design is the columns of the regression as of a day.
type design struct {
	year   int
	traits []trait
	usual  []string // by the columns of words, the most common one, which has no column of its own
}

// at returns the figures of a house; one not known counts as the mean.
func (d *design) at(h *House, to []float64) {
	for i := range d.traits {
		t := &d.traits[i]
		v, ok := t.of(h)
		if !ok {
			v = t.mean
		}
		to[i] = v
	}
}

func within(f Fact, low, high float64) (float64, bool) {
	return min(max(f.Value, low), high), f.Known
}

func logWithin(f Fact, low, high float64) (float64, bool) {
	if !f.Known {
		return 0, false
	}
	return math.Log(min(max(f.Value, low), high)), true
}

// middleArea centres the bend of the size column, and largeLot is where that of the lots begins: logs
// of sq ft.
var middleArea, largeLot = math.Log(1400), math.Log(15_000)

// knots are the ages in years at which the fall of value with age may bend.
var knots = []float64{0, 12, 30, 55, 80}

// numbers are the columns that every list may have.
func numbers(year int) []trait {
	out := []trait{
		{Size, "size", func(h *House) (float64, bool) { return logWithin(h.Area, 300, 12_000) }, 0, nil},
		{Size, "size bend", func(h *House) (float64, bool) {
			v, ok := logWithin(h.Area, 300, 12_000)
			v -= middleArea
			return v * v, ok
		}, 0, nil},
		{Lot, "lot", func(h *House) (float64, bool) { return logWithin(h.Lot, 1000, 200_000) }, 0, nil},
		{Lot, "lot bend", func(h *House) (float64, bool) {
			v, ok := logWithin(h.Lot, 1000, 200_000)
			return max(v-largeLot, 0), ok
		}, 0, nil},
		{Rooms, "bedrooms", func(h *House) (float64, bool) { return within(h.Bedrooms, 1, 6) }, 0, nil},
		{Baths, "full baths", func(h *House) (float64, bool) { return within(h.FullBaths, 1, 5) }, 0, nil},
		{Baths, "half baths", func(h *House) (float64, bool) { return within(h.HalfBaths, 0, 3) }, 0, nil},
		{Garage, "garage area", func(h *House) (float64, bool) { return within(h.GarageArea, 0, 1200) }, 0, nil},
		{Garage, "garage cars", func(h *House) (float64, bool) { return within(h.GarageCars, 0, 4) }, 0, nil},
		{Condition, "condition", func(h *House) (float64, bool) { return h.Condition.Value, h.Condition.Known }, 0, nil},
	}
	out = append(out,
		aged(Size, "size by age", year, func(h *House) (float64, bool) {
			v, ok := logWithin(h.Area, 300, 12_000)
			return v - middleArea, ok
		}),
		aged(Baths, "baths by age", year, func(h *House) (float64, bool) { return bathsOf(h).Value, h.FullBaths.Known }),
		aged(Lot, "lot by age", year, func(h *House) (float64, bool) { return logLot(h) - 8.8, h.Lot.Known }),
	)
	for _, k := range knots {
		out = append(out, trait{Age, "age", func(h *House) (float64, bool) {
			return max(float64(year)-h.Built.Value-k, 0), h.Built.Known
		}, 0, nil})
	}
	return out
}

// words are the columns of words, one for each word but the most common.
var words = []struct {
	line Line
	of   func(*House) string
}{
	{Garage, func(h *House) string { return h.Garage }},
	{Style, func(h *House) string { return h.Kind }},
	{Style, func(h *House) string { return h.Storeys }},
	{Style, func(h *House) string { return h.Wall }},
}

// ofGarage and ofKind are which of them are of garages and of types.
const ofGarage, ofKind = 0, 1

// fewest is how many sales must have a word for it to have a column, in a long list.
const fewest = 25

// newDesign draws the columns from the sales that may be used, as of a day.
func newDesign(sales []*Sold, day quantity.Date) *design {
	d := &design{year: day.Year}
	all := numbers(day.Year)
	vary := make([]bool, len(all))
	var looks []func() error
	for i := range all {
		looks = append(looks, func() error { vary[i] = all[i].vary(sales); return nil })
	}
	_ = together.Run(looks...) // none fails
	for i, t := range all {
		if vary[i] {
			d.traits = append(d.traits, t)
		}
	}
	for _, w := range words {
		d.usual = append(d.usual, d.words(sales, w.line, w.of))
	}
	return d
}

// vary takes the mean of a figure of some sales, and reports whether they differ in it.
func (t *trait) vary(sales []*Sold) (vary bool) {
	sum, n := 0.0, 0
	first, some := 0.0, false
	for _, s := range sales {
		if v, ok := t.of(&s.House); ok {
			if some && v != first {
				vary = true
			}
			first, some = v, true
			sum, n = sum+v, n+1
		}
	}
	if vary {
		t.mean = sum / float64(n)
	}
	return vary
}

// words draws the columns of one kind of words, and returns that without one: the most common.
func (d *design) words(sales []*Sold, line Line, of func(*House) string) (usual string) {
	count := map[string]int{}
	for _, s := range sales {
		if w := of(&s.House); w != "" {
			count[w]++
		}
	}
	all := 0
	for _, n := range count {
		all += n
	}
	names := slices.SortedFunc(maps.Keys(count), func(a, b string) int {
		return cmp.Or(count[b]-count[a], cmp.Compare(a, b))
	})
	for i, name := range names {
		if i == 0 {
			usual = name
		}
		if i == 0 || count[name] < min(fewest, 1+len(sales)/regressFrom) {
			continue
		}
		d.traits = append(d.traits, trait{line, name, func(h *House) (float64, bool) {
			w := of(h)
			if w == name {
				return 1, true
			}
			return 0, w != ""
		}, float64(count[name]) / float64(all), nil})
	}
	return usual
}
