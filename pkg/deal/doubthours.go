package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/quantity"
)

// fullWeek is how many own hours a week few can keep up; common practice, no source.
var fullWeek = decimal.NewFromInt(60)

// doubtOwnPace doubts a stated renovation that leaves no time for the owner's own hours.
func (r *reader) doubtOwnPace() {
	stated := r.good("time.renovation")
	hours, ok := r.worked(r.deal.Root, "own_hours")
	if stated == nil || !ok || !r.breaks(r.deal.crowdedWork(r.deal.Model.Find(r.deal.Root, "renovation"))) {
		return
	}
	most, said := fullWeek, "more than most can keep up"
	if g := r.good("labour.own hours a week"); g != nil {
		most, said = g.number, "and you have "+g.node.text
	}
	weeks := formula.Divide(stated.number, quantity.Week.Months())
	r.say("own-hours-crowded", stated.at(), "%s of your own work in %s are %s a week, %s", quantity.FormatHours(hours, 0), stated.node.text, quantity.FormatCount(hours.Div(weeks), 1), said)(
		"at %s a week they take %s weeks; give the renovation longer, or hire some of it", quantity.FormatCount(most, 1), quantity.FormatCount(hours.Div(most), 1))
}

// fewHoursAWeek are own hours a week that may be those of a day, where they let the work run on for more
// than longWork weeks; common practice, no source.
var fewHoursAWeek, longWork = decimal.NewFromInt(10), decimal.NewFromInt(52)

// doubtDayHours doubts own hours a week that may have been meant for a day: the work runs on for over
// a year. A stated renovation has a doubt of its own.
func (r *reader) doubtDayHours() {
	g := r.good("labour.own hours a week")
	weeks, known := r.worked(r.deal.Root, "own_weeks")
	hours, _ := r.worked(r.deal.Root, "own_hours")
	if g == nil || !g.number.LessThan(fewHoursAWeek) || r.good("time.renovation") != nil || !known || !weeks.GreaterThan(longWork) {
		return
	}
	r.say("own-hours-few", g.at(), "own hours a week is %s, and at that your own work, %s, takes %s weeks, over a year", diag.Quote(g.node.text), quantity.FormatHours(hours, 0), quantity.FormatCount(weeks, 0))(
		"are these the hours of a day? write those of a week; else hire some of the work: it is used as it stands")
}

// paceHint says what an own pace is, and, of one that may be a share of a trade's pace, how that
// is written.
func paceHint(pace decimal.Decimal) string {
	hint := "it is the hours that you take for one of a trained hand"
	if pace.LessThan(one) {
		hint += fmt.Sprintf(": %s is faster than a trade; write   own pace: %s   if you are at %s of a trade's pace", pace, formula.Divide(one, pace).Round(2), quantity.FormatPercent(pace, 1))
	} else {
		hint += fmt.Sprintf(": you would take %s times as long", pace)
	}
	return hint + "; it is used as it stands"
}
