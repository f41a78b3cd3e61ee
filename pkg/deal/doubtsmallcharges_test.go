package deal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
)

const smallDen = "  den: {size: 12' x 13', work: {paint walls: hired}}\n"

// A sign, a point or a k that slipped is told of charges that no dollars and cents are; small charges are let
// stand.
func TestChargesOfAFewDollars(t *testing.T) {
	for keys, want := range map[string]int{
		"selling: {listing agent: $2.5, buyer's agent: 2.5%}":         1,
		"selling: {listing agent: $3, buyer's agent: 2.5%}":           1,
		"selling: {agents: 5%, transfer tax: $0.5}":                   1,
		"selling: {agents: 5%, title: $1.8}":                          1,
		"renovation: {general: {permits: $1.2}}":                      1,
		"loans: [{price share: 80%, rate: 9%, fees: {papers: $1.1}}]": 1,
		"selling: {agents: $0, title: $1,800}":                        0,
		"selling: {flat fee broker: $99, title: $1,800}":              0,
		"selling: {agents: 5%, notary: $9.50, wire: $15, stamps: $4}": 0,
		"selling: {agents: 5%, courier: $12.5, copies: $0.75}":        0,
		"selling: {agents: 5%, transfer tax: $1.1 per $500}":          0,
	} {
		require.Len(t, toldOf(t, "charge-small", smallDen, keys+"\n"), want, keys)
	}
}

// A nought too many is told of looks and papers; dear ones of a dear house, several in one, and what is a
// share, a tax, cover or work are let stand.
func TestPapersWithANoughtTooMany(t *testing.T) {
	for keys, want := range map[string]int{
		"paid before closing: {inspection: $4,950}":                     1,
		"paid before closing: {appraisal: $6,500, inspection: $5,500}":  2,
		"paid before closing: {inspection: $3,900}":                     1,
		"paid before closing: {inspections: $5,200}":                    0,
		"paid before closing: {inspection and survey: $5,900}":          0,
		"paid before closing: {inspections and appraisal: $11,900}":     1,
		"paid before closing: {inspection: $2,900, architect: $18,000}": 0,
		"paid before closing: {termite treatment: $4,800}":              0,
		"closing: {document stamps: $7,200}":                            0,
		"closing: {closing and documents: $7,200}":                      0,
		"closing: {inspection: $14,500}":                                1,
	} {
		require.Len(t, toldWith(t, "charge-high", keys), want, keys)
	}
	for fees, want := range map[string]int{
		"documents: $11,000": 1, "underwriting: $14,950": 1, "doc prep: $5,500": 1,
		"documents: $1,100, processing: $995": 0, "origination and processing: $6,200": 0, "broker: $9,000": 0, "administration and legal: $6,900": 0, "mortgage recording tax documents: $5,200": 0,
	} {
		require.Len(t, toldOf(t, "charge-high", smallDen, "loans: [{price share: 80%, rate: 9%, fees: {"+fees+"}}]\n"), want, fees)
	}
	_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "price: $160k", "price: $950k, paid before closing: {inspection: $5,950}", 1)))
	require.NotContains(t, codesIn(found), "charge-high")
}

// A discount is asked for where it takes the sale under a low value that is stated, and is no usual one.
func TestADiscountUnderTheLowValue(t *testing.T) {
	for value, want := range map[string]string{
		"low: $247k, expected discount: 7%":  "discount-under-low",
		"low: $222k, expected discount: 15%": "discount-high",
		"low: $233k, expected discount: 8%":  "",
		"low: $252k, expected discount: 5%":  "",
		"expected discount: 8%":              "",
		"expected discount: 10%":             "discount-high", // for 1%
	} {
		_, found := deal.Read("a.yaml", []byte(strings.Replace(walked, "value: $260k", "value: $260k, "+value, 1)))
		require.False(t, found.HasErrors(), found)
		var got []string
		for _, code := range codesIn(found) {
			if strings.HasPrefix(code, "discount-") {
				got = append(got, code)
			}
		}
		require.Equal(t, want, strings.Join(got, " "), value)
	}
}

// Taxes of the sale are nowhere over 7% of it; what is withheld of a gain may be.
func TestTaxesOfTheSale(t *testing.T) {
	for charge, want := range map[string]int{
		"transfer tax: 7.5%": 1, "deed stamps: 11%": 1, "transfer tax: {brackets: {up to $250k: 4%, above: 7.5%}}": 1,
		"transfer tax: 5%": 0, "transfer tax: 6.06%": 0, "tax withheld: 15%": 0, "commission and transfer tax: 8%": 0, "closing costs with taxes: 9%": 0,
	} {
		require.Len(t, toldOf(t, "share-high", smallDen, "selling: {"+charge+"}\n"), want, charge)
	}
}
