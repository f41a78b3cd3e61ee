package deal

import (
	"regexp"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// Where a unit has probably slipped; common practice, no source.
var (
	largeDeal      = decimal.NewFromInt(100_000) // price from which on a small line is doubted
	smallLine      = decimal.NewFromInt(20)      // dollars of a line of work that could be thousands
	highTax        = decimal.New(8, -2)          // property tax of a year, as a share of the price
	highCover      = decimal.New(6, -2)          // insurance of a year by a bill of the year, as a share of the price
	highCoverOften = decimal.New(35, -3)         // and by one of the month or the quarter: a year's is often told by those
	usualBill      = decimal.NewFromInt(4000)    // tax or insurance of a year that is paid for the cheapest house too
	highCharge     = decimal.New(20, -2)         // a charge of the purchase or the sale, as a share
	highSupplies   = decimal.New(3, -2)          // utilities of a year, as a share of the price
	largeSupplies  = decimal.NewFromInt(14_400)  // and in dollars
	lowTax         = decimal.New(25, -4)         // property tax of a year, as a share of the price
	highCredit     = decimal.New(6, -2)          // a seller's credit, as a share of the price
	highAssignment = decimal.New(10, -2)         // an assignment fee, as a share of the price
	lowAgent       = decimal.New(5, -3)          // an agent's share of the sale
	lowAgents      = decimal.New(1, -2)          // what all agents take of the sale
	lowOfValue     = decimal.New(60, -2)         // a low value, as a share of the after-repair value
	highSale       = decimal.New(15, -1)         // a sale price, as a share of it
	lowPrice       = decimal.New(30, -2)         // a first loan's share of the price
	lowWork        = decimal.New(20, -2)         // a loan's share of the renovation
	longTerm       = decimal.NewFromInt(60)      // months of a loan of interest only
	earlyDeposit   = 365                         // days before the purchase
)

// doubtSlips looks for figures whose unit has probably slipped: a k left out, a year's
// bill by the month, 8.5% for 85%, a date of another year.
func (r *reader) doubtSlips() {
	r.doubtSmallLines()
	r.doubtDearLines()
	r.doubtSameLines()
	r.doubtHires()
	r.doubtYearly()
	r.doubtSupplies()
	r.doubtDues()
	r.doubtShares()
	until, bought := r.good("purchase.earnest deposit.refundable until"), r.good("purchase.date")
	if until != nil && bought != nil && days(until.date, bought.date) > earlyDeposit {
		r.say("deposit-date-early", until.at(), "the deposit is refundable until %s, more than a year before the purchase (%s)", until.date, bought.date)("check the year of both days")
	}
}

func (r *reader) doubtSmallLines() {
	if r.good("purchase.price").number.LessThan(largeDeal) {
		return
	}
	for _, l := range r.lines() {
		for _, key := range []string{"amount", "materials", "labour"} {
			if g := r.good(l.path + key); g != nil && g.number.IsPositive() && g.number.LessThan(smallLine) {
				r.say("amount-small", g.at(), "%s is %s, little for a line of work", key, diag.Quote(g.node.text))("write %sk if thousands are meant; it is used as it stands", strings.TrimSpace(g.node.text))
			}
		}
	}
}

// timesAYear are how often bills by the month, the quarter and the year come in a year.
var timesAYear = map[string]int64{"a_month": 12, "a_quarter": 4, "a_year": 1}

// mostOfYear is the share of the price over which a year's tax or insurance is doubted, by how its bill comes.
func mostOfYear(m *model.Member, line string) (most decimal.Decimal, code string) {
	switch {
	case taxes(m):
		return highTax, "property-tax-high"
	case line == "a_year":
		return highCover, "insurance-high"
	}
	return highCoverOften, "insurance-high"
}

// doubtYearly looks for a year's tax or insurance that is charged by the month or quarter, or is far too much.
func (r *reader) doubtYearly() {
	for _, b := range r.bills(func(m *model.Member) bool { return taxes(m) || insures(m) }) {
		if !r.farBeside(b.of, b.line, 0) {
			continue
		}
		most, code := mostOfYear(b.of, b.line)
		tell := r.say(code, b.Pos, "%s is %s, %s a year, more than %s of the price", b.of.Label, b.Text, quantity.FormatDollars(b.year), quantity.FormatPercent(most, 1))
		if b.line == "a_year" {
			tell("check it with the bill; it is used as it stands")
			continue
		}
		tell("write %s/year if it is the bill of a year", quantity.FormatDollars(b.Number))
	}
}

// A bill is what a holding cost takes by the month, the quarter or the year.
type bill struct {
	model.Value
	of   *model.Member
	line string
	year decimal.Decimal // what it comes to in a year
}

// bills are those of some holding costs.
func (r *reader) bills(is func(*model.Member) bool) (out []bill) {
	for _, m := range r.deal.Root.In("holding_fee") {
		if !is(m) {
			continue
		}
		for line, times := range timesAYear {
			if v, given := m.Given.Look(line); given {
				out = append(out, bill{v, m, line, v.Number.Mul(decimal.NewFromInt(times))})
			}
		}
	}
	return out
}

func taxes(m *model.Member) bool { return strings.Contains(strings.ToLower(m.Label), "tax") }

// supplyWords are in the names of what a house uses and is billed for.
var supplyWords = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(utilit(y|ies)|electric(al|ity)?|power|gas|water|sewer(age)?|heat(ing)?|oil|propane|internet|trash|garbage|refuse)\b`)
})

// supplies reports whether a charge is of what a house uses, such as power and water.
func supplies(m *model.Member) bool {
	return supplyWords().MatchString(m.Label) && !taxes(m) && !insures(m) && m.Given.Of("credit").Number.IsZero()
}

// doubtSupplies doubts a bill of utilities that is rather one of a year, or has a nought too many.
func (r *reader) doubtSupplies() {
	for _, b := range r.bills(supplies) {
		if !r.farBeside(b.of, b.line, 0) {
			continue
		}
		if tell := r.say("utilities-high", b.Pos, "%s is %s, %s a year, much for one house", b.of.Label, b.Text, quantity.FormatDollars(b.year)); b.line != "a_year" {
			tell("write %s/year if it is what a year costs; it is used as it stands", quantity.FormatDollars(b.Number))
		} else {
			tell("check it with the bills, for a nought too many; it is used as it stands")
		}
	}
}

// lowShare is the share below which a loan's part of the price or the renovation is doubted; false
// where it is not: a second lender often adds a little.
func lowShare(loan *model.Member, first bool, line string) (low decimal.Decimal, is bool) {
	if line == "price_share" && !first || !loan.Given.Of("of_remainder").Number.IsZero() {
		return low, false
	}
	if line == "price_share" {
		return lowPrice, true
	}
	return lowWork, true
}

func (r *reader) doubtShares() {
	for i, l := range r.loans() {
		for _, s := range []struct{ key, line, code string }{
			{"price share", "price_share", "price-share-low"},
			{"renovation share", "renovation_share", "renovation-share-low"},
		} {
			low, is := lowShare(l.member, i == 0, s.line)
			if g := r.good(l.path + s.key); is && g != nil && g.number.IsPositive() && g.number.LessThan(low) {
				r.say(s.code, g.at(), "%s of %s is %s; usual is at least %s", s.key, l.member.Label, diag.Quote(g.node.text), quantity.FormatPercent(low, 0))("check it with the lender's term sheet, for a point or nought left out; it is used as it stands")
			}
		}
	}
}
