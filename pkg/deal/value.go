package deal

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// value reads a key that takes a single value and feeds its line.
func (r *reader) value(s scope, f *Field, g *reading) {
	v := model.Value{Text: g.node.text, Pos: g.node.at}
	switch f.Kind {
	case Text, Quantity, HoursOfWork, UnitPrice:
		g.choice, g.ok = strings.Join(strings.Fields(g.node.text), " "), true
		return
	case Pasted:
		g.ok = r.pastedAsItStands(g)
		return
	case Record:
		r.record(s, f, g)
		return
	case Charge:
		r.chargeField(s, f, g)
		return
	case BaseLine:
		r.baseField(s, f, g)
		return
	case TotalRange:
		r.totalRange(s, f, g)
		return
	case ShareOrMoney:
		r.shareOrMoney(s, f, g)
		return
	case Date, DayInForce:
		if !r.date(s, g) || f.Kind == Date {
			return
		}
		if v.Number = r.daysIn(g); !g.ok {
			return
		}
	case YesNo:
		yes, err := quantity.ParseYesNo(g.node.text)
		if r.refused(f, g.node.span, "bad-yes-no", err) {
			return
		}
		v.Number = flag(yes)
	case Choice:
		if !r.choice(s, f, g, &v) {
			return
		}
	default:
		if f.Path == "<work>.price" {
			f = r.priceOfPack(s, f)
		}
		if !r.number(f, g, &v) {
			return
		}
	}
	g.number, g.ok = v.Number, true
	v.Key = f.Key()
	for _, line := range f.feeds() {
		s.member.Give(line, v)
	}
}

func flag(yes bool) decimal.Decimal {
	if yes {
		return decimal.NewFromInt(1)
	}
	return decimal.Zero
}

// numberCodes are the codes of texts that are not what a kind takes.
var numberCodes = map[Kind]string{
	Money: "bad-money", Percent: "bad-percent", ShareOrMoney: "bad-percent", Duration: "bad-duration", WholeMonths: "bad-duration",
	WholeNumber: "bad-number", Pace: "bad-number", Hours: "bad-hours", HourRate: "bad-hour-rate",
	Length: "bad-length", Area: "bad-area", Volume: "bad-volume", Weight: "bad-weight", Pitch: "bad-pitch", Days: "bad-days",
}

func (r *reader) number(f *Field, g *reading, v *model.Value) (ok bool) {
	var err error
	v.Number, err = number(f.Kind, g.node.text)
	if r.refused(f, g.node.span, numberCodes[f.Kind], err) {
		return false
	}
	switch whole := v.Number.IsInteger(); {
	case f.Kind == WholeNumber && !whole:
		r.say("not-whole", g.node.at, "%s is %s, not a whole number", f.title(), g.node.text)("write %s", cmp.Or(f.want, "it like   "+f.example()))
		return false
	case f.Kind == WholeMonths && !whole:
		r.say("not-whole-months", g.node.at, "%s is %s, which is not a whole number of months", f.title(), diag.Quote(g.node.text))("write whole months, e.g. %s", f.example())
		return false
	}
	return r.inRange(f, g.node.span, v.Number)
}

// inRange refuses what is outside the field's range and doubts what is unusual.
func (r *reader) inRange(f *Field, s span, x decimal.Decimal) bool {
	return r.within(f.Kind, f.title(), f.accepts(), f.example(), s, x) && r.usual(f, s, x)
}

// within refuses a number outside a range.
func (r *reader) within(k Kind, name, accepts, example string, s span, x decimal.Decimal) bool {
	for _, l := range limits(k, accepts) {
		if l.holds(x) {
			continue
		}
		if better := inThousands(k, s, x, limits(k, accepts)); l.least && better != "" {
			if r.cutOff(s) {
				return false // the rest is spoken of, as a key that there is not
			}
			r.say("too-small", s.at, "%s is %s, which is less than can be right", name, diag.Quote(s.text))("did you mean %s? k is a thousand; accepted is %s", better, accepts)
			return false
		}
		code, how := "too-large", "more than can be right"
		switch {
		case l.least && x.IsNegative() && !l.edge.IsNegative():
			code, how = "below-zero", "below zero"
		case l.least && x.IsZero():
			code, how = "zero", "nothing"
		case l.least:
			code, how = "too-small", "less than can be right"
		}
		r.say(code, s.at, "%s is %s, which is %s", name, diag.Quote(s.text), how)("accepted is %s; e.g. %s", accepts, example)
		return false
	}
	return true
}

// refused reports what package quantity refused.
func (r *reader) refused(f *Field, s span, code string, err error) bool {
	if err == nil {
		return false
	}
	var q *quantity.Error
	if errors.As(err, &q) && f.Kind == WholeNumber {
		err = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: "a whole number, e.g. " + f.Example}
	}
	if errors.As(err, &q) && f.Kind == WholeMonths {
		err = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: "whole months, e.g. " + f.Example}
	}
	if errors.As(err, &q) && f.Kind == YesNo && f.Example == "on" {
		err = &quantity.Error{Found: q.Found, Why: strings.ReplaceAll(q.Why, "neither yes nor no", "neither on nor off"), At: q.At, Want: "on or off"}
	}
	if errors.As(err, &q) && f.Kind == Money && strings.HasPrefix(f.Path, "comps.amounts.") { // often with the unit behind it
		err = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: "the dollars for one alone, e.g. " + f.example()}
	}
	if errors.As(err, &q) && f.Kind == Duration && strings.EqualFold(s.text, "none") { // as pages print it
		err = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: "0 for no time"}
	}
	if errors.As(err, &q) && f.want != "" {
		err = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: f.want}
	}
	if want := otherForm(f, s.text); errors.As(err, &q) && want != "" {
		err = &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: want}
	}
	r.unread(f.title(), s, code, err, f.example())
	return true
}

