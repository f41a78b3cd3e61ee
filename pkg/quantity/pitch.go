package quantity

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

const (
	wantPitch = "the rise for a run of 12, e.g. 6/12, 6:12 or 6 in 12"
	perRun    = 12

	pitchPlaces = 20 // decimals
)

// Pitch is the slope of a roof: so much up for so much along, in any one unit.
type Pitch struct {
	Rise decimal.Decimal // 0 or more, rounded to 20 decimals
	Run  decimal.Decimal // above 0
}

// Per12 returns the rise for a run of 12, rounded half away from zero to Places decimals.
func (p Pitch) Per12() decimal.Decimal {
	if p.Run.IsZero() {
		return decimal.Zero
	}
	return quotient(p.Rise.Mul(decimal.NewFromInt(perRun)), p.Run)
}

// String prints 6/12, and 3:9 where the run is not 12.
func (p Pitch) String() string {
	between := ":"
	if p.Run.Equal(decimal.NewFromInt(perRun)) {
		between = "/"
	}
	return p.Rise.String() + between + p.Run.String()
}

// ParsePitch reads 6/12, 4 1/2 / 12, 6:12, 6 in 12, 3:9. With a slash the run has to be
// 12, as 1/4 could be a rise of 1 in 4 or a quarter of the span. Degrees and percent
// are refused.
func ParsePitch(text string) (Pitch, error) { return parse(text, wantPitch, (*cursor).pitch) }

func (c *cursor) pitch() (Pitch, error) {
	first := c.peek()
	if first.name == "-" {
		return Pitch{}, c.refuse(first, "a rise cannot be below zero")
	}
	rise, err := c.rise()
	if err != nil {
		return Pitch{}, err
	}
	between := c.peek()
	if !c.take("/", ":", "in") {
		return Pitch{}, c.noPitch(first)
	}
	second := c.peek()
	run, err := c.decimal(pitchPlaces)
	if err != nil {
		return Pitch{}, err
	}
	p := Pitch{toDecimal(rise, pitchPlaces), trim(run)}
	switch {
	case !p.Run.IsPositive():
		return Pitch{}, c.refuseSpan(second, c.last(), c.want, "the run must be above zero")
	case between.name == "/" && c.peek().kind == end && !p.Run.Equal(decimal.NewFromInt(perRun)):
		want := fmt.Sprintf("a colon between rise and run: %s:%s", FormatCount(p.Rise, pitchPlaces), FormatCount(p.Run, pitchPlaces))
		return Pitch{}, c.refuseSpan(first, c.last(), want, "%q could be rise by run or by span", c.since(first))
	}
	return p, nil
}

// rise reads what may have a fraction, but the 6/12 of 6/12 is none.
func (c *cursor) rise() (*big.Rat, error) {
	behind := c.ahead(3).name
	if c.peek().kind == number && c.ahead(1).name == "/" && behind != ":" && behind != "in" {
		d, err := c.decimal(pitchPlaces)
		return d.Rat(), err
	}
	return c.mixed(pitchPlaces)
}

// noPitch refuses a number that is no rise.
func (c *cursor) noPitch(first token) error {
	t := c.peek()
	switch t.name {
	case "°", "deg", "degree", "degrees":
		return c.refuse(t, "degrees are not read")
	case "%", "percent":
		return c.refuse(t, "percent is not read")
	case "":
		bare := c.since(first)
		return c.refuseSpan(first, c.last(), fmt.Sprintf("the run too: %s/12 or %[1]s in 12", bare), "%q has no run", bare)
	}
	return c.refuse(t, "found %s between rise and run", shown(t.text))
}
