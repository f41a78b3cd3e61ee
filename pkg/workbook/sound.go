package workbook

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
)

// What is typed over in a sheet may be what the program would refuse in a file. These checks
// are conditions that hold for every deal that it reads, in cells of the workbook.

// measuresHold is the condition that no measure of a room, and no amount of work, is below
// nothing, as where openings come to more than their wall; "" without any.
func (b *book) measuresHold() string {
	parts := b.ranges(func(c *model.Cell) bool {
		return b.places[c.Index].grid != b.inputs && measures(c) && !b.answer.Values.Of(c).IsNegative()
	})
	return b.inCells("whether no measure or amount of work is below nothing", parts, func(some []string) string { return "ROUND(" + nested("MIN(", some) + ",9)>=0" })
}

// measures reports whether a cell is a measure of a room or how much there is of a piece of
// work.
func measures(c *model.Cell) bool {
	switch c.Member.Set {
	case "room", "section", "opening", "plane":
		return !c.Line.Monthly && slices.Contains([]string{"ft", "sqft", "each", "count"}, c.Line.Unit)
	case "item":
		return c.Line.Name == "quantity"
	}
	return false
}

// allHold is the condition that all of some hold; "" without any.
func allHold(some []string) string {
	if len(some) == 0 {
		return ""
	}
	return nested("AND(", some)
}

// withinPrice is the condition that the deposit and the seller's credit are within the price.
func (b *book) withinPrice() string {
	var parts []string
	for _, line := range []string{"earnest_deposit", "seller_credit"} {
		if c := b.model.Find(b.model.Root, line); b.places[c.Index].grid != nil {
			parts = append(parts, "ROUND("+b.ref("price", 0)+"-"+b.ref(line, 0)+",9)>=0")
		}
	}
	return allHold(parts)
}

// soldHold is the condition that adjustments leave something of the price of every sold house; "" without
// any.
func (b *book) soldHold() string {
	parts := b.ranges(func(c *model.Cell) bool {
		return c.Line.ID() == "comp.adjusted_price" && b.places[c.Index].grid != nil && b.answer.Values.Of(c).IsPositive()
	})
	return b.inCells("whether every sold house is worth something as adjusted", parts, func(some []string) string { return "ROUND(" + nested("MIN(", some) + ",9)>0" })
}

// leastOf is the least that a file takes of the price and of what the house will be worth, as far
// as they keep it now.
func (b *book) leastOf(c *model.Cell) (least decimal.Decimal, is bool) {
	if c.Line.Set != model.Deal || !slices.Contains(valued, c.Line.Name) {
		return least, false
	}
	least, _, _ = deal.MoneyRange(c.Line.Name)
	return least, b.answer.Values.Of(c).GreaterThanOrEqual(least)
}

// valued are the lines that a file takes from some amount on.
var valued = []string{"price", "after_repair_value"}

// valuesHold is the condition that the price, and what the house will be worth, are not under the
// least that a file takes, also where they are worked out.
func (b *book) valuesHold() string {
	parts := []string{b.none(underLeast)}
	for _, line := range valued {
		c := b.model.Find(b.model.Root, line)
		if least, is := b.leastOf(c); is && b.places[c.Index].grid != nil && !b.typed(c) {
			parts = append(parts, "ROUND("+b.ref(line, 0)+"-"+numeral(least, bindsAll)+",9)>=0")
		}
	}
	return allHold(slices.DeleteFunc(parts, func(s string) bool { return s == "" }))
}

// oneWayHolds is the condition that no loan has both a fixed amount and a share of the price.
func (b *book) oneWayHolds() string {
	var parts []string
	for _, loan := range b.model.Root.In("loan") {
		amount, share := b.model.Find(loan, "fixed_amount"), b.model.Find(loan, "price_share")
		if !b.answer.Values.Of(amount).IsPositive() || !b.answer.Values.Of(share).IsPositive() {
			parts = append(parts, "OR("+b.cellRef(amount)+"<=0,"+b.cellRef(share)+"<=0)")
		}
	}
	return b.inCells("whether no loan pays of the price in two ways", parts, allHold)
}

