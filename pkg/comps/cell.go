package comps

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"time"
	"unicode"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// cellError says why a cell was refused and what would do.
type cellError struct{ why, want string }

func (e *cellError) Error() string { return e.why + "; want " + e.want }

// digits reads a plain run of at most nine digits, which most cells of a long list
// are; everything else is for package quantity, which agrees with it on these.
func digits(s string) (int, bool) {
	if len(s) == 0 || len(s) > 9 {
		return 0, false
	}
	n := 0
	for i := range len(s) {
		d := s[i] - '0'
		if d > 9 {
			return 0, false
		}
		n = n*10 + int(d)
	}
	return n, true
}

func money(s string) (decimal.Decimal, error) {
	if n, ok := digits(s); ok && s[0] != '0' { // a 0 in front is asked about
		return decimal.NewFromInt(int64(n)), nil
	}
	return quantity.ParseMoney(s)
}

// day reads a date, also as 20260504, 4-May-2026, 4-May-26, May-4-2026 or with its midnight behind it;
// 1998-10-05 is read without the words of package quantity.
func day(s string) (quantity.Date, error) {
	if len(s) > 10 && (s[10] == ' ' || s[10] == 'T') && strings.Trim(s[11:], "0:.Z") == "" {
		s = s[:10] // databases write a day as its midnight
	}
	if n, ok := digits(s); ok && len(s) == 8 && 1900_00_00 <= n && n < 2200_00_00 {
		s = s[:4] + "-" + s[4:6] + "-" + s[6:]
	}
	if len(s) == 10 && s[4] == '-' && s[7] == '-' {
		y, okY := digits(s[:4])
		m, okM := digits(s[5:7])
		d, okD := digits(s[8:])
		if okY && okM && okD && 1900 <= y && y < 2200 && 1 <= m && m <= 12 && 1 <= d && d <= 28 {
			return quantity.Date{Year: y, Month: month(m), Day: d}, nil
		}
	}
	if d, both, ok := dashed(s); ok {
		return d, nil
	} else if both != "" {
		return d, &cellError{fmt.Sprintf("%q may be %s", s, both), "the month in letters or the year first, e.g. Jun 3, 2026 or 2026-06-03"}
	}
	d, err := quantity.ParseDate(s)
	if err != nil && strings.ContainsFunc(s, unicode.IsLetter) {
		if words, bad := quantity.ParseDate(strings.ReplaceAll(s, "-", " ")); bad == nil {
			return words, nil // May-4-2026
		}
	}
	for _, form := range []string{"2-Jan-2006", "2-Jan-06"} {
		if t, bad := time.Parse(form, s); err != nil && bad == nil {
			return quantity.Date{Year: t.Year(), Month: t.Month(), Day: t.Day()}, nil
		}
	}
	return d, err
}

