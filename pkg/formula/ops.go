package formula

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/affine"
)

// Code names an operator for the readers.
type Code int

// The operators. From Month on they work along the months or over a set, and a
// reader carries them out itself; the others have their rules in the table.
const (
	Add Code = iota
	Sub
	Mul
	Div
	Less
	LessEqual
	More
	MoreEqual
	Equal
	NotEqual
	And
	Or
	Not
	Negative
	Min
	Max
	If
	Cents
	Ceil
	Floor
	Power
	Root
	LevelPayment
	Month
	Prior
	Ago
	Running
	Sum
	Lowest
	FirstMonth
	At
	Total
	Largest
	Previous
)

// How tightly the infix operators bind; 0 is a word with brackets.
const (
	bindsOr = 1 + iota
	bindsAnd
	bindsCompare
	bindsSum
	bindsProduct
	bindsNegative
)

// An Op is a row of the operator table.
type Op struct {
	Code    Code
	Name    string
	Binds   int  // binding strength of an infix operator, which takes two values
	Least   int  // fewest values in the brackets of a word
	Most    int  // most values in them
	OverSet bool // total(x of set)
	MayOver bool // previous(x) or previous(x of set)

	Exact func(a []decimal.Decimal) (decimal.Decimal, error)
	Range func(a []affine.Number) affine.Number
	Float func(a []float64) float64 // near Exact; NaN or infinite where that fails
	Slope func(a, by []float64)     // fills by with the change of Float for a unit of each value
	Unit  func(a []Unit) (Unit, error)
	Words string // what it gives, for people

	// Sheet is the spreadsheet text, with $1, $2 and so on for the values and $* for all
	// of them; nothing for infix operators, which are written alike, and for those that a
	// reader carries out itself. It uses no function newer than 2010.
	Sheet string
}

func (o *Op) takes() string {
	switch {
	case o.Most == 1:
		return "1 value"
	case o.Least == o.Most:
		return fmt.Sprintf("%d values", o.Most)
	}
	return fmt.Sprintf("%d to %d values", o.Least, o.Most)
}

