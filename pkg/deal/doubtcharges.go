package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// A charge of the purchase in dollars is large from so much on and so much of the price, and a rate of a
// table from so many times that of the next bracket on: taxes rise with the total, and what falls, as
// premiums do, falls by less. Common practice, no source.
var (
	highClosing  = decimal.New(5, -2) // of the price
	largeCharge  = decimal.NewFromInt(5000)
	timesTheNext = decimal.NewFromInt(3)
	highTitle    = decimal.New(25, -3) // of what the house sells for, for title, escrow or settlement of the sale
	highAtSale   = decimal.New(5, -2)  // and for another charge of it
	highSaleTax  = decimal.New(7, -2)  // of the sale price, for taxes of the sale
	highSettling = decimal.New(3, -2)  // of the price or the sale price, for title, escrow or settlement by themselves
	highSelling  = decimal.New(5, -2)  // of the sale price, for closing costs beside what agents take
	highAllCosts = decimal.New(10, -2) // and for closing costs, which may hold what agents take, or what a buyer is given
	highLoanFee  = decimal.New(5, -2)  // of the loan, as points are
	highInLoan   = decimal.New(8, -2)  // and in dollars, of which a small loan has a least
	highGeneral  = decimal.New(30, -2) // of the work, for what goes with it, as who runs it takes
	highPlans    = decimal.New(15, -2) // of the work, for what architects and engineers draw
	largePlans   = decimal.NewFromInt(15_000)
)

// highShare is the share over which a charge, or a rate of its tables, is doubted; false where none is.
func highShare(fee *model.Member) (most decimal.Decimal, is bool) {
	switch {
	case permits(fee):
		return highPermits, true
	case fee.Kind == "purchase_fee" && slices.Contains([]string{"price", "all_in_price"}, fee.Given.Of("base").Refers):
		return highOfPurchase(fee), true
	case taxesSale(fee):
		return highSaleTax, true
	case ofSale(fee) && settlesWords().MatchString(fee.Label):
		return mostForSettling(fee), true
	case ofSale(fee) && holdsAny(strings.ToLower(fee.Label), "concession", "credit"):
		return highAllCosts, true
	case ofLoan(fee):
		return highLoanFee, true
	case fee.Kind == "general_fee":
		return highGeneral, true
	}
	return highCharge, fee.Kind == "purchase_fee" || fee.Kind == "selling_fee"
}

// ofSale reports whether a charge is a share of what the house sells for that no agent, nor a tax, is named in.
func ofSale(m *model.Member) bool {
	name := m.Label
	return m.Kind == "selling_fee" && slices.Contains([]string{"sale_price", "after_repair_value"}, m.Given.Of("base").Refers) && !saleTaxWords().MatchString(name) && !heldBack().MatchString(name) && !agentWords().MatchString(name)
}

// mostForSettling is the share over which title, escrow or settlement of the sale is doubted. Closing costs
// may be all that the sale costs, where no agent is charged beside them.
func mostForSettling(m *model.Member) decimal.Decimal {
	switch {
	case !allCosts().MatchString(m.Label):
		return highSettling
	case slices.ContainsFunc(m.Parent.In("selling_fee"), sells):
		return highSelling
	}
	return highAllCosts
}

// settlesBuying are in the names of title, escrow or settlement of the purchase; moreThanSettling in those of
// what may well be more with them.
var settlesBuying, moreThanSettling = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(title|escrow|settlement)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)prepa|reserve|deposit|impound|held|hold|repair|lien|payoff|attorney|lawyer|legal|survey|record|transfer|lender|loan|first|insurance and|condo|co-?op`)
})

// highOfPurchase is the share of the price over which a charge of the purchase is doubted.
func highOfPurchase(fee *model.Member) decimal.Decimal {
	name := fee.Label
	if settlesBuying().MatchString(name) && !allCosts().MatchString(name) && !saleTaxWords().MatchString(name) && !moreThanSettling().MatchString(name) {
		return highSettling
	}
	return highClosing
}

// plans reports whether a general line is for what is drawn and reckoned before the work.
func plans(m *model.Member) bool {
	return m.Kind == "general_fee" && !permits(m) && planWords().MatchString(m.Label) && !buildWords().MatchString(m.Label)
}

var planWords, buildWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(plans|drawings|architects?|architectural|engineers?|engineering)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(work|build\w*|install\w*|construction|fram(e|ing)|beams?|foundation)\b`)
})

