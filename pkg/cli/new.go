package cli

import (
	"fmt"
	"os"
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
	tell(s.Err, "wrote %s; edit it, then: ledgerboard bid %s", path, path)
	return nil
}

func missing(path string) bool {
	_, err := os.Stat(path)
	return os.IsNotExist(err)
}

// writeNew writes a file that was not there, whole or not at all.
func writeNew(path, text string) error {
	if folder := filepath.Dir(path); missing(folder) {
		return fmt.Errorf("%s: there is no folder %s; make it first", path, folder)
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("%s: %s", path, reason(err))
	}
	_, err = f.WriteString(text)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		os.Remove(path)
		return fmt.Errorf("%s: %s", path, reason(err))
	}
	return nil
}

// overwrite writes a file in place of another, whole or not at all: it is written
// beside it and put in its place.
func overwrite(path, text string) error {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return fmt.Errorf("%s: it is not a file", path)
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return fmt.Errorf("%s: %s", path, reason(err))
	}
	_, err = f.WriteString(text)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		os.Remove(f.Name())
		return fmt.Errorf("%s: %s", path, reason(err))
	}
	return nil
}
