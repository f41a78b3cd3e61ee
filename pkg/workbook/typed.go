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
// where it is a choice: in a sum a word counts as nothing, or as another.
func (b *book) numbersHold() string {
	ranges := b.ranges(func(c *model.Cell) bool { return b.typed(c) && len(c.Line.Choices) == 0 })
	var words []string
	for _, c := range b.model.Cells {
		if b.typed(c) && len(c.Line.Choices) > 0 && b.choice(c) != "" {
			var list []string
			for _, w := range c.Line.Choices {
				list = append(list, quoted(w))
			}
			words = append(words, "ISNUMBER(MATCH("+b.cellRef(c)+",{"+strings.Join(list, ",")+"},0))")
		}
	}
	return both(
		b.inCells("whether all that can be typed over is a number", ranges, func(some []string) string {
			return nested("COUNTA(", some) + "=" + nested("COUNT(", some)
		}),
		b.inCells("whether every choice is one of its words", words, func(some []string) string { return nested("AND(", some) }),
	)
}

// amountsHold is the condition that nothing is below nothing of which a file takes none that
// is, and that what is yes or no is 1 or 0.
func (b *book) amountsHold() string {
	lows := b.ranges(func(c *model.Cell) bool { return b.typed(c) && fromNothing(c) })
	flags := b.ranges(func(c *model.Cell) bool { return b.typed(c) && c.Line.Unit == "flag" })
	return both(
		b.inCells("whether no amount typed over is below nothing", lows, func(some []string) string { return nested("MIN(", some) + ">=0" }),
		b.inCells("whether each yes or no is 1 or 0", flags, func(some []string) string { return nested("MAX(", some) + "<=1" }),
	)
}

// belowNothing are the inputs that a file takes below nothing too.
var belowNothing = []string{"overrun", "market_rate", "walk_east", "walk_north"}

// fromNothing reports whether an input can be nothing at least.
func fromNothing(c *model.Cell) bool {
	return len(c.Line.Choices) == 0 && !slices.Contains(belowNothing, c.Line.Name) && (c.Line.Section != "Comparables" || c.Line.Name == "sold_price")
}

// both are two conditions of which there may be none.
func both(x, y string) string {
	if x == "" || y == "" {
		return x + y
	}
	return "AND(" + x + "," + y + ")"
}

// ranges are the places of some cells, those below each other in one.
func (b *book) ranges(of func(*model.Cell) bool) (parts []string) {
	type column struct {
		grid *grid
		col  int
	}
	rows, order := map[column][]int{}, []column{}
	for i, c := range b.model.Cells {
		if at := b.places[i]; at.grid != nil && of(c) {
			x := column{at.grid, at.col}
			if rows[x] == nil {
				order = append(order, x)
			}
			rows[x] = append(rows[x], at.row)
		}
	}
	for _, x := range order {
		slices.Sort(rows[x])
		for all := rows[x]; len(all) > 0; {
			n := 1
			for n < len(all) && all[n] == all[0]+n {
				n++
			}
			parts = append(parts, sheetPrefix(x.grid, nil)+address(all[0], x.col, true, true)+":"+address(all[n-1], x.col, true, true))
			all = all[n:]
		}
	}
	return parts
}
