package deal

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// outsideSizes are what measures of the outside of a house rarely are less or more than, in their
// units; common practice, no source.
var outsideSizes = []struct {
	line, what  string
	least, most int64 // 0 for none
}{
	{"foundation_run", "around", 50, 400},
	{"wall_height", "wall height", 0, 35},
	{"deck", "deck", 20, 1000},
	{"yard", "yard", 50, 0},
}

// longRoof is in ft what a part of a roof is at most along a side; common practice, no source.
var longRoof = decimal.NewFromInt(120)

// longOverhang is in ft how far a roof stands over the walls at most; common practice, no source.
var longOverhang = decimal.NewFromInt(4)

// doubtOutside looks for measures of the outside of which a mark has slipped, or that do not go
// with each other.
func (r *reader) doubtOutside() {
	r.doubtSquares()
	for _, out := range r.deal.Root.In("outside") {
		for _, x := range outsideSizes {
			v, given := out.Given.Look(x.line)
			if given && (v.Number.LessThan(decimal.NewFromInt(x.least)) || rarelySoMuch(x.line, v.Number)) {
				r.outsideSize(v, x.what+" is "+diag.Quote(v.Text)+", "+rarely)
			}
		}
		r.doubtSiding(out)
		for _, p := range out.In("plane") {
			if long := longerOf(p.Given.Of("plane_length"), p.Given.Of("plane_width")); long.Number.GreaterThan(longRoof) {
				r.outsideSize(long, "a part of the roof is "+feetOf(long)+" long")
			}
			if over := p.Given.Of("overhang"); over.Number.GreaterThan(longOverhang) {
				r.outsideSize(over, "the roof stands "+feetOf(over)+" over the walls (its overhang), usual is at most "+short(longOverhang)+" ft")
			}
		}
		r.doubtFlatShingles(out)
		r.doubtHipEdges(out)
		r.doubtWallHeight(out)
		r.doubtOneLevel(out)
		r.doubtHighWalls(out)
		r.doubtGround(out)
		r.doubtEaves(out)
		r.doubtRuns(out)
		r.doubtMuchOutside(out)
		r.doubtOutsideOpenings(out)
	}
}

const rarely = "which houses rarely have"

// rarelySoMuch reports whether houses rarely have so much of a measure of their outside.
func rarelySoMuch(line string, much decimal.Decimal) bool {
	for _, x := range outsideSizes {
		if x.line == line {
			return x.most > 0 && much.GreaterThan(decimal.NewFromInt(x.most))
		}
	}
	return false
}

// outsideSize doubts a size, once.
func (r *reader) outsideSize(v model.Value, what string) {
	r.outsideBut(v, what, "")
}

// roofSize doubts what a roof covers, once; of which a part may be left out, or another building's be in.
func (r *reader) roofSize(v model.Value, what string) {
	r.outsideBut(v, what, "; a roof with that of a garage, a porch or a barn, or of a part of the house alone, is well")
}

func (r *reader) outsideBut(v model.Value, what, well string) {
	if r.outsideDoubted(v) {
		return
	}
	r.say("outside-size", v.Pos, "%s", what)("check it, for feet, inches, a point or a nought that have slipped%s; it is used as it stands", well)
}

func (r *reader) outsideDoubted(v model.Value) bool {
	return slices.ContainsFunc(r.diags, func(d diag.Diag) bool { return d.Code == "outside-size" && d.Pos == v.Pos })
}

var two, four, eight = decimal.NewFromInt(2), decimal.NewFromInt(4), decimal.NewFromInt(8)

// What hangs along the edges of a roof: how far apart downspouts are at least, and of how many that is
// looked at; common practice, no source.
var (
	spoutsApart = eight // ft of gutter
	manySpouts  = decimal.NewFromInt(10)
)

// doubtRuns doubts gutters over twice as long as the eaves, or along a small part of them, and too much soffit.
func (r *reader) doubtRuns(out *model.Member) {
	if gutters := out.Given.Of("gutters"); r.farBeside(out, "gutters", 0) && !r.outsideDoubted(out.Given.Of("eaves")) {
		eaves, _ := r.worked(out, "eaves")
		r.outsideSize(gutters, "gutters is "+diag.Quote(gutters.Text)+", and the eaves are "+short(eaves)+" ft")
	}
	r.doubtFewGutters(out)
	r.doubtSoffit(out)
}

// A soffit may be so many times as deep as the roof stands over the walls, and hold the ceiling of a porch;
// common practice, no source.
var soffitTimes, porchCeiling = decimal.New(15, -1), decimal.NewFromInt(200)

