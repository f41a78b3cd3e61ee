package diag

import (
	"strings"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

const tabStop = 4 // columns; only has to agree with itself, as tabs are printed as spaces

// view is a line as it looks on a screen, and the screen columns from … to to underline.
type view struct {
	text     string
	width    int
	cells    []cell
	from, to int
}

// cell is what the screen treats as one character; it may be several in the file.
type cell struct {
	text  string
	start int // first screen column, from 0
	width int
}

// newView lays out a line and finds the carets for n characters from character col on, from 1.
// A column beyond the end points just behind the line.
func newView(line string, col, n int) *view {
	v := &view{from: -1}
	n = max(n, 1)
	last, char, state := 0, 0, -1
	for rest := printable(line); rest != ""; {
		var c cell
		c.text, rest, c.width, state = uniseg.FirstGraphemeClusterInString(rest, state)
		chars := utf8.RuneCountInString(c.text)
		if c.text == "\t" {
			c.width = tabStop - v.width%tabStop
			c.text = strings.Repeat(" ", c.width)
		}
		c.start = v.width
		v.width += c.width
		v.cells = append(v.cells, c)
		char += chars
		if v.from < 0 && char >= col {
			v.from = c.start
		}
		if v.from >= 0 && char-chars < col-1+n {
			last = v.width
		}
	}
	if v.from < 0 {
		v.from = v.width
	}
	v.to = max(last, v.from+1)
	v.text = v.cut(0, v.width)
	return v
}

// trim keeps at most room screen columns around the carets, and marks what it leaves out with "…".
func (v *view) trim(room int) {
	whole := max(v.width, v.to)
	if whole <= room {
		return
	}
	token := min(v.to-v.from, room/2)
	lo := min(max(v.from-(room-token)/2, 0), whole-room)
	hi := lo + room
	v.text = v.cut(lo, hi)
	shown := hi
	if hi < v.width {
		shown-- // no caret under the "…"
	}
	v.to = max(min(v.to, shown), v.from+1) - lo
	v.from -= lo
}

// cut returns the screen columns lo to hi; half a wide character becomes a space.
func (v *view) cut(lo, hi int) string {
	var b strings.Builder
	at, end := lo, hi
	if lo > 0 {
		b.WriteString("…")
		at++
	}
	if hi < v.width {
		end--
	}
	for _, c := range v.cells {
		stop := c.start + c.width
		switch {
		case c.start >= at && stop <= end:
			b.WriteString(c.text)
			at = stop
		case stop > at && c.start < end: // straddles an edge
			b.WriteString(strings.Repeat(" ", min(stop, end)-at))
			at = min(stop, end)
		}
	}
	if hi < v.width {
		b.WriteString("…")
	}
	return b.String()
}
