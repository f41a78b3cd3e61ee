package modeltest

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// A feePlace is where a charge stands: the usual size of its shares and sums, the
// lines that it may be a share of, and whether it can run over time.
type feePlace struct {
	share, sum float64
	bases      []string
	timed      bool
}

// places follow the bases that a deal file may name for each kind of charge.
var places = map[string]feePlace{
	"before_fee":   {0.004, 900, []string{"price", "all_in_price", "sale_price", "after_repair_value", "base_cost", "budget"}, false},
	"purchase_fee": {0.02, 4000, []string{"price", "all_in_price", "sale_price", "after_repair_value", "base_cost", "budget"}, false},
	"general_fee":  {0.15, 3000, []string{"works_cost", "works_at_trade_price"}, true},
	"loan_fee":     {0.015, 2500, []string{"commitment", "loan_at_closing", "holdback", "price", "sale_price", "after_repair_value", "base_cost", "budget"}, false},
	"holding_fee":  {0.01, 2500, []string{"price", "all_in_price", "sale_price", "after_repair_value", "base_cost", "budget"}, true},
	"selling_fee":  {0.06, 5000, []string{"sale_price", "price", "all_in_price", "after_repair_value", "base_cost", "budget"}, false},
}

// fees draws the charges of one kind.
func (d *drawer) fees(m *model.Member, kind string) {
	if d.bare && kind != "purchase_fee" && kind != "selling_fee" {
		return
	}
	for i := range d.upTo(2) {
		d.use(strings.ReplaceAll(kind, "_", " "))
		d.fee(m.Add("fee", kind, fmt.Sprintf("%s %d", kind, i+1)), places[kind])
	}
}

// fee draws one charge in one of its forms.
func (d *drawer) fee(f *model.Member, p feePlace) {
	if f.Kind == "selling_fee" {
		f.GiveNumber("at_sale", one)
	}
	if f.Kind == "loan_fee" {
		d.giveFlag(6, f, "finance_charge")
	}
	form := d.upTo(9)
	switch {
	case form == 0 || form == 1 && !p.timed:
		f.GiveNumber("fixed", d.money(0, p.sum))
	case form <= 2 && p.timed:
		d.byTime(f, p)
		if f.Given.Of("paid_ahead").Text != "" {
			return
		}
	case form <= 4:
		d.base(f, p)
		f.GiveNumber("share", d.share(0, p.share))
	case form == 5:
		d.base(f, p)
		f.GiveNumber("unit_size", pick(d, dec(500), dec(100), dec(1000), dec(0.5), d.money(1, 999)))
		f.GiveNumber("unit_price", f.Given.Of("unit_size").Number.Mul(d.share(0, p.share)).Round(2))
	default:
		d.byTable(f, p, form)
	}
	d.ends(f, p)
}

// ends draws the least and the greatest charge, and whether it is money back.
func (d *drawer) ends(f *model.Member, p feePlace) {
	least := d.giveMoney(4, f, "least", 0, p.sum/2)
	if d.chance(4) {
		f.GiveNumber("most", decimal.Max(dec(0.01), f.Given.Of("least").Number).Add(d.money(0, p.sum)))
		if least {
			d.use("least and most")
		}
	}
	if d.steady {
		return
	}
	if d.giveFlag(3, f, "credit") && f.Given.Of("share").Number.IsPositive() {
		d.use("credit by share")
	}
}

func (d *drawer) byTime(f *model.Member, p feePlace) {
	switch d.upTo(2) {
	case 0:
		f.GiveNumber("a_month", d.money(0, p.sum/6))
	case 1:
		f.GiveNumber("a_quarter", d.money(0, p.sum/2))
	default:
		f.GiveNumber("a_year", d.money(0, p.sum*2))
	}
	if f.Kind == "holding_fee" && d.chance(6) {
		d.paidAhead(f)
	} else if d.chance(11) {
		choose(f, "during", pick(d, "hold", "lead-in", "renovation", "marketing", "escrow"))
	}
}

