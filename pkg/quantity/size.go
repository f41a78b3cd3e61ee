package quantity

import (
	"cmp"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

const wantSize = `two lengths with an x between, e.g. 8'2" x 5', 12 x 14 ft or 3 m x 4 m`

// Side is one of the two lengths of a size, and where it stands.
type Side struct {
	Length
	Text   string // as written, text[At:At+len(Text)]
	At     int    // byte offset
	Metric bool   // in metres or parts of one
}

// Size is two lengths in the order written: across and up for an opening.
type Size struct{ First, Second Side }

// Area returns the area, exactly.
func (s Size) Area() Area { return s.First.Times(s.Second.Length) }

// String prints both sides as Length does: 8' 2" x 5'.
func (s Size) String() string { return s.First.String() + " x " + s.Second.String() }

// ParseSize reads two lengths with x, × or by between: 8' 2" x 5', 3'0" by 6'8",
// 3.2 m × 4 m. In 12 x 14 ft the unit counts for both. A door code such as 2868 is refused.
func ParseSize(text string) (Size, error) { return parse(text, wantSize, (*cursor).size) }

func (c *cursor) size() (Size, error) {
	c.splitX()
	if err := c.doorCode(); err != nil {
		return Size{}, err
	}
	first, err := c.side()
	if err != nil {
		return Size{}, err
	}
	if err := c.by(); err != nil {
		return Size{}, err
	}
	second, err := c.side()
	if err != nil {
		return Size{}, err
	}
	switch {
	case first.bare() && second.bare():
		text := c.since(first.from)
		want := fmt.Sprintf("its unit: %s ft, %[1]s in or %[1]s m", text)
		if a, b := inchesBehindPoint(first.Text), inchesBehindPoint(second.Text); a+b != "" {
			want += fmt.Sprintf("; if inches stand behind the point, %s x %s", cmp.Or(a, first.Text+"'"), cmp.Or(b, second.Text+"'"))
		}
		return Size{}, c.refuseSpan(first.from, second.to, want, "%q has no unit", text)
	case second.bare():
		_, err = c.unitOf(lengths, second.from)
	case first.bare():
		first.Length, err = c.sameUnit(first, second.unit)
		first.Metric = second.Metric
	}
	return Size{first.Side, second.Side}, err
}

// inchesBehindPoint reads 8.2 as people write 8' 2" in haste; "" for what is no such
// length.
func inchesBehindPoint(text string) string {
	feet, inches, point := strings.Cut(text, ".")
	if n, err := strconv.Atoi(inches); !point || err != nil || n < 1 || n > 11 || inches[0] == '0' {
		return ""
	}
	return feet + "' " + inches + `"`
}

// sideRead is a side, and how it was written.
type sideRead struct {
	Side
	from, to token
	number   *big.Rat // of a side with no unit
	unit     *unitRow // nil for feet and inches together
}

func (s sideRead) bare() bool { return s.number != nil }

func (c *cursor) side() (s sideRead, err error) {
	s.from = c.peek()
	n, err := c.unsigned(lengths)
	if err != nil {
		return s, err
	}
	if t := c.peek(); isBy(t) || t.kind == end {
		s.number = n
	} else if s.Length, s.unit, err = c.lengthOf(s.from, n); err != nil {
		return s, err
	}
	s.to, s.Text, s.At = c.last(), c.since(s.from), s.from.at
	s.Metric = s.unit != nil && s.unit.metric()
	return s, nil
}

// sameUnit gives a side the unit of the other.
func (c *cursor) sameUnit(s sideRead, u *unitRow) (Length, error) {
	if u != nil {
		return c.lengthIn(u, s.from, s.to, s.number)
	}
	return Length{}, c.refuseSpan(s.from, s.to, fmt.Sprintf(`its unit: %s' or %[1]s"`, s.Text), "%q has no unit", s.Text)
}

func isBy(t token) bool { return t.name == "x" || t.name == "×" || t.name == "by" || t.name == "*" }

func (c *cursor) by() error {
	t := c.next()
	switch {
	case t.kind == end:
		return c.refuse(t, "the second length is missing")
	case !isBy(t):
		return c.refuse(t, `found %s instead of "x"`, shown(t.text))
	}
	return nil
}

// splitX parts a unit from an x written against it: 12ftx14ft.
func (c *cursor) splitX() {
	for i := len(c.toks) - 1; i >= 0; i-- {
		t := c.toks[i]
		unit, found := strings.CutSuffix(t.name, "x")
		if u := unitsByName[unit]; !found || u == nil || len(unit)+1 != len(t.text) {
			continue
		}
		at := len(unit)
		x := token{kind: word, text: t.text[at:], name: "x", at: t.at + at, tight: true}
		t.text, t.name = t.text[:at], unit
		c.toks = append(c.toks[:i], append([]token{t, x}, c.toks[i+1:]...)...)
	}
}

// doorCode refuses 2868, which says feet, inches, feet, inches.
func (c *cursor) doorCode() error {
	t := c.peek()
	if len(t.text) != 4 || !whole(t.text) || t.text[0] == '0' || t.text[2] == '0' || c.ahead(1).kind != end {
		return nil
	}
	d := t.text
	want := fmt.Sprintf(`the size itself: %c'%c" x %c'%c"`, d[0], d[1], d[2], d[3])
	return c.refuseFor(t, want, "%q looks like a door code", d)
}
