package why

import (
	"fmt"
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
	deep  bool // something stood further in than there is room for
}

// step is how far in a line stands below the one that it explains.
const step = 4

// margin is the blank before a line so far in. Where half of the width does not
// hold it, the number of steps stands at the left instead.
func (l *layout) margin(indent int) string {
	most := l.width / 2 / step * step
	if indent <= most {
		return strings.Repeat(" ", indent)
	}
	l.deep = true
	rest := (indent - most) % step
	number := fmt.Sprint((indent - rest) / step)
	return number + strings.Repeat(" ", max(most+rest-len(number), 0))
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

// paragraph writes text from a column on, further lines further in.
func (l *layout) paragraph(indent, more int, style, text string) {
	l.text(l.margin(indent), more, style, text)
}

// text writes a paragraph behind a margin.
func (l *layout) text(margin string, more int, style, text string) {
	room := l.width - len(margin)
	for i, s := range wrap(clean(text), room, room-more) {
		if i > 0 {
			margin = strings.Repeat(" ", len(margin)+more)
			more = 0
		}
		l.WriteString(margin + l.styled(style, s) + "\n")
	}
}

// put writes a row: sign, label, value, and the note beside or below them.
func (l *layout) put(indent, label, value int, r row) {
	r.label, r.note = clean(r.label), clean(r.note)
	margin := l.margin(indent)
	head, column := margin, len(margin)
	if r.sign != "" {
		head += r.sign + " "
	}
	room := l.width - runes(head)
	name := l.styled(bold, r.label)
	if runes(r.label) > label || label+2+value > room { // on a line of its own
		if runes(r.label)+2+runes(r.value) > room {
			l.paragraph(indent, 4, bold, strings.TrimSpace(r.sign+" "+r.label))
			head, name, label = strings.Repeat(" ", column+4), "", 0
		} else {
			label = runes(r.label)
			value = min(value, room-2-label)
		}
	}
	head += name
	at := column + label + value + 4
	if r.sign != "" {
		at += 2
	}
	pad := label - runes(r.label)
	if name == "" {
		pad, at = 0, column+4+value+4
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
		l.text(margin+strings.Repeat(" ", 6), 0, plain, r.note)
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
