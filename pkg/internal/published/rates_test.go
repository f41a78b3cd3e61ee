package published

import (
	"fmt"
	"strconv"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/solve"
)

// apr is the annual percentage rate of the only loan.
func (b bid) apr() decimal.Decimal {
	r := solve.APR(b.Model, b.Values, b.loan())
	require.True(b.T, r.Found, r.Why)
	require.Equal(b.T, 1, r.Several)
	return r.Value
}

// drawnLoan lends at the closing and a month after the work, interest only. Its
// amounts are chosen so that the interest of every month is in whole cents.
const drawnLoan = `
purchase: {price: $240,000}
value: {after-repair value: $420,000}
time: {renovation: 4 months, marketing: 3 1/2 months}
renovation: {contingency: 0%, lines: [{trade: all, work: all, amount: $64000}]}
loans:
- fixed amount: $192,000
  renovation share: 100%
  rate: 11.25%
  interest on: balance
`

// 12 CFR 1026 App. J (b)(8): without a charge the rate is the loan's own, because
// interest of i on the balance is what each period asks for, and f i of a part.
// Simple interest that waits for the payoff is not among these: over more than a
// month it is less than the rate compounded monthly, so its rate comes out lower.
func TestAPRWithoutChargesIsTheRate(t *testing.T) {
	const exact, toTheCent = "0.000000001", "0.0000005" // interest on interest is not in whole cents
	for _, c := range []struct{ about, path, value, within string }{
		{"a part of a month at the end", "time.marketing", "3 1/2 months", exact},
		{"whole months", "time.marketing", "3 months", exact},
		{"a day over", "time.marketing", "3.04 months", exact},
		{"under a month", "time", "{marketing: 1/2 month}", exact},
		{"draws at the end of the same month", "loans.1.draws", "{lag: 0}", exact},
		{"draws with retainage", "loans.1.draws", "{lag: 2 months, retainage: 10%}", exact},
		{"draws at the sale itself", "loans.1.draws", "{lag: 4 months}", exact},
		{"interest from a reserve", "loans.1.interest paid", "reserve", toTheCent},
		{"interest joining the balance", "loans.1.interest paid", "added monthly", toTheCent},
	} {
		t.Run(c.about, func(t *testing.T) {
			sets := []deal.Set{set(c.path, c.value)}
			if c.value == "reserve" {
				sets = append(sets, set("loans.1.reserve", "$8000"))
			}
			b := read(t, drawnLoan, sets...)
			near(t, dec("0.1125"), b.apr(), dec(c.within))
		})
	}
}

// levelLoan is paid off by level payments in part, the rest at the sale. Interest
// and payment are in cents, so the rate comes out to the size of a cent.
const levelLoan = `
purchase: {price: $240,000}
value: {after-repair value: $420,000}
time: {marketing: 18 months}
loans:
- fixed amount: $192,000
  rate: 8.75%
  amortising: 30 years
`

func TestAPROfLevelPaymentsIsTheRate(t *testing.T) {
	for _, hold := range []string{"18 months", "7 1/4 months", "1 month", "10 years"} {
		t.Run(hold, func(t *testing.T) {
			b := read(t, levelLoan, set("time.marketing", hold))
			require.True(t, b.of(b.loan(), "payoff").IsPositive())
			near(t, dec("0.0875"), b.apr(), dec("0.0000005")) // half a cent a month on 192,000
		})
	}
}

// A part of a month at the end pays interest only: after seven and a quarter months
// as much is paid off as after seven, and less after eight.
func TestAPartMonthPaysNoPrincipal(t *testing.T) {
	payoff := func(hold string) decimal.Decimal {
		b := read(t, levelLoan, set("time.marketing", hold))
		return b.of(b.loan(), "payoff")
	}
	require.True(t, payoff("7 1/4 months").Equal(payoff("7 months")))
	require.True(t, payoff("8 months").LessThan(payoff("7 months")))
}

