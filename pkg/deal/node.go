package deal

import (
	"strings"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
)

type shape int

const (
	nothing shape = iota // a key without a value, or null
	scalar
	mapping
	list
	refused // already spoken of
)

// words names a shape as a person would.
func (s shape) words() string {
	return [...]string{"empty", "a single value", "a group of keys", "a list", "refused"}[s]
}

// A node is a place in the deal file.
type node struct {
	shape   shape
	span            // a scalar's text; for the others where they begin
	entries []entry // of a mapping, in the order of the file
	items   []*node // of a list
	flow    bool    // written in brackets
	quoted  bool
	several bool // an item with a comma that could part it from the next
}

// An entry is a key of a mapping with its value.
type entry struct {
	name  string // the key with spelling evened out
	key   span   // as written
	value *node
}

// A span is a piece of text and where it stands.
type span struct {
	text  string
	at    diag.Pos
	exact bool // the file has just these characters there, so parts can be pointed at
}

// cut returns the part from byte i to byte j, without spaces around it.
func (s span) cut(i, j int) span {
	for i < j && s.text[i] == ' ' {
		i++
	}
	for j > i && s.text[j-1] == ' ' {
		j--
	}
	return span{s.text[i:j], s.point(i, s.text[i:j]), s.exact}
}

// point is the place of a part that begins at byte i, or of the whole where
// parts cannot be pointed at.
func (s span) point(i int, part string) diag.Pos {
	p := s.at
	if s.exact {
		p.Col += utf8.RuneCountInString(s.text[:i])
		p.Len = max(1, utf8.RuneCountInString(part))
	}
	return p
}

// find returns the entry of that evened-out name.
func (n *node) find(name string) *entry {
	for i := range n.entries {
		if n.entries[i].name == name {
			return &n.entries[i]
		}
	}
	return nil
}

// plainKey evens out a key's spelling: case, spaces, hyphens and underscores do
// not count, ’ is ', and both spellings of labour and amortising are one.
func plainKey(s string) string {
	if isPlain(s) {
		return s
	}
	return evened(s)
}

func evened(s string) string {
	s = strings.Map(func(r rune) rune {
		switch r {
		case '-', '_', '\t', '\u00a0', '\u2010', '\u2011':
			return ' '
		case '’', '‘':
			return '\''
		}
		return r
	}, strings.ToLower(s))
	w := strings.Fields(s)
	for i := range w {
		switch w[i] {
		case "labor":
			w[i] = "labour"
		case "amortizing":
			w[i] = "amortising"
		}
	}
	return strings.Join(w, " ")
}

// isPlain reports whether a key is surely spelled as plainKey would: most are, and are asked for
// thousands of times.
func isPlain(s string) bool {
	before := byte(' ')
	for i := range len(s) {
		c := s[i]
		if c < ' ' || c > '~' || c >= 'A' && c <= 'Z' || c == '-' || c == '_' || c == ' ' && before == ' ' {
			return false
		}
		before = c
	}
	return before != ' ' && !strings.Contains(s, "labor") && !strings.Contains(s, "amortizing")
}
