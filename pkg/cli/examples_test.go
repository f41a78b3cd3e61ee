package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cli"
	"ledgerboard/pkg/report"
)

// The help text of each verb begins with examples; what stands behind three blanks in
// one is a remark. Each runs on the file that new writes, and the help fits the page.
func TestExamplesOfTheHelpTextsRun(t *testing.T) {
	var err error
	walnut, err = filepath.Abs("../../scenarios/walnut-row.yaml")
	require.NoError(t, err)
	larkspur, err = filepath.Abs("../../scenarios/larkspur-way.yaml")
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	root := cli.Command(cli.Streams{Env: func(string) string { return "" }})
	ran := 0
	for _, c := range append(root.Commands(), root) {
		var help bytes.Buffer
		c.SetOut(&help)
		require.NoError(t, c.Help())
		for _, line := range strings.Split(help.String(), "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), report.Width, line)
		}
		_, block, _ := strings.Cut(c.Long, "Example:\n\n")
		block, _, _ = strings.Cut(block, "\n\n")
		for _, line := range strings.Split(block, "\n") {
			line, _, _ = strings.Cut(strings.TrimSpace(line), "   ")
			if args := words(line); len(args) > 0 {
				require.Equal(t, "ledgerboard", args[0])
				prepare(t, args[1])
				_, wrong, code := run(t, "", args[1:]...)
				require.Zero(t, code, "%s: %s", line, wrong)
				ran++
			}
		}
	}
	require.GreaterOrEqual(t, ran, 14, "the examples were found")
}

// walnut is the scenario with rooms, larkspur that with sold houses.
var walnut, larkspur string

// prepare leaves the starter file where a verb wants it, or none for new, and tables of
// quotes and of sales; what a verb wrote before is taken away.
func prepare(t *testing.T, verb string) {
	for _, written := range []string{"my-house.yaml", "prices.csv", "mine.yaml"} {
		require.NoError(t, os.RemoveAll(written))
	}
	require.NoError(t, os.WriteFile("quotes.csv", []byte("name,price\nporcelain floor tile,31.20\n"), 0o644))
	require.NoError(t, os.WriteFile("county.csv", []byte("sale date,price\n2026-05-04,281000\n2026-06-09,276500\n"), 0o644))
	if verb == "comps" {
		text, err := os.ReadFile(larkspur)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile("my-house.yaml", text, 0o600))
		return
	}
	if slices.Contains([]string{"scope", "buy", "compare", "best"}, verb) { // of a house with rooms
		text, err := os.ReadFile(walnut)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile("my-house.yaml", text, 0o600))
		require.NoError(t, os.WriteFile("other-house.yaml", text, 0o600))
		return
	}
	if verb != "new" {
		_, wrong, code := run(t, "", "new", "my-house.yaml")
		require.Zero(t, code, wrong)
	}
}
