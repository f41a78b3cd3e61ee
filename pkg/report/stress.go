package report

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/stress"
)

// A StressPage is how bad a deal can get.
type StressPage struct {
	Answer *answer.Answer
	Asked  bool // for the grid alone: the rest is empty
	*stress.Study
}

// Stress writes how bad a deal can get.
func Stress(w io.Writer, s *StressPage, style Style) error {
	p := stressPage{newPage(w, style), s}
	p.title(s.Answer.Deal.Name + ": how bad it can get")
	p.plan()
	if !s.Asked {
		p.answers()
	}
	p.grids()
	if !s.Asked {
		p.days()
		p.ranking()
		p.heading("How far it may go before")
		for _, e := range breakEvens(s.Answer) {
			p.line("  %s", half([]entry{e}, 0))
		}
		alone := "Each alone."
		if len(s.Answer.Loans()) > 0 {
			alone = "Each alone, with the loans as planned."
		}
		p.text("", alone)
		informs(p.page, "", s.Answer)
	}
	return p.flush()
}

type stressPage struct {
	*page
	*StressPage
}

func (p stressPage) say(format string, args ...any) { p.text("", fmt.Sprintf(format, args...)) }

// plan says what the plan comes to.
func (p stressPage) plan() {
	a := p.Answer
	verb := "make"
	profit := a.Line("owner_profit")
	if profit.IsNegative() {
		verb = "lose"
	}
	p.say("As planned you %s %s with %s of your cash%s, in %s.", verb, dollars(profit.Abs()), dollars(a.Line("cash_needed")), paidBefore(a), months(a.Line("hold_months")))
}

// paidBefore is what of the cash needed is paid before the closing, where that is hers alone
// and nothing of it comes back there, or that it is more; else "".
func paidBefore(a *answer.Answer) string {
	paid := a.Line("already_paid")
	switch {
	case !paid.IsPositive() || a.Partnered():
		return ""
	case paid.GreaterThan(a.Line("cash_needed")):
		return " (before the closing it is more: " + dollars(paid) + ", already paid)"
	case a.Line("cash_to_close").IsNegative():
		return ""
	}
	return ", " + dollars(paid) + " of it paid before the closing"
}

// month says what one more month costs, or brings, beside a profit as beside a loss.
func (p stressPage) month(what string, d answer.Delay) {
	does := "costs"
	switch {
	case d.Month.Round(0).IsZero():
		p.say("%s costs you nothing.", what)
		return
	case d.Month.IsNegative():
		does, d = "brings", answer.Delay{Month: d.Month.Neg(), Day: d.Day.Neg()}
	}
	p.say("%s %s you %s, %s a day.", what, does, dollars(d.Month), dollars(d.Day))
}

// answers say what a late finish and an overrun do, in a few sentences.
func (p stressPage) answers() {
	a := p.Answer
	if a.Line("renovation").IsPositive() {
		which := "The first month"
		if a.Line("standstill").IsPositive() {
			which = "One month more that"
		}
		p.month(which+" the works stand still", a.Stalled)
	}
	p.month("The first month longer on the market", a.Late)
	if len(p.Ranking) > 0 {
		r := p.Ranking[0]
		p.say("What matters most is %s: between %s and %s your profit goes from %s to %s.", r.Label, r.Says(r.Low), r.Says(r.High), dollars(r.AtLow), dollars(r.AtHigh))
	}
	if gone := p.gone(); len(gone) > 0 {
		last := len(gone) - 1
		words := gone[last]
		if last > 0 {
			words = strings.Join(gone[:last], ", ") + " or " + words + ", each alone"
		}
		p.say("You lose money %s.", words)
	}
	if worst := p.worst(); worst != nil {
		p.say("The worst of the bad days below, %q, leaves you %s.", worst.Title, dollars(worst.Profit))
	}
}

// gone is where a loss begins, as far as it is found.
func (p stressPage) gone() (out []string) {
	b := p.Answer.BreakEven
	if b.Overrun.Found {
		out = append(out, "past "+percent(b.Overrun.Value)+" over the bids")
	}
	if b.Months.Found {
		out = append(out, "past "+months(b.Months.Value)+" longer on the market")
	}
	if b.SalePrice.Found && p.Answer.Line("owner_profit").IsPositive() {
		out = append(out, "at a sale under "+dollars(b.SalePrice.Value))
	}
	return out
}

func (p stressPage) worst() *stress.Outcome {
	var worst *stress.Outcome
	for i, o := range p.Days {
		if worst == nil || o.Profit.LessThan(worst.Profit) {
			worst = &p.Days[i]
		}
	}
	return worst
}

