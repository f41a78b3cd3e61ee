package cli

import (
	"cmp"
	"fmt"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// find finds the line that words ask for: the first of some names that only one line
// has. Where there is none, the error tells what may be meant.
func find(d *deal.Deal, words string, names []string) (*model.Cell, error) {
	var several []*model.Cell
	for _, name := range names {
		found := findCells(d.Model, name)
		if len(found) == 1 {
			return found[0], nil
		}
		if several == nil {
			several = found
		}
	}
	if several == nil {
		return nil, noSuchLine(d, words)
	}
	return nil, &usageError{fmt.Errorf("%q could be any of %d lines", words, len(several)), "say which: " + strings.Join(addresses(several), ", ")}
}

// findCells finds lines by a name: profit, loan.points, loan.2.points or "title and
// escrow.amount"; by the words of a member, which stand for what it comes to: kitchen,
// "kitchen: paint walls"; or by the key of the deal file that gives them.
func findCells(m *model.Model, name string) []*model.Cell {
	owner, line := "", normal(name)
	if i := strings.LastIndex(name, ": "); i >= 0 { // as pages print it: work, else a line
		if found := membersCalled(m, name); len(found) > 0 {
			return found
		}
		name = name[:i] + "." + name[i+2:]
	}
	if i := strings.LastIndex(name, "."); i >= 0 {
		owner, line = name[:i], normal(name[i+1:])
	}
	found := cellsOf(m, owner, line)
	if len(found) == 0 {
		found = membersCalled(m, name)
	}
	if len(found) == 0 && owner == "" {
		found = cellsOf(m, anyone, line)
	}
	for _, given := range deal.LinesOf(name[len(owner):]) {
		if len(found) == 0 {
			found = cellsOf(m, cmp.Or(owner, anyone), given)
		}
	}
	return found
}

// anyone stands for every member in cellsOf.
const anyone = "*"

func cellsOf(m *model.Model, owner, line string) []*model.Cell {
	var found []*model.Cell
	for _, c := range m.Cells {
		if c.Line.Name == line && (owner == anyone || owns(c.Member, owner)) {
			found = append(found, c)
		}
	}
	return foremost(found, joined(owner))
}

func normal(name string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(strings.TrimSpace(name)))
}
