package quantity

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

const maxChars = 64 // longer than anything meant seriously

// cursor walks over the tokens of a text.
type cursor struct {
	text string
	want string // what the text should be, for refusals that know no better
	toks []token
	i    int
}

// parse reads the whole text with read and refuses what is left over.
func parse[T any](text, want string, read func(*cursor) (T, error)) (T, error) {
	var none T
	if trimmed := strings.TrimSpace(text); utf8.RuneCountInString(trimmed) > maxChars {
		return none, &Error{Found: trimmed, At: strings.Index(text, trimmed), Want: want,
			Why: fmt.Sprintf("longer than %d characters", maxChars)}
	}
	toks := used.Get().(*[]token)
	defer used.Put(toks)
	*toks = scan((*toks)[:0], text)
	c := &cursor{text: text, want: want, toks: *toks}
	if err := c.readable(); err != nil {
		return none, err
	}
	v, err := read(c)
	if err != nil {
		return none, err
	}
	if t := c.peek(); t.kind != end {
		last, want := c.toks[len(c.toks)-2], c.want
		if c.i > 0 && c.toks[c.i-1].kind == number && lookalike(t) {
			want = wantDigits
		}
		return none, c.refuseSpan(t, last, want, "%s does not belong here", shown(c.text[t.at:last.end()]))
	}
	return v, nil
}

func (c *cursor) readable() error {
	if c.peek().kind == end {
		return c.refuse(token{}, "nothing is written here")
	}
	for _, t := range c.toks {
		if t.kind == oddDigit {
			return c.refuseFor(t, "the digits 0 to 9", "%q is not written in plain digits", t.text)
		}
	}
	return nil
}

func (c *cursor) peek() token { return c.toks[c.i] }

func (c *cursor) next() token {
	t := c.toks[c.i]
	if t.kind != end {
		c.i++
	}
	return t
}

// ahead returns the token n places on, 0 being the next.
func (c *cursor) ahead(n int) token { return c.toks[min(c.i+n, len(c.toks)-1)] }

// take steps over the next token if it is one of names.
func (c *cursor) take(names ...string) bool {
	t := c.peek()
	if t.kind == end || !slices.Contains(names, t.name) {
		return false
	}
	c.i++
	return true
}

// sign steps over a sign and reports whether it was a minus.
func (c *cursor) sign() (negative, found bool) {
	if c.take("-") {
		return true, true
	}
	return false, c.take("+")
}

func (c *cursor) refuse(t token, why string, args ...any) error {
	return c.refuseFor(t, c.want, why, args...)
}

func (c *cursor) refuseFor(t token, want, why string, args ...any) error {
	return c.refuseSpan(t, t, want, why, args...)
}

// refuseSpan refuses everything from one token to another.
func (c *cursor) refuseSpan(from, to token, want, why string, args ...any) error {
	return &Error{
		Found: c.text[from.at : to.at+len(to.text)],
		Why:   fmt.Sprintf(why, args...),
		Want:  want,
		At:    from.at,
	}
}

// last returns the token that was read last.
func (c *cursor) last() token { return c.toks[c.i-1] }

// since returns what is written from token t up to the next one to read.
func (c *cursor) since(t token) string { return c.text[t.at:c.toks[c.i-1].end()] }

func (t token) end() int { return t.at + len(t.text) }
