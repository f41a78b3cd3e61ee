package caution

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

// published is one entry of testdata/published/rules.json; its source and how
// it was obtained stand beside the values there.
type published struct {
	ID     string
	Source struct{ Name, Section string }
	How    string `json:"how_obtained"`
	Memory string `json:"added_from_memory"`

	Numbers json.RawMessage
	Tests   json.RawMessage
}

func publishedRules(t *testing.T) map[string]published {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", "rules.json"))
	require.NoError(t, err)
	var list []published
	require.NoError(t, json.Unmarshal(data, &list))
	out := map[string]published{}
	for _, p := range list {
		out[p.ID] = p
	}
	return out
}

// into decodes numbers as they were written, never through float64.
func into(t *testing.T, data json.RawMessage, v any) {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	require.NoError(t, d.Decode(v))
}

func number(t *testing.T, data json.RawMessage, key string) string {
	t.Helper()
	var m map[string]any
	into(t, data, &m)
	n, ok := m[key].(json.Number)
	require.True(t, ok, "no number %q", key)
	return n.String()
}

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func date(s string) time.Time {
	d, err := time.Parse(dayForm, s)
	if err != nil {
		panic("bad date in a test: " + s)
	}
	return d
}

// FHA-1: HUD Handbook 4000.1, time restriction on transfers of title.
func TestPublishedFHAWindow(t *testing.T) {
	p := publishedRules(t)["FHA-1"]
	var cases []struct {
		Acquired, Contract, Result string
		Days                       int
	}
	into(t, p.Tests, &cases)
	require.Len(t, cases, 4)
	for _, c := range cases {
		days := daysBetween(date(c.Acquired), date(c.Contract))
		w, near := FHAWindow(days)
		require.Equal(t, c.Days, days, c.Contract)
		require.Equal(t, c.Result, w.String(), c.Contract)
		require.True(t, near, "%s lies at an edge and is to be shown as such", c.Contract)
	}
	require.Equal(t, number(t, p.Numbers, "first_eligible_day"),
		decimal.NewFromInt(int64(daysBetween(date("2026-01-15"), FirstFHAContract(date("2026-01-15"))))).String())
}

// FHA-2: HUD Handbook 4000.1, resales 91-180 days.
func TestPublishedFHASecondAppraisal(t *testing.T) {
	p := publishedRules(t)["FHA-2"]
	var cases []struct {
		Paid, Price json.Number
		Days        int
		Second      bool `json:"second_appraisal"`
	}
	into(t, p.Tests, &cases)
	require.NotEmpty(t, cases)
	for _, c := range cases {
		require.Equal(t, c.Second, FHASecondAppraisal(c.Days, dec(c.Paid.String()), dec(c.Price.String())))
	}
	multiple := dec(number(t, p.Numbers, "price_multiple_at_or_above"))
	paid := dec("100000")
	require.True(t, FHASecondAppraisal(120, paid, paid.Mul(multiple)), "the rule is at or above")
	require.Equal(t, "91", number(t, p.Numbers, "day_from"))
	require.Equal(t, "180", number(t, p.Numbers, "day_to"))
	for days, want := range map[int]bool{90: false, 91: true, 180: true, 181: false} {
		require.Equal(t, want, FHASecondAppraisal(days, paid, paid.Mul(multiple)), "day %d", days)
	}
}

// HPML-1: 12 CFR 1026.35(c)(4)(i)(A)-(B).
func TestPublishedHPMLSecondAppraisal(t *testing.T) {
	var cases []struct {
		Paid, Price json.Number
		Days        int
		Second      bool
	}
	p := publishedRules(t)["HPML-1"]
	into(t, p.Tests, &cases)
	require.Len(t, cases, 4)
	for _, c := range cases {
		got := HPMLSecondAppraisal(c.Days, dec(c.Paid.String()), dec(c.Price.String()))
		require.Equal(t, c.Second, got, "%s to %s on day %d", c.Paid, c.Price, c.Days)
	}
	require.True(t, HPMLSecondAppraisal(180, dec("200000"), dec("240000.01")), "12 CFR 1026.35(c)(4)(i)(B): over 20%")
	require.Equal(t, "10", number(t, p.Numbers, "le_90_days_pct_over"))
	require.Equal(t, "20", number(t, p.Numbers, "d91_180_pct_over"))
}

