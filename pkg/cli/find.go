package cli

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/report"
)

// find finds the line that words ask for: the first of some names that only one line
// has. Where there is none, the error tells what may be meant.
func find(d *deal.Deal, words string, names []string) (*model.Cell, error) {
	names = slices.DeleteFunc(slices.Clone(names), func(n string) bool { // behind a colon, no line of the deal by its name
		line, ofDeal := strings.CutPrefix(n, "deal.")
		_, rest, colon := strings.Cut(words, line+": ")
		return ofDeal && colon && !report.IsFigure(rest) && !choiceOf(d, n, rest) || ofDeal && colon && hasRoom(d, line)
	})
	one, several := meant(d, names)
	switch {
	case one != nil:
		return one, nil
	case several == nil:
		return nil, noSuchLine(d, words)
	}
	return nil, &usageError{fmt.Errorf("%q could be any of %d lines", words, len(several)), "say which: " + strings.Join(addresses(d, several), ", ")}
}

// choiceOf reports whether a page could have a word behind a line of the deal: spending: straight.
func choiceOf(d *deal.Deal, line, word string) bool {
	c, _ := meant(d, []string{line})
	return c != nil && slices.Contains(c.Line.Choices, joined(word))
}

func hasRoom(d *deal.Deal, name string) bool {
	return slices.ContainsFunc(d.Model.Root.In("room"), func(m *model.Member) bool { return joined(m.Label) == joined(name) })
}

// untakenLine says that words name what stands in an option that the scope does not take;
// nil where they do not.
func (c *common) untakenLine(path, words string, names []string) error {
	every := *c
	every.how.AllOptions = true
	sets, err := every.replacements()
	if err != nil {
		return nil
	}
	l, err := every.load(path, sets)
	if err != nil || l.deal == nil {
		return nil
	}
	one, several := meant(l.deal, names)
	if one != nil {
		several = append(several, one)
	}
	for _, cell := range several {
		for m := cell.Member; m != nil; m = m.Parent {
			if deal.LeftOut(m) {
				return &usageError{fmt.Errorf("%q is in the option %s of %s, which is not taken", words, m.Label, m.Parent.Label), "add   --set 'scope=" + m.Label + "'   to look at it"}
			}
		}
	}
	return nil
}

// meant is the line that the first of some names with only one has, or the lines of the
// first that has several.
func meant(d *deal.Deal, names []string) (one *model.Cell, several []*model.Cell) {
	for _, name := range names {
		found := findCells(d.Model, name)
		if len(found) == 0 {
			found = writtenCells(d, name)
		}
		if len(found) == 1 {
			return found[0], nil
		}
		if several == nil {
			several = found
		}
	}
	return nil, several
}

// writtenCells finds lines by a path of the deal file: what stands there comes to,
// selling.transfer tax; a line of that, selling.transfer tax.share; the input that is
// given there, purchase.price; or what a key would give that does not stand there.
func writtenCells(d *deal.Deal, path string) []*model.Cell {
	owner, line := path, ""
	if i := strings.LastIndex(path, "."); i >= 0 {
		owner, line = path[:i], normal(path[i+1:])
	}
	lines := deal.LinesOf(path)
	there, around := d.Written(path), d.Written(owner)
	var whole, part, given, without []*model.Cell
	for _, c := range d.Model.Cells {
		x := c.Member
		if stands(c) && there(x.Pos) && keyed(x, path) {
			whole = append(whole, c)
		}
		if within := around(x.Pos) && keyed(x, owner); within && c.Line.Name == line {
			part = append(part, c)
		} else if within && slices.Contains(lines, c.Line.Name) {
			without = append(without, c)
		}
		if v, ok := x.Given.Look(c.Line.Name); ok && there(v.Pos) {
			given = append(given, c)
		}
	}
	for _, found := range [][]*model.Cell{whole, part, given, ofGiven(without)} {
		if len(found) > 0 {
			return found
		}
	}
	return nil
}

// keyed reports whether a member has the name of the last key of a path, or is an item
// of a list; not what comes along with it.
func keyed(x *model.Member, path string) bool {
	last := joined(path[strings.LastIndex(path, ".")+1:])
	_, err := strconv.Atoi(last)
	return err == nil || joined(x.Label) == last
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
	if len(found) == 0 {
		if owner != "" && deal.IsGroup(owner) {
			owner = model.Deal
		}
		found = cellsOf(m, owner, deal.LinesOf(name)...)
		if len(found) == 0 && owner == "" {
			found = cellsOf(m, anyone, deal.LinesOf(name)...)
		}
	}
	return ofGiven(found)
}

// ofGiven leaves out lines of a member of which another is given: of the share and the
// dollars that one key takes, the one that stands there.
func ofGiven(cells []*model.Cell) []*model.Cell {
	given := map[*model.Member]bool{}
	for _, c := range cells {
		given[c.Member] = given[c.Member] || c.Given != nil
	}
	return slices.DeleteFunc(cells, func(c *model.Cell) bool { return given[c.Member] && c.Given == nil })
}

// anyone stands for every member in cellsOf.
const anyone = "*"

func cellsOf(m *model.Model, owner string, lines ...string) []*model.Cell {
	var found []*model.Cell
	for _, c := range m.Cells {
		if slices.Contains(lines, c.Line.Name) && (owner == anyone || owns(c.Member, owner)) {
			found = append(found, c)
		}
	}
	return foremost(found, joined(owner))
}

func normal(name string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(strings.TrimSpace(name)))
}
