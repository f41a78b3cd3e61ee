package chance_test

import (
	"context"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/deal"
)

func juniper(t testing.TB) *deal.Deal {
	text, err := os.ReadFile("../../scenarios/juniper-lane.yaml")
	require.NoError(t, err)
	return read(t, string(text))
}

func TestTry(t *testing.T) {
	d := juniper(t)
	for _, n := range []int{50_000, 1_000_000} {
		start := time.Now()
		o, err := chance.Ask(context.Background(), d, chance.Options{Trials: n, Seed: 1, Confidence: 0.8})
		require.NoError(t, err)
		t.Log(n, time.Since(start), o.Trials, o.None, o.Loss, o.AnyMissed, o.Watched, o.Missed, o.Beyond)
		for i, f := range o.Figures {
			t.Log(i, f.Percentile(0.1), f.Percentile(0.5), f.Percentile(0.9), f.Mean())
		}
		t.Log(o.PlanOffer, o.Safe)
	}
}
