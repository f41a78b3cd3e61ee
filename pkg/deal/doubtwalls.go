package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// squareFeet is in sq ft what a square of siding or roofing is.
var squareFeet = decimal.NewFromInt(100)

// doubtSiding doubts siding that is over twice, or under an eighth, of the walls around: squares
// that were written as sq ft. A house may share walls, or have them of brick.
func (r *reader) doubtSiding(out *model.Member) {
	siding, given := out.Given.Look("siding")
	walls, says := r.wallsAround(out)
	if !given || !walls.IsPositive() || siding.Number.LessThanOrEqual(walls.Mul(two)) && siding.Number.Mul(eight).GreaterThanOrEqual(walls) {
		return
	}
	if siding.Number.GreaterThan(walls) {
		r.outsideSize(siding, "siding is "+quoted(siding)+", and "+says)
		return
	}
	r.outsideSize(siding, "siding is "+quoted(siding)+", and "+says+"; a square is "+sqFeet(squareFeet))
}

// wallsAround is about how much outside wall a house has, and that in words: by the way around it,
// or else by that around a square that the floor on the ground fills. Nobody having said how high
// it is, each level counts as usual.
func (r *reader) wallsAround(out *model.Member) (decimal.Decimal, string) {
	around, high := out.Given.Of("foundation_run").Number, out.Given.Of("wall_height").Number
	said := "by their height"
	if !high.IsPositive() {
		levels := one
		if g := r.good("house.levels"); g != nil {
			levels = g.number
		}
		high = usualLevel.Mul(levels)
		said = fmt.Sprintf("at %s ft high", short(high))
	}
	if around.IsPositive() {
		return around.Mul(high), "the walls around, " + said + ", " + sqFeet(around.Mul(high))
	}
	floor, rooms := r.groundSaid()
	side, err := floor.PowWithPrecision(decimal.New(5, -1), 4)
	if err != nil || !floor.IsPositive() {
		return decimal.Zero, ""
	}
	walls := side.Mul(four).Mul(high).Round(0)
	return walls, rooms + ": around that, " + said + ", about " + sqFeet(walls)
}

// groundSaid is the floor on the ground by the living area that the file states, over the levels
// that it states, and that in words.
func (r *reader) groundSaid() (decimal.Decimal, string) {
	area, levels := r.entry("house.").Sold().House.Area, r.good("house.levels")
	if !area.Known || levels == nil || !levels.number.IsPositive() {
		return decimal.Zero, ""
	}
	floor := decimal.NewFromFloat(area.Value).DivRound(levels.number, 0)
	return floor, fmt.Sprintf("the house has %s on each level", sqFeet(floor))
}

// doubtSquares doubts a count of work on walls or roof which, taken as squares, would be about all
// that there is of them.
func (r *reader) doubtSquares() {
	for _, w := range r.chosenWorks() {
		if w.scope.path == "" || w.item.Measure != "siding" && w.item.Measure != "roof" {
			continue
		}
		g := r.good(w.scope.path + "count")
		has, known := r.worked(w.member.Parent.Parent, w.item.Measure)
		if g == nil || !known || !has.IsPositive() {
			continue
		}
		count := w.member.Given.Of("measure").Number
		if all := count.Mul(squareFeet); count.Mul(eight).LessThan(has) && all.Mul(two).GreaterThan(has) && all.LessThan(has.Mul(two)) {
			r.say("outside-size", g.at(), "%s: a count of %s, and %s is %s; a square is %s", w.label, g.node.text, w.item.Measure, sqFeet(has), sqFeet(squareFeet))("write   count: %s   if squares are meant; without a count the work takes all there is; it is used as it stands", sqFeet(all))
		}
	}
}
