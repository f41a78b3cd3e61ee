package cli_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/report"
)

// Every page and every hint of every scenario fits a console of 80 columns.
func TestEveryPageAndHintFitsTheConsole(t *testing.T) {
	all := names(t)
	t.Chdir("../..") // so that hints name files as a user would
	for _, name := range all {
		file := filepath.Join("scenarios", name)
		for _, args := range [][]string{
			{"check", file}, {"bid", file, "--cautions"}, {"cash", file},
			{"scope", file, "--items"}, {"scope", file, "--room", "kitchen"}, {"scope", file, "--trade", "paint"}, {"buy", file},
			{"scope", file, "--room", "attic"}, {"scope", file, "--room", "nowhere"}, {"scope", file, "--trade", "plumber"}, {"scope", file, "--trade", "xyzzy"},
			{"compare", file}, {"best", file, "--cash", "1"},
			{"why", file, "profit"}, {"why", file, "renovation budget", "--depth", "6"}, {"why", file, "profit at that price"},
			{"why", file, "walls"}, {"why", file, "paint walls"}, {"why", file, "kitchen, pait walls"}, {"why", file, "xyzzy"}, {"why", file, "amount"},
			{"why", file, "break-even"}, {"why", file, "irr"}, {"why", file, "maximum offer"},
			{"bid", file, "--set", "price=free"}, {"bid", file, "--set", "no such key of the file at all=1"},
		} {
			narrowEnough(t, args...)
		}
	}
	for _, args := range [][]string{
		{"prices"}, {"prices", "floor"}, {"prices", "tile floor"}, {"prices", "board", "and", "batten"}, {"prices", "nothing like that at all"},
		{"prices", "--csv", "some", "words", "that", "make", "it", "quite", "a", "bit", "longer"}, {"lines"}, {"lines", "proffit"}, {"exit-codes"},
		{"bid", "scenarios/there-is-no-such-file.yaml"}, {"bid"}, {"bdi"}, {"bid", "a.yaml", "b.yaml"}, {"bid", "a.yaml", "--colour", "always"},
	} {
		narrowEnough(t, args...)
	}
}

// narrowEnough checks all that a command writes, results and hints alike.
func narrowEnough(t *testing.T, args ...string) {
	t.Helper()
	out, wrong, _ := run(t, "", args...)
	require.NotEmpty(t, out+wrong, "%q", args)
	for _, line := range strings.Split(out+wrong, "\n") {
		require.LessOrEqual(t, utf8.RuneCountInString(line), report.Width, "%q:\n%s", args, line)
	}
	if slices.Contains([]string{"scope", "buy"}, args[0]) {
		require.NotContains(t, out, "…", "%q cuts a name, which why would have to take", args)
	}
}
