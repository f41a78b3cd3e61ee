package pricebook

import (
	"strings"

	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
)

// Read reads an owner's book, which stands before the one it adds to. The list holds
// every mistake in it; the book is of use only without any.
func Read(name, text string, below *Book) (*Book, diag.List) {
	b := &Book{products: map[string]*entry{}, items: map[string]*entry{}, below: below}
	var found diag.List
	r := &reader{file: name, found: &found}
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(text), &doc); err != nil {
		found.Add(diag.Errorf(diag.Pos{File: name, Line: 1}, "book-syntax", "the price book is not YAML: %s", firstLine(err)).WithHint("check the indentation and the colons near that line"))
		return b, found
	}
	if len(doc.Content) > 0 {
		r.sections(b, doc.Content[0])
	}
	b.check(&found)
	found.Sort()
	return b, found
}

func firstLine(err error) string {
	line, _, _ := strings.Cut(strings.TrimPrefix(err.Error(), "yaml: "), "\n")
	return line
}

func (r *reader) sections(b *Book, n *yaml.Node) {
	r.mapping(n, "the price book", func(key, value *yaml.Node) bool {
		for kind, section := range sections {
			if key.Value != section {
				continue
			}
			r.mapping(value, section, func(name, body *yaml.Node) bool {
				e := &entry{kind: kind, name: name.Value, file: r.file, line: name.Line}
				e.once.Do(func() { r.entry(e, name, body) })
				b.put(e)
				return true
			})
			return true
		}
		return false
	}, sections[:]...)
}

// read reads an entry of the starter book when it is first asked for.
func (e *entry) read() *entry {
	e.once.Do(func() {
		var doc yaml.Node
		err := yaml.Unmarshal([]byte(e.text), &doc)
		if err != nil || len(doc.Content) == 0 || len(doc.Content[0].Content) < 2 {
			panic("the starter price book is not YAML") // a test reads all of it
		}
		r := &reader{file: e.file, above: e.line - 1, found: &e.found}
		r.entry(e, doc.Content[0].Content[0], doc.Content[0].Content[1])
	})
	return e
}

func (r *reader) entry(e *entry, name, body *yaml.Node) {
	at := r.pos(name)
	if e.kind == products {
		e.product = r.product(e.name, at, body)
		return
	}
	e.item = r.item(e.name, at, body)
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
			}
		}
	}
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
