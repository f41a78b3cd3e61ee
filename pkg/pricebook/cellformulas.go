package pricebook

import (
	"encoding/xml"
	"strings"
)

// cellFormulas finds cells whose value is of a formula that they do not hold themselves, for it
// would be read as if somebody had typed it.
type cellFormulas struct {
	within bool            // whether we are in one
	cell   string          // of that one
	shares string          // the number of the formula that it shares, "" for none
	some   bool            // whether it has a text
	shared map[string]bool // the numbers of those with a text so far, on this sheet
}

// begin takes the start of an element of a sheet, in a cell.
func (f *cellFormulas) begin(t xml.StartElement, cell string) error {
	switch t.Name.Local {
	case "sheetData":
		f.shared = map[string]bool{}
	case "f":
		attr := map[string]string{}
		for _, a := range t.Attr {
			attr[a.Name.Local] = a.Value
		}
		if first, last, several := strings.Cut(attr["ref"], ":"); attr["t"] == "array" && several && first != last {
			return refuse("copy these cells, paste them back as values and save the workbook", "one formula of the workbook fills the cells %.30q; such are not read", attr["ref"])
		}
		f.within, f.cell, f.shares, f.some = true, cell, "", false
		if attr["t"] == "shared" {
			f.shares = "number " + attr["si"]
		}
	}
	return nil
}

// text takes what stands between elements.
func (f *cellFormulas) text(x xml.CharData) {
	f.some = f.some || strings.TrimSpace(string(x)) != ""
}

// end takes the end of an element.
func (f *cellFormulas) end() error {
	if !f.within {
		return nil
	}
	f.within = false
	switch {
	case f.some && f.shares != "" && f.shared != nil:
		f.shared[f.shares] = true
	case !f.some && !f.shared[f.shares]:
		return refuse("clear the cell, type its value again and save the workbook", "it is no sound workbook: its cell %.20q holds a formula that is not there", f.cell)
	}
	return nil
}
