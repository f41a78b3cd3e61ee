package quantity

import (
	"math"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func mustLength(t require.TestingT, text string) Length {
	l, err := ParseLength(text)
	require.NoError(t, err, text)
	return l
}

// inMetres prints a length with all its digits.
func inMetres(l Length) string { return l.metres.String() + " m" }

// sides is a size without the places it was read from.
type sides [2]Length

func bothSides(text string) (sides, error) {
	s, err := ParseSize(text)
	return sides{s.First.Length, s.Second.Length}, err
}

func (s sides) show() string {
	return Size{Side{Length: s[0]}, Side{Length: s[1]}}.String()
}

func (s sides) print() string { return inMetres(s[0]) + " x " + inMetres(s[1]) }

type openings struct {
	count int
	sides sides
}

func manySides(text string) (openings, error) {
	o, err := ParseOpenings(text)
	return openings{o.Count, sides{o.Size.First.Length, o.Size.Second.Length}}, err
}

func (o openings) show() string {
	return Openings{o.count, Size{Side{Length: o.sides[0]}, Side{Length: o.sides[1]}}}.String()
}

func (o openings) print() string {
	return decimal.NewFromInt(int64(o.count)).String() + " of " + o.sides.print()
}

// drawLength draws short ones too, so that two still fit into the longest text.
func drawLength(t *rapid.T) Length { return Length{drawDecimal(t, 30_479, 15)} }

func drawSides(t *rapid.T) sides { return sides{drawLength(t), drawLength(t)} }

// drawUnit draws a unit that any parser of units takes.
func drawUnit(t *rapid.T) Unit {
	var names []Unit
	for u := range unitTable {
		if u != "yd" && u != "m" {
			names = append(names, u)
		}
	}
	slices.Sort(names)
	return rapid.SampledFrom(names).Draw(t, "unit")
}

// A tape shows sixteenths, sometimes thirty-seconds: what is printed is the length itself.
func TestLengthPrintsWhatATapeShows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 100_000*12*32).Draw(t, "thirty-seconds")
		inches := decimal.NewFromInt(n).Div(decimal.NewFromInt(32)) // at most 5 decimals
		want := mustLength(t, inches.String()+" in")
		assert.Equal(t, want, mustLength(t, want.String()), want.String())
		assert.True(t, want.Inches().Equal(inches), "%s %s", want.Inches(), inches)
	})
}

// Any other length is printed within half a sixteenth of an inch.
func TestLengthPrintsTheNearestSixteenth(t *testing.T) {
	half := decimal.RequireFromString("0.03125")
	rapid.Check(t, func(t *rapid.T) {
		l := drawLength(t)
		off := mustLength(t, l.String()).Inches().Sub(l.Inches()).Abs()
		assert.True(t, off.LessThanOrEqual(half), "%s printed as %s", l.Metres(), l)
	})
}

// Sums of lengths are the sums of their sixteenths, and areas the products of them.
func TestLengthArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Int64Range(0, 1<<20).Draw(t, "a"), rapid.Int64Range(0, 1<<20).Draw(t, "b")
		x, y := sixteenths(a), sixteenths(b)
		assert.Equal(t, sixteenths(a+b), x.Add(y))
		assert.True(t, x.Times(y).SquareFeet().Equal(quotient(decimal.NewFromInt(a*b), decimal.NewFromInt(192*192))))
		assert.Equal(t, a < b, x.Cmp(y) < 0)
	})
}

func sixteenths(n int64) Length {
	return Length{trim(decimal.NewFromInt(n).Mul(dec("0.0015875")))} // 0.0254/16 m
}

func TestLengthString(t *testing.T) {
	tests := []struct{ text, want string }{ // by hand
		{"0 in", `0"`}, {"1/2 in", `1/2"`}, {"12 in", "1'"}, {"8 ft 2 in", `8' 2"`}, {"98.5 in", `8' 2 1/2"`},
		{`8' 1/32"`, `8' 1/32"`}, {`8' 1/64"`, "8'"}, {`8' 3/64"`, `8' 1/16"`}, {"11.99 in", "1'"},
		{"1/1000 in", `0"`}, {"1200 ft", "1,200'"}, {"100 cm", `3' 3 3/8"`}, // 39.3701 in: 3/8 is .375
	}
	for _, tt := range tests {
		assert.Equal(t, tt.want, mustLength(t, tt.text).String(), tt.text)
	}
	assert.Equal(t, `-1' 6"`, Feet(dec("-1.5")).String())
	assert.Equal(t, `8' 2"`, Feet(mustLength(t, `8'2"`).Feet()).String())
}

func TestSizePlaces(t *testing.T) {
	s, err := ParseSize(" 8′ 2″ × 5′")
	require.NoError(t, err)
	assert.Equal(t, Side{mustLength(t, `98"`), "8′ 2″", 1, false}, s.First)
	assert.Equal(t, Side{mustLength(t, "5'"), "5′", 14, false}, s.Second) // bytes, not characters
	s, err = ParseSize("12 x 14 ft")
	require.NoError(t, err)
	assert.Equal(t, Side{mustLength(t, "12 ft"), "12", 0, false}, s.First)
	assert.Equal(t, Side{mustLength(t, "14 ft"), "14 ft", 5, false}, s.Second)
}

// US Army Engineer School subcourse EN0069A, Frame Structures, lesson 2 answer 11: a
// span of 24 ft with a rise of 6 in 12 has a run of 12 ft and rafters of 13 ft 5 in (13.416 ft).
func TestRafter(t *testing.T) {
	p, err := ParsePitch("6 in 12")
	require.NoError(t, err)
	rafter := math.Hypot(12, p.Per12().InexactFloat64())
	assert.InDelta(t, 13.416, rafter, 0.001)
	assert.InDelta(t, rafter, mustLength(t, "13 ft 5 in").Feet().InexactFloat64(), 0.001)
}

// The same, answer 7: a rise of 3 in a run of 9 is a slope of 4 in 12.
func TestSlope(t *testing.T) {
	p, err := ParsePitch("3:9")
	require.NoError(t, err)
	assert.Equal(t, "4", p.Per12().String())
	assert.Equal(t, "0", Pitch{}.Per12().String())
}

// By hand: 100 sq ft is 9.290304 m2, a cubic yard 27 cu ft or 0.764554857984 m3.
func TestAreaAndVolume(t *testing.T) {
	a, err := ParseArea("1 square")
	require.NoError(t, err)
	b, err := ParseArea("1,000.125 sq ft")
	require.NoError(t, err)
	assert.Equal(t, "9.290304", a.SquareMetres().String())
	assert.Equal(t, "1100.125", a.Add(b).SquareFeet().String())
	assert.Equal(t, "1,100.13 sq ft", a.Add(b).String())

	v, err := ParseVolume("1-yard")
	require.NoError(t, err)
	assert.Equal(t, "0.764554857984", v.CubicMetres().String())
	v, err = ParseVolume("9 cu ft")
	require.NoError(t, err)
	assert.Equal(t, "0.3333333333333333333333333333333333333333", v.CubicYards().String())
	assert.Equal(t, "0.33 cu yd", v.String())
}
