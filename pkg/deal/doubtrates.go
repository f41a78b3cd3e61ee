package deal

import (
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// An amount looks wrong from so much on: what the market changes by in a month, a sq ft in
// middle prices per sq ft, and a unit of all else in middle prices (common practice, no
// source).
const (
	nearlyOne     = 0.999 // of pairs that share a sale they are so too
	muchInAMonth  = 0.02
	muchGiven     = 0.015 // 18% in a year, said by the file: about the fastest year of the nation (from memory)
	roughInAMonth = 0.01  // an error of a regression's
	muchForSqFt   = 2
	muchForAThing = 0.25
)

// doubtTrend warns of a market that changes faster than markets do, or by what two sales
// of a house tell so roughly that it may be nothing.
func (r *reader) doubtTrend(c *Comparables) {
	t := c.Value.Trend
	percent := func(x float64) string { return quantity.FormatPercent(decimal.NewFromFloat(x).Round(4), 2) }
	fast := math.Abs(t.Worth) > muchInAMonth
	switch at := r.needed("comps.amounts.market a month", "comps"); {
	case t.From == "given" && math.Abs(t.Worth) >= muchGiven:
		r.say("comps-amount-unusual", at, "the market changes by %s a month, it says, which is %s in a year", percent(t.Worth), percent(12*t.Worth))("is that of a year? then write   market a month: %s", percent(t.Worth/12))
	case !t.Told() && c.monthsBefore() > longUntold:
		r.say("comps-market-untold", at, "nothing tells how prices moved since the sales, %.0f months ago on the average: they count as they were, and the range has %s a month for it", c.monthsBefore(), percent(comps.UsualDrift))("ask an agent, or look at an index of the county, and say it, e.g.   amounts: {market a month: 0.3%%}   or 0%%")
	case t.Told() && fast:
		r.say("comps-amount-unusual", at, "the market changes by %s a month, by %s, which is more than is usual", percent(t.Worth), toldBy(t))("look at the days and prices of the sales, or say it, e.g.   amounts: {market a month: 0.3%%}")
	case t.From == "pairs" && (t.Pairs == 1 || t.Worth != 0 && t.Error > nearlyOne*math.Abs(t.Worth)): // of one pair both are the same, but for rounding
		r.say("comps-amount-unusual", at, "the market changes by %s a month, give or take %s, by %s, so it may not change at all", percent(t.Worth), percent(t.Error), toldBy(t))("say it, e.g.   amounts: {market a month: 0.3%%}   or 0%%")
	case t.From == "regression" && t.Error > max(math.Abs(t.Worth), roughInAMonth):
		r.say("comps-amount-unusual", at, "the market changes by %s a month, give or take %s, by %s, so it may not change at all", percent(t.Worth), percent(t.Error), toldBy(t))("say it, e.g.   amounts: {market a month: 0.3%%}   or 0%%")
	}
}

// longUntold is for how many months prices may stand still without a word; common practice, no source.
const longUntold = 6

// monthsBefore is how long ago the sales were on the average, as they weigh.
func (c *Comparables) monthsBefore() (months float64) {
	for i := range c.Value.Rows {
		months += c.Value.Rows[i].Weight * c.Value.Rows[i].Months
	}
	return months
}

// HastyTrend is a change of the market that pairs of sales alone tell and that is more than is
// usual; the value then hangs on it.
func (c *Comparables) HastyTrend() (t comps.Rate, told string) {
	if t = c.Value.Trend; t.From == "pairs" && math.Abs(t.Worth) > muchInAMonth {
		told = toldBy(t)
	}
	return t, told
}

// UnsureTrend says why little is known of what the market did since the sales, on which the value
// then hangs: a trend that is not believed, or one whose error, told or not, makes the larger
// part of the range; nothing otherwise.
func (c *Comparables) UnsureTrend() string {
	i := slices.IndexFunc(c.Value.Disbelieved, func(d comps.Disbelief) bool { return d.Line == comps.Time })
	switch {
	case i >= 0:
		return fmt.Sprintf("%s that the market changes too fast to be believed, so the sales count at the prices of their days", c.Value.Disbelieved[i].From)
	case c.Value.MostByTrend && c.Value.Trend.Told():
		return fmt.Sprintf("the larger part of its range is how far off the market's trend may be, as %s has it", toldBy(c.Value.Trend))
	case c.Value.MostByTrend:
		return "nothing tells how prices moved since the sales, and that makes the larger part of its range"
	}
	return ""
}

func toldBy(r comps.Rate) string {
	if r.From == "pairs" {
		return quantity.Counted(r.Pairs, "pair") + " of sales"
	}
	return "the " + r.From
}

// doubtPairs warns of amounts that pairs of sales tell and that are hardly so: such a pair
// mostly differs in something that nobody wrote down.
func (r *reader) doubtPairs(c *Comparables) {
	var told []comps.Line
	for _, rate := range c.Value.Rates {
		most, against := muchForAThing*c.middlePrice(), "a quarter of the middle price"
		if rate.Line == comps.Size {
			most, against = muchForSqFt*c.middlePerSqFt(livingAreaOf), "twice the middle price per sq ft"
		}
		if rate.From != "pairs" || rate.Worth >= 0 && rate.Worth <= most || slices.Contains(told, rate.Line) {
			continue
		}
		told = append(told, rate.Line)
		says := "less than nothing"
		if rate.Worth >= 0 {
			says = fmt.Sprintf("over %s, %s", against, quantity.FormatDollars(decimal.NewFromFloat(most).Round(0)))
		}
		r.say("comps-amount-unusual", r.needed("comps"), "a %s is worth %s by %s, %s", rate.Unit, quantity.FormatDollars(decimal.NewFromFloat(rate.Worth).Round(0)), toldBy(rate), says)("look whether those sales differ in something else too, or say what it is worth, e.g.   amounts: {%s}", AmountsFor([]comps.Line{rate.Line}))
	}
}

// doubtPriceless warns of amounts that leave nothing of sales around, which then tell nothing.
func (r *reader) doubtPriceless(c *Comparables) {
	if n := c.Value.Priceless; n > 0 {
		r.say("comps-amount-unusual", r.needed("comps.amounts", "comps"), "your amounts leave nothing of the price of %s around, which for that count for neither the range nor what else is worth", quantity.Counted(n, "sale"))("look whether an amount is too large for such houses")
	}
}

// middleOf is the lower median, 0 of none.
func middleOf(all []float64) float64 {
	if len(all) == 0 {
		return 0
	}
	slices.Sort(all)
	return all[(len(all)-1)/2]
}

// middlePrice is the middle one of what the sales went for, less concessions.
func (c *Comparables) middlePrice() float64 {
	var all []float64
	for i := range c.Value.Rows {
		all = append(all, c.Value.Rows[i].Sold.Net().InexactFloat64())
	}
	return middleOf(all)
}

func livingAreaOf(h *comps.House) comps.Fact { return h.Area }

func lotOf(h *comps.House) comps.Fact { return h.Lot }

// middlePerSqFt is the middle price of the sales for a square foot of their living area, or of their
// lot, 0 where none says how large it is.
func (c *Comparables) middlePerSqFt(of func(*comps.House) comps.Fact) float64 {
	var all []float64
	for i := range c.Value.Rows {
		row := &c.Value.Rows[i]
		if x := of(&row.House); x.Value > 0 {
			all = append(all, row.Sold.Net().InexactFloat64()/x.Value)
		}
	}
	return middleOf(all)
}
