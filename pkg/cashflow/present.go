package cashflow

import "github.com/shopspring/decimal"

// presentPlaces is how exactly a flow is discounted, in decimals of its unit.
const presentPlaces = 16

// PresentValue is the sum of flows[t] / (1+rate)^t, for a rate per period above -1. A
// rate of return is where it is zero.
func PresentValue(flows []decimal.Decimal, rate decimal.Decimal) (sum decimal.Decimal) {
	growth := rate.Add(decimal.NewFromInt(1))
	for i := len(flows) - 1; i >= 0; i-- {
		sum = flows[i].Add(sum.DivRound(growth, presentPlaces))
	}
	return sum
}
