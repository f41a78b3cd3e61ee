package deal

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// feeTime checks charges by time and those paid ahead.
func (r *reader) feeTime(s scope, e *entry) {
	given := s.member.Given
	rate, timed := byTimeOf(s.member)
	if timed && !s.place.timed {
		r.say("charge-by-time-here", rate.Pos, "%s is %s, but %s falls on one day", diag.Quote(e.key.text), diag.Quote(rate.Text), s.place.words)(
			"write one amount, or put it under holding; there it can say   during: marketing")
		return
	}
	if _, said := given.Look("during"); timed && !said && s.place.during != "" {
		s.member.Give("during", model.Value{Choice: s.place.during, Text: s.place.during, Pos: rate.Pos})
	}
	ahead, paidAhead := given.Look("paid_ahead")
	if !paidAhead {
		if kept, ok := given.Look("kept_least"); ok {
			r.say("kept-without-ahead", kept.Pos, "%s keeps a part of a premium that is not paid ahead", diag.Quote(e.key.text))("add   premium paid ahead: 12 months")
		}
		return
	}
	if amount := r.got[s.path+"amount"]; amount != nil && !amount.ok { // told already
		return
	}
	if !timed {
		r.say("paid-ahead-once", ahead.Pos, "%s is paid ahead but has no amount a month, quarter or year", diag.Quote(e.key.text))("write the amount like   amount: $1,900/year")
		return
	}
	for _, line := range []string{"least", "most", "credit", "during"} {
		if v, ok := s.member.Given.Look(line); ok {
			r.say("paid-ahead-with", v.Pos, "%s is paid ahead and also has %s", diag.Quote(e.key.text), words(line, v))("leave it out, or make two charges of it")
		}
	}
	r.aheadTwice(s, e)
	if r.got[s.path+"paid ahead"] != nil { // a bill, not a premium: nothing is kept of it
		if kept, ok := given.Look("kept_least"); ok {
			r.say("kept-of-a-bill", kept.Pos, "%s is a bill paid ahead, of which no insurer keeps anything", diag.Quote(e.key.text))("write   premium paid ahead   if it is insurance")
		}
		s.member.Give("kept_least", model.Value{Text: ahead.Text, Key: "paid ahead", Pos: ahead.Pos})
	}
}

func (r *reader) aheadTwice(s scope, e *entry) {
	bill, premium := r.got[s.path+"paid ahead"], r.got[s.path+"premium paid ahead"]
	if bill != nil && premium != nil {
		r.say("rates-two-ways", premium.key.at, "%s is paid ahead both as a bill and as a premium", diag.Quote(e.key.text))("keep   premium paid ahead   for insurance and   paid ahead   for other bills")
	}
}

func words(line string, v model.Value) string {
	return map[string]string{"least": "a least amount", "most": "a greatest amount", "credit": "a credit", "during": "a phase"}[line] + " (" + v.Text + ")"
}

// byTimeOf returns the amount by time of a charge, if it has one.
func byTimeOf(m *model.Member) (model.Value, bool) {
	for _, line := range []string{"a_month", "a_quarter", "a_year"} {
		if v, ok := m.Given.Look(line); ok {
			return v, true
		}
	}
	return model.Value{}, false
}

// feeEnds checks the least and the greatest amount.
func (r *reader) feeEnds(s scope) {
	least, a := s.member.Given.Look("least")
	most, b := s.member.Given.Look("most")
	if a && b && least.Number.GreaterThan(most.Number) {
		r.say("least-above-most", least.Pos, "at least %s is more than at most %s", least.Text, most.Text)("swap them, or leave one out")
	}
}

// daysIn counts the days from the purchase to a date in force.
func (r *reader) daysIn(g *reading) decimal.Decimal {
	bought := r.good("purchase.date")
	if bought == nil {
		r.say("dates-without-purchase", g.node.at, "the rates have a date, but the day of the purchase is not known")("add   date: 2026-03-02   under purchase")
		g.ok = false
		return decimal.Zero
	}
	return decimal.NewFromInt(int64(days(bought.date, g.date)))
}
