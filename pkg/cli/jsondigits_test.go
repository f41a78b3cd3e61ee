package cli_test

import (
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

// endless is a figure with more decimals than anyone reads: a third of a month has no end.
var endless = regexp.MustCompile(`"-?\d+\.\d{13,}"`)

func TestJSONHasNoEndlessDecimals(t *testing.T) {
	for _, name := range []string{"juniper-lane.yaml", "walnut-row.yaml"} {
		file := filepath.Join(scenarios, name)
		for _, args := range [][]string{{"bid"}, {"cash"}, {"stress"}, {"odds", "--trials", "2000"}, {"scope"}, {"buy"}, {"compare"}, {"best"}} {
			if name == "juniper-lane.yaml" && args[0] != "bid" && args[0] != "cash" && args[0] != "stress" && args[0] != "odds" {
				continue // it has no rooms
			}
			out, wrong, code := run(t, "", append([]string{args[0], file, "--json"}, args[1:]...)...)
			require.Zero(t, code, wrong)
			require.Empty(t, endless.FindAllString(out, -1), "%s %s", args[0], name)
		}
	}
}