// paidAhead draws a bill, of which nothing is kept, or an insurance premium.
func (d *drawer) paidAhead(f *model.Member) {
	ahead := pick(d, dec(12), dec(6), dec(1), dec(3), dec(2.5), d.text(fmt.Sprintf("%d weeks", 5+d.upTo(15))))
	f.GiveNumber("paid_ahead", ahead)
	if d.chance(9) {
		d.use("bill paid ahead")
		f.GiveNumber("kept_least", decimal.Zero)
		return
	}
	d.use("premium paid ahead")
	d.giveShare(8, f, "kept_least", 0, 1)
}

// base draws the line that the charge is a share of and returns about what it comes to.
func (d *drawer) base(f *model.Member, p feePlace) decimal.Decimal {
	line := pick(d, p.bases...)
	f.Give("base", model.Value{Refers: line, Text: line})
	return d.refs[line]
}

// byTable draws brackets, slabs, or tables chosen by the base or by the day.
func (d *drawer) byTable(f *model.Member, p feePlace, form int) {
	ref := d.base(f, p)
	if ref.LessThan(decimal.NewFromInt(1000)) {
		ref = decimal.NewFromInt(1000)
	}
	switch {
	case form <= 7 || d.steady:
		d.rates(f.Add("table", "", "rates"), p, ref, form == 7)
	case form == 8:
		d.use("table by base")
		edge, in := d.edge(ref), yesNo(d.chance(8))
		for i, line := range []string{"base_up_to", "base_over"} {
			t := f.Add("table", "", fmt.Sprintf("table %d", i+1))
			t.GiveNumber(line, edge)
			t.GiveNumber("base_edge_in", in)
			d.rates(t, p, ref, d.chance(8))
		}
	default:
		d.use("table by day")
		day := decimal.NewFromInt(int64(d.upTo(600) - 30))
		for i, line := range []string{"until_day", "from_day"} {
			t := f.Add("table", "", fmt.Sprintf("table %d", i+1))
			t.GiveNumber(line, day)
			d.rates(t, p, ref, d.chance(8))
		}
	}
}

// edge draws an edge near a base, sometimes right at it.
func (d *drawer) edge(ref decimal.Decimal) decimal.Decimal {
	if d.chance(4) {
		d.use("base at an edge")
		return ref
	}
	return ref.Mul(d.share(0.4, 1.6)).Round(int32(pick(d, -3, 0))).Add(one)
}

// rates draws one to four brackets in order, each going on where the last ended.
func (d *drawer) rates(t *model.Member, p feePlace, ref decimal.Decimal, slab bool) {
	t.GiveNumber("slab", yesNo(slab))
	d.use(map[bool]string{true: "slabs", false: "marginal brackets"}[slab])
	d.giveFlag(8, t, "edge_in")
	if d.chance(4) {
		t.GiveNumber("edge_in", decimal.Zero)
	}
	n, lower, rate := 1+d.upTo(3), decimal.Zero, decimal.Zero
	for i := range n {
		b := t.Add("bracket", "", fmt.Sprintf("bracket %d", i+1))
		if i > 0 {
			b.GiveNumber("lower", lower)
		}
		switch upper := d.edge(ref); {
		case i < n-1 && upper.GreaterThan(lower):
			b.GiveNumber("upper", upper)
			lower = upper
		case i < n-1 || !d.steady && d.chance(3):
			lower = lower.Add(d.edge(ref).Div(decimal.NewFromInt(3)).Round(0)).Add(one)
			b.GiveNumber("upper", lower)
			if i == n-1 {
				d.use("closed end")
			}
		default:
			d.use("open end")
		}
		rate = d.rate(b, p, slab, rate)
	}
}

// rate draws what a bracket charges. In a steady deal rates only rise.
func (d *drawer) rate(b *model.Member, p feePlace, slab bool, before decimal.Decimal) decimal.Decimal {
	form := d.upTo(5)
	switch {
	case d.steady && slab:
		before = decimal.Max(before, d.share(0, p.share))
		b.GiveNumber("rate", before)
	case form == 4:
		d.use("rate per unit")
		b.GiveNumber("unit_size", pick(d, dec(500), dec(100), dec(1000), dec(250.5)))
		b.GiveNumber("unit_price", b.Given.Of("unit_size").Number.Mul(d.share(0, p.share)).Round(2))
	case form == 5 && slab:
		d.use("fixed slab")
		b.GiveNumber("fixed", d.money(0, p.sum))
	default:
		b.GiveNumber("rate", d.share(0, p.share))
	}
	return before
}
