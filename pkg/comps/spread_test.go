package comps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand: two sales 0.3 off either side. The usual scatter of 0.2 counts for eight, so
// the square is (8*0.04 + 2*0.09)/9, and Student's t of 9 degrees is 1.383 at its upper
// tenth (any table of it); a mean of two adds half.
func TestFewByHand(t *testing.T) {
	half := []float64{0.5, 0.5}
	require.InDelta(t, 1.383*0.2357*1.2247, few(0, half, half, []float64{0.3, -0.3}, 0), 1e-3)
	require.InDelta(t, 1.383*math.Hypot(0.2357*1.2247, 0.1), few(0, half, half, []float64{0.3, -0.3}, 0.1), 1e-3, "the market's trend on its own")
	require.Greater(t, few(0, half, []float64{0.9, 0.1}, []float64{0.3, -0.3}, 0), few(0, half, half, []float64{0.3, -0.3}, 0), "a mean of fewer is less sure")
}

func TestShareInWords(t *testing.T) {
	require.Equal(t, "-85%", shareInWords(-0.85))
	require.Equal(t, "100000%", shareInWords(1000))
	require.Equal(t, "more than 1,000 times", shareInWords(1e268))
	require.Equal(t, "more than 1,000 times", shareInWords(math.Inf(1)))
}
