package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/model"
)

// cashColumns are the widths of the columns of money; the drawing of the cumulative line
// takes what they leave.
var cashColumns = [...]int{13, 13, 14, 14}

// leastBar is the narrowest drawing that says anything.
const leastBar = 5

// A cashRow is a month: out, in, so far and owed, and the drawing.
type cashRow struct {
	mark    string
	figures [len(cashColumns)]string
	soFar   decimal.Decimal
}

// Cash writes the months: out, in, cumulative, the balance of each loan, with
// the low point marked and the cumulative line drawn.
func Cash(w io.Writer, a *answer.Answer, s Style) error {
	p := newPage(w, s)
	partner := a.Partnered()
	p.title(a.Deal.Name + ": your cash by month")
	need := a.Line("cash_needed")
	since, before := "", a.BeforeClosing(money)
	if before != "" {
		since, before = " from the closing on", " "+before
	}
	p.text("", fmt.Sprintf("The most of your money tied up%s is %s, in month %s (cash needed); the sale closes in month %s.%s",
		since, money(need), a.Line("cash_needed_month"), a.Line("sale_month"), before))
	p.line("")
	byMonth(p, a)
	p.line("")
	note := "None of your money is tied up from the closing on."
	switch {
	case need.IsPositive() && a.Line("cash_needed_month").IsZero():
		note = "< marks the month of the low point: " + money(need) + " is out once the closing is done."
	case need.IsPositive():
		note = "< marks the month of the low point: " + money(need) + " is out before that month's money comes in."
	}
	switch short := a.Month("short_at_sale", a.Values.Months()); {
	case short.IsPositive():
		note += " The sale does not cover what it settles: " + money(short) + " must be brought to it, which counts in the month of the sale; the rest is paid out of the sale and does not."
	case a.Line("cash_needed_month").Equal(a.Line("sale_month")):
		note += " What the sale settles is paid out of the sale and does not count."
	}
	note += " Month 0 is the purchase closing."
	if slices.ContainsFunc(a.Loans(), func(l *model.Member) bool { return l.Given.Of("interest_paid").Choice == "at payoff" }) {
		note += " Interest that waits for the payoff is not in what is owed."
	}
	p.text("", note+" Cents: --json.")
	if partner {
		p.text("", "Out and in are the whole deal's; so far is yours alone, after what the partner pays in and takes out.")
	}
	for _, l := range a.Loans() {
		if kept := a.Of(l, "retained"); kept.IsPositive() {
			p.text("", keptBack(l.Label, kept, a.Of(l, "release_month"), a.Line("sale_month")))
		}
	}
	loans(p, a)
	return p.flush()
}

// byMonth writes the table of the months, its columns as wide as the figures ask for.
func byMonth(p *page, a *answer.Answer) {
	total, wide := "owner_cumulative", cashColumns
	var rows []cashRow
	for m := range a.Values.Months() + 1 {
		r := cashRow{mark: " ", soFar: a.Month(total, m)}
		if a.Line("cash_needed").IsPositive() && decimal.NewFromInt(int64(m)).Equal(a.Line("cash_needed_month")) {
			r.mark = "<"
		}
		for i, x := range []decimal.Decimal{a.Month("money_out", m), a.Month("money_in", m), r.soFar, owed(a, m)} {
			r.figures[i] = whole(x)
			wide[i] = max(wide[i], len(r.figures[i])+1)
		}
		rows = append(rows, r)
	}
	write := func(lead string, figures [len(cashColumns)]string) string {
		for i, f := range figures {
			lead += right(f, wide[i])
		}
		return lead
	}
	room := Width - 2 - len(write("month", [len(cashColumns)]string{}))
	draws := room >= leastBar
	head := write("month", [...]string{"out", "in", "so far", "loans owed"})
	if draws {
		head += cut("  0 is |", room+2)
	}
	p.line("%s", p.paint(dim, head))
	lowest, highest := bounds(a, total)
	for m, r := range rows {
		line := write(fmt.Sprintf("%4d%s", m, r.mark), r.figures)
		if draws {
			line += "  " + bar(r.soFar, lowest, highest, room)
		}
		p.line("%s", line)
	}
}

// keptBack says what a lender keeps of the draws until the work is finished, and when it
// pays it.
func keptBack(loan string, kept, month, sale decimal.Decimal) string {
	s := "Of the draws " + loan + " keeps back " + money(kept) + " until the work is finished (retainage)"
	if month.GreaterThan(sale) {
		return s + "; month " + month.String() + ", when it would pay that, comes after the sale, so it never does."
	}
	return s + " and pays it in month " + month.String() + "."
}

// loans writes the balance of each loan by month, where there are several.
func loans(p *page, a *answer.Answer) {
	if len(a.Loans()) < 2 {
		return
	}
	p.heading("Owed at the end of each month, by loan")
	for some := range slices.Chunk(a.Loans(), (Width-len("month"))/loanWidth) {
		if some[0] != a.Loans()[0] {
			p.line("")
		}
		head := "month"
		for _, l := range some {
			head += right(cut(l.Label, loanWidth-2), loanWidth)
		}
		p.line("%s", p.paint(dim, head))
		for m := range a.Values.Months() + 1 {
			row := fmt.Sprintf("%4d ", m)
			for _, l := range some {
				row += right(whole(a.Values.In(a.Model.Find(l, "balance"), m)), loanWidth)
			}
			p.line("%s", row)
		}
	}
}

// loanWidth is the column of a loan.
const loanWidth = 16

func owed(a *answer.Answer, month int) decimal.Decimal {
	var sum decimal.Decimal
	for _, l := range a.Loans() {
		sum = sum.Add(a.Values.In(a.Model.Find(l, "balance"), month))
	}
	return sum
}

func whole(x decimal.Decimal) string { return dollars(x) }

func bounds(a *answer.Answer, line string) (lowest, highest decimal.Decimal) {
	for m := range a.Values.Months() + 1 {
		lowest = decimal.Min(lowest, a.Month(line, m))
		highest = decimal.Max(highest, a.Month(line, m))
	}
	return lowest, highest
}

// bar draws a value between the lowest and the highest, with a stroke at zero.
func bar(x, lowest, highest decimal.Decimal, width int) string {
	size := highest.Sub(lowest)
	if size.IsZero() {
		return "|"
	}
	at := func(v decimal.Decimal) int {
		return int(v.Sub(lowest).Mul(decimal.NewFromInt(int64(width-1))).DivRound(size, 0).IntPart())
	}
	zero, here := at(decimal.Decimal{}), at(x)
	line := []rune(strings.Repeat(" ", width))
	for i := min(zero, here); i <= max(zero, here); i++ {
		line[i] = '#'
	}
	line[zero] = '|'
	return strings.TrimRight(string(line), " ")
}
