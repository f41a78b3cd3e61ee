package deal

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

const mostCases = 50

// ranges reads the ranges and ties once all that they can name is read.
func (r *reader) ranges() {
	for _, s := range r.items["<range>"] {
		r.oneRange(s)
	}
	r.readTies()
}

// oneRange reads the range of one input.
func (r *reader) oneRange(s scope) {
	name, group := span{text: "", at: s.at}, true
	for _, e := range r.root.find("ranges").value.entries {
		if e.key.at == s.at {
			name, group = e.key, e.value.shape == mapping
		}
	}
	in, ok := r.input(name)
	if !ok || !group || r.odd[s.path] { // spoken of
		return
	}
	for i := range r.deal.Ranges {
		if old := &r.deal.Ranges[i]; old.Is(in) || old.Cancels(in) {
			what := in.Path
			if !old.Is(in) {
				what = "what the house sells for"
			}
			r.say("range-twice", name.at, "%s has a range already, in line %d", what, old.Pos.Line)("keep one of them")
			return
		}
	}
	out := Range{Input: in, Means: OneInTen, Spread: PERT, Pos: name.at}
	for key, to := range map[string]*string{"means": &out.Means, "spread": &out.Spread} {
		switch g := r.of(s, key); {
		case g == nil:
		case !g.ok:
			return
		default:
			*to = g.choice
		}
	}
	if out.Spread == NoSpread {
		if r.noneBeside(s, r.of(s, "spread"), "a spread of none", "keep one of them; with none it comes out as planned") {
			r.deal.Steady = append(r.deal.Steady, in)
		}
		return
	}
	if g := r.of(s, "cases"); g != nil {
		ok = g.ok && r.noneBeside(s, g, "cases", "keep the cases, or low and high") && r.cases(&out, g)
	} else {
		ok = r.ends(s, &out, name)
	}
	if ok {
		r.deal.Ranges = append(r.deal.Ranges, out)
	}
}

// cause is what a line of the deal itself stands for, where several do for the same.
func cause(line string) string {
	switch line {
	case "sale_price", "after_repair_value", "market_change":
		return "sale"
	case "marketing", "late_sale":
		return "marketing"
	}
	return ""
}

// SameCause reports whether two inputs are the same or stand for the same cause of trouble, such
// as what the house sells for. The value before work does where no after-repair value is stated.
func (d *Deal) SameCause(i, o Input) bool {
	return i.Is(o) || d.cause(i.Line) != "" && d.cause(i.Line) == d.cause(o.Line)
}

func (d *Deal) cause(line string) string {
	if line == "value_before_work" && !d.StatesValue() {
		line = "after_repair_value"
	}
	return cause(line)
}

// StatesValue reports whether the after-repair value is stated, for the scope that is taken, and
// does not follow from the value before work.
func (d *Deal) StatesValue() bool {
	_, stated := d.Root.Given.Look("after_repair_value")
	return stated
}

// NoValueCap says why nothing follows the lender's value.
const NoValueCap = "no loan has a cap on after-repair value"

const capByValue = "where a lender has one, write it under the loan, e.g.   cap on after-repair value: 70%%   ; else leave this out"

// CapsByValue reports whether a loan may be held down by the value that its lender counts.
func (d *Deal) CapsByValue() bool {
	return slices.ContainsFunc(d.Root.In("loan"), func(l *model.Member) bool { return l.Given.Of("value_cap").Number.IsPositive() })
}

// Cancels reports whether of two inputs one is the sale price and the other leads to it, so that
// it has no effect beside the first.
func (i Input) Cancels(o Input) bool {
	if o.Line == "sale_price" {
		i, o = o, i
	}
	return i.Line == "sale_price" && (cause(o.Line) == "sale" || o.Line == "expected_discount")
}

// noneBeside refuses low, high and the like beside what stands alone: cases, or a spread of
// none.
func (r *reader) noneBeside(s scope, alone *reading, what, remedy string) bool {
	for _, key := range []string{"low", "likely", "high", "means", "spread", "cases"} {
		if g := r.of(s, key); g != nil && g != alone {
			r.say("range-two-ways", g.key.at, "a range has both %s and %s", what, key)("%s", remedy)
			return false
		}
	}
	return true
}