// dayLabel is the column of words beside the bad days, dayWidth that of each, at least.
const dayLabel, dayWidth = 19, 12

// days writes the bad days as columns, with what helps below.
func (p stressPage) days() {
	p.heading("Bad days, side by side")
	width := p.dayWidth()
	columns := (Width-dayLabel)/width - 1 // beside the plan
	for from := 0; from < len(p.Days); from += columns {
		some := p.Days[from:min(from+columns, len(p.Days))]
		if from > 0 {
			p.line("")
		}
		p.dayHeads(some, width)
		row := func(words, plan string, of func(stress.Outcome) string) {
			line := pad(words, dayLabel) + right(plan, width)
			for _, o := range some {
				line += right(of(o), width)
			}
			p.line("%s", line)
		}
		a := p.Answer
		row(a.OwnProfit(), dollars(a.Line("owner_profit")), func(o stress.Outcome) string { return dollars(o.Profit) })
		row("against the plan", "", func(o stress.Outcome) string { return dollars(o.Lost.Neg()) })
		row("return on cash", p.ratio(a.Line("roi"), a.Line("cash_needed")), func(o stress.Outcome) string { return p.ratio(o.ROI, o.Cash) })
		row("cash needed", dollars(a.Line("cash_needed")), func(o stress.Outcome) string { return dollars(o.Cash) })
		row("months owned", hundredths(a.Line("hold_months")), func(o stress.Outcome) string { return hundredths(o.Months) })
		row("targets missed", shortly(a.Missed()), func(o stress.Outcome) string { return shortly(o.Misses) })
	}
	p.tell("What they are", func(o stress.Outcome) string {
		if o.Own || !o.Usual {
			return strings.ToLower(o.What[:1]) + o.What[1:]
		}
		return ""
	})
	p.tell("What helps", func(o stress.Outcome) string { return o.Remedy })
	untried(p.page, p.Answer)
	if slices.ContainsFunc(p.Days, func(o stress.Outcome) bool { return o.Aside }) {
		p.text("", strings.TrimSpace(p.setsAside()))
	}
	p.text("", "How far each goes is common practice, no source; write your own under   bad days:   in the deal file.")
}

// tell writes what there is to say of each bad day, under a head.
func (p stressPage) tell(head string, of func(stress.Outcome) string) {
	some := slices.DeleteFunc(slices.Clone(p.Days), func(o stress.Outcome) bool { return of(o) == "" })
	if len(some) == 0 {
		return
	}
	p.line("")
	p.line("%s", head)
	for _, o := range some {
		p.text("  ", o.Title+": "+of(o)+".")
	}
}

// dayWidth is how wide the column of a bad day has to be for its figures.
func (p stressPage) dayWidth() int {
	width := dayWidth
	for _, x := range []string{"owner_profit", "cash_needed"} {
		width = max(width, len(dollars(p.Answer.Line(x)))+1)
	}
	for _, o := range p.Days {
		for _, x := range []decimal.Decimal{o.Profit, o.Lost.Neg(), o.Cash} {
			width = max(width, len(dollars(x))+1)
		}
	}
	return width
}

// deepestHead is how many lines the name of a bad day has above its column.
const deepestHead = 4

// dayHeads writes the names of bad days above their columns.
func (p stressPage) dayHeads(some []stress.Outcome, width int) {
	heads, deepest := [][]string{wrap("as planned", width-1)}, 1
	for _, o := range some {
		h := wrap(o.Title, width-1)
		if len(h) > deepestHead { // what stands below is marked as left out
			h = append(h[:deepestHead-1], cut(strings.Join(h[deepestHead-1:], " "), width-1))
		}
		heads = append(heads, h)
		deepest = max(deepest, len(h))
	}
	for i := range deepest {
		line := strings.Repeat(" ", dayLabel)
		for _, h := range heads {
			word := ""
			if at := i - deepest + len(h); at >= 0 {
				word = h[at]
			}
			line += right(word, width)
		}
		p.line("%s", p.paint(dim, line))
	}
}

func (p stressPage) ratio(roi, cash decimal.Decimal) string {
	if !cash.IsPositive() {
		return "no cash"
	}
	return percent(roi)
}

// shortly names missed targets, or counts those that are too many for a column.
func shortly(misses []stress.Miss) string {
	if len(misses) > 1 {
		return fmt.Sprintf("%d of them", len(misses))
	}
	return stress.Words(misses)
}

// ranked is how many of the ranking a page shows.
const ranked = 10

// told is how many of them it says more about.
const told = 3

