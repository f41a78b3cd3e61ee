package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/odds"
	"ledgerboard/pkg/quantity"
)

// The text histogram: about so many steps between one trial in a hundred and 99, and the
// longest bar.
const (
	usualSteps = 14
	longestBar = 30
)

// A step is a slice of the histogram.
type step struct{ from, to, share float64 }

// steps cuts the profits of the trials at round dollars, so that 0 is an edge; the first
// and the last hold all beyond.
func steps(h *odds.Histogram) []step {
	low, high := h.Quantile(0.01), h.Quantile(0.99)
	if !(high-low >= 0.005) { // nothing to a cent
		return []step{{low, high, 1}}
	}
	wide := round((high - low) / usualSteps)
	low, high = math.Floor(low/wide)*wide, math.Ceil(high/wide)*wide
	shares := h.Share(low, high, int(math.Round((high-low)/wide)))
	out := make([]step, len(shares))
	for i, s := range shares {
		out[i] = step{low + float64(i)*wide, low + float64(i+1)*wide, s}
	}
	return out
}

// round is the next 1, 2 or 5 with noughts from a number up.
func round(x float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(x)))
	for _, k := range []float64{1, 2, 5} {
		if k*ten >= x {
			return k * ten
		}
	}
	return 10 * ten
}

// bars draws the profits of the trials.
func (p oddsPage) bars() {
	all := steps(p.Figures[chance.Profit])
	most := 0.0
	for _, s := range all {
		most = max(most, s.share)
	}
	p.heading(capital(p.Answer.OwnProfit()) + ", by how many of 100 trials come out there")
	target := p.Answer.Line("target_profit").InexactFloat64()
	for i, s := range all {
		label := asDollars(s.from) + " to " + asDollars(s.to)
		switch {
		case len(all) == 1:
		case i == 0:
			label = "under " + asDollars(s.to)
		case i == len(all)-1:
			label = asDollars(s.from) + " and more"
		}
		bar := strings.Repeat("#", int(math.Round(s.share/most*longestBar)))
		note := ""
		switch {
		case s.to == 0:
			note = "  loss up to here"
		case target > 0 && s.from <= target && target < s.to:
			note = "  your target"
		}
		p.line("  %s%7s  %s%s", right(label, 22), oneIn100(s.share), bar, note)
	}
}

// ranges are the inputs that vary, and how far.
func (p oddsPage) ranges() {
	p.heading("What varied, each trial anew")
	p.line("%s", p.paint(dim, fmt.Sprintf(rangeRow, "", "low", "likely", "high", "means")))
	for _, r := range p.Ranges {
		p.rangeOf(r)
	}
	for _, t := range p.Ties {
		text := fmt.Sprintf("%s and %s go together: rank correlation %s", p.Ranges[t.A].Label, p.Ranges[t.B].Label, t.Rho)
		if t.Rho.IsNegative() {
			text = strings.Replace(text, "go together", "go against each other", 1)
		}
		if t.Assumed {
			text += "; assumed, common practice, no source"
		}
		p.text("  ", text)
	}
	p.text("  ", "1 in 10: one case in ten lies below low, one above high; the ends: none does. The cases between are spread smoothly, most near what is likely (PERT), where nothing else is said. A range of your own goes into the deal file, under ranges.")
}

const rangeRow = "  %-29s%12s%12s%12s   %s"

func (p oddsPage) rangeOf(r chance.Range) {
	switch {
	case len(r.Cases) > 0:
		var said []string
		for _, c := range r.Cases {
			said = append(said, r.Says(c.Value)+" (weight "+quantity.FormatCount(c.Weight, 4)+")")
		}
		p.text("  "+pad(cut(r.Label, 28), 29), strings.Join(said, ", "))
	default:
		likely := r.Says(r.Likely)
		if !r.HasLikely() {
			likely = ""
		}
		row := fmt.Sprintf(rangeRow, cut(r.Label, 28), r.Says(r.Low), likely, r.Says(r.High), meaning(r))
		if utf8.RuneCountInString(row) > Width {
			p.text("  "+pad(cut(r.Label, 28), 29), strings.Join(slices.DeleteFunc([]string{r.Says(r.Low), likely, r.Says(r.High), meaning(r)}, func(s string) bool { return s == "" }), ", "))
			break
		}
		p.line("%s", row)
	}
	if r.Spread != deal.PERT && len(r.Cases) == 0 {
		p.text("    ", "spread: "+r.Spread)
	}
	if least, most, err := r.Kept(); err == nil && len(r.Cases) == 0 {
		if least != nil {
			p.text("    ", "no case is under "+orNothing(r, *least)+": one drawn there counts as that")
		}
		if most != nil {
			p.text("    ", "no case is over "+r.Says(*most)+": one drawn there counts as that")
		}
	}
	if off := offPlan(r); off != "" {
		p.text("    ", "the plan has "+r.Says(r.Plan)+", "+off+"; the trials do not draw about it")
	}
	if r.Assumed {
		p.text("    ", "assumed: "+r.Why)
	}
	if !r.Moved.IsZero() {
		p.text("    ", "moved by "+signed(r.Moved)+" from what the file says, as the value is for the options asked for")
	}
	if r.Idle != "" {
		p.text("    ", idle(r))
	}
}

// offPlan says how the plan differs from what the trials draw about, or "".
func offPlan(r chance.Range) string {
	among := slices.ContainsFunc(r.Cases, func(c deal.Case) bool { return c.Value.Equal(r.Plan) })
	switch outside := r.Plan.LessThan(r.Low) || r.Plan.GreaterThan(r.High); {
	case len(r.Cases) > 0 && !among:
		return "none of these"
	case len(r.Cases) == 0 && outside:
		return "outside of this"
	case len(r.Cases) == 0 && !r.Assumed && r.HasLikely() && !r.Plan.Equal(r.Likely):
		return "and not " + r.Says(r.Likely)
	}
	return ""
}

// idle says why a range moves nothing.
func idle(r chance.Range) string { return "moves nothing here: " + r.Idle }

// orNothing is a value of a range, and nothing where it is none.
func orNothing(r chance.Range, x decimal.Decimal) string {
	if x.IsZero() {
		return "nothing"
	}
	return r.Says(x)
}

// meaning is what low and high mean.
func meaning(r chance.Range) string {
	if r.Means == odds.AtEnds {
		return "the ends"
	}
	return "1 in 10"
}
