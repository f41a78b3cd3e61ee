package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
)

const errorsIntro = `# What can be wrong with a deal file

` + "`ledgerboard check FILE`" + ` reports every mistake at once, each with its place,
what was found and what would do; a slip in the YAML itself stops the reading, and
rooms and work are measured once the rest is right. Once there is no mistake, it tells
every doubtful spot the same way. A mistake stops the work; a doubtful spot does not. Each is named by a code, which stays the same. The
examples are run in the tests, so what is shown is what is said.
`

// several begins the names of examples with more than one thing wrong.
const several = "several-"

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
		if e := first(all, c.Name); e != nil {
			e.write(&b)
		}
	}
	rest(&b, all, "Doubts that only the results show", func(e example) bool { return e.code == "" && !strings.HasPrefix(e.name, several) })
	rest(&b, all, "Several at once", func(e example) bool { return strings.HasPrefix(e.name, several) })
	return b.String(), nil
}

// An example is a file that brings a diagnostic about, with what is said.
type example struct {
	name, code  string
	input, said string
}

// examples reads them in order, the plainest name of each code first.
func examples(dir string) ([]example, error) {
	names, err := filepath.Glob(filepath.Join(dir, "*.txt"))
	if err != nil {
		return nil, err
	}
	var out []example
	for _, name := range names {
		base := strings.TrimSuffix(name, ".txt")
		said, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		input, err := os.ReadFile(filepath.Join(dir, about(base, string(said))))
		if err != nil {
			return nil, err
		}
		base = filepath.Base(base)
		out = append(out, example{base, codeOf(base), string(input), string(said)})
	}
	slices.SortStableFunc(out, func(a, b example) int { return cmp.Compare(len(a.name), len(b.name)) })
	return out, nil
}

// about is the file that the first thing said is about: the example itself, or the price
// book that it names.
func about(base, said string) string {
	if m := inBook.FindString(said); m != "" {
		return m
	}
	return filepath.Base(base) + ".yaml"
}

var inBook = regexp.MustCompile(`^books/[a-z-]+\.yaml`)

// codeOf is the longest code that a name begins with, or "".
func codeOf(name string) string {
	longest := ""
	for _, c := range deal.Codes() {
		if strings.HasPrefix(name+"-", c.Name+"-") && len(c.Name) > len(longest) {
			longest = c.Name
		}
	}
	return longest
}

// first is the example with the shortest name of a code, or nil.
func first(all []example, code string) *example {
	for i := range all {
		if all[i].code == code {
			return &all[i]
		}
	}
	return nil
}

// rest writes the examples that belong to no code of the file.
func rest(b *strings.Builder, all []example, heading string, wanted func(example) bool) {
	for _, e := range all {
		if !wanted(e) {
			continue
		}
		if heading != "" {
			fmt.Fprintf(b, "\n# %s\n", heading)
			heading = ""
		}
		fmt.Fprintf(b, "\n## %s\n", e.name)
		e.write(b)
	}
}

func (e *example) write(b *strings.Builder) {
	if x := excerpt(e.input, e.lines()); strings.TrimSpace(x) != "" {
		fmt.Fprintf(b, "\n```yaml\n%s```\n", x)
	}
	fmt.Fprintf(b, "\n```text\n%s\n```\n", strings.TrimRight(visible(e.said), "\n"))
}
