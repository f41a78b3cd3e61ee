package report

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/quantity"
)

// shakes writes the usual mishaps most likely to break the deal, and the terms that
// a small delay would pass.
func shakes(p *page, a *answer.Answer) {
	p.heading(shakesHead(a))
	if a.Telling == 0 {
		p.text("  ", "none of them takes profit or cash")
	}
	for i, s := range a.Shakes[:a.Telling] {
		p.text(fmt.Sprintf("  %d. ", i+1), shakeWords(a, s))
	}
	untried(p, a)
	for _, t := range a.Terms {
		p.text("  ", termWords(t, a.Line("sale_month")))
	}
}

// untried says of which mishap no one knows what it would take.
func untried(p *page, a *answer.Answer) {
	if unrated := a.Line("unrated_hours"); unrated.IsPositive() {
		p.text("  ", "Not tried: trades doing "+quantity.FormatHours(unrated, 0)+" of your own work, which have no rate. Say what a trade would charge:   renovation: {own labour rate: $45/hour}")
	}
}

// shakesHead says whether one of the mishaps breaks the deal: misses a target that the
// plan holds.
func shakesHead(a *answer.Answer) string {
	for _, s := range a.Shakes[:a.Telling] {
		if slices.ContainsFunc(s.Misses, func(m answer.Miss) bool { return !a.Line(m.Target).IsNegative() }) {
			return "Most likely to break it, of the usual mishaps"
		}
	}
	switch {
	case len(a.Missed()) > 0 && a.Telling > 0:
		return "What would make it worse, of the usual mishaps"
	case len(a.Missed()) > 0:
		return "The usual mishaps"
	case a.Telling > 0:
		return "None of the usual mishaps breaks it; the worst of them"
	}
	return "None of the usual mishaps breaks it"
}

// termWords says when a loan falls due, beside the planned sale, and what more time
// costs.
func termWords(t answer.Term, saleMonth decimal.Decimal) string {
	s := t.Loan + ": its term of " + span(t.Months) + " ends "
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
	return s + " of " + span(t.Each) + " costs " + dollars(t.Fee) + "."
}

func shakeWords(a *answer.Answer, s answer.Shake) string {
	parts := []string{moves(a.OwnProfit(), a.OwnLoss(), s)}
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
		parts[len(parts)-1] += better(a, s)
	}
	text := s.What + ": " + strings.Join(parts, ", ") + "."
	if x := undrawn(a, s); x.IsPositive() {
		than := ""
		if a.Line("holdback").GreaterThan(a.Line("draws")) {
			than = " more than planned"
		}
		text += fmt.Sprintf(" Of the draws %s%s would come after the sale, and is never paid.", dollars(x), than)
	}
	text += ratios(a, s)
	if s.Short.IsPositive() && need(a, s).IsPositive() {
		text += fmt.Sprintf(" You would be %s short.", dollars(s.Short))
	}
	return text
}

// better says why the profit rises with a mishap.
func better(a *answer.Answer, s answer.Shake) string {
	switch {
	case s.Name == "value":
		return ", as less is borrowed and it costs less"
	case s.Name != "draws":
		return ""
	case !s.Interest.LessThan(a.Line("interest")): // none runs on what is drawn
		return ", as fewer fees fall due"
	}
	return ", as the interest on them begins later"
}

// undrawn is what never comes of the draws, beyond the plan, because it would come after
// the sale.
func undrawn(a *answer.Answer, s answer.Shake) decimal.Decimal {
	if s.Name != "draws" {
		return decimal.Zero
	}
	return s.Undrawn.Sub(a.Line("holdback").Sub(a.Line("draws")))
}

// ratios says which targets that are shares a mishap misses and the plan does not; what
// a loss misses goes without saying.
func ratios(a *answer.Answer, s answer.Shake) string {
	var parts []string
	for _, r := range []struct {
		target, words, wanted string
		comes                 decimal.Decimal
	}{
		{"margin_to_spare", "margin", "target_margin", s.Margin},
		{"roi_to_spare", "return on cash (ROI)", "target_roi", s.ROI},
	} {
		if s.Missed(r.target).IsPositive() && !s.Profit.IsNegative() && !a.Line(r.target).IsNegative() {
			parts = append(parts, r.words+" is then "+under(r.comes, a.Line(r.wanted)))
		}
	}
	switch len(parts) {
	case 0:
		return ""
	case 1:
		return " Your " + parts[0] + ", under your target."
	}
	return " Your " + strings.Join(parts, ", your ") + ", both under your targets."
}

// under writes a share with as many decimals as it takes to be seen under a limit.
func under(share, limit decimal.Decimal) string {
	for places := int32(1); ; places++ {
		if p := places + 2; share.Round(p).LessThan(limit) || p > ratioPlaces {
			return quantity.FormatPercent(share, places)
		}
	}
}

// need is the cash that a shake takes beyond the plan's. What is paid before the closing is
// needed in any case.
func need(a *answer.Answer, s answer.Shake) decimal.Decimal {
	paid := a.Line("owner_paid_before")
	return decimal.Max(s.Cash, paid).Sub(decimal.Max(a.Line("cash_needed"), paid))
}

// moves says what becomes of the plan's profit or loss, in the words for either.
func moves(profit, loss string, s answer.Shake) string {
	before, verb := s.Profit.Add(s.Lost), " falls by "
	if before.IsNegative() != s.Lost.IsNegative() {
		verb = " rises by "
	}
	switch by := dollars(s.Lost.Abs()); {
	case s.Lost.IsZero() && before.IsNegative():
		return loss + " stays"
	case s.Lost.IsZero():
		return profit + " stays"
	case before.IsNegative() && s.Profit.IsNegative():
		return loss + verb + by + " to " + dollars(s.Profit.Neg())
	case before.IsNegative():
		return loss + " of " + dollars(before.Neg()) + " becomes a profit of " + dollars(s.Profit)
	case s.Profit.IsNegative():
		return profit + " falls by " + by + " to a loss of " + dollars(s.Profit.Neg())
	default:
		return profit + verb + by + " to " + dollars(s.Profit)
	}
}
