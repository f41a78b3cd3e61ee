package cli

import (
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/deal"
)

func newNew(s Streams) *cobra.Command {
	return &cobra.Command{
		Use:   "new PATH",
		Short: "write a starter deal file",
		Long: `Example:

  ledgerboard new my-house.yaml

Writes a commented deal file with invented figures that runs as it is. It never
overwrites a file. - writes it to standard output.`,
		Args: files(1, 1, "new my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runNew(args[0], s) },
	}
}

func runNew(path string, s Streams) error {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if path == "-" {
		_, err := fmt.Fprint(s.Out, deal.Starter("my house"))
		return err
	}
	if err := writeNew(path, deal.Starter(name)); err != nil {
		return err
	}
	tell(s.Err, "wrote %s; edit it, then: ledgerboard bid %s", path, inShell(path))
	return nil
}
