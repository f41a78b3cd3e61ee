package report

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// shownInFull is how many comparables stand in the grid unless all are asked for.
const shownInFull = 8

// Comps writes what sold houses say of the value: the value with its range, where the
// sales lie in it, the grid of adjustments, what drives it and what is doubtful. With
// all, every sale is shown.
func Comps(w io.Writer, a *answer.Answer, s Style, all bool) error {
	p := newPage(w, s)
	c := compsPage{p, a, a.Deal.Comps, a.Deal.Comps.Value, shownInFull, all}
	if all {
		c.most = len(c.v.Rows)
	}
	c.lead()
	c.drawing()
	c.grid()
	c.drives()
	c.worths()
	c.why()
	c.aside()
	c.doubts()
	p.line("")
	p.text("", comps.NotAppraisal+" Lenders, courts and tax offices want a licensed appraiser; an agent who knows the street knows what no list holds.")
	return p.flush()
}

type compsPage struct {
	*page
	a    *answer.Answer
	c    *deal.Comparables
	v    *comps.Value
	most int // sales in the grid
	all  bool
}

func (c compsPage) lead() {
	c.title(c.a.Deal.Name + ": what it will sell for")
	c.line("")
	newest, ago := c.c.OnlyOld()
	if ago != "" { // the figures below are worth little
		c.text("", fmt.Sprintf("Doubt this value first: the newest sale that it is drawn from is of %s, %s before the day of the value, and prices have moved since in a way that no old sale tells. Look for sales of the last 12 months.", newest.Long(), ago))
		c.line("")
	}
	if t, by := c.c.HastyTrend(); by != "" {
		percent := func(x float64) string { return quantity.FormatPercent(near(x, 4), 2) }
		c.text("", fmt.Sprintf("Doubt this value first: all sales are moved by a market that changes by %s a month, give or take %s, which %s alone %s and which is more than is usual. If you know better, say it under comps, e.g. amounts: {market a month: 0.3%%}.", percent(t.Worth), percent(t.Error), by, map[bool]string{true: "tells", false: "tell"}[t.Pairs == 1]))
		c.line("")
	} else if why := c.c.UnsureTrend(); why != "" && ago == "" {
		c.text("", fmt.Sprintf("Doubt this value first: %s. If you know how prices moved, say it under comps, e.g. amounts: {market a month: 0.3%%}.", why))
		c.line("")
	}
	for _, why := range c.a.DoubtFirst() {
		c.text("", "Doubt this value first: "+why+".")
		c.line("")
	}
	c.text("", fmt.Sprintf("Likely %s. One such house in ten sells below %s, one in ten above %s. Drawn from %s before %s%s.",
		dollars(c.a.Line("value_by_comps")), dollars(c.a.Line("comps_low")), dollars(c.a.Line("comps_high")), quantity.Counted(len(c.v.Rows), "sale"), c.c.Day, c.slight()))
	c.text("", c.against())
	c.text("", comps.NotAppraisal)
}

