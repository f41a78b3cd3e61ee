package report

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
)

// shakes writes the usual mishaps most likely to break the deal, and the terms that
// a small delay would pass.
func shakes(p *page, a *answer.Answer) {
	p.heading("Most likely to break it, of the usual mishaps")
	if a.Telling == 0 {
		p.text("  ", "none of them takes profit or cash")
	}
	for i, s := range a.Shakes[:a.Telling] {
		p.text(fmt.Sprintf("  %d. ", i+1), shakeWords(a, s))
	}
	for _, t := range a.Terms {
		p.text("  ", termWords(t, a.Line("sale_month")))
	}
}

// termWords says when a loan falls due, beside the planned sale, and what more time
// costs.
func termWords(t answer.Term, saleMonth decimal.Decimal) string {
	s := t.Loan + ": its term of " + months(t.Months) + " ends "
	switch {
	case t.Spare.IsZero():
		s += "with"
	case t.Spare.IsNegative():
		s += months(t.Spare.Neg()) + " before"
	default:
		s += months(t.Spare) + " after"
	}
	s += " the planned sale in month " + saleMonth.String() + "; "
	switch {
	case !t.Each.IsPositive():
		return s + "no extension is agreed."
	case t.Paid.IsPositive():
		s += "the plan pays " + dollars(t.Paid) + " for extensions; one"
	default:
		s += "an extension"
	}
	return s + " of " + months(t.Each) + " costs " + dollars(t.Fee) + "."
}

func shakeWords(a *answer.Answer, s answer.Shake) string {
	parts := []string{moves(s)}
	if s.Missed("profit_to_spare").IsPositive() && !s.Profit.IsNegative() && !a.Line("profit_to_spare").IsNegative() {
		parts[0] += ", under your target"
	}
	if need := need(a, s); need.Round(0).IsPositive() { // a cent is not worth a word
		more := fmt.Sprintf("you need %s more cash", dollars(need))
		if s.Lost.IsPositive() {
			parts = append(parts, "and "+more)
		} else {
			parts = append([]string{more}, "and "+parts[0])
		}
	}
	if s.Lost.IsNegative() {
		parts[len(parts)-1] += better[s.Name]
	}
	text := s.What + ": " + strings.Join(parts, ", ") + "."
	if s.Short.IsPositive() && need(a, s).IsPositive() {
		text += fmt.Sprintf(" You would be %s short.", dollars(s.Short))
	}
	return text
}

// better says why the profit may rise with a mishap.
var better = map[string]string{
	"value": ", as less is borrowed and it costs less",
	"draws": ", as the interest on them begins later",
}

// need is the cash that a shake takes beyond the plan's.
func need(a *answer.Answer, s answer.Shake) decimal.Decimal { return s.Cash.Sub(a.Line("cash_needed")) }

// moves says what becomes of the plan's profit or loss.
func moves(s answer.Shake) string {
	before, verb := s.Profit.Add(s.Lost), " falls by "
	if before.IsNegative() != s.Lost.IsNegative() {
		verb = " rises by "
	}
	switch by := dollars(s.Lost.Abs()); {
	case s.Lost.IsZero() && before.IsNegative():
		return "the loss stays"
	case s.Lost.IsZero():
		return "profit stays"
	case before.IsNegative() && s.Profit.IsNegative():
		return "the loss" + verb + by + " to " + dollars(s.Profit.Neg())
	case before.IsNegative():
		return "the loss of " + dollars(before.Neg()) + " becomes a profit of " + dollars(s.Profit)
	case s.Profit.IsNegative():
		return "profit falls by " + by + " to a loss of " + dollars(s.Profit.Neg())
	default:
		return "profit" + verb + by + " to " + dollars(s.Profit)
	}
}
