package workbook

import (
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/quantity"
)

// oddsOf writes how a deal may come out, and the safe offer.
func (b *book) oddsOf(g *grid, row int, o *chance.Odds) int {
	row++
	g.heading(row, 1, stressColumns, "The odds at the asking price")
	for i, words := range []string{"1 in 10 lower", "half lower", "1 in 10 higher", "as planned"} {
		g.set(row, i+2, text(words, look{role: heading, right: true}))
	}
	for _, f := range []struct {
		label, format string
		figure        int
		share         bool
	}{
		{b.answer.OwnProfit(), rounded, chance.Profit, false}, {"return on the cash needed (ROI)", percent, chance.Return, true},
		{"cash needed", rounded, chance.Cash, false}, {"months owned", twoPlace, chance.Months, false},
	} {
		row++
		g.label(row, 1, f.label, look{})
		for i, p := range []float64{0.1, 0.5, 0.9} {
			g.set(row, i+2, estimated(o.Figures[f.figure].Percentile(p), f.share, f.format))
		}
		plan := odds.Estimate{Value: o.Plan[f.figure].InexactFloat64()}
		if f.figure == chance.Return && !o.PlanReturns() {
			plan.Value = math.NaN()
		}
		g.set(row, 5, estimated(plan, f.share, f.format))
	}
	row++
	chanceOf := func(words string, e odds.Estimate) {
		row++
		g.label(row, 1, words, look{wrap: true})
		g.set(row, 2, estimated(e, false, percent))
		g.set(row, 3, text("give or take "+quantity.FormatPercent(decimal.NewFromFloat(e.Error), 2), look{role: small, off: true}))
	}
	chanceOf("the chance of losing money", o.Loss)
	for i, line := range o.Watched {
		if b.answer.BreaksEven(line) {
			continue // that is to lose money
		}
		words := "of missing " + b.answer.Goal(line)
		if line == "cash_to_spare" {
			words = "of cash running past what you can use"
		}
		chanceOf(words, o.Missed[i])
	}
	if len(o.Watched) > 1 {
		chanceOf("of missing any of them", o.AnyMissed)
	}
	if o.Beyond != nil {
		chanceOf("of cash running past all you have", *o.Beyond)
	}
	row += 2
	confidence := quantity.FormatPercent(decimal.NewFromFloat(o.Confidence), 1)
	g.label(row, 1, "safe offer: targets hold in "+confidence+" of the trials", look{role: strong, wrap: true})
	if o.Safe.Found {
		g.set(row, 2, searched(o.Safe.Price, rounded).like(foundStrong))
		g.set(row, 3, text("give or take "+quantity.FormatDollars(decimal.NewFromFloat(o.Safe.Error)), look{role: small, off: true}))
	} else {
		g.set(row, 2, said("none"))
	}
	row++
	g.label(row, 1, "maximum offer, if all goes as planned", look{})
	if o.PlanOffer.Found && !o.PlanOffer.Endless {
		g.set(row, 2, searched(o.PlanOffer.Price, rounded))
	} else {
		g.set(row, 2, said("none"))
	}
	var varied []string
	for _, r := range o.Ranges {
		if r.Idle != "" {
			continue
		}
		varied = append(varied, r.Label+" from "+r.Says(r.Low)+" to "+r.Says(r.High))
	}
	return g.paragraph(row+2, 1, stressColumns, "What varied: "+strings.Join(varied, "; ")+". The odds are no better than these ranges.", look{role: small})
}

// estimated is a figure of the trials; shares of the histograms come in percent.
func estimated(e odds.Estimate, inPercent bool, format string) cell {
	x := e.Value
	if math.IsNaN(x) {
		return said("no cash")
	}
	if inPercent {
		x /= 100
	}
	return cell{value: x, look: look{role: found, format: format}}
}
