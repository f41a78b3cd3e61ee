package cli

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// findFirst finds the first of some lines that the deal has; its error is that of
// the first.
func findFirst(d *deal.Deal, names []string) (*model.Cell, error) {
	first, err := findCell(d, names[0])
	for _, name := range names[1:] {
		if err == nil {
			break
		}
		if c, none := findCell(d, name); none == nil {
			return c, nil
		}
	}
	return first, err
}

// findCell finds a line by its name: profit, loan.points, loan.2.points or
// "title and escrow.amount"; or by the key of the deal file that gives it.
func findCell(d *deal.Deal, name string) (*model.Cell, error) {
	m := d.Model
	owner, line := "", normal(name)
	if i := strings.LastIndex(name, ": "); i >= 0 { // as pages print it
		name = name[:i] + "." + name[i+2:]
	}
	if i := strings.LastIndex(name, "."); i >= 0 {
		owner, line = name[:i], normal(name[i+1:])
	}
	found := cellsOf(m, owner, line)
	if len(found) == 0 && owner == "" {
		found = cellsOf(m, anyone, line)
	}
	if len(found) == 0 {
		found = membersCalled(m, normal(name))
	}
	for _, given := range deal.LinesOf(name[len(owner):]) {
		if len(found) == 0 {
			found = cellsOf(m, cmp.Or(owner, anyone), given)
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case len(found) > 1:
		return nil, &usageError{fmt.Errorf("%q could be any of %d lines", name, len(found)), "say which: " + strings.Join(addresses(found), ", ")}
	}
	e := &usageError{err: fmt.Errorf("the deal has no line %q", name), hint: "ledgerboard lines lists them"}
	if near, ok := diag.Nearest(normal(name), lineNames()); ok {
		e.hint = fmt.Sprintf("did you mean %s?", near)
	}
	return nil, e
}

// mainLine is the line that stands for a member asked for by its words alone.
var mainLine = map[string]string{"fee": "amount", "cost": "cash_cost", "loan": "cost", "deposit": "at_purchase"}

// membersCalled finds the main lines of members by their words: all of them, or
// the trade of a line of work.
func membersCalled(m *model.Model, words string) []*model.Cell {
	var exactly, trade []*model.Cell
	for _, c := range m.Cells {
		if c.Line.Name != mainLine[c.Member.Set] {
			continue
		}
		label := normal(c.Member.Label)
		before, _, _ := strings.Cut(label, ":")
		switch {
		case label == words:
			exactly = append(exactly, c)
		case before == words:
			trade = append(trade, c)
		}
	}
	if len(exactly) > 0 {
		return exactly
	}
	return trade
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
	return found
}

func normal(name string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(strings.TrimSpace(name)))
}

// owns reports whether a member is meant by the part of a name before its line:
// nothing for the deal, a set or kind, either with a number, or a label.
func owns(x *model.Member, owner string) bool {
	switch {
	case owner == "" || owner == model.Deal:
		return x.Set == model.Deal
	case x.Set == model.Deal:
		return false
	case owner == x.Set || owner == x.Kind || normal(owner) == x.Set+"."+normal(x.Label) || normal(owner) == normal(x.Label) || normal(owner) == normal(x.Path()):
		return true
	}
	set, number, ok := strings.Cut(owner, ".")
	n, err := strconv.Atoi(number)
	if !ok || err != nil || set != x.Set && set != x.Kind {
		return false
	}
	all := x.Parent.In(set)
	return n >= 1 && n <= len(all) && all[n-1] == x
}

// addresses are the names that tell cells of one line apart, at most five.
func addresses(cells []*model.Cell) []string {
	var out []string
	for _, c := range cells[:min(5, len(cells))] {
		out = append(out, fmt.Sprintf("%q", c.Member.Path()+"."+c.Line.Name))
	}
	if len(cells) > 5 {
		out = append(out, "and so on")
	}
	return out
}
