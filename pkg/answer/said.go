package answer

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/solve"
)

// Advice is the verdict as a word or two, and why.
func (a *Answer) Advice() (word, why string) {
	switch a.Verdict {
	case Lower:
		return "Bid lower.", a.whyLower()
	case Other:
		return "Not at this price.", a.whyOther()
	case Leave:
		return "Leave it.", a.whyLeave()
	}
	return "Bid.", "The asking price of " + a.Asked() + " " + a.meets() + "."
}

func (a *Answer) whyLower() string {
	price := a.Asked()
	if a.Offer.Price.LessThan(a.Line("price")) {
		return "The asking price of " + price + " is too high."
	}
	return "The asking price of " + price + " " + a.meets() + " at the value you expect, but not at your low value."
}

// Asked is the asking price, with its cents where it has any.
func (a *Answer) Asked() string {
	if price := a.Line("price"); !price.IsInteger() {
		return money(price)
	}
	return dollars(a.Line("price"))
}

// whyOther tells of a higher price that bears what the asking price does not.
func (a *Answer) whyOther() string {
	better, at := a.Offer, ""
	if len(a.Missed()) == 0 {
		better, at = a.OfferLow, " at your low value"
	}
	higher := dollars(better.Price)
	if better.Endless {
		higher = "a higher one"
	}
	return fmt.Sprintf("The asking price of %s %s%s, though %s does not: something that you pay falls where the price rises. Look at the charges that go by the price or by a loan, and for a price at which they are lower.",
		a.Asked(), a.fails(), at, higher)
}

// fails says what a price does at which some target is missed.
func (a *Answer) fails() string {
	if len(a.Deal.Targets) == 0 {
		return "loses money"
	}
	return "misses a target"
}

// meets says what a price does at which every target holds.
func (a *Answer) meets() string {
	if len(a.Deal.Targets) == 0 {
		return "loses no money"
	}
	return "meets your targets"
}

func (a *Answer) whyLeave() string {
	price := a.Asked()
	switch {
	case !a.Offer.Found:
		return "No price works: " + a.AsAGift(a.Offer) + "."
	case !a.OfferLow.Found:
		return "At your low value no price works: " + a.AsAGift(a.OfferLow) + "."
	case a.Offer.Binding == cashTarget:
		return fmt.Sprintf("Your cash is enough up to %s, more than %s under the asking price of %s.", dollars(a.Offer.Price), percent(a.Line("walk_away_share")), price)
	}
	return fmt.Sprintf("What the deal bears lies more than %s under the asking price of %s.", percent(a.Line("walk_away_share")), price)
}

// AsAGift says what is missed of an offer that is not found even where nothing is paid.
func (a *Answer) AsAGift(o solve.Offer) string {
	return "even with the house as a gift you would " + a.Misses(Miss{Target: o.Binding, Short: o.Short})
}

// Asking says which targets hold at the asking price, or which are missed.
func (a *Answer) Asking() string {
	if misses := a.Missed(); len(misses) > 0 {
		return "At the asking price you " + a.Misses(misses...) + "."
	}
	return "At the asking price you " + a.Meets() + "."
}

// Decides says which target holds the offer back, at either value.
func (a *Answer) Decides() string {
	if !a.HasLow {
		return "What decides is " + a.heldBack(a.Offer) + "."
	}
	low, likely := a.heldBack(a.OfferLow), a.heldBack(a.Offer)
	switch {
	case a.OfferLow.Found && a.OfferLow.Price.Equal(a.Offer.Price):
		return "What decides at either value is " + likely + "."
	case !a.Offer.Endless && a.OfferLow.Binding == a.Offer.Binding:
		likely = strings.Replace(likely, a.Goal(a.Offer.Binding), "the same", 1)
	}
	return "What decides at your low value is " + low + "; at the value you expect, " + likely + "."
}