// doubtSoffit doubts more soffit than there is under the edges of the roof, by how far that stands over the walls
// where the file says so of all of its parts.
func (r *reader) doubtSoffit(out *model.Member) {
	soffit, given := out.Given.Look("soffit")
	eaves, _ := r.worked(out, "eaves")
	rakes, _ := r.worked(out, "rakes")
	edge, along := eaves.Add(rakes), "of eaves and rakes"
	if around := out.Given.Of("foundation_run").Number; around.GreaterThan(edge) {
		edge, along = around, "around"
	}
	if !given || !edge.IsPositive() || r.outsideDoubted(out.Given.Of("foundation_run")) {
		return
	}
	over := overhangOf(out)
	switch {
	case soffit.Number.GreaterThan(edge.Mul(longOverhang)):
		r.outsideSize(soffit, fmt.Sprintf("soffit is %s, more than %s ft deep along %s ft %s", quoted(soffit), longOverhang, short(edge), along))
	case over.IsPositive() && !r.roofDoubted(out) && soffit.Number.GreaterThan(edge.Mul(over).Mul(soffitTimes).Add(porchCeiling)):
		r.outsideSize(soffit, fmt.Sprintf("soffit is %s, and the roof stands %s over the walls along %s ft %s", quoted(soffit), feetText(over), short(edge), along))
	}
}

// overhangOf is how far a roof stands over the walls at most; 0 where the file does not say so of all of its parts.
func overhangOf(out *model.Member) (most decimal.Decimal) {
	for _, p := range out.In("plane") {
		over := p.Given.Of("overhang").Number
		if !over.IsPositive() {
			return over
		}
		most = decimal.Max(most, over)
	}
	return most
}

// doubtFewGutters doubts gutters along a small part of the eaves, where work goes by them.
func (r *reader) doubtFewGutters(out *model.Member) {
	gutters := out.Given.Of("gutters")
	works := r.chosenWorks()
	i := slices.IndexFunc(works, func(w *work) bool {
		return w.by == "" && w.member.Parent.Parent == out && w.member.Given.Of("measure").Refers == "gutters"
	})
	if i < 0 || !gutters.Number.IsPositive() {
		return
	}
	if eaves, _ := r.worked(out, "eaves"); gutters.Number.Mul(six).LessThan(eaves) && !r.outsideDoubted(gutters) && !r.outsideDoubted(out.Given.Of("eaves")) {
		r.say("outside-size", gutters.Pos, "gutters is %s, and the eaves are %s ft", quoted(gutters), short(eaves))("check it, for a digit left out; if no more are hung, write that with the work, as   %s: {by: hired, count: %s}   , and leave the key out; it is used as it stands", works[i].label, gutters.Text)
	}
}

// usualLevel is in ft how high a level of outside wall is taken to be where the file does not say;
// common practice, no source.
var usualLevel = decimal.NewFromInt(9)

// doubtWallHeight doubts walls of several levels that count as high as those of one, since nobody
// says how high they are, where work goes by their area.
func (r *reader) doubtWallHeight(out *model.Member) {
	levels := r.good("house.levels")
	if levels == nil || !levels.number.GreaterThan(one) {
		return
	}
	_, said := out.Given.Look("wall_height")
	around := out.Given.Of("foundation_run")
	works := r.chosenWorks()
	i := slices.IndexFunc(works, func(w *work) bool { return goesByWallHeight(out, w.member) })
	if said || i < 0 || !around.Number.IsPositive() {
		return
	}
	r.say("wall-height-missing", around.Pos, "the house has %s levels, and its outside walls count as %s ft high, since   wall height   is not stated", levels.node.text, usualLevel)("measure from the foundation to the eaves, and write it under outside, e.g.   wall height: %s ft   ; %s goes by it", levels.number.Mul(usualLevel), works[i].label)
}

// goesByWallHeight reports whether a piece of work is measured by the outside walls as their
// height and the way around them tell.
func goesByWallHeight(out, item *model.Member) bool {
	_, stated := out.Given.Look("siding")
	return !stated && item.Parent.Parent == out && item.Given.Of("measure").Refers == "siding"
}

// ByWallHeight reports whether some work of the options taken goes by how high the outside walls are.
func (d *Deal) ByWallHeight(out *model.Member) bool {
	for _, o := range out.In("option") {
		if !LeftOut(o) && slices.ContainsFunc(o.In("item"), func(m *model.Member) bool { return goesByWallHeight(out, m) }) {
			return true
		}
	}
	return false
}
