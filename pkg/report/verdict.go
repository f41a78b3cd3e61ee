package report

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/solve"
)

// verdict writes the answer in plain words.
func verdict(p *page, a *answer.Answer) {
	price := dollars(a.Line("price"))
	p.line("%s", p.paint(bold, a.Deal.Name))
	if !a.Deal.HasCash {
		p.text("", "The file does not say what cash you have, so nothing here says whether it is enough.")
	}
	p.line("")
	switch a.Verdict {
	case answer.Bid:
		p.text("", p.paint(bold, "Bid.")+" The asking price of "+price+" "+meets(a)+".")
	case answer.Lower:
		p.text("", p.paint(bold, "Bid lower.")+" "+whyLower(a))
	case answer.Leave:
		p.text("", p.paint(bold, "Leave it.")+" "+whyLeave(a))
	}
	p.line("")
	if a.HasLow {
		offer(p, "Don't go above", a.OfferLow, fmt.Sprintf("if it turns out worth your low value, %s", dollars(a.Line("low_value"))))
		offer(p, "", a.Offer, fmt.Sprintf("if it turns out worth %s as you expect (maximum offer)", dollars(a.Line("after_repair_value"))))
	} else {
		offer(p, "Don't go above", a.Offer, fmt.Sprintf("if it turns out worth %s (maximum offer); you gave no low value to be careful with", dollars(a.Line("after_repair_value"))))
	}
	p.line("")
	p.text("  ", asking(a))
	p.text("  ", decides(a))
	p.text("  ", tiedUp(a))
	if left := backOut(a); left != "" {
		p.text("  ", left)
	}
}

func whyLower(a *answer.Answer) string {
	price := dollars(a.Line("price"))
	if a.Offer.Price.LessThan(a.Line("price")) {
		return "The asking price of " + price + " is too high."
	}
	return "The asking price of " + price + " " + meets(a) + " at the value you expect, but not at your low value."
}

// meets says what a price does at which every target holds.
func meets(a *answer.Answer) string {
	if len(a.Deal.Targets) == 0 {
		return "loses no money"
	}
	return "meets your targets"
}

func whyLeave(a *answer.Answer) string {
	price := dollars(a.Line("price"))
	switch {
	case !a.Offer.Found:
		return "No price works: even as a gift the house would miss " + goal(a, a.Offer.Binding) + ", by " + missedBy(a.Offer.Binding, a.Offer.Short) + "."
	case !a.OfferLow.Found:
		return "At your low value no price works: even as a gift the house would miss " + goal(a, a.OfferLow.Binding) + ", by " + missedBy(a.OfferLow.Binding, a.OfferLow.Short) + "."
	}
	return fmt.Sprintf("What the deal bears lies more than %s under the asking price of %s.", percent(a.Line("walk_away_share")), price)
}

func offer(p *page, lead string, o solve.Offer, note string) {
	value := dollars(o.Price)
	switch {
	case o.Endless:
		value = "any price"
	case !o.Found:
		lead, value = "No price works", ""
	}
	p.text(fmt.Sprintf("  %s%s   ", pad(lead, 15), right(value, 10)), note)
}

func asking(a *answer.Answer) string {
	if len(a.Misses) == 0 {
		return "At the asking price every target holds: " + goals(a) + "."
	}
	var parts []string
	for _, m := range a.Misses {
		parts = append(parts, goal(a, m.Target)+" (by "+missedBy(m.Target, m.Short)+")")
	}
	return "At the asking price you miss " + list(parts) + "."
}

func goals(a *answer.Answer) string {
	var parts []string
	for _, t := range solve.Targets(a.Deal.Targets) {
		parts = append(parts, goal(a, t))
	}
	return list(parts)
}

func decides(a *answer.Answer) string {
	if !a.HasLow {
		return "What decides is " + heldBack(a, a.Offer) + "."
	}
	low, likely := heldBack(a, a.OfferLow), heldBack(a, a.Offer)
	s := "What decides at your low value is " + low + "; at the value you expect, " + likely + "."
	if a.OfferLow.Found && a.OfferLow.Price.Equal(a.Offer.Price) {
		s = "What decides at either value is " + likely + "."
	}
	if a.OfferLow.Binding == "cash_to_spare" {
		s += " You are short of cash for more, not of profit: more cash, or a loan that asks for less of it, lets you go higher."
	}
	return s
}

// heldBack says which target holds an offer back, and where it is missed.
func heldBack(a *answer.Answer, o solve.Offer) string {
	switch {
	case o.Endless:
		return "nothing within reach; state a profit target"
	case !o.Found:
		return goal(a, o.Binding) + ", missed at any price"
	}
	return fmt.Sprintf("%s, missed from %s on", goal(a, o.Binding), dollars(o.Price.Add(decimal.NewFromInt(1))))
}

func tiedUp(a *answer.Answer) string {
	need := a.Line("cash_needed")
	s := fmt.Sprintf("At the asking price the most of your money tied up is %s, in month %s (cash needed).", dollars(need), a.Line("cash_needed_month"))
	if !a.Deal.HasCash {
		return s
	}
	s += " You have " + dollars(a.Line("cash_available"))
	of := ""
	if keep := a.Line("cash_reserve"); keep.IsPositive() {
		s += ", of which you keep back " + dollars(keep)
		of = "of the rest "
	}
	left := a.Line("cash_to_spare")
	if left.IsNegative() {
		return s + ": you would be " + dollars(left.Neg()) + " short."
	}
	return s + ": " + of + dollars(left) + " is left."
}

func backOut(a *answer.Answer) string {
	early, late := a.Line("lost_backing_out"), a.Line("lost_backing_out_late")
	switch until := a.Deal.DepositRefundableUntil; {
	case late.IsZero():
		return ""
	case early.Equal(late):
		return fmt.Sprintf("Back out before the closing and you lose %s, already paid.", dollars(early))
	case until.IsZero():
		return fmt.Sprintf("Back out and you lose %s; once the earnest deposit no longer comes back, %s.", dollars(early), dollars(late))
	default:
		return fmt.Sprintf("Back out up to %s and you lose %s; after that the earnest deposit too, %s in all.", until.Long(), dollars(early), dollars(late))
	}
}
