package workbook

import (
	"slices"
	"strings"

	"ledgerboard/pkg/model"
)

// typed reports whether a cell holds what can be typed over.
func (b *book) typed(c *model.Cell) bool {
	return b.places[c.Index].grid != nil && b.editable(c) && !c.Line.Monthly && !drawn(c)
}

// numbersHold is the condition that all that is typed over is a number, or one of its words
// where it is a choice, and 1 or 0 where it is yes or no: in a sum a word counts as nothing, or
// as another.
func (b *book) numbersHold() string {
	var words []string
	for _, c := range b.model.Cells {
		if b.typed(c) && chosen(c) {
			var list []string
			for _, w := range wordsOf(c) {
				list = append(list, quoted(w))
			}
			words = append(words, "ISNUMBER(MATCH("+b.cellRef(c)+",{"+strings.Join(list, ",")+"},0))")
		}
	}
	var numbers []string
	for _, r := range b.ranges(b.typed) {
		numbers = append(numbers, "COUNT("+r.at+")="+itoa(r.cells-r.words)) // a blank one would count as nothing
	}
	for _, r := range b.ranges(func(c *model.Cell) bool { return b.typed(c) && c.Line.Unit == "flag" }) {
		numbers = append(numbers, "COUNTIF("+r.at+",0)+COUNTIF("+r.at+",1)="+itoa(r.cells))
	}
	all := func(some []string) string { return nested("AND(", some) }
	return both(b.inCells("whether all that can be typed over is a number, or a choice", numbers, all), b.inCells("whether every choice is one of its words", words, all))
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

// amountsHold is the condition that nothing is below nothing of which a file takes none that is.
func (b *book) amountsHold() string {
	lows := places(b.ranges(func(c *model.Cell) bool { return b.typed(c) && fromNothing(c) }))
	return b.inCells("whether no amount typed over is below nothing", lows, func(some []string) string { return nested("MIN(", some) + ">=0" })
}

// divisorsHold is the condition that what figures are divided by is more than nothing, none of
// it left blank; "" without any.
func (b *book) divisorsHold(waste string) string {
	divided := b.positive("what figures are divided by", divides)
	if waste == "" {
		return divided
	}
	return both(divided, "OR("+b.choiceRef(b.model.Find(b.model.Root, "waste_rule"))+"<>"+quoted("divided")+","+waste+")")
}

// wasteHolds is the condition that waste is less than the whole, as a file takes it; "" without any.
func (b *book) wasteHolds() string {
	wastes := places(b.ranges(func(c *model.Cell) bool { return b.typed(c) && c.Line.ID() == "use.waste" }))
	return b.inCells("whether waste is less than the whole", wastes, func(some []string) string { return nested("MAX(", some) + "<1" })
}

// positive is the condition that all of some inputs are more than nothing, none of them left
// blank; "" without any.
func (b *book) positive(what string, of func(*model.Cell) bool) string {
	var all []string
	for _, r := range b.ranges(func(c *model.Cell) bool { return b.typed(c) && of(c) }) {
		all = append(all, "COUNTIF("+r.at+","+quoted(">0")+")="+itoa(r.cells))
	}
	return b.inCells("whether "+what+" is more than nothing", all, allHold)
}

// divisors are the inputs that figures are divided by wherever there are such.
var divisors = []string{"container_holds", "container_limit", "roll_width", "own_hours_a_week", "crew", "hours_a_week", "holds", "roll_wide", "roll_long"}

func divides(c *model.Cell) bool { return slices.Contains(divisors, c.Line.Name) }

// belowNothing are the inputs that may be below nothing too: a market may fall, and days are
// counted from that of the purchase.
var belowNothing = []string{"overrun", "market_change", "market_rate", "walk_east", "walk_north", "from_day", "until_day"}

// fromNothing reports whether an input is nothing at least; words are passed over.
func fromNothing(c *model.Cell) bool {
	return !slices.Contains(belowNothing, c.Line.Name) && (c.Line.Section != "Comparables" || c.Line.Name == "sold_price")
}

// both are two conditions of which there may be none.
func both(x, y string) string {
	if x == "" || y == "" {
		return x + y
	}
	return "AND(" + x + "," + y + ")"
}

// A span is a part of a column, with how many cells of some it holds, and how many of those are
// choices.
type span struct {
	at           string
	cells, words int
}

func places(all []span) (out []string) {
	for _, s := range all {
		out = append(out, s.at)
	}
	return out
}

// ranges are the places of some cells, in one as far as nothing else stands between them: on the
// sheet Inputs the rows of heads are passed over.
func (b *book) ranges(of func(*model.Cell) bool) (out []span) {
	type column struct {
		grid *grid
		col  int
	}
	all, order := map[column]map[int]*model.Cell{}, []column{}
	for i, c := range b.model.Cells {
		if at := b.places[i]; at.grid != nil && of(c) {
			x := column{at.grid, at.col}
			if all[x] == nil {
				all[x], order = map[int]*model.Cell{}, append(order, x)
			}
			all[x][at.row] = c
		}
	}
	for _, x := range order {
		first, last, cells, words := 0, 0, 0, 0
		end := func() {
			if first > 0 {
				out = append(out, span{sheetPrefix(x.grid, nil) + address(first, x.col, true, true) + ":" + address(last, x.col, true, true), cells, words})
			}
			first, cells, words = 0, 0, 0
		}
		for row := 1; row <= len(x.grid.rows); row++ {
			switch c := all[x][row]; {
			case c != nil:
				if first == 0 {
					first = row
				}
				cells++
				if last = row; chosen(c) {
					words++
				}
			case x.grid != b.inputs || !x.grid.blank(row, x.col): // elsewhere results stand between
				end()
			}
		}
		end()
	}
	return out
}

// blank reports whether nothing stands at a place.
func (g *grid) blank(row, col int) bool {
	if col > len(g.rows[row-1]) {
		return true
	}
	c := g.rows[row-1][col-1]
	return c.value == nil && c.formula == ""
}