var timeOfDay = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(.*\d)[ T]\d{1,2}:\d\d(?::\d\d(?:\.0+)?)? ?(?i:[ap]\.?m\.?)?$`)
})

// withoutTime takes off the time of day that spreadsheets and databases write behind a day.
func withoutTime(s string) string {
	if !strings.ContainsRune(s, ':') {
		return s
	}
	if m := timeOfDay().FindStringSubmatch(s); m != nil {
		return strings.TrimSpace(m[1])
	}
	return s
}

// dayFirst reads 25/03/2026 with the day first, and says whether it cannot be read otherwise;
// zero for what is none.
func dayFirst(s string) (d quantity.Date, only bool) {
	parts := strings.FieldsFunc(s, func(c rune) bool { return c == '/' || c == '-' })
	if len(parts) != 3 || len(parts[0]) > 2 || len(parts[1]) > 2 || len(parts[2]) != 4 {
		return d, false
	}
	d, err := quantity.ParseDate(parts[1] + "/" + parts[0] + "/" + parts[2])
	first, _ := digits(parts[0])
	return d, err == nil && first > 12
}

// dashed reads 06-13-2026 and 13-06-2026, in which one number can be no month; of 06-03-2026
// it says the two days that it may be.
func dashed(s string) (d quantity.Date, both string, ok bool) {
	parts := strings.Split(s, "-")
	if len(parts) != 3 || len(parts[2]) != 4 || len(parts[0]) > 2 || len(parts[1]) > 2 {
		return d, "", false
	}
	american, err := quantity.ParseDate(strings.Join(parts, "/"))
	european, bad := quantity.ParseDate(parts[1] + "/" + parts[0] + "/" + parts[2])
	switch {
	case err == nil && bad == nil && american != european:
		return d, american.Long() + " or " + european.Long(), false
	case err == nil:
		return american, "", true
	}
	return european, "", bad == nil
}

// number reads a plain number within bounds.
func number(s string, low, high float64, want string) (Fact, error) {
	v, ok := 0.0, false
	if n, plain := digits(s); plain {
		v, ok = float64(n), true
	} else {
		d, err := quantity.ParseCount(s)
		if err == nil {
			v, ok = d.InexactFloat64(), true
		} else if v, ok = scientific(s); !ok {
			return Fact{}, err
		}
	}
	if !ok || v < low || v > high {
		return Fact{}, &cellError{fmt.Sprintf("%q is out of bounds", s), want}
	}
	return Known(v), nil
}

// unread reports whether package quantity refused a cell: it wants any number, and knows
// nothing of what the cell is to say.
func unread(err error) bool {
	_, ok := errors.AsType[*quantity.Error](err)
	return ok
}

// scientific reads 5e+05, which statistics programs write for 500000.
func scientific(s string) (float64, bool) {
	if !strings.ContainsAny(s, "eE") || strings.Trim(s, "0123456789.eE+-") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// inColumn are the units of columns other than square feet.
var inColumn = map[string]quantity.Unit{"acres": "acre", "m2": "m2"}

// area reads an area: a bare number in the unit of its column, or with its unit.
func area(s, unit string, low, high float64) (Fact, error) {
	if strings.HasPrefix(s, ".") {
		s = "0" + s
	}
	if bare, ok := strings.CutSuffix(strings.TrimSuffix(strings.ToLower(s), "."), "ac"); ok { // .15 ac
		s = strings.TrimSpace(bare) + " acres"
	}
	f, err := number(s, 0, math.Inf(1), "")
	switch u := inColumn[unit]; {
	case err == nil && u != "": // as it would be with its unit behind it
		f.Value = quantity.AreaOf(decimal.NewFromFloat(f.Value), u).SquareFeet().InexactFloat64()
	case err != nil:
		a, bad := quantity.ParseArea(s)
		if bad != nil {
			return Fact{}, bad
		}
		f = Known(a.SquareFeet().InexactFloat64())
	}
	if f.Value < low || f.Value > high {
		return Fact{}, &cellError{fmt.Sprintf("%q is out of bounds", s), fmt.Sprintf("an area of %.0f to %.0f sq ft, e.g. 1450 or 1,450 sq ft", low, high)}
	}
	return f, nil
}

// conditions are the words for condition, from poor to excellent.
var conditions = []string{"poor", "fair", "average", "good", "excellent"}

// conditionShort is how counties and agents write them in short; common practice, no source.
var conditionShort = map[string]string{"pr": "poor", "fr": "fair", "av": "average", "avg": "average", "gd": "good", "ex": "excellent", "exc": "excellent"}

func condition(s string) (Fact, error) {
	s = cmp.Or(conditionShort[strings.ToLower(strings.TrimSuffix(s, "."))], s)
	for i, w := range conditions {
		if strings.EqualFold(w, s) {
			return Known(float64(i + 1)), nil
		}
	}
	want := "poor, fair, average, good or excellent, or 1 (poor) to 5 (excellent)"
	if len(s) == 2 && strings.ContainsAny(s[:1], "Cc") && s[1] >= '1' && s[1] <= '6' {
		want += "; of C1 to C6, as appraisers write, C1 is the best, so write a word"
	}
	f, err := number(s, boundCondition.Least, boundCondition.Most, want)
	if err != nil {
		return f, &cellError{fmt.Sprintf("%q is no condition", s), want}
	}
	return f, nil
}

// wanted splits an error of this package or of quantity into its two halves.
func wanted(err error) (why, want string) {
	if e, ok := errors.AsType[*quantity.Error](err); ok {
		return e.Why, e.Want
	}
	if e, ok := errors.AsType[*cellError](err); ok {
		return e.why, e.want
	}
	return err.Error(), "another value"
}
