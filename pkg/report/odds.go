package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/quantity"
)

// tail is the share of the trials that the expected shortfall is of.
const tail = 0.1

// An OddsPage is what may come of a deal, with the deal itself.
type OddsPage struct {
	*chance.Odds
	Answer *answer.Answer
}

// Odds writes what may come of a deal: the answer, how likely and how bad, and what it
// rests on.
func Odds(w io.Writer, o *OddsPage, s Style) error {
	p := oddsPage{newPage(w, s), o}
	p.title(o.Deal.Name + ": the odds")
	p.line("")
	p.text("", p.answer())
	p.line("")
	p.offers()
	p.figures()
	p.paid()
	p.chances()
	p.bars()
	p.ranges()
	p.rests()
	return p.flush()
}

type oddsPage struct {
	*page
	*OddsPage
}

func (p oddsPage) price() string { return dollars(p.Answer.Line("price")) }

// answer is how likely a loss and a miss are at the asking price, and how that stands to the
// safe offer.
func (p oddsPage) answer() string {
	text := fmt.Sprintf("Of 100 such deals at the asking price of %s, %s would lose you money", p.price(), outOf100(p.Loss.Value))
	if !p.onlyProfit() {
		target := "at least one"
		if p.AnyMissed.Value == 0 {
			target = "any"
		}
		text += fmt.Sprintf(" and %s would miss %s of your targets", outOf100(p.AnyMissed.Value), target)
	}
	over := p.Answer.Line("price").Sub(p.Safe.Price)
	switch {
	case !p.Safe.Found:
		return text + "."
	case over.IsPositive():
		return text + fmt.Sprintf(". That price is %s above the safe offer.", dollars(over))
	case over.IsNegative():
		return text + fmt.Sprintf(". That price is %s under the safe offer.", dollars(over.Neg()))
	}
	return text + ". That price is the safe offer."
}

// SoFar is what the trials tell in a few words, for one who does not wait for all.
func (o *OddsPage) SoFar() string {
	low, high := o.Figures[chance.Profit].Quantile(tail), o.Figures[chance.Profit].Quantile(1-tail)
	return fmt.Sprintf("%s lies between %s and %s in 8 trials of 10, and %s of 100 trials lose money", o.Answer.OwnProfit(), asDollars(low), asDollars(high), oneIn100(o.Loss.Value))
}

// onlyProfit reports whether the deal states no target, so that not to lose money is all
// that is watched.
func (p oddsPage) onlyProfit() bool { return len(p.Deal.Targets) == 0 }

// outOf100 is a share in whole cases of 100, none and all only where it is so.
func outOf100(share float64) string {
	switch {
	case share > 0 && share < 0.005:
		return "fewer than 1"
	case share > 0.995 && share < 1:
		return "more than 99"
	case share == 0:
		return "none"
	case share == 1:
		return "all"
	}
	return fmt.Sprintf("about %.0f", share*100)
}

// offers are the safe and the plain offer.
func (p oddsPage) offers() {
	hold := "all your targets hold"
	if p.onlyProfit() {
		hold = "no money is lost"
	}
	confidence := percentOf(p.Confidence)
	if p.Safe.Found {
		p.text(fmt.Sprintf("  %s%s   ", pad("Safe offer", 15), right(dollars(p.Safe.Price), 10)),
			fmt.Sprintf("up to it %s in %s of the trials (give or take %s)", hold, confidence, dollars(near(p.Safe.Error, 0))))
	} else {
		would := "all your targets would hold"
		if p.onlyProfit() {
			would = "no money would be lost"
		}
		p.text("  ", fmt.Sprintf("No price is safe: even with the house as a gift %s in only %s of the trials, not in %s.", would, share(p.Safe.Holds.Value), confidence))
	}
	if !p.PlanOffer.Found {
		fails := "misses a target"
		if p.onlyProfit() {
			fails = "loses money"
		}
		p.text("  ", "Nor is there a maximum offer: the plan itself "+fails+" even then.")
		return
	}
	offer(p.page, "Maximum offer", p.PlanOffer, "the highest price at which "+hold+" if everything goes as planned")
	if p.Safe.Found && !p.PlanOffer.Endless && p.Safe.Price.GreaterThan(p.PlanOffer.Price) {
		p.text("  ", "The safe offer is the higher one: in most trials what varies leaves more to spare than the plan does.")
	}
}

