package cli

import (
	"io"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/report"
)

func newScope(s Streams) *cobra.Command {
	c := &common{Streams: s}
	var view report.View
	cmd := &cobra.Command{
		Use:   "scope FILE",
		Short: "the work, room by room and trade by trade, priced",
		Long: `Example:

  ledgerboard scope my-house.yaml
  ledgerboard scope my-house.yaml --room "hall bath"
  ledgerboard scope my-house.yaml --trade tile --set scope="full gut"

Prints what the work costs by room and by trade, own hours and hired hours, what
each piece of work brought along, what is set aside for what was not seen, and
how long it takes. With --json it always holds all the work.`,
		Args: files(1, 1, "scope my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runScope(c, args[0], view) },
	}
	c.flags(cmd)
	cmd.Flags().StringVar(&view.Room, "room", "", "the work of one `room`, piece by piece")
	cmd.Flags().StringVar(&view.Trade, "trade", "", "the work of one `trade`, piece by piece")
	cmd.Flags().BoolVar(&view.Items, "items", false, "every piece of work")
	return cmd
}

func runScope(c *common, path string, view report.View) error {
	if c.json && view != (report.View{}) {
		tell(c.Err, "warning: --json always holds all the work, so --room, --trade and --items change nothing")
	}
	page := func(w io.Writer, a *answer.Answer, s report.Style) error { return report.Scope(w, a, view, s) }
	return show(c, func() (*answer.Answer, error) { return c.roomed(path, view) }, report.ScopeJSON, page)
}

func newBuy(s Streams) *cobra.Command {
	c := &common{Streams: s}
	cmd := &cobra.Command{
		Use:   "buy FILE",
		Short: "the shopping list, with whole packs and how to cut trim",
		Long: `Example:

  ledgerboard buy my-house.yaml

Prints what the work takes, pooled over the house and rounded up to whole packs,
by aisle, with what is left over, and a cut list for what is sold in sticks.`,
		Args: files(1, 1, "buy my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error {
			return show(c, func() (*answer.Answer, error) { return c.roomed(args[0], report.View{}) }, report.BuyJSON, report.Buy)
		},
	}
	c.flags(cmd)
	return cmd
}

// roomed works out a deal that has rooms, and what of them is asked for.
func (c *common) roomed(path string, view report.View) (*answer.Answer, error) {
	a, err := c.worked(path)
	if err != nil {
		return nil, err
	}
	return a, rooms(a, path, view)
}

// worked reads a deal and works its figures out, without the searches of a bid.
func (c *common) worked(path string) (*answer.Answer, error) {
	d, doubts, err := c.read(path)
	if err != nil {
		return nil, err
	}
	return answer.Worked(d, doubts)
}
