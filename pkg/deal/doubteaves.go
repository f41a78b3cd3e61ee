package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// What the edges of a roof hardly are, beside all of it: several roofs and their dormers, a garage that
// the parts leave out, a slope to one side and a row house lie well within; common practice, no source.
var (
	timesAround = three                   // times what the roof or the house is around
	narrowEdge  = four                    // sq ft of roof for each ft of its eaves
	manyEdges   = decimal.NewFromInt(300) // ft of edges, under which they may be of more than the parts named
	deepRoof    = decimal.NewFromInt(100) // sq ft of roof for each ft of its eaves
)

// doubtEaves doubts eaves and rakes of far more than go around the roof, and eaves far under its shorter
// side, where its own size is not doubted.
func (r *reader) doubtEaves(out *model.Member) {
	if r.roofDoubted(out) {
		return
	}
	most, says := mostEdges(out)
	for _, line := range []string{"eaves", "rakes"} {
		if v, given := out.Given.Look(line); given && most.IsPositive() && v.Number.GreaterThan(decimal.Max(most, manyEdges)) {
			r.outsideSize(v, line+" is "+diag.Quote(v.Text)+", and "+says)
		}
	}
	least, says := leastEaves(out)
	if v, given := out.Given.Look("eaves"); given && v.Number.IsPositive() && v.Number.LessThan(least) {
		r.say("outside-size", v.Pos, "eaves is %s, and %s", quoted(v), says)("check it, for a digit left out; if work is done along a part of them, write all of them here and that part with the work, as   count: %s   ; it is used as it stands", v.Text)
	}
}

// mostEdges are how long the eaves or the rakes of a roof are at most, with what tells it; nothing where
// nothing does.
func mostEdges(out *model.Member) (most decimal.Decimal, says string) {
	around := out.Given.Of("foundation_run").Number
	says = "the house is " + short(around) + " ft around"
	var roof decimal.Decimal
	for _, p := range out.In("plane") {
		sides := p.Given.Of("plane_length").Number.Add(p.Given.Of("plane_width").Number)
		roof = roof.Add(two.Mul(sides.Add(four.Mul(p.Given.Of("overhang").Number))))
	}
	if roof.GreaterThan(around) {
		around, says = roof, "the roof is "+short(roof)+" ft around"
	}
	most = around.Mul(timesAround)
	if area := out.Given.Of("roof").Number; most.IsZero() {
		return area.Div(narrowEdge), "the roof has " + sqFeet(area)
	}
	return most, says
}

// leastEaves are how long the eaves of a roof are at least, with what tells it.
func leastEaves(out *model.Member) (least decimal.Decimal, says string) {
	if area, given := out.Given.Look("roof"); given {
		return area.Number.Div(deepRoof), "the roof has " + sqFeet(area.Number)
	}
	var largest decimal.Decimal
	for _, p := range out.In("plane") {
		a, b := p.Given.Of("plane_length"), p.Given.Of("plane_width")
		if covers := a.Number.Mul(b.Number); covers.GreaterThan(largest) {
			side := decimal.Min(a.Number, b.Number)
			largest, least = covers, side.Mul(half)
			says = fmt.Sprintf("the shorter side of the roof is %s ft", short(side))
		}
	}
	return least, says
}

// roofDoubted reports whether the size of a roof, or the way around the house, is doubted.
func (r *reader) roofDoubted(out *model.Member) bool {
	doubted := r.outsideDoubted(out.Given.Of("roof")) || r.outsideDoubted(out.Given.Of("foundation_run"))
	for _, p := range out.In("plane") {
		doubted = doubted || r.outsideDoubted(p.Given.Of("plane_length")) || r.outsideDoubted(p.Given.Of("plane_width")) || r.outsideDoubted(p.Given.Of("overhang"))
	}
	return doubted
}