// A figureRow is a figure of the trials on the page.
type figureRow struct {
	label  string
	figure int
	says   func(float64) string
	off    func(float64) string // says its error
}

func (p oddsPage) rows() []figureRow {
	rows := []figureRow{{p.Answer.OwnProfit(), chance.Profit, inColumn, asError}}
	if p.Answer.Line("own_labour").IsPositive() {
		rows = append(rows, figureRow{"after own hours", chance.AfterHours, inColumn, asError})
	}
	return append(rows,
		figureRow{"return on cash (ROI)", chance.Return, asPercent, asHundredths}, figureRow{"cash needed", chance.Cash, inColumn, asError},
		figureRow{"months owned", chance.Months, asMonths, asHundredths}, figureRow{"maximum offer", chance.Offer, inColumn, asError})
}

// oddsColumn is how wide a figure may be.
const oddsColumn = 9

const oddsRow = "  %-21s%9s%-7s%9s%-7s%9s%-7s%9s"

// figures are the percentiles with their errors.
func (p oddsPage) figures() {
	p.heading("At the asking price of " + p.price())
	p.line("%s", p.paint(dim, fmt.Sprintf("  %-21s%14s%16s%16s%11s", "", "1 in 10 lower", "half lower", "1 in 10 higher", "planned")))
	p.line("%s", p.paint(dim, fmt.Sprintf("  %-21s%14s%16s%16s", "", "(P10)", "(P50)", "(P90)")))
	for _, r := range p.rows() {
		cells := []any{r.label}
		for _, at := range []float64{tail, 0.5, 1 - tail} {
			e := p.Figures[r.figure].Percentile(at)
			if lacking(p.Odds, r.figure, at) {
				cells = append(cells, "none", "")
				continue
			}
			cells = append(cells, r.says(e.Value), " ±"+strings.TrimLeft(r.off(e.Error), "$"))
		}
		p.line(oddsRow, append(cells, p.planned(r))...)
	}
	if p.NoReturn > 0 {
		p.text("  ", fmt.Sprintf("In %s of 100 trials no cash is needed, so there is no return on it; the return is of the others.", oneIn100(float64(p.NoReturn)/float64(p.Trials))))
	}
}

// paid says what of the plan's cash is paid before the closing.
func (p oddsPage) paid() {
	if words := paidBefore(p.Answer); words != "" {
		p.text("  ", "The planned cash needed is "+dollars(p.Answer.Line("cash_needed"))+words+".")
	}
}

// lacking reports whether there is no such percentile: of a maximum offer among the trials in
// which no price holds all targets, which count as $0 among the others, or of what no trial has.
func lacking(o *chance.Odds, figure int, at float64) bool {
	return figure == chance.Offer && float64(o.NoOffer) >= at*float64(o.Trials) || o.Figures[figure].Trials() == 0
}

// planned is the figure of the plan.
func (p oddsPage) planned(r figureRow) string {
	switch o := p.PlanOffer; {
	case r.figure == chance.Return && !p.PlanReturns():
		return "no cash"
	case r.figure != chance.Offer:
		return r.says(p.Plan[r.figure].InexactFloat64())
	case o.Endless:
		return "any"
	case !o.Found:
		return "none"
	default:
		return inColumn(o.Price.InexactFloat64())
	}
}

// chances are how often what matters happens.
func (p oddsPage) chances() {
	p.heading("How often, in 100 trials")
	row := func(what string, e odds.Estimate) {
		p.split("  "+what, oneIn100(e.Value), fmt.Sprintf(" ±%-5s", oneIn100(e.Error)))
	}
	row("you lose money", p.Loss)
	if p.onlyProfit() {
		p.worst()
		return
	}
	for i, target := range p.Watched {
		if target == "cash_to_spare" {
			row("cash runs past the "+dollars(p.Answer.Line("cash_available").Sub(p.Answer.Line("cash_reserve")))+" you can use", p.Missed[i])
			continue
		}
		if p.Answer.BreaksEven(target) {
			continue // that is to lose money
		}
		row("you miss "+p.Answer.Goal(target), p.Missed[i])
	}
	if p.Beyond != nil && p.Answer.Line("cash_reserve").IsPositive() {
		row("cash runs past all the "+dollars(p.Answer.Line("cash_available"))+" you have", *p.Beyond)
	}
	if len(p.Watched) > 1 {
		row("at least one of your targets is missed", p.AnyMissed)
	}
	p.worst()
}

