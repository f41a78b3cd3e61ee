package answer

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/caution"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// doubts are the doubtful spots that only the results show.
func (a *Answer) doubts() diag.List {
	var l diag.List
	for _, loan := range a.Loans() {
		a.doubtLoan(&l, loan)
	}
	say := func(code, message, hint string) {
		l.Add(diag.Warnf(a.Deal.Root.Pos, code, "%s", message).WithHint("%s", hint))
	}
	if short := a.Month("short_at_sale", a.Values.Months()); short.IsPositive() {
		say("sale-short", "the sale does not cover what it must pay off; "+quantity.FormatMoney(short)+" must be brought to it",
			"a lower price would do, or that much cash at the closing of the sale")
	}
	if n := a.IRR.Several; n > 1 {
		say("several-irr", fmt.Sprintf("%d rates solve the internal rate of return; the one nearest zero is shown, trust none of them", n),
			"go by the profit and the return on cash")
	}
	switch {
	case a.LoanAPR.Several > 1:
		say("several-apr", fmt.Sprintf("%d rates solve the loans' annual percentage rate; one is shown, trust none of them", a.LoanAPR.Several),
			"go by what the loans cost in dollars")
	case !a.LoanAPR.Found && a.Line("loan_cost").IsPositive():
		why := "they are paid for before they lend"
		if !a.Line("loan_at_closing").Add(a.Line("draws")).IsPositive() {
			why = "they lend nothing before the sale"
		}
		say("no-apr", "no rate is the loans' cost a year, for "+why+"; they cost "+quantity.FormatMoney(a.Line("loan_cost")),
			"go by what the loans cost in dollars")
	}
	if back := a.Line("cash_to_close").Neg(); back.IsPositive() {
		say("cash-back", "the purchase closing would pay out "+quantity.FormatMoney(back),
			"check the loans, the deposit and the credits; a lender rarely lets a buyer take cash from the closing")
	}
	return l
}

func (a *Answer) doubtLoan(l *diag.List, loan *model.Member) {
	term, done := a.Of(loan, "term"), a.Line("works_end")
	if a.farBeside(loan, "term") && !a.cleared(loan, term) { // without extension it is doubted for the sale
		l.Add(diag.Warnf(loan.Pos, "term-before-works", "%s falls due after %s, before the work is done (%s)", loan.Label, quantity.FormatMonths(term, 1), quantity.FormatMonths(done, 1)).
			WithHint("check the unit of its term; as it stands, extensions are paid during the work"))
	}
	if cost := a.Of(loan, "cost"); cost.IsPositive() && a.Of(loan, "commitment").IsZero() && (a.Of(loan, "price_share").IsPositive() || a.Of(loan, "renovation_share").IsPositive() || a.Of(loan, "fixed_amount").IsPositive()) {
		l.Add(diag.Warnf(loan.Pos, "loan-lends-nothing", "%s lends nothing here, and still costs %s", loan.Label, quantity.FormatMoney(cost)).
			WithHint("leave it out, or ask the lender what of it is due without a loan"))
	}
	for _, row := range []struct{ line, code, format, hint string }{
		{"cut_by_as_is", "loan-cut-by-as-is", "%s: %s is taken off, since the as-is value is under the price that it would count", "have that much more cash ready, or give the as-is value of an appraisal that says more"},
		{"cut_no_cash_back", "loan-cut-no-cash-back", CutBack, "lower the loan, or ask the lender what it does with the rest"},
		{"cut_by_caps", "loan-cut-by-cap", CutByCap, "have that much more cash ready, or look for a lender with another cap"},
		{"never_drawn", "never-drawn", NeverDrawn, "ask the lender how soon draws are paid; what takes no cash, such as own work counted at trade price, is never drawn"},
		{"beyond_reserve", "reserve-runs-out", "%s: the interest reserve runs out; %s of interest is paid in cash", "ask for a larger reserve, or keep that much cash ready"},
		{"top_up", "least-interest", "%s: the lender's least interest adds %s at the sale", "this is what a quick sale costs; ask the lender whether it can be waived"},
	} {
		if row.line == "cut_no_cash_back" {
			row.format, row.hint = a.besidePremium(loan, row.format, row.hint)
		}
		if row.line == "cut_by_as_is" || row.line == "cut_by_caps" {
			if rest := a.remainderBehind(loan, row.line == "cut_by_caps"); rest != nil {
				row.hint = strings.Replace(row.hint, "that much more cash ready", "ready what of it "+rest.Label+" does not lend, which takes the remainder", 1)
			}
		}
		if x := a.Of(loan, row.line); x.IsPositive() {
			l.Add(diag.Warnf(loan.Pos, row.code, row.format, loan.Label, quantity.FormatMoney(x)).WithHint("%s", row.hint))
		}
	}
}

