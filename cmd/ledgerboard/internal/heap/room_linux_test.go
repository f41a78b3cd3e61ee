package heap

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLargePagesAreGivenWhereTheSystemHasThem(t *testing.T) {
	if _, err := os.Stat("/sys/kernel/mm/transparent_hugepage"); err != nil {
		t.Skip("the system has no large pages")
	}
	require.NoError(t, inLargePages(make([]byte, room)))
}
