package pricebook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"strconv"

	"github.com/xuri/excelize/v2"
)

// A span is where an element stands in its part, in bytes.
type span struct{ from, to int64 }

// farOut finds the rows and cells of a part beyond those that are read. Empty ones, which
// some programs write, are to be cut out; of one with something in it, all between would
// be made.
type farOut struct {
	cuts  []span
	depth int // of the row or cell that we are in, 0 in none
	from  int64
	why   error // why it is refused with something in it
}

// begin takes the start of an element, and refuses what is something in a row or cell far
// out. A row may hold cells that are empty themselves.
func (o *farOut) begin(t xml.StartElement, depth int, from int64) error {
	if o.depth == 0 {
		if o.why = beyond(t); o.why != nil {
			o.depth, o.from = depth, from
		}
		return nil
	}
	if t.Name.Local != "c" {
		return o.why
	}
	return nil
}

// end takes the end of an element.
func (o *farOut) end(depth int, to int64) {
	if depth == o.depth {
		o.cuts, o.depth = append(o.cuts, span{o.from, to}), 0
	}
}

// beyond is why a row or cell is beyond those that are read, nil where it is not.
func beyond(t xml.StartElement) error {
	for _, a := range t.Attr {
		switch {
		case a.Name.Local != "r":
		case t.Name.Local == "row":
			if n, err := strconv.Atoi(a.Value); err != nil || n < 1 || n > mostRows {
				return refuse("delete the rows below the table", "a sheet has the row %.20q; %d rows are read at most", a.Value, mostRows)
			}
		case t.Name.Local == "c":
			if col, row, err := excelize.CellNameToCoordinates(a.Value); err != nil || col > mostColumns || row > mostRows {
				return refuse("delete what stands beside and below the table", "a sheet has the cell %.20q; %d columns and %d rows are read at most", a.Value, mostColumns, mostRows)
			}
		}
	}
	return nil
}

// without is a workbook without some spans of its parts, by their names.
func without(z *zip.Reader, data []byte, spare map[string][]span) ([]byte, error) {
	if len(spare) == 0 {
		return data, nil
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			return nil, err
		}
		part, err := io.ReadAll(r)
		if err == nil {
			err = r.Close()
		}
		if err != nil {
			return nil, err
		}
		to, err := w.Create(f.Name)
		if err != nil {
			return nil, err
		}
		at := int64(0)
		for _, cut := range spare[f.Name] {
			if _, err := to.Write(part[at:cut.from]); err != nil {
				return nil, err
			}
			at = cut.to
		}
		if _, err := to.Write(part[at:]); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
