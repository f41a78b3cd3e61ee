package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// What is typed into an input is kept within what the model can take: a choice to its
// words, a time or an amount to nothing less than none, a share to what a file takes; any other
// share of more than this is asked about, for 10.5 in the place of 10.5% is 1,050%.
const askedAbove = 3.0

// largest is what no amount comes near, where there is no other limit.
const largest = 1e12

// allowed are the rules of the input cells of a sheet, one for all cells that share it.
func (b *book) allowed(f *excelize.File, g *grid) error {
	rules := map[string]*excelize.DataValidation{}
	var order []string
	for _, c := range b.model.Cells {
		at := b.places[c.Index]
		if at.grid != g || !b.typed(c) {
			continue
		}
		rule, err := ruleOf(c)
		if err != nil {
			return err
		}
		key := *rule.Error
		if rules[key] == nil {
			rules[key], order = rule, append(order, key)
		}
		rules[key].Sqref = strings.TrimSpace(rules[key].Sqref + " " + address(at.row, at.col, false, false))
	}
	for _, key := range order {
		if err := f.AddDataValidation(g.name, rules[key]); err != nil {
			return err
		}
	}
	return nil
}

// ruleOf is the rule for an input. What it says is its own.
func ruleOf(c *model.Cell) (*excelize.DataValidation, error) {
	l, rule := c.Line, excelize.NewDataValidation(true)
	low, high, limited := deal.ShareRange(l.Name)
	_, most, inMonths := deal.MonthsRange(l.Name)
	switch {
	case len(l.Choices) > 0:
		rule.SetError(excelize.DataValidationErrorStyleStop, "One of its words", "One of: "+strings.Join(wordsOf(c), ", ")+".")
		return rule, rule.SetDropList(wordsOf(c))
	case strings.HasPrefix(l.Unit, "share") && limited:
		rule.SetError(excelize.DataValidationErrorStyleStop, "A share", "Write a share with its sign, as 10.5%, from "+quantity.FormatPercent(low, 2)+" to "+quantity.FormatPercent(high, 2)+".")
		return rule, rule.SetRange(low.InexactFloat64(), high.InexactFloat64(), excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	case l.Unit == "share":
		rule.SetError(excelize.DataValidationErrorStyleWarning, "A share", fmt.Sprintf("Write a share with its sign, as 10.5%%; this is more than %.0f%%.", 100*askedAbove))
		return rule, rule.SetRange(-askedAbove, askedAbove, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	case l.ID() == "comp.sold_price":
		rule.SetError(excelize.DataValidationErrorStyleStop, "A price", "More than 0.")
		return rule, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThan)
	case divides(c):
		rule = excelize.NewDataValidation(false)
		rule.SetError(excelize.DataValidationErrorStyleStop, "A number", "A number, more than 0.")
		return rule, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThan)
	case l.Unit == "month" && inMonths: // none, where the least is a month, stands for not stated
		rule.SetError(excelize.DataValidationErrorStyleStop, "Whole months", "Whole months, from 0 to "+most.String()+".")
		return rule, rule.SetRange(0, most.InexactFloat64(), excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween)
	case fromNothing(c) && slices.Contains([]string{"month", "week", "day", "hour", "hour/week"}, l.Unit):
		rule.SetError(excelize.DataValidationErrorStyleStop, "A time", "Not less than 0.")
		return rule, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThanOrEqual)
	case l.Unit == "flag":
		rule.SetError(excelize.DataValidationErrorStyleStop, "Yes or no", "1 for yes, 0 for no.")
		return rule, rule.SetRange(0, 1, excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween)
	case fromNothing(c):
		rule.SetError(excelize.DataValidationErrorStyleStop, "A number", "A number alone, not less than 0, as 12400 or $12,400.")
		return rule, rule.SetRange(0, largest, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	}
	rule.SetError(excelize.DataValidationErrorStyleStop, "A number", "A number alone, as 4500 or -$4,500.")
	return rule, rule.SetRange(-largest, largest, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
}