// CashAside says what the deal would bear if cash were no matter, or nothing where cash
// holds no offer back.
func (a *Answer) CashAside() string {
	if a.Aside == nil {
		return ""
	}
	s := "Cash aside, your other targets hold " + upTo(a.Aside.Offer)
	if a.HasLow {
		s = "Cash aside, your other targets hold " + upTo(a.Aside.OfferLow) + " at your low value and " + upTo(a.Aside.Offer) + " at the value you expect"
	}
	switch nothing := a.Aside.Frees.Round(0).IsZero(); {
	case nothing && a.BeforeClosing(dollars) != "":
		return s + ". A lower price frees no cash: what is paid before the closing takes it; a smaller earnest deposit or more cash does."
	case nothing:
		return s + ". A lower price frees no cash; more of it, or a loan that asks for less, does."
	}
	switch {
	case a.waysDown():
		s += fmt.Sprintf(". On the way down to %s each $1,000 off the price frees about %s of cash", dollars(a.Offer.Price), dollars(a.Aside.Frees))
	case a.Aside.Frees.IsNegative():
		s += fmt.Sprintf(". The first $1,000 off the price takes about %s more cash", dollars(a.Aside.Frees.Neg()))
	default:
		s += fmt.Sprintf(". The first $1,000 off the price frees about %s of cash", dollars(a.Aside.Frees))
	}
	if !a.Offer.Found && a.Aside.Offer.Found {
		s += ", and no price frees enough"
	}
	switch {
	case a.Aside.Frees.IsNegative() || !a.Aside.Frees.LessThan(one.Shift(3)): // as much as more cash does
		return s + "."
	case len(a.Loans()) == 0:
		return s + "; more cash, or a loan, does more."
	}
	return s + "; more cash, or a loan that asks for less of it, does more."
}

func upTo(o solve.Offer) string {
	switch {
	case o.Endless:
		return "at any price"
	case !o.Found:
		return "at no price"
	}
	return "up to " + dollars(o.Price)
}

// heldBack says which target holds an offer back, and where it is missed.
func (a *Answer) heldBack(o solve.Offer) string {
	switch {
	case o.Endless:
		return "nothing within reach; state a profit target"
	case !o.Found:
		return a.Goal(o.Binding) + ", " + a.beyond(o.Binding) + " at any price"
	}
	return a.Goal(o.Binding) + ", " + a.beyond(o.Binding) + " from " + dollars(o.Price.Add(decimal.NewFromInt(1))) + " on"
}

// beyond says what becomes of a target where the price is above what it bears.
func (a *Answer) beyond(target string) string {
	switch {
	case a.BreaksEven(target):
		return "with a loss"
	case target == cashTarget:
		return "too little"
	}
	return "missed"
}

// TiedUp says how much of her money is tied up at most, when, and what is left.
func (a *Answer) TiedUp() string {
	need, before := a.Line("cash_needed"), a.BeforeClosing(dollars)
	s := fmt.Sprintf("At the asking price the most of your money tied up is %s, in month %s (cash needed).", dollars(need), a.Line("cash_needed_month"))
	if before != "" {
		s = fmt.Sprintf("At the asking price the most of your money tied up from the closing on is %s, in month %s (cash needed). %s", dollars(need), a.Line("cash_needed_month"), before)
	}
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

// BeforeClosing says what is tied up before the closing where that is more than ever
// after it, or nothing; month 0 holds only what is left of it when the closing is done.
func (a *Answer) BeforeClosing(format func(decimal.Decimal) string) string {
	yours := a.Line("owner_paid_before")
	switch {
	case !yours.GreaterThan(a.Line("cash_needed")):
		return ""
	case a.Partnered():
		return "Before the closing it is more: of " + format(a.Line("already_paid")) + " already paid, by you or your partner, your part is taken for " + format(yours) + "."
	}
	return "Before the closing it is more: " + format(yours) + ", already paid."
}

// BackOut says what is lost by backing out, or nothing where nothing is.
func (a *Answer) BackOut() string {
	early, late, you := decimal.Max(decimal.Zero, a.Line("lost_backing_out")), a.Line("lost_backing_out_late"), "you lose"
	if a.Partnered() {
		you = "you and your partner lose"
	}
	switch until := a.Deal.DepositRefundableUntil; {
	case !late.IsPositive():
		return ""
	case early.Equal(late):
		return fmt.Sprintf("Back out before the closing and %s %s, already paid.", you, dollars(early))
	case until.IsZero():
		return fmt.Sprintf("Back out and %s %s; once the earnest deposit no longer comes back, %s.", you, dollars(early), dollars(late))
	default:
		return fmt.Sprintf("Back out up to %s and %s %s; after that the earnest deposit too, %s in all.", until.Long(), you, dollars(early), dollars(late))
	}
}
