package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// output is where a verb writes a file.
type output struct {
	file  string // - for standard output
	force bool
}

func (o *output) flags(cmd *cobra.Command, file, usage string) {
	cmd.Flags().StringVarP(&o.file, "output", "o", file, usage)
	cmd.Flags().BoolVar(&o.force, "force", false, "write over an existing file")
}

// write writes to standard output or to a file, whole or not at all; over no file that
// was read.
func (o *output) write(c *common, text string) error {
	if o.file == "-" {
		_, err := fmt.Fprint(c.Out, text)
		return err
	}
	err := c.spares(o.file)
	switch {
	case err != nil:
		return err
	case o.force:
		err = overwrite(o.file, text)
	default:
		err = writeNew(o.file, text)
	}
	if err != nil && !o.force && strings.HasSuffix(err.Error(), "already there") {
		return thereAlready(err)
	}
	return err
}

// thereAlready tells the way out of a file that would be written over.
func thereAlready(err error) error {
	return &dataError{err, "write over it with --force, or name another file"}
}

// spares refuses to write over a file that was read.
func (c *common) spares(path string) error {
	if slices.ContainsFunc(c.files, func(read string) bool { return sameFile(read, path) }) {
		return &usageError{fmt.Errorf("%s is read and would be written over", path), "name another file to write"}
	}
	return nil
}

func sameFile(a, b string) bool {
	x, err := os.Stat(a)
	y, other := os.Stat(b)
	return err == nil && other == nil && os.SameFile(x, y)
}

func missing(path string) bool {
	_, err := os.Stat(path)
	return os.IsNotExist(err)
}

// noFolder fails where the folder that a file is to be written in is missing.
func noFolder(path string) error {
	if folder := filepath.Dir(path); missing(folder) {
		return fmt.Errorf("%s: there is no folder %s; make it first", path, folder)
	}
	return nil
}

// unmade is why a file could not be made in a folder that is there.
func unmade(err error) string {
	if os.IsNotExist(err) {
		return "no file can be written there"
	}
	return reason(err)
}

// writeNew writes a file that was not there, whole or not at all.
func writeNew(path, text string) error {
	if err := noFolder(path); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("%s: %s", path, unmade(err))
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

// overwrite writes a file in place of another, whole or not at all.
func overwrite(path, text string) error {
	w, err := newWholeFile(path)
	if err != nil {
		return err
	}
	defer w.drop()
	if _, err := w.file.WriteString(text); err != nil {
		return w.failed(err)
	}
	return w.keep()
}
