package published

import (
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
)

// closing is one page of the sample form in testdata/published/closing-disclosure.json.
type closing struct {
	origin
	Loan         string
	BorrowerPaid map[string]map[string]string `json:"borrower_paid"`
	SellerPaid   map[string]string            `json:"seller_paid"`
	Before       []string                     `json:"before_closing"`
	Expected     map[string]string
}

// buyer is the purchase on the sample form. Interest of a part month before the
// first whole one, and taxes and dues shared by days, are entered as printed: the
// form counts a year of 360 days, and rounds the interest of a day to the cent
// before it multiplies. The model of a flip has no such months.
// The appraisal (405.00), which others paid, is left out.
const buyer = `
purchase:
  price: $180,000
  date: 2013-04-15
  earnest deposit: $10,000
  seller credit: $2,500
  paid before closing:
    Credit report: $29.80
  closing:
    Recording fees (deed 40, mortgage 45): $85
    Homeowner's insurance 12 mo: $1,209.96
    Prepaid interest 17.44/day 4/15-5/1: $279.04
    Property taxes 6 mo: $631.80
    Homeowner's insurance 100.83 x 2: $201.66
    Property taxes 105.30 x 2: $210.60
    Aggregate adjustment: {amount: $0.01, credit: yes}
    HOA capital contribution: $500
    HOA processing: $150
    Home inspection: $750
    Owner's title insurance (optional): $1,000
    Rebate: {amount: $750, credit: yes}
  prorations:
    county taxes: $365.04 credit
    dues: $80
value: {after-repair value: $200,000}
time: {marketing: 6 months}
loans:
- fixed amount: $162,000
  rate: 3.875%
  points: 0.25%
  amortising: 30 years
  fees:
    Application fee: $300
    Underwriting fee: $1,097
    Flood determination: $20
    Flood monitoring: $31.75
    Tax monitoring: $75
    Tax status research: $80
    Pest inspection: $120.50
    Survey: $85
    Title insurance binder: $650
    Lender's title insurance: $500
    Settlement agent: $500
    Title search: $800
`

// kinds are where the lines of each section of the form stand in the deal file.
var kinds = map[string]string{"A": "loan_fee", "B": "loan_fee", "C": "loan_fee", "E": "purchase_fee", "F": "purchase_fee", "G": "purchase_fee", "H": "purchase_fee"}

// section is what the lines of a section come to in the deal, each compared with
// the form on the way.
func (b bid) section(form closing, name string) decimal.Decimal {
	sum := dec("0")
	for label, printed := range form.BorrowerPaid[name] {
		var got decimal.Decimal
		switch {
		case label == "points, 0.25% of loan amount": // worked out by the program
			got = b.of(b.loan(), "points")
		case slices.Contains(form.Before, label):
			got = b.of(b.fee(b.Root, "before_fee", label), "amount")
		case kinds[name] == "loan_fee":
			got = b.of(b.fee(b.loan(), "loan_fee", label), "amount")
		default:
			got = b.of(b.fee(b.Root, kinds[name], label), "amount")
		}
		cents(b.T, printed, got, label)
		sum = sum.Add(got)
	}
	return sum
}

func TestClosingDisclosureCosts(t *testing.T) {
	form := published[closing](t, "closing-disclosure.json")["CD-costs"]
	t.Run(form.name(), func(t *testing.T) {
		b := read(t, buyer)
		want := form.Expected
		lines := 0
		for name := range kinds {
			cents(t, want[name], b.section(form, name), "section %s", name)
			lines += len(form.BorrowerPaid[name])
		}
		charges := len(b.Root.In("before_fee")) + len(b.Root.In("purchase_fee")) + len(b.loan().In("loan_fee"))
		require.Equal(t, lines, charges, "the form's lines, with the points and without the rebate")

		rebate := b.of(b.fee(b.Root, "purchase_fee", "Rebate"), "amount")
		before := b.line("before_cost")
		loanCosts := b.line("points").Add(b.line("loan_fees")).Add(before)
		other := b.line("closing_cost").Sub(rebate)
		cents(t, want["D"], loanCosts, "D, loan costs")
		cents(t, want["I"], other, "I, other costs")
		cents(t, want["J"], loanCosts.Add(other), "J, closing costs")
		cents(t, want["J_before_closing"], before, "J, before closing")
		cents(t, want["J_at_closing"], loanCosts.Add(other).Sub(before), "J, at closing")
	})
}

