package modeltest

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// item draws a piece of work with what it takes.
func (w *worksite) item(o *model.Member, measures []string) {
	w.items++
	x := o.Add("item", "", fmt.Sprintf("work %d", w.items))
	x.Link(pick(w.drawer, w.trade...))
	w.measured(x, "measure", measures)
	w.give(3, x, "measured", func() decimal.Decimal { return w.ft(0, 300) })
	w.giveShare(5, x, "part", 0, 1)
	w.give(5, x, "coats", func() decimal.Decimal { return w.whole(1, 3) })
	w.give(12, x, "hours_each", func() decimal.Decimal { return w.share(0, 0.3) })
	w.give(5, x, "set_up", func() decimal.Decimal { return w.ft(0, 4) })
	w.give(4, x, "waiting", func() decimal.Decimal { return w.whole(0, 10) })
	if w.word(8, x, "who", "own", "own", "hired") == "own" {
		w.use("own hands")
	}
	w.prices(x)
	w.give(5, x, "debris_each", func() decimal.Decimal { return w.share(0, 2) })
	w.give(5, x, "weight_each", func() decimal.Decimal { return w.share(0, 8) })
	for range pick(w.drawer, 0, 1, 1, 2) {
		w.takes(x, measures)
	}
}

// prices draws how the labour is paid.
func (w *worksite) prices(x *model.Member) {
	w.giveMoney(11, x, "hired_price", 0, 12)
	w.giveFlag(5, x, "by_the_hour")
	w.giveFlag(3, x, "own_labour_price")
	w.giveFlag(5, x, "labour_taxed")
	w.giveMoney(4, x, "allowance", 0, 1500)
	if w.chance(5) {
		w.giveMoney(14, x, "quote", 0, 6000)
		if w.word(13, x, "quote_covers", "labour", "all", "nothing") == "all" {
			w.use("a quote for all")
		}
	}
}

// measured lets an input go by a measure of the room or of the house, or by a number.
func (w *worksite) measured(x *model.Member, line string, measures []string) {
	switch w.upTo(7) {
	case 0:
		w.use("work by a number")
		x.GiveNumber(line, w.ft(0, 300))
	case 1:
		w.use("work by the house")
		x.Give(line, model.Value{Refers: w.of(w.house)})
	default:
		x.Give(line, model.Value{Refers: w.of(measures)})
	}
}

// of picks from more than 16.
func (d *drawer) of(names []string) string {
	last := decimal.NewFromInt(int64(len(names) - 1))
	return names[d.part().Mul(last).Round(0).IntPart()]
}

// takes draws what a piece of work takes of a product.
func (w *worksite) takes(x *model.Member, measures []string) {
	p := pick(w.drawer, w.product...)
	u := x.Add("use", "", p.Label)
	u.Link(p)
	if len(p.In("use")) == 2 {
		w.use("two uses of a product")
	}
	a := w.give(9, u, "takes", func() decimal.Decimal { return w.share(0, 3) })
	w.give(3, u, "covers_with", func() decimal.Decimal { return pick(w.drawer, dec(1), dec(5), dec(0.25)) })
	b := w.give(6, u, "covers", func() decimal.Decimal { return pick(w.drawer, dec(350), dec(80), dec(3), dec(0.7)) })
	if a && b {
		w.use("covers and takes")
	}
	if w.give(3, u, "for_the_job", func() decimal.Decimal { return w.share(0, 5) }) {
		w.use("a fixed amount of product")
	}
	if w.chance(4) {
		w.measured(u, "along", measures)
		if _, counted := x.Given.Look("measured"); counted && w.chance(8) {
			u.Give("along_share", model.Value{Refers: "counted_share"})
		} else {
			w.giveShare(3, u, "along_share", 0, 1)
		}
	}
	w.give(5, u, "use_coats", func() decimal.Decimal { return w.whole(0, 3) })
	w.giveShare(10, u, "waste", 0, 0.4)
	if w.chance(2) {
		w.drop(u)
	}
}

// drop draws how paper is hung: rolls are longer than any drop.
func (w *worksite) drop(u *model.Member) {
	w.use("paper in drops")
	x := u.Add("drop", "", "paper")
	w.give(5, x, "drop_height", func() decimal.Decimal { return w.ft(2, 12) })
	x.GiveNumber("drop_run", w.ft(0, 80))
	if w.chance(8) && u.Parent.Parent.Parent.Kind == "inside" {
		x.Give("drop_run", model.Value{Refers: pick(w.drawer, "perimeter", "base_run")})
	}
	x.GiveNumber("roll_wide", pick(w.drawer, dec(1.5), dec(1.75), dec(1.7388)))
	x.GiveNumber("roll_long", w.ft(16, 60))
	w.give(8, x, "repeat", func() decimal.Decimal { return w.ft(0, 3) })
	w.giveFlag(6, x, "half_drop")
	w.give(6, x, "trim", func() decimal.Decimal { return w.ft(0, 1) })
}
