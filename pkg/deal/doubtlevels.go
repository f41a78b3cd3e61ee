package deal

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What outside walls tell of the levels behind them; common practice, no source.
var (
	aboveCeiling   = decimal.NewFromInt(2) // ft that the walls of one level reach above its ceiling, with joists and sill
	footOfWalls    = decimal.NewFromInt(8) // ft that walls reach at most beyond those of their levels, as over a slope
	roomUnderRidge = decimal.NewFromInt(7) // ft under the ridge from which on a level may lie under the roof
)

// doubtOneLevel doubts walls of several levels that are said to be as high as one, where work goes
// by their area and no level lies under the roof.
func (r *reader) doubtOneLevel(out *model.Member) {
	levels, high := r.good("house.levels"), out.Given.Of("wall_height")
	around := out.Given.Of("foundation_run").Number
	usual, known := r.worked(r.deal.Root, "usual_ceiling")
	works := r.chosenWorks()
	i := slices.IndexFunc(works, func(w *work) bool { return goesByWallHeight(out, w.member) })
	if levels == nil || !levels.number.GreaterThan(one) || !known || !high.Number.IsPositive() || high.Number.GreaterThan(usual.Add(aboveCeiling)) || i < 0 || !around.IsPositive() || r.levelUnderRoof(out) {
		return
	}
	all := levels.number.Mul(usualLevel)
	r.say("wall-height-low", high.Pos, "the house has %s levels, and wall height is %s, as for one: %s of wall around", levels.node.text, quoted(high), sqFeet(around.Mul(high.Number)))("measure from the foundation to the eaves, over all levels, e.g.   wall height: %s ft   , %s; %s goes by it. If the upper level lies under the roof, give their area, less openings, as   siding: %s", all, sqFeet(around.Mul(all)), works[i].label, sqFeet(around.Mul(high.Number)))
}

// doubtHighWalls doubts walls higher than the levels that the house is said to have, with a basement that
// opens to a slope.
func (r *reader) doubtHighWalls(out *model.Member) {
	levels, high := r.good("house.levels"), out.Given.Of("wall_height")
	if levels == nil {
		return
	}
	storeys, basement := levels.number, slices.ContainsFunc(r.deal.Root.In("inside"), func(m *model.Member) bool { return r.roomKinds[m] == "basement" })
	if basement {
		storeys = storeys.Add(one)
	}
	if high.Number.GreaterThan(storeys.Mul(usualLevel).Add(footOfWalls)) {
		r.outsideSize(high, fmt.Sprintf("wall height is %s, and the house has %s", quoted(high), levelsText(levels)))
	}
}

// levelsText is how many levels the file says that there are.
func levelsText(levels *reading) string {
	if levels.number.Equal(one) {
		return "one level"
	}
	return levels.node.text + " levels"
}

func sqFeet(x decimal.Decimal) string { return quantity.FormatCount(x, 0) + " sq ft" }

// levelUnderRoof reports whether a level may lie under the roof, by a room with a sloped ceiling, by
// the name of one, or by how high the ridge is above the eaves.
func (r *reader) levelUnderRoof(out *model.Member) bool {
	return slices.ContainsFunc(r.deal.Root.In("inside"), func(room *model.Member) bool {
		return underRoof(room) || slices.ContainsFunc(room.In("section"), func(s *model.Member) bool {
			slope, _ := r.worked(s, "ceiling_slope")
			return slope.IsPositive()
		})
	}) || slices.ContainsFunc(out.In("plane"), func(p *model.Member) bool {
		rise := p.Given.Of("plane_width").Number.Mul(p.Given.Of("pitch").Number).Div(two)
		return rise.GreaterThan(roomUnderRidge)
	})
}

// underRoof reports whether a room is named as one under a roof, beside the levels of a house.
func underRoof(room *model.Member) bool {
	name := strings.ToLower(room.Label)
	return slices.ContainsFunc(atticWords, func(w string) bool { return strings.Contains(name, w) })
}
