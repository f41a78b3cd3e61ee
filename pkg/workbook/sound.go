package workbook

import (
	"slices"

	"ledgerboard/pkg/model"
)

// What is typed over in a sheet may be what the program would refuse in a file. These checks
// are conditions that hold for every deal that it reads, in cells of the workbook.

// measuresHold is the condition that no measure of a room, and no amount of work, is below
// nothing, as where openings come to more than their wall; "" without any.
func (b *book) measuresHold() string {
	type column struct {
		grid *grid
		col  int
	}
	rows, order := map[column][]int{}, []column{}
	for i, c := range b.model.Cells {
		if at := b.places[i]; at.grid != nil && at.grid != b.inputs && measures(c) && !b.answer.Values.Of(c).IsNegative() {
			x := column{at.grid, at.col}
			if rows[x] == nil {
				order = append(order, x)
			}
			rows[x] = append(rows[x], at.row)
		}
	}
	var parts []string
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
	if len(parts) == 0 {
		return ""
	}
	return "ROUND(" + nested("MIN(", parts) + ",9)>=0"
}

// measures reports whether a cell is a measure of a room or how much there is of a piece of
// work.
func measures(c *model.Cell) bool {
	switch c.Member.Set {
	case "room", "section", "opening", "plane":
		return !c.Line.Monthly && slices.Contains([]string{"ft", "sqft", "each", "count"}, c.Line.Unit)
	case "item":
		return c.Line.Name == "quantity"
	}
	return false
}

// depositHolds is the condition that the deposit is within the price.
func (b *book) depositHolds() string {
	if c := b.model.Find(b.model.Root, "earnest_deposit"); b.places[c.Index].grid == nil {
		return ""
	}
	return "ROUND(" + b.ref("price", 0) + "-" + b.ref("earnest_deposit", 0) + ",9)>=0"
}

// sound are the conditions that inputs can be so at all, in a cell of the sheet of workings.
func (b *book) sound() string {
	if b.soundAt != "" {
		return b.soundAt
	}
	b.soundAt = "TRUE"
	for _, condition := range []string{b.measuresHold(), b.depositHolds()} {
		if condition != "" {
			b.soundAt += "," + condition
		}
	}
	g := b.workingSheet()
	row := g.next()
	g.set(row, 1, text("whether no measure is below nothing, and the deposit within the price", look{role: small}))
	g.set(row, 2, cell{value: 1.0, formula: "IF(AND(" + b.soundAt + "),1,0)", look: look{format: plain}})
	b.soundAt = sheetPrefix(g, nil) + address(row, 2, true, true) + "=1"
	return b.soundAt
}
