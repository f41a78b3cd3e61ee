package report

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Width is how many columns a page takes.
const Width = 80

// A Style is how a page may look. Colour never carries meaning alone.
type Style struct{ Color bool }

const (
	bold   = "\x1b[1m"
	dim    = "\x1b[2m"
	red    = "\x1b[31m"
	yellow = "\x1b[33m"
	plain  = "\x1b[0m"
)

var looks = []string{bold, dim, red, yellow, plain}

// A page writes lines of at most Width columns and keeps the first error.
type page struct {
	out   *bufio.Writer
	style Style
}

func newPage(w io.Writer, s Style) *page { return &page{bufio.NewWriter(w), s} }

func (p *page) paint(code, text string) string {
	if !p.style.Color {
		return text
	}
	return code + text + plain
}

func (p *page) line(format string, args ...any) {
	fmt.Fprintln(p.out, strings.TrimRight(harmless(fmt.Sprintf(format, args...)), " "))
}

// harmless replaces what a terminal would act on, but for the colours of a page: names
// come from files that others write.
func harmless(s string) string {
	if strings.IndexFunc(s, unicode.IsControl) < 0 {
		return s
	}
	var b strings.Builder
	for i, r := range s {
		switch {
		case slices.ContainsFunc(looks, func(code string) bool { return strings.HasPrefix(s[i:], code) }):
			b.WriteRune(r)
		case unicode.IsSpace(r):
			b.WriteRune(' ')
		case unicode.IsControl(r):
			b.WriteRune(unicode.ReplacementChar)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func (p *page) heading(text string) {
	p.line("")
	p.title(text)
}

// title writes the first words of a page or of a part of it; a long name is broken.
func (p *page) title(text string) {
	for _, l := range wrap(text, Width) {
		p.line("%s", p.paint(bold, l))
	}
}

// text writes a paragraph with its first line led by lead and the others by as
// many blanks.
func (p *page) text(lead, text string) {
	rest := strings.Repeat(" ", utf8.RuneCountInString(lead))
	for i, l := range wrap(text, Width-utf8.RuneCountInString(lead)) {
		if i > 0 {
			lead = rest
		}
		p.line("%s%s", lead, l)
	}
}

// split writes what stands at the left and, right before the tail at the right edge,
// what stands in the middle; where they do not fit, the left has a line of its own.
func (p *page) split(left, middle, tail string) {
	room := Width - utf8.RuneCountInString(tail)
	if utf8.RuneCountInString(left)+2+utf8.RuneCountInString(middle) > room {
		p.text("", left)
		left = ""
	}
	p.line("%s%s%s", left, right(middle, room-utf8.RuneCountInString(left)), tail)
}

func (p *page) flush() error { return p.out.Flush() }

func pad(s string, width int) string {
	if n := utf8.RuneCountInString(s); n < width {
		return s + strings.Repeat(" ", width-n)
	}
	return s
}

func right(s string, width int) string {
	if n := utf8.RuneCountInString(s); n < width {
		return strings.Repeat(" ", width-n) + s
	}
	return s
}

// cut shortens a name that is too long for its column.
func cut(s string, width int) string {
	width = max(1, width)
	if r := []rune(s); len(r) > width {
		return strings.TrimRight(string(r[:width-1]), " ") + "…"
	}
	return s
}

func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for word := range strings.FieldsSeq(text) {
		for r := []rune(word); len(r) > width && width > 0; r = []rune(word) { // one that fits nowhere is broken
			if line != "" {
				lines = append(lines, line)
				line = ""
			}
			lines, word = append(lines, string(r[:width])), string(r[width:])
		}
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
