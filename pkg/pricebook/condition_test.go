package pricebook_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// Each condition with a place where it holds and one where it does not.
var places = map[string][2]pricebook.Place{
	"bath":          {{Kind: "bath"}, {Kind: "kitchen"}},
	"kitchen":       {{Kind: "kitchen"}, {Kind: "bath"}},
	"bedroom":       {{Kind: "bedroom"}, {}},
	"laundry":       {{Kind: "laundry"}, {Kind: "basement"}},
	"basement":      {{Kind: "basement"}, {Kind: "laundry"}},
	"closet":        {{Kind: "closet"}, {Kind: "bedroom"}},
	"wet":           {{Kind: "laundry"}, {Kind: "bedroom"}},
	"before 1978":   {{YearBuilt: 1977}, {YearBuilt: 1978}},
	"before 1990":   {{YearBuilt: 1989}, {YearBuilt: 1990}},
	"dark walls":    {{DarkWalls: true}, {}},
	"carpet below":  {{CarpetBelow: true}, {}},
	"utilities off": {{UtilitiesOff: true}, {}},
	"tub":           {{Tub: true}, {}},
	"shower":        {{Shower: true}, {Tub: true}},
	"windows":       {{Windows: true}, {Doors: true}},
	"own hands":     {{OwnHands: true}, {}},
	"doors":         {{Doors: true}, {Windows: true}},
}

func TestConditions(t *testing.T) {
	require.Len(t, places, len(pricebook.Conditions))
	for _, c := range pricebook.Conditions {
		pair, known := places[c.Name]
		require.True(t, known, c.Name)
		require.NotEmpty(t, c.Meaning, c.Name)
		companion := pricebook.Companion{If: c.Name}
		require.True(t, companion.Comes(pair[0]), c.Name)
		require.False(t, companion.Comes(pair[1]), c.Name)
		require.True(t, pricebook.Companion{}.Comes(pair[1]), "without a condition it always comes")
	}
	for _, kind := range []string{"bath", "kitchen", "laundry"} {
		require.True(t, pricebook.Companion{If: "wet"}.Comes(pricebook.Place{Kind: kind}), kind)
	}
}

// An unknown year counts as old, the careful reading.
func TestUnknownYearCountsAsOld(t *testing.T) {
	for _, c := range []string{"before 1978", "before 1990"} {
		require.True(t, pricebook.Companion{If: c}.Comes(pricebook.Place{}), c)
	}
}
