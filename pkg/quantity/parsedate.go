package quantity

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
)

const (
	wantDate  = "a day, e.g. 2026-05-14, May 14, 2026 or 5/14/2026"
	firstYear = 1900
	lastYear  = 2199
)

// ParseDate reads a day: 2026-05-14, May 14, 2026, 14 May 2026, or 5/14/2026 with the
// month first. Years have four digits, from 1900 to 2199.
func ParseDate(text string) (Date, error) { return parse(text, wantDate, (*cursor).date) }

func (c *cursor) date() (Date, error) {
	first, sep := c.peek(), c.ahead(1).name
	switch {
	case first.kind == word:
		return c.monthFirst()
	case first.kind == number && (sep == "/" || sep == "-"):
		return c.numeric(sep)
	case first.kind == number && strings.Count(first.text, ".") == 2:
		return Date{}, c.refuseFor(first, "the month first, e.g. 5/14/2026, or the year first, e.g. 2026-05-14", "a date is not written with points")
	case first.kind == number:
		return c.dayFirst()
	}
	return Date{}, c.refuse(first, "%q does not begin a date", first.text)
}

// numeric reads 2026-05-14, 2026/5/14 and 5/14/2026.
func (c *cursor) numeric(sep string) (Date, error) {
	var part [3]token
	for i := range part {
		if i > 0 && !c.take(sep) {
			return Date{}, c.refuse(c.peek(), "the date is not complete")
		}
		part[i] = c.next()
	}
	if len(part[0].text) == 4 {
		return c.civil(part[0], part[1], part[2])
	}
	if sep == "-" {
		return Date{}, c.refuse(part[0], "a date with dashes begins with a year of four digits, not %q", part[0].text)
	}
	month, day := c.small(part[0]), c.small(part[1])
	if month > 12 && month <= 31 && 1 <= day && day <= 12 {
		year := part[2].text
		return Date{}, c.refuseFor(part[0], fmt.Sprintf("%d/%d/%s if %s is meant", day, month, year, time.Month(day)),
			"the month comes first, and %q is not a month", part[0].text)
	}
	return c.civil(part[2], part[0], part[1])
}

// monthFirst reads May 14, 2026.
func (c *cursor) monthFirst() (Date, error) {
	month := c.next()
	if monthNamed(month.name) == 0 {
		return Date{}, c.refuse(month, "%q is not a month", month.text)
	}
	c.splitYear()
	day := c.next()
	c.take("st", "nd", "rd", "th")
	c.take(",")
	return c.civil(c.next(), month, day)
}

// splitYear cuts a day and a year written without a space, 14,2026, in two.
func (c *cursor) splitYear() {
	t := c.peek()
	day, year, found := strings.Cut(t.text, ",")
	if !found || len(day) > 2 || len(year) != 4 {
		return
	}
	first := token{kind: number, text: day, name: day, at: t.at}
	second := token{kind: number, text: year, name: year, at: t.end() - len(year)}
	c.toks = slices.Replace(c.toks, c.i, c.i+1, first, second)
}

// dayFirst reads 14 May 2026.
func (c *cursor) dayFirst() (Date, error) {
	day := c.next()
	c.take("st", "nd", "rd", "th")
	month := c.next()
	c.take(",")
	return c.civil(c.next(), month, day)
}

// civil makes a date of its parts, the month being a number or a name.
func (c *cursor) civil(year, month, day token) (Date, error) {
	for _, t := range []token{month, day, year} {
		if t.kind == end {
			return Date{}, c.refuse(t, "the date is not complete")
		}
	}
	m := monthNamed(month.name)
	if month.kind == number {
		m = time.Month(c.small(month))
	}
	if m < time.January || m > time.December {
		return Date{}, c.refuse(month, "%q is not a month", month.text)
	}
	y := c.small(year)
	switch {
	case len(year.text) == 2 && y >= 0:
		return Date{}, c.refuseFor(year, fmt.Sprintf("the year in full, e.g. 20%s", year.text), "%q is not a year of four digits", year.text)
	case len(year.text) != 4 || y < 0:
		return Date{}, c.refuse(year, "%q is not a year of four digits", year.text)
	case y < firstYear || y > lastYear:
		return Date{}, c.refuse(year, "the year %d is not between %d and %d", y, firstYear, lastYear)
	}
	d := c.small(day)
	if d < 1 || d > daysIn(y, m) {
		return Date{}, c.refuse(day, "%q is not a day of %s %d", day.text, m, y)
	}
	return Date{y, m, d}, nil
}

// small returns a whole number of at most four digits, or -1.
func (c *cursor) small(t token) int {
	if !whole(t.text) || len(t.text) > 4 {
		return -1
	}
	n, err := strconv.Atoi(t.text)
	if err != nil {
		return -1
	}
	return n
}

// monthNamed returns the month of a full name or one cut to three letters, or 0.
func monthNamed(name string) time.Month {
	for m := time.January; m <= time.December; m++ {
		full := strings.ToLower(m.String())
		if name == full || name == full[:3] || name == "sept" && m == time.September {
			return m
		}
	}
	return 0
}
