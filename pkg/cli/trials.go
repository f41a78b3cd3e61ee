package cli

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/report"
)

// A trialsFile is a file of trials being written. It is written beside its name and gets it
// when it is whole.
type trialsFile struct {
	path string
	file *os.File // nil once it is kept or dropped
	out  *bufio.Writer
	row  []byte
	n    int
}

func newTrialsFile(path string, force bool) (*trialsFile, error) {
	info, err := os.Stat(path)
	switch {
	case err == nil && !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s: it is not a file", path)
	case err == nil && !force:
		return nil, &dataError{fmt.Errorf("%s: it is already there", path), "write over it with --force, or name another file"}
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return nil, fmt.Errorf("%s: %s", path, reason(err))
	}
	return &trialsFile{path: path, file: f, out: bufio.NewWriterSize(f, 1<<16)}, nil
}

// add writes a block of trials, each a row: its number, what was drawn, what came of it.
// What has no answer is empty.
func (t *trialsFile) add(s chance.Shown) error {
	if t.n == 0 {
		t.row = append(t.row[:0], "trial"...)
		for _, name := range s.Inputs() {
			t.row = append(append(t.row, ','), quoted(name)...)
		}
		for _, name := range append(report.FigureNames[:], s.Watched()...) {
			t.row = append(append(t.row, ','), name...)
		}
		if _, err := t.out.Write(append(t.row, '\n')); err != nil {
			return t.failed(err)
		}
	}
	for i := range s.Trials() {
		t.n++
		t.row = strconv.AppendInt(t.row[:0], int64(t.n), 10)
		for _, x := range s.In {
			t.number(x[i], 6)
		}
		for k, x := range s.Out {
			switch k {
			case chance.Return:
				t.number(x[i]/100, 6)
			case chance.Months:
				t.number(x[i], 4)
			default:
				t.number(x[i], 2)
			}
		}
		if _, err := t.out.Write(append(t.row, '\n')); err != nil {
			return t.failed(err)
		}
	}
	return nil
}

func (t *trialsFile) number(x float64, places int) {
	if t.row = append(t.row, ','); !math.IsNaN(x) {
		t.row = strconv.AppendFloat(t.row, x, 'f', places, 64)
	}
}

// quoted is a name as a field of CSV; names of the owner's may hold commas and quotes.
func quoted(name string) string {
	out := []byte{'"'}
	for _, b := range []byte(name) {
		if b == '"' {
			out = append(out, '"')
		}
		out = append(out, b)
	}
	return string(append(out, '"'))
}

// keep gives the file its name.
func (t *trialsFile) keep() error {
	err := t.out.Flush()
	if err == nil {
		err = t.file.Chmod(0o644)
	}
	if closed := t.file.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(t.file.Name(), t.path)
	}
	if err != nil {
		os.Remove(t.file.Name())
		err = t.failed(err)
	}
	t.file = nil
	return err
}

// drop takes away what is not kept.
func (t *trialsFile) drop() {
	if t.file != nil {
		t.file.Close()
		os.Remove(t.file.Name())
	}
}

func (t *trialsFile) failed(err error) error { return fmt.Errorf("%s: %s", t.path, reason(err)) }
