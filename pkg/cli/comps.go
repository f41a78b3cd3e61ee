package cli

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/report"
)

type compsOptions struct {
	common
	from        string
	strike, add []string
	all         bool
}

func newComps(s Streams) *cobra.Command {
	o := &compsOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "comps FILE",
		Short: "what the house will sell for, from houses that were sold",
		Long: `Example:

  ledgerboard comps my-house.yaml
  ledgerboard comps my-house.yaml --from county.csv
  ledgerboard comps my-house.yaml --strike "3 Tansy Ct" --add "19 Tansy Ct"

Adjusts each sold house to this one, thing by thing, and draws a likely price
from them with where one in ten such houses sells below and one in ten above.
The sales stand under comps in the deal file, or in a table: --from picks those
most like the house out of a whole list and says why. A sale is struck or added
by its address, or by its line in the table; so it can be under comps for good.

It is an estimate from past sales and not an appraisal.`,
		Args: files(1, 1, "comps my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runComps(o, args[0]) },
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&o.from, "from", "", "pick the sales out of the table in `file`")
	cmd.Flags().StringArrayVar(&o.strike, "strike", nil, "leave a `sale` out; may be repeated")
	cmd.Flags().StringArrayVar(&o.add, "add", nil, "use a doubtful `sale` of before the day; may be repeated")
	cmd.Flags().BoolVar(&o.all, "all", false, "show every sale that is used")
	return cmd
}

func runComps(o *compsOptions, path string) error {
	page := func(w io.Writer, a *answer.Answer, s report.Style) error { return report.Comps(w, a, s, o.all) }
	return show(&o.common, func() (*answer.Answer, error) { return o.compared(path) }, report.CompsJSON, page)
}

// compared works out a deal that names sold houses of which some can be used.
func (o *compsOptions) compared(path string) (a *answer.Answer, err error) {
	o.how.Comps.Strike, o.how.Comps.Add = o.strike, o.add
	if o.from != "" {
		if o.how.Comps.From, o.how.Comps.Text, err = o.text(o.from); err != nil {
			return nil, err
		}
	}
	d, doubts, err := o.read(path)
	if err != nil {
		return nil, err
	}
	switch c := d.Comps; {
	case c == nil:
		return nil, &dataError{fmt.Errorf("%s names no sold houses", path), "add   comps: {sold: {12 Elm St: {sold: 2026-01-14, price: $341k, living area: 1,420 sq ft}}}   or name a list: --from county.csv"}
	case c.Value == nil:
		return nil, &dataError{fmt.Errorf("%s: %s, so there is no value", path, c.None()), "name houses sold before " + c.Day.String() + ", each with its day and price"}
	}
	return answer.Worked(d, doubts)
}
