package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/cli"
	"ledgerboard/pkg/deal"
)

// written are the pages that people read, from the root of the repository.
func written(t *testing.T) []string {
	docs, err := filepath.Glob("../../docs/*.md")
	require.NoError(t, err)
	require.NotEmpty(t, docs)
	return append([]string{"../../README.md", "../../DEVELOPERS.md"}, docs...)
}

// blocks returns the fenced blocks of a page that are of a kind.
func blocks(t *testing.T, page, kind string) []string {
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	var out []string
	for _, part := range strings.Split("\n"+string(text), "\n```"+kind+"\n")[1:] {
		block, _, closed := strings.Cut(part, "\n```")
		require.True(t, closed, "%s: a block has no end", page)
		out = append(out, block)
	}
	return out
}

// What a page shows of a terminal is what happens: lines that begin with "$ " are
// run, one after the other in one directory, and the rest is what they write.
// A line of "..." stands for some lines left out.
func TestConsoleBlocksShowWhatHappens(t *testing.T) {
	ran := 0
	for _, page := range written(t) {
		shown := blocks(t, page, "console")
		t.Run(filepath.Base(page), func(t *testing.T) {
			dir := t.TempDir()
			require.NoError(t, os.CopyFS(filepath.Join(dir, "scenarios"), os.DirFS(scenarios)))
			t.Chdir(dir)
			for _, block := range shown {
				for _, c := range strings.Split("\n"+block, "\n$ ")[1:] {
					ran++
					line, want, _ := strings.Cut(c, "\n")
					got := terminal(t, line)
					require.True(t, shows(lines(want), lines(got)), "$ %s\nwants:\n%s\nwrites:\n%s", line, want, got)
				}
			}
		})
	}
	require.GreaterOrEqual(t, ran, 5, "the blocks were found")
}

// terminal carries out a command line and returns all it writes.
func terminal(t *testing.T, line string) string {
	args := words(line)
	require.Equal(t, "ledgerboard", args[0], "only ledgerboard can be shown")
	var out bytes.Buffer
	cli.Run(args[1:], cli.Streams{In: strings.NewReader(""), Out: &out, Err: &out, Env: func(string) string { return "" }})
	return out.String()
}

// words splits a command line at blanks outside of quotes.
func words(line string) []string {
	var out []string
	word, open, quote := "", false, rune(0)
	for _, r := range line + " " {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote != 0:
			word += string(r)
		case r == '"' || r == '\'':
			quote, open = r, true
		case r == ' ' && (open || word != ""):
			out, word, open = append(out, word), "", false
		case r != ' ':
			word += string(r)
		}
	}
	return out
}

func lines(text string) []string { return strings.Split(strings.TrimRight(text, "\n"), "\n") }

// shows reports whether the lines are those wanted, where "..." is any number.
func shows(want, got []string) bool {
	switch {
	case len(want) == 0:
		return len(got) == 0
	case want[0] == "...":
		return shows(want[1:], got) || len(got) > 0 && shows(want, got[1:])
	}
	return len(got) > 0 && want[0] == got[0] && shows(want[1:], got[1:])
}

func TestShows(t *testing.T) {
	got := []string{"a", "b", "c"}
	require.True(t, shows([]string{"a", "b", "c"}, got))
	require.True(t, shows([]string{"...", "c"}, got))
	require.True(t, shows([]string{"a", "...", "b", "..."}, got))
	require.False(t, shows([]string{"a", "..."}, []string{"b"}))
	require.False(t, shows([]string{"a", "b"}, got))
	require.False(t, shows([]string{"...", "b"}, got))
	require.Equal(t, []string{"a", "b c", "", "d=e f"}, words(`a "b c" '' d="e f"`))
}

// What a page shows of a deal file can be read: the keys of a block are laid over
// the smallest deal that there is. A block of products or items is a price book.
func TestYAMLBlocksCanBeRead(t *testing.T) {
	smallest := map[string]string{
		"purchase": "purchase: {price: $148k}", "value": "value: {after-repair value: $214k}", "time": "time: {marketing: 1 month}",
	}
	read := 0
	for _, page := range written(t) {
		if filepath.Base(page) == "errors.md" {
			continue // they show mistakes
		}
		for _, block := range blocks(t, page, "yaml") {
			read++
			if strings.HasPrefix(block, "products:") || strings.HasPrefix(block, "items:") {
				book, found := deal.OwnBook(filepath.Base(page), []byte(block))
				require.NotNil(t, book, "%v in\n%s", found, block)
				continue
			}
			text := block
			for key, line := range smallest {
				if !strings.Contains("\n"+block, "\n"+key+":") {
					text += "\n" + line
				}
			}
			emptyBook := func(string) ([]byte, error) { return nil, nil }
			d, found := deal.ReadWith(deal.Options{Open: emptyBook}, filepath.Base(page), []byte(text))
			require.NotNil(t, d, "%v in\n%s", found.Errors(), text)
			for _, doubt := range found {
				require.NotContains(t, doubt.Hint, "leave it out", "%v in\n%s", doubt, text)
			}
		}
	}
	require.Positive(t, read, "the blocks were found")
}
