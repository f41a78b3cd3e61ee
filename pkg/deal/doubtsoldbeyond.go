package deal

import (
	"math"

	"ledgerboard/pkg/comps"
)

// muchOfValue is the share of a value by which one line of the grid moves it much (common practice, no
// source).
const muchOfValue = 0.02

// drawnOn reports whether an amount of the file, or by pairs of the sales, for one line of the grid
// moves the value by much. A regression draws on more sales than the grid shows.
func (c *Comparables) drawnOn(line comps.Line) bool {
	moved := 0.0
	for i := range c.Value.Rows {
		row := &c.Value.Rows[i]
		for _, a := range row.Lines {
			if a.Line == line {
				moved += row.Weight * a.Amount.InexactFloat64()
			}
		}
	}
	for _, x := range c.Value.Rates {
		if x.Line == line && x.From == "regression" {
			return false
		}
	}
	return math.Abs(moved) > muchOfValue*c.Value.Likely.InexactFloat64()
}

// ends are the least and the most of a figure of the sales that weigh something, 0 where none says it.
func (c *Comparables) ends(of func(*comps.House) comps.Fact) (least, most float64) {
	for i := range c.Value.Rows {
		row := &c.Value.Rows[i]
		if x := of(&row.House); x.Known && c.tells(row) {
			if least == 0 || x.Value < least {
				least = x.Value
			}
			most = max(most, x.Value)
		}
	}
	return least, most
}

// doubtBeyondAges warns of a house built many years before or after all the sales that weigh something,
// where a year is priced: a digit of its year may have slipped. One that is renovated and newer is
// asked for the year of the work.
func (r *reader) doubtBeyondAges(c *Comparables) {
	oldest, newest := c.ends(func(h *comps.House) comps.Fact { return h.Built })
	g, ours := r.good("house.year built"), c.Subject.Built
	if g == nil || !ours.Known || newest == 0 || r.saidAlready(g.at(), MistypedHouse, "house-built-lately") || !c.drawnOn(comps.Age) {
		return
	}
	switch {
	case ours.Value <= oldest-builtLater:
		r.say("house-beyond-sales", g.at(), "the house was built in %s, and the oldest of the sales in %s: none tells what so old a house sells for", g.node.text, decimalOf(comps.Known(oldest)))("look at its year for digits that changed places; if it is right, look for sales as old")
	case ours.Value >= newest+builtLater:
		r.say("house-beyond-sales", g.at(), "the house was built in %s, and the newest of the sales in %s: none tells what so new a house sells for", g.node.text, decimalOf(comps.Known(newest)))("look at its year for digits that changed places; if it is right, look for sales as new")
	}
}
