package deal

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
)

const (
	mostBytes = 1 << 20
	// comma stands in for a comma inside a number while the YAML is read: within
	// brackets YAML takes every comma as the end of a value, and $1,900 as two.
	comma      = '\uE02C'
	commaText  = string(comma)
	byteOrder  = "\ufeff"
	setsSource = "--set"
)

// A source is a text to be read, with its lines for measuring.
type source struct {
	name  string
	text  string
	lines []string
}

func newSource(name, text string) *source {
	text = strings.TrimPrefix(text, byteOrder)
	lines := strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	return &source{name, text, lines}
}

func (s *source) pos(line, col, n int) diag.Pos {
	return diag.Pos{File: s.name, Line: line, Col: col, Len: n}
}

// line returns a line's characters, or none beyond the end.
func (s *source) line(n int) []rune {
	if n < 1 || n > len(s.lines) {
		return nil
	}
	return []rune(s.lines[n-1])
}

// document is the place of the marks that end the document before a line.
func (s *source) document(line int) diag.Pos {
	for n := min(line, len(s.lines)); n > 0; n-- {
		if strings.HasPrefix(s.lines[n-1], "---") || strings.HasPrefix(s.lines[n-1], "...") {
			return s.pos(n, 1, 3)
		}
	}
	return s.pos(line, 1, 1)
}

// unreadable finds what stands against reading the bytes at all.
func unreadable(name string, text []byte) *diag.Diag {
	at := diag.Pos{File: name, Line: 1}
	var d diag.Diag
	switch bad := badByte(text); {
	case len(text) > mostBytes:
		d = finding("file-too-large", at, "the file has %d bytes, more than the 1,048,576 that are read", len(text)).
			WithHint("a deal file is a few hundred lines; check that it is the right file")
	case pricebook.IsWorkbook("", text) || bytes.HasPrefix(text, []byte("%PDF")):
		d = finding("file-not-utf8", at, "the file is a spreadsheet or a printed page, not text").WithHint("save it as text: a table of sold houses as CSV, with its first line naming the columns; a deal file as plain text in UTF-8")
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}) || bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		d = finding("file-not-utf8", at, "the file is written in UTF-16").WithHint("save it again and choose UTF-8 as its encoding; what some editors call Unicode is UTF-16")
	case bad >= 0:
		at.Line += bytes.Count(text[:bad], []byte("\n"))
		start := bytes.LastIndexByte(text[:bad], '\n') + 1
		at.Col, at.Len = utf8.RuneCount(text[start:bad])+1, 1
		r, size := utf8.DecodeRune(text[bad:])
		if r == utf8.RuneError && size == 1 {
			d = finding("file-not-utf8", at, "the letter here (byte 0x%02x) is not saved as UTF-8", text[bad]).
				WithHint("save the file as UTF-8 in the editor, and type the letter again if it still looks odd")
			break
		}
		d = finding("odd-character", at, "a character that cannot be seen (U+%04X) is here", r).WithHint("delete it and type the place again")
		if r == '\r' {
			d = finding("odd-character", at, "a line end of an old kind (U+000D) is here").WithHint("save the file with the line ends that the editor calls LF, Unix or Windows")
		}
	default:
		return nil
	}
	return &d
}

// badByte returns the offset of the first character that no deal file needs, or -1.
func badByte(text []byte) int {
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		switch {
		case r == utf8.RuneError && size == 1,
			r == '\r' && !bytes.HasPrefix(text[i:], []byte("\r\n")),
			i > 0 && r == byteOrderMark,
			unseen(r):
			return i
		}
		i += size
	}
	return -1
}

const byteOrderMark = '\ufeff'

// unseen reports characters that take no place on the screen or turn its order
// around, which come from copying; what joins letters and emoji is let be.
func unseen(r rune) bool {
	switch r {
	case '\n', '\t', '\r':
		return false
	case comma, 0xad, 0x200b, 0x200e, 0x200f, 0x2028, 0x2029, 0x2060:
		return true
	}
	return r < ' ' || r >= 0x7f && r < 0xa0 || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}

// hideCommas replaces the commas between thousands.
func hideCommas(text string) string {
	if !strings.Contains(text, ",") {
		return text
	}
	var b strings.Builder
	last := 0
	for i := 1; i+3 < len(text); i++ {
		if text[i] == ',' && digit(text, i-1) && digit(text, i+1) && digit(text, i+2) && digit(text, i+3) && !digit(text, i+4) {
			b.WriteString(text[last:i] + commaText)
			last = i + 1
		}
	}
	return b.String() + text[last:]
}

func digit(s string, i int) bool { return i < len(s) && '0' <= s[i] && s[i] <= '9' }

func showCommas(s string) string { return strings.ReplaceAll(s, commaText, ",") }
