package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
)

// A Sum is some cells, each so many times, and an amount.
type Sum struct {
	Parts []Part
	And   decimal.Decimal
}

// A Part is a cell so many times; with others, the largest of all.
type Part struct {
	Cell  *model.Cell
	Times decimal.Decimal
	Or    []*model.Cell
}

// Of is what a sum comes to; false where a cell of it is not known.
func (s Sum) Of(value func(*model.Cell) (decimal.Decimal, bool)) (decimal.Decimal, bool) {
	out := s.And
	for _, p := range s.Parts {
		x, known := value(p.Cell)
		for _, c := range p.Or {
			other, ok := value(c)
			x, known = decimal.Max(x, other), known && ok
		}
		if !known {
			return out, false
		}
		out = out.Add(p.Times.Mul(x))
	}
	return out.Round(9), true
}

// A Beside is how an input is doubted beside others: where all of some sums are above nothing.
type Beside []Sum

// Holds reports whether an input is not doubted so, or whether that cannot be told.
func (x Beside) Holds(value func(*model.Cell) (decimal.Decimal, bool)) bool {
	return slices.ContainsFunc(x, func(s Sum) bool {
		over, known := s.Of(value)
		return !known || !over.IsPositive()
	})
}

// Beside are the ways in which an input is doubted beside others, in the file and in the workbook.
func (d *Deal) Beside(c *model.Cell) (out []Beside) {
	root := d.Model.Root
	cell := func(m *model.Member, line string, times decimal.Decimal) Part {
		return Part{Cell: d.Model.Find(m, line), Times: times}
	}
	sum := func(and decimal.Decimal, parts ...Part) Sum { return Sum{parts, and} }
	self := func(times decimal.Decimal) Part { return Part{Cell: c, Times: times} }
	over := func(times decimal.Decimal, line string, share decimal.Decimal) Beside {
		return Beside{sum(decimal.Zero, self(times), cell(root, line, share.Neg()))}
	}
	under := func(line string, share decimal.Decimal) Beside { // and some
		return Beside{over(one.Neg(), line, share.Neg())[0], sum(decimal.Zero, self(one))}
	}
	times := decimal.NewFromInt(timesAYear[c.Line.Name])
	if c.Line.Name == "fixed" {
		if most, is := mostForPaper(c.Member); is {
			return []Beside{append(over(one, "price", dearOfPrice), sum(most.Neg(), self(one)))}
		}
	}
	switch {
	case c.Line.ID() == "after_repair_value":
		out = append(out, over(one, "price", TimesThePrice))
		if d.hasSales() {
			out = append(append(out, d.aboveBest()), d.outsideSales()...)
		}
		return out
	case c.Line.ID() == "value_before_work" && d.hasSales():
		return append([]Beside{d.aboveBest()}, d.outsideSales()...)
	case c.Line.ID() == "comp.concessions":
		return []Beside{{sum(decimal.Zero, self(one), cell(c.Member, "sold_price", highConcessions.Neg()))}}
	case c.Line.ID() == "as_is_value":
		return []Beside{over(one, "price", two), under("all_in_price", half)}
	case c.Line.ID() == "lender_value":
		return []Beside{under("after_repair_value", half)}
	case c.Line.ID() == "low_value":
		return []Beside{under("after_repair_value", lowOfValue), over(one, "after_repair_value", one)}
	case c.Line.ID() == "expected_discount":
		return d.discountBeside(c)
	case c.Line.ID() == "check.if_bad":
		return d.asideBeside(c)
	case c.Line.ID() == "sale_price": // which the workbook alone takes
		return []Beside{under("after_repair_value", half), over(one, "after_repair_value", highSale)}
	case c.Line.ID() == "fitting.fitting_length":
		if c.Member.Parent.Kind != "inside" {
			return nil
		}
		return []Beside{{sum(decimal.Zero, self(one), cell(c.Member.Parent, "perimeter", one.Neg())), sum(decimal.Zero, cell(c.Member.Parent, "perimeter", one))}}
	case sideOfRoom(c) && d.reader != nil:
		return d.besideFloor(c)
	case c.Line.ID() == "seller_credit":
		return []Beside{over(one, "price", highCredit)}
	case c.Line.ID() == "outside.gutters":
		return []Beside{{sum(decimal.Zero, self(one), cell(c.Member, "eaves", two.Neg())), sum(decimal.Zero, cell(c.Member, "eaves", one))}}
	case c.Line.ID() == "assignment_fee":
		return []Beside{over(one, "price", highAssignment)}
	case c.Line.Name == "fixed" && c.Member.Kind == "selling_fee":
		if high, is := highOfSale(c.Member); is {
			return []Beside{append(over(one, "after_repair_value", high), sum(largeCharge.Neg(), self(one)))}
		}
		return nil
	case c.Line.Name == "fixed" && c.Member.Kind == "purchase_fee":
		return []Beside{append(over(one, "price", highOfPurchase(c.Member)), sum(largeCharge.Neg(), self(one)))}
	case c.Line.Name == "fixed" && c.Member.Kind == "loan_fee" && !moreOfLoan().MatchString(c.Member.Label):
		loan := c.Member.Parent
		return []Beside{{sum(decimal.Zero, self(one), cell(loan, "commitment", highInLoan.Neg())), sum(largeCharge.Neg(), self(one)), sum(decimal.Zero, cell(loan, "commitment", one))}}
	case c.Line.Name == "fixed" && plans(c.Member):
		return []Beside{append(over(one, "trade_cost", highPlans), sum(largePlans.Neg(), self(one)), sum(decimal.Zero, cell(root, "works_at_trade_price", one)))}
	case c.Line.Name == "fixed" && permits(c.Member):
		return []Beside{append(over(one, "trade_cost", highPermits), sum(largePermits.Neg(), self(one)), sum(decimal.Zero, cell(root, "works_at_trade_price", one)))}
	case c.Line.Name == "unit_price" && slices.Contains([]string{"fee", "bracket"}, c.Line.Set):
		most, bounded := highShare(feeOf(c.Member))
		if !bounded {
			return nil
		}
		return []Beside{{sum(decimal.Zero, self(one), cell(c.Member, "unit_size", most.Neg()))}}
	case c.Line.ID() == "renovation":
		if out = append(out, d.crowdedWork(c)); d.reader != nil {
			out = append(out, d.reader.longWork(c)...)
		}
		return out
	case c.Line.ID() == "loan.least_draw":
		return d.leastDrawBeside(c)
	case c.Line.ID() == "loan.term":
		return d.termBeside(c, cell)
	case c.Line.ID() == "item.quote":
		return d.quoteBeside(c)
	case c.Member.Kind != "holding_fee" || times.IsZero():
	case taxes(c.Member) || insures(c.Member):
		most, _ := mostOfYear(c.Member, c.Line.Name)
		out = append(out, append(over(times, "price", most), sum(usualBill.Neg(), self(times))))
		if c.Line.Name == "a_year" && mainTax(c.Member) {
			low := under("price", lowTax)
			for _, m := range otherTaxes(c.Member) { // districts send bills of their own
				low[0].Parts = append(low[0].Parts, cell(m, "monthly_rate", decimal.NewFromInt(-12)))
			}
			out = append(out, low)
		}
		if c.Line.Name == "a_year" && coversHouse(c.Member) {
			out = append(out, under("price", lowOfCover))
		}
	case supplies(c.Member):
		out = append(out, append(over(times, "price", highSupplies), sum(largeSupplies.Neg(), self(times))))
	}
	return out
}

