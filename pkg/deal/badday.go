package deal

import (
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A BadDay is what may go wrong together, as the file says it.
type BadDay struct {
	Name    string
	Changes []Changed
	Remedy  string // what helps, or ""
	Pos     diag.Pos
}

// A Changed is what an input comes to on a bad day.
type Changed struct {
	Input
	Value decimal.Decimal // instead of the plan's
	Text  string          // as the file has it
	how   how
	at    diag.Pos
}

// Said is the figure as the file has it, of dollars with their sign.
func (c Changed) Said() string {
	figure := strings.TrimLeft(c.Text, "+-")
	if !c.inDollars() || strings.HasSuffix(figure, "%") || figure == "" || !strings.Contains("0123456789.", figure[:1]) {
		return c.Text
	}
	return strings.TrimSuffix(c.Text, figure) + "$" + figure
}

// A how is what the file's figure means.
type how int

const (
	comesTo  how = iota
	isAdded      // to the plan's
	isScaled     // a share of the plan's is added
)

var onBadDays = use{code: "bad-day-not-here", cannot: "change on a bad day", hint: "change what may go wrong, such as overrun, late sale, sale price or loans.1.rate"}

// badDays reads the bad days once all that they can name is read.
func (r *reader) badDays() {
	g := r.good("bad days")
	if g == nil {
		return
	}
	for _, e := range g.node.entries {
		if e.value.shape == list || e.value.shape == scalar && e.value.text != "" {
			r.say("want-group", e.key.at, "the bad day %s is %s, not a group of changes", diag.Quote(e.key.text), e.value.shape.words())("write it like   %s: {late sale: +2 months, sale price: -5%%}", e.key.text)
			continue
		}
		d := BadDay{Name: e.key.text, Pos: e.key.at}
		tried := false
		for _, c := range e.value.entries {
			if c.name == "remedy" {
				d.Remedy = r.remedy(c)
				continue
			}
			tried = true
			if x, ok := r.changed(d, c); ok {
				d.Changes = append(d.Changes, x)
			}
		}
		if !tried {
			r.say("bad-day-empty", e.key.at, "the bad day %s changes nothing", diag.Quote(e.key.text))("write it like   %s: {late sale: +2 months, sale price: -5%%}", e.key.text)
		}
		r.deal.BadDays = append(r.deal.BadDays, d)
	}
}

// remedy reads what helps: words, or a list of them.
func (r *reader) remedy(e entry) string {
	items, words := []*node{e.value}, []string{}
	if e.value.shape == list {
		items = e.value.items
	}
	for _, n := range items {
		if n.shape != scalar && n.shape != nothing {
			r.say("want-value", e.key.at, "remedy is %s, not words", n.shape.words())("write it like   remedy: apply before the closing   or as a list,   remedy: [call the bank, sell the car]   ; put words with a colon in quotes")
			return ""
		}
		if text := strings.TrimSpace(n.text); text != "" {
			words = append(words, text)
		}
	}
	return strings.Join(words, "; ")
}

// changed reads one change of a bad day.
func (r *reader) changed(d BadDay, e entry) (Changed, bool) {
	in, ok := r.inputFor(e.key, onBadDays)
	if !ok {
		return Changed{}, false
	}
	for _, c := range d.Changes {
		if c.Is(in) || c.Cancels(in) {
			what := in.Path + " twice"
			if !c.Is(in) {
				what = "what the house sells for twice, by " + c.Path + " and by " + in.Path
			}
			r.say("bad-day-twice", e.key.at, "%s changes %s", diag.Quote(d.Name), what)("keep one of the two")
			return Changed{}, false
		}
	}
	if e.value.shape != scalar {
		r.say("want-value", e.key.at, "%s is %s, not a value", diag.Quote(e.key.text), e.value.shape.words())("write the figure it then has, or with a sign what is added to the plan, e.g. +2 months or -5%%")
		return Changed{}, false
	}
	text := typedMinus(e.value.span)
	c := Changed{Input: in, Text: text.text, at: text.at}
	if in.Line == extraWork && strings.HasSuffix(text.text, "%") {
		return c, r.extraIsDollars(in, text)
	}
	if signed := signedByWord(text.text); signed != "" {
		r.say("bad-day-sign", text.at, "%s is %s, which says in a word what a sign says", in.Path, diag.Quote(text.text))("write   %s: %s", e.key.text, signed)
		return Changed{}, false
	}
	sign := decimal.NewFromInt(1)
	if strings.HasPrefix(text.text, "+") || strings.HasPrefix(text.text, "-") {
		c.how = isAdded
		if text.text[0] == '-' {
			sign = sign.Neg()
		}
		text = text.cut(1, len(text.text))
		if strings.ContainsAny(text.text, "+-") {
			r.say("bad-day-sign", c.at, "%s is %s, which has two signs", in.Path, diag.Quote(c.Text))("write one:   -%[1]s   for less than planned,   +%[1]s   for more", strings.NewReplacer("+", "", "-", "").Replace(text.text))
			return Changed{}, false
		}
		if in.Kind != Percent && strings.HasSuffix(text.text, "%") {
			c.how = isScaled
			in = Input{Path: in.Path, Line: in.Line, Kind: Percent, reads: &Field{Path: in.Path, Kind: Percent, Example: "5%"}}
		}
		if in.reads != nil { // how much is added may be less than what the input may be
			f := *in.reads
			f.Range, f.Doubt = "", ""
			if in.Kind == Percent { // what it comes to is looked at once that is known
				f.Range = "at least 0%, at most 1000%"
			}
			in.reads = &f
		}
	} else if in.Kind != Percent && in.per == "" && strings.HasSuffix(text.text, "%") {
		r.say("bad-day-sign", text.at, "%s is %s, which does not say of what", in.Path, diag.Quote(text.text))("write   -%[1]s   for %[1]s less than planned,   +%[1]s   for more, or the figure that it then has", text.text)
		return Changed{}, false
	}
	out := Range{Input: in, title: in.Path + " on the bad day " + diag.Quote(d.Name), sign: strings.TrimSuffix(c.Text, text.text)}
	if c.how == isAdded && r.pointsBare(out, c, text.text) {
		return Changed{}, false
	}
	if !r.figure(&out, d.Name, text, &c.Value) {
		return Changed{}, false
	}
	if in.Kind == Money && c.Value.IsPositive() && c.Value.LessThan(smallDollars) && strings.Trim(text.text, "0123456789.") == "" {
		signed, meant := strings.TrimSuffix(c.Text, text.text), ""
		if meant = signed + "$" + text.text + "k"; c.how == isAdded && in.Line != extraWork {
			meant = signed + text.text + "%   or   " + meant
		}
		r.say("amount-small", c.at, "%s is %s, which is %s", out.title, diag.Quote(c.Text), c.Said())("did you mean   %s   ? write   %s   if dollars are meant; it is used as it stands", meant, c.Said())
	}
	c.Value = c.Value.Mul(sign)
	return c, true
}

// typedMinus is the text with a minus that it begins with as the keyboard has it.
func typedMinus(s span) span {
	for _, minus := range []string{"−", "–"} {
		if after, ok := strings.CutPrefix(s.text, minus); ok {
			s.text = "-" + after
		}
	}
	return s
}

// signWords are words behind a figure that stand for its sign.
var signWords = map[string][]string{
	"+": {" more", " higher", " longer", " later", " extra", " dearer"},
	"-": {" less", " lower", " shorter", " fewer", " earlier", " cheaper"},
}

// signedByWord is the figure with the sign that a word behind it stands for, or "".
func signedByWord(text string) string {
	text = strings.TrimSuffix(text, " than planned")
	for sign, words := range signWords {
		for _, w := range words {
			if figure, ok := strings.CutSuffix(text, w); ok {
				return sign + strings.TrimLeft(figure, "+- ")
			}
		}
	}
	return ""
}

// pointsBare refuses points that are added without a percent sign, by their sign, for without it
// they are what the share itself comes to.
func (r *reader) pointsBare(out Range, c Changed, text string) bool {
	x, err := quantity.ParsePercent(text + "%")
	if _, whole := quantity.ParsePercent(text); out.Kind != Percent || out.reads == nil || err != nil || whole == nil {
		return false
	}
	points := quantity.FormatPercent(x, 6)
	does := "adds " + points + " to"
	if strings.HasPrefix(c.Text, "-") {
		does = "takes " + points + " off"
	}
	r.say("bad-percent", c.at, "%s is %s, which has no percent sign", out.title, diag.Quote(c.Text))("write   %s%%   , which %s the plan's%s", c.Text, does, orOfOne(c.Text[:1], x))
	return true
}

// orOfOne is the other figure that a bare share of at most 1 may be meant for: 20% by 0.2.
func orOfOne(sign string, share decimal.Decimal) string {
	if whole := share.Shift(2); whole.LessThan(one) {
		return "   , or   " + sign + quantity.FormatPercent(whole, 6) + "   , if that is meant"
	}
	return ""
}

// extraWork is the line of a lump of cost beyond the bids and the overrun.
const extraWork = "extra_work"

// extraIsDollars refuses a share of extra work, of which the plan has none.
func (r *reader) extraIsDollars(in Input, text span) bool {
	share := strings.TrimLeft(text.text, "+-")
	r.say("bad-day-sign", text.at, "%s is %s, and the plan has no extra work of which that could be a share", in.Path, diag.Quote(text.text))("write dollars, e.g.   extra work: $8,000   or, for a share of the bids,   overrun: +%s", share)
	return false
}

// badDaysFit works out what each change comes to, and refuses what cannot be.
func (r *reader) badDaysFit() {
	for _, d := range r.deal.BadDays {
		fine, all, later := true, []Tried(nil), decimal.Zero
		var late lateTwice
		for i := range d.Changes {
			c := &d.Changes[i]
			late.add(r, c.Input, c.at)
			if c.Line == "lender_value" && !r.deal.CapsByValue() {
				r.say("bad-day-idle", c.at, "the lender's value on %s changes nothing: "+NoValueCap, diag.Quote(d.Name))(capByValue)
			}
			plan, ok := r.worked(c.Member, c.Line)
			switch {
			case !ok && c.how != comesTo:
				r.say("bad-day-not-here", c.at, "%s has no figure in the plan that could be added to", c.Path)("write the figure that it then has")
				fine = false
				continue
			case c.how == isAdded && plan.IsZero() && c.NoneAtZero():
				r.say("bad-day-sign", c.at, "%s changes %s by %s, and the plan has none", diag.Quote(d.Name), c.Path, diag.Quote(c.Text))("write what it then is, without a sign, or write one into the plan")
				fine = false
				continue
			case c.how == isScaled && plan.IsZero():
				r.say("bad-day-empty", c.at, "%s of %s changes nothing, for the plan has none", diag.Quote(c.Text), c.Path)("write how much it then is")
				fine = false
				continue
			case c.how == isAdded:
				c.Value = plan.Add(c.Value)
			case c.how == isScaled:
				c.Value = plan.Add(plan.Mul(c.Value))
				if c.Kind == Money {
					c.Value = c.Value.Round(2)
				}
			}
			least, most := c.Limits()
			if c.Value.LessThan(*least) || most != nil && c.Value.GreaterThan(*most) {
				r.say("bad-day-beyond", c.at, "%s brings %s from %s to %s, which cannot be", diag.Quote(c.Text), c.Path, c.Says(plan), c.Says(c.Value))("change it by less")
				fine = false
				continue
			}
			if c.how == comesTo {
				r.doubtFarFromPlan(c.Input, plan, c.Value, c.at, "on "+diag.Quote(d.Name))
			}
			text := span{text: c.Text, at: c.at}
			if c.how != comesTo {
				text.text = c.Says(c.Value)
			}
			fine = r.mayBe(c.Input, c.Value, text) && fine
			all = append(all, Tried{c.Input, c.Value, text})
			if strings.HasPrefix(c.Path, "time.") || c.Line == "late_sale" {
				later = later.Add(c.Value.Sub(plan))
			}
		}
		if clash := r.clashOf(all); fine && clash != nil {
			r.say(clash.Code, d.Pos, "%s cannot be: %s", diag.Quote(d.Name), clash.Message)("change one of them by less; %s", clash.Hint)
		}
		planned, known := r.hold()
		switch hold := planned.Add(later); {
		case !fine || !known || planned.IsZero():
		case !hold.IsPositive():
			r.say("missing-hold", d.Pos, "%s cannot be: the deal takes no time", diag.Quote(d.Name))("leave some of its phases, from the closing of the purchase to that of the sale")
		case hold.GreaterThan(longest):
			r.say("hold-too-long", d.Pos, "%s cannot be: the phases are %s years together", diag.Quote(d.Name), hold.DivRound(decimal.NewFromInt(12), 1))("change one of them by less; at most 10 years are reckoned")
		}
	}
}
