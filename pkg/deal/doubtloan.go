package deal

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

func (r *reader) doubtLoan(l scope) {
	name := l.member.Label
	positive := func(key string) bool {
		g := r.good(l.path + key)
		return g != nil && g.number.IsPositive()
	}
	if !positive("price share") && !positive("fixed amount") && !positive("renovation share") && !positive("reserve") {
		r.say("loan-empty", l.at, "%s lends nothing", name)("add   price share: 85%%   or   fixed amount: $180k   or   renovation share: 90%%")
	}
	switch {
	case !positive("rate"):
		r.say("loan-without-rate", l.at, "%s bears no interest", name)("add   rate: 11.25%%   if it does")
	case r.of(l, "interest on") == nil:
		tell := r.say("interest-basis-assumed", r.of(l, "rate").key.at, "%s does not say what interest runs on; the balance is assumed", name)
		if positive("amortising") {
			tell("add   interest on: balance   as with all level payments")
		} else {
			tell("ask the lender, and add   interest on: balance   or   interest on: commitment")
		}
	}
	if g := r.of(l, "draws"); g != nil && !positive("renovation share") {
		r.say("draws-unused", g.key.at, "%s has draws but lends nothing for the renovation", name)("add   renovation share: 90%%   or leave out the draws")
	}
	if g := r.good(l.path + "draws.at least"); g != nil && r.farBeside(l.member, "least_draw", 0) {
		held, _ := r.worked(l.member, "holdback")
		r.say("least-draw-high", g.at(), "%s: the smallest draw that is paid (%s) is more than all that is held back for the work (%s), so nothing is paid before the work ends", name, g.dollars(), quantity.FormatDollars(held))("check it with the lender's term sheet, for a digit too many; it is used as it stands")
	}
}

// What the fees of a loan besides its points are hardly over, as shares of what it lends; common practice, no
// source.
var highExit, highExtension = decimal.New(3, -2), decimal.New(2, -2)

// doubtLoanFees doubts fees of a loan of which a point has slipped.
func (r *reader) doubtLoanFees(l scope) {
	lent, _ := r.worked(l.member, "commitment")
	for _, x := range []struct {
		key, share, fixed string
		most              decimal.Decimal
	}{{"exit fee", "exit_share", "exit_fixed", highExit}, {"extension.fee", "extension_share", "extension_fixed", highExtension}} {
		g := r.good(l.path + x.key)
		high := l.member.Given.Of(x.share).Number.GreaterThan(x.most) || lent.IsPositive() && l.member.Given.Of(x.fixed).Number.GreaterThan(x.most.Mul(lent))
		if g != nil && high {
			r.say("loan-fee-high", g.at(), "%s: the %s is %s, over %s of what it lends", l.member.Label, strings.ReplaceAll(x.key, ".", " "), g.node.text, quantity.FormatPercent(x.most, 0))("check it with the lender's term sheet, for a point that has slipped; it is used as it stands")
		}
	}
}

// doubtTerm looks at when the loan falls due.
func (r *reader) doubtTerm(l scope) {
	term := r.good(l.path + "term")
	if term == nil {
		r.say("loan-without-term", l.at, "%s has no term", l.member.Label)("add   term: 12 months   so that a late sale shows what it costs")
		return
	}
	if am := r.good(l.path + "amortising"); term.number.GreaterThan(longTerm) && (am == nil || am.number.IsZero()) {
		r.say("term-long", term.at(), "%s has a term of %s, long for a loan of interest only; usual is at most %s", l.member.Label, term.node.text, quantity.FormatMonths(longTerm, 0))("check it with the lender's term sheet, for days in the place of months, or add   amortising: 30 years")
	}
	if early, ok := r.worked(l.member, "due_before_sale"); ok && quantity.Before(decimal.Zero, early) {
		hold, _ := r.hold()
		r.say("term-before-sale", term.at(), FallsDue, l.member.Label, term.node.text, HoldBeside(term.number, hold))("ask the lender, and add   extension: {each: 3 months, fee: 0.5%%}")
	}
}

// FallsDue is how a loan that ends before the sale is told: its name, its term and the hold.
const FallsDue = "%s falls due after %s, before the sale (%s), and no extension is agreed"

