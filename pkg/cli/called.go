package cli

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/report"
)

// mainLine is the line that stands for a member asked for by its words alone, by set:
// what it comes to.
var mainLine = map[string]string{
	"fee": "amount", "cost": "cash_cost", "loan": "cost", "deposit": "at_purchase", "check": "set_aside",
	"room": "cash_cost", "option": "cash_cost", "item": "cash_cost", "trade": "cash_cost", "product": "product_cost",
}

// stands reports whether a cell is the one that stands for its member. Of what is paid ahead
// it is what the hold costs, since some of the payments comes back or is kept.
func stands(c *model.Cell) bool {
	name := mainLine[c.Member.Set]
	if _, ahead := c.Member.Given.Look("paid_ahead"); ahead {
		name = "cost_of_holding"
	}
	return c.Line.Name == name
}

// membersCalled finds the main lines of members by their words, or by the trade of a
// line of work. Of members of one name those of the deal itself come before what is in
// its rooms: gutters is the trade, "outside: gutters" the work.
func membersCalled(m *model.Model, words string) []*model.Cell {
	inside := strings.Contains(words, ":") // bath: exhaust fan is no bath exhaust fan
	words = joined(words)
	var exactly, trade []*model.Cell
	for _, c := range m.Cells {
		if !stands(c) {
			continue
		}
		before, _, _ := strings.Cut(c.Member.Label, ":")
		switch {
		case called(c.Member, words):
			exactly = append(exactly, c)
		case joined(before) == words:
			trade = append(trade, c)
		}
	}
	alone := func(c *model.Cell) bool {
		return joined(c.Member.Label) == words && !strings.Contains(c.Member.Label, ":")
	}
	if others := slices.DeleteFunc(slices.Clone(exactly), alone); inside && len(others) > 0 {
		exactly = others
	}
	exactly = foremost(exactly, words)
	if len(exactly) == 0 || exactly[0].Member.Set == "trade" {
		return append(exactly, trade...)
	}
	return exactly
}

// foremost are those of some cells whose members the deal itself has under that very
// name, with the charges of its loans beside them, or all where there are none.
func foremost(cells []*model.Cell, words string) []*model.Cell {
	named := func(set string) func(c *model.Cell) bool {
		return func(c *model.Cell) bool {
			x := c.Member
			return x.Parent != nil && x.Parent.Set == set && joined(x.Label) == words
		}
	}
	ofDeal, ofLoan := named(model.Deal), named("loan")
	if !slices.ContainsFunc(cells, ofDeal) {
		return cells
	}
	return slices.DeleteFunc(slices.Clone(cells), func(c *model.Cell) bool { return !ofDeal(c) && !ofLoan(c) })
}

// called reports whether words, joined, name a member: its label alone, or behind that
// of something it is in or belongs to. What lies between may be left out: "kitchen:
// paint walls" is in whatever option of the kitchen is chosen.
func called(x *model.Member, words string) bool {
	if x.Set == model.Deal {
		return false
	}
	label := joined(x.Label)
	if words == label || words == x.Set+"_"+label {
		return true
	}
	rest, ok := strings.CutSuffix(words, "_"+label)
	return ok && within(x, rest)
}

// within reports whether words name something that a member is in or belongs to.
func within(x *model.Member, words string) bool {
	for _, up := range append([]*model.Member{x.Parent}, x.Links...) {
		if up != nil && (called(up, words) || within(up, words)) {
			return true
		}
	}
	return false
}

// owns reports whether a member is meant by the part of a name before its line:
// nothing for the deal, a set or kind, either with a number, or its words.
func owns(x *model.Member, owner string) bool {
	switch {
	case owner == "" || owner == model.Deal:
		return x.Set == model.Deal
	case x.Set == model.Deal:
		return false
	case owner == x.Set || owner == x.Kind || called(x, joined(strings.TrimPrefix(owner, x.Set+"."))):
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

var between = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[\s_.,:-]+`) })

// joined evens words out so that it does not matter how they are put together.
func joined(words string) string {
	return strings.Trim(between().ReplaceAllString(strings.ToLower(words), "_"), "_")
}

// listed is how many names are listed to choose from.
const listed = 15

// addresses are names that tell cells apart, each the first that leads to it.
func addresses(d *deal.Deal, cells []*model.Cell) []string {
	var out []string
	for _, c := range cells[:min(listed, len(cells))] {
		out = append(out, strconv.Quote(address(d, c)))
	}
	if len(cells) > listed {
		out = append(out, fmt.Sprintf("and %d more", len(cells)-listed))
	}
	return out
}

// address is the first of a cell's names that stands for it alone: the label of its
// member, that behind its room or whatever else it is in, where the deal file has it, or
// all of its path, with its line behind it unless that stands for the member.
func address(d *deal.Deal, c *model.Cell) string {
	x := c.Member
	top := x
	for top.Parent != nil && top.Parent.Set != model.Deal {
		top = top.Parent
	}
	if v, ok := x.Given.Look(c.Line.Name); ok {
		path := d.PathAt(v.Pos)
		if one, _ := meant(d, report.Ask(path).Lines); one == c { // else it is where what draws it from more begins
			return path
		}
	}
	names := []string{x.Label, top.Label + ": " + x.Label, x.Set + ": " + x.Label, d.PathAt(x.Pos), x.Path()}
	for i, name := range names {
		if !stands(c) {
			name += "." + c.Line.Name
			names[i] = name
		}
		if one, _ := meant(d, report.Ask(name).Lines); one == c && x.Label+": "+x.Label != name {
			return name
		}
	}
	return names[len(names)-1]
}