// Points and fees raise the rate, and the rate found discounts what is paid to
// what is lent (12 CFR 1026 App. J (b)(8)).
func TestChargesRaiseTheAPR(t *testing.T) {
	for name, file := range map[string]string{"interest only": drawnLoan, "level payments": levelLoan} {
		t.Run(name, func(t *testing.T) {
			last := read(t, file).apr()
			for _, s := range []deal.Set{
				set("loans.1.points", "1 point"), set("loans.1.points", "2 points"), set("loans.1.points", "3 points"),
			} {
				b := read(t, file, s)
				require.True(t, b.apr().GreaterThan(last), s.Value)
				last = b.apr()
				b.balances()
			}
			b := read(t, file, set("loans.1.points", "3 points"), set("loans.1.fees", "{documents: $1200}"))
			require.True(t, b.apr().GreaterThan(last))
			b.balances()
			same := read(t, file, set("loans.1.points", "3 points"), set("loans.1.fees", "{appraisal: {amount: $1200, finance charge: no}}"))
			require.True(t, same.apr().Equal(last), "a charge that is no finance charge leaves it as it is")
		})
	}
	t.Run("2 points on a year without draws, by hand", func(t *testing.T) {
		b := read(t, `
purchase: {price: $150,000}
value: {after-repair value: $250,000}
time: {marketing: 1 month}
loans: [{fixed amount: $100000, rate: 12%, points: 2 points}]
`)
		// 98,000 lent, 101,000 paid a month later: 3,000 / 98,000 x 12.
		near(t, dec("36000").DivRound(dec("98000"), 20), b.apr(), dec("0.000000000001"))
	})
}

// balances discounts the loan's flows at the rate found, in whole months and the
// part of the last one, and compares what is lent with what is paid.
func (b bid) balances() {
	i := b.apr().DivRound(dec("12"), 40)
	hold := b.line("hold_months")
	sum, factor := dec("0"), dec("1")
	one := dec("1")
	for m := range b.Months() + 1 {
		lent, paid := b.In(b.Model.Find(b.loan(), "lent"), m), b.In(b.Model.Find(b.loan(), "paid_back"), m)
		if m == b.Months() {
			paid = paid.Add(b.of(b.loan(), "paid_back_at_sale"))
			if part := hold.Sub(hold.Floor()); part.IsPositive() {
				factor = factor.Mul(one.Add(i)).DivRound(one.Add(part.Mul(i)), 40)
			}
		}
		sum = sum.Add(lent.Sub(paid).Mul(factor))
		factor = factor.DivRound(one.Add(i), 40)
	}
	near(b.T, dec("0"), sum, dec("0.000001"))
}

// stream is so many equal flows, every so many unit periods from the first on.
type stream struct {
	Amount, Part    string
	N, Whole, Every int
}

type rated struct {
	origin
	Year      string `json:"periods_per_year"`
	Advances  []stream
	Payments  []stream
	Percent   string `json:"apr_percent"`
	Tolerance string
}

// longest is the longest hold of a deal, in months.
const longest = 120

// level reports whether the case is one advance and level monthly payments from
// the first month on, over as long as a deal can last.
func (c rated) level() bool {
	if c.Year != "12" || len(c.Advances) != 1 || len(c.Payments) != 1 {
		return false
	}
	a, p := c.Advances[0], c.Payments[0]
	return a.N == 1 && a.Whole == 0 && p.N > 1 && p.N <= longest && p.Whole == 1 && p.Every == 1 && dec(p.Part).IsZero()
}

