package heap

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTheHeapHasLargePagesWhereTheSystemDoes(t *testing.T) {
	_, none := os.Stat("/sys/kernel/mm/transparent_hugepage")
	require.Equal(t, none == nil, advised(t) >= room)
}

// advised is how many bytes of the program large pages were asked for.
func advised(t *testing.T) (n int) {
	text, err := os.ReadFile("/proc/self/smaps")
	require.NoError(t, err)
	var from, to int
	for line := range strings.Lines(string(text)) {
		flags, is := strings.CutPrefix(line, "VmFlags:")
		switch {
		case is && strings.Contains(flags, " hg"):
			n += to - from
		case !is:
			var a, b int
			if got, _ := fmt.Sscanf(line, "%x-%x ", &a, &b); got == 2 {
				from, to = a, b
			}
		}
	}
	return n
}
