package deal

import (
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/diag"
)

// PathAt is the full path, as a set takes it, of the key, the value or the item of a list
// that stands at a place of the file; "" where none begins there, or the deal is of no file.
func (d *Deal) PathAt(at diag.Pos) string {
	if d.reader == nil {
		return ""
	}
	found := ""
	d.reader.root.keys("", func(path string, key, value diag.Pos) {
		if found == "" && (begins(key, at) || begins(value, at)) {
			found = path
		}
	})
	return found
}

// Written tells whether what is read from a place of the file stands where a path names:
// the keys joined by dots, or as many of the last as are given, but at least two. An entry
// of a list may go by its name, as for a set.
func (d *Deal) Written(path string) func(at diag.Pos) bool {
	var places []diag.Pos
	if path = setPath(path); strings.Contains(path, ".") {
		numbered := byEntryName(d.reader.inputKeys(), path)
		d.reader.root.keys("", func(full string, key, value diag.Pos) {
			if full == path || strings.HasSuffix(full, "."+path) || slices.Contains(numbered, full) {
				places = append(places, key, value)
			}
		})
	}
	return func(at diag.Pos) bool {
		for _, p := range places {
			if begins(p, at) {
				return true
			}
		}
		return false
	}
}

// begins reports whether two places begin at one character.
func begins(a, b diag.Pos) bool {
	return a.File == b.File && a.Line == b.Line && a.Col == b.Col
}

// keys visits every key and item of a list under a path, with where it and its value
// stand.
func (n *node) keys(path string, visit func(path string, key, value diag.Pos)) {
	for _, e := range n.entries {
		visit(path+e.name, e.key.at, e.value.at)
		e.value.keys(path+e.name+".", visit)
	}
	for i, item := range n.items {
		number := path + strconv.Itoa(i+1)
		visit(number, item.at, item.at)
		item.keys(number+".", visit)
	}
}
