package comps

import (
	"bufio"
	"encoding/csv"
	"io"
	"strings"

	"github.com/rivo/uniseg"
)

// A table gives the rows of a text cut into cells, and where the cells stand, as
// csv.Reader does.
type table interface {
	Read() ([]string, error)
	FieldPos(field int) (line, column int)
}

// newTable cuts a text at a sign, or at the one that its first line is cut by; stated
// are headers that it holds besides those that are known.
func newTable(from io.Reader, comma rune, stated map[string]string) table {
	text := bufio.NewReaderSize(from, 1<<16)
	if comma == 0 {
		comma = separator(firstLine(text), stated)
	}
	if comma == blanks {
		return &spaced{text: bufio.NewScanner(text)}
	}
	r := csv.NewReader(text)
	r.ReuseRecord, r.FieldsPerRecord, r.LazyQuotes, r.Comma = true, -1, true, comma
	return r
}

// firstLine looks at the first line with anything in it, as far as it is buffered.
func firstLine(text *bufio.Reader) string {
	ahead, _ := text.Peek(1 << 15) // what there is of it, at the end of the text too
	for line := range strings.Lines(string(ahead)) {
		if strings.TrimSpace(line) != "" {
			return line
		}
	}
	return ""
}

// blanks stands for two and more blanks between columns.
const blanks = ' '

// separator is the sign by which a line falls into the most columns that are known; a
// comma where several do.
func separator(line string, stated map[string]string) rune {
	best, most := ',', 0
	for _, c := range []rune{',', '\t', ';', '|', blanks} {
		known := 0
		for _, cell := range cut(line, c) {
			head := strings.Trim(cell.text, " \t\r\n\"\ufeff")
			name, _ := plain(head)
			if fieldOf(name) >= 0 {
				known++
			}
			for _, h := range stated {
				if strings.EqualFold(strings.TrimSpace(h), head) {
					known++
				}
			}
		}
		if known > most {
			best, most = c, known
		}
	}
	return best
}

// A piece is a cell of a line and the byte that it begins at.
type piece struct {
	text string
	at   int
}

func cut(line string, by rune) (out []piece) {
	if by != blanks {
		for part := range strings.SplitSeq(line, string(by)) {
			out = append(out, piece{text: part})
		}
		return out
	}
	start := -1
	for i := 0; i <= len(line); i++ {
		end := i == len(line) || line[i] == '\t' || line[i] == ' ' && (i+1 == len(line) || line[i+1] == ' ')
		switch {
		case !end && start < 0 && line[i] != ' ':
			start = i
		case end && start >= 0:
			out = append(out, piece{line[start:i], start})
			start = -1
		}
	}
	return out
}

// spaced is a text whose columns stand two and more blanks apart.
type spaced struct {
	text   *bufio.Scanner
	line   int
	heads  []stretch
	pieces []piece
	uneven bool // tabs part the line read last into another number of cells than there are heads
	short  bool // blanks part it into fewer, and they were put below the heads
	astray bool // a cell of it stands under the head of another
}

// A stretch is where a piece stands on the page, whatever bytes its characters take.
type stretch struct{ from, to int }

func stretches(line string, pieces []piece) []stretch {
	out := make([]stretch, len(pieces))
	for i, p := range pieces {
		from := uniseg.StringWidth(line[:p.at])
		out[i] = stretch{from, from + uniseg.StringWidth(p.text)}
	}
	return out
}

// Read returns the cells of the next line that has any. A line with fewer of them than
// the first has its cells put below the heads that they stand under, or as tabs part it.
func (s *spaced) Read() ([]string, error) {
	for s.text.Scan() {
		s.line++
		line := strings.TrimRight(s.text.Text(), "\r")
		s.uneven, s.short, s.astray, s.pieces = false, false, false, cut(line, blanks)
		switch n := len(s.pieces); {
		case n == 0:
			continue
		case s.heads == nil:
			s.heads = stretches(line, s.pieces)
		case n <= len(s.heads) && strings.Contains(strings.TrimRight(line, " \t"), "\t"):
			s.pieces = tabbed(line, len(s.heads))
			s.uneven = len(s.pieces) != len(s.heads)
		case n < len(s.heads):
			s.short = true
			s.pieces = s.under(stretches(line, s.pieces))
		case n == len(s.heads):
			for i, p := range stretches(line, s.pieces) {
				s.stray(p, i)
			}
		}
		out := make([]string, len(s.pieces))
		for i, p := range s.pieces {
			out[i] = p.text
		}
		return out, nil
	}
	if err := s.text.Err(); err != nil {
		return nil, err
	}
	return nil, io.EOF
}

// tabbed cuts a line at its tabs and, between them, at its blanks: an empty cell stands
// between two tabs. More of them behind the last cell than make up the columns are none.
func tabbed(line string, columns int) (out []piece) {
	at := 0
	for part := range strings.SplitSeq(line, "\t") {
		cells := cut(part, blanks)
		if len(cells) == 0 {
			cells = []piece{{}}
		}
		for _, p := range cells {
			out = append(out, piece{p.text, at + p.at})
		}
		at += len(part) + 1
	}
	for len(out) > columns && out[len(out)-1].text == "" {
		out = out[:len(out)-1]
	}
	return out
}

// under lays the cells of a line, which stand so, under the heads that they overlap, or are
// nearest to.
func (s *spaced) under(stand []stretch) []piece {
	out := make([]piece, len(s.heads))
	next := 0
	for i, p := range stand {
		last := len(s.heads) - (len(stand) - i) // so that the cells behind have a place
		at := next
		for at < last && p.from >= (s.heads[at].to+s.heads[at+1].from)/2 && !p.overlaps(s.heads[at]) {
			at++
		}
		out[at], next = s.pieces[i], at+1
		s.stray(p, at)
	}
	return out
}

// stray notes whether a cell that is taken for one column stands under the head of another.
func (s *spaced) stray(p stretch, at int) {
	for i, h := range s.heads {
		s.astray = s.astray || i != at && p.overlaps(h)
	}
}

func (s stretch) overlaps(o stretch) bool { return s.from < o.to && o.from < s.to }

// FieldPos returns the line and column, both from one, of a cell read last.
func (s *spaced) FieldPos(field int) (line, column int) {
	return s.line, s.pieces[field].at + 1
}
