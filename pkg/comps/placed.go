package comps

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/diag"
)

// placed is what is known of a table that blanks part: whether its cells stand below their
// heads, and which rows with fewer cells than heads were taken at their word.
type placed struct {
	under, astray int // rows with all cells that do, and of which one stands under another's head
	short         []short
}

// A short is a row with fewer cells than heads.
type short struct {
	at      diag.Pos
	message string
	astray  bool
}

// aDash is how to leave a cell out between blanks.
const aDash = "write a - where a cell is empty"

// place counts a row with all its cells, and keeps one with fewer.
func (r *reader) place(s *spaced) {
	switch p := &r.placed; {
	case s.short:
		at, message := r.taken()
		p.short = append(p.short, short{at, r.name() + ": " + message, s.astray})
	case s.astray:
		p.astray++
	default:
		p.under++
	}
}

// taken says of a row with fewer cells than heads for what the cell behind the first empty one
// is taken, or else the last, and which columns are taken as empty.
func (r *reader) taken() (diag.Pos, string) {
	var empty []string
	cells, beside, behind := 0, -1, false
	for i, cell := range r.record {
		if cell == "" {
			empty = append(empty, r.headers[i])
			continue
		}
		if cells++; !behind {
			beside, behind = i, len(empty) > 0
		}
	}
	return r.pos(beside), fmt.Sprintf("the row has %d cells, and the first row names %d columns; %s is taken for %s, and %s as empty", cells, r.width, diag.Quote(r.record[beside]), r.headers[beside], strings.Join(empty, ", "))
}

// tellShort doubts the rows with fewer cells than heads of which a cell stands under the head of
// another column; all of them, where those with all cells mostly do not stand below theirs.
func (r *reader) tellShort() {
	for _, s := range r.placed.short {
		if s.astray || r.placed.astray > r.placed.under {
			r.say(s.at, true, "few-cells", s.message, "see whether that is so; "+aDash)
		}
	}
}