// rankedLabel is the column of what is ranked, where the figures leave it that.
const rankedLabel = 22

// rankTails are the rows of the ranking behind what is ranked, the head first, and how wide
// the widest is.
func (p stressPage) rankTails(marks []string) (tails []string, widest int) {
	rows := [][3]string{{"from and to ", "swings by", "each"}}
	size := 11
	for i, s := range p.Ranking[:len(marks)] {
		rows = append(rows, [3]string{cut(fromTo(s), 20) + marks[i], dollars(s.Size()), byStep(s)})
		size = max(size, len(dollars(s.Size()))+1)
	}
	for _, r := range rows {
		tails = append(tails, right(r[0], 22)+right(r[1], size)+"  "+r[2])
		widest = max(widest, utf8.RuneCountInString(tails[len(tails)-1]))
	}
	return tails, widest
}

// below are the inputs with a range of the file's own that the page has no row for.
func (p stressPage) below() (out []string) {
	for _, s := range p.Ranking[min(ranked, len(p.Ranking)):] {
		if !s.Assumed {
			out = append(out, s.Label)
		}
	}
	return out
}

// ranking writes what matters most.
func (p stressPage) ranking() {
	p.heading("What matters most to your profit")
	assumed, flat, sold := false, false, ""
	var marks []string
	for _, s := range p.Ranking[:min(ranked, len(p.Ranking))] {
		mark := " "
		switch {
		case s.Assumed && strings.HasPrefix(s.Why, chance.Scatters):
			mark, sold = "=", s.Why
		case s.Assumed:
			mark, assumed = "~", true
		}
		flat = flat || !s.Step.IsZero()
		marks = append(marks, mark)
	}
	tails, widest := p.rankTails(marks)
	label := min(rankedLabel, Width-4-widest)
	p.line("%s", p.paint(dim, "    "+pad(cut("if this alone comes out", label+1), label)+strings.TrimPrefix(tails[0], " ")))
	for i, s := range p.Ranking[:len(marks)] {
		words := wrap(s.Label, label)
		if len(words) > deepestHead { // what stands below is marked as left out
			words = append(words[:deepestHead-1], cut(strings.Join(words[deepestHead-1:], " "), label))
		}
		p.line("%3s %s%s", fmt.Sprintf("%d.", i+1), pad(cut(words[0], label), label), tails[i+1])
		for _, rest := range words[1:] { // a name is never cut short: its end tells it from others
			p.line("      %s", rest)
		}
	}
	p.text("", "Each is how steeply your profit moves just at the plan, without jumps such as one more extension of a loan.")
	if flat {
		p.text("", "* It does not move just there; one whole step more does this, jumps included, or the last one up to the most that may be.")
	}
	if sold != "" {
		p.text("", "= is "+sold+". How far that is goes by how they scatter and how many they are.")
	}
	if assumed {
		p.text("", "~ is common practice, no source; write your own under   ranges:   in the deal file.")
	}
	if hers := p.below(); len(hers) > 0 {
		p.text("", "Your own ranges of "+answer.Listed(hers)+" move it less than these; --json ranks them all.")
	}
	for _, r := range p.Idle {
		p.text("", capital(r.Label)+" "+idle(r)+".")
	}
	p.line("")
	for i, s := range p.Ranking[:min(told, len(p.Ranking))] {
		if s.Size().IsZero() {
			break // and so do the rest
		}
		text := fmt.Sprintf("%s: %s at %s, %s at %s.", s.Label, dollars(s.AtLow), s.Says(s.Low), dollars(s.AtHigh), s.Says(s.High))
		if s.Narrows != "" {
			text += " What narrows it: " + s.Narrows + "."
		}
		p.text(fmt.Sprintf("  %d. ", i+1), text)
	}
}

// fromTo is how far a swing goes: 0.6 to 4.2 months.
func fromTo(s stress.Swing) string {
	low, high := s.Says(s.Low), s.Says(s.High)
	if i := strings.IndexAny(low, " /"); i >= 0 && strings.HasSuffix(high, low[i:]) {
		low = low[:i]
	}
	return low + " to " + high
}

// byStep is the slope of a swing in words, or what a whole step does where it is flat:
// $897 a $1,000, -$535 a point.
func byStep(s stress.Swing) string {
	step, dollar, mark := s.UnitWords(), decimal.NewFromFloat(s.Slope).Round(0), ""
	if !s.Step.IsZero() {
		dollar, mark = s.Step.Round(0), "*"
	}
	switch step {
	case "1%":
		step = "point"
	case "1 month":
		step = "month"
	}
	return cut(dollars(dollar)+" a "+step+mark, 20)
}
