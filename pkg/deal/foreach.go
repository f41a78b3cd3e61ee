package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// severalTake reports whether several pieces of work bring an item of which each takes its own.
func severalTake(it *pricebook.Item, by []brought) bool {
	return it.TakenEach() && slices.ContainsFunc(by, func(x brought) bool { return x.by != by[0].by })
}

// forEach is how much of an item all work takes that leads to it: what one piece of it leads to by
// several ways counts once, the most of them, and at most all that bring it take one each. Of what
// yields, a share is left.
func (b *bringing) forEach(it *pricebook.Item, always, yielding []brought, left decimal.Decimal) toDo {
	sum := toDo{text: "for each that takes one"}
	for _, root := range roots(slices.Concat(always, yielding)) {
		most := decimal.Max(b.led(it, always, root, nil), b.led(it, yielding, root, nil).Mul(left))
		sum.counted, sum.at = sum.counted.Add(most), root.at
	}
	sum.counted = decimal.Min(sum.counted, b.taken(it, always).Add(b.taken(it, yielding).Mul(left)))
	return sum
}

// taken is how much of an item those take that bring it.
func (b *bringing) taken(it *pricebook.Item, by []brought) (sum decimal.Decimal) {
	for i, x := range by {
		if !slices.ContainsFunc(by[:i], func(y brought) bool { return y.by == x.by }) {
			sum = sum.Add(takes(it, x.by, b.shareOf(x.by)))
		}
	}
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
// leads to the most.
func (b *bringing) led(it *pricebook.Item, by []brought, root *work, passed []*work) (most decimal.Decimal) {
	for _, x := range by {
		var share decimal.Decimal
		switch {
		case x.by == root:
			share = b.shareOf(root)
		case !slices.Contains(passed, x.by):
			share = decimal.Min(b.led(x.by.item, x.by.bringers, root, append(slices.Clone(passed), x.by)), b.shareOf(x.by))
		}
		most = decimal.Max(most, takes(it, x.by, share))
	}
	return most
}

// shareOf is how much of its measure a piece of work is done to.
func (b *bringing) shareOf(w *work) decimal.Decimal {
	a, all := b.amount(w), b.all(w.item)
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