// ends reads low, likely and high.
func (r *reader) ends(s scope, out *Range, name span) bool {
	low, likely, high := r.of(s, "low"), r.of(s, "likely"), r.of(s, "high")
	if low == nil || high == nil {
		r.say("range-incomplete", name.at, "the range of %s has no %s figure", out.Path, map[bool]string{true: "low", false: "high"}[low == nil])("write it like   %s: %s", name.text, out.example())
		return false
	}
	bell := out.Spread == Normal || out.Spread == LogNormal
	if likely != nil && (bell || out.Spread == Even) {
		r.say("likely-unused", likely.key.at, "a spread that is %s has no likely figure of its own", out.Spread)("leave likely out, or take another spread: PERT, triangular")
		return false
	}
	ok := low.ok && high.ok && r.comesOut(out, "low", low.node.span, &out.Low)
	ok = ok && r.comesOut(out, "high", high.node.span, &out.High)
	if likely != nil {
		ok = ok && likely.ok && r.comesOut(out, "likely", likely.node.span, &out.Likely)
	}
	switch {
	case !ok:
		return false
	case out.Low.GreaterThanOrEqual(out.High):
		r.say("range-order", high.at(), "the high figure of %s (%s) is not above the low one (%s)", out.Path, high.node.text, low.node.text)("write the low figure under low; for what comes out as planned write   %s: {spread: none}", name.text)
		return false
	case likely != nil && (out.Likely.LessThan(out.Low) || out.Likely.GreaterThan(out.High)):
		r.say("range-order", likely.at(), "the likely figure of %s (%s) is not between low (%s) and high (%s)", out.Path, likely.node.text, low.node.text, high.node.text)("write one between them")
		return false
	case bell && out.Means == VeryEnds:
		r.say("range-no-ends", r.of(s, "means").at(), "a %s spread has no ends", out.Spread)("write   means: %s   , or take another spread: PERT, triangular, even", OneInTen)
		return false
	case out.Spread == LogNormal && !out.Low.IsPositive():
		r.say("range-no-ends", low.at(), "the low figure of %s is %s, and a lognormal spread is above 0", out.Path, low.node.text)("write a low figure above 0, or take another spread: PERT, triangular")
		return false
	}
	return true
}

// example is a range of the kind of the input, for a hint.
func (out *Range) example() string {
	low, high := out.exampleEnds()
	return "{low: " + low + ", high: " + high + "}"
}

// exampleEnds are examples of a low and a high figure of the input.
func (out *Range) exampleEnds() (low, high string) {
	e := map[Kind][2]string{Percent: {"5%", "20%"}, Duration: {"3 weeks", "3 months"}, Hours: {"40", "90"}}[out.Kind]
	switch {
	case cause(out.Line) == "sale" && out.Kind == Money:
		e = [2]string{"$338k", "$372k"}
	case e[0] == "":
		e = [2]string{"$300", "$420"}
	}
	return e[0] + out.per, e[1] + out.per
}

// comesOut reads a figure of the range, which the input may come to beside the rest of the file.
func (r *reader) comesOut(out *Range, key string, text span, to *decimal.Decimal) bool {
	return r.figure(out, key, text, to) && r.mayBe(out.Input, *to, text)
}

// figure reads a value of the input as its own key would be read.
func (r *reader) figure(out *Range, key string, text span, to *decimal.Decimal) bool {
	title := cmp.Or(out.title, key+" of "+out.Path)
	if strings.HasPrefix(text.text, "+") {
		r.say("plus-sign", text.at, "%s is %s, whose sign says nothing here", title, diag.Quote(text.text))("write the figure as it then is, e.g. %s; what is added to the plan has its place under bad days", out.unsigned(text.text))
		return false
	}
	if out.reads != nil {
		f := *out.reads
		f.said, f.Doubt = title, ""
		v := model.Value{}
		g := &reading{field: &f, node: &node{shape: scalar, span: text}}
		ok := r.number(&f, g, &v)
		*to = v.Number
		if n := len(r.diags); !ok && out.Line == "overrun" && strings.Contains(text.text, "$") {
			r.diags[n-1].Hint = "overrun is a share of the bids, e.g. 20%; for a lump of dollars write   extra work: " + text.text
		}
		return ok
	}
	return r.chargeFigure(out, title, text, to)
}

// unsigned is a figure without its signs, or an example where it would be a share of dollars.
func (out *Range) unsigned(text string) string {
	if low, _ := out.exampleEnds(); out.Kind != Percent && out.per == "" && strings.HasSuffix(text, "%") {
		return low
	}
	return strings.TrimLeft(text, "+- ")
}

// cases reads values with their weights.
func (r *reader) cases(out *Range, g *reading) bool {
	if n := len(g.node.entries); n > mostCases {
		r.say("too-many", g.key.at, "%d cases, more than the %d that are read", n, mostCases)("join those that are alike")
		return false
	}
	for _, e := range g.node.entries {
		var c Case
		if !r.comesOut(out, "a case", e.key, &c.Value) {
			return false
		}
		if e.value.shape != scalar {
			r.say("bad-case-weight", e.key.at, "the case %s has no weight", diag.Quote(e.key.text))("write how often it comes, against the others: {%s: 3}", e.key.text)
			return false
		}
		var err error
		if c.Weight, err = quantity.ParseCount(e.value.text); err != nil || !c.Weight.IsPositive() {
			r.say("bad-case-weight", e.value.at, "the weight of %s is %s, not a number above 0", diag.Quote(e.key.text), diag.Quote(e.value.text))("write how often it comes, against the others: {%s: 3}", e.key.text)
			return false
		}
		out.Cases = append(out.Cases, c)
	}
	slices.SortStableFunc(out.Cases, func(a, b Case) int { return a.Value.Cmp(b.Value) })
	for i := range out.Cases[:max(0, len(out.Cases)-1)] {
		if out.Cases[i].Value.Equal(out.Cases[i+1].Value) {
			r.say("range-twice", g.key.at, "the case %s is given twice", out.Says(out.Cases[i].Value))("give each value once, with its whole weight")
			return false
		}
	}
	if len(out.Cases) < 2 {
		what := "a single case, which is no range"
		if len(out.Cases) == 0 {
			what = "no cases"
		}
		low, high := out.exampleEnds()
		r.say("range-incomplete", g.key.at, "%s has %s", out.Path, what)("give at least two, e.g. cases: {%s: 3, %s: 1}; for what comes out as planned write   spread: none", low, high)
		return false
	}
	return true
}

