package pricebook

import (
	"errors"
	"io"
	"strings"

	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
)

// Read reads an owner's book, which stands before the one it adds to. An entry of a name
// that the book below has too takes from it what it does not say. The list holds every
// mistake in it; the book is of use only without any.
func Read(name, text string, below *Book) (*Book, diag.List) {
	b := &Book{products: map[string]*entry{}, items: map[string]*entry{}, below: below}
	var found diag.List
	r := &reader{file: name, found: &found}
	doc, bad := document(name, text)
	switch {
	case bad != nil:
		found.Add(*bad)
		return b, found
	case len(doc.Content) > 0 && doc.Content[0].Tag != "!!null":
		r.sections(b, nodeOf(doc.Content[0]))
	}
	b.check(&found)
	found.Sort()
	return b, found
}

// document is the one YAML document of a text, which may be empty.
func document(name, text string) (doc yaml.Node, bad *diag.Diag) {
	d := yaml.NewDecoder(strings.NewReader(text))
	err := d.Decode(&doc)
	if errors.Is(err, io.EOF) {
		return doc, nil
	}
	var more yaml.Node
	if err == nil {
		if err = d.Decode(&more); errors.Is(err, io.EOF) {
			return doc, nil
		}
	}
	at := diag.Pos{File: name, Line: max(1, more.Line), Col: 1}
	why := "the price book has more than one document"
	var flaw *yaml.LoadError
	if errors.As(err, &flaw) {
		at.Line, at.Col = max(1, flaw.Mark.Line), max(1, flaw.Mark.Column)
		why = "the price book is not YAML here"
	}
	out := diag.Errorf(at, "book-syntax", "%s", why).WithHint("check the indentation, the colons, the quotes and the brackets near that line")
	return doc, &out
}

func (r *reader) sections(b *Book, n *node) {
	known := func() []string { return sections[:] }
	r.mapping(n, "the price book", known, func(key, value *node) bool {
		for kind, section := range sections {
			if key.Value != section {
				continue
			}
			r.mapping(value, section, nil, func(name, body *node) bool {
				e := &entry{kind: kind, name: even(name.Value), file: r.file, line: int(name.Line)}
				e.once.Do(func() { r.entry(e, name, body, b.below) })
				if b.own(kind, e.name) != nil && name.Value != e.name {
					r.wrong(name, "book-twice", "%q is given twice, as %q", e.name, name.Value)("keep one of them")
				}
				b.put(e)
				return true
			})
			return true
		}
		return false
	})
}

// read reads an entry of the starter book when it is first asked for.
func (e *entry) read() *entry {
	e.once.Do(func() {
		doc := plain(e.text())
		r := &reader{file: "starter book, " + e.file, above: e.line - 1, found: &e.found, starter: true}
		r.entry(e, doc.Content[0], doc.Content[1], nil)
	})
	return e
}

// even is a name in small letters with single blanks, as all names of a book are.
func even(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

func (r *reader) entry(e *entry, name, body *node, below *Book) {
	at := r.pos(name)
	r.below, r.kind = below, e.kind
	if e.kind == products {
		e.product = r.product(e.name, at, body, below.Product(e.name))
		return
	}
	e.item = r.item(e.name, at, body, below.Item(e.name))
}

// check finds names that lead nowhere and companions that go round in a circle.
func (b *Book) check(found *diag.List) {
	for _, name := range b.names[items] {
		it := b.items[name].item
		for _, u := range it.Uses {
			if b.Product(u.Product) == nil {
				unknown(found, u.Pos, "book-unknown-product", "product", u.Product, b.Products())
			}
		}
		for _, other := range it.InsteadOf {
			if b.Item(other) == nil {
				unknown(found, it.Pos, "book-unknown-item", "item", other, b.Items())
			}
		}
		for _, c := range it.Brings {
			for _, u := range c.Unless {
				if b.Item(u) == nil {
					unknown(found, c.Pos, "book-unknown-item", "item", u, b.Items())
				}
			}
			switch {
			case b.Item(c.Item) == nil:
				unknown(found, c.Pos, "book-unknown-item", "item", c.Item, b.Items())
			case b.leads(c.Item, name, map[string]bool{}):
				found.Add(diag.Errorf(c.Pos, "book-circle", "%q brings %q, which brings it back", name, c.Item).WithHint("leave one of the two out"))
			case c.House:
				if by, d, bad := b.depending(c.Item, map[string]bool{}); bad {
					found.Add(diag.Errorf(c.Pos, "book-house-unless", "%q is done once for the house, but %q brings %q unless there is %s, which may differ from room to room", c.Item, by, d.Item, strings.Join(d.Unless, " or ")).WithHint("bring it without   in house, or leave the   unless   out"))
				}
			}
		}
	}
}

// depending finds a companion that does not come beside other work among what an item
// brings, directly or not.
func (b *Book) depending(name string, seen map[string]bool) (by string, c Companion, found bool) {
	it := b.Item(name)
	if it == nil || seen[name] {
		return "", Companion{}, false
	}
	seen[name] = true
	for _, c := range it.Brings {
		if len(c.Unless) > 0 {
			return name, c, true
		}
		if by, c, found := b.depending(c.Item, seen); found {
			return by, c, true
		}
	}
	return "", Companion{}, false
}

// leads reports whether an item brings another, by itself or by what it brings.
func (b *Book) leads(from, to string, seen map[string]bool) bool {
	if from == to {
		return true
	}
	if it := b.Item(from); it != nil && !seen[from] {
		seen[from] = true
		for _, c := range it.Brings {
			if b.leads(c.Item, to, seen) {
				return true
			}
		}
	}
	return false
}

func unknown(found *diag.List, at diag.Pos, code, kind, name string, known []string) {
	d := diag.Errorf(at, code, "there is no %s called %q", kind, name)
	if near, ok := diag.Nearest(name, known); ok {
		found.Add(d.WithHint("did you mean %q?", near))
		return
	}
	found.Add(d.WithHint("see   ledgerboard prices   for all names, or add it to your own book"))
}
