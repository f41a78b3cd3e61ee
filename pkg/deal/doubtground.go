package deal

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// What the ground that a house stands on tells of its other sizes; common practice, no source.
var (
	narrowHouse   = decimal.NewFromInt(10)  // ft that a house is wide at least, or
	narrowOfSmall = decimal.NewFromInt(7)   // a part in so many of the way around a small one
	smallRoof     = decimal.NewFromInt(100) // sq ft of all of a roof
	littleOfFloor = decimal.New(75, -2)     // of the floor under it, that a roof covers at least
	moreThanFits  = decimal.New(12, -1)     // times what the outside walls enclose, for walls and tapes
	partOver      = decimal.New(15, -1)     // and for one part of a roof, with its eaves and a porch
	roofsOver     = decimal.New(175, -2)    // and for all parts, with those of a garage and porches
	withEaves     = decimal.New(11, -1)     // or so many times that, and
	roofsBeside   = decimal.NewFromInt(700) // sq ft of one of these
	sixteen       = decimal.NewFromInt(16)
)

// levelsUnsaid are over how many levels rooms may lie where the file does not say.
var levelsUnsaid = decimal.NewFromInt(2)

// atticWords are in the names of rooms under a roof, beside the levels of a house.
var atticWords = []string{"attic", "loft"}

// doubtGround looks for a roof, a deck and a way around that do not go with each other or with
// the floors of the rooms: one slope measured for two, a point or a nought that has slipped.
func (r *reader) doubtGround(out *model.Member) {
	floor, rooms := r.ground()
	around := out.Given.Of("foundation_run")
	enclosed := r.enclosed()
	walled := around.Number.IsPositive()
	if walled && floor.GreaterThan(enclosed.Mul(moreThanFits)) {
		r.outsideSize(around, fmt.Sprintf("around is %s, which encloses %s at most, and %s", quoted(around), sqFeet(enclosed), rooms))
	}
	if r.outsideDoubted(around) {
		return // what else is told by it would be wrong with it
	}
	roof, at := roofPlan(out)
	if says := roofApart(out, roof, floor, rooms, enclosed); says != "" {
		covers := fmt.Sprintf("the roof covers %s in plan, both slopes together", sqFeet(roof))
		if len(out.In("plane")) == 0 {
			covers = "roof is " + quoted(at)
		}
		r.roofSize(at, covers+", "+says)
	}
	if walled {
		r.doubtLongPart(out, around)
	}
	most, says := enclosed, "a house "+around.Text+" around encloses"
	if !walled {
		most, says = roof, "the roof covers"
	}
	if deck := out.Given.Of("deck"); most.IsPositive() && deck.Number.GreaterThan(most) {
		r.outsideSize(deck, fmt.Sprintf("deck is %s, %s, and %s %s", quoted(deck), sqFeet(deck.Number), says, sqFeet(most)))
	}
}

// doubtLongPart doubts a part of a roof that is longer than a house with so much around it.
func (r *reader) doubtLongPart(out *model.Member, around model.Value) {
	along := around.Number.Div(two)
	for _, p := range out.In("plane") {
		if long := longerOf(p.Given.Of("plane_length"), p.Given.Of("plane_width")); long.Number.GreaterThan(along) {
			r.outsideSize(long, fmt.Sprintf("a part of the roof is %s long, and a house %s around is under %s ft long", feetOf(long), around.Text, short(along)))
			return
		}
	}
}

// roofApart says how a roof covers far less than the house, by its floor and the way around it, or
// far more than that encloses; "" where it does not, or there is none.
func roofApart(out *model.Member, roof, floor decimal.Decimal, rooms string, enclosed decimal.Decimal) string {
	around := out.Given.Of("foundation_run")
	wide := decimal.Min(narrowHouse, around.Number.DivRound(narrowOfSmall, 2))
	narrow := around.Number.Div(two).Sub(wide).Mul(wide)
	switch {
	case !roof.IsPositive():
	case roof.LessThan(floor.Mul(littleOfFloor)):
		return "and " + rooms
	case roof.LessThan(narrow):
		return fmt.Sprintf("and a house %s around usually has %s or more", around.Text, sqFeet(narrow))
	case roof.LessThan(smallRoof):
		return "little for a house"
	case around.Number.IsPositive() && roof.GreaterThan(mostRoof(out, enclosed)) || largestPart(out).GreaterThan(enclosed.Mul(partOver)) && around.Number.IsPositive():
		return fmt.Sprintf("and a house %s around encloses %s at most", around.Text, sqFeet(enclosed))
	}
	return ""
}

// mostRoof is what a roof covers at most over walls that enclose so much: its area where that is all
// that is said goes along the slope and over the eaves.
func mostRoof(out *model.Member, enclosed decimal.Decimal) decimal.Decimal {
	parts := partsOfRoof(out)
	if len(parts) == 0 {
		return enclosed.Mul(two).Add(roofsBeside)
	}
	house := enclosed.Mul(withEaves)
	if n := len(parts); n > 1 && parts[1].LessThan(parts[0]) && !parts[1].GreaterThan(roofsBeside) { // none is the house again
		return house.Add(roofsBeside.Mul(decimal.NewFromInt(int64(min(n-1, 2)))))
	}
	return decimal.Min(enclosed.Mul(roofsOver), house.Add(roofsBeside))
}

