package quantity

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestDaysBetween(t *testing.T) { // counted on a calendar
	tests := []struct {
		a, b Date
		days int
	}{
		{Date{2026, 5, 14}, Date{2026, 5, 14}, 0},
		{Date{2026, 2, 28}, Date{2026, 3, 1}, 1},
		{Date{2028, 2, 28}, Date{2028, 3, 1}, 2}, // leap year
		{Date{2100, 2, 28}, Date{2100, 3, 1}, 1}, // a century that is none
		{Date{2026, 1, 1}, Date{2027, 1, 1}, 365},
		{Date{2026, 3, 1}, Date{2026, 2, 28}, -1},
		{Date{2026, 3, 7}, Date{2026, 3, 9}, 2}, // clocks change on the 8th
	}
	for _, tt := range tests {
		assert.Equal(t, tt.days, DaysBetween(tt.a, tt.b), "%s %s", tt.a, tt.b)
		assert.Equal(t, tt.b, tt.a.AddDays(tt.days))
	}
}

func TestAddDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, n := drawDate(t), rapid.IntRange(-50_000, 50_000).Draw(t, "n")
		b := a.AddDays(n)
		assert.Equal(t, n, DaysBetween(a, b))
		assert.Equal(t, a, b.AddDays(-n))
		sign := 0
		if n != 0 {
			sign = n / max(n, -n)
		}
		assert.Equal(t, sign, b.Compare(a))
	})
}

func TestDateForms(t *testing.T) {
	assert.True(t, Date{}.IsZero())
	assert.False(t, Date{2026, time.May, 14}.IsZero())
	got, err := json.Marshal(struct {
		D Date
		R Rate
	}{Date{2026, time.May, 14}, Rate{dec("365.5"), Quarter}})
	require.NoError(t, err)
	assert.JSONEq(t, `{"D":"2026-05-14","R":{"amount":"365.5","per":"quarter"}}`, string(got))
}
