package workbook

import (
	"slices"
	"strings"
	"unicode"

	"ledgerboard/pkg/model"
)

// Private are the sections and lines that only the owner sees. Own hours of stated lines are
// among them, for beside what own work is worth they say what she reckons her hour at; those
// of priced work are not, for the schedule follows from them.
var (
	privateSections = []string{"Targets", "Tax", "Rule of thumb"}
	privateLines    = []string{
		"own_labour_rate", "cost.hired_rate", "cost.own_hours", "own_hours", "unrated_hours", "profit_after_own_hours", "profit_per_own_hour", "low_value", "cash_reserve",
		"line_own_hours", "comps_low_share", "comps_high_share", "comps_low", "comps_high",
	}
)

// privateWithHours are kept too where lines state own hours, which could be reckoned from them.
var privateWithHours = []string{"own_weeks", "own_hours_a_week"}

// hidden reports whether a line is kept from whom the workbook is for. What needs it
// stands as a value.
func (b *book) hidden(l *model.Line) bool {
	if b.how.For != Lender {
		return false
	}
	return slices.Contains(privateSections, l.Section) || slices.Contains(privateLines, l.ID()) || b.answer.Line("line_own_hours").IsPositive() && slices.Contains(privateWithHours, l.ID())
}

// secret reports whether a cell is kept from whom the workbook is for: of a hidden line, or
// nothing but the value of such a cell, as a rate is that is taken to be the owner's own.
func (b *book) secret(c *model.Cell) bool {
	if b.how.For != Lender {
		return false
	}
	for !b.hidden(c.Line) {
		if c.Expr == nil || c.Expr.Op != nil {
			return false
		}
		i := c.Expr.Reads(c.Member)
		if i < 0 {
			return false
		}
		c = b.model.Cells[i]
	}
	return true
}

// naming is a text that names lines, or nothing if it names one that is hidden.
func (b *book) naming(text string) string {
	if b.how.For != Lender {
		return text
	}
	if b.hiddenNames == nil {
		b.hiddenNames = map[string]bool{}
		for _, c := range b.model.Cells {
			if b.hidden(c.Line) {
				b.hiddenNames[c.Line.Name] = true
			}
		}
	}
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r != '_' && !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if b.hiddenNames[word] {
			return ""
		}
	}
	return text
}
