package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/quantity"
)

// fullWeek is how many own hours a week few can keep up; common practice, no source.
var fullWeek = decimal.NewFromInt(60)

// doubtOwnPace doubts a stated renovation that leaves no time for the owner's own hours.
func (r *reader) doubtOwnPace() {
	stated := r.good("time.renovation")
	hours, ok := r.worked(r.deal.Root, "own_hours")
	if stated == nil || !ok || !stated.number.IsPositive() {
		return
	}
	most, said := fullWeek, "more than most can keep up"
	if g := r.good("labour.own hours a week"); g != nil {
		most, said = g.number, "and you have "+g.node.text
	}
	weeks := formula.Divide(stated.number, quantity.Week.Months())
	if !hours.GreaterThan(most.Mul(weeks)) {
		return
	}
	r.say("own-hours-crowded", stated.at(), "%s of your own work in %s are %s a week, %s", quantity.FormatHours(hours, 0), stated.node.text, quantity.FormatCount(hours.Div(weeks), 1), said)(
		"at %s a week they take %s weeks; give the renovation longer, or hire some of it", quantity.FormatCount(most, 1), quantity.FormatCount(hours.Div(most), 1))
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
