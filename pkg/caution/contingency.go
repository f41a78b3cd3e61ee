package caution

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// contingencyBand is the customary share for houses built in or after a year.
type contingencyBand struct {
	from    int
	percent int64
	words   string
}

// contingencyBands run from the newest houses to the oldest. Common practice,
// no source.
func contingencyBands() []contingencyBand {
	return []contingencyBand{
		{1991, 10, "built after 1990: 10%"},
		{1978, 12, "built 1978 to 1990: 12%"},
		{1950, 15, "built 1950 to 1977: 15%"},
		{1, 20, "built before 1950: 20%"},
		// An unknown year takes the middle of the old bands until it is known.
		{0, 15, "year built unknown: 15% until it is known, 20% if it proves older than 1950"},
	}
}

const utilitiesOffPoints = 5

// publishedMinima is stated beside the customary share, which has no source.
const publishedMinima = "published beside it for renovation loans (HUD FHA knowledge base KA-04997, " +
	"citing Handbook 4000.1 II.A.8.a.vi(E)): house of 30 years or more at least 10%, 15% if utilities are not operable; " +
	"under 30 years none, 10% with termite damage; at most 20%"

// SuggestedContingency returns the customary contingency as a share of the base
// cost (0.15 for 15%) for a house built in yearBuilt (0 or less is unknown),
// five points more with the utilities off, and what it rests on. The share may
// exceed the 20% that renovation loans allow at most.
func SuggestedContingency(yearBuilt int, utilitiesOff bool) (share decimal.Decimal, source string) {
	band := contingencyBandOf(yearBuilt)
	points, off := band.percent, ""
	if utilitiesOff {
		points += utilitiesOffPoints
		off = fmt.Sprintf("; utilities off: +%d points", utilitiesOffPoints)
	}
	source = fmt.Sprintf("common practice, no source (%s%s); %s", band.words, off, publishedMinima)
	return decimal.New(points, -2), source
}

func contingencyBandOf(yearBuilt int) contingencyBand {
	var last contingencyBand
	for _, last = range contingencyBands() {
		if yearBuilt >= last.from {
			break
		}
	}
	return last
}
