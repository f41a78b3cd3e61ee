package cli_test

import (
	"encoding/csv"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/xuri/excelize/v2"
)

// sheet makes a workbook with a sheet of the rows of a CSV: sheet table.csv out.xlsx name.
func sheet(ts *testscript.TestScript, not bool, args []string) {
	if not || len(args) != 3 {
		ts.Fatalf("usage: sheet table.csv out.xlsx name")
	}
	r := csv.NewReader(strings.NewReader(ts.ReadFile(args[0])))
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	ts.Check(err)
	f := excelize.NewFile()
	ts.Check(f.SetSheetName("Sheet1", args[2]))
	for i, row := range rows {
		for j, s := range row {
			cell, err := excelize.CoordinatesToCellName(j+1, i+1)
			ts.Check(err)
			var v any = s
			if x, err := strconv.ParseFloat(s, 64); err == nil {
				v = x
			}
			ts.Check(f.SetCellValue(args[2], cell, v))
		}
	}
	ts.Check(f.SaveAs(ts.MkAbs(args[1])))
}