func TestClosingDisclosureCashToClose(t *testing.T) {
	forms := published[closing](t, "closing-disclosure.json")
	for _, id := range []string{"CD-summaries", "CD-calc-cash"} {
		t.Run(forms[id].name(), func(t *testing.T) {
			b := read(t, buyer)
			cents(t, forms["CD-costs"].Loan, b.line("loan_at_closing"))
			cents(t, forms[id].Expected["cash_to_close"], b.line("cash_to_close"))
		})
	}
	t.Run(forms["CD-tax-proration"].name(), func(t *testing.T) {
		b := read(t, buyer)
		cents(t, forms["CD-tax-proration"].Expected["credit"], b.line("deposits_received"))
		cents(t, forms["CD-hoa-proration"].Expected["credit"], b.line("deposits_paid"))
	})
	t.Run("already paid, computed here from the form's lines", func(t *testing.T) {
		b := read(t, buyer)
		cents(t, "10029.80", b.line("already_paid")) // credit report and earnest deposit
		cents(t, "24177.06", b.line("total_to_buy")) // and 14,147.26
	})
}

// A year's premium said as one that is paid ahead falls in the closing as well, so
// that what is to bring stays the same.
func TestClosingDisclosureWithInsurancePaidAhead(t *testing.T) {
	form := published[closing](t, "closing-disclosure.json")["CD-summaries"]
	const printed = "    Homeowner's insurance 12 mo: $1,209.96\n"
	require.Contains(t, buyer, printed)
	b := read(t, strings.Replace(buyer, printed, "", 1)+`
holding:
  insurance: {amount: $100.83/month, premium paid ahead: 12 months}
`)
	cents(t, "1209.96", b.of(b.Root.In("holding_fee")[0], "premium"))
	cents(t, form.Expected["cash_to_close"], b.line("cash_to_close"))
}

// The level payment is the annuity of the loan at a twelfth of the rate a month,
// rounded half away from zero to the cent (exactly 761.784075863476).
func TestClosingDisclosurePayment(t *testing.T) {
	form := published[closing](t, "closing-disclosure.json")["CD-pi"]
	t.Run(form.name(), func(t *testing.T) {
		b := read(t, buyer)
		cents(t, form.Expected["payment"], b.of(b.loan(), "level_payment_due"))
		for month := 1; month <= 6; month++ {
			cents(t, form.Expected["payment"], b.In(b.Model.Find(b.loan(), "paid_back"), month), "month %d", month)
		}
		// Derived: 162,000 x 3.875% / 12 = 523.125, rounded half away from zero.
		cents(t, "523.13", b.In(b.Model.Find(b.loan(), "interest_charged"), 1))
	})
}

// seller is the other side of the same form: a house bought earlier, at an
// invented price, with a loan of 100,000 without interest still owed. The credit
// and what the seller owes of taxes and gets of dues are entered as printed.
const seller = `
purchase:
  price: $120,000
  date: 2012-10-15
  prorations:
    county taxes: $365.04 credit
    dues: $80
value: {after-repair value: $180,000}
time: {marketing: 6 months}
loans:
- fixed amount: $100,000
  rate: 0%
selling:
  Transfer tax: $950
  Home warranty: $450
  Commission (2 x 5,700): $11,400
  Credit to the buyer: $2,500
`

func TestClosingDisclosureCashToSeller(t *testing.T) {
	forms := published[closing](t, "closing-disclosure.json")
	form := forms["CD-summaries"]
	t.Run(form.name(), func(t *testing.T) {
		b := read(t, seller)
		sum := dec("0")
		for label, printed := range forms["CD-costs"].SellerPaid {
			got := b.of(b.fee(b.Root, "selling_fee", label), "amount")
			cents(t, printed, got, label)
			sum = sum.Add(got)
		}
		cents(t, forms["CD-costs"].Expected["seller_paid_at_closing_total"], sum)
		at := func(name string) decimal.Decimal { return b.In(b.find(name), b.Months()) }
		cents(t, form.Expected["M"], at("sale_in"), "due to the seller")
		cents(t, form.Expected["N"], at("settled"), "due from the seller")
		cents(t, form.Expected["cash_to_seller"], at("net_cash"))
	})
}

func (b bid) find(name string) *model.Cell { return b.Model.Find(b.Root, name) }
