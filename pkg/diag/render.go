package diag

import (
	"io"
	"strconv"
	"strings"
)

const (
	columns = 80   // the width everything is made to fit
	indent  = "  " // before everything that belongs to a heading line
)

// Render writes each of the list with its line of the file, a caret under what is
// meant, and the hint; a blank line stands between two. It keeps the order given,
// so Sort first. The texts of the files come by name in sources; a file that is
// not there, or a line beyond its end, is printed without an excerpt.
//
// Nothing is wider than 80 columns except a long file name, which is left whole so
// that it can be copied. Characters that would move the cursor are shown as "�".
// The error is the writer's.
func Render(w io.Writer, l List, sources map[string]string) error {
	var b strings.Builder
	for i, d := range l {
		if i > 0 {
			b.WriteByte('\n')
		}
		d.render(&b, sources)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (d Diag) render(b *strings.Builder, sources map[string]string) {
	wrap(b, clean(d.place()+d.Severity.String()+": "), indent+indent, d.Message)
	if src, ok := sources[d.Pos.File]; ok {
		if line, ok := lineOf(src, d.Pos.Line); ok {
			excerpt(b, line, d.Pos)
		}
	}
	if d.Hint != "" {
		wrap(b, indent+"hint: ", indent+"      ", d.Hint)
	}
}

// lineOf returns line n of src, from 1, without its line end.
func lineOf(src string, n int) (string, bool) {
	if n < 1 {
		return "", false
	}
	if n == 1 {
		src = strings.TrimPrefix(src, "\ufeff") // a byte order mark takes no column
	}
	for ; n > 1; n-- {
		_, rest, found := strings.Cut(src, "\n")
		if !found {
			return "", false
		}
		src = rest
	}
	line, _, _ := strings.Cut(src, "\n")
	return strings.TrimSuffix(line, "\r"), true
}

// excerpt writes the line behind its number and, if the column is known, carets.
func excerpt(b *strings.Builder, line string, p Pos) {
	number := strconv.Itoa(p.Line)
	gutter := indent + strings.Repeat(" ", len(number)) + " | "
	v := newView(line, p.Col, p.Len)
	v.trim(columns - len(gutter))
	b.WriteString(strings.TrimRight(indent+number+" | "+v.text, " ") + "\n")
	if p.Col > 0 {
		b.WriteString(gutter + strings.Repeat(" ", v.from) + strings.Repeat("^", v.to-v.from) + "\n")
	}
}
