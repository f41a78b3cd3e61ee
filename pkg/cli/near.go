package cli

import (
	"fmt"
	"slices"
	"strings"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/report"
)

// noSuchLine says that nothing of a deal goes by a name, and what comes near it.
func noSuchLine(d *deal.Deal, name string) error {
	otherwise := "ledgerboard lines lists the lines; scope and buy show the work and the products"
	if strings.HasPrefix(name, "loan") && len(d.Root.In("loan")) == 0 {
		return &usageError{fmt.Errorf("nothing in the deal is called %q", name), "the deal has no loan"}
	}
	if of, part, ok := strings.Cut(name, ": "); ok && slices.Contains(known(d), spaced(of)) {
		switch near, ok := diag.Nearest(spaced(part), known(d)); {
		case ok && near == spaced(part) && isRoom(d, of):
			return &usageError{fmt.Errorf("%s has no %s", of, part), "ask for   " + part + "   alone to see where it is"}
		case ok:
			return &usageError{fmt.Errorf("nothing in the deal is called %q", name), whichOf([]string{of + ": " + near}, otherwise)}
		}
	}
	return &usageError{fmt.Errorf("nothing in the deal is called %q", name), didYouMean(spaced(name), known(d), otherwise)}
}

// isRoom reports whether a room of a deal goes by a name.
func isRoom(d *deal.Deal, name string) bool {
	return slices.ContainsFunc(d.Root.In("room"), func(m *model.Member) bool { return spaced(m.Label) == spaced(name) })
}

// didYouMean is the hint for a name that there is not: the name it was probably meant
// for, a few that have words of it, or something else.
func didYouMean(name string, names []string, otherwise string) string {
	return whichOf(nearest(name, names), otherwise)
}

// nearest is the name that a word was probably meant for, or a few that have words of it.
func nearest(name string, names []string) []string {
	if near, ok := diag.Nearest(name, names); ok {
		return []string{near}
	}
	return diag.Near(name, names)
}

// whichOf asks which of some names is meant.
func whichOf(near []string, otherwise string) string {
	switch len(near) {
	case 0:
		return otherwise
	case 1:
		return "did you mean " + near[0] + "?"
	default:
		return "did you mean one of these? " + strings.Join(near, ", ")
	}
}

// known are all words that why takes: the labels of the pages, the names of what is in
// the deal, and the lines.
func known(d *deal.Deal) []string {
	out := report.Labels()
	for _, c := range d.Model.Cells {
		if stands(c) {
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