// worst is the expected shortfall, and the trials that have no answer.
func (p oddsPage) worst() {
	e := p.Figures[chance.Profit].Shortfall(tail)
	what, value := "a profit of ", e.Value
	if math.Round(value) < 0 { // of whole dollars, as it is printed
		what, value = "a loss of ", -value
	}
	p.text("  ", fmt.Sprintf("The worst tenth of the trials comes to %s%s on average (expected shortfall, ±%s).", what, asDollars(value), asDollars(e.Error)))
	if p.None > 0 {
		p.text("  ", fmt.Sprintf("In %s more trials the times that were drawn leave no hold; they are left out.", quantity.FormatCount(decimal.NewFromInt(p.None), 0)))
	}
}

// rests says what the odds rest on.
func (p oddsPage) rests() {
	p.heading("How sure this is")
	if len(p.Answer.Loans()) > 0 {
		var moved []string
		for _, r := range p.Ranges {
			if r.MovesLoans() {
				moved = append(moved, r.Label)
			}
		}
		but := ""
		if len(moved) > 0 {
			but = ", but for what these make of them: " + strings.Join(moved, "; ")
		}
		p.text("  ", "Loans are the plan's in every trial"+but+". Lenders look at the value and the budget before the works and the sale; for another price the loans follow the price.")
	}
	p.text("  ", fmt.Sprintf("%s trials, seed %d. The same seed gives the same figures. ± is the standard error: with another --seed a figure comes out within it two times of three, and within twice as much 19 times of 20. More --trials make it smaller. It says how sure the trials are, not how sure the ranges are: the odds are no better than those.",
		quantity.FormatCount(decimal.NewFromInt(p.Trials+p.None), 0), p.Seed))
	informs(p.page, "  ", p.Answer)
}

// informs ends a page that says how a deal may come out.
func informs(p *page, lead string, a *answer.Answer) {
	if n := len(a.Warnings); n > 0 {
		p.text(lead, fmt.Sprintf("The file has doubtful spots (%d); ledgerboard check tells of them.", n))
	}
	p.text(lead, "This informs, it does not advise.")
}

// near is a figure of the trials as a decimal of so many places.
func near(x float64, places int32) decimal.Decimal { return decimal.NewFromFloat(x).Round(places) }

func asDollars(x float64) string { return dollars(decimal.NewFromFloat(x)) }

// inColumn is a sum of dollars that fits its column, from a million up in millions.
func inColumn(x float64) string {
	if math.Abs(x) < 1e6 {
		return asDollars(x)
	}
	sign := ""
	if x < 0 {
		sign = "-"
	}
	for places := int32(3); ; places-- {
		text := sign + "$" + near(math.Abs(x)/1e6, places).StringFixed(places) + "m"
		if len(text) <= oddsColumn || places == 0 {
			return text
		}
	}
}

// asError is an error in dollars, from a thousand up in thousands; in four signs or fewer
// up to a billion, so that a blank stands behind it.
func asError(x float64) string {
	switch {
	case x < 999.5:
		return asDollars(x)
	case x < 9_950:
		return near(x/1e3, 1).StringFixed(1) + "k"
	case x < 999_500:
		return near(x/1e3, 0).String() + "k"
	case x < 9_950_000:
		return near(x/1e6, 1).StringFixed(1) + "m"
	}
	return near(x/1e6, 0).String() + "m"
}

// asPercent writes tenths as long as they say anything.
func asPercent(x float64) string {
	if math.Abs(x) >= 1000 {
		return near(x, 0).String() + "%"
	}
	return near(x, 1).StringFixed(1) + "%"
}
func share(x float64) string { return asPercent(x * 100) }

func asMonths(x float64) string { return near(x, 2).StringFixed(2) }

// asHundredths is an error of a figure in tenths, in four signs or fewer.
func asHundredths(x float64) string {
	switch {
	case x > 0 && x < 0.005:
		return "<0.01"
	case x < 9.995:
		return near(x, 2).StringFixed(2)
	case x < 99.95:
		return near(x, 1).StringFixed(1)
	case x < 9999.5:
		return near(x, 0).String()
	}
	return asError(x)
}

// oneIn100 is a share in cases of 100.
func oneIn100(x float64) string {
	switch {
	case x == 0:
		return "0"
	case x < 0.00005:
		return "<0.01"
	case x < 0.0005:
		return near(x*100, 2).StringFixed(2)
	}
	return near(x*100, 1).StringFixed(1)
}
