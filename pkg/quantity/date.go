package quantity

import (
	"cmp"
	"fmt"
	"time"
)

// Date is a day of the calendar, without clock or time zone. The zero Date is none.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// String returns the day as 2026-05-14.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Long returns the day as May 14, 2026.
func (d Date) Long() string { return fmt.Sprintf("%s %d, %d", d.Month, d.Day, d.Year) }

// MarshalText returns the day as 2026-05-14.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// IsZero reports whether no day is set.
func (d Date) IsZero() bool { return d == Date{} }

// Compare returns -1 if d is before e, 1 if it is after, and 0 if they are the same day.
func (d Date) Compare(e Date) int {
	return cmp.Or(cmp.Compare(d.Year, e.Year), cmp.Compare(d.Month, e.Month), cmp.Compare(d.Day, e.Day))
}

// AddDays returns the day n days later, or earlier if n is below zero.
func (d Date) AddDays(n int) Date {
	y, m, day := time.Date(d.Year, d.Month, d.Day+n, 0, 0, 0, 0, time.UTC).Date()
	return Date{y, m, day}
}

// DaysBetween returns the days from a to b: 1 from a day to the next, below zero if b is earlier.
func DaysBetween(a, b Date) int {
	const day = 24 * 60 * 60 // in UTC every day is this long
	return int((b.unix() - a.unix()) / day)
}

func (d Date) unix() int64 { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC).Unix() }

// daysIn returns the days of a month.
func daysIn(year int, month time.Month) int { return Date{year, month + 1, 0}.AddDays(0).Day }