// loansHold is the condition that the choices of every loan go together: interest is paid from a
// reserve where there is one and only there, level payments go with interest paid monthly on the
// balance, and the first loan takes no share of a remainder.
func (b *book) loansHold() string {
	var parts []string
	for i, loan := range b.model.Root.In("loan") {
		of := func(line string) string { return b.cellRef(b.model.Find(loan, line)) }
		is := func(line, word string) string {
			return b.choiceRef(b.model.Find(loan, line)) + "=" + quoted(word)
		}
		parts = append(parts,
			"("+is("interest_paid", "reserve")+")=("+of("reserve_wanted")+">0)", // as asked for: caps may leave none
			"OR("+of("amortising_months")+"<=0,AND("+is("interest_paid", "monthly")+",NOT("+is("interest_on", "commitment")+")))")
		if i == 0 {
			parts = append(parts, of("of_remainder")+"<>1")
		}
	}
	return b.inCells("whether the choices of every loan go together", parts, allHold)
}

// walksHold is the condition that the walls of every room that was measured around them lead
// back to where they began; "" without such a room.
func (b *book) walksHold() string {
	var parts []string
	for _, room := range b.model.Root.In("room") {
		if legs := room.In("leg"); len(legs) > 0 {
			end := func(line string) string { return "ABS(" + b.cellRef(b.model.Find(legs[len(legs)-1], line)) + ")" }
			parts = append(parts, end("at_east"), end("at_north"))
		}
	}
	return b.inCells("whether the walls of every room meet", parts, func(some []string) string { return "ROUND(" + nested("MAX(", some) + ",9)<=0" })
}

// sharesHold is the condition that shares are what a file may say, and that the loans pay no
// more than the whole renovation together.
func (b *book) sharesHold() string {
	within := b.none(beyondShare)
	funded, now := "", decimal.Zero
	for _, loan := range b.model.Root.In("loan") {
		share, rest := b.model.Find(loan, "renovation_share"), b.model.Find(loan, "of_remainder")
		takes, formula := b.answer.Values.Of(share), b.cellRef(share)
		if funded != "" { // one of the remainder takes its share of what those before it leave
			formula = funded + "+" + formula + "*IF(" + b.cellRef(rest) + "=1,MAX(0,1-" + funded + "),1)"
			if b.answer.Values.Of(rest).IsPositive() {
				takes = takes.Mul(decimal.Max(decimal.Zero, one.Sub(now)))
			}
		}
		now = now.Add(takes)
		funded = b.working("how much of the renovation the loans pay, up to "+loan.Label, formula, near(now))
	}
	if funded == "" {
		return within
	}
	return both(within, "ROUND("+funded+",9)<=1")
}

func isShare(c *model.Cell) bool { return strings.HasPrefix(c.Line.Unit, "share") }

// orNone are the inputs that may be nothing, though a file takes none below its least: it leaves
// them out then.
var orNone = []string{"paid_ahead", "term", "extension_months", "amortising_months", "value_cap", "cost_cap", "most", "stair_treads", "foundation_run"}

// edgesOf are the edges of what a file may say of an input, as far as it keeps them now: nothing
// stands for what is not stated.
func (b *book) edgesOf(c *model.Cell) []deal.Edge { return b.kept(c, orNothing(c, deal.Edges(c))) }

// orNothing lets the inputs of orNone be nothing.
func orNothing(c *model.Cell, all []deal.Edge) (out []deal.Edge) {
	for _, e := range all {
		if e.Least && slices.Contains(orNone, c.Line.Name) {
			e.At, e.Open = decimal.Zero, false
		}
		out = append(out, e)
	}
	return out
}

// usualOf are those beyond which a file is doubted.
func (b *book) usualOf(c *model.Cell) []deal.Edge { return tightest(b.kept(c, b.answer.Deal.Usual(c))) }

// tightest are the edges that leave the least room, one to each side.
func tightest(all []deal.Edge) (out []deal.Edge) {
	for _, e := range all {
		i := slices.IndexFunc(out, func(x deal.Edge) bool { return x.Least == e.Least })
		switch {
		case i < 0:
			out = append(out, e)
		case out[i].Holds(e.At) && !(out[i].At.Equal(e.At) && out[i].Open):
			out[i] = e
		}
	}
	return out
}

func (b *book) kept(c *model.Cell, all []deal.Edge) (out []deal.Edge) {
	if chosen(c) || c.Line.Unit == "flag" {
		return nil
	}
	for _, e := range all {
		e.Open = e.Open || e.Least && e.At.IsZero() && b.divides(c)
		if e.Holds(b.answer.Values.Of(c)) && !slices.ContainsFunc(out, e.Is) {
			out = append(out, e)
		}
	}
	return out
}