// rangesFit fills in what the plan has as likely where the file does not say, and refuses a
// range that it lies outside of.
func (r *reader) rangesFit() {
	var late lateTwice
	for _, x := range r.deal.Ranges {
		late.add(r, x.Input, x.Pos)
	}
	for i := range r.deal.Ranges {
		x := &r.deal.Ranges[i]
		if x.Line == "contingency_share" && !r.overrunHeld() {
			tell := r.say("range-idle", x.Pos, "the range of contingency changes nothing: the trials vary the overrun, which is what the work takes over the bids")
			if slices.ContainsFunc(r.deal.Ranges, func(o Range) bool { return o.Line == "overrun" }) {
				tell("leave it out, or in place of the range of overrun write   overrun: {spread: none}   so that the contingency is spent")
			} else {
				tell("write   overrun: {low: 0%%, high: 40%%}   instead, or beside it   overrun: {spread: none}   so that the contingency is spent")
			}
		}
		if x.Line == "lender_value" && !r.deal.CapsByValue() {
			r.say("range-idle", x.Pos, "the range of the lender's value changes nothing: "+NoValueCap)(capByValue)
		}
		plan, ok := r.worked(x.Member, x.Line)
		if !ok {
			continue
		}
		for _, v := range x.figures() {
			if r.doubtFarFromPlan(x.Input, plan, v, x.Pos, "in its range") {
				break
			}
		}
		if len(x.Cases) > 0 {
			continue
		}
		stated := r.likelySaid(x)
		if !stated {
			x.Likely = decimal.Max(x.Low, decimal.Min(plan, x.High))
		}
		if plan.LessThan(x.Low) || plan.GreaterThan(x.High) {
			taken := ""
			if !stated && (x.Spread == PERT || x.Spread == Triangular) {
				taken = ", of which " + x.Says(x.Likely) + " is taken as likely"
			}
			r.say("plan-outside", x.Pos, "%s is %s in the plan, outside of its range, %s to %s%s", x.Path, x.Says(plan), x.Says(x.Low), x.Says(x.High), taken)("check both; the odds follow the range, the bid follows the plan")
		}
	}
}

// figures are all that the file says of a range, the least first.
func (x *Range) figures() (all []decimal.Decimal) {
	for _, c := range x.Cases {
		all = append(all, c.Value)
	}
	if all == nil {
		all = []decimal.Decimal{x.Low, x.High}
	}
	return all
}

// How many times an amount may be the plan's, or the other way round, and a time the plan's,
// before a point or nought has probably slipped; common practice, no source.
var (
	farSale   = decimal.NewFromInt(2)
	farAmount = decimal.NewFromInt(5)
	farTime   = decimal.NewFromInt(10)
)

// doubtFarFromPlan doubts a figure that is far from the plan's; it reports whether it did.
func (r *reader) doubtFarFromPlan(in Input, plan, x decimal.Decimal, at diag.Pos, where string) bool {
	times, little := farAmount, x.IsPositive()
	switch {
	case !plan.IsPositive() || in.Kind != Money && in.Kind != HourRate && in.Kind != Duration && in.Kind != Hours:
		return false
	case in.Kind == Duration:
		times, little = farTime, false
	case cause(in.Line) == "sale":
		times = farSale
	}
	if x.LessThanOrEqual(plan.Mul(times)) && (!little || x.Mul(times).GreaterThanOrEqual(plan)) {
		return false
	}
	r.say("far-from-plan", at, "%s is %s %s, and the plan has %s", in.Path, in.Says(x), where, in.Says(plan))("check it, for a point or nought that has slipped; it is used as it stands")
	return true
}

// A lateTwice doubts the time on the market and a late sale side by side, which are added up.
type lateTwice string

func (l *lateTwice) add(r *reader, in Input, at diag.Pos) {
	if in.Member.Parent != nil || cause(in.Line) != "marketing" {
		return
	}
	if *l != "" {
		r.say("late-twice", at, "%s beside %s: both are months on the market, and they are added up", in.Path, string(*l))("keep one of them, if both stand for the same months")
	}
	*l = lateTwice(in.Path)
}

func (r *reader) likelySaid(x *Range) bool {
	for _, s := range r.items["<range>"] {
		if s.at == x.Pos {
			return r.of(s, "likely") != nil
		}
	}
	return false
}

// overrunHeld reports whether the overrun comes out as planned in every trial.
func (r *reader) overrunHeld() bool {
	return slices.ContainsFunc(r.deal.Steady, func(in Input) bool { return in.Line == "overrun" })
}
