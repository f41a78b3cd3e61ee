package cli

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/report"
)

func newLines(s Streams) *cobra.Command {
	c := &common{Streams: s}
	cmd := &cobra.Command{
		Use:   "lines [NAME]",
		Short: "the lines of the model: unit, formula and meaning",
		Long: `Example:

  ledgerboard lines
  ledgerboard lines loan.points

Lists the lines that every deal is worked out by, then what is found by search,
or shows one of them, by its name or by the words that a page has for it.`,
		Args: inQuotes(1, files(0, 1, "lines profit")),
		RunE: func(_ *cobra.Command, args []string) error { return runLines(c, args) },
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return lineNames(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	c.looks(cmd)
	return cmd
}

func runLines(c *common, args []string) error {
	style, err := c.style()
	if err != nil {
		return err
	}
	doc, err := model.Standard()
	if err != nil {
		return err
	}
	lines, found := doc.Lines, answer.Searched
	if len(args) == 1 {
		if lines, found = lookedUp(doc, args[0]); lines == nil && found == nil {
			return noLine(args[0])
		}
	}
	if c.json {
		return report.LinesJSON(c.Out, lines, found)
	}
	if lines == nil {
		_, err := fmt.Fprintf(c.Out, "%s (%s), found by search\n%s", found[0].Name, found[0].Unit, diag.Fold("  ", "  ", found[0].Meaning))
		return err
	}
	return report.Lines(c.Out, lines, len(args) == 1, style)
}

// lookedUp returns what goes by a name or, where nothing does, by the words of a page.
func lookedUp(doc *model.Document, words string) (lines []*model.Line, found []answer.Found) {
	for _, name := range append([]string{words}, report.Ask(words).Lines...) {
		if i := strings.LastIndex(name, "."); i >= 0 && name != words { // of a member of some deal, whose name says nothing here
			name = name[i+1:]
		}
		if lines, found = named(doc, name), searched(name); lines != nil || found != nil {
			break
		}
	}
	return lines, found
}

// named returns the lines of a name: one by its full name with the set, else all
// of the name.
func named(doc *model.Document, name string) []*model.Line {
	if l := doc.ByID(normal(name)); l != nil && strings.Contains(name, ".") {
		return []*model.Line{l}
	}
	var out []*model.Line
	for _, l := range doc.Lines {
		if l.Name == normal(name) {
			out = append(out, l)
		}
	}
	return out
}

// searched returns the result found by search of a name.
func searched(name string) []answer.Found {
	for _, f := range answer.Searched {
		if f.Name == joined(name) {
			return []answer.Found{f}
		}
	}
	return nil
}

func noLine(name string) error {
	names := map[string]string{} // by their words
	for _, label := range report.Labels() {
		names[label] = label
	}
	for _, id := range lineNames() {
		names[spaced(strings.ReplaceAll(id, ".", " "))] = id
	}
	near := nearest(spaced(strings.ReplaceAll(name, ".", " ")), slices.Sorted(maps.Keys(names)))
	for i, words := range near {
		near[i] = names[words]
	}
	return &usageError{fmt.Errorf("there is no line %q", name), whichOf(near, fmt.Sprintf("ledgerboard lines lists them; what your file names is told by   ledgerboard why FILE %q", name))}
}

// lineNames are the full names of all lines and of what is found by search.
func lineNames() []string {
	doc, err := model.Standard()
	if err != nil {
		return nil
	}
	var out []string
	for _, l := range doc.Lines {
		out = append(out, l.ID())
	}
	for _, f := range answer.Searched {
		out = append(out, f.Name)
	}
	return out
}
