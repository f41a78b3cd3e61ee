package cli

import (
	"fmt"
	"os"
	"path/filepath"
)

// A wholeFile is a file being written beside its name, which it gets when it is whole.
type wholeFile struct {
	path string
	file *os.File // nil once it is kept or dropped
}

func newWholeFile(path string) (*wholeFile, error) {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s: it is not a file", path)
	}
	if err := noFolder(path); err != nil {
		return nil, err
	}
	if to, err := filepath.EvalSymlinks(path); err == nil { // what a link leads to is written, not the link
		path = to
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return nil, fmt.Errorf("%s: %s", path, unmade(err))
	}
	return &wholeFile{path, f}, nil
}

// keep gives the file its name, in place of what has it.
func (w *wholeFile) keep() error {
	err := w.file.Chmod(0o644)
	if closed := w.file.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(w.file.Name(), w.path)
	}
	if err != nil {
		os.Remove(w.file.Name())
		err = w.failed(err)
	}
	w.file = nil
	return err
}

// drop takes away what is not kept.
func (w *wholeFile) drop() {
	if w.file != nil {
		w.file.Close()
		os.Remove(w.file.Name())
	}
}

func (w *wholeFile) failed(err error) error { return fmt.Errorf("%s: %s", w.path, reason(err)) }
