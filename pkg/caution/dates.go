package caution

import "time"

const secondsADay = 24 * 60 * 60

// civil keeps the calendar day of t and drops its hour and zone, so that a
// count of days never depends on daylight saving.
func civil(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// daysBetween counts calendar days from one day to another: the later date
// minus the earlier one, so the next day is 1.
func daysBetween(from, to time.Time) int {
	return int((civil(to).Unix() - civil(from).Unix()) / secondsADay)
}

// resaleDays is the count both resale rules use, from the purchase closing to
// the buyer's contract. It is false while either day is unknown.
func resaleDays(h House) (int, bool) {
	if h.Bought.IsZero() || h.OfferAccepted.IsZero() {
		return 0, false
	}
	return daysBetween(h.Bought, h.OfferAccepted), true
}
