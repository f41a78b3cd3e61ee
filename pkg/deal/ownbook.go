package deal

import (
	"strings"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

// ownBook reads the price book that the file names, before the rest needs it.
func (r *reader) ownBook(root *node, open func(string) ([]byte, error)) {
	e := root.find("own book")
	if e == nil || e.value.shape != scalar {
		return
	}
	name := e.value.text
	r.lost = func(string) bool { return true }
	if open == nil {
		r.say("book-unreadable", e.value.at, "%s cannot be found beside %s", diag.Quote(name), r.name)("save the deal as a file in the folder of the price book, and name that file instead")
		return
	}
	text, err := open(name)
	if err != nil {
		r.say("book-unreadable", e.value.at, "%s cannot be read: %v", diag.Quote(name), err)("write the path of the price book, from the folder of the deal file")
		return
	}
	r.books[name] = string(text)
	own, found := OwnBook(name, text)
	for _, d := range found {
		r.diags.Add(d)
	}
	if own != nil {
		r.book, r.lost = own, nil
		return
	}
	r.lost = func(name string) bool { return strings.Contains(plainKey(string(text)), name) }
}

// inLost reports whether a name that no book has may be one of an own book that was
// refused, which is spoken of already.
func (r *reader) inLost(name string) bool { return r.lost != nil && r.lost(name) }

// OwnBook reads a price book of the owner's over the starter book. The list holds every
// mistake in it; the book is nil exactly if it holds one.
func OwnBook(name string, text []byte) (*pricebook.Book, diag.List) {
	var found diag.List
	if bad := unreadable(name, text); bad != nil {
		return nil, append(found, *bad)
	}
	grow(newSource(name, string(text)), &found) // says more of what is not YAML than a price book does
	if found.HasErrors() {
		found.Sort()
		return nil, found
	}
	book, found := pricebook.Read(name, string(text), pricebook.Starter())
	if found.HasErrors() {
		return nil, found
	}
	return book, found
}
