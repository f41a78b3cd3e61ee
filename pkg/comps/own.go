package comps

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
)

// ownName evens out the name of an own line, as a header or a cell has it.
func ownName(s string) string {
	name, _ := plain(s)
	return name
}

// ownCalled is the own line that is called so, or "".
func ownCalled(own []string, s string) string {
	name := ownName(s)
	if i := slices.IndexFunc(own, func(o string) bool { return name != "" && ownName(o) == name }); i >= 0 {
		return own[i]
	}
	return ""
}

// ownHeader is the own line that a header is that of: pool, Has pool, Pool (Y/N); "" for none.
func ownHeader(own []string, header string) string {
	name := strings.TrimPrefix(ownName(header), "has ")
	for _, behind := range []string{" y n", " yes no"} {
		name = strings.TrimSuffix(name, behind)
	}
	return ownCalled(own, name)
}

// has reads which of the own lines a house has: pool, busy street.
func (r *row) has(s string) error {
	r.tells(r.own...)
	if slices.Contains(noGarage, r.word(s)) {
		return nil
	}
	if name := ownCalled(r.own, s); name != "" {
		r.gets(name)
		return nil
	}
	var unknown []string
	for _, part := range strings.FieldsFunc(s, func(c rune) bool { return strings.ContainsRune(",;&+/|", c) }) {
		words := []string{part}
		if ownCalled(r.own, part) == "" {
			words = strings.Split(" "+strings.ToLower(part)+" ", " and ")
		}
		for _, w := range words {
			if name := ownCalled(r.own, w); name != "" {
				r.gets(name)
			} else if w = strings.TrimSpace(w); w != "" {
				unknown = append(unknown, w)
			}
		}
	}
	if len(unknown) > 0 {
		r.doubt = unpriced(unknown, r.own)
	}
	return nil
}

// gets adds an own line to those that the house has.
func (r *row) gets(name string) {
	if !slices.Contains(r.Has, name) {
		r.Has = append(r.Has, name)
	}
}

// tells notes own lines of which a cell says something.
func (r *row) tells(names ...string) {
	for _, name := range names {
		if !slices.Contains(r.told, name) {
			r.told = append(r.told, name)
		}
	}
}

// toldOwn notes of all sales of which own lines their list says something: where some have a pool
// or none, an empty cell is that of a house without.
func (l *List) toldOwn(names []string) {
	for i := range l.sales {
		l.sales[i].Told = names
	}
}

// unpriced doubts what a house has and no own line prices.
func unpriced(words, own []string) *cellDoubt {
	all := strings.Join(words, ", ")
	want := fmt.Sprintf("what it is worth, e.g.   own lines: {%s: $15,000}   under comps", words[0])
	if near, ok := diag.Nearest(strings.ToLower(words[0]), own); ok {
		want = "it as the own line is called: " + near
	}
	return &cellDoubt{func(string) string {
		return "no own line says what " + diag.Quote(all) + " is worth, so it does not count"
	}, want}
}

// hasIt reads whether a house has one of the own lines, in a column of its own.
func hasIt(name string) func(*row, string) error {
	return func(r *row, s string) error {
		r.tells(name)
		switch w := r.word(s); {
		case slices.Contains([]string{"y", "yes", "true", "t", "1", "x", "✓", "✔"}, w), ownName(s) == ownName(name):
			r.gets(name)
		case slices.Contains([]string{"n", "no", "none", "false", "f", "0", "without"}, w):
		default:
			r.doubt = &cellDoubt{func(text string) string {
				return diag.Quote(text) + " is neither yes nor no, so it counts as no"
			}, "yes or no, for whether it has a " + name}
		}
		return nil
	}
}

// takeOwn takes a column as that of an own line, unless another is, and reports whether it does.
func (r *reader) takeOwn(name string, at int) bool {
	if name == "" || slices.ContainsFunc(r.columns, func(c column) bool { return c.name == name }) {
		return false
	}
	r.columns = append(r.columns, column{at, field{name: name, read: hasIt(name)}, strings.TrimSpace(r.record[at])})
	return true
}
