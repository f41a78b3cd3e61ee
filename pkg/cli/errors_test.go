package cli_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/report"
)

const catalogue = "../../testdata/errors"

// notInFiles are the codes that no file of the catalogue can bring about, and why.
var notInFiles = map[string]string{
	"file-too-large":     "a file of more than a megabyte is not kept; a test of the reader makes one",
	"unknown-set-path":   "it comes from --set, not from a file",
	"ambiguous-set-path": "it comes from --set, not from a file",
	"set-loses-time":     "it comes from --set, not from a file",
	"set-adds-near":      "it comes from --set, not from a file",
	"set-into-value":     "it comes from --set, not from a file",
	"unreadable":         "a table with a line of over 64 KB is not kept; a test of the reader makes one",
	"value-used-up":      "it comes from --set, or from best",
	"bad-axis":           "it comes from --across and --down, not from a file",
	"axis-not-here":      "it comes from --across and --down, not from a file",
	"missing-input":      "the checks before leave no way to it",
	"circle":             "the checks before leave no way to it",
	"not-bound":          "the checks before leave no way to it",
}

// jargon is what no message may hold: the words of the language the program is
// written in and of the libraries under it.
var jargon = []string{"%!", "strconv", "yaml:", "nil", "map[", "invalid syntax", "unmarshal", "panic", "did not find expected"}

// Each file of the catalogue is wrong or doubtful in the way its name says; the
// text beside it is all that check writes. With -update the texts are rewritten,
// and then want reading.
func TestErrors(t *testing.T) {
	t.Chdir(catalogue) // so that the pages name the file alone
	all, err := filepath.Glob("*.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(all), 120)
	seen := map[string]diag.Severity{}
	for _, file := range all {
		name := strings.TrimSuffix(file, ".yaml")
		t.Run(name, func(t *testing.T) {
			out, wrong, code := run(t, "", "check", file)
			require.Empty(t, wrong)
			found := foundIn(t, file)
			require.NotEmpty(t, found, "nothing is wrong with it")
			require.Equal(t, found.HasErrors(), code == 3, "the exit code tells of mistakes")
			for _, d := range found {
				seen[d.Code] = d.Severity
			}
			if one := codeOf(name); one != "" {
				require.Contains(t, codesOf(found), one, "the name promises it")
			}
			fits(t, file, out)
			if *update {
				require.NoError(t, os.WriteFile(name+".txt", []byte(out), 0o644))
			}
			want, err := os.ReadFile(name + ".txt")
			require.NoError(t, err)
			require.Equal(t, string(want), out, "if it is meant, run with -update and read the diff")
		})
	}
	mistakes := 0
	for _, severity := range seen {
		if severity == diag.Error {
			mistakes++
		}
	}
	require.GreaterOrEqual(t, mistakes, 60)
	for _, c := range deal.Codes() {
		_, reached := seen[c.Name]
		require.Equal(t, notInFiles[c.Name] == "", reached, c.Name)
	}
	texts, err := filepath.Glob("*.txt")
	require.NoError(t, err)
	require.Len(t, texts, len(all), "a text without its file")
}

// foundIn is what check finds, as its JSON tells it.
func foundIn(t *testing.T, file string) diag.List {
	out, _, _ := run(t, "", "check", "--json", file)
	var page struct {
		Files []struct {
			Found []struct {
				Code, Severity, Message, Hint string
				Pos                           diag.Pos
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &page))
	require.Len(t, page.Files, 1)
	var all diag.List
	for _, d := range page.Files[0].Found {
		require.NotEmpty(t, d.Message)
		require.NotEmpty(t, d.Hint, "%s says no way out", d.Code)
		if !strings.HasPrefix(d.Pos.File, "books/") { // the price book that the file names
			require.Equal(t, file, d.Pos.File, d.Code)
		}
		for _, word := range jargon {
			require.NotContains(t, strings.ToLower(d.Message+"\n"+d.Hint), word, d.Code)
		}
		one := diag.Diag{Code: d.Code, Pos: d.Pos, Message: d.Message, Hint: d.Hint}
		if d.Severity == diag.Warning.String() {
			one.Severity = diag.Warning
		}
		all.Add(one)
	}
	return all
}

func codesOf(all diag.List) []string {
	var out []string
	for _, d := range all {
		out = append(out, d.Code)
	}
	return out
}

// codeOf is the code that the name of a file begins with, the longest if there are
// several, or "".
func codeOf(name string) string {
	longest := ""
	for _, c := range deal.Codes() {
		if (name == c.Name || strings.HasPrefix(name, c.Name+"-")) && len(c.Name) > len(longest) {
			longest = c.Name
		}
	}
	return longest
}

// fits checks that no line is wider than the page, but for a long name of the file.
func fits(t *testing.T, file, out string) {
	for _, line := range strings.Split(out, "\n") {
		width := utf8.RuneCountInString(line)
		require.True(t, width <= report.Width || strings.HasPrefix(line, file) && len(file) > report.Width/2, line)
	}
}
