package quantity

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

const wantPercent = "a percentage, e.g. 7.5%, 2 1/2% or 2 points"

var one = big.NewRat(1, 1) // never written to

// ParsePercent reads a share and returns it as a fraction: 7.5%, 1/2%, 2 1/2%,
// 7.5 percent, 2 points; 7.5% is 0.075. A number without a sign is refused, as 0.5
// could be half a percent or a half; 0 alone is fine. Shares below 0 and above
// 100% are read. A fraction without an end is rounded to 40 decimals of a percent.
func ParsePercent(text string) (decimal.Decimal, error) {
	return parse(text, wantPercent, (*cursor).percent)
}

func (c *cursor) percent() (decimal.Decimal, error) {
	negative, _ := c.sign()
	figure := c.peek()
	if a, b, split := strings.Cut(c.text, "/"); split && addTo100(a, b) {
		return decimal.Zero, c.refuseSpan(figure, c.toks[len(c.toks)-2], fmt.Sprintf("one of them: %s%% or %s%%", strings.TrimSpace(a), strings.TrimSpace(b)), "%q are two shares", c.text)
	}
	if err := c.leadingZero(); err != nil {
		return decimal.Zero, err
	}
	n, err := c.mixed(Places)
	if err != nil {
		return decimal.Zero, err
	}
	bare := c.since(figure)
	if !c.take("%", "percent", "pct", "point", "points", "pt", "pts") && (n.Sign() != 0 || c.peek().kind != end) {
		if t := c.peek(); t.kind == word {
			return decimal.Zero, c.refuse(t, "%q is not a percent sign", t.text)
		} else if t.kind != end {
			last := c.toks[len(c.toks)-2]
			return decimal.Zero, c.refuseSpan(t, last, c.want, "%q does not belong here", c.text[t.at:last.end()])
		}
		return decimal.Zero, c.refuseSpan(figure, c.toks[c.i-1], suggestPercent(bare, n), "%q has no percent sign", bare)
	}
	if negative {
		n.Neg(n)
	}
	return trim(toDecimal(n, Places).Shift(-2)), nil
}

// suggestPercent says what a bare number could have been.
func suggestPercent(bare string, n *big.Rat) string {
	if n.Cmp(one) > 0 {
		return fmt.Sprintf("a percent sign: %s%%", bare)
	}
	if strings.Contains(bare, "/") { // a part of a whole more often than of a hundredth
		return fmt.Sprintf("a percent sign: %s or %s%%", FormatPercent(toDecimal(n, Places), 6), bare)
	}
	return fmt.Sprintf("a percent sign: %s%% or %s", bare, FormatPercent(toDecimal(n, Places), 6))
}

// addTo100 reports whether two texts are whole numbers that people part a whole by, as 60/40.
func addTo100(a, b string) bool {
	x, errX := strconv.Atoi(strings.TrimSpace(a))
	y, errY := strconv.Atoi(strings.TrimSpace(b))
	return errX == nil && errY == nil && x+y == 100
}
