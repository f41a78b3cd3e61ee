package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

// Insurance is known by the names that insurers and lenders give it, also where it is too little; cover of the
// title, and what a town takes for an empty house, is none.
func TestTheNamesOfInsurance(t *testing.T) {
	for name, want := range map[string]struct{ missing, low int }{
		"builder risk": {0, 1}, "builders risk": {0, 1}, "builder’s risk": {0, 1}, "builders-risk": {0, 1}, "course of construction": {0, 1}, "DP-3": {0, 1}, "DP3": {0, 1}, "HO 3": {0, 1},
		"dwelling policy": {0, 1}, "landlord policy": {0, 1}, "fire policy": {0, 1}, "dwelling fire": {0, 1}, "vacant house cover": {0, 1}, "homeowner’s": {0, 1},
		"HO-6": {0, 0}, "HO6 policy": {0, 0}, "walls-in policy": {0, 0}, "condo policy": {0, 0},
		"title policy": {1, 0}, "owner’s policy": {1, 0}, "title insurance": {1, 0}, "vacant property registration": {1, 0}, "vacant home fee": {1, 0}, "hazardous waste": {1, 0}, "policy fee": {1, 0}, "homeowner’s dues": {1, 0},
	} {
		charge := "holding: {'" + name + "': $110/year}\n"
		require.Len(t, toldOf(t, "insurance-missing", smallDen, charge), want.missing, name)
		require.Len(t, toldOf(t, "insurance-low", smallDen, charge), want.low, name)
	}
}

// Tax and insurance are held against the price, but for what the cheapest house pays too: insurance by the month
// against less of it, as a bill of the year is taken for that of a month. Taxes of districts beside a full one
// are let stand.
func TestTaxAndInsuranceBesideThePrice(t *testing.T) {
	for _, c := range []struct{ price, holding, told string }{
		{"$29k", "insurance: $1,900/year", ""},
		{"$29k", "insurance: $320/month", ""},
		{"$29k", "insurance: $19,000/year", "insurance-high"},
		{"$30k", "property tax: $2,500/year", ""},
		{"$30k", "property tax: $25,000/year", "property-tax-high"},
		{"$220k", "insurance: $1,080/month", "insurance-high"},
		{"$220k", "insurance: $640/month", ""},
		{"$220k", "insurance: $4,000/quarter", "insurance-high"},
		{"$220k", "insurance: $11,000/year", ""},
		{"$220k", "insurance: $14,000/year", "insurance-high"},
		{"$220k", "tax and insurance: $900/month", ""},
		{"$220k", "property tax: $3,400/year, fire district tax: $180/year, library tax: $90/year", ""},
		{"$220k", "property tax: $283/month, personal property tax: $35/year", ""},
		{"$220k", "property tax: {amount: $2,900}, drainage tax: $40/year", ""},
		{"$220k", "county tax: $300/year, school tax: $280/year, city tax: $150/year", ""},
		{"$220k", "property tax: $340/year", "property-tax-low"},
		{"$220k", "property tax: $340/year, fire district tax: $18/year", "property-tax-low"},
	} {
		_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "price: $160k", "price: "+c.price, 1)+"holding: {"+c.holding+"}\nrooms:\n"+smallDen))
		require.False(t, found.HasErrors(), "%v", found)
		var got []string
		for _, code := range codesIn(found) {
			if strings.HasPrefix(code, "insurance-") && code != "insurance-missing" || strings.HasPrefix(code, "property-tax-") && code != "property-tax-missing" {
				got = append(got, code)
			}
		}
		require.Equal(t, c.told, strings.Join(got, " "), "%s: %s", c.price, c.holding)
	}
}
