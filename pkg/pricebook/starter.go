package pricebook

import (
	"bytes"
	"embed"
	"io"
	"slices"
	"sync"

	"ledgerboard/pkg/diag"
)

//go:embed book/*.yaml
var files embed.FS

// Starter returns the book that ships with the program. An entry is read when it is
// asked for: a deal needs some of them, and reading all takes longer than a bid.
var Starter = sync.OnceValue(index)

// index finds the entries of the starter book without reading them.
func index() *Book {
	b := &Book{products: map[string]*entry{}, items: map[string]*entry{}}
	dir, _ := files.ReadDir("book") // embedded, so always there
	var text []byte
	for _, f := range dir {
		info, _ := f.Info()
		text = slices.Grow(text[:0], int(info.Size()))[:info.Size()]
		part(f.Name(), text, 0)
		b.index(f.Name(), text)
	}
	return b
}

// part reads a part of a file of the starter book.
func part(file string, to []byte, from int64) {
	f, _ := files.Open("book/" + file) // embedded and a file, so neither can fail
	_, _ = f.(io.ReaderAt).ReadAt(to, from)
}

// An entry is a product or an item; one of the starter book is a part of a file until it
// is read.
type entry struct {
	kind    int
	name    string
	trade   string // of an item of the starter book
	file    string
	line    int // of its name
	from    int // of its text in the file, and to
	to      int
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

// text is that of an entry of the starter book.
func (e *entry) text() string {
	text := make([]byte, e.to-e.from)
	part(e.file, text, int64(e.from))
	return string(text)
}

// index finds the entries of a file whose form is known to be sound: each begins with
// its name, two spaces in.
func (b *Book) index(file string, text []byte) {
	kind := items
	var open *entry
	end := func(at int) {
		if open != nil {
			open.to = at
			open = nil
		}
	}
	at, n := 0, 0
	for line := range bytes.Lines(text) {
		n++
		switch first := bytes.TrimLeft(line, " "); {
		case first[0] == '\n' || first[0] == '#':
		case len(line)-len(first) > 2:
			if trade, ok := bytes.CutPrefix(first, []byte("trade: ")); ok {
				open.trade = string(bytes.TrimSpace(trade))
			}
		case len(line)-len(first) == 2:
			end(at)
			name, _, _ := bytes.Cut(first, []byte(":"))
			open = &entry{kind: kind, name: string(name), file: file, line: n, from: at}
			b.put(open)
		default:
			end(at)
			kind = items
			if bytes.HasPrefix(line, []byte("products:")) {
				kind = products
			}
		}
		at += len(line)
	}
	end(at)
}

func (b *Book) put(e *entry) {
	if b.own(e.kind, e.name) == nil {
		b.names[e.kind] = append(b.names[e.kind], e.name)
	}
	b.kind(e.kind)[e.name] = e
}

// kind are the entries of a kind of this book alone, own is one of them.
func (b *Book) kind(kind int) map[string]*entry {
	if kind == items {
		return b.items
	}
	return b.products
}

func (b *Book) own(kind int, name string) *entry { return b.kind(kind)[name] }
