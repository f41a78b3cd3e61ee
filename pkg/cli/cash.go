package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/report"
)

func newCash(s Streams) *cobra.Command {
	c := &common{Streams: s}
	cmd := &cobra.Command{
		Use:   "cash FILE",
		Short: "the cash month by month, with its low point",
		Long: `Example:

  ledgerboard cash my-house.yaml

Prints for each month what goes out and comes in, your cash so far, what is owed
to lenders, and a drawing of the line, with the low point marked.`,
		Args: files(1, 1, "cash my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runCash(c, args[0]) },
	}
	c.flags(cmd)
	cmd.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		if strings.Contains(err.Error(), "--month") {
			return &usageError{err, "cash shows all months; of one,   ledgerboard why my-house.yaml net_cash --month 3"}
		}
		return cmd.Parent().FlagErrorFunc()(cmd, err)
	})
	return cmd
}

func runCash(c *common, path string) error {
	return show(c, func() (*answer.Answer, error) { return c.answer(path) }, report.CashJSON, report.Cash)
}
