package best_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/best"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
)

// large is a made-up deal with so many rooms, each with so many options besides doing
// nothing; the same on every run.
func large(rooms, options int) string {
	var b strings.Builder
	b.WriteString(`deal: large
house: {year built: 1960}
purchase: {price: $180k, closing: {title: $1,800}}
value: {before work: $210k, expected discount: 1%}
time: {lead-in: 2 weeks, marketing: 5 weeks, escrow: 5 weeks}
renovation: {contingency: 15%, spending: s}
local prices: {sales tax: 6.5%}
labour: {own hours a week: 40, together: overlapping}
loans:
  - {name: loan, price share: 85%, renovation share: 100%, cap on after-repair value: 70%, rate: 10.75%, points: 2 points, interest on: balance, term: 12 months, draws: {lag: 1 month, retainage: 10%, fee: $165}}
holding: {property tax: $4,380/year, utilities: $265/month}
selling: {commission: 5%, title: $1,950}
rooms:
`)
	for i := range rooms {
		fmt.Fprintf(&b, "  room %d:\n    size: %d' x %d'\n    doors: 2\n    windows: 2 of 3' x 4'\n    outlets: 5\n    options:\n", i+1, 9+i*5%8, 8+i*3%7)
		for o := range options {
			fmt.Fprintf(&b, "      way %d:\n        adds: $%d\n        work:\n", o+1, 1500*(o+1)+i*7919%13*150)
			for k := range o + 2 {
				fmt.Fprintf(&b, "          %s: %s\n", []string{"paint walls", "paint ceiling", "baseboard", "resilient plank floor", "paint trim", "prehung inside door"}[(k+i)%6],
					[]string{"own hands", "hired"}[(i+o+k)%2])
			}
		}
	}
	return b.String()
}

func opened(t testing.TB, text string) *deal.Deal {
	d, found := deal.ReadWith(deal.Options{AllOptions: true}, "large.yaml", []byte(text))
	require.Empty(t, found.Errors())
	return d
}

func TestTooManyRoomsAreRefused(t *testing.T) {
	_, err := best.New(opened(t, large(best.MostRooms+1, 1)))
	var many *best.ManyError
	require.ErrorAs(t, err, &many)
	require.Equal(t, best.MostRooms+1, many.Rooms)
	_, err = best.New(opened(t, large(best.MostRooms, 1)))
	require.NoError(t, err)
}

func BenchmarkPrepare(b *testing.B) {
	d := opened(b, large(12, 3))
	for b.Loop() {
		_, err := best.New(d)
		require.NoError(b, err)
	}
}

func benchmarkFind(b *testing.B, text string, l best.Limits) {
	d := opened(b, text)
	for b.Loop() {
		b.StopTimer()
		h, err := best.New(d)
		require.NoError(b, err)
		b.StartTimer()
		f, err := h.Find(l)
		require.NoError(b, err)
		require.True(b, f.Proved && f.SecondProved && f.ByBounds)
		b.ReportMetric(float64(f.Worked), "worked")
		b.ReportMetric(float64(f.Looked), "looked")
	}
}

func dec(n int64) *decimal.Decimal {
	x := decimal.NewFromInt(n)
	return &x
}

func BenchmarkFind(b *testing.B) { benchmarkFind(b, large(12, 3), best.Limits{}) }
func BenchmarkFindHours(b *testing.B) {
	benchmarkFind(b, large(12, 3), best.Limits{OwnHours: dec(200)})
}
func BenchmarkFindCash(b *testing.B) { benchmarkFind(b, large(12, 3), best.Limits{Cash: dec(110000)}) }

// On the scenarios with options a choice is worth to the cent what the file comes to
// when it is read anew with that scope.
func TestScenariosAsIfReadAnew(t *testing.T) {
	text, err := os.ReadFile("../../scenarios/walnut-row.yaml")
	require.NoError(t, err)
	d := opened(t, string(text))
	h, err := best.New(d)
	require.NoError(t, err)
	for n := range 6 {
		var parts []string
		choice := make([]int, len(h.Rooms))
		for i, r := range h.Rooms {
			choice[i] = (i*n + n*n + i*i) % len(r.Options)
			name := deal.AsItIs
			if m := r.Options[choice[i]]; m != nil {
				name = m.Label
			}
			parts = append(parts, r.Room.Label+": "+name)
		}
		c, err := h.At(choice)
		require.NoError(t, err)
		x, found := deal.Read("walnut-row.yaml", text, deal.Set{Path: "scope", Value: "{" + strings.Join(parts, ", ") + "}"})
		require.Empty(t, found.Errors())
		v, err := exact.Evaluate(x.Model)
		require.NoError(t, err)
		for line, got := range map[string]decimal.Decimal{"owner_profit": c.Profit, "cash_needed": c.Cash, "budget": c.Budget} {
			require.Equal(t, v.Of(x.Model.Find(x.Root, line)).String(), got.String(), "%v %s", choice, line)
		}
		require.True(t, v.Of(x.Model.Find(x.Root, "own_hours")).Round(12).Equal(c.OwnHours.Round(12)))
		require.True(t, v.Of(x.Model.Find(x.Root, "renovation")).Round(12).Equal(c.Renovation.Round(12)))
	}
}
