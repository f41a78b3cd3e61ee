package chance

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The highest price that enough offers reach is the one of a sorted list of them.
func TestTheTallyFindsTheOfferOfARank(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		confidence := rapid.Float64Range(0.01, 0.99).Draw(t, "confidence")
		offer := rapid.Custom(func(t *rapid.T) float64 {
			if rapid.IntRange(0, 20).Draw(t, "kind") == 0 {
				return rapid.SampledFrom([]float64{0, math.NaN(), 3_590_000}).Draw(t, "odd")
			}
			return float64(rapid.IntRange(150_000, 151_000).Draw(t, "offer"))
		})
		blocks := rapid.SliceOfN(rapid.SliceOfN(offer, 1, 60), 1, 6).Draw(t, "blocks")
		tally := newTally(confidence)
		var all []float64
		for _, b := range blocks {
			tally.add(b)
			all = append(all, b...)
		}
		all = slices.DeleteFunc(all, math.IsNaN)
		if len(all) == 0 {
			return
		}
		need := int64(math.Ceil(confidence*float64(len(all)) - 1e-9))
		slices.Sort(all)
		want := all[int64(len(all))-need] // so many are as high
		if got, known := tally.highest(need); known {
			require.Equal(t, want, got)
		}
	})
}

// With as many offers as a run has at first, what is counted holds the answer.
func TestTheTallyCountsWhereTheAnswerLies(t *testing.T) {
	tally := newTally(0.8)
	var all []float64
	for block := range 30 {
		var offers []float64
		for i := range 4096 {
			offers = append(offers, float64(180_000+(i*7919+block*104_729)%40_000))
		}
		tally.add(offers)
		all = append(all, offers...)
	}
	slices.Sort(all)
	need := int64(math.Ceil(0.8 * float64(len(all))))
	got, known := tally.highest(need)
	require.True(t, known)
	require.Equal(t, all[int64(len(all))-need], got)
	require.Less(t, len(tally.counts), 10_000, "a part of them")
}
