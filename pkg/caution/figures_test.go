package caution

import (
	"encoding/json"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// Common practice, no source: the customary shares at each edge of their bands.
func TestSuggestedContingency(t *testing.T) {
	for _, c := range []struct {
		year       int
		share, off string
	}{
		{2024, "0.10", "0.15"},
		{1991, "0.10", "0.15"},
		{1990, "0.12", "0.17"},
		{1978, "0.12", "0.17"},
		{1977, "0.15", "0.20"},
		{1950, "0.15", "0.20"},
		{1949, "0.20", "0.25"},
		{1, "0.20", "0.25"},
		{0, "0.15", "0.20"},
		{-5, "0.15", "0.20"},
	} {
		on, source := SuggestedContingency(c.year, false)
		off, offSource := SuggestedContingency(c.year, true)
		require.True(t, dec(c.share).Equal(on), "%d: %s", c.year, on)
		require.True(t, dec(c.off).Equal(off), "%d, utilities off: %s", c.year, off)
		require.Contains(t, source, noSource)
		require.NotContains(t, source, "utilities off:")
		require.Contains(t, offSource, "utilities off: +5 points")
	}
	_, source := SuggestedContingency(0, false)
	require.Contains(t, source, "year built unknown")
}

// SE-wagebase: SSA Office of the Chief Actuary, Automatic Determinations, table
// 2015-2025. SE-wagebase-old: IRS Topic 751, 2026 read only second-hand.
// SE-rates: IRS Pub. 533, Schedule SE (Form 1040), lines 4a, 4c, 10-13.
func TestPublishedSelfEmployment(t *testing.T) {
	rules := publishedRules(t)
	var rates struct {
		SS        json.Number `json:"social_security_rate"`
		Medicare  json.Number `json:"medicare_rate"`
		Factor    json.Number `json:"net_earnings_factor"`
		Least     json.Number `json:"minimum_net_earnings"`
		Extra     json.Number `json:"additional_medicare_rate"`
		Threshold struct {
			Single, Joint json.Number
			Separate      json.Number `json:"married_separate"`
		} `json:"additional_medicare_threshold"`
	}
	into(t, rules["SE-rates"].Numbers, &rates)
	for year := 2014; year <= 2026; year++ {
		base := "SE-wagebase"
		if year == 2026 {
			base = "SE-wagebase-old"
		}
		f, ok := SelfEmployment(year)
		require.True(t, ok, year)
		require.Equal(t, year, f.Year)
		require.False(t, f.AfterLast)
		require.Equal(t, number(t, rules[base].Numbers, strconv.Itoa(year)), f.WageBase.String(), year)
		require.Equal(t, rates.SS.String(), f.SocialSecurityRate.String())
		require.Equal(t, rates.Medicare.String(), f.MedicareRate.String())
		require.Equal(t, rates.Factor.String(), f.Factor.String())
		require.Equal(t, rates.Least.String(), f.LeastEarnings.String())
		require.Equal(t, rates.Extra.String(), f.AdditionalRate.String())
		require.Equal(t, rates.Threshold.Single.String(), f.AdditionalFrom.Single.String())
		require.Equal(t, rates.Threshold.Joint.String(), f.AdditionalFrom.Joint.String())
		require.Equal(t, rates.Threshold.Separate.String(), f.AdditionalFrom.MarriedSeparate.String())
		require.Contains(t, f.Source, rules["SE-rates"].Source.Name)
	}
	// TAX-2 carries the two newest wage bases again, from another page.
	for year, key := range map[int]string{2025: "wage_base_2025", 2026: "wage_base_2026"} {
		f, _ := SelfEmployment(year)
		require.Equal(t, number(t, rules["TAX-2"].Numbers, key), f.WageBase.String())
	}
}

func TestSelfEmploymentOutsideTheTable(t *testing.T) {
	for _, year := range []int{2013, 0, -1} {
		_, ok := SelfEmployment(year)
		require.False(t, ok, year)
	}
	last, _ := SelfEmployment(2026)
	later, ok := SelfEmployment(2029)
	require.True(t, ok)
	require.True(t, later.AfterLast)
	require.Equal(t, 2026, later.Year)
	require.Equal(t, last.WageBase, later.WageBase)
	require.Contains(t, later.Source, "2029 is not known yet, the figures are those of 2026")
}