// largestPart is what the largest part of a roof covers in plan.
func largestPart(out *model.Member) decimal.Decimal {
	if parts := partsOfRoof(out); len(parts) > 0 {
		return parts[0]
	}
	return decimal.Zero
}

// partsOfRoof are what the parts of a roof cover in plan, the largest first.
func partsOfRoof(out *model.Member) (parts []decimal.Decimal) {
	for _, p := range out.In("plane") {
		parts = append(parts, p.Given.Of("plane_length").Number.Mul(p.Given.Of("plane_width").Number))
	}
	slices.SortFunc(parts, func(a, b decimal.Decimal) int { return b.Cmp(a) })
	return parts
}

// roofPlan is what a roof covers in plan, or its area where that is all that is known, and where it
// is said.
func roofPlan(out *model.Member) (sum decimal.Decimal, at model.Value) {
	if v, given := out.Given.Look("roof"); given {
		return v.Number, v
	}
	for _, p := range out.In("plane") {
		long := p.Given.Of("plane_length")
		sum = sum.Add(long.Number.Mul(p.Given.Of("plane_width").Number))
		if at.Text == "" {
			at = long
		}
	}
	return sum, at
}

// ground is about how much floor a house has on the ground at least, by its largest room or by
// all rooms above it over its levels, and that in words. Guessed rooms and attics tell nothing.
func (r *reader) ground() (floor decimal.Decimal, words string) {
	levels, said := levelsUnsaid, "two levels"
	if g := r.good("house.levels"); g != nil {
		levels, said = g.number, levelsText(g)
	}
	var all decimal.Decimal
	for _, room := range r.deal.Root.In("inside") {
		x, known := r.worked(room, "floor_area")
		if !known || slices.Contains(r.deal.Sized["guessed"], room.Label) {
			continue
		}
		if x.GreaterThan(floor) {
			floor, words = x, fmt.Sprintf("%s has %s", room.Label, sqFeet(x))
		}
		if r.lives(room) && !underRoof(room) {
			all = all.Add(x)
		}
	}
	if each := all.DivRound(levels, 0); each.GreaterThan(floor) {
		floor, words = each, fmt.Sprintf("the rooms have %s on each of %s", sqFeet(each), said)
	}
	return floor, words
}

// lives reports whether a room counts as living area.
func (r *reader) lives(room *model.Member) bool {
	living, _ := r.worked(room, "counts_as_living")
	return living.IsPositive()
}

// enclosed is what the way around the house encloses at most, by a square, the most of all rectangles; 0 where the
// file does not say it.
func (r *reader) enclosed() decimal.Decimal {
	around, _ := r.worked(r.deal.Root, "house_perimeter")
	return around.Mul(around).DivRound(sixteen, 0)
}

// manyOpenings are so many openings of the outside walls that they are doubted; common practice, no source.
var manyOpenings = []struct {
	kind, what string
	most       decimal.Decimal
}{{"window", "windows", decimal.NewFromInt(60)}, {"door", "doors", decimal.NewFromInt(8)}}

// doubtOutsideOpenings doubts more doors and windows outside than houses have, or so large ones
// that they take over half of the walls, or one that none is as large as.
func (r *reader) doubtOutsideOpenings(out *model.Member) {
	if r.doubtOverWall(out) {
		return
	}
	var area decimal.Decimal
	var largest model.Value
	units := r.units()
	for _, x := range manyOpenings {
		var n decimal.Decimal
		var at model.Value
		for _, o := range out.In("opening") {
			if number := o.Given.Of("number"); o.Given.Of("kind").Choice == x.kind {
				n, at = n.Add(number.Number), number
				each := number.Number.Mul(o.Given.Of("opening_width").Number).Mul(o.Given.Of("opening_height").Number)
				if area = area.Add(each); largest.Text == "" || each.GreaterThan(largest.Number) {
					largest = number
					largest.Number = each
				}
			}
		}
		if n.GreaterThan(x.most.Mul(units)) {
			r.outsideSize(at, fmt.Sprintf("there are %s %s outside, many for a house", n, x.what))
			return
		}
	}
	walls, known := r.worked(out, "wall_height")
	walls = walls.Mul(out.Given.Of("foundation_run").Number)
	if known && walls.IsPositive() && area.Mul(two).GreaterThan(walls) {
		r.outsideSize(largest, fmt.Sprintf("the doors and windows outside take %s, over half of the %s of the walls", sqFeet(area), sqFeet(walls)))
	}
}

// doubtOverWall doubts an opening outside that is wider than any is, or higher and higher than the walls, and
// reports whether it did.
func (r *reader) doubtOverWall(out *model.Member) bool {
	high, _ := r.worked(out, "wall_height")
	high = decimal.Max(high, highOpening)
	for _, o := range out.In("opening") {
		number, w, h := o.Given.Of("number"), o.Given.Of("opening_width").Number, o.Given.Of("opening_height").Number
		switch {
		case h.GreaterThan(high):
			r.outsideSize(number, fmt.Sprintf("%s outside: %s is %s high, and walls and openings are hardly over %s ft", number.Key, quoted(number), feetText(h), short(high)))
		case w.GreaterThan(wideOpening):
			r.outsideSize(number, fmt.Sprintf("%s outside: %s is %s wide, and openings are hardly over %s ft", number.Key, quoted(number), feetText(w), short(wideOpening)))
		default:
			continue
		}
		return true
	}
	return false
}

func quoted(v model.Value) string { return diag.Quote(v.Text) }
