package deal

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// timesTheHouse is from how many times the living area of the house on, or how small a
// part of it, that of a sale looks misread (common practice, no source).
const timesTheHouse = 4

// leastHouse is the living area in sq ft under which hardly any house is (common practice, no source).
const leastHouse = 250

// unlikeMost reports whether something holds of three in four sales, of two at least: then
// it is likely the house that was mistyped, and not they.
func unlikeMost(c *Comparables, so func(*comps.Row) bool) bool {
	n := 0
	for i := range c.Value.Rows {
		if so(&c.Value.Rows[i]) {
			n++
		}
	}
	return nearlyAll(n, len(c.Value.Rows))
}

// nearlyAllOf is how many are nearly all: three in four of them, two at least.
func nearlyAllOf(all int) int { return max(2, (3*all+3)/4) }

// nearlyAll reports whether so many are nearly all.
func nearlyAll(n, all int) bool { return n >= nearlyAllOf(all) }

// doubtAreas warns of living areas that are hardly those of houses like this one.
func (r *reader) doubtAreas(c *Comparables) {
	ours, whose := c.Subject.Area, "the house has"
	size := func(row *comps.Row) float64 { return row.Area.Value / ours.Value }
	if ours.Known && (unlikeMost(c, func(row *comps.Row) bool { return row.Area.Known && size(row) >= timesTheHouse }) ||
		unlikeMost(c, func(row *comps.Row) bool { return row.Area.Known && size(row) <= 1.0/timesTheHouse })) {
		half := middleArea(c.Value.Rows)
		likely, hint := "the house was mistyped", "look whether its living area has a digit too many or too few; the whole value hangs on it"
		switch x := ours.Value / half.Value; {
		case half.Value < leastHouse:
			likely, hint = "they are in square metres, or something else than living areas", "say so in the heading, e.g. living area m2; the whole value hangs on it"
		case x > 8 && x < 14: // 10.76 sq ft are one square metre
			hint = "look whether its living area has a digit too many, or theirs are in square metres: then say so in the heading, e.g. living area m2; the whole value hangs on it"
		}
		r.say(MistypedHouse, r.needed("house.living area", "house"), "the house has %s sq ft of living area, and the sales about %s: likely %s", quantity.FormatCount(decimalOf(ours), 0), quantity.FormatCount(decimalOf(half), 0), likely)("%s", hint)
		return
	}
	r.doubtBeyondSizes(c)
	if !ours.Known {
		ours, whose = middleArea(c.Value.Rows), "half of the sales have at most"
	}
	for _, row := range c.Value.Rows {
		if x := row.Area; x.Known && ours.Known && (x.Value >= timesTheHouse*ours.Value || x.Value <= ours.Value/timesTheHouse) {
			r.say("sale-odd-size", c.Place(&row.Sold), "%s has %s sq ft, and %s %s", row.Name(), quantity.FormatCount(decimalOf(x), 0), whose, quantity.FormatCount(decimalOf(ours), 0))("look whether the living area was read right, and strike a sale of quite another house")
		}
	}
}

// beyondTheSales is how many times the living area of the largest sale, or of the smallest that
// of the house, tells little of its value any more (common practice, no source).
const beyondTheSales = 1.25

// tells reports whether a sale weighs something among the others: one that weighs next to nothing
// tells nothing of what such a house sells for.
func (c *Comparables) tells(row *comps.Row) bool {
	return row.Weight >= min(counts, 0.5/float64(len(c.Value.Rows)))
}

// byArea are the sales that tell something and whose living area is known, the largest first.
func (c *Comparables) byArea() (all []comps.Row) {
	for _, row := range c.Value.Rows {
		if row.Area.Known && c.tells(&row) {
			all = append(all, row)
		}
	}
	slices.SortStableFunc(all, func(x, y comps.Row) int { return cmp.Compare(y.Area.Value, x.Area.Value) })
	return all
}

