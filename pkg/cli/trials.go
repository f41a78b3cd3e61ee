package cli

import (
	"bufio"
	"bytes"
	"fmt"
	"math"
	"os"
	"strconv"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/report"
)

// A trialsFile is a file of trials being written.
type trialsFile struct {
	*wholeFile
	out *bufio.Writer
	row []byte
	n   int
}

func newTrialsFile(path string, force bool) (*trialsFile, error) {
	if info, err := os.Stat(path); err == nil && info.Mode().IsRegular() && !force {
		return nil, thereAlready(fmt.Errorf("%s: it is already there", path))
	}
	w, err := newWholeFile(path)
	if err != nil {
		return nil, err
	}
	return &trialsFile{wholeFile: w, out: bufio.NewWriterSize(w.file, 1<<16)}, nil
}

// drawnPlaces is with how many decimals what was drawn is written: a share of $1,000,000 to a
// tenth of a cent.
const drawnPlaces = 9

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
			t.number(x[i], drawnPlaces)
		}
		for k, x := range s.Out {
			switch k {
			case chance.Return:
				t.number(x[i]/100, 6)
			case chance.Months:
				t.number(x[i], 4)
			case chance.Offer:
				t.price(x[i])
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
		from := len(t.row)
		if t.row = strconv.AppendFloat(t.row, x, 'f', places, 64); math.Signbit(x) && !bytes.ContainsAny(t.row[from:], "123456789") {
			t.row = append(t.row[:from], bytes.TrimPrefix(t.row[from:], []byte("-"))...) // no nought below zero
		}
	}
}

// price writes a maximum offer, which is 0 where no price holds all targets: there is none.
func (t *trialsFile) price(x float64) {
	if x == 0 {
		x = math.NaN()
	}
	t.number(x, 2)
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
	if err := t.out.Flush(); err != nil {
		return t.failed(err)
	}
	return t.wholeFile.keep()
}
