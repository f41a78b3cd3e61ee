package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// longWork is how a renovation in months is doubted that takes far longer than the hours of its work; not at
// all where a quote holds more, which takes hours that nobody knows.
func (r *reader) longWork(c *model.Cell) []Beside {
	if InWeeks(c) || slices.ContainsFunc(r.chosenWorks(), r.quoteHoldsMore) {
		return nil
	}
	self, cell := Part{Cell: c, Times: one}, func(line string, times decimal.Decimal) Part {
		return Part{Cell: r.deal.Model.Find(r.deal.Root, line), Times: times}
	}
	return []Beside{{
		{Parts: []Part{self, cell("scope_months", manyTimes.Neg())}},
		{Parts: []Part{self, cell("scope_months", one.Neg())}, And: one.Neg()},
		{Parts: []Part{cell("scope_months", one)}},
		{Parts: []Part{cell("rooms_at_trade_price", one), cell("lines_cost", one.Neg())}}, // of which lines tell no time
	}}
}

// crowdedWork is how a renovation is doubted that leaves no time for the owner's own hours: those that the file
// gives a week, or what few can keep up.
func (d *Deal) crowdedWork(c *model.Cell) Beside {
	line, weekly := "own_weeks", one
	if d.Model.Find(d.Model.Root, "own_hours_a_week").Given == nil {
		line, weekly = "own_hours", fullWeek
	}
	return Beside{
		{Parts: []Part{{Cell: d.Model.Find(d.Model.Root, line), Times: quantity.Week.Months()}, {Cell: c, Times: weekly.Neg()}}},
		{Parts: []Part{{Cell: c, Times: one}}},
	}
}

// leastDrawBeside is how the smallest draw is doubted: it is more than all that is held back.
func (d *Deal) leastDrawBeside(c *model.Cell) []Beside {
	held := d.Model.Find(c.Member, "holdback")
	return []Beside{{
		{Parts: []Part{{Cell: c, Times: one}, {Cell: held, Times: one.Neg()}}},
		{Parts: []Part{{Cell: held, Times: one}}},
	}}
}
