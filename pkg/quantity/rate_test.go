package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Quotients by hand: 90*365/84 = 391.0714285…, 10*365/12 = 304.1666…, 100/3, 4120/12.
func TestPerMonth(t *testing.T) {
	tests := []struct {
		rate Rate
		want string
	}{
		{Rate{dec("1200"), Month}, "1200"},
		{Rate{dec("4120"), Year}, "343.3333333333333333333333333333333333333333"},
		{Rate{dec("4800"), Year}, "400"},
		{Rate{dec("365.50"), Quarter}, "121.8333333333333333333333333333333333333333"},
		{Rate{dec("84"), Week}, "365"},
		{Rate{dec("12"), Day}, "365"},
		{Rate{dec("10"), Day}, "304.1666666666666666666666666666666666666667"},
		{Rate{dec("-1200"), Year}, "-100"},
		{Rate{}, "0"},
		{Rate{dec("5"), 99}, "0"},
	}
	for _, tt := range tests {
		assert.Equal(t, tt.want, tt.rate.PerMonth().String(), "%v", tt.rate)
	}
}

func TestPeriodMonths(t *testing.T) {
	for p, want := range map[Period]string{0: "0", Month: "1", Quarter: "3", Year: "12",
		Day:  "0.032876712328767123287671232876712328767123288", // 12/365, Python fractions
		Week: "0.230136986301369863013698630136986301369863014", // 84/365, the same way
	} {
		assert.Equal(t, want, p.Months().String(), p.String())
	}
}
