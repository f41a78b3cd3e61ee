package pricebook

import (
	"errors"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// A reader reads entries of one file.
type reader struct {
	file  string
	above int // lines of the file above the text that is read
	found *diag.List

	starter bool    // it is the book that ships
	below   *Book   // the one that the entry adds to
	kind    int     // of the entry
	sold    []Stick // in what lengths the book below sells the product
}

func (r *reader) pos(n *node) diag.Pos {
	return diag.Pos{File: r.file, Line: int(n.Line) + r.above, Col: int(n.Column), Len: max(1, utf8.RuneCountInString(n.Value))}
}

func (r *reader) wrong(n *node, code, format string, args ...any) func(hint string, args ...any) {
	d := diag.Errorf(r.pos(n), code, format, args...)
	return func(hint string, args ...any) { r.found.Add(d.WithHint(hint, args...)) }
}

// hundreds are what a comma between thousands cuts off in a group in brackets.
var hundreds = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\d{3}(\.\d+)?$`) })

// mapping visits the keys of a group; visit returns false for a key that is none of the
// known ones, which are nil where any will do.
func (r *reader) mapping(n *node, what string, known func() []string, visit func(key, value *node) bool) {
	if n.Kind != yaml.MappingNode {
		r.wrong(n, "book-want-group", "%s is not a group of keys", what)("write keys with values below it")
		return
	}
	seen := make(map[string]bool, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		switch {
		case seen[key.Value]:
			r.wrong(key, "book-twice", "%q is given twice", key.Value)("keep one of them")
		case !visit(key, n.Content[i+1]):
			tell := r.wrong(key, "book-unknown-key", "%s has no key %q", what, key.Value)
			if hundreds().MatchString(key.Value) {
				tell("a comma between { and } begins another key; write an amount without it, e.g. $1200")
			} else if near, ok := diag.Nearest(key.Value, known()); ok {
				tell("did you mean %q?", near)
			} else {
				tell("its keys are: %s", strings.Join(slices.Sorted(slices.Values(known())), ", "))
			}
		}
		seen[key.Value] = true
	}
}

// keys reads a group by a table of its keys.
func (r *reader) keys(n *node, what string, table map[string]func(*node)) {
	known := func() []string { return slices.Collect(maps.Keys(table)) }
	r.mapping(n, what, known, func(key, value *node) bool {
		read := table[key.Value]
		if read == nil {
			return false
		}
		read(value)
		return true
	})
}

// text returns a reader of plain words.
func (r *reader) text(to *string) func(*node) {
	return func(n *node) { *to = r.words(n) }
}

func (r *reader) words(n *node) string {
	if n.Kind != yaml.ScalarNode || n.Null {
		r.wrong(n, "book-want-value", "a single value belongs here")("write it behind the colon")
		return ""
	}
	return n.Value
}

// parsed returns a reader that hands the value to a parser of package quantity.
func parsed[T any](r *reader, parse func(string) (T, error), take func(T)) func(*node) {
	return func(n *node) {
		text := r.words(n)
		if text == "" {
			return
		}
		x, err := parse(text)
		if err != nil {
			r.refused(n, err)
			return
		}
		take(x)
	}
}

func (r *reader) refused(n *node, err error) {
	q := &quantity.Error{}
	if errors.As(err, &q) {
		r.wrong(n, "book-bad-value", "%q: %s", n.Value, q.Why)("write %s", q.Want)
		return
	}
	r.wrong(n, "book-bad-value", "%v", err)("see docs/price-book.md")
}

func (r *reader) money(to *decimal.Decimal) func(*node) {
	return parsed(r, dollars, func(x decimal.Decimal) { *to = x })
}

// dollars reads an amount of 0 or more.
func dollars(text string) (decimal.Decimal, error) {
	x, err := quantity.ParseMoney(text)
	if q := (*quantity.Error)(nil); errors.As(err, &q) && strings.HasPrefix(q.Want, "an amount") {
		err = &quantity.Error{Found: q.Found, Why: q.Why, Want: "an amount in dollars, e.g. $24.90", At: q.At} // no price of a house
	}
	if err == nil && x.IsNegative() {
		err = &quantity.Error{Found: text, Why: "it is below zero", Want: "what it costs, e.g. $24.90"}
	}
	return x, err
}

func (r *reader) yesNo(take func(bool)) func(*node) {
	return parsed(r, quantity.ParseYesNo, take)
}

// list reads a list of words, or none.
func (r *reader) list(take func(*node)) func(*node) {
	return func(n *node) {
		switch {
		case n.Kind == yaml.ScalarNode && n.Value == "none":
		case n.Kind != yaml.SequenceNode:
			r.wrong(n, "book-want-list", "a list belongs here")("write   [one, another]   or   none")
		default:
			for _, x := range n.Content {
				take(x)
			}
		}
	}
}
