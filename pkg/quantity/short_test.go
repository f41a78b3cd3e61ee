package quantity

import (
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Numbers of few digits are the same by machine words as by division, inside too.
func TestShortDecimalsAreAsByDivision(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		top := rapid.OneOf(rapid.Int64Range(-2000, 2000), rapid.Int64()).Draw(t, "top")
		bottom := rapid.OneOf(rapid.SampledFrom([]int64{1, 2, 4, 8, 10, 16, 25, 32, 64, 100, 512, 1000, 1e9, 1e10}), rapid.Int64Range(1, 999)).Draw(t, "bottom")
		places := rapid.Int32Range(0, 20).Draw(t, "places")
		r := big.NewRat(top, bottom)
		got, is := shortDecimal(r, places)
		if !is {
			return
		}
		want := decimal.NewFromInt(top).DivRound(decimal.NewFromInt(bottom), 30) // ends within nine decimals
		require.Zero(t, want.Rat().Cmp(r))
		want = trim(want)
		require.Equal(t, want.String(), got.String())
		require.Equal(t, want.Exponent(), got.Exponent())
		require.LessOrEqual(t, -got.Exponent(), places)
	})
	_, is := shortDecimal(big.NewRat(1, 3), 20)
	require.False(t, is)
	d, is := shortDecimal(big.NewRat(5, 16), 20)
	require.True(t, is)
	require.Equal(t, "0.3125", d.String())
}

// A short quotient is that of fractions, inside too.
func TestShortQuotientsAreAsByFractions(t *testing.T) {
	short := 0
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) decimal.Decimal {
			return decimal.New(rapid.OneOf(rapid.Int64Range(-3000, 3000), rapid.SampledFrom([]int64{3048, 254, 9144, 999999999, 1e9, 9290304})).Draw(t, name), rapid.Int32Range(-45, 3).Draw(t, name+" decimals"))
		}
		a, b := draw("a"), draw("b")
		got, is := shortQuotient(a, b)
		if !is {
			return
		}
		short++
		want := toDecimal(new(big.Rat).Quo(a.Rat(), b.Rat()), Places)
		require.Equal(t, want.String(), got.String())
		require.Equal(t, want.Exponent(), got.Exponent())
	})
	require.Positive(t, short)
	_, is := shortQuotient(decimal.NewFromInt(1), decimal.NewFromInt(3))
	require.False(t, is)
	_, is = shortQuotient(decimal.NewFromInt(1), decimal.Zero)
	require.False(t, is)
}
