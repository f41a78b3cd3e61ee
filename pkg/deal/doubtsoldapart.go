package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/quantity"
)

// twiceAsMuch is from how many times the other on, once adjusted, one of two sales looks
// mistyped: which of them, nobody knows (common practice, no source).
var twiceAsMuch = decimal.NewFromInt(2)

// twoApart are two sales that are all there is, the lower and the higher once adjusted, where
// they lie so far apart that one of them is likely wrong; nil otherwise.
func (c *Comparables) twoApart() (low, high *comps.Row) {
	if len(c.Value.Rows) != 2 {
		return nil, nil
	}
	low, high = &c.Value.Rows[0], &c.Value.Rows[1]
	if low.Adjusted.GreaterThan(high.Adjusted) {
		low, high = high, low
	}
	if !high.Adjusted.GreaterThan(low.Adjusted.Mul(twiceAsMuch)) {
		return nil, nil
	}
	return low, high
}

// doubtTwoApart warns of such two sales.
func (r *reader) doubtTwoApart(c *Comparables) {
	if low, high := c.twoApart(); low != nil {
		r.say("sale-far-off", c.Place(&high.Sold), "%s is adjusted to %s, and the only other sale, %s, to %s: one of them is likely wrong", high.Name(), quantity.FormatDollars(high.Adjusted), low.Name(), quantity.FormatDollars(low.Adjusted))("look at the prices of both for a digit too many or too few, and strike the one that is wrong")
	}
}

// DoubtTwo says of such two sales what they were sold for; nothing where there are none.
func (c *Comparables) DoubtTwo() string {
	low, high := c.twoApart()
	if low == nil {
		return ""
	}
	return fmt.Sprintf("it is drawn from two sales alone, %s, sold for %s (%s), and %s, sold for %s (%s), and one of them is likely wrong, over twice the other once adjusted. Look at both for a digit too many or too few, and correct or strike the wrong one", low.Name(), quantity.FormatDollars(low.Price), c.Place(&low.Sold), high.Name(), quantity.FormatDollars(high.Price), c.Place(&high.Sold))
}

// DoubtApart says of the sale that most of the value comes of, of those so far from the others
// that they are likely mistyped, how much that is; nothing where it is next to nothing.
func (c *Comparables) DoubtApart() string {
	var most *comps.Row
	for i := range c.Value.Rows {
		if row := &c.Value.Rows[i]; row.Apart && !c.Value.Faint(row) && (most == nil || c.Value.Part(row) > c.Value.Part(most)) {
			most = row
		}
	}
	if most == nil {
		return ""
	}
	return fmt.Sprintf("%s of it comes of %s, sold for %s, over twice or under half of the middle one once adjusted. Look at its price (%s) for a digit too many or too few, and correct or strike it", c.part(most), most.Name(), quantity.FormatDollars(most.Price), c.Place(&most.Sold))
}

// part is how much of the value comes of a sale, in words.
func (c *Comparables) part(row *comps.Row) string {
	part := decimal.NewFromFloat(c.Value.Part(row)).Round(2)
	if part.IsZero() {
		return "under 1%"
	}
	return quantity.FormatPercent(part, 0)
}

func farBy(x float64) string {
	words := "more"
	if x < 0 {
		x, words = -x, "less"
	}
	return quantity.FormatPercent(decimal.NewFromFloat(x).Round(2), 0) + " " + words
}
