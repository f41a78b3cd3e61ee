package modeltest_test

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/internal/modeltest"
)

// So many deals are tried as are asked for, a twentieth of them with -short, also where the last part
// is no whole one.
func TestCheckTriesSoMany(t *testing.T) {
	var tried atomic.Int64
	modeltest.Check(t, 250, func(*rapid.T) { tried.Add(1) })
	want := 250
	if testing.Short() {
		want /= 20
	}
	require.EqualValues(t, want, tried.Load())
}