// doubtBeyondSizes warns of a house well larger than the largest of the sales, or smaller than
// the smallest, or than all but one: its value is drawn on beyond what they tell.
func (r *reader) doubtBeyondSizes(c *Comparables) {
	all, ours := c.byArea(), c.Subject.Area
	if !ours.Known || len(all) == 0 {
		return
	}
	which, so := "largest", "large"
	beyond := func(row *comps.Row) bool { return ours.Value > beyondTheSales*row.Area.Value }
	if ours.Value < middleArea(all).Value {
		slices.Reverse(all)
		which, so = "smallest", "small"
		beyond = func(row *comps.Row) bool { return beyondTheSales*ours.Value < row.Area.Value }
	}
	edge, but, tells := &all[0], "", "none tells"
	if !beyond(edge) && len(all) >= usualSales {
		but, tells = fmt.Sprintf(" but %s (%s)", all[0].Name(), quantity.FormatCount(decimalOf(all[0].Area), 0)), "it alone tells"
		edge = &all[1]
	}
	if beyond(edge) {
		r.say("house-beyond-sales", r.needed("house.living area", "house"), "the house has %s sq ft of living area, and the %s of the sales%s %s: %s what so %s a house sells for", quantity.FormatCount(decimalOf(ours), 0), which, but, quantity.FormatCount(decimalOf(edge.Area), 0), tells, so)("look whether its living area is right; if it is, look for sales of its size")
	}
}

// doubtBeyondConditions warns of a house that is to be better than all the sales: what that brings is
// what a new owner hopes for, and none of them tells it.
func (r *reader) doubtBeyondConditions(c *Comparables) {
	ours := c.Subject.Condition
	_, best := c.ends(func(h *comps.House) comps.Fact { return h.Condition })
	if ours.Known && best > 0 && ours.Value > best {
		r.say("house-beyond-sales", r.needed("house.condition", "comps.condition by option", "house"), "the house is said to be in %s condition, and the best of the sales was in %s: none tells what so good a house sells for", conditionSaid(ours.Value), conditionSaid(best))("look for sales that were as well done; else count on what they were")
	}
}

// conditionSaid is a condition in its word, and one between two words between them: 4.5 is good to
// excellent.
func conditionSaid(x float64) string {
	words, below := comps.Conditions(), int(x)
	if x == float64(below) {
		return words[below-1]
	}
	return words[below-1] + " to " + words[below]
}

// doubtOddRooms warns of many times as many bedrooms as the house has.
func (r *reader) doubtOddRooms(c *Comparables) {
	ours := c.Subject.Bedrooms
	for _, row := range c.Value.Rows {
		if x := row.Bedrooms; x.Known && ours.Known && ours.Value > 0 && x.Value >= timesTheHouse*ours.Value {
			r.say("sale-odd-size", c.Place(&row.Sold), "%s has %s bedrooms, and the house %s", row.Name(), quantity.FormatCount(decimalOf(x), 0), quantity.FormatCount(decimalOf(ours), 0))("look whether they were read right, and strike a sale of quite another house")
		}
	}
}

// doubtTypes warns of sales of another type than the house, where nothing tells what that is
// worth.
func (r *reader) doubtTypes(c *Comparables) {
	var kinds []string
	n := 0
	for _, row := range c.Value.Rows {
		if row.OtherType {
			n, kinds = n+1, append(kinds, row.Kind)
		}
	}
	if n == 0 {
		return
	}
	slices.Sort(kinds)
	kinds = slices.Compact(kinds)
	r.say("comps-other-type", r.where("house.type", "house"), "%d of %s %s %s, the house is %s: type is not adjusted", n, quantity.Counted(len(c.Value.Rows), "sale"), map[bool]string{true: "is", false: "are"}[n == 1], strings.Join(kinds, " or "), c.Subject.Kind)("look for sales of its type instead; where both words say the same, write that of the sales under house, e.g.   type: %s", kinds[0])
}

// A sale looks misplaced from so far off, metres (50 miles), or from so many times the
// middle distance of the sales on that is over a mile (common practice, no source).
const (
	farAway      = 50 * comps.Mile
	timesTheRest = 10
)

