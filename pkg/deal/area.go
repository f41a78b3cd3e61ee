package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// An area is what a table of rates is for: days and totals.
type area struct {
	at     diag.Pos
	days   [2]decimal.Decimal
	totals [2]decimal.Decimal
	edge   *model.Value // the word that says where a total at its edge belongs
	dated  bool
}

func (a area) holds(day, total decimal.Decimal) bool {
	in := func(r [2]decimal.Decimal, x decimal.Decimal) bool { return !x.LessThan(r[0]) && x.LessThan(r[1]) }
	return in(a.days, day) && in(a.totals, total)
}

// A datedFee is a charge with tables, for the doubts about days.
type datedFee struct {
	scope scope
	areas []area
}

// cover refuses tables that overlap or leave a gap between them. The days and
// totals are cut at every edge; each piece must belong to one table.
func (r *reader) cover(all []area) {
	if !r.sameEdges(all) {
		return
	}
	days, totals := cuts(all, func(a area) [2]decimal.Decimal { return a.days }), cuts(all, func(a area) [2]decimal.Decimal { return a.totals })
	for i, day := range days[:len(days)-1] {
		for j, total := range totals[:len(totals)-1] {
			var in []area
			for _, a := range all {
				if a.holds(day, total) {
					in = append(in, a)
				}
			}
			switch {
			case len(in) > 1:
				r.say("table-overlap", in[1].at, "two tables are for the same day and total; the other is in line %d", in[0].at.Line)("give each its own totals (when) or days (from, until)")
				return
			case len(in) == 0:
				r.gap(all, [2]decimal.Decimal{day, days[i+1]}, [2]decimal.Decimal{total, totals[j+1]})
				return
			}
		}
	}
}

// gap tells of days or totals that no table is for.
func (r *reader) gap(all []area, days, totals [2]decimal.Decimal) {
	at := all[len(all)-1].at
	anyTotal := slices.ContainsFunc(all, func(a area) bool { return !days[0].LessThan(a.days[0]) && days[0].LessThan(a.days[1]) })
	bought := r.good("purchase.date")
	if anyTotal || bought == nil {
		r.say("table-gap", at, "no table is for totals between %s and %s", quantity.FormatDollars(totals[0]), quantity.FormatDollars(totals[1]))("let each table begin where another ends, as   up to $250k   and   above $250k")
		return
	}
	day := func(n decimal.Decimal) quantity.Date { return bought.date.AddDays(int(n.IntPart())) }
	r.say("table-gap", at, "no table is for the days from %s until %s", day(days[0]), day(days[1]))("let each table begin where another ends; until is the day on which the next begins")
}

// cuts are the edges of all areas in order.
func cuts(all []area, side func(area) [2]decimal.Decimal) []decimal.Decimal {
	var out []decimal.Decimal
	for _, a := range all {
		s := side(a)
		out = append(out, s[0], s[1])
	}
	slices.SortFunc(out, decimal.Decimal.Cmp)
	return slices.CompactFunc(out, decimal.Decimal.Equal)
}

func (r *reader) sameEdges(all []area) bool {
	var first *model.Value
	for _, a := range all {
		switch {
		case a.edge == nil:
		case first == nil:
			first = a.edge
		case !first.Number.Equal(a.edge.Number):
			r.say("mixed-edges", a.edge.Pos, "%s and %s say differently where a total right at the edge belongs", diag.Quote(first.Text), diag.Quote(a.edge.Text))("use   up to … above   for all tables, or   below … from   for all")
			return false
		}
	}
	return true
}
