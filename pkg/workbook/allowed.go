package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// What is typed into an input is kept within what the model can take: a choice to its
// words, a time to nothing less than none; a share of more than this is asked about, for
// 10.5 in the place of 10.5% is 1,050%.
const askedAbove = 3.0

// allowed are the rules of the input cells of a sheet, one for all cells that share it.
func (b *book) allowed(f *excelize.File, g *grid) error {
	rules := map[string]*excelize.DataValidation{}
	var order []string
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if at.grid != g || c.Line.Monthly || !b.editable(c) {
			continue
		}
		key := c.Line.Unit
		if len(c.Line.Choices) > 0 {
			key = strings.Join(c.Line.Choices, ",")
		}
		rule := rules[key]
		if rule == nil {
			rule = excelize.NewDataValidation(true)
			known, err := keepWithin(rule, key, c.Line.Choices)
			if err != nil {
				return err
			}
			if !known {
				continue
			}
			rules[key], order = rule, append(order, key)
		}
		rule.Sqref = strings.TrimSpace(rule.Sqref + " " + address(at.row, at.col, false, false))
	}
	for _, key := range order {
		if err := f.AddDataValidation(g.name, rules[key]); err != nil {
			return err
		}
	}
	return nil
}

// keepWithin sets a rule by the words of a choice or a unit, and reports whether there is one.
func keepWithin(rule *excelize.DataValidation, unit string, choices []string) (bool, error) {
	switch {
	case len(choices) > 0:
		rule.SetError(excelize.DataValidationErrorStyleStop, "One of its words", "One of: "+strings.Join(choices, ", ")+".")
		return true, rule.SetDropList(choices)
	case unit == "share":
		rule.SetError(excelize.DataValidationErrorStyleWarning, "A share", fmt.Sprintf("Write a share with its sign, as 10.5%%; this is more than %.0f%%.", 100*askedAbove))
		return true, rule.SetRange(-askedAbove, askedAbove, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	case slices.Contains([]string{"month", "week", "day", "hour", "hour/week"}, unit):
		rule.SetError(excelize.DataValidationErrorStyleStop, "A time", "Not less than 0.")
		return true, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThanOrEqual)
	}
	return false, nil
}
