package quantity

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kindOf is one kind of quantity: how it is read, shown in the data files, and printed.
type kindOf struct {
	parse func(string) (any, error)
	show  func(any) string
	print func(any) string
}

func of[T any](parse func(string) (T, error), show, print func(T) string) kindOf {
	return kindOf{
		func(s string) (any, error) { return parse(s) },
		func(v any) string { return show(v.(T)) },
		func(v any) string { return print(v.(T)) },
	}
}

// exactly prints with as many decimals as a parser ever keeps.
func exactly(format func(decimal.Decimal, int32) string) func(decimal.Decimal) string {
	return func(d decimal.Decimal) string { return format(d, MonthPlaces) }
}

var kinds = map[string]kindOf{
	"money":    of(ParseMoney, decimal.Decimal.String, FormatMoney),
	"rate":     of(ParseRate, func(r Rate) string { return fmt.Sprint(r.Amount, " ", r.Per) }, FormatRate),
	"percent":  of(ParsePercent, decimal.Decimal.String, exactly(FormatPercent)),
	"duration": of(ParseDuration, decimal.Decimal.String, exactly(FormatMonths)),
	"count":    of(ParseCount, decimal.Decimal.String, exactly(FormatCount)),
	"hours":    of(ParseHours, decimal.Decimal.String, exactly(FormatHours)),
	"step":     of(ParseStep, func(s Step) string { return fmt.Sprint(s.Each, " ", s.Unit) }, FormatStep),
	"date":     of(ParseDate, Date.String, Date.Long),
	"yesno":    of(ParseYesNo, strconv.FormatBool, FormatYesNo),
	"length":   of(ParseLength, func(l Length) string { return fmt.Sprint(l.Inches(), " = ", l) }, inMetres),
	"size":     of(bothSides, sides.show, sides.print),
	"openings": of(manySides, openings.show, openings.print),
	"area":     of(ParseArea, func(a Area) string { return a.SquareFeet().String() }, func(a Area) string { return a.metres.String() + " m2" }),
	"days":     of(ParseDays, decimal.Decimal.String, func(d decimal.Decimal) string { return d.String() + " days" }),
	"pounds":   of(ParsePounds, decimal.Decimal.String, func(d decimal.Decimal) string { return d.String() + " lb" }),
	"volume":   of(ParseVolume, func(v Volume) string { return v.CubicFeet().String() }, func(v Volume) string { return v.metres.String() + " m3" }),
	"pitch":    of(ParsePitch, func(p Pitch) string { return fmt.Sprint(p, " = ", p.Per12()) }, Pitch.String),
	"per":      of(ParsePer, func(p Per) string { return fmt.Sprintf("%s %t %q %q", p.Number, p.Money, p.Top, p.Bottom) }, Per.String),
	"pack":     of(ParsePack, func(p Pack) string { return fmt.Sprintf("%q %s %q", p.Word, p.Number, p.Unit) }, Pack.String),
}

// example is a line of a data file; want begins with "! " for a refusal.
type example struct {
	line        int
	input, want string
}

func examples(t testing.TB, name string) []example {
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "quantity", name+".txt"))
	require.NoError(t, err)
	var list []example
	for i, line := range strings.Split(string(data), "\n") {
		if line == "" || line[0] == '#' {
			continue
		}
		input, want, found := strings.Cut(line, " | ")
		require.True(t, found, "%s.txt:%d: no bar", name, i+1)
		if input[0] == '"' {
			input, err = strconv.Unquote(input)
			require.NoError(t, err, "%s.txt:%d", name, i+1)
		}
		list = append(list, example{i + 1, input, want})
	}
	return list
}

func TestExamples(t *testing.T) {
	for name, k := range kinds {
		t.Run(name, func(t *testing.T) {
			for _, ex := range examples(t, name) {
				at := fmt.Sprintf("%s.txt:%d: %q", name, ex.line, ex.input)
				v, err := k.parse(ex.input)
				if refusal, bad := strings.CutPrefix(ex.want, "! "); bad {
					if assert.Error(t, err, at) {
						assert.Truef(t, strings.HasPrefix(err.Error(), refusal), "%s: %v", at, err)
						checkError(t, ex.input, err)
					}
					continue
				}
				if assert.NoError(t, err, at) {
					assert.Equal(t, ex.want, k.show(v), at)
					checkRoundTrip(t, k, v)
				}
			}
		})
	}
}

// checkError holds for every refusal: its type, and a place inside the text.
func checkError(t require.TestingT, text string, err error) {
	var e *Error
	require.True(t, errors.As(err, &e), "%T", err)
	require.NotEmpty(t, e.Why)
	require.NotEmpty(t, e.Want)
	require.GreaterOrEqual(t, e.At, 0)
	require.LessOrEqual(t, e.At+len(e.Found), len(text), "%q %+v", text, e)
	require.Equal(t, text[e.At:e.At+len(e.Found)], e.Found)
}

// checkRoundTrip holds for every value a parser returns, to the last digit inside.
func checkRoundTrip(t require.TestingT, k kindOf, v any) {
	printed := k.print(v)
	again, err := k.parse(printed)
	require.NoError(t, err, printed)
	require.Equal(t, v, again, printed)
}

func TestErrorPlaces(t *testing.T) {
	tests := []struct {
		kind, text, found string
		at                int
	}{
		{"money", "285k euros", "euros", 5},
		{"money", "\u00a0€5", "€", 2}, // bytes, not characters
		{"money", "$ 285 000", "285 000", 2},
		{"money", "$", "", 1},
		{"money", "1,2 k", "1,2", 0},
		{"money", "$1.234567891 m", "1.234567891 m", 1},
		{"percent", " 0.5 ", "0.5", 1},
		{"percent", "2 21/2%", "21/2", 2},
		{"duration", "1 month, 2 1/2", "2 1/2", 9},
		{"duration", "1 month 3m", "m", 9},
		{"duration", "1 day 2 weeks 3 days", "days", 16},
		{"date", "May 32,2026", "32", 4},
		{"date", "5/14/26", "26", 5},
		{"date", "5/14 ", "", 4},
		{"step", "$2 per -$5", "-$5", 7},
		{"rate", "$5 per moon", "moon", 7},
		{"count", "", "", 0},
		{"length", " 8′ 14″", "14″", 6},
		{"length", `5' 12.5 ft`, "ft", 8},
		{"length", "12 sq ft", "sq ft", 3},
		{"size", "12 x 14", "12 x 14", 0},
		{"size", `12 x 8'6"`, "12", 0},
		{"size", "12ftx14cubits", "cubits", 7},
		{"openings", "0 of 3' x 4'", "0", 0},
		{"area", "168", "168", 0},
		{"per", "5 lb/ box", "box", 6},
		{"count", "  " + strings.Repeat("1", 65), strings.Repeat("1", 65), 2},
	}
	for _, tt := range tests {
		_, err := kinds[tt.kind].parse(tt.text)
		var e *Error
		require.True(t, errors.As(err, &e), tt.text)
		assert.Equal(t, tt.found, e.Found, tt.text)
		assert.Equal(t, tt.at, e.At, tt.text)
	}
}