// slight says of how many of the sales next to nothing comes.
func (c compsPage) slight() string {
	n := 0
	for i := range c.v.Rows {
		if c.v.Faint(&c.v.Rows[i]) {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("; next to nothing of it comes of %d of them, so it rests on %d", n, len(c.v.Rows)-n)
}

// against holds the value that the deal goes by against the comparables, and says what is
// low beside one that is stated.
func (c compsPage) against() string {
	value := c.a.Line("after_repair_value")
	switch low, high := c.a.Line("comps_low"), c.a.Line("comps_high"); {
	case c.c.InPlace != "" && !c.a.StatesValue():
		return fmt.Sprintf("The deal file states neither a value nor sold houses: it goes by this one once it has   comps: {file: %s}", c.c.InPlace)
	case c.follows() && !c.a.StatesValue():
		return "The deal states no after-repair value, so it goes by this one" + c.lowBeside()
	case value.LessThan(low):
		return fmt.Sprintf("The deal goes by %s, below the range%s", dollars(value), c.lowBeside())
	case value.GreaterThan(high):
		return fmt.Sprintf("The deal goes by %s, above the range: look again%s", dollars(value), c.lowBeside())
	default:
		return fmt.Sprintf("The deal goes by %s, inside the range%s", dollars(value), c.lowBeside())
	}
}

// lowBeside says what is low where the deal states a value, or a low one.
func (c compsPage) lowBeside() string {
	low := dollars(c.a.Line("low_value"))
	switch {
	case c.a.StatesLow():
		return ". For its low value it goes by its own, " + low + ", in place of theirs, " + dollars(c.a.Line("comps_low")) + "."
	case !c.a.StatesValue():
		return "."
	case c.a.UnderComps():
		return ". That takes its low value with it, to " + low + ", by as large a share below it as the low end of theirs is below their value."
	case c.follows():
		return ". Its low value is " + low + "."
	}
	if c.a.Line("after_repair_value").GreaterThan(c.a.Line("comps_high")) {
		return ". That does not lift the low end: its low value is " + low + ". The odds and stress take it for the high end."
	}
	return ". That lifts neither end of it: its low value is " + low + "."
}

// follows reports whether the deal goes by the value of the comparables.
func (c compsPage) follows() bool {
	return c.a.Line("after_repair_value").Equal(c.a.Line("value_by_comps"))
}

// wide is how wide the drawing is.
const wide = 76

// drawing shows where the adjusted prices lie in the range, and where the value does.
func (c compsPage) drawing() {
	low, high := c.a.Line("comps_low"), c.a.Line("comps_high")
	from, to := low, high
	for _, m := range c.c.Members {
		x := c.a.Of(m, "adjusted_price")
		from, to = decimal.Min(from, x), decimal.Max(to, x)
	}
	value := c.a.Line("after_repair_value")
	from, to = decimal.Min(from, value), decimal.Max(to, value)
	at := func(x decimal.Decimal) int {
		if to.Equal(from) {
			return 0
		}
		share := x.Sub(from).Div(to.Sub(from)).InexactFloat64()
		return int(share*float64(wide-1) + 0.5)
	}
	axis := []rune(strings.Repeat(" ", wide))
	for i := at(low); i <= at(high); i++ {
		axis[i] = '-'
	}
	axis[at(low)], axis[at(high)] = '|', '|'
	seen := map[int]int{}
	for _, m := range c.c.Members {
		i := at(c.a.Of(m, "adjusted_price"))
		seen[i]++
		axis[i] = 'o'
		if n := seen[i]; n > 1 {
			axis[i] = rune('0' + min(n, 9))
		}
	}
	c.heading("Where the sales lie once adjusted")
	for _, line := range c.ends(mark{at(low), dollars(low)}, mark{at(high), dollars(high)}) {
		c.line("  %s", line)
	}
	c.line("  %s", string(axis))
	c.line("  %s", c.marked(mark{at(c.a.Line("value_by_comps")), "^ likely"}))
	if !c.follows() {
		c.line("  %s", c.marked(mark{at(value), "^ the deal's " + dollars(value)}))
	}
	c.text("  ", "o is a sale, a number several of them; between the bars lie eight in ten such houses.")
}

// A mark is a word at a column of the drawing.
type mark struct {
	at    int
	words string
}

// ends writes the ends of the range in a line, in two where the words would touch.
func (c compsPage) ends(low, high mark) []string {
	alone := c.marked(low)
	first := strings.TrimLeft(c.marked(high), " ")
	if start := len([]rune(c.marked(high))) - len([]rune(first)); start > len([]rune(alone)) {
		return []string{c.marked(low, high)}
	}
	return []string{alone, c.marked(high)}
}

// marked writes marks in a line; one that would run over the edge stands before its
// place.
func (c compsPage) marked(all ...mark) string {
	out := []rune(strings.Repeat(" ", wide))
	for _, m := range all {
		words := []rune(m.words)
		at := m.at
		if at+len(words) > wide {
			if rest, ok := strings.CutPrefix(m.words, "^ "); ok {
				words = []rune(rest + " ^")
			}
			at = max(0, m.at-len(words)+1)
		}
		copy(out[at:], words)
	}
	return strings.TrimRight(string(out), " ")
}

// mostOfIt is the share of the weight that the sales which drive a value carry.
const mostOfIt = 0.7

// drives names the sales that carry most of the value, and how the others bear them out.
func (c compsPage) drives() {
	c.heading("What drives it")
	var parts []string
	var sum decimal.Decimal // of what is shown, as the grid shows it
	for _, r := range c.v.Rows {
		if sum.InexactFloat64() >= mostOfIt || len(parts) == 6 {
			break
		}
		shown := decimal.NewFromFloat(r.Weight).Round(3)
		sum = sum.Add(shown)
		parts = append(parts, fmt.Sprintf("%s (%s)", c.id(&r.Sold), percent(shown)))
	}
	c.text("  ", fmt.Sprintf("%s: %s of the weight. A sale weighs more the more it is like the house, and less where it lies apart from the others.", strings.Join(parts, ", "), percent(sum)))
	switch {
	case len(c.v.Rows) < 2:
	case c.onePair():
		c.text("  ", "Both come to the same by themselves: what they are adjusted by is drawn from these two, so that they agree says nothing.")
	default:
		c.text("  ", fmt.Sprintf("Left out one by one, half of the sales are met by the others within %s.", percentOf(c.v.Error)))
	}
	var amber []string
	for i := range c.v.Rows {
		if r := &c.v.Rows[i]; len(r.Amber) > 0 && i < c.most {
			amber = append(amber, c.id(&r.Sold)+": "+strings.Join(r.Amber, "; "))
		}
	}
	if len(amber) == 0 {
		return
	}
	c.heading("Beyond what is customary; not wrong, but look again")
	for _, m := range amber {
		c.text("  - ", m)
	}
}

// onePair reports whether two sales are all there is, and what they are adjusted by comes
// from them: they agree then, whatever they sold for.
func (c compsPage) onePair() bool {
	if len(c.v.Rows) != 2 || c.c.Usable != 2 || c.v.Error >= 0.0005 {
		return false
	}
	for _, r := range c.v.Linear {
		if r.From == "pairs" && r.Line != comps.Time {
			return true
		}
	}
	return false
}

func share0(x float64) string { return quantity.FormatPercent(decimal.NewFromFloat(x).Round(2), 0) }

// id is what a sale is called by, here and for --strike and --add.
func (c compsPage) id(s *comps.Sold) string { return c.c.ID(s) }

// worths lists what a unit of each thing is worth, and how sure that is.
func (c compsPage) worths() {
	c.heading("What a unit of each thing is worth")
	trend := c.v.Trend
	c.worth("the market in a month", decimal.NewFromFloat(trend.Worth*100).StringFixed(2)+"%", decimal.NewFromFloat(trend.Error*100).StringFixed(2)+"%", trend)
	for _, r := range c.v.Rates {
		c.worth(r.Thing(), quantity.FormatMoney(decimal.NewFromFloat(r.Worth).Round(2)), quantity.FormatMoney(decimal.NewFromFloat(r.Error).Round(2)), r)
	}
	if slices.ContainsFunc(c.v.Rates, func(r comps.Rate) bool { return r.From == "regression" }) {
		c.text("  ", "By regression a unit is worth a share of each sale's price, shown for this house, and the market compounds: times a small difference it comes near what is adjusted above, not to it. Size and lot count by their ratio and age by its bends, so times a large one it may be far from that. A market a month of your own does not compound.")
	}
	for _, d := range c.v.Disbelieved {
		c.text("  ", d.String())
	}
	if len(c.v.Untold) > 0 {
		c.text("  ", "Not adjusted, since nothing that can be believed tells what it is worth: "+comps.Names(c.v.Untold)+". What to do: "+deal.SayUntold(c.v)+".")
	}
}

func (c compsPage) worth(what, worth, plus string, r comps.Rate) {
	from := r.HowTold()
	if !r.Told() {
		from = "nothing tells; not adjusted"
	} else if r.From != "given" {
		from = "+- " + plus + ", " + from
	}
	const room = 26
	if utf8.RuneCountInString(what) > room {
		c.text("  ", what)
		what = ""
	}
	c.line("  %s%s  %s", pad(what, room), right(worth, 12), from)
}

// why says of sales out of a table why each was taken.
func (c compsPage) why() {
	if !c.c.HasTable {
		return
	}
	c.heading("Why these were taken, the heaviest first")
	for i, r := range c.v.Rows {
		if i == c.most {
			c.text("  ", moreOf(len(c.v.Rows)-i))
			break
		}
		c.text("  - ", c.id(&r.Sold)+": "+r.Why)
	}
}

func moreOf(n int) string { return fmt.Sprintf("and %d more; --all tells them", n) }

// asideShown is how many sales that were not used are listed.
const asideShown = 8

// aside lists what is not used, and how it could be.
func (c compsPage) aside() {
	var out []string
	for _, p := range c.c.NotUsed {
		out = append(out, fmt.Sprintf("%s, %s on %s: %s", c.id(&p.Sold), dollars(p.Price), p.Date, p.Why))
	}
	if len(out) == 0 && len(c.c.Lost) == 0 && c.c.LeftOld == 0 {
		return
	}
	c.heading("Not used")
	for i, m := range out {
		if i == asideShown && !c.all {
			c.text("  ", moreOf(len(out)-i))
			break
		}
		c.text("  - ", m)
	}
	rows := map[string]int{}
	for _, why := range c.c.Lost {
		rows[why]++
	}
	for _, why := range slices.Sorted(maps.Keys(rows)) {
		says := quantity.Counted(rows[why], "row") + " " + why
		if why != comps.LikeFirst { // which says it all
			says += "; below it says why"
		}
		c.text("  - ", says)
	}
	if n := c.c.LeftOld; n > 0 {
		c.text("  - ", fmt.Sprintf("%s of more than %d years before the day, since nearer ones suffice", quantity.Counted(n, "sale"), comps.OldYears))
	}
	if len(out) == 0 {
		return
	}
	c.text("  ", `Use one from before the day with --add "..."; leave one out with --strike "...".`)
}

func (c compsPage) doubts() {
	var out []string
	for _, d := range deal.WeightyFirst(c.a.Warnings) {
		if compsCode(d) && d.Code != "comps-not-adjusted" { // that stands with the worths
			said := doubt(c.a, d)
			if d.Code == "bad-sale" || d.Code == "bad-cell" { // what is accepted stands in no other line
				said += "; " + d.Hint
			}
			out = append(out, said)
		}
	}
	if len(out) == 0 {
		return
	}
	c.heading("Doubtful; look again")
	for i, m := range out {
		if i == 2*doubtsShown && !c.all {
			c.text("  - ", moreOf(len(out)-i))
			break
		}
		c.text("  - ", m)
	}
}

// compsCode reports whether a doubt is about sold houses.
func compsCode(d diag.Diag) bool { return deal.AboutComps(d.Code) }
