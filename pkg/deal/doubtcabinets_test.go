package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Cabinets of a kitchen whose feet were written as inches, or whose point slipped, are told; not a
// short piece beside a run, nor one cabinet of a laundry.
func TestCabinetsTooShortForAKitchen(t *testing.T) {
	for fixed, want := range map[string]int{
		`base cabinets: 13" x 2'`: 1, "base cabinets: 1.3' x 2'": 1, "base cabinets: 13' x 2'": 0, "base cabinets: 4' x 2'": 0,
		`base cabinets: 13' x 2', wall cabinets: 9" x 1'`: 1, "base cabinets: 13' x 2', wall cabinets: 2' x 1'": 0,
		"base cabinets: 4' x 2', wall cabinets: 13' x 1'": 1, "base cabinets: 9' x 2', wall cabinets: 13' x 1'": 0,
		`base cabinets: 13' x 2', second base cabinets: {size: 18" x 2', kind: base cabinet}`: 0,
		"base cabinets: {size: 2' x 2', count: 4}":                                            0,
		"sink: 1": 0,
	} {
		require.Len(t, toldOf(t, "cabinets-short", "  kitchen: {size: 12' x 16', fixed: {"+fixed+"}, work: {paint walls: hired}}\n", ""), want, fixed)
	}
	for fixed, want := range map[string]int{`base cabinets: 8" x 2'`: 1, "base cabinets: 2' x 2'": 0} {
		require.Len(t, toldOf(t, "cabinets-short", "  laundry: {size: 8' x 9', fixed: {"+fixed+"}, work: {paint walls: hired}}\n", ""), want, fixed)
	}
}