// The source of every caution is the one the value was published under, with
// the words that weaken it.
func TestPublishedSources(t *testing.T) {
	rules := publishedRules(t)
	for _, c := range cites() {
		p, ok := rules[c.id]
		require.True(t, ok, c.id)
		require.Equal(t, p.Source.Name, c.name, c.id)
		require.Equal(t, strings.Trim(p.Source.Section, "-"), c.section, c.id)
		for _, weak := range []string{"from memory", noSource} {
			if p.How == weak {
				require.Contains(t, c.String(), weak, c.id)
			}
		}
	}
}

// The thresholds in the code and in the texts are the published ones.
func TestPublishedNumbers(t *testing.T) {
	rules := publishedRules(t)
	is := func(id, key string, want int64) {
		t.Helper()
		require.Equal(t, decimal.NewFromInt(want).String(), number(t, rules[id].Numbers, key), id)
	}
	says := func(row, id, key, form string) {
		t.Helper()
		want := strings.Replace(form, "#", number(t, rules[id].Numbers, key), 1)
		require.Contains(t, rowByID(t, row).text, want, id)
	}
	is("LEAD-1", "built_before", leadBefore)
	is("ASB-1", "built_no_later_than", asbestosTo)
	is("ASB-6", "units_excluded_max", noticeUnits)
	is("CAU-6", "strict_insurers", strictVacantDays)
	is("FHA-1", "ineligible_max_days", firstEdge)
	is("FHA-2", "day_to", secondEdge)
	says("lead-minor-repair", "LEAD-2", "interior_sqft_per_room_max", "# sq ft a room")
	says("lead-minor-repair", "LEAD-2", "exterior_sqft_max", "# outside")
	says("lead-own-labor", "LEAD-4", "course_hours", "#-hour course")
	says("lead-disclosure", "LEAD-5", "inspection_days", "# days to inspect")
	says("asbestos-notice", "ASB-5", "linear_ft", "# ft on pipes")
	says("asbestos-notice", "ASB-5", "sq_ft", "# sq ft")
	says("asbestos-notice", "ASB-5", "cu_ft", "# cu ft")
	says("insurance-vacant", "CAU-6", "vacancy_days", "over # days")
	says("insurance-vacant", "CAU-6", "strict_insurers", "insurers #")
	says("fha-second-appraisal", "FHA-2", "second_value_cut_over_pct", "over #% lower")
}

// K203-1: the minima stated beside the customary contingency.
func TestPublishedContingencyMinima(t *testing.T) {
	var bands []map[string]any
	into(t, publishedRules(t)["K203-1"].Numbers, &bands)
	least := func(match ...string) string {
		for _, b := range bands {
			if b[match[0]] == true && b[match[1]] == (match[2] == "true") {
				return string(b["min"].(json.Number))
			}
		}
		return ""
	}
	_, source := SuggestedContingency(1925, false)
	require.Contains(t, source, "30 years or more at least "+least("age_ge_30", "utilities_ok", "true")+"%, "+
		least("age_ge_30", "utilities_ok", "false")+"% if utilities are not operable")
	require.Contains(t, source, "under 30 years none, "+least("age_lt_30", "termite", "true")+"% with termite damage; at most 20%")
	require.Equal(t, "0", least("age_lt_30", "termite", "false"))
}

func rowByID(t *testing.T, id string) row {
	t.Helper()
	for _, r := range rows() {
		if r.id == id {
			return r
		}
	}
	require.Fail(t, "no row "+id)
	return row{}
}
