package deal

import (
	"slices"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A house that is renovated was hardly built within so many years before it is bought, where no
// sale is as new, nor so many years after the newest of the sales (common practice, no source).
const (
	builtLately = 5
	builtLater  = 30
)

// doubtBuiltLately warns of a house that is renovated and said to be so new that this is likely the
// year of the work: its value is then lifted by a year newer, many times.
func (r *reader) doubtBuiltLately(c *Comparables) {
	g := r.good("house.year built")
	if g == nil || r.saidAlready(g.at(), MistypedHouse) {
		return
	}
	newest := c.newestBuilt()
	ours := c.Subject.Built.Value
	lately := ours >= float64(c.Day.Year-builtLately) && ours > newest+builtLately
	budget, renovation := r.renovation()
	if newest == 0 || !lately && ours < newest+builtLater || !renovation {
		return
	}
	r.say("house-built-lately", g.at(), "the house is built in %s, it says, the newest of the sales in %s, and the plan puts %s of work into it: is that the year of the work?", g.node.text, decimalOf(comps.Known(newest)), quantity.FormatDollars(budget.Round(0)))("write the year in which it was built; how new the work makes it is told by its   condition")
}

// newestBuilt is the year in which the newest of the sales was built; 0 where none says.
func (c *Comparables) newestBuilt() (newest float64) {
	for i := range c.Value.Rows {
		if x := c.Value.Rows[i].Built; x.Known {
			newest = max(newest, x.Value)
		}
	}
	return newest
}

// saidAlready reports whether one of some codes was told of the line of a place.
func (r *reader) saidAlready(at diag.Pos, codes ...string) bool {
	return slices.ContainsFunc(r.diags, func(d diag.Diag) bool { return slices.Contains(codes, d.Code) && d.Pos.Line == at.Line })
}
