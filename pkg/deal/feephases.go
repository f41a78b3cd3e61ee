package deal

import (
	"slices"
	"strings"
)

// phasesIn are the phases that a text names, in their order, without the whole hold.
func phasesIn(f *Field, text string) (out []string) {
	words := " " + strings.NewReplacer(",", " ", "-", " ", "/", " ", "+", " ", ";", " ").Replace(strings.ToLower(text)) + " "
	for _, phase := range f.Choices[1:] {
		if strings.Contains(words, " "+strings.ReplaceAll(phase, "-", " ")+" ") {
			out = append(out, phase)
		}
	}
	return out
}

// phasesOf are the phases that a list names.
func phasesOf(f *Field, n *node) (out []string) {
	for _, item := range n.items {
		out = append(out, phasesIn(f, item.text)...)
	}
	return slices.Compact(out)
}

// chargeEach says how a charge of several phases is written.
func chargeEach(phases []string) string {
	count := "a charge for each"
	if len(phases) == 2 {
		count = "two charges"
	}
	return "write " + count + ", with names that differ: one \"during: " + strings.Join(phases, "\", one \"during: ") + "\"; or \"during: hold\" for the whole hold"
}
