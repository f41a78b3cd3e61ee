package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// leastRest is the least share that a quote is said to hold of what other work brings too, so that a
// part that is rounded leaves none.
var leastRest = decimal.New(1, -3)

// rests says which share quotes still hold of what other work of the plan brings too, and is charged
// for.
func (b *bringing) rests() {
	for _, h := range b.held {
		i := slices.IndexFunc(b.plan.works, func(w *work) bool { return w.item == h.item && w.by != "" })
		if i < 0 || h.bringers[0].House {
			continue
		}
		all, there := b.all(h.item.Measure), b.plan.works[i]
		both := b.amount(&work{item: h.item, bringers: slices.Concat(there.bringers, h.bringers)}).of(all)
		left := both.Sub(b.amount(there).of(all))
		if left.IsPositive() && left.GreaterThan(both.Mul(leastRest)) {
			h.rest, h.left = left.DivRound(both, quantity.Places), left
		}
	}
}

// heldShare is which share a quote holds of work that other work, in the plan or for the whole house,
// may bring too.
func (r *reader) heldShare(p *plan, h *work) decimal.Decimal {
	if r.callPlan != nil && r.callPlan.has(h.item.Name) {
		return decimal.Zero
	}
	return p.restOf(h)
}

// restOf is which share a quote holds of work that other work in the plan may bring too.
func (p *plan) restOf(h *work) decimal.Decimal {
	if !p.has(h.item.Name) {
		return one
	}
	return h.rest
}

// onlyHeld are the names of work that a quote holds whole, and of that of which it holds the rest
// beside other work.
func (r *reader) onlyHeld(p *plan, w *work) (all, rest []string) {
	for _, h := range w.holds {
		switch share := r.heldShare(p, h); {
		case share.Equal(one):
			all = append(all, h.item.Name)
		case share.IsPositive():
			rest = append(rest, h.item.Name)
		}
	}
	return all, rest
}

// includes are the names of what a quote for all of some work is taken to bring.
func (w *work) includes() (names []string) {
	for _, h := range w.holds {
		names = append(names, h.item.Name)
	}
	return names
}
