package deal

import (
	"strings"
	"unicode"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// measureOf says how much of a piece of work there is: a count of the file, or a
// measure of the room.
func (r *reader) measureOf(p *plan, w *work) {
	if _, known := w.member.Given.Look("measure"); known {
		return
	}
	if g := r.good(w.scope.path + "count"); w.scope.path != "" && g != nil {
		x, ok := r.countOf(w, g)
		if !ok {
			x = one // refused; one stands in, so that it is refused once
		}
		w.member.Give("measure", model.Value{Number: x, Text: g.node.text, Key: "count", Pos: g.at()})
		if m := pricebook.MeasureNamed(w.item.Measure); ok && p.measures(*m) && m.Line != "" {
			w.member.Give("measured", model.Value{Refers: m.Line, Text: m.Name, Pos: w.item.Pos})
		}
		return
	}
	m := pricebook.MeasureNamed(w.item.Measure)
	if !p.measures(*m) {
		if w.by != "" { // what comes along and has nothing to be done to
			w.member.Give("measure", model.Value{Text: "none here", Pos: w.at})
			return
		}
		r.say("measure-not-here", w.at, "%s is measured by %s, which only %s has", w.label, m.Name, onlyIn(*m))("say how much, e.g.   %s%s", w.counted(), elsewhere(m))
		w.member.Give("measure", model.Value{Number: one, Pos: w.at})
		return
	}
	w.member.Give("measure", model.Value{Refers: m.Line, Text: m.Name, Pos: w.item.Pos})
}

// measures reports whether there is such a measure where the plan is.
func (p *plan) measures(m pricebook.Measure) bool {
	return m.Of == "" || m.Of == "house" || m.Of == p.room.Kind
}

// onlyIn is where alone there is a measure.
func onlyIn(m pricebook.Measure) string {
	return map[string]string{"inside": "a room", "outside": "the outside"}[m.Of]
}

// shareOf gives work that is done to a part only, by the age of the house, that part;
// a count or a part of the file stands instead.
func (r *reader) shareOf(w *work) {
	share, byAge := w.item.Share(r.deal.YearBuilt)
	_, said := w.member.Given.Look("part")
	counted := w.scope.path != "" && w.member.Given.Of("measure").Refers == ""
	if byAge && !said && !counted {
		w.member.Give("part", model.Value{Number: share, Text: "by the year built, common practice, no source", Pos: w.item.Pos})
	}
}

// countOf reads how much work there is, in the unit of the item.
func (r *reader) countOf(w *work, g *reading) (decimal.Decimal, bool) {
	unit := w.item.Unit
	read := map[quantity.Unit]Kind{"sq ft": Area, "ft": Length}[unit]
	text := g.node.text
	if read == "" {
		number, word := beforeWords(text)
		switch _, err := quantity.ParseCount(number); {
		case err == nil && w.countedBy(word):
			text = number
		case err == nil && word != "":
			r.say("bad-count", g.at(), "%s: %s is not in %s, by which it is counted", w.label, diag.Quote(text), w.countWord())("say how many, e.g.   count: 3 %s   or the number alone", w.countWord())
			return one, false
		}
	}
	if x, err := quantity.ParseCount(text); err == nil {
		switch {
		case x.IsPositive() && read != "":
			r.say("bad-count", g.at(), "%s: %s has no unit", w.label, g.node.text)("%s is measured in %s: write   count: %s %s", w.item.Name, unit, g.node.text, unit)
			return x, false
		case x.IsPositive():
			return x, true
		}
		r.say("count-zero", g.at(), "%s: a count of %s is no work", w.label, g.node.text)("leave the work out if there is none")
		return x, false
	}
	x, err := number(read, g.node.text)
	if err != nil {
		r.unread("count", g.node.span, "bad-count", err, g.field.example())
	}
	return x, err == nil
}

// beforeWords parts a text where its words begin: 3 and months.
func beforeWords(text string) (number, words string) {
	i := strings.IndexFunc(text, unicode.IsLetter)
	if i < 0 {
		return text, ""
	}
	return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i:])
}

// countWord is what a piece of work is counted by that has neither area nor length: months
// of a rent, doors, or else pieces.
func (w *work) countWord() string {
	switch {
	case w.item.Unit == "month":
		return "months"
	case w.item.Measure == "one":
		return "pieces"
	}
	return strings.TrimPrefix(w.item.Measure, "house ")
}

// countedBy reports whether a word behind a count is the work's own: month, door, each.
func (w *work) countedBy(word string) bool {
	own, word := w.countWord(), plainKey(word)
	return word == own || word == string(w.item.Unit) || word+"s" == own || strings.TrimSuffix(word, "y")+"ies" == own
}

// hoursOf reads hours of the file: for all of the work, or for each unit.
func (r *reader) hoursOf(w *work) {
	if w.scope.path == "" {
		return
	}
	give := func(line string, x decimal.Decimal, g *reading) {
		w.member.Give(line, model.Value{Number: x, Text: g.node.text, Key: g.field.Key(), Pos: g.at()})
	}
	if g := r.good(w.scope.path + "hours"); g != nil {
		if x, err := quantity.ParseHours(g.node.text); err == nil {
			give("set_up", x, g)
			give("hours_each", decimal.Decimal{}, g)
		} else if x, ok := r.perUnit(w, g, false); ok {
			give("hours_each", x, g)
		}
	}
	if g := r.good(w.scope.path + "hired"); g != nil {
		if x, ok := r.perUnit(w, g, true); ok {
			give("hired_price", x, g)
			give("own_labour_price", one, g)
		}
	}
}

func (r *reader) perUnit(w *work, g *reading, money bool) (decimal.Decimal, bool) {
	x, err := quantity.ParsePer(pricebook.EachCoat(g.node.text))
	if days, bad := quantity.ParseDays(g.node.text); err != nil && bad == nil && !money {
		r.say("bad-rate", g.at(), "%s: %s is no number of hours", w.label, g.node.text)("write the hours, at %s a day   hours: %s", dayHours, days.Mul(dayHours))
		return decimal.Zero, false
	}
	if err != nil {
		r.unread(g.field.title(), g.node.span, "bad-rate", err, g.field.example())
		return decimal.Zero, false
	}
	if meant, plain := x.InDollars(w.item.Unit); money && plain {
		r.say("rate-unit", g.at(), "%s: %s has no dollar sign", w.label, g.node.text)("write it like   %s: %s", g.field.Key(), meant)
		return decimal.Zero, false
	}
	if x.Money != money || x.Bottom != w.item.Unit {
		r.say("rate-unit", g.at(), "%s: %s is not for each %s, by which it is measured (%s)", w.label, g.node.text, w.item.Unit.One(), w.item.Measure)("%s", otherRate(w, x, g.field.Key(), money))
		return decimal.Zero, false
	}
	return x.Number, true
}

func perExample(money bool, unit quantity.Unit) string {
	n := "0.12"
	if money {
		n = "$9.50"
	}
	if unit == "each" {
		return n + " each"
	}
	return n + " per " + string(unit)
}
