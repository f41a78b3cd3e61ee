package report

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/solve"
)

// verdict writes the answer in plain words.
func verdict(p *page, a *answer.Answer) {
	p.title(a.Deal.Name)
	if !a.Deal.HasCash {
		p.text("", "The file does not say what cash you have, so nothing here says whether it is enough.")
	}
	if !a.StatesValue() {
		for _, why := range a.DoubtFirst() {
			p.text("", "Doubt the value first, by sold houses: "+why+".")
		}
	}
	p.line("")
	word, why := a.Advice()
	for i, l := range wrap(word+" "+why, Width) { // before it is painted, for codes have no width
		if i == 0 {
			l = p.paint(bold, word) + strings.TrimPrefix(l, word)
		}
		p.line("%s", l)
	}
	p.line("")
	low := fmt.Sprintf("if it turns out worth your low value, %s", dollars(a.Line("low_value")))
	likely := fmt.Sprintf("if it turns out worth %s as you expect (maximum offer)", dollars(a.Line("after_repair_value")))
	switch {
	case a.HasLow && a.LikelyBinds():
		offer(p, "Don't go above", a.Offer, likely)
		offer(p, "", a.OfferLow, low)
	case a.HasLow:
		offer(p, "Don't go above", a.OfferLow, low)
		offer(p, "", a.Offer, likely)
	default:
		offer(p, "Don't go above", a.Offer, fmt.Sprintf("if it turns out worth %s (maximum offer); %s", dollars(a.Line("after_repair_value")), noLow(a)))
	}
	p.line("")
	p.text("  ", a.Asking())
	p.text("  ", a.Decides())
	if gap := a.Gaps(); gap != "" {
		p.text("  ", gap)
	}
	if aside := a.CashAside(); aside != "" {
		p.text("  ", aside)
	}
	p.text("  ", a.TiedUp())
	if left := a.BackOut(); left != "" {
		p.text("  ", left)
	}
	if x := a.Line("not_seen"); x.IsPositive() {
		p.text("  ", fmt.Sprintf("Of the work, %s is set aside, before contingency, for parts of the house that nobody has seen. Look at them before you bid: ledgerboard scope tells what, and where to look.", dollars(x)))
	}
}

// noLow says why there is no low value.
func noLow(a *answer.Answer) string {
	switch low := a.Model.Find(a.Model.Root, "low_value"); {
	case low.Given == nil && a.Deal.Comps == nil:
		return "you gave no low value to be careful with"
	case a.Values.Of(low).Equal(a.Line("after_repair_value")):
		return "your low value is the same"
	}
	return "your low value is not below it"
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
