package cli

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/report"
)

// noSuchLine says that nothing of a deal goes by a name, and what comes near it.
func noSuchLine(d *deal.Deal, name string) error {
	e := &usageError{err: fmt.Errorf("nothing in the deal is called %q", name), hint: "ledgerboard lines lists the lines; scope and buy show the work and the products"}
	words, all := spaced(name), known(d)
	if near, ok := diag.Nearest(words, all); ok {
		e.hint = "did you mean " + near + "?"
	} else if near := diag.Near(words, all); len(near) > 0 {
		e.hint = "did you mean one of these? " + strings.Join(near, ", ")
	}
	return e
}

// known are all words that why takes: the labels of the pages, the names of what is in
// the deal, and the lines.
func known(d *deal.Deal) []string {
	out := report.Labels()
	for _, c := range d.Model.Cells {
		if c.Line.Name == mainLine[c.Member.Set] {
			out = append(out, strings.ToLower(c.Member.Label))
		}
	}
	for _, line := range lineNames() {
		out = append(out, spaced(line))
	}
	return out
}

// spaced are the words of a name as people write them.
func spaced(name string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("_", " ", ":", " ", ",", " ").Replace(strings.ToLower(name))), " ")
}