// sides are the inputs that give the size of a thing.
var sides = []string{"section.length", "section.width", "opening.opening_width", "opening.opening_height", "fitting.fitting_length", "fitting.fitting_depth", "plane.plane_length", "plane.plane_width"}

// edgesHold is the condition that every bracket and table of rates ends above where it begins.
func (b *book) edgesHold() string {
	var parts []string
	for _, c := range b.model.Cells {
		line, begins := edges[c.Line.Name]
		if !begins {
			continue
		}
		if end := b.model.Find(c.Member, line); end != nil && b.typed(end) {
			parts = append(parts, b.cellRef(end)+">"+b.cellRef(c))
		}
	}
	return b.inCells("whether brackets and tables of rates end above where they begin", parts, allHold)
}

// timeHolds is the condition that the deal takes some time.
func (b *book) timeHolds() string { return b.ref("hold_months", 0) + ">0" }

// A condition is one that inputs can be so at all, with what the first page says where it
// holds and where it does not.
type condition struct {
	words, holds, otherwise string
	first                   bool // the others may come to nothing where it does not hold
	doubt                   bool // it can be so all the same
}

// canBe are the conditions that this deal can break.
func (b *book) canBe() []condition {
	if b.conditions != nil {
		return b.conditions
	}
	for _, x := range []condition{
		{"what figures are divided by is more than nothing", b.none(noDivisor), "NOT SO", true, false},
		{"every input is a number, 1 or 0, or one of its words", b.none(noNumber), "NOT SO", true, false},
		{"no input is below nothing", b.none(belowNone), "BELOW NOTHING", false, false},
		{"no measure or amount of work is below nothing", b.measuresHold(), "BELOW NOTHING", false, false},
		{"price and after-repair value are $1,000 at least", b.valuesHold(), "UNDER IT", false, false},
		{"deposit and credit are within the price", b.withinPrice(), "OVER THE PRICE", false, false},
		{"adjusted prices of sales are more than nothing", b.soldHold(), "NOT ALL", false, false},
		{"shares are within their whole, also the loans'", b.sharesHold(), "BEYOND IT", false, false},
		{"rates, times, sizes and amounts can be right", b.none(beyondRate), "NOT ALL", false, false},
		{"no loan has both a fixed amount and a price share", b.oneWayHolds(), "ONE HAS", false, false},
		{"the choices of every loan go together", b.loansHold(), "THEY DO NOT", false, false},
		{"at least is within at most, cash kept within cash", b.none(overOther), "OVER IT", false, false},
		{"the stated spending falls into the renovation", b.spendingHolds(), "NONE DOES", false, false},
		{"sides of rooms and openings are more than nothing", b.none(noSide), "NOT ALL", false, false},
		{"months and counts are whole numbers", b.none(notWhole), "NOT ALL", false, false},
		{"edges of rates rise from each to the next", b.edgesHold(), "NOT ALL", false, false},
		{"the deal takes some time", b.timeHolds(), "NO TIME", false, false},
		{"the walls of every room meet", b.walksHold(), "THEY DO NOT", false, false},
		{"inputs that have a usual range are within it", b.none(unusual), "LOOK AGAIN", false, true},
	} {
		if x.holds != "" {
			b.conditions = append(b.conditions, x)
		}
	}
	return b.conditions
}

// usable is the condition of the inputs without which other figures may be no numbers.
func (b *book) usable() string {
	if b.usableAt == "" {
		formula := "1"
		for _, x := range slices.Backward(b.canBe()) {
			if x.first {
				formula = "IF(" + x.holds + "," + formula + ",0)"
			}
		}
		b.usableAt = b.working("whether every input is a number that can be reckoned with", formula, 1) + "=1"
	}
	return b.usableAt
}

// notLooked is said by a check that comes to nothing since an input is no number.
const notLooked = "NOT LOOKED AT"

// looked is a formula as long as every input can be reckoned with.
func (b *book) looked(formula string) string {
	return "IF(" + b.usable() + "," + formula + "," + quoted(notLooked) + ")"
}

// sound are the conditions that inputs can be so at all, in a cell of the sheet of workings.
func (b *book) sound() string {
	if b.soundAt != "" {
		return b.soundAt
	}
	b.soundAt = "TRUE"
	for _, x := range b.canBe() {
		if !x.doubt {
			b.soundAt += "," + x.holds
		}
	}
	b.soundAt = b.working("whether every input can be so at all", "IF("+b.usable()+",IF(AND("+b.soundAt+"),1,0),0)", 1) + "=1"
	return b.soundAt
}
