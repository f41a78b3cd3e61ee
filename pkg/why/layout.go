package why

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Escape codes for a terminal; colour never says what words do not.
const (
	plain = ""
	bold  = "\x1b[1m"
	faint = "\x1b[2m"
	reset = "\x1b[0m"
)

// narrowest is the least room in which a note stands beside its value.
const narrowest = 20

// A layout writes text within a width.
type layout struct {
	strings.Builder
	width int
	color bool
}

func runes(s string) int { return utf8.RuneCountInString(s) }

// clean takes out what would disturb the terminal in words from a deal file.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}

func (l *layout) styled(style, s string) string {
	if !l.color || style == plain || s == "" {
		return s
	}
	return style + s + reset
}

// paragraph writes text from a column on, further lines further in. So deep in
// that no room is left, it goes beyond the width.
func (l *layout) paragraph(indent, more int, style, text string) {
	for i, s := range wrap(clean(text), max(l.width-indent, narrowest), max(l.width-indent-more, narrowest)) {
		in := indent
		if i > 0 {
			in += more
		}
		l.WriteString(strings.Repeat(" ", in) + l.styled(style, s) + "\n")
	}
}

// put writes a row: sign, label, value, and the note beside or below them.
func (l *layout) put(indent, label, value int, r row) {
	r.label, r.note = clean(r.label), clean(r.note)
	head := strings.Repeat(" ", indent)
	if r.sign != "" {
		head += r.sign + " "
	}
	room := l.width - runes(head)
	name := l.styled(bold, r.label)
	if runes(r.label) > label || label+2+value > room { // on a line of its own
		if runes(r.label)+2+runes(r.value) > room {
			l.paragraph(indent, 4, bold, strings.TrimSpace(r.sign+" "+r.label))
			head, name, label = strings.Repeat(" ", indent+4), "", 0
		} else {
			label = runes(r.label)
		}
	}
	head += name
	at := runes(strings.Repeat(" ", indent)) + label + value + 4
	if r.sign != "" {
		at += 2
	}
	pad := label - runes(r.label)
	if name == "" {
		pad, at = 0, indent+4+value+4
	} else {
		head += strings.Repeat(" ", max(pad, 0)+2)
	}
	head += strings.Repeat(" ", max(value-runes(r.value), 0)) + r.value
	switch {
	case r.note == "":
		l.WriteString(head + "\n")
	case l.width-at >= max(min(narrowest, runes(r.note)), longestWord(r.note)):
		for i, s := range wrap(r.note, l.width-at, l.width-at) {
			if i == 0 {
				l.WriteString(head + "  " + s + "\n")
			} else {
				l.WriteString(strings.Repeat(" ", at) + s + "\n")
			}
		}
	default:
		l.WriteString(head + "\n")
		l.paragraph(indent+6, 0, plain, r.note)
	}
}

// wrap breaks text at spaces into a first line and further ones of at most these
// widths; a word longer than that is broken.
func wrap(text string, first, further int) []string {
	var out []string
	var b strings.Builder
	width, further := max(first, 1), max(further, 1)
	for _, word := range strings.Split(text, " ") { // two spaces are an empty word, and stay two
		if b.Len() > 0 && runes(b.String())+1+runes(word) > width {
			out = append(out, strings.TrimRight(b.String(), " "))
			b.Reset()
			width = further
		}
		if b.Len() > 0 || word == "" && len(out) == 0 {
			b.WriteByte(' ')
		}
		for runes(b.String())+runes(word) > width { // only at a line's start
			r := []rune(word)
			n := max(width-runes(b.String()), 1)
			out = append(out, b.String()+string(r[:n]))
			b.Reset()
			word, width = string(r[n:]), further
		}
		b.WriteString(word)
	}
	return append(out, strings.TrimRight(b.String(), " "))
}

func longestWord(text string) int {
	n := 0
	for word := range strings.FieldsSeq(text) {
		n = max(n, runes(word))
	}
	return n
}
