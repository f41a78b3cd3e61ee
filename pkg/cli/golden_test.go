package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cli"
	"ledgerboard/pkg/report"
)

const scenarios = "../../scenarios"

// names are the scenarios by file name.
func names(t *testing.T) []string {
	all, err := filepath.Glob(scenarios + "/*.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(all), 5)
	for i := range all {
		all[i] = filepath.Base(all[i])
	}
	return all
}

// run carries out a command line in a directory with scenarios in it; what it
// wrote is returned with its exit code.
func run(t *testing.T, in string, args ...string) (out, wrong string, code int) {
	var o, e bytes.Buffer
	code = cli.Run(args, cli.Streams{In: strings.NewReader(in), Out: &o, Err: &e, Env: func(string) string { return "" }})
	return o.String(), e.String(), code
}

// The golden pages show the shape; what the figures are is proved elsewhere.
func TestGoldenPages(t *testing.T) {
	t.Chdir("../..") // so that pages name files as a user would
	golden := filepath.Join("testdata", "golden")
	all, err := filepath.Glob("scenarios/*.yaml")
	require.NoError(t, err)
	page := func(scenario, verb string, args ...string) {
		out, wrong, code := run(t, "", append([]string{verb, scenario}, args...)...)
		require.Zero(t, code, "%s %s: %s", verb, scenario, wrong)
		require.Empty(t, wrong)
		for _, line := range strings.Split(out, "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), report.Width, line)
		}
		name := filepath.Join(golden, strings.TrimSuffix(filepath.Base(scenario), ".yaml")+"."+verb+".txt")
		if *update {
			require.NoError(t, os.WriteFile(name, []byte(out), 0o644))
		}
		want, err := os.ReadFile(name)
		require.NoError(t, err)
		require.Equal(t, string(want), out, "%s differs; if it is meant, run make golden and read the diff", name)
	}
	for _, scenario := range all {
		page(scenario, "bid")
		page(scenario, "cash")
	}
	page("scenarios/juniper-lane.yaml", "odds", "--trials", "20000")
	page("scenarios/juniper-lane.yaml", "stress")
	page("scenarios/larkspur-way.yaml", "comps")
	pages, err := filepath.Glob(filepath.Join(golden, "*.txt"))
	require.NoError(t, err)
	require.Len(t, pages, 2*len(all)+3, "a golden page of no scenario is left over")
}