// farBeside reports whether an input is doubted beside others in any way.
func (a *Answer) farBeside(m *model.Member, line string) bool {
	value := func(c *model.Cell) (decimal.Decimal, bool) { return a.Values.Of(c), true }
	return slices.ContainsFunc(a.Deal.Beside(a.Model.Find(m, line)), func(x deal.Beside) bool { return !x.Holds(value) })
}

// CutBack is how a loan is told that would give cash back at the purchase: its name, and what is cut.
const CutBack = "%s: %s is taken off, since no loan gives cash back at the purchase"

// CutByCap is how a loan is told that a cap of its lender makes smaller: its name, and by what.
const CutByCap = "%s: the lender's cap takes off %s"

// NeverDrawn is how a loan is told of which some comes too late: its name, and how much.
const NeverDrawn = "%s: %s of the holdback never comes in before the sale"

// besidePremium is what is said of a loan that gives no cash back, where it does not count what
// is paid on top of the price either: that is all the reason as far as counting it would do.
func (a *Answer) besidePremium(loan *model.Member, format, hint string) (string, string) {
	premium := a.Line("all_in_price").Sub(a.Line("price"))
	if !premium.IsPositive() || a.Of(loan, "finances_premium").IsPositive() {
		return format, hint
	}
	before := a.Of(loan, "lent_at_closing").Sub(a.Of(loan, "loan_at_closing"))
	room := a.Of(loan, "net_price").Add(premium).Add(a.Line("closing_cost")).Sub(before)
	if a.Of(loan, "closing_wanted").GreaterThan(room) {
		return format, hint + "; it is taken not to lend on the " + quantity.FormatMoney(premium) + " paid on top of the price: if it does, add   counts premium: yes"
	}
	return "%s: %s is taken off, since it is taken not to lend on what is paid on top of the price", "if it does, add   counts premium: yes   to the loan; if it does not, lower the loan"
}

// remainderBehind is a later loan that takes what earlier ones leave of the price, or where
// asked of the work too, or nil.
func (a *Answer) remainderBehind(loan *model.Member, work bool) *model.Member {
	all := a.Loans()
	for _, l := range all[slices.Index(all, loan)+1:] {
		if a.Of(l, "of_remainder").IsPositive() && (a.Of(l, "price_share").IsPositive() || work && a.Of(l, "renovation_share").IsPositive()) {
			return l
		}
	}
	return nil
}

// without are those of all that are not among some.
func without(all, some []string) []string {
	return slices.DeleteFunc(slices.Clone(all), func(x string) bool { return slices.Contains(some, x) })
}

// house is what the cautions are chosen by.
func (a *Answer) house() caution.House {
	d := a.Deal
	h := caution.House{
		YearBuilt: d.YearBuilt, HoldMonths: a.Line("hold_months"),
		PurchasePrice: a.Line("price"), SalePrice: a.Line("sale_price"),
		OwnHours: a.Line("own_hours"), Trades: d.Trades, NoPermit: without(d.Trades, d.Permits), NoLicence: without(d.Trades, d.Licences), NoWindow: without(d.Trades, d.Windows),
		HasInsuranceLine: d.Insured, HasVacantInsurance: d.VacantInsured, HasPermitLine: d.Permitted,
		ContingencyShare: a.Line("contingency_share"), NoWork: a.Line("base_cost").IsZero(), UtilitiesOff: d.UtilitiesOff,
		HasInterestReserve: a.Line("reserve").IsPositive(), Assignment: a.Line("assignment_fee").IsPositive(), Units: d.Units,
	}
	a.ownHazards(&h)
	if !d.PurchaseDate.IsZero() {
		h.Bought = day(d.PurchaseDate, decimal.Decimal{})
		h.OfferAccepted = day(d.PurchaseDate, a.Line("offer_day"))
		h.SaleClosing = day(d.PurchaseDate, a.Line("sale_day"))
	}
	return h
}

// day is a calendar day some days after another.
func day(from quantity.Date, days decimal.Decimal) time.Time {
	d := from.AddDays(int(days.IntPart()))
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC)
}
