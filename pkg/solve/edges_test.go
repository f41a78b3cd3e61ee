package solve

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

// edges are the numbers from low to high near which a deal's charges and loans can
// jump or bend while the lines named vary: the edges of brackets and tables, the
// next steps of units, and where a cap begins to bind.
func edges(d *modeltest.Draw, low, high int64, lines ...string) []int64 {
	e := edging{deal: d.Deal, low: low, high: high}
	varies := map[string]bool{}
	for _, l := range lines {
		varies[l] = true
	}
	visit(d.Deal, func(x *model.Member) {
		switch {
		case x.Set == "fee" && varies[x.Given.Of("base").Refers]:
			e.charge(x)
		case x.Set == "loan" && varies["price"]:
			e.loan(x)
		}
	})
	return e.all
}

func visit(x *model.Member, do func(*model.Member)) {
	do(x)
	for _, c := range x.Children {
		visit(c, do)
	}
}

type edging struct {
	deal      *model.Member
	low, high int64
	all       []int64
}

// near adds the whole dollars around a base, and around the price at which the
// all-in price comes to it.
func (e *edging) near(base decimal.Decimal) {
	given := func(line string) decimal.Decimal { return e.deal.Given.Of(line).Number }
	rest := base.Sub(given("assignment_fee"))
	for _, x := range []decimal.Decimal{
		base, rest, rest.Sub(given("premium_least")), rest.DivRound(given("premium_share").Add(decimal.NewFromInt(1)), 9),
	} {
		for n := x.IntPart() - 2; n <= x.IntPart()+2; n++ {
			if n >= e.low && n <= e.high {
				e.all = append(e.all, n)
			}
		}
	}
}

// charge adds the edges of a charge by brackets, by tables or by the unit.
func (e *edging) charge(f *model.Member) {
	visit(f, func(x *model.Member) {
		for _, line := range []string{"lower", "upper", "base_over", "base_up_to"} {
			if v, given := x.Given.Look(line); given {
				e.near(v.Number)
			}
		}
		size := x.Given.Of("unit_size").Number
		if !size.IsPositive() {
			return
		}
		step := decimal.NewFromInt(e.low).DivRound(size, 9).Ceil()
		for i := range int64(5) {
			e.near(step.Add(decimal.NewFromInt(i)).Mul(size))
		}
	})
}

// loan adds the prices at which the values that cap a loan begin to do so, as far
// as a single loan tells.
func (e *edging) loan(l *model.Member) {
	given := func(line string) decimal.Decimal { return l.Given.Of(line).Number }
	e.near(e.deal.Given.Of("as_is_value").Number.Add(e.deal.Given.Of("seller_credit").Number))
	value := e.deal.Given.Of("lender_value")
	if value.Text == "" {
		value = e.deal.Given.Of("after_repair_value")
	}
	if share := given("price_share"); share.IsPositive() && given("value_cap").IsPositive() {
		e.near(value.Number.Mul(given("value_cap")).DivRound(share, 2))
	}
}
