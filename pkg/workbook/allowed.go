package workbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"
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
		rule, err := b.ruleOf(c)
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
func (b *book) ruleOf(c *model.Cell) (*excelize.DataValidation, error) {
	l, rule := c.Line, excelize.NewDataValidation(true)
	low, high, limited := b.rangeOf(c)
	_, most, inMonths := deal.MonthsRange(l.Name)
	switch {
	case len(l.Choices) > 0:
		rule.SetError(excelize.DataValidationErrorStyleStop, "One of its words", "One of: "+strings.Join(wordsOf(c), ", ")+".")
		return rule, rule.SetDropList(wordsOf(c))
	case isShare(c) && limited:
		say := func(x decimal.Decimal) string { return quantity.FormatPercent(x, 2) }
		rule.SetError(excelize.DataValidationErrorStyleStop, "A share", "Write a share with its sign, as 10.5%, "+spanned(low, high, say)+".")
		return rule, between(rule, low, high)
	case l.Unit == "$/hour" && limited:
		rule.SetError(excelize.DataValidationErrorStyleStop, "A rate", "Dollars for an hour, "+spanned(low, high, quantity.FormatMoney)+".")
		return rule, between(rule, low, high)
	case l.ID() == "use.waste":
		rule.SetError(excelize.DataValidationErrorStyleStop, "Waste", "Write a share with its sign, as 10.5%, from 0% to less than 100%.")
		return rule, between(rule, deal.Edge{Least: true}, deal.Edge{At: one, Open: true})
	case l.Unit == "share":
		rule.SetError(excelize.DataValidationErrorStyleWarning, "A share", fmt.Sprintf("Write a share with its sign, as 10.5%%; this is more than %.0f%%.", 100*askedAbove))
		return rule, rule.SetRange(-askedAbove, askedAbove, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	case l.ID() == "comp.sold_price":
		rule.SetError(excelize.DataValidationErrorStyleStop, "A price", "More than 0.")
		return rule, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThan)
	case l.Unit == "ft" && b.usually(c, rule): // more than is usual is asked about, as inches in feet are
		return rule, nil
	case limited && !slices.Contains([]string{"month", "flag"}, l.Unit):
		rule.AllowBlank = !b.divides(c)
		return rule, b.limited(rule, c, low, high)
	case b.divides(c):
		rule = excelize.NewDataValidation(false)
		rule.SetError(excelize.DataValidationErrorStyleStop, "A number", "A number, more than 0.")
		return rule, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThan)
	case l.Unit == "month" && inMonths: // none, where the least is a month, stands for not stated
		rule.SetError(excelize.DataValidationErrorStyleStop, "Whole months", "Whole months, from 0 to "+most.String()+".")
		return rule, rule.SetRange(0, most.InexactFloat64(), excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween)
	case l.Unit == "month" && limited:
		say := func(x decimal.Decimal) string { return quantity.FormatCount(x, 2) }
		rule.SetError(excelize.DataValidationErrorStyleStop, "A time", "Months, "+spanned(low, high, say)+".")
		return rule, between(rule, low, high)
	case b.fromNothing(c) && slices.Contains([]string{"month", "week", "day", "hour", "hour/week"}, l.Unit):
		rule.SetError(excelize.DataValidationErrorStyleStop, "A time", "Not less than 0.")
		return rule, rule.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThanOrEqual)
	case dated(c):
		far := deal.FarDay.InexactFloat64()
		rule.SetError(excelize.DataValidationErrorStyleWarning, "Days, not a date", "Days from the purchase, as 121; before it with a minus.")
		return rule, rule.SetRange(-far, far, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	case l.Unit == "flag":
		rule.SetError(excelize.DataValidationErrorStyleStop, "Yes or no", "1 for yes, 0 for no.")
		return rule, rule.SetRange(0, 1, excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween)
	case b.fromNothing(c):
		rule.SetError(excelize.DataValidationErrorStyleStop, "A number", "A number alone, not less than 0, as 12400 or $12,400.")
		return rule, rule.SetRange(0, largest, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
	}
	rule.SetError(excelize.DataValidationErrorStyleStop, "A number", "A number alone, as 4500 or -$4,500.")
	return rule, rule.SetRange(-largest, largest, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
}

// limited keeps an input to what a file takes of it.
func (b *book) limited(rule *excelize.DataValidation, c *model.Cell, low, high deal.Edge) error {
	say := func(x decimal.Decimal) string { return quantity.FormatCount(x, 2) }
	title := "A number"
	switch {
	case c.Line.Unit == "year":
		title, say = "A year", decimal.Decimal.String
	case c.Line.Unit == "ft":
		title = "Feet, not inches"
	case strings.HasPrefix(c.Line.Unit, "$"):
		title, say = "Dollars", quantity.FormatDollars
	}
	rule.SetError(excelize.DataValidationErrorStyleStop, title, title+", "+spanned(low, high, say)+".")
	if deal.IsWhole(c.Line.Name) && !low.Open {
		return rule.SetRange(low.At.InexactFloat64(), high.At.InexactFloat64(), excelize.DataValidationTypeWhole, excelize.DataValidationOperatorBetween)
	}
	return between(rule, low, high)
}

// usually asks about a length beyond what is usual; false where all is.
func (b *book) usually(c *model.Cell, rule *excelize.DataValidation) bool {
	low, high, limited := ends(b.kept(c, orNothing(c, b.answer.Deal.UsualAlone(c))))
	if !limited {
		return false
	}
	say := func(x decimal.Decimal) string { return quantity.FormatCount(x, 2) }
	rule.SetError(excelize.DataValidationErrorStyleWarning, "Feet, not inches", "Usual is "+spanned(low, high, say)+" feet; 8 feet 6 inches are 8.5.")
	return between(rule, low, high) == nil
}

// rangeOf are the ends of what an input may be; false where it has none to one side.
func (b *book) rangeOf(c *model.Cell) (low, high deal.Edge, limited bool) {
	return ends(b.edgesOf(c))
}

func ends(all []deal.Edge) (low, high deal.Edge, limited bool) {
	low.Least = true
	for _, e := range all {
		if e.Least {
			low = e
		} else {
			high, limited = e, true
		}
	}
	return low, high, limited
}

// spanned are both ends of a range in words.
func spanned(low, high deal.Edge, say func(decimal.Decimal) string) string {
	from, to := "from ", " to "
	if low.Open {
		from = "more than "
	}
	if high.Open {
		to = " to less than "
	}
	return from + say(low.At) + to + say(high.At)
}

// between keeps an input between two ends; a hair's breadth beside one that is outside itself.
func between(rule *excelize.DataValidation, low, high deal.Edge) error {
	const hair = 1e-9
	at := func(e deal.Edge, by float64) float64 {
		if !e.Open {
			by = 0
		}
		return e.At.InexactFloat64() + by
	}
	return rule.SetRange(at(low, hair), at(high, -hair), excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorBetween)
}
