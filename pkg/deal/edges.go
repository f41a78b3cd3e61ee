package deal

import (
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

func least(x decimal.Decimal) Edge { return Edge{At: x, Least: true} }
func most(x decimal.Decimal) Edge  { return Edge{At: x} }

// partEdges are the edges of lines that are read in parts and so have no row of their own.
var partEdges = sync.OnceValue(func() map[string][]Edge {
	return map[string][]Edge{
		"section.length": {most(longestSide)}, "section.width": {most(longestSide)},
		"fitting.fitting_length": {most(longestSide)}, "fitting.fitting_depth": {most(longestSide)},
		"plane.plane_length": {most(longestSide)}, "plane.plane_width": {most(longestSide)},
		"section.height": {least(leastCeiling), most(mostCeiling)}, "room.room_ceiling": {least(leastCeiling), most(mostCeiling)},
		"opening.number":     {least(decimal.Zero), most(mostOpenings)},
		"comp.sold_price":    edgesIn(limits(Money, "more than $0, at most $1,000 million")),
		"comp.months_before": ofRecord("sold"), "subject_built": ofRecord("year built"),
	}
})

// Edges are what the file accepts of an input, by the lines of the model that its rows feed, by
// what it reads in parts or as a record says it, or else by its unit where that is dollars. A
// charge is at most the whole it is a share of.
func Edges(c *model.Cell) []Edge {
	line := c.Line.Name
	switch part := partEdges()[c.Line.ID()]; {
	case part != nil:
		return part
	case line == "share":
		return []Edge{least(decimal.Zero), most(one)}
	case line == "opening_width" || line == "opening_height":
		return []Edge{least(leastOpening(c.Member.Given.Of("kind").Choice)), most(longestSide)}
	case line == "extra_worth":
		return edgesIn(limits(Money, ownLineRange))
	}
	var out []Edge
	for _, f := range feeding()[line] {
		if f.Kind == Record {
			out = append(out, ofRecord(f.Key())...)
		} else if kindMeasures(f.Kind) {
			out = append(out, edgesIn(limits(f.Kind, f.accepts()))...)
		}
	}
	if len(out) == 0 && (c.Line.Unit == "$" || strings.HasPrefix(c.Line.Unit, "$/") && c.Line.Set == "fee") {
		return edgesIn(limits(Money, kindRanges[Money]))
	}
	return out
}

// kindMeasures reports whether what a kind reads is a number of its line's own unit.
func kindMeasures(k Kind) bool {
	return slices.Contains([]Kind{Money, Percent, ShareOrMoney, HourRate, Hours, Duration, WholeMonths, WholeNumber, Pace, Length, Area, Volume, Weight, Days}, k)
}

// ofRecord are the edges of what a record of a house says.
func ofRecord(field string) []Edge {
	b, ok := comps.BoundOf(field)
	if !ok {
		return nil
	}
	return []Edge{least(decimal.NewFromFloat(b.Least)), most(decimal.NewFromFloat(b.Most))}
}

func edgesIn(all []limit) (out []Edge) {
	for _, l := range all {
		out = append(out, Edge{l.edge, l.least, l.open})
	}
	return out
}

// manyTimes is from how many times the time that the file says in weeks or days, or that rooms take, one
// in months may well be those weeks.
var manyTimes = decimal.NewFromInt(3)

// billTimes is beyond how many times what the file says, or below what part of it, a bill may be that of
// another time, and a point of a share or a measure may have slipped; common practice, no source.
var billTimes = decimal.NewFromInt(6)

// InWeeks reports whether the file says an input of months in weeks or days.
func InWeeks(c *model.Cell) bool {
	return c.Given != nil && c.Line.Unit == "month" && holdsAny(strings.ToLower(c.Given.Text), "week", "wk", "day")
}

// FarDay is beyond how many days from the purchase no table of rates is dated: such a number is rather
// a day as spreadsheets count them.
var FarDay = decimal.NewFromInt(36500)

// usualContingency is the least contingency that is not doubted, or what the file takes below that.
func (d *Deal) usualContingency(c *model.Cell) Edge {
	now := assumedContingency
	if c.Given != nil {
		now = c.Given.Number
	}
	return Edge{At: decimal.Min(now, d.customaryContingency(len(d.Root.In("room")) > 0)), Least: true}
}

// customaryContingency is what is customary for the house; rooms price what is planned in them, so
// that it is for what nobody thought of.
func (d *Deal) customaryContingency(rooms bool) decimal.Decimal {
	if rooms {
		return pricebook.Contingency(d.YearBuilt, d.UtilitiesOff)
	}
	usual, _ := caution.SuggestedContingency(d.YearBuilt, d.UtilitiesOff)
	return usual
}

// Usual are the edges beyond which an input is doubted in the file and used as it stands. Of a
// least one, nothing is not doubted where NoneIsUsual.
func (d *Deal) Usual(c *model.Cell) []Edge {
	out, given := append(d.UsualAlone(c), slipEdges(c)...), decimal.Zero
	if c.Given != nil {
		given = c.Given.Number
	}
	switch {
	case given.IsPositive() && isMeasure(c):
		out = append(out, most(given.Mul(billTimes)), least(given.Div(billTimes).Round(9)))
	case given.IsPositive() && (InWeeks(c) || c.Line.ID() == "renovation"):
		out = append(out, least(given.Div(billTimes).Round(9)))
	}
	if !NoneIsUsual(c) {
		out = append(out, Edge{Least: true, Open: true})
	}
	return out
}

// NoneIsUsual reports whether nothing of an input is not doubted for itself.
func NoneIsUsual(c *model.Cell) bool {
	return !slices.Contains([]string{"contingency_share", "marketing", "escrow"}, c.Line.ID())
}

// isMeasure reports whether an input is a measure of a room, of the outside, of what is in them or of a
// sold house, of which a mark, a point or a nought may slip.
func isMeasure(c *model.Cell) bool {
	return slices.Contains(soldFacts, c.Line.Name) || slices.Contains([]string{"room", "inside", "outside", "section", "opening", "plane", "fitting"}, c.Line.Set) && slices.Contains([]string{"ft", "sqft", "each"}, c.Line.Unit)
}

// outsideEdges are those of a measure of the outside of the house.
func outsideEdges(line string) (out []Edge) {
	for _, x := range outsideSizes {
		if x.line == line && x.least > 0 {
			out = append(out, least(decimal.NewFromInt(x.least)))
		}
		if x.line == line && x.most > 0 {
			out = append(out, most(decimal.NewFromInt(x.most)))
		}
	}
	return out
}

// UsualAlone are the Usual edges but for those that go by what the file gives of a measure or of a time.
func (d *Deal) UsualAlone(c *model.Cell) (out []Edge) {
	m := c.Member
	switch {
	case InWeeks(c):
		return append(doubtEdges(c), most(c.Given.Number.Mul(manyTimes)))
	case c.Line.ID() == "renovation" && c.Given != nil && c.Given.Number.IsPositive(): // as beside what rooms take
		return append(doubtEdges(c), most(decimal.Max(c.Given.Number.Mul(manyTimes), c.Given.Number.Add(one))))
	case c.Line.Section == "Comparables" && (strings.HasPrefix(c.Line.Name, "subject_") || c.Line.Name == "market_rate"):
		return d.houseEdges(c.Line.Name)
	case c.Line.Set == "comp" && !isSum(c) && d.hasSales():
		return d.soldEdges(c)
	case c.Line.ID() == "extra.extra_worth" && c.Given != nil && d.hasSales():
		return d.Comps.ownEdges(c.Given.Number)
	case worthOfUnit(c) && d.hasSales():
		return append(sumEdges(c), d.Comps.amountEdges(c.Line.Name)...)
	case c.Line.Set == "outside":
		return outsideEdges(c.Line.Name)
	case slices.Contains(chargedShares, c.Line.ID()):
		return shareEdges(c)
	case isSum(c) && c.Given != nil && c.Given.Number.IsPositive():
		out = append(sumEdges(c), doubtEdges(c)...)
		if low, is := d.lowBill(m); is && c.Line.Name == "a_year" {
			out = append(out, least(low))
		}
		return out
	case c.Line.ID() == "partner_split" && c.Given != nil && c.Given.Number.IsPositive():
		return []Edge{least(c.Given.Number.Div(billTimes))}
	case c.Line.ID() == "overrun":
		return []Edge{most(one)}
	case c.Line.ID() == "contingency_share":
		return []Edge{d.usualContingency(c)}
	case c.Line.ID() == "loan.price_share" || c.Line.ID() == "loan.renovation_share":
		if low, is := lowShare(m, slices.Index(d.Root.In("loan"), m) == 0, c.Line.Name); is {
			return []Edge{least(low)}
		}
	case c.Line.ID() == "loan.term" && !m.Given.Of("amortising_months").Number.IsPositive():
		return []Edge{most(longTerm)}
	}
	switch c.Line.ID() {
	case "section.length", "section.width":
		if out = []Edge{most(usualSide(m.Parent))}; d.isFloor(m) {
			out = append(out, least(narrowOf(d.kindOf(m.Parent))))
		}
		return out
	case "leg.walk_east", "leg.walk_north":
		return []Edge{least(usualSide(m.Parent).Neg()), most(usualSide(m.Parent))}
	case "section.height":
		return []Edge{most(highCeiling)}
	case "item.waiting":
		return []Edge{most(longWait)}
	case "waiting_days":
		return []Edge{most(longestWait)}
	case "usual_ceiling":
		return []Edge{least(lowCeiling), most(highUsual)}
	case "room.room_ceiling":
		if low := lowCeilingOf(m, d.kindOf(m)); low.IsPositive() {
			return []Edge{least(low), most(highCeiling)}
		}
		return []Edge{most(highCeiling)}
	case "opening.opening_width":
		return d.openingEdges(m, narrowDoor, wideOpening)
	case "opening.opening_height":
		return d.openingEdges(m, d.leastHeight(m), highOpening)
	case "plane.plane_length", "plane.plane_width":
		return []Edge{most(longRoof)}
	case "plane.overhang":
		return []Edge{most(longOverhang)}
	case "plane.pitch":
		return []Edge{most(steepRoof)}
	}
	for _, x := range counted {
		if x.line == c.Line.Name {
			return []Edge{most(x.most)}
		}
	}
	return doubtEdges(c)
}

// doubtEdges are those of what is usual of the rows that feed a line.
func doubtEdges(c *model.Cell) (out []Edge) {
	for _, f := range feeding()[c.Line.Name] {
		if kindMeasures(f.Kind) && f.Doubt != "" {
			out = append(out, edgesIn(limits(f.Kind, f.Doubt))...)
		}
	}
	return out
}

// isSum reports whether an input is a bill or a charge in dollars, or dollars or own hours of a line of
// work, or a quote or an allowance for some, or what is at stake, of which a nought or a time may
// slip.
func isSum(c *model.Cell) bool {
	switch c.Line.Set {
	case "fee", "bracket":
		return timesAYear[c.Line.Name] > 0 || slices.Contains([]string{"fixed", "least", "unit_price", "unit_size"}, c.Line.Name)
	case "cost":
		return slices.Contains([]string{"materials", "labour", "lump", "own_hours"}, c.Line.Name)
	}
	return slices.Contains(staked, c.Line.ID()) || slices.Contains([]string{"loan.draw_fee", "assignment_fee", "premium_least", "comp.sold_price", "comp.concessions", "item.quote", "item.allowance"}, c.Line.ID())
}

// staked are what a deal is to bring, what there is for it, and over how long a loan is paid back.
var staked = []string{"target_profit", "cash_available", "cash_reserve", "earnest_deposit", "loan.amortising_months"}

// sumEdges are those of a sum by what the file gives of it.
func sumEdges(c *model.Cell) []Edge { return aroundGiven(c, billTimes, 2) }

// worthOfUnit reports whether an input is what a unit of a line of the grid is worth, in dollars.
func worthOfUnit(c *model.Cell) bool {
	return c.Line.Section == "Comparables" && slices.ContainsFunc(adjusted, func(x gridLine) bool { return x.rate == c.Line.Name && x.figure != nil })
}

// isFloor reports whether a rectangle is all the floor of a room that is no closet.
func (d *Deal) isFloor(m *model.Member) bool {
	floors := rectangles(m.Parent)
	return len(floors) == 1 && floors[0] == m && d.reader != nil && d.reader.roomKinds[m.Parent] != "closet"
}

// usualSide is how long a side of a room usually is at most.
func usualSide(room *model.Member) decimal.Decimal {
	if namedALevel(room.Label) {
		return longLevel
	}
	return longRoom
}

// chargedShares are the lines of charges that are shares.
var chargedShares = []string{"fee.share", "bracket.rate", "premium_share", "loan.exit_share", "loan.extension_share"}

// shareEdges are those of a charge that is a share: 0.12 typed for 0.12% is a hundred times that in
// a cell of percents.
func shareEdges(c *model.Cell) (out []Edge) {
	m := feeOf(c.Member)
	if high, is := highShare(m); is {
		out = append(out, most(high))
	}
	if sells(m) && c.Line.Set == "fee" {
		out = append(out, least(leastOf(m)))
	}
	if c.Given != nil && c.Given.Number.IsPositive() {
		out = append(out, most(c.Given.Number.Mul(billTimes)))
	}
	if c.Given != nil && c.Line.ID() == "bracket.rate" {
		out = append(out, least(c.Given.Number.Div(billTimes)))
	}
	return out
}

// openingEdges are those of a side of an opening: only what one walks through upright has a least.
func (d *Deal) openingEdges(m *model.Member, low, high decimal.Decimal) []Edge {
	if doorInside(m) && !d.inLowWall(m) {
		return []Edge{least(low), most(high)}
	}
	return []Edge{most(high)}
}

// doorInside reports whether an opening is one of a room that one walks through.
func doorInside(m *model.Member) bool {
	return m.Given.Of("kind").Choice != "window" && m.Parent.Kind == "inside"
}
