package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// several reports whether several pieces of work bring something.
func several(by []brought) bool {
	return slices.ContainsFunc(by, func(x brought) bool { return x.by != by[0].by })
}

// forEach is how much of an item all work takes that leads to it: what one piece of it leads to by
// several ways counts once, the most of them, and none of those that bring it takes more than its
// own. Of what yields to other work, a share is left.
func (b *bringing) forEach(it *pricebook.Item, by []brought) toDo {
	of := func(x brought, much decimal.Decimal) decimal.Decimal { return much.Mul(b.shareLeft(x, it)) }
	var takers []*work
	var own []decimal.Decimal
	taker := func(x brought) int { // pieces of one item by another measure take one together, as one piece would
		return slices.IndexFunc(takers, func(w *work) bool { return w == x.by || w.item == x.by.item && !asMuch(it, w.item) })
	}
	for _, x := range by {
		at := taker(x)
		if at < 0 {
			at, takers, own = len(takers), append(takers, x.by), append(own, decimal.Zero)
		}
		own[at] = decimal.Max(own[at], of(x, takes(it, x.by, b.shareOf(x.by))))
	}
	sum := toDo{text: "for each that takes one"}
	var led [][]decimal.Decimal
	for _, root := range roots(by) {
		to, known := make([]decimal.Decimal, len(takers)), map[*work]decimal.Decimal{}
		for _, x := range by {
			at := taker(x)
			to[at] = decimal.Max(to[at], of(x, b.led(it, []brought{x}, root, known)))
		}
		led, sum.at = append(led, to), root.at
	}
	sum.counted = mostGiven(led, own)
	return sum
}

// takes is how much of an item work takes of which a share is done: as much, or one, whole.
func takes(it *pricebook.Item, by *work, share decimal.Decimal) decimal.Decimal {
	if share.IsPositive() && !asMuch(it, by.item) {
		return one
	}
	return share
}

// led is the share of all there is of an item to which one piece of work leads, by the way that
// leads to the most. What is worked out already is known by the work on the way, which leads in no circle.
func (b *bringing) led(it *pricebook.Item, by []brought, root *work, known map[*work]decimal.Decimal) (most decimal.Decimal) {
	for _, x := range by {
		share, is := known[x.by]
		if !is {
			share = b.shareOf(x.by)
			if x.by != root {
				share = decimal.Min(b.led(x.by.item, x.by.bringers, root, known), share)
			}
			known[x.by] = share
		}
		most = decimal.Max(most, takes(it, x.by, share))
	}
	return most
}

// shareOf is how much of its measure a piece of work is done to.
func (b *bringing) shareOf(w *work) decimal.Decimal {
	a, all := b.amount(w), b.all(w.item.Measure)
	if a.counted.IsZero() || !all.IsPositive() {
		return decimal.Max(a.share, a.counted)
	}
	return a.of(all).DivRound(all, quantity.Places)
}

// roots is the work that the file names and that leads to what others bring, each once.
func roots(by []brought) (out []*work) {
	var passed []*work
	var visit func([]brought)
	visit = func(by []brought) {
		for _, x := range by {
			if slices.Contains(passed, x.by) {
				continue
			}
			if passed = append(passed, x.by); len(x.by.bringers) == 0 {
				out = append(out, x.by)
			}
			visit(x.by.bringers)
		}
	}
	visit(by)
	return out
}
