package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// An input of choice takes its words alone, a time nothing below 0, a loan's share of the
// price what a file takes, a lag of draws its whole months, an exit fee its 25%, a term
// that is stated more than none.
func TestInputsTakeWhatTheModelDoes(t *testing.T) {
	f := opened(t, answered(t, withPartner), Options{})
	all, err := f.GetDataValidations("Inputs")
	require.NoError(t, err)
	var lists, times, shares, lags, fees, terms int
	for _, v := range all {
		switch {
		case v.Type == "list":
			lists++
			require.NotEmpty(t, strings.Trim(v.Formula1, `"`))
		case v.Operator == "greaterThanOrEqual":
			times++
			require.Equal(t, "0", v.Formula1)
		case v.Error != nil && strings.HasSuffix(*v.Error, "from 0 to 12."):
			lags++
			require.Equal(t, "whole", v.Type)
			require.Equal(t, "12", v.Formula2)
		case v.Error != nil && strings.HasSuffix(*v.Error, "from 0% to 25%."):
			fees++
			require.Equal(t, "0.25", v.Formula2)
		case v.Error != nil && strings.HasSuffix(*v.Error, "Months, from 0 to 480."):
			terms++
			require.Equal(t, "480", v.Formula2)
		case v.Error != nil && strings.HasSuffix(*v.Error, "from 0% to 100%."):
			shares++
			require.Equal(t, "stop", *v.ErrorStyle)
			require.Equal(t, "0", v.Formula1)
			require.Equal(t, "1", v.Formula2)
		}
	}
	require.Positive(t, lists)
	require.Positive(t, times)
	require.Positive(t, shares)
	require.Positive(t, lags)
	require.Positive(t, fees)
	require.Positive(t, terms)
}

// A cap of a loan may be set to nothing, as its cell says, which stands for none; a file leaves it out.
func TestACapMayBeNone(t *testing.T) {
	b, err := made(answered(t, strings.Replace(besideDeal, "fixed amount: $90k", "fixed amount: $90k, cap on after-repair value: 70%, cap on cost: 90%", 1)), Options{})
	require.NoError(t, err)
	for _, line := range []string{"value_cap", "cost_cap"} {
		c := b.model.Find(b.member(t, "bank"), line)
		rule, err := b.ruleOf(c)
		require.NoError(t, err)
		require.Equal(t, "Write a share with its sign, as 10.5%, from 0% to 100%.", *rule.Error)
		for _, r := range b.flawRules(c) {
			require.NotContains(t, r.holds("B4"), ">0", line)
		}
	}
}