// sideOfRoom reports whether an input is a side of the floor of a room, or of a wall of a walk around it.
func sideOfRoom(c *model.Cell) bool {
	return slices.Contains([]string{"section.length", "section.width", "leg.walk_east", "leg.walk_north"}, c.Line.ID()) && c.Member.Parent.Kind == "inside"
}

// termBeside is how a term with extensions is doubted: it ends before the work does, and no level
// payments have cleared the loan by then.
func (d *Deal) termBeside(c *model.Cell, cell func(*model.Member, string, decimal.Decimal) Part) []Beside {
	term, less := Part{Cell: c, Times: one}, Part{Cell: c, Times: one.Neg()}
	early := func(uncleared Sum) Beside {
		return Beside{{[]Part{cell(d.Model.Root, "works_end", one), less}, decimal.Zero}, {[]Part{term}, decimal.Zero}, {[]Part{cell(c.Member, "extension_months", one)}, decimal.Zero}, uncleared}
	}
	return []Beside{
		early(Sum{[]Part{cell(c.Member, "amortising_months", one.Neg())}, one}), // of interest only
		early(Sum{[]Part{cell(c.Member, "amortising_months", one), less}, decimal.Zero}),
	}
}

// DoubtedWord is the word of an input of choice that the file does not say and that is doubted where
// it stands in the workbook, as no work comes of it there; "" without one.
func (d *Deal) DoubtedWord(c *model.Cell) string {
	if c.Line.ID() != "check.seen" || d.reader == nil || c.Given == nil || c.Given.Choice == seenBad || d.reader.mends(checkOf(c.Member)) {
		return ""
	}
	return seenBad
}

// seenBad is what the file says of a part of the house that needs a mend.
const seenBad = "bad"

// checkOf is what the price book says of a part of the house, or its name alone.
func checkOf(m *model.Member) *pricebook.Check {
	for _, c := range pricebook.Checks() {
		if plainKey(c.Name) == plainKey(m.Label) {
			return c
		}
	}
	return &pricebook.Check{Name: m.Label}
}
