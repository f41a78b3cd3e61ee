package workbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// An input of choice takes its words alone, a time nothing below 0.
func TestInputsTakeWhatTheModelDoes(t *testing.T) {
	f := opened(t, answered(t, withPartner), Options{})
	all, err := f.GetDataValidations("Inputs")
	require.NoError(t, err)
	var lists, times int
	for _, v := range all {
		switch {
		case v.Type == "list":
			lists++
			require.NotEmpty(t, strings.Trim(v.Formula1, `"`))
		case v.Operator == "greaterThanOrEqual":
			times++
			require.Equal(t, "0", v.Formula1)
		}
	}
	require.Positive(t, lists)
	require.Positive(t, times)
}
