package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// A month's bill by the year is told where all of the house is billed in it; little cover beside other
// cover, one of several bills, and a house that draws nothing are let stand. The house costs $160,000.
func TestAMonthsBillByTheYear(t *testing.T) {
	const den = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"
	for charges, want := range map[string]map[string]int{
		"insurance: $160/year":                                                   {"insurance-low": 1},
		"vacant-house insurance: $290/year":                                      {"insurance-low": 1},
		"builder's risk: $210/year":                                              {"insurance-low": 1},
		"insurance: $160/month, utilities: $240/year":                            {"utilities-low": 1},
		"property tax: $3,600/year, homeowner's: $95/year, utilities: $310/year": {"insurance-low": 1, "utilities-low": 1},
		"insurance: $540/year":                                                   nil,
		"insurance: $0/year":                                                     nil,
		"flood insurance: $240/year":                                             nil,
		"condo insurance: $240/year":                                             nil,
		"umbrella insurance: $190/year":                                          nil,
		"builder's risk: $1,900/year, insurance: $220/year":                      nil,
		"tax and insurance: $3,900/year":                                         nil,
		"utilities: $960/year":                                                   nil,
		"utilities: $300/year, heating oil: $600/quarter":                        nil,
		"homeowners association: $240/year, homeowner's dues: $90/year":          nil,
		"water: $240/year":                                                       nil,
		"internet: $300/year":                                                    nil,
		"power and water: $240/year":                                             {"utilities-low": 1},
		"'power, gas and water': $310/year":                                      {"utilities-low": 1},
		"gas and electric: $260/year":                                            {"utilities-low": 1},
		"heat and light: $300/year":                                              {"utilities-low": 1},
		"water and sewer: $360/year":                                             nil,
		"electric heat: $420/year":                                               nil,
		"power and water: $960/year":                                             nil,
		"power and water: $300/year, heating oil: $600/quarter":                  nil,
		"trash and sewer: $310/year":                                             nil,
		"utilities: $240/month, insurance: $1,280/year":                          nil,
	} {
		for _, code := range []string{"insurance-low", "utilities-low"} {
			require.Len(t, toldOf(t, code, den, "holding: {"+charges+"}\n"), want[code], "%s: %s", code, charges)
		}
	}
	require.Empty(t, toldOf(t, "utilities-low", den, "house: {utilities: off}\nholding: {utilities: $240/year}\n"))
	for price, want := range map[string]int{"$400k": 0, "$900k": 1} {
		_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "price: $160k", "price: "+price, 1)+"holding: {insurance: $480/year}\nrooms:\n"+den))
		require.Equal(t, want, strings.Count(strings.Join(codesIn(found), " "), "insurance-low"), price)
	}
}
