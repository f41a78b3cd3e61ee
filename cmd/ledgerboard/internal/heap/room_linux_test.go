package heap

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLargePagesAreGivenWhereTheSystemHasThem(t *testing.T) {
	_, err := os.Stat("/sys/kernel/mm/transparent_hugepage")
	require.Equal(t, err == nil, inLargePages(make([]byte, first+room)[first:]) == nil)
}
