package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/diag"
)

// leftOpen finds the first quote or bracket above the place where the YAML reader
// gave up that is not closed in its line, though the next line begins anew. The
// reader goes on over all lines until something does not fit, which may be far below.
func (f flaw) leftOpen() (diag.Diag, bool) {
	for n := 1; n < f.line; n++ {
		col := openIn(f.g.src.line(n))
		if col < 0 || !f.beginsAnew(n) {
			continue
		}
		at := f
		at.open = f.g.src.pos(n, col+1, 1)
		if strings.ContainsRune("{[", f.g.src.line(n)[col]) {
			return at.openBracket(n + 1), true
		}
		return at.openQuote(), true
	}
	return diag.Diag{}, false
}

// first is about a line further out than the first key, or behind a list or text
// that was all of the file.
func (f flaw) first() diag.Diag {
	depth := len(indentOf(f.text(f.line)))
	for n := 1; n < f.line; n++ {
		text := f.text(n)
		if line := strings.TrimSpace(text); line == "" || line[0] == '#' || line == "---" {
			continue
		}
		if d := len(indentOf(text)); d > depth {
			return f.rest(f.line, "the line is %s, but the first key, in line %d, is %s", spaces(depth), n, spaces(d)).
				WithHint("begin the first key and all others like it without spaces")
		}
		break
	}
	return f.rest(f.line, "the file goes on behind what is all of it").WithHint("write every value behind a key, a colon and a space, e.g. price: $212,500")
}

// beginsAnew reports whether the line after n is a key or an item no further in.
func (f flaw) beginsAnew(n int) bool {
	depth := len(indentOf(f.text(n)))
	above := strings.TrimSpace(f.text(n))
	goesOn := strings.ContainsAny(above[len(above)-1:], ",{[")
	for n++; n <= len(f.g.src.lines); n++ {
		text := f.text(n)
		line := strings.TrimSpace(text)
		if line == "" || line[0] == '#' {
			continue
		}
		return len(indentOf(text)) <= depth && !strings.ContainsAny(line[:1], ",}]") && (keyed().MatchString(text) && !goesOn || strings.HasPrefix(line, "- "))
	}
	return false
}

// openIn is the column, from 0, of what a line opens and does not close, or -1.
func openIn(line []rune) int {
	var open []int
	quote, fresh := -1, true // fresh: a value may begin here
	for i, r := range line {
		switch blank := r == ' ' || r == '\t'; {
		case quote >= 0:
			if r == line[quote] && (r != '"' || line[i-1] != '\\') {
				quote = -1
			}
		case r == '#' && (i == 0 || line[i-1] == ' '):
			return lastOpen(open)
		case fresh && (r == '"' || r == '\''):
			quote, fresh = i, false
		case (r == '{' || r == '[') && (fresh || len(open) > 0):
			open, fresh = append(open, i), true
		case (r == '}' || r == ']') && len(open) > 0:
			open = open[:len(open)-1]
		case blank:
			fresh = fresh || i > 0 && slices.Contains([]rune(":-"), line[i-1])
		default:
			fresh = r == ',' && len(open) > 0
		}
	}
	if quote >= 0 {
		return quote
	}
	return lastOpen(open)
}

func lastOpen(open []int) int {
	if len(open) == 0 {
		return -1
	}
	return open[len(open)-1]
}
