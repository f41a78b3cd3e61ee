package deal

import (
	"slices"
	"strings"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/diag"
)

// AmountsFor are the keys that give what some lines are worth, with their examples.
func AmountsFor(lines []comps.Line) string {
	var out []string
	for _, row := range adjusted {
		if slices.Contains(lines, row.line) {
			out = append(out, fieldNamed("comps.amounts", row.key).example())
		}
	}
	return strings.Join(out, ", ")
}

// doubtIdleAmounts warns of amounts and own lines that touch no sale. What one side alone says is
// told as such, and an amount of nothing is meant to do nothing.
func (r *reader) doubtIdleAmounts(c *Comparables) {
	var unused []*reading
	write := ""
	for _, row := range adjusted {
		g := r.good("comps.amounts." + row.key)
		if g == nil || row.figure == nil || g.number.IsZero() || row.figure(&c.Subject.House).Known || c.most(func(s *comps.Row) bool { return row.figure(&s.House).Known }) {
			continue
		}
		if unused = append(unused, g); write == "" {
			write = fieldNamed("house", fieldsOf[row.line]).example()
		}
	}
	if len(unused) > 0 {
		var names []string
		for _, g := range unused {
			names = append(names, g.field.Key())
		}
		is := map[bool]string{true: "amount for a %s is", false: "amounts for a %s are"}[len(names) == 1]
		r.say("comps-amount-unused", unused[0].at(), "the "+is+" used by no sale: neither the house nor most sales say what to compare", strings.Join(names, ", a "))("say it of the house and of the sales, e.g.   %s   or take the amount away", write)
	}
	for _, x := range r.extras {
		if !slices.Contains(c.Subject.Has, x.Name) && !slices.ContainsFunc(c.Value.Rows, func(s comps.Row) bool { return slices.Contains(s.Has, x.Name) }) {
			r.say("comps-amount-unused", x.at, "the own line %s is used by no sale: neither the house nor any sale has it", diag.Quote(x.Name))("name it where it is, e.g.   has: [%s]   under house or a sale, or take the line away", x.Name)
		}
	}
}
