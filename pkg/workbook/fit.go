package workbook

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// fit makes every column wide enough for the numbers in it, with some room for larger
// ones, and for the longest word of its heads. A stated width is the least.
func (g *grid) fit() {
	const longest, most = 30, 60 // of a column that states no width, and for a long word
	for _, row := range g.rows {
		for i, c := range row {
			if c.value == nil {
				continue
			}
			for len(g.widths) <= i {
				g.widths = append(g.widths, 0)
			}
			switch v := c.value.(type) {
			case float64:
				g.widths[i] = math.Max(g.widths[i], c.look.wider()*(1.5+float64(lettersOf(v, c.look.format))))
			case string:
				if c.look.role == heading && c.look.wrap {
					g.widths[i] = math.Max(g.widths[i], math.Min(most, 1.5+1.1*float64(longestWord(v))))
				} else if g.widths[i] == 0 && !c.look.wrap {
					g.widths[i] = math.Min(longest, 1.5+float64(utf8.RuneCountInString(v)))
				}
			}
		}
	}
}

// rise makes rows as high as the wrapped texts in them need: not every program does so
// when it opens a file.
func (g *grid) rise() {
	for i, row := range g.rows {
		if g.high[i+1] > 0 {
			continue
		}
		most := 0.0
		for j, c := range row {
			if s, is := c.value.(string); is && c.look.wrap {
				width := g.width(j+1) / c.look.wider()
				if c.look.size > 0 {
					width *= 1.05 // a table of many columns has little room for the margin
				}
				most = math.Max(most, high(s, width)*c.look.scale())
			}
		}
		if most > 1.5*lineHeight {
			g.height(i+1, most)
		}
	}
}

// wider is how much wider than others the letters of a look are.
func (l look) wider() float64 {
	switch l.role {
	case strong, total, foundStrong, foundTotal, heading:
		return 1.08 * l.scale()
	}
	return l.scale()
}

// scale is the size of letters against the usual.
func (l look) scale() float64 {
	if l.size > 0 {
		return l.size / 10
	}
	return 1
}

// lettersOf is how many letters a number takes in a format.
func lettersOf(x float64, format string) int {
	grouped := func(places int) int {
		s := strconv.FormatFloat(math.Abs(x), 'f', places, 64)
		digits := len(s)
		if places > 0 {
			digits -= places + 1
		}
		n := len(s) + (digits-1)/3
		if x < 0 {
			n++
		}
		return n
	}
	switch {
	case format == limited:
		return min(grouped(2)+1, len("$1,000,000.00"))
	case format == dollars:
		return grouped(2) + 1
	case format == rounded:
		return grouped(0) + 1
	case format == percent:
		x *= 100
		return grouped(2) + 1
	case format == twoPlace:
		return grouped(2)
	case format == portions:
		return grouped(4)
	case format == tenths:
		return grouped(1)
	case format == day:
		return len("September 30, 2026")
	case format == plain, format == "": // decimals that find no room are left out
		return min(grouped(0)+4, len(strconv.FormatFloat(x, 'f', -1, 64)))
	}
	return grouped(0)
}

func longestWord(s string) (n int) {
	for word := range strings.FieldsSeq(s) {
		n = max(n, utf8.RuneCountInString(word))
	}
	return n
}
