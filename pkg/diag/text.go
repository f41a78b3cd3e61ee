package diag

import (
	"strconv"
	"strings"
	"unicode"

	"github.com/rivo/uniseg"
)

// printable replaces, one for one, what a terminal might act on; tabs stay.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || unicode.IsPrint(r):
			return r
		case unicode.IsSpace(r):
			return ' '
		}
		return unicode.ReplacementChar
	}, s)
}

// clean is printable with tabs as spaces, for text that is not an excerpt.
func clean(s string) string { return strings.ReplaceAll(printable(s), "\t", " ") }

// oneLine is clean with line ends as spaces.
func oneLine(s string) string { return clean(strings.ReplaceAll(s, "\n", " ")) }

// wrap writes head and text, broken at spaces to fit; later lines begin with next.
// A word that fits on no line is broken inside, and what stands between three spaces,
// which is to be typed as it is, only if it fits on no line. Line ends in the text are kept.
func wrap(b *strings.Builder, head, next, text string) { wrapBy(b, head, next, text, whole) }

// wrapBy is wrap with a say in what of a paragraph is glued, as far as it fits in room.
func wrapBy(b *strings.Builder, head, next, text string, glued func(s string, room int) string) {
	line, fresh := head, true // fresh: nothing but the head on the line yet
	flush := func() {
		b.WriteString(strings.TrimRight(strings.ReplaceAll(line, glue, " "), " ") + "\n")
		line, fresh = next, true
	}
	for i, paragraph := range strings.Split(text, "\n") {
		if i > 0 {
			flush()
		}
		for _, word := range strings.Split(glued(clean(paragraph), columns-width(next)), " ") {
			if !fresh {
				word = " " + word
			}
			if width(line+word) > columns && (!fresh || line != next) {
				flush()
				word = strings.TrimPrefix(word, " ")
			}
			for width(line+word) > columns {
				piece := fitting(word, columns-width(line))
				line, word = line+piece, word[len(piece):]
				flush()
			}
			line, fresh = line+word, false
		}
	}
	flush()
}

// glue is a space that no line breaks at; clean leaves none in a text.
const glue = "\u00a0"

// whole glues what stands between three spaces, as far as it fits in room.
func whole(s string, room int) string {
	parts := strings.Split(s, "   ")
	for i := 1; i < len(parts); i += 2 {
		if width(parts[i]) <= room {
			parts[i] = strings.ReplaceAll(parts[i], " ", glue)
		}
	}
	return strings.Join(parts, "   ")
}

func width(s string) int { return uniseg.StringWidth(s) }

// fitting returns the longest start of s no wider than room, but at least one character.
func fitting(s string, room int) string {
	n, used, state := 0, 0, -1
	for rest := s; rest != ""; {
		var c string
		var w int
		c, rest, w, state = uniseg.FirstGraphemeClusterInString(rest, state)
		if n > 0 && used+w > room {
			break
		}
		n, used = n+len(c), used+w
	}
	return s[:n]
}

// Quote returns a value found in a file in double quotes, fit for a message: cut to
// 60 characters, ending in "…", with what cannot be printed escaped.
func Quote(s string) string {
	const most = 60
	n := 0
	for i := range s {
		if n == most {
			return strconv.Quote(s[:i] + "…")
		}
		n++
	}
	return strconv.Quote(s)
}
