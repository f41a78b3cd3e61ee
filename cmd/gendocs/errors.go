package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

const errorsIntro = `# What can be wrong with a deal file

` + "`ledgerboard check FILE`" + ` reports every mistake and every doubtful spot at once,
each with its place, what was found and what would do. A mistake stops the work;
a doubtful spot does not. Each is named by a code, which stays the same. The
examples are run in the tests, so what is shown is what is said.
`

// errorsPage lists every code with its meaning and, where testdata/errors has
// one, an example: what the file says and what is said about it.
func errorsPage(root string) (string, error) {
	all, err := examples(filepath.Join(root, "testdata", "errors"))
	if err != nil {
		return "", err
	}
	var b strings.Builder
	b.WriteString(errorsIntro)
	severity := diag.Severity(-1)
	for _, c := range deal.Codes() {
		if c.Severity != severity {
			severity = c.Severity
			fmt.Fprintf(&b, "\n# %s\n", map[diag.Severity]string{diag.Error: "Mistakes", diag.Warning: "Doubtful spots"}[severity])
		}
		fmt.Fprintf(&b, "\n## %s\n\n%s.\n", c.Name, strings.ToUpper(c.Meaning[:1])+c.Meaning[1:])
		show(&b, all, c.Name)
	}
	rest(&b, all)
	return b.String(), nil
}

// An example is a file that brings a diagnostic about, with what is said.
type example struct {
	name         string
	input, said  string
	shownAlready bool
}

func examples(dir string) ([]*example, error) {
	names, err := filepath.Glob(filepath.Join(dir, "*.txt"))
	if err != nil {
		return nil, err
	}
	var out []*example
	for _, name := range names {
		said, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		e := &example{name: strings.TrimSuffix(filepath.Base(name), ".txt"), said: string(said)}
		input, err := os.ReadFile(strings.TrimSuffix(name, ".txt") + ".yaml")
		if err != nil && !os.IsNotExist(err) {
			return nil, err
		}
		e.input = string(input)
		out = append(out, e)
	}
	return out, nil
}

// show writes the examples of a code: those of its name, with or without a number.
func show(b *strings.Builder, all []*example, code string) {
	for _, e := range all {
		number, ok := strings.CutPrefix(e.name, code)
		if ok && strings.Trim(number, "-0123456789") == "" {
			e.write(b)
		}
	}
}

// rest writes what the examples show beyond the codes of the file: doubts about
// the results.
func rest(b *strings.Builder, all []*example) {
	if !slices.ContainsFunc(all, func(e *example) bool { return !e.shownAlready }) {
		return
	}
	b.WriteString("\n# Doubts that only the results show\n")
	for _, e := range all {
		if !e.shownAlready {
			fmt.Fprintf(b, "\n## %s\n", e.name)
			e.write(b)
		}
	}
}

func (e *example) write(b *strings.Builder) {
	e.shownAlready = true
	if x := excerpt(e.input, e.lines()); x != "" {
		fmt.Fprintf(b, "\n```yaml\n%s```\n", x)
	}
	fmt.Fprintf(b, "\n```text\n%s\n```\n", strings.TrimRight(visible(e.said), "\n"))
}
