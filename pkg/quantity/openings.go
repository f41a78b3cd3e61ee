package quantity

import "strconv"

const (
	wantOpenings = `a size, e.g. 3' x 4', or several of it: 2 of 3' x 4'`
	maxOpenings  = 1000
)

// Openings is a number of openings of one size.
type Openings struct {
	Count int // 1 to 1000
	Size  Size
}

// String prints 3' x 4' or 2 of 3' x 4'.
func (o Openings) String() string {
	if o.Count == 1 {
		return o.Size.String()
	}
	return strconv.Itoa(o.Count) + " of " + o.Size.String()
}

// ParseOpenings reads a size, as ParseSize does, or several of it: 2 of 3' x 4'.
func ParseOpenings(text string) (Openings, error) {
	return parse(text, wantOpenings, (*cursor).openings)
}

func (c *cursor) openings() (Openings, error) {
	count := 1
	if t := c.peek(); c.ahead(1).name == "of" {
		n, err := strconv.Atoi(t.text)
		if err != nil || n < 1 || n > maxOpenings {
			return Openings{}, c.refuseFor(t, "a whole number from 1 to 1000, e.g. 2 of 3' x 4'", `%q before "of" is not a count`, t.text)
		}
		count = n
		c.i += 2
	}
	s, err := c.size()
	return Openings{count, s}, err
}
