package quantity

import (
	"fmt"
	"math/big"
)

const wantLength = `a length with its unit, e.g. 8'2", 8 ft 2 1/2 in, 98 in or 2.49 m`

var twelve = big.NewRat(12, 1) // never written to

// ParseLength reads 8'2", 8' 2 1/2", 8'-2", 8 ft 2 in, 98.5 in, 12.5', 2 yd, 2.49 m,
// 249 cm, with straight or curly marks; behind feet a number alone is inches. A
// number without a unit is refused, even 0, and so are inches of 12 or more behind
// feet, what cannot be kept exactly (1/3 in), and more than 100,000 ft.
func ParseLength(text string) (Length, error) { return parse(text, wantLength, (*cursor).length) }

func (c *cursor) length() (Length, error) {
	first := c.peek()
	n, err := c.unsigned(lengths)
	if err != nil {
		return Length{}, err
	}
	l, _, err := c.lengthOf(first, n)
	return l, err
}

// lengthOf goes on behind the number n, which began at first. The unit is nil for
// feet and inches together.
func (c *cursor) lengthOf(first token, n *big.Rat) (Length, *unitRow, error) {
	if err := c.spanOrInches(first); err != nil {
		return Length{}, nil, err
	}
	u, err := c.unitOf(lengths, first)
	if err != nil {
		return Length{}, nil, err
	}
	if u.unit == "ft" && c.joint() {
		n, err = c.inchesBehind(first, n)
		if err != nil {
			return Length{}, nil, err
		}
		l, err := c.lengthIn(unitTable["in"], first, c.last(), n)
		return l, nil, err
	}
	l, err := c.lengthIn(u, first, c.last(), n)
	return l, u, err
}

func (c *cursor) lengthIn(u *unitRow, first, last token, n *big.Rat) (Length, error) {
	d, err := c.kept(first, last, new(big.Rat).Mul(n, u.size.Rat()), lengths, lengthPlaces)
	return Length{d}, err
}

// spanOrInches refuses 8-2.
func (c *cursor) spanOrInches(first token) error {
	dash, n := c.peek(), c.ahead(1)
	if dash.name != "-" || n.kind != number {
		return nil
	}
	return c.refuseSpan(first, n, fmt.Sprintf(`the units: %s'%s"`, c.since(first), n.text),
		"%q could be feet and inches or from one to the other", c.text[first.at:n.end()])
}

// joint steps over what may stand between feet and inches, and reports whether a
// number comes.
func (c *cursor) joint() bool {
	t, n := c.peek(), c.ahead(1)
	if c.figureAt(0) {
		return true
	}
	dash := t.name == "-" && t.tight == n.tight // 8'-2", but not 8' -2"
	if (dash || t.name == "," || t.name == "and") && c.figureAt(1) {
		c.next()
		return true
	}
	return false
}

func (c *cursor) figureAt(n int) bool { return c.ahead(n).kind == number || c.fractionAt(n) }

// inchesBehind reads the inches behind feet and returns all in inches.
func (c *cursor) inchesBehind(first token, feet *big.Rat) (*big.Rat, error) {
	if !feet.IsInt() {
		return nil, c.refuseSpan(first, c.last(), `whole feet before inches, or feet alone, e.g. 8'2" or 8.5'`,
			"%s is not whole feet, and inches follow", shown(c.since(first)))
	}
	figure := c.peek()
	inches, err := c.mixed(Places)
	if err != nil {
		return nil, err
	}
	t := c.peek()
	u, n := c.unitAhead(lengths)
	switch {
	case n > 0 && u.unit == "ft":
		return nil, c.refuse(t, "feet are given twice")
	case n > 0 && u.unit != "in":
		return nil, c.refuse(t, "%q is not inches, which alone may follow feet", t.text)
	}
	c.i += n
	all := new(big.Rat).Mul(feet, twelve)
	all.Add(all, inches)
	if inches.Cmp(twelve) < 0 {
		return all, nil
	}
	l, err := c.lengthIn(unitTable["in"], first, c.last(), all)
	if err != nil {
		return nil, err
	}
	want := fmt.Sprintf(`fewer than 12 inches behind feet, or inches alone: %s or %s"`, l, l.Inches())
	return nil, c.refuseSpan(figure, c.last(), want, "%s is a foot or more of inches", shown(c.since(figure)))
}
