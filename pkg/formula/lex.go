package formula

import (
	"fmt"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// A SyntaxError says what is wrong with a formula and where.
type SyntaxError struct {
	At      int // byte offset in the text
	Message string
}

func (e *SyntaxError) Error() string {
	return fmt.Sprintf("at character %d: %s", e.At+1, e.Message)
}

type kind uint8

const (
	end kind = iota
	number
	word
	quoted
	symbol
)

type token struct {
	kind kind
	text string
	at   int
}

func (t token) String() string {
	if t.kind == end {
		return "the end"
	}
	return fmt.Sprintf("%q", t.text)
}

// symbols are tried in order, so the longer come first.
var symbols = []string{"<=", ">=", "<>", "<", ">", "=", "+", "-", "*", "/", "(", ")", ","}

// used are slices of tokens of formulas that are read.
var used = sync.Pool{New: func() any { return new([]token) }}

// lex splits a formula behind tokens.
func lex(tokens []token, text string) ([]token, error) {
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if unicode.IsSpace(r) {
			at += size
			continue
		}
		t, err := next(text, at, r)
		if err != nil {
			return tokens, err
		}
		tokens = append(tokens, t)
		at += len(t.text)
		if t.kind == quoted {
			at += len(`""`)
		}
	}
	return append(tokens, token{kind: end, at: len(text)}), nil
}

func next(text string, at int, r rune) (token, error) {
	switch {
	case isDigit(r):
		return token{number, span(text[at:], func(r rune) bool { return isDigit(r) || r == '.' }), at}, nil
	case isLetter(r):
		return token{word, span(text[at:], func(r rune) bool { return isLetter(r) || isDigit(r) }), at}, nil
	case r == '$':
		return token{word, "$", at}, nil
	case r == '"':
		inner, _, closed := strings.Cut(text[at+1:], `"`)
		if !closed {
			return token{}, &SyntaxError{at, "a quote is opened and never closed"}
		}
		return token{quoted, inner, at}, nil
	}
	for _, s := range symbols {
		if strings.HasPrefix(text[at:], s) {
			return token{symbol, s, at}, nil
		}
	}
	return token{}, &SyntaxError{at, fmt.Sprintf("%q has no meaning here", r)}
}

func span(text string, in func(rune) bool) string {
	if n := strings.IndexFunc(text, func(r rune) bool { return !in(r) }); n >= 0 {
		return text[:n]
	}
	return text
}

func isDigit(r rune) bool  { return r >= '0' && r <= '9' }
func isLetter(r rune) bool { return r == '_' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }
