package deal

import (
	"errors"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// A limit is one side of a range.
type limit struct {
	words string // as in the table: more than $0
	least bool   // a lower limit
	open  bool   // the edge itself is outside
	edge  decimal.Decimal
}

// holds reports whether a value keeps the limit.
func (l limit) holds(x decimal.Decimal) bool {
	c := x.Cmp(l.edge)
	if !l.least {
		c = -c
	}
	return c > 0 || c == 0 && !l.open
}

// kindRanges are what a kind accepts where its row says nothing.
var kindRanges = map[Kind]string{
	Money:        "at least $0, at most $1,000 million",
	Percent:      "at least 0%, at most 100%",
	ShareOrMoney: "at least 0%, at most 100%",
	Duration:     "at most 10 years",
	WholeMonths:  "at most 10 years",
	HourRate:     "at least $0, at most $10,000",
	Hours:        "at most 100,000 hours",
	Area:         "at least 0 sq ft, at most 10,000,000 sq ft",
}

// accepts is the field's range in words.
func (f *Field) accepts() string {
	if f.Range == "" {
		return kindRanges[f.Kind]
	}
	return f.Range
}

// MoneyRange is what the file accepts of an amount, by the line of the model it feeds; false
// where a line is fed by none.
func MoneyRange(line string) (low, high decimal.Decimal, ok bool) { return rangeOf(line, Money) }

// MonthsRange is what the file accepts of whole months.
func MonthsRange(line string) (low, high decimal.Decimal, ok bool) { return rangeOf(line, WholeMonths) }

// An Edge is one side of what the file accepts of a line: the least or the most, and whether it
// must lie beyond that.
type Edge struct {
	At          decimal.Decimal
	Least, Open bool
}

// Holds reports whether a value keeps the edge.
func (e Edge) Holds(x decimal.Decimal) bool {
	return limit{edge: e.At, least: e.Least, open: e.Open}.holds(x)
}

// Is reports whether two edges are the same.
func (e Edge) Is(x Edge) bool { return e.At.Equal(x.At) && e.Least == x.Least && e.Open == x.Open }

// edgesFor are those of what some kinds accept, by the first line of the model that is fed.
func edgesFor(line string, kinds ...Kind) (out []Edge) {
	for _, f := range feeding()[line] {
		if slices.Contains(kinds, f.Kind) {
			out = append(out, edgesIn(limits(f.Kind, f.accepts()))...)
		}
	}
	return out
}

// feeding are the rows of the table by the first line of the model that each feeds.
var feeding = sync.OnceValue(func() map[string][]*Field {
	fields := map[string][]*Field{}
	for f := range rows() {
		if lines := f.feeds(); len(lines) > 0 {
			fields[lines[0]] = append(fields[lines[0]], f)
		}
	}
	return fields
})

// IsWhole reports whether the file takes whole numbers alone of a line of the model.
func IsWhole(line string) bool {
	return slices.ContainsFunc(feeding()[line], func(f *Field) bool {
		record, ok := comps.BoundOf(f.Key())
		return f.Kind == WholeMonths || f.Kind == WholeNumber || f.Kind == Record && ok && record.Whole
	})
}

// rangeOf is what the file accepts of some kinds, by the first line of the model that is fed.
func rangeOf(line string, kinds ...Kind) (low, high decimal.Decimal, ok bool) {
	for _, e := range edgesFor(line, kinds...) {
		if e.Least {
			low = e.At
		} else {
			high, ok = e.At, true
		}
	}
	return low, high, ok
}

// sides are the words that begin a limit.
var sides = []limit{
	{words: "at least ", least: true},
	{words: "more than ", least: true, open: true},
	{words: "at most "},
	{words: "less than ", open: true},
}

// A stated is a range of the table as it is written.
type stated struct {
	kind Kind
	text string
}

// limitsRead are the limits of the ranges that were asked for: many keys share one.
var limitsRead sync.Map

// limits are those of a range of the table.
func limits(k Kind, text string) []limit {
	if known, read := limitsRead.Load(stated{k, text}); read {
		return known.([]limit)
	}
	out := readLimits(k, text)
	limitsRead.Store(stated{k, text}, out)
	return out
}

func readLimits(k Kind, text string) []limit {
	var out []limit
	for _, part := range strings.Split(text, ", ") {
		for _, side := range sides {
			if edge, ok := strings.CutPrefix(part, side.words); ok {
				side.words = part
				side.edge, _ = number(k, edge) // a test reads every edge of the table
				out = append(out, side)
			}
		}
	}
	return out
}

// number reads the kinds that are plain numbers.
func number(k Kind, text string) (decimal.Decimal, error) {
	switch k {
	case Money:
		return quantity.ParseMoney(text)
	case HourRate:
		return hourly(text)
	case Percent, ShareOrMoney:
		return quantity.ParsePercent(text)
	case Duration, WholeMonths:
		return quantity.ParseDuration(text)
	case Hours:
		return quantity.ParseHours(text)
	}
	if read := measured[k]; read != nil {
		return read(text)
	}
	return quantity.ParseCount(text)
}

// hourly reads dollars with or without "an hour".
func hourly(text string) (decimal.Decimal, error) {
	t := strings.ToLower(text)
	for _, end := range []string{"hour", "hr", "h"} {
		for _, per := range []string{"/", " an ", " per ", " a "} {
			if i := strings.LastIndex(t, per); i > 0 && strings.TrimSpace(t[i+len(per):]) == end {
				return perHour(text[:i])
			}
		}
	}
	return perHour(text)
}

func perHour(text string) (decimal.Decimal, error) {
	x, err := quantity.ParseMoney(text)
	var q *quantity.Error
	if errors.As(err, &q) {
		return x, &quantity.Error{Found: q.Found, Why: q.Why, At: q.At, Want: "dollars an hour, e.g. $45/hour"}
	}
	return x, err
}