// The published payments are said as a note for their sum without interest, paid
// off level, of which the lender keeps all beyond the amount financed as a prepaid
// finance charge. The other cases of the file have odd days, 360 months, payments
// that no loan of a deal has, or another unit period than the month. A single
// payment within a year has the term for its unit period; it stands apart below.
func TestPublishedAPR(t *testing.T) {
	tried := map[string]bool{}
	for id, c := range published[rated](t, "apr.json") {
		if !c.level() {
			continue
		}
		tried[id] = true
		t.Run(c.name(), func(t *testing.T) {
			p := c.Payments[0]
			note := dec(p.Amount).Mul(decimal.NewFromInt(int64(p.N)))
			charge := note.Sub(dec(c.Advances[0].Amount))
			b := read(t, fmt.Sprintf(`
purchase: {price: $%s}
value: {after-repair value: $10m}
time: {marketing: %d months}
loans:
- fixed amount: $%s
  rate: 0%%
  amortising: %d months
  fees: {prepaid finance charge: $%s}
`, note, p.N, note, p.N, charge))
			cents(t, p.Amount, b.of(b.loan(), "level_payment_due"))
			cents(t, "0", b.of(b.loan(), "payoff"))
			near(t, dec(c.Percent), b.apr().Shift(2), dec(c.Tolerance))
		})
	}
	require.Equal(t, map[string]bool{"J-b9": true, "J-c1-i": true}, tried)
}

// The results were computed independently, in exact rationals.
// 12 CFR 1026 App. J (c)(5)(i): 1,000 lent, 1,080 paid back after 255 days, 11.45%.
// App. D part I.A (figures from memory): 24,000 lent, 26,093.75 after 5 months,
// 20.94%. (c)(5)(iv) (from memory): 1,000 lent, 1,240 paid back after two years, 11.36%.
// The charge is an exit fee here, so that all is paid at once.
func TestASinglePaymentIsCompoundedByTheYear(t *testing.T) {
	cases := published[rated](t, "apr.json")
	for id, c := range map[string]struct{ lent, charge, hold string }{
		"J-c5-i":  {"$1000", "$80", "255 days"},
		"D-I-A":   {"$24000", "$2093.75", "5 months"},
		"J-c5-iv": {"$1000", "$240", "24 months"},
	} {
		t.Run(cases[id].name(), func(t *testing.T) {
			b := read(t, fmt.Sprintf("purchase: {price: $30000}\nvalue: {after-repair value: $90000}\ntime: {marketing: %s}\n"+
				"loans: [{name: note, fixed amount: %s, exit fee: %s}]\n", c.hold, c.lent, c.charge))
			near(t, dec(cases[id].Percent), b.apr().Mul(dec("100")), dec("0.005"))
		})
	}
}

// Two loans that are paid back together cost what one of both would.
func TestTwoLoansAtOnceCostWhatOneDoes(t *testing.T) {
	const deal = "purchase: {price: $200k}\nvalue: {after-repair value: $330k}\ntime: {marketing: 11 months}\nloans:\n"
	const terms = "rate: 12%, points: 3 points, interest paid: at payoff}\n"
	one := read(t, deal+"  - {name: one, price share: 80%, "+terms)
	two := read(t, deal+"  - {name: first, price share: 40%, "+terms+"  - {name: second, price share: 40%, "+terms)
	both := solve.APR(two.Model, two.Values, two.Model.Root.In("loan")...)
	require.True(t, one.apr().Equal(both.Value), "%s and %s", one.apr(), both.Value)
}

func TestWorkedDealsThroughTheFile(t *testing.T) {
	all, err := modeltest.ReadWorked(testdata + "worked-deals.json")
	require.NoError(t, err)
	files := deals(t)
	for i, name := range []string{"drawn", "capped", "commitment", "reserve", "cash"} {
		t.Run(name, func(t *testing.T) {
			a := answered(t, files[name+".yaml"])
			require.Equal(t, 1, a.IRR.Several)
			compared := 0
			for _, f := range answer.Searched {
				want, ok := all[i].Results[f.Name]
				if !ok {
					continue
				}
				compared++
				got := f.Value(a)
				if want == nil {
					require.Nil(t, got, f.Name)
					continue
				}
				require.NotNil(t, got, f.Name)
				printed := strconv.FormatFloat(want.(float64), 'f', -1, 64)
				require.True(t, dec(printed).Equal(got.(decimal.Decimal).Round(9)), "%s: got %s, want %s", f.Name, got, printed)
			}
			require.Equal(t, 5, compared, "irr, max_offer and three break-evens")
		})
	}
}