// HoldBeside is a hold in words beside a term that ends before it, with a place more where one does not
// tell them apart.
func HoldBeside(term, hold decimal.Decimal) string {
	places := int32(1)
	if hold.Round(places).Equal(term.Round(places)) {
		places++
	}
	return quantity.FormatMonths(hold, places)
}

// doubtNames looks for loans of one name, which are told apart nowhere.
func (r *reader) doubtNames() {
	lines := map[string]int{}
	for _, l := range r.loans() {
		g := r.good(l.path + "name")
		if g == nil {
			continue
		}
		name := plainKey(g.choice)
		if line := lines[name]; line > 0 {
			r.say("loan-name-twice", g.at(), "a second loan has the name %s; the first is in line %d", diag.Quote(g.choice), line)("give each a name of its own, or take one out if it is the same loan")
			continue
		}
		lines[name] = g.at().Line
	}
}

// doubtLoans looks at all loans together.
func (r *reader) doubtLoans() {
	r.doubtNames()
	r.doubtOwnerFirst()
	cut := func(l scope) bool {
		x, ok := r.worked(l.member, "cut_no_cash_back")
		return ok && x.IsPositive()
	}
	g, lent := r.together("price share")
	if g != nil && slices.ContainsFunc(r.loans(), cut) { // a cap may leave room for the next
		r.say("price-shares-over-100", g.at(), "the loans' shares of the price are %s%% together", lent.Shift(2))("what is over the closing is cut, as no loan gives cash back; the last loan may take a share   of remainder: yes")
	}
}

// doubtOwnerFirst looks for a lender who wants the owner's part of the work spent first beside
// one who pays of every dollar: the part is then shared before it is spent.
func (r *reader) doubtOwnerFirst() {
	var waits, pays *scope
	for _, l := range r.loans() {
		given := l.member.Given
		switch {
		case !given.Of("renovation_share").Number.IsPositive():
		case given.Of("owner_first").Number.IsPositive():
			waits = &l
		default:
			pays = &l
		}
	}
	if waits == nil || pays == nil {
		return
	}
	if part, ok := r.worked(waits.member, "owner_part"); ok && part.IsZero() {
		return
	}
	v, _ := waits.member.Given.Look("owner_first")
	r.say("owner-first-mixed", v.Pos, "%s pays once your own part of the work is spent, and %s from the first dollar on: by then it has paid some of it", waits.member.Label, pays.member.Label)(
		"ask both lenders; with   draws: {owner first: yes}   at each, your part is spent first and then they pay all")
}

// doubtDates looks for charges whose dated rates are not in force when they are due.
func (r *reader) doubtDates() {
	for _, f := range r.dated {
		r.doubtTotals(f)
		due, day, when := r.deal.PurchaseDate, decimal.Zero, "purchase"
		if f.scope.place.atSale {
			due, day, when = r.saleDate(), decimal.NewFromInt(int64(r.saleDay())), "sale"
		}
		if due.IsZero() {
			continue
		}
		first, last := f.areas[0], f.areas[0]
		for _, a := range f.areas {
			if a.days[0].LessThan(first.days[0]) {
				first = a
			}
			if a.days[1].GreaterThan(last.days[1]) {
				last = a
			}
		}
		label := f.scope.member.Label
		switch {
		case !day.LessThan(last.days[1]):
			r.say("rates-outdated", last.at, "the last rates of %s end before the %s (%s), so nothing is charged", label, when, due)("find the rates of that day, or leave out   until   of the last ones")
		case day.LessThan(first.days[0]):
			r.say("rates-not-yet", first.at, "the first rates of %s begin after the %s (%s), so nothing is charged", label, when, due)("add the rates of that day, or leave out   from   of the first ones")
		}
	}
}

// doubtTotals looks for totals outside all tables.
func (r *reader) doubtTotals(f datedFee) {
	low, high := f.areas[0].totals[0], f.areas[0].totals[1]
	for _, a := range f.areas {
		low, high = decimal.Min(low, a.totals[0]), decimal.Max(high, a.totals[1])
	}
	if low.IsPositive() || high.LessThan(beyond) {
		r.say("tables-open", f.areas[0].at, "the tables of %s are not for all totals; outside them nothing is charged", f.scope.member.Label)("add a table for the rest, e.g. when: above $350,000, unless that is meant")
	}
}
