package quantity

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

type kind uint8

const (
	end      kind = iota
	number        // ASCII digits, with commas and points between them: 1,200.50
	word          // letters, with a full stop behind if written so: wks.
	mark          // any other single character
	oddDigit      // digits of other scripts, full-width ones too: refused
)

// token is one piece of a text.
type token struct {
	text  string // as written
	name  string // lower case, without a full stop, odd dashes, slashes and quotes made plain
	at    int    // byte offset
	kind  kind
	tight bool // no space before it
}

// used are slices of tokens of texts that are read: a price book has thousands of short ones.
var used = sync.Pool{New: func() any { return new([]token) }}

// scan splits a text behind toks; the last token is always of kind end.
func scan(toks []token, text string) []token {
	last := 0
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if unicode.IsSpace(r) { // includes the non-breaking ones
			at += size
			continue
		}
		k, n := measure(text[at:])
		t := token{kind: k, text: text[at : at+n], at: at, tight: at == last}
		t.name = plainName(t)
		toks = append(toks, t)
		at += n
		last = at
	}
	return append(toks, token{at: last, tight: true})
}

// measure returns the kind and the length in bytes of the token s begins with.
func measure(s string) (kind, int) {
	r, size := utf8.DecodeRuneInString(s)
	switch {
	case isDigit(s, 0) || r == '.' && isDigit(s, 1):
		n := 1
		for isDigit(s, n) || n < len(s) && (s[n] == ',' || s[n] == '.') && isDigit(s, n+1) {
			n++
		}
		return number, n
	case unicode.IsLetter(r):
		n := span(s, unicode.IsLetter)
		rest, _ := utf8.DecodeRuneInString(s[min(n+1, len(s)):])
		if n < len(s) && s[n] == '.' && !unicode.IsLetter(rest) && !unicode.IsDigit(rest) {
			n++ // an abbreviation
		}
		return word, n
	case unicode.IsDigit(r):
		return oddDigit, span(s, unicode.IsDigit)
	}
	return mark, size
}

func isDigit(s string, i int) bool { return i < len(s) && '0' <= s[i] && s[i] <= '9' }

// span returns the length of the start of s that is all of a kind.
func span(s string, is func(rune) bool) int {
	if n := strings.IndexFunc(s, func(r rune) bool { return !is(r) }); n >= 0 {
		return n
	}
	return len(s)
}

func plainName(t token) string {
	switch t.text {
	case "\u2212", "\u2010", "\u2011": // minus, hyphen, non-breaking hyphen
		return "-"
	case "\u2044", "\u2215": // fraction slash, division slash
		return "/"
	case "\u2019", "\u2018", "\u2032": // curly quotes, prime
		return "'"
	case "\u201d", "\u201c", "\u2033":
		return `"`
	}
	if t.kind == word {
		return strings.ToLower(strings.TrimSuffix(t.text, "."))
	}
	return t.text
}