// doubtDistances warns of sales that hardly stand in the same market.
func (r *reader) doubtDistances(c *Comparables) {
	var all []float64
	for _, row := range c.Value.Rows {
		if row.Distance.Known {
			all = append(all, row.Distance.Value)
		}
	}
	slices.Sort(all)
	if c.Subject.Place.Known && unlikeMost(c, func(row *comps.Row) bool { return row.Distance.Known && row.Distance.Value > farAway }) {
		r.say(MistypedHouse, r.needed("house.x", "house.y", "house.longitude", "house.latitude", "house"), "the house stands about %s miles from nearly all sales: likely its place was mistyped", milesOf(all[len(all)/2]))("look whether its place has a digit too many or too few, and counts from where the places of the sales do")
		return
	}
	if nearest, wide, ok := c.Choice.Apart(); ok && nearest > max(wide, comps.Mile) {
		r.say(MistypedHouse, r.needed("house.x", "house.y", "house.longitude", "house.latitude", "house"), "the house stands %s miles from the nearest of its sales, which all lie within %s miles of each other: its place was likely mistyped, or they are of another neighborhood", milesOf(nearest), milesOf(wide))("look at each digit of its place, and that it counts from where the places of the sales do; else look for sales around it")
		return
	}
	for _, row := range c.Value.Rows {
		d, mid := row.Distance.Value, 0.0
		if row.Distance.Known {
			mid = all[(len(all)-1)/2]
		}
		if d > farAway || d > comps.Mile && d > timesTheRest*mid {
			r.say("sale-far-away", c.Place(&row.Sold), "%s stands %s miles off, and half of the sales at most %s", row.Name(), milesOf(d), milesOf(mid))("look whether its distance or place was read right, and strike a sale of another market")
		}
	}
}

func milesOf(metres float64) string {
	return quantity.FormatCount(decimal.NewFromFloat(metres/comps.Mile), 1)
}

// doubtBuilt warns of sold houses that were not built yet.
func (r *reader) doubtBuilt(c *Comparables) {
	for _, row := range c.Value.Rows {
		if x := row.Built; x.Known && int(x.Value) > builtBy(&row) {
			r.say("sale-built-later", c.Place(&row.Sold), "%s was built in %.0f, it says, and sold on %s", row.Name(), x.Value, row.Date)("look whether the year was read right; it is compared by it as it stands")
		}
	}
}

// doubtGarages names garages of a known kind that count as one for a car against others,
// since nothing says for how many they are.
func (r *reader) doubtGarages(c *Comparables) {
	if rate, ok := c.Value.Linear[comps.Garage]; !ok || rate.Worth == 0 {
		return
	}
	const write = "write for how many, e.g.   garage: 2 car%s"
	kindOf := func(h *comps.House) (said, behind string) {
		if h.Garage == comps.SomeGarage {
			return "a garage", ""
		}
		return "a garage, " + h.Garage + ",", " " + h.Garage
	}
	told := func(h *comps.House) bool { return h.Cars().Known && !h.CarsGuessed() }
	if s := &c.Subject.House; s.CarsGuessed() {
		if slices.ContainsFunc(c.Value.Rows, func(row comps.Row) bool { return told(&row.House) }) {
			said, behind := kindOf(s)
			r.say("garage-counts-as-one", r.where("house.garage", "house"), "the house has %s and does not say for how many cars, so it counts as one for one car", said)(write, behind)
		}
		return
	}
	var first *comps.Row
	n := 0
	for i := range c.Value.Rows {
		if c.Value.Rows[i].CarsGuessed() && told(&c.Subject.House) {
			if n++; first == nil {
				first = &c.Value.Rows[i]
			}
		}
	}
	more := ""
	if n > 1 {
		more = fmt.Sprintf("; and %d more like it", n-1)
	}
	if n > 0 {
		said, behind := kindOf(&first.House)
		r.say("garage-counts-as-one", c.Place(&first.Sold), "%s has %s and does not say for how many cars, so it counts as one for one car%s", first.Name(), said, more)(write, behind)
	}
}

// middleArea is the median of the living areas that are known.
func middleArea(rows []comps.Row) comps.Fact {
	return middleFact(rows, func(h *comps.House) comps.Fact { return h.Area })
}

// middleFact is the median of what is known of sold houses, unknown of none.
func middleFact(rows []comps.Row, of func(*comps.House) comps.Fact) comps.Fact {
	var all []float64
	for i := range rows {
		if x := of(&rows[i].House); x.Known {
			all = append(all, x.Value)
		}
	}
	if len(all) == 0 {
		return comps.Fact{}
	}
	return comps.Known(middleOf(all))
}
