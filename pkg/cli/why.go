package cli

import (
	"cmp"
	"encoding/json"
	"fmt"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
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
  ledgerboard why my-house.yaml "title and escrow"

Prints how a line came out, as a tree down to the lines of the file that its
figures come from. A line of a loan is loan.NAME, of the second loan
loan.2.NAME; of a fee or a line of work its own words, as in
"title and escrow" or "title and escrow.base". A room, a trade, a piece of work,
a product or a part not seen stands for what it comes to: kitchen, "wall paint",
"kitchen: paint walls"; with a line behind it, for that:
"kitchen: paint walls.labour". The words that a page puts before a figure do
too: "return on cash", "first loan, at closing", "renovation budget". So do the
keys of the deal file, joined by dots as for --set: "selling.transfer tax".
ledgerboard lines lists all names. A line by month is shown for the month of the
sale, low_point for the lowest.`,
		Args: inQuotes(2, files(2, 2, "why my-house.yaml profit")),
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
	if o.month < -1 {
		return &usageError{fmt.Errorf("--month %d is before the purchase", o.month), "months run from 0, the purchase closing, to that of the sale"}
	}
	style, err := o.style()
	if err != nil {
		return err
	}
	d, doubts, err := o.read(path)
	if err != nil {
		return err
	}
	asked := report.Ask(line)
	if f := searched(asked.Lines[0]); f != nil {
		return o.search(path, d, doubts, asked, f[0], style)
	}
	c, err := find(d, line, asked.Lines)
	if err != nil {
		if _, several := meant(d, asked.Lines); several == nil {
			return cmp.Or(o.untakenLine(path, line, asked.Lines), err)
		}
		return err
	}
	at := ""
	if asked.AtOffer {
		if at, err = atOffer(d, doubts); err != nil {
			return err
		}
	}
	v, err := exact.Known(d.Known)
	if err == nil {
		err = v.Work(c)
	}
	if err != nil {
		return err
	}
	if o.month >= 0 && !c.Line.Monthly {
		tell(o.Err, "warning: %s is no line by month, so --month %d changes nothing", c.Line.ID(), o.month)
	}
	month := o.month
	if month < 0 {
		month = asked.Month
	}
	if c.Line.Monthly && month < 0 {
		month = usualMonth(v, c)
	}
	if c.Line.Monthly && month > v.Months() {
		return &usageError{fmt.Errorf("--month %d is after the sale in month %d", month, v.Months()), fmt.Sprintf("months run from 0, the purchase, to %d, the sale", v.Months())}
	}
	r := why.NewReader(d.Model, v)
	r.Units = d.UnitWords
	t := r.Explain(c, month)
	if o.json {
		e := json.NewEncoder(o.Out)
		e.SetIndent("", "  ")
		e.SetEscapeHTML(false)
		page := map[string]any{"schema": report.Schema, "why": t.JSON(cmp.Or(o.depth, why.UsualDepth))}
		if at != "" {
			page["at"] = at
		}
		return e.Encode(page)
	}
	if at != "" {
		fmt.Fprint(o.Out, diag.Fold("", "", at+": ledgerboard why "+o.askedOf(path)+" "+c.Line.ID()))
	}
	return t.Write(o.Out, why.Options{Depth: o.depth, Width: report.Width, Color: style.Color})
}

// search says how what is found by search was found.
func (o *whyOptions) search(path string, d *deal.Deal, doubts diag.List, asked report.Asked, f answer.Found, style report.Style) error {
	a, err := answer.Of(d, doubts)
	if err != nil {
		return err
	}
	if asked.Leads && a.LikelyBinds() {
		f = searched("max_offer")[0]
	}
	if o.month >= 0 {
		tell(o.Err, "warning: %s is no line by month, so --month %d changes nothing", f.Name, o.month)
	}
	if o.json {
		return report.SearchJSON(o.Out, a, f, o.askedOf(path))
	}
	return report.Search(o.Out, a, f, o.askedOf(path), style)
}

// atOffer gives a deal its maximum offer as the price, for a figure that the page has at
// that price, and says so; where there is none it stays as it is.
func atOffer(d *deal.Deal, doubts diag.List) (string, error) {
	a, err := answer.Of(d, doubts)
	if err != nil {
		return "", err
	}
	offer := a.Offer
	if !offer.Found || offer.Endless {
		return "At the asking price, for there is no maximum offer", nil
	}
	said := quantity.FormatDollars(offer.Price)
	d.Model.Give(d.Model.Find(d.Root, "price"), model.Value{Number: offer.Price, Text: "the maximum offer, " + said})
	return "At the maximum offer of " + said + ", as on the page of the bid; at the asking price", nil
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
