package modeltest

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/model"
)

// RandomHouse draws a deal with a house measured room by room, its work, products
// and trades, in which every input of those is drawn in some deals, and with costs
// and charges besides, but without loans.
func RandomHouse(t *rapid.T) *Draw { return anyHouses.Draw(t, "house") }

var anyHouses = rapid.Custom(func(t *rapid.T) *Draw {
	d := &drawer{t: t}
	d.Deal, d.Uses = model.NewDeal("random house"), map[string]bool{}
	d.values()
	d.comparables()
	d.time()
	d.works()
	d.house()
	return &d.Draw
})

// HouseOptions are the ways of a house that Draw.Uses tells of, beyond which inputs
// are given.
var HouseOptions = []string{
	"one room", "many rooms", "a room of two rectangles", "a room by walking", "an ell by walking", "a closet", "an attic",
	"an outside", "a whole house", "work beside the option of the whole house", "one option", "three options", "nothing chosen", "work that is called for", "work that calls for work",
	"work by a number", "work by the house", "a quote for all", "own hands", "two uses of a product", "paper in drops",
	"covers and takes", "a fixed amount of product", "sticks", "a check",
}

// house draws what is measured and what is done.
func (d *drawer) house() {
	d.ways()
	d.local()
	w := &worksite{drawer: d, house: houseMeasures}
	if d.chance(5) { // how long it takes follows from the work, which then cannot go by it
		d.Deal.Withdraw("renovation")
		d.lasts("lead_in", "marketing", "escrow") // there may be no work
		w.house = slices.DeleteFunc(slices.Clone(houseMeasures), func(m string) bool { return m == "months_of_work" })
	}
	if d.chance(5) { // the value follows from what the options add
		d.Deal.Withdraw("after_repair_value")
		d.giveMoney(14, d.Deal, "value_before_work", 60_000, 400_000)
	}
	w.trades()
	w.products()
	w.wholeHouse()
	rooms := 1 + pick(d, 0, 1, 2, 3, 1, 5, 11, d.upTo(11))
	for i := range rooms {
		w.options(w.inside(i+1), insideMeasures)
	}
	if d.chance(8) {
		w.options(w.outside(), outsideMeasures)
	}
	switch {
	case rooms == 1:
		d.use("one room")
	case rooms >= 6:
		d.use("many rooms")
	}
	d.checks()
}

// ways draws how the house is reckoned.
func (d *drawer) ways() {
	x := d.Deal
	d.give(8, x, "usual_ceiling", func() decimal.Decimal { return d.ft(7, 12) })
	d.give(6, x, "roll_width", func() decimal.Decimal { return pick(d, dec(12), dec(13.5), dec(15), dec(6)) })
	d.give(6, x, "fill_pieces", func() decimal.Decimal { return d.whole(1, 6) })
	d.give(6, x, "house_levels", func() decimal.Decimal { return d.whole(1, 3) })
	d.word(8, x, "waste_rule", "added", "divided")
	d.give(6, x, "own_pace", func() decimal.Decimal { return d.share(1, 3) })
	d.giveShare(6, x, "errands", 0, 0.5)
	d.give(6, x, "own_hours_a_week", func() decimal.Decimal { return d.whole(20, 60) })
	d.word(8, x, "sequence", "overlapping", "side by side", "one after the other")
	d.give(5, x, "waiting_days", func() decimal.Decimal { return d.whole(0, 40) })
	d.give(6, x, "container_holds", func() decimal.Decimal { return pick(d, dec(270), dec(810), dec(1)) })
	d.give(6, x, "container_limit", func() decimal.Decimal { return pick(d, dec(4000), dec(20000), dec(10)) })
	d.giveMoney(6, x, "container_price", 0, 900)
}

// local draws what the place adds to the price book.
func (d *drawer) local() {
	d.giveShare(8, d.Deal, "sales_tax", 0, 0.11)
	d.giveShare(8, d.Deal, "material_factor", 0.5, 1.5)
	d.giveShare(8, d.Deal, "labour_factor", 0.5, 1.5)
}

// checks draws parts of the house that may hide a repair.
func (d *drawer) checks() {
	for i := range d.upTo(3) {
		d.use("a check")
		c := d.Deal.Add("check", "", fmt.Sprintf("check %d", i+1))
		likely := d.money(0, 12_000)
		c.GiveNumber("if_bad", likely)
		d.give(8, c, "if_bad_least", func() decimal.Decimal { return likely.Mul(d.share(0, 1)).Round(2) })
		d.give(8, c, "if_bad_most", func() decimal.Decimal { return likely.Mul(d.share(1, 3)).Round(2) })
		d.word(10, c, "seen", "not seen", "good", "bad")
		d.renewals(c)
	}
}

// renewals draws work that makes all of a part of the house new.
func (d *drawer) renewals(c *model.Member) {
	var work []*model.Member
	for _, room := range d.Deal.In("room") {
		for _, o := range room.In("option") {
			work = append(work, o.In("item")...)
		}
	}
	for range d.upTo(2) {
		if len(work) > 0 {
			d.use("work that makes a part of the house new")
			x := pick(d, work...).Add("renewal", "", c.Label)
			x.Link(c)
			d.giveShare(6, x, "of_it", 0, 1.5)
			d.give(3, x, "in_quote", func() decimal.Decimal { return one })
			d.give(6, x, "at_least", func() decimal.Decimal { return d.whole(1, 400) })
		}
	}
}

// ft draws a length in feet: whole, in inches or in eighths of an inch; inches are
// no finite decimals.
func (d *drawer) ft(low, high int64) decimal.Decimal {
	each := pick(d, int64(1), 1, 12, 12, 96)
	n := d.between(decimal.Zero, decimal.NewFromInt((high-low)*each), one)
	return decimal.NewFromInt(low).Add(formula.Divide(n, decimal.NewFromInt(each)))
}

// whole draws a whole number.
func (d *drawer) whole(low, high int64) decimal.Decimal {
	return d.between(decimal.NewFromInt(low), decimal.NewFromInt(high), one)
}

// word gives one of the words of a choice n times in 16.
func (d *drawer) word(n int, m *model.Member, line string, words ...string) string {
	if !d.chance(n) {
		return ""
	}
	w := pick(d, words...)
	choose(m, line, w)
	return w
}