// Table lists the operators in the order of their codes.
var Table = []*Op{
	{Code: Add, Name: "+", Binds: bindsSum, Exact: exactAdd, Range: two(affine.Add), Float: floatAdd, Slope: slopeAdd, Unit: sameUnit, Words: "the sum"},
	{Code: Sub, Name: "-", Binds: bindsSum, Exact: exactSub, Range: two(affine.Sub), Float: floatSub, Slope: slopeSub, Unit: sameUnit, Words: "the difference"},
	{Code: Mul, Name: "*", Binds: bindsProduct, Exact: exactMul, Range: two(affine.Mul), Float: floatMul, Slope: slopeMul, Unit: product, Words: "the product"},
	{Code: Div, Name: "/", Binds: bindsProduct, Exact: exactDiv, Range: two(affine.Div), Float: floatDiv, Slope: slopeDiv, Unit: quotient, Words: "the quotient"},
	{Code: Less, Name: "<", Binds: bindsCompare, Exact: exactLess, Range: two(affine.Less), Float: floatLess, Slope: slopeNone, Unit: compared, Words: "is less than"},
	{Code: LessEqual, Name: "<=", Binds: bindsCompare, Exact: exactLessEqual, Range: two(affine.LessEqual), Float: floatLessEqual, Slope: slopeNone, Unit: compared, Words: "is at most"},
	{Code: More, Name: ">", Binds: bindsCompare, Exact: exactMore, Range: swapped(affine.Less), Float: floatMore, Slope: slopeNone, Unit: compared, Words: "is more than"},
	{Code: MoreEqual, Name: ">=", Binds: bindsCompare, Exact: exactMoreEqual, Range: swapped(affine.LessEqual), Float: floatMoreEqual, Slope: slopeNone, Unit: compared, Words: "is at least"},
	{Code: Equal, Name: "=", Binds: bindsCompare, Exact: exactEqual, Range: two(affine.Equal), Float: floatEqual, Slope: slopeNone, Unit: compared, Words: "is"},
	{Code: NotEqual, Name: "<>", Binds: bindsCompare, Exact: exactNotEqual, Range: rangeNotEqual, Float: floatNotEqual, Slope: slopeNone, Unit: compared, Words: "is not"},
	{Code: And, Name: "and", Binds: bindsAnd, Exact: exactAnd, Range: two(affine.And), Float: floatAnd, Slope: slopeNone, Unit: yesNo, Sheet: "AND($*)", Words: "both hold"},
	{Code: Or, Name: "or", Binds: bindsOr, Exact: exactOr, Range: two(affine.Or), Float: floatOr, Slope: slopeNone, Unit: yesNo, Sheet: "OR($*)", Words: "either holds"},
	{Code: Not, Name: "not", Least: 1, Most: 1, Exact: exactNot, Range: one(affine.Not), Float: floatNot, Slope: slopeNone, Unit: yesNo, Sheet: "NOT($1)", Words: "does not hold"},
	{Code: Negative, Name: "negative", Least: 1, Most: 1, Exact: exactNegative, Range: one(affine.Neg), Float: floatNegative, Slope: slopeNegative, Unit: first, Sheet: "-($1)", Words: "the same with the other sign"},
	{Code: Min, Name: "min", Least: 2, Most: 8, Exact: exactMin, Range: fold(affine.Min), Float: floatMin, Slope: slopeMin, Unit: sameUnit, Sheet: "MIN($*)", Words: "the smallest of"},
	{Code: Max, Name: "max", Least: 2, Most: 8, Exact: exactMax, Range: fold(affine.Max), Float: floatMax, Slope: slopeMax, Unit: sameUnit, Sheet: "MAX($*)", Words: "the largest of"},
	{Code: If, Name: "if", Least: 3, Most: 3, Exact: exactIf, Range: rangeIf, Float: floatIf, Slope: slopeIf, Unit: choose, Sheet: "IF($*)", Words: "the first where the condition holds, else the second"},
	{Code: Cents, Name: "cents", Least: 1, Most: 1, Exact: exactCents, Range: one(affine.Cents), Float: floatCents, Slope: slopeCents, Unit: dollars, Sheet: "ROUND(ROUND($1,9),2)", Words: "rounded to the cent, half away from zero"},
	{Code: Ceil, Name: "ceil", Least: 1, Most: 1, Exact: exactCeil, Range: one(affine.Ceil), Float: floatCeil, Slope: slopeNone, Unit: first, Sheet: "-INT(-ROUND($1,9))", Words: "rounded up to a whole number"},
	{Code: Floor, Name: "floor", Least: 1, Most: 1, Exact: exactFloor, Range: one(affine.Floor), Float: floatFloor, Slope: slopeNone, Unit: first, Sheet: "INT(ROUND($1,9))", Words: "rounded down to a whole number"},
	{Code: Power, Name: "power", Least: 2, Most: 2, Exact: exactPower, Range: two(affine.Power), Float: floatPower, Slope: slopePower, Unit: plainOnly, Sheet: "($1)^($2)", Words: "the first to the power of the second"},
	{Code: Root, Name: "root", Least: 1, Most: 1, Exact: exactRoot, Range: rangeRoot, Float: floatRoot, Slope: slopeRoot, Unit: plainOnly, Sheet: "SQRT($1)", Words: "the square root"},
	{Code: LevelPayment, Name: "level_payment", Least: 3, Most: 3, Exact: exactLevelPayment, Range: rangeLevelPayment, Float: floatLevelPayment, Slope: slopeLevelPayment, Unit: levelPaid, Sheet: "PMT($2,$3,-($1))", Words: "the level payment that clears a principal at a rate a month over months"},
	{Code: Month, Name: "month", Unit: inMonths, Words: "the number of the month"},
	{Code: Prior, Name: "prior", Least: 1, Most: 1, Unit: first, Words: "the value of the month before"},
	{Code: Ago, Name: "ago", Least: 2, Most: 2, Unit: atMonth, Words: "the value of so many months before"},
	{Code: Running, Name: "running", Least: 1, Most: 1, Unit: first, Words: "the total up to and with this month"},
	{Code: Sum, Name: "sum", Least: 1, Most: 1, Unit: first, Words: "the total over the months"},
	{Code: Lowest, Name: "lowest", Least: 1, Most: 1, Unit: first, Words: "the lowest over the months"},
	{Code: FirstMonth, Name: "first_month", Least: 1, Most: 1, Unit: monthOf, Words: "the first month in which it holds"},
	{Code: At, Name: "at", Least: 2, Most: 2, Unit: atMonth, Words: "the value in that month"},
	{Code: Total, Name: "total", Least: 1, Most: 1, OverSet: true, Unit: first, Words: "the total over the members"},
	{Code: Largest, Name: "largest", Least: 1, Most: 1, OverSet: true, Unit: first, Words: "the largest over the members, 0 for none"},
	{Code: Previous, Name: "previous", Least: 1, Most: 1, MayOver: true, Unit: first, Words: "the value of the member before, 0 for the first"},
}

var byName = func() map[string]*Op {
	m := map[string]*Op{}
	for _, o := range Table {
		m[o.Name] = o
	}
	return m
}()

func one(f func(x affine.Number) affine.Number) func([]affine.Number) affine.Number {
	return func(a []affine.Number) affine.Number { return f(a[0]) }
}

func two(f func(x, y affine.Number) affine.Number) func([]affine.Number) affine.Number {
	return func(a []affine.Number) affine.Number { return f(a[0], a[1]) }
}

func swapped(f func(x, y affine.Number) affine.Number) func([]affine.Number) affine.Number {
	return func(a []affine.Number) affine.Number { return f(a[1], a[0]) }
}

func fold(f func(x, y affine.Number) affine.Number) func([]affine.Number) affine.Number {
	return func(a []affine.Number) affine.Number {
		x := a[0]
		for _, y := range a[1:] {
			x = f(x, y)
		}
		return x
	}
}

func rangeNotEqual(a []affine.Number) affine.Number { return affine.Not(affine.Equal(a[0], a[1])) }
func rangeIf(a []affine.Number) affine.Number       { return affine.If(a[0], a[1], a[2]) }
func rangeRoot(a []affine.Number) affine.Number     { return affine.Power(a[0], affine.Exactly(0.5)) }
func rangeLevelPayment(a []affine.Number) affine.Number {
	return affine.LevelPayment(a[0], a[1], a[2])
}