// moreOfLoan are in the names of charges of a loan that may well be more than points are: money that is left
// with the lender, cover, taxes, and a part of what is earned.
var allCosts, moreOfLoan = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(clos(e|ing)|costs?|all|fees|expenses|charges)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)interest|reserve|escrow|prepa|deposit|holdback|held|insur|premium|mip\b|tax|profit|equity|particip|kicker|share|refund|default|exit`)
})

// ofLoan reports whether a charge of a loan is a share of the loan, as points are.
func ofLoan(m *model.Member) bool {
	base := m.Given.Of("base").Refers
	return m.Kind == "loan_fee" && slices.Contains([]string{"loan_at_closing", "commitment"}, base) && !moreOfLoan().MatchString(m.Label)
}

// saleTaxWords are in the names of taxes of the sale; heldBack in those of taxes of what the seller earns by it,
// which are withheld, and may be far more.
var saleTaxWords, heldBack = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(tax(es)?|stamps?|duty|excise)\b`)
}), sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)with(held|hold)|income|gains?\b|profit|foreign`)
})

// taxesSale reports whether a charge is a tax of the sale by its price.
func taxesSale(m *model.Member) bool {
	name := m.Label
	return m.Kind == "selling_fee" && m.Given.Of("base").Refers == "sale_price" && saleTaxWords().MatchString(name) && !heldBack().MatchString(name) && !agentWords().MatchString(name) && !settlesWords().MatchString(name)
}

// highOfSale is the share of the after-repair value over which a charge of the sale in dollars is
// doubted; false for what agents take and a buyer is given, which may well be more.
func highOfSale(fee *model.Member) (most decimal.Decimal, is bool) {
	switch {
	case agentWords().MatchString(fee.Label) || holdsAny(strings.ToLower(fee.Label), "concession", "credit"):
		return most, false
	case settlesWords().MatchString(fee.Label):
		return highTitle, true
	}
	return highAtSale, true
}

// feeOf is the charge that a member states: itself, or the one that a bracket's table is of.
func feeOf(m *model.Member) *model.Member {
	if m.Set == "bracket" {
		return m.Parent.Parent
	}
	return m
}

// charging are a charge and all brackets of its tables.
func charging(fee *model.Member) []*model.Member {
	out := []*model.Member{fee}
	for _, t := range fee.In("table") {
		out = append(out, t.In("bracket")...)
	}
	return out
}

// shareCharged is what a charge or a bracket takes as a share of its base, also by the step.
func shareCharged(m *model.Member) (v model.Value, share decimal.Decimal, is bool) {
	for _, line := range []string{"share", "rate"} {
		if v, is = m.Given.Look(line); is {
			return v, v.Number, true
		}
	}
	if v, is = m.Given.Look("unit_price"); is {
		return v, v.Number.Div(m.Given.Of("unit_size").Number), true
	}
	return v, share, false
}

// chargesOnce are all charges but those of holding.
func (r *reader) chargesOnce() []*model.Member {
	root := r.deal.Root
	out := slices.Concat(r.purchaseCharges(), root.In("general_fee"), root.In("selling_fee"))
	for _, l := range r.loans() {
		out = append(out, l.member.In("loan_fee")...)
	}
	return out
}

// purchaseCharges are those before the closing and at it.
func (r *reader) purchaseCharges() []*model.Member {
	return slices.Concat(r.deal.Root.In("before_fee"), r.deal.Root.In("purchase_fee"))
}

// doubtCharges doubts charges of the purchase, the work and the sale of which a point has slipped or a
// nought is too many.
func (r *reader) doubtCharges() {
	root := r.deal.Root
	for _, fee := range r.chargesOnce() {
		if r.outOfPlace(fee) {
			continue
		}
		most, bounded := highShare(fee)
		for _, m := range charging(fee) {
			if v, share, is := shareCharged(m); is && bounded && share.GreaterThan(most) {
				r.tellHighShare(fee, v, most)
			}
		}
		for _, t := range fee.In("table") {
			r.doubtFalling(fee, t.In("bracket"))
		}
		if r.farBeside(fee, "fixed", 0) {
			v := fee.Given.Of("fixed")
			if most, is := mostForPaper(fee); is {
				r.say("charge-high", v.Pos, "%s is %s; such a charge is rarely over %s", fee.Label, v.Text, quantity.FormatDollars(most))("check it with whoever gave it to you, for a nought too many; it is used as it stands")
				continue
			}
			if permits(fee) {
				all, _ := r.worked(root, "trade_cost")
				r.say("charge-high", v.Pos, "%s is %s, and all of the work, parts not seen with it, %s; permits are rarely over %s of that", fee.Label, quantity.FormatDollars(v.Number), quantity.FormatDollars(all.Sub(v.Number)), quantity.FormatPercent(highPermits, 0))("check it with the building department, for a nought too many; it is used as it stands")
				continue
			}
			share, of := highOfPurchase(fee), "the price"
			switch high, _ := highOfSale(fee); fee.Kind {
			case "selling_fee":
				share, of = high, "the after-repair value"
			case "loan_fee":
				share, of = highInLoan, "the loan"
			case "general_fee":
				share, of = highPlans, "all of the work, finished by trades"
			}
			r.say("charge-high", v.Pos, "%s is %s, more than %s of %s", fee.Label, quantity.FormatDollars(v.Number), quantity.FormatPercent(share, 1), of)("check it with whoever gave it to you, for a nought too many; it is used as it stands")
		}
	}
	if g := r.good("purchase.assignment fee"); g != nil && r.farBeside(root, "assignment_fee", 0) {
		r.say("charge-high", g.at(), "the assignment fee (%s) is more than %s of the price", g.dollars(), quantity.FormatPercent(highAssignment, 0))("check it with the contract, for a nought too many; it is used as it stands")
	}
}

// tellHighShare doubts the share of a charge, or a rate of its tables.
func (r *reader) tellHighShare(fee *model.Member, v model.Value, most decimal.Decimal) {
	words := quantity.FormatPercent(most, 0)
	switch {
	case permits(fee):
		r.say("share-high", v.Pos, "%s takes %s of the work; permits are rarely over %s", fee.Label, v.Text, words)("check it with the building department, for a point that has slipped; it is used as it stands")
	case fee.Kind == "purchase_fee" && most.LessThanOrEqual(highClosing) && strings.Contains(strings.ToLower(fee.Label), "premium"):
		r.say("share-high", v.Pos, "%s takes %s of the price", fee.Label, v.Text)("what an auction house takes goes under purchase, so that loans and cautions know of it:   auction premium: %s", v.Text)
	case fee.Kind == "purchase_fee" && most.LessThanOrEqual(highClosing):
		r.say("share-high", v.Pos, "%s takes %s of the price", fee.Label, v.Text)("check it, for a point that has slipped; over %s is unusual for one charge of the purchase", words)
	case most.Equal(highSaleTax):
		r.say("share-high", v.Pos, "%s takes %s of the sale", fee.Label, v.Text)("check it with the county, for a point that has slipped; over %s is unusual for a tax of the sale", words)
	case ofLoan(fee):
		r.say("share-high", v.Pos, "%s takes %s of the loan", fee.Label, v.Text)("check it with the lender's term sheet, for a point that has slipped; over %s is unusual for one charge of a loan", words)
	case ofSale(fee) && most.LessThan(highCharge):
		r.say("share-high", v.Pos, "%s takes %s of the sale", fee.Label, v.Text)("check it with whoever gave it to you, for a point that has slipped; over %s is unusual for such a charge of the sale", words)
	default:
		r.say("share-high", v.Pos, "%s takes %s", fee.Label, v.Text)("check it; a share of more than %s is unusual for a charge", words)
	}
}

// doubtFalling doubts a rate far above that of the bracket behind it, where a point has slipped.
func (r *reader) doubtFalling(fee *model.Member, brackets []*model.Member) {
	for i := 1; i < len(brackets); i++ {
		v, above, is := shareCharged(brackets[i-1])
		next, below, too := shareCharged(brackets[i])
		if is && too && below.IsPositive() && above.GreaterThan(below.Mul(timesTheNext)) {
			r.say("rate-falls", v.Pos, "%s takes %s of what is %s, over %s times the %s of the next", fee.Label, v.Text, brackets[i-1].Label, timesTheNext, next.Text)("check both, for a point that has slipped: such rates mostly rise, or fall by little; they are used as they stand")
		}
	}
}