// otherPercent says how a share is written that was put in another of the trade's ways, as
// dollars of points or interest by the month, or "".
func otherPercent(f *Field, text string) string {
	if f.Kind != Percent {
		return ""
	}
	if dollars, err := quantity.ParseMoney(text); err == nil && f.Line == "points_share" && strings.Contains(text, "$") {
		return fmt.Sprintf("points as a share of the loan, e.g. %s; dollars go under its fees:   fees: {points: %s}", f.Example, quantity.FormatDollars(dollars))
	}
	if m := shareByTime().FindStringSubmatchIndex(text); m != nil && f.Line == "rate" {
		share, err := quantity.ParsePercent(text[:m[0]+1])
		by, known := map[string]int64{"m": 12, "q": 4, "y": 1}[strings.ToLower(text[m[4]:m[4]+1])]
		if err == nil && known {
			return "the rate of a year alone: " + quantity.FormatPercent(share.Mul(decimal.NewFromInt(by)), 6)
		}
	}
	if x, err := quantity.ParseCount(text); err == nil && strings.HasSuffix(f.Key(), "factor") && x.LessThan(five) { // a factor as one multiplies by it
		return "a percent sign: " + quantity.FormatPercent(x, 6)
	}
	return ""
}

// five is as often as a factor multiplies at most.
var five = decimal.NewFromInt(5)

// unread points at the part of a text that could not be read.
func (r *reader) unread(name string, s span, code string, err error, example string) {
	var q *quantity.Error
	if !errors.As(err, &q) {
		r.say(code, s.at, "%s: %v", name, err)("write it like   %s", example)
		return
	}
	at := s.at
	if i := strings.Index(s.text, q.Found); s.exact && q.Found != "" && i >= 0 {
		if j := q.At; j >= 0 && j+len(q.Found) <= len(s.text) && s.text[j:j+len(q.Found)] == q.Found {
			i = j
		}
		at = s.point(i, q.Found)
	}
	says := name + ": " + q.Why
	if !strings.Contains(q.Why, s.text) && s.text != "" {
		says = fmt.Sprintf("%s is %s: %s", name, diag.Quote(s.text), q.Why)
	}
	tell := r.say(code, at, "%s", says)
	if InSet(at) && strings.HasPrefix(q.Found, "0") && strings.Contains(q.Why, "begins with a 0") {
		tell("put the whole in single quotes, e.g. --set 'price=$205k'; otherwise the shell takes $2 for a name of its own and leaves 05k")
		return
	}
	tell("write %s", q.Want)
}

func (r *reader) date(s scope, g *reading) bool {
	d, err := quantity.ParseDate(g.node.text)
	if err != nil && r.odd[s.path] && r.yearCutOff(g.node.span) {
		return false // the year is spoken of, as a key that there is not
	}
	if r.refused(g.field, g.node.span, "bad-date", err) {
		return false
	}
	g.date, g.ok = d, true
	return true
}

// choice reads one of the words of a field. Where the line is a yes or no, the
// second word is the yes.
func (r *reader) choice(s scope, f *Field, g *reading, v *model.Value) bool {
	word := strings.ReplaceAll(strings.ToLower(g.node.text), " / ", "/")
	i := slices.IndexFunc(f.Choices, func(c string) bool { return plainKey(c) == plainKey(word) })
	if i < 0 {
		code, hint := "bad-choice", "write one of: "+strings.Join(f.Choices, ", ")
		if f.Key() == "during" {
			code = "unknown-phase"
			if phases := phasesIn(f, g.node.text); len(phases) > 1 {
				r.say(code, g.node.at, "during is %s, and a charge runs in one phase, or in the whole hold", diag.Quote(g.node.text))("%s", chargeEach(phases))
				return false
			}
		}
		if near, ok := diag.Nearest(word, f.Choices); ok {
			hint = fmt.Sprintf("did you mean %q? the words are: %s", near, strings.Join(f.Choices, ", "))
		}
		if f.Key() == "by" {
			hint = doerHint(f, g.node.text, hint)
		}
		if f.Path == "<check>.state" {
			hint += "; good too of what someone looked for and is not there"
		}
		if _, err := quantity.ParseMoney(g.node.text); err == nil && f.Path == "<check>.state" {
			hint = fmt.Sprintf("an estimate of your own goes under likely: {likely: %s}; a quote, behind the work that mends it, in the work of the whole house", g.node.text)
		}
		if f.Kind == Spending {
			hint += "; or the amounts of the months: [$10k, $20k, $5k]"
		}
		r.say(code, g.node.at, "%s is %s, which is not one of its words", f.title(), diag.Quote(g.node.text))("%s", hint)
		return false
	}
	g.choice = f.Choices[i]
	v.Choice = g.choice
	if f.Line == "actual_360" {
		v.Choice, v.Number = "", decimal.NewFromInt(int64(i))
	}
	return true
}
