package quantity

import (
	"math/big"
	"strings"

	"github.com/shopspring/decimal"
)

// Unit is a unit of measure under the name it is printed with, as in the first
// column of the table: ft, sq ft, cu yd, lb, each, hour.
type Unit string

// In returns how many of the other unit there are in one of this, rounded to
// Places decimals, and false where they measure different things.
func (u Unit) In(other Unit) (decimal.Decimal, bool) {
	a, b := unitTable[u], unitTable[other]
	switch {
	case a == nil || b == nil || a.of != b.of || a.size.IsZero() && u != other:
		return decimal.Zero, false
	case u == other:
		return decimal.NewFromInt(1), true
	}
	return quotient(a.size, b.size), true
}

// amount prints so many of a unit: 10 sq ft, 1 hour, 2 hours.
func (u Unit) amount(n decimal.Decimal) string {
	name := string(u)
	if !n.Equal(decimal.NewFromInt(1)) {
		name = u.Several()
	}
	return FormatCount(n, Places) + " " + name
}

// One is what one of a unit is called: hour, sq ft, piece.
func (u Unit) One() string {
	if u == "each" {
		return "piece"
	}
	return string(u)
}

// Several is what more than one of a unit is called: hours, sq ft.
func (u Unit) Several() string {
	if row := unitTable[u]; row != nil {
		return row.many
	}
	return string(u)
}

// Plural is a word for more than one: boxes, bags; each stays.
func Plural(word string) string {
	switch {
	case word == "each":
		return word
	case strings.HasSuffix(word, "x") || strings.HasSuffix(word, "ch") || strings.HasSuffix(word, "sh"):
		return word + "es"
	case strings.HasSuffix(word, "y") && !strings.HasSuffix(word, "ay"):
		return strings.TrimSuffix(word, "y") + "ies"
	}
	return word + "s"
}

// Counted is a number of things in words: 1 sale, 12 entries.
func Counted(n int, word string) string {
	if n != 1 {
		word = Plural(word)
	}
	return FormatCount(decimal.NewFromInt(int64(n)), 0) + " " + word
}

// dimension is what a unit measures.
type dimension struct {
	noun    string
	usual   []string        // units for a number that has none
	most    decimal.Decimal // that is read, in the unit the sizes below are in
	mostSay string
}

var (
	lengths  = &dimension{"a length", []string{"ft", "in", "m"}, decimal.RequireFromString("30480"), "100,000 ft"}
	areas    = &dimension{"an area", []string{"sq ft", "sq yd", "m2"}, decimal.RequireFromString("929030400"), "10,000,000,000 sq ft"}
	volumes  = &dimension{"a volume", []string{"cu yd", "cu ft"}, decimal.RequireFromString("764554857.984"), "1,000,000,000 cu yd"}
	weights  = &dimension{noun: "a weight"}
	pieces   = &dimension{noun: "a number of pieces"}
	work     = &dimension{noun: "hours of work"}
	calendar = &dimension{noun: "a time"}
)

// unitRow is a line of the table.
type unitRow struct {
	unit  Unit
	many  string // of more than one
	of    *dimension
	size  decimal.Decimal // in metres, square metres, cubic metres or kilograms; 0 where nothing is converted
	names []string
}

// metric reports whether a unit of length is metric.
func (u *unitRow) metric() bool { return u.unit == "m" || u.unit == "cm" || u.unit == "mm" }

// unitTable and unitsByName are never written to. The sizes are exact, by NIST SP 811
// from memory: an inch is 25.4 mm, a gallon 231 cu in, a pound 0.45359237 kg. A
// roofing square is 100 sq ft: common practice, no source.
var unitTable, unitsByName = unitRows([]unitRow{
	row("ft", "ft", lengths, "0.3048", "ft, foot, feet, ', lf, linear ft, linear foot, linear feet, running ft, running feet"),
	row("in", "in", lengths, "0.0254", `in, inch, inches, ", ''`),
	row("yd", "yd", lengths, "0.9144", "yd, yds, yard, yards"),
	row("m", "m", lengths, "1", "m, metre, metres, meter, meters"),
	row("cm", "cm", lengths, "0.01", "cm, centimetre, centimetres, centimeter, centimeters"),
	row("mm", "mm", lengths, "0.001", "mm, millimetre, millimetres, millimeter, millimeters"),

	row("sq ft", "sq ft", areas, "0.09290304", "sq ft, sqft, sf, sq foot, sq feet, square ft, square foot, square feet, ft2, ft²"),
	row("sq in", "sq in", areas, "0.00064516", "sq in, sq inch, sq inches, square inch, square inches, in2, in²"),
	row("sq yd", "sq yd", areas, "0.83612736", "sq yd, sq yds, sy, sq yard, sq yards, square yard, square yards, yd2, yd²"),
	row("m2", "m2", areas, "1", "m2, m², sq m, sqm, square metre, square metres, square meter, square meters"),
	row("square", "squares", areas, "9.290304", "square, squares"),
	row("acre", "acres", areas, "4046.8564224", "acre, acres"),

	row("cu ft", "cu ft", volumes, "0.028316846592", "cu ft, cuft, cf, cu foot, cu feet, cubic ft, cubic foot, cubic feet, ft3, ft³"),
	row("cu in", "cu in", volumes, "0.000016387064", "cu in, cubic inch, cubic inches, in3, in³"),
	row("cu yd", "cu yd", volumes, "0.764554857984", "cu yd, cu yds, cy, cu yard, cu yards, cubic yard, cubic yards, yd3, yd³"),
	row("m3", "m3", volumes, "1", "m3, m³, cu m, cubic metre, cubic metres, cubic meter, cubic meters"),
	row("gal", "gal", volumes, "0.003785411784", "gal, gals, gallon, gallons"),
	row("L", "L", volumes, "0.001", "l, litre, litres, liter, liters"),

	row("lb", "lb", weights, "0.45359237", "lb, lbs, pound, pounds"),
	row("kg", "kg", weights, "1", "kg, kilogram, kilograms"),

	row("each", "each", pieces, "0", "each, ea"),
	row("hour", "hours", work, "0", "hour, hours, h, hr, hrs"),
	row("day", "days", calendar, "0", "day, days"),
	row("week", "weeks", calendar, "0", "week, weeks, wk, wks"),
	row("month", "months", calendar, "0", "month, months, mo, mos"),
})

func row(unit Unit, many string, of *dimension, size, names string) unitRow {
	return unitRow{unit, many, of, decimal.RequireFromString(size), strings.Split(names, ", ")}
}

func unitRows(rows []unitRow) (map[Unit]*unitRow, map[string]*unitRow) {
	units, names := map[Unit]*unitRow{}, map[string]*unitRow{}
	for i := range rows {
		units[rows[i].unit] = &rows[i]
		for _, name := range rows[i].names {
			names[name] = &rows[i]
		}
	}
	return units, names
}

// quotient divides exactly and rounds once, to Places decimals.
func quotient(a, b decimal.Decimal) decimal.Decimal {
	if d, is := shortQuotient(a, b); is {
		return d
	}
	return toDecimal(new(big.Rat).Quo(a.Rat(), b.Rat()), Places)
}
