package pricebook

import (
	"embed"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
)

//go:embed book/*.yaml
var files embed.FS

// Starter returns the book that ships with the program. An entry is read when it is
// asked for: a deal needs some of them, and reading all takes longer than a bid.
var Starter = sync.OnceValue(func() *Book {
	b := &Book{products: map[string]*entry{}, items: map[string]*entry{}}
	dir, _ := files.ReadDir("book") // embedded, so always there
	for _, f := range dir {
		text, _ := files.ReadFile("book/" + f.Name())
		b.index("starter book, "+f.Name(), string(text))
	}
	return b
})

// An entry is a product or an item: its text until it is read.
type entry struct {
	kind    int
	name    string
	file    string
	line    int // of its name
	text    string
	once    sync.Once
	product *Product
	item    *Item
	found   diag.List
}

const (
	products = iota
	items
)

var sections = [...]string{"products", "items"}

// index finds the entries of a file whose form is known to be sound: each begins with
// its name, two spaces in.
func (b *Book) index(file, text string) {
	kind := -1
	var open *entry
	for i, line := range strings.SplitAfter(text, "\n") {
		bare := strings.TrimRight(line, " \n")
		switch {
		case strings.HasPrefix(bare, "   ") || bare == "" || strings.HasPrefix(strings.TrimSpace(bare), "#"):
			if open != nil {
				open.text += line
			}
		case strings.HasPrefix(bare, "  "):
			name, _, _ := strings.Cut(bare[2:], ":")
			open = &entry{kind: kind, name: name, file: file, line: i + 1, text: line}
			b.put(open)
		default:
			open, kind = nil, items
			if bare == "products:" {
				kind = products
			}
		}
	}
}

func (b *Book) put(e *entry) {
	all := b.products
	if e.kind == items {
		all = b.items
	}
	if all[e.name] == nil {
		b.names[e.kind] = append(b.names[e.kind], e.name)
	}
	all[e.name] = e
}
