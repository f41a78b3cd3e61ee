package cli

import (
	"cmp"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/report"
	"ledgerboard/pkg/why"
)

type whyOptions struct {
	common
	month, depth int
}

func newWhy(s Streams) *cobra.Command {
	o := &whyOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "why FILE LINE",
		Short: "where a figure comes from, down to the lines of the file",
		Long: `Example:

  ledgerboard why my-house.yaml profit
  ledgerboard why my-house.yaml net_cash --month 3
  ledgerboard why my-house.yaml loan.points
  ledgerboard why my-house.yaml loan.1.interest --depth 4
  ledgerboard why my-house.yaml roof

Prints how a line came out, as a tree down to the lines of the file that its
figures come from. A line of a loan is loan.NAME, of the second loan
loan.2.NAME; of a fee or a line of work its own words, as in
"title and escrow" or "title and escrow.base". The words that a page puts before
a figure do too: "return on cash", "first loan, at closing", "maximum offer".
ledgerboard lines lists all names. A line by month is shown for the month of the
sale, low_point for the lowest.`,
		Args: files(2, 2, "why my-house.yaml profit"),
		RunE: func(_ *cobra.Command, args []string) error { return runWhy(o, args[0], args[1]) },
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 1 {
				return lineNames(), cobra.ShellCompDirectiveNoFileComp
			}
			return nil, cobra.ShellCompDirectiveDefault
		},
	}
	o.flags(cmd)
	cmd.Flags().IntVar(&o.month, "month", -1, "month of a monthly line; -1 the usual one")
	cmd.Flags().IntVar(&o.depth, "depth", 0, "how many lines deep to go; 0 is two, -1 all")
	return cmd
}

func runWhy(o *whyOptions, path, line string) error {
	style, err := o.style()
	if err != nil {
		return err
	}
	d, doubts, err := o.read(path)
	if err != nil {
		return err
	}
	asked := report.Ask(line)
	if asked.AtOffer {
		fmt.Fprintln(o.Err, "ledgerboard: this is at the asking price; the page's figure at the maximum offer comes with --set price=")
	}
	for _, f := range answer.Searched {
		if f.Name == normal(asked.Lines[0]) {
			a, err := answer.Of(d, doubts)
			if err != nil {
				return err
			}
			return report.Search(o.Out, a, f, path, style)
		}
	}
	c, err := findFirst(d, asked.Lines)
	if err != nil {
		return err
	}
	v, err := exact.Evaluate(d.Model)
	if err != nil {
		return err
	}
	month := o.month
	if month < 0 {
		month = asked.Month
	}
	if c.Line.Monthly && month < 0 {
		month = usualMonth(v, c)
	}
	if c.Line.Monthly && month > v.Months() {
		return &usageError{fmt.Errorf("--month %d is after the sale in month %d", month, v.Months()), ""}
	}
	t := why.Explain(d.Model, v, c, month)
	if o.json {
		e := json.NewEncoder(o.Out)
		e.SetIndent("", "  ")
		e.SetEscapeHTML(false)
		return e.Encode(map[string]any{"schema": report.Schema, "why": t.JSON(cmp.Or(o.depth, why.UsualDepth))})
	}
	return t.Write(o.Out, why.Options{Depth: o.depth, Width: report.Width, Color: style.Color})
}

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

// usualMonth is the month that is shown of a monthly line unless one is asked for:
// that of the sale; of the low point the month of the lowest, which a page calls so.
func usualMonth(v *exact.Values, c *model.Cell) int {
	if c.Line.ID() != "low_point" {
		return v.Months()
	}
	lowest := 0
	for m := range v.Months() + 1 {
		if v.In(c, m).LessThan(v.In(c, lowest)) {
			lowest = m
		}
	}
	return lowest
}

// findCell finds a line by its name: profit, loan.points, loan.2.points or
// "title and escrow.amount"; or by the key of the deal file that gives it.
func findCell(d *deal.Deal, name string) (*model.Cell, error) {
	m := d.Model
	owner, line := "", normal(name)
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
