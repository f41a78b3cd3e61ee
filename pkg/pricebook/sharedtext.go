package pricebook

import (
	"encoding/xml"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// sharedTexts finds cells that hold a text of the workbook's list by a number that is not
// in the list, and cells of one address or in another row than they say, for they would be
// read as something else or not.
type sharedTexts struct {
	listed int // how many texts the list has
	most   int // how many it would take for the highest number that a cell holds
	cell   string
	at     string // the address of the cell that we are in
	shared bool   // whether it holds a number of the list
	inside bool   // whether we are in its value
	value  strings.Builder
	row    map[string]bool // the addresses of the row so far
	rows   map[int]bool    // the rows of the sheet so far
	number int             // of the row that we are in

	formulas cellFormulas
}

// begin takes the start of an element of a part.
func (s *sharedTexts) begin(part string, t xml.StartElement, depth int) error {
	if strings.HasPrefix(part, "xl/worksheets/") {
		if err := s.formulas.begin(t, s.at); err != nil {
			return err
		}
	}
	switch {
	case part == "xl/sharedstrings.xml" && t.Name.Local == "si" && depth == 2:
		s.listed++
	case !strings.HasPrefix(part, "xl/worksheets/"):
	case t.Name.Local == "sheetData":
		s.rows, s.number = map[int]bool{}, 0
	case t.Name.Local == "row":
		return s.beginRow(t)
	case t.Name.Local == "c":
		s.at, s.shared = "", false
		for _, a := range t.Attr {
			switch a.Name.Local {
			case "r":
				s.at = a.Value
			case "t":
				s.shared = a.Value == "s"
			}
		}
		if _, row, err := excelize.CellNameToCoordinates(s.at); s.row != nil && err == nil && row != s.number {
			return refuse(anewXLSX, "it is no sound workbook: its cell %.20q stands in row %d", s.at, s.number)
		}
		if s.at != "" && s.row[s.at] {
			return refuse(anewXLSX, "it is no sound workbook: a sheet has two cells %.20q", s.at)
		}
		if s.row != nil {
			s.row[s.at] = true
		}
	case t.Name.Local == "v" && s.shared:
		s.inside = true
		s.value.Reset()
	}
	return nil
}

// beginRow takes the start of a row, which follows the one before where it says no number.
func (s *sharedTexts) beginRow(t xml.StartElement) error {
	s.row = map[string]bool{}
	s.number++
	for _, a := range t.Attr {
		if n, err := strconv.Atoi(a.Value); a.Name.Local == "r" && err == nil {
			s.number = n
		}
	}
	if s.rows[s.number] {
		return refuse(anewXLSX, "it is no sound workbook: a sheet has the row %d twice", s.number)
	}
	if s.rows != nil {
		s.rows[s.number] = true
	}
	return nil
}

// text takes what stands between elements.
func (s *sharedTexts) text(x xml.CharData) {
	s.formulas.text(x)
	if s.inside {
		s.value.Write(x)
	}
}

// end takes the end of an element.
func (s *sharedTexts) end() error {
	if err := s.formulas.end(); err != nil {
		return err
	}
	if !s.inside {
		return nil
	}
	s.inside = false
	text := strings.TrimSpace(s.value.String())
	if text == "" {
		return nil
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 {
		return s.missing(s.at)
	}
	if n >= s.most {
		s.most, s.cell = n+1, s.at
	}
	return nil
}

// missing refuses a cell, "" where it does not say which it is.
func (s *sharedTexts) missing(cell string) error {
	return refuse("clear the cell, type its value again and save the workbook", "it is no sound workbook: its cell %.20q holds a text that is not there", cell)
}

// sound tells, after all parts, whether each text is there.
func (s *sharedTexts) sound() error {
	if s.most > s.listed {
		return s.missing(s.cell)
	}
	return nil
}
