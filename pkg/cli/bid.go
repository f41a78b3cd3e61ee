package cli

import (
	"io"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/report"
)

type bidOptions struct {
	common
	cautions bool
}

func newBid(s Streams) *cobra.Command {
	o := &bidOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "bid FILE",
		Short: "whether to bid, how high, with how much cash, and why",
		Long: `Example:

  ledgerboard bid my-house.yaml
  ledgerboard bid my-house.yaml --set price=205k --set "marketing=9 weeks"

Prints the answer first, in plain words: what not to go above at the low and at
the likely value, whether the asking price will do and which target decides, the
most money tied up and when. Then the deal on one screen, the difference
between the rule-of-thumb offer and the maximum offer line by line, the
break-evens, what was assumed and what to be careful about.`,
		Args: files(1, 1, "bid my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runBid(o, args[0]) },
	}
	o.flags(cmd)
	cmd.Flags().BoolVar(&o.cautions, "cautions", false, "write the cautions in full, with their sources")
	return cmd
}

func runBid(o *bidOptions, path string) error {
	page := func(w io.Writer, a *answer.Answer, s report.Style) error { return report.Bid(w, a, s, o.cautions) }
	return show(&o.common, func() (*answer.Answer, error) { return o.answer(path) }, report.JSON, page)
}
