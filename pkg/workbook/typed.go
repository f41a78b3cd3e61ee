package workbook

import (
	"slices"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// typed reports whether a cell holds what can be typed over.
func (b *book) typed(c *model.Cell) bool {
	return b.places[c.Index].grid != nil && b.editable(c) && !c.Line.Monthly && !drawn(c)
}

// chosen reports whether an input is one of some words.
func chosen(c *model.Cell) bool { return len(c.Line.Choices) > 0 }

// wordsOf are the words that an input of choice may be: spending is stated only where the file
// states it.
func wordsOf(c *model.Cell) []string {
	if c.Line.ID() == "curve" && len(c.Member.In("stage")) == 0 {
		return slices.DeleteFunc(slices.Clone(c.Line.Choices), func(w string) bool { return w == "stated" })
	}
	return c.Line.Choices
}

// spendingHolds is the condition that something of what is stated of the spending falls into
// the renovation; "" where none is stated.
func (b *book) spendingHolds() string {
	if len(b.model.Root.In("stage")) == 0 {
		return ""
	}
	return "OR(" + b.ref("curve", 0) + "<>" + quoted("stated") + "," + b.ref("stated_spending", 0) + ">0)"
}

// divisors are the inputs that figures are divided by wherever there are such.
var divisors = []string{"container_holds", "container_limit", "roll_width", "own_hours_a_week", "crew", "hours_a_week", "holds", "roll_wide", "roll_long"}

// divideSome are those that figures are divided by where they are stated, and that nothing stands
// for where they are not.
var divideSome = []string{"unit_size", "covers", "stick_length"}

// divides reports whether figures are divided by an input.
func (b *book) divides(c *model.Cell) bool {
	return slices.Contains(divisors, c.Line.Name) || slices.Contains(divideSome, c.Line.Name) && b.answer.Values.Of(c).IsPositive()
}

// belowNothing are the inputs that may be below nothing too: a market may fall, and days are
// counted from that of the purchase.
var belowNothing = []string{"overrun", "market_change", "market_rate", "walk_east", "walk_north", "from_day", "until_day"}

// fromNothing reports whether an input is nothing at least; words are passed over. Of comparables
// it is what a file takes from nothing on: the worth of an own line may be below.
func (b *book) fromNothing(c *model.Cell) bool {
	if c.Line.Section != "Comparables" {
		return !slices.Contains(belowNothing, c.Line.Name)
	}
	return slices.ContainsFunc(b.edgesOf(c), func(e deal.Edge) bool { return e.Least && !e.At.IsNegative() })
}

// both are two conditions of which there may be none.
func both(x, y string) string {
	if x == "" || y == "" {
		return x + y
	}
	return "AND(" + x + "," + y + ")"
}
