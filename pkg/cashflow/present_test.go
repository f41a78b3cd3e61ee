package cashflow_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cashflow"
)

func TestPresentValue(t *testing.T) {
	flows := []decimal.Decimal{decimal.NewFromInt(-100), decimal.NewFromInt(60), decimal.NewFromInt(72)}
	// by hand: -100 + 60/1.2 + 72/1.44 = 0, and -100 + 60 + 72 = 32
	require.Equal(t, "0", cashflow.PresentValue(flows, decimal.New(2, -1)).String())
	require.Equal(t, "32", cashflow.PresentValue(flows, decimal.Decimal{}).String())
	require.True(t, cashflow.PresentValue(nil, decimal.Decimal{}).IsZero())

	r, err := cashflow.IRR(flows)
	require.NoError(t, err)
	require.Equal(t, "0.2", r.Rate.String())
}
