package deal

import (
	"slices"
	"sync"

	"github.com/shopspring/decimal"
)

// A trial is a file read another way, once it is asked for.
type trial struct {
	sync.Mutex
	done bool
	read *reader // nil where it cannot be
	held map[*work][2]decimal.Decimal
}

// heldByQuote is what the labour and the materials of the work that a quote for all of other work is
// taken to hold come to by the price book. The model works it out where that quote is not there: the
// file is read once more without the quotes for all of some work. Each doubt asks, so it is kept.
func (r *reader) heldByQuote(w *work) (labour, goods decimal.Decimal) {
	if len(w.holds) == 0 || w.scope.path == "" {
		return labour, goods
	}
	r.trial.Lock() // the sheets of a workbook ask side by side
	defer r.trial.Unlock()
	if known, asked := r.trial.held[w]; asked {
		return known[0], known[1]
	}
	hired := r.withoutQuotes()
	if hired == nil {
		return labour, goods
	}
	mine := r.planWith(w)
	share := map[string]decimal.Decimal{}
	for _, h := range w.holds {
		share[h.item.Name] = decimal.Max(share[h.item.Name], r.heldShare(mine, h))
	}
	for _, p := range hired.plans {
		if !slices.ContainsFunc(p.works, func(x *work) bool { return x.scope.path == w.scope.path }) {
			continue
		}
		for _, x := range p.works {
			if of := share[x.item.Name]; x.by != "" && of.IsPositive() {
				paid, _ := hired.worked(x.member, "computed_labour")
				labour, goods = labour.Add(paid.Mul(of).Round(2)), goods.Add(hired.goodsOf(x).Mul(of).Round(2))
			}
		}
	}
	if r.trial.held == nil {
		r.trial.held = map[*work][2]decimal.Decimal{}
	}
	r.trial.held[w] = [2]decimal.Decimal{labour, goods}
	return labour, goods
}

// heldAtMost is more than heldByQuote finds for the labour, from the hired prices of the book beside
// that of the work itself: it spares reading the file once more where that could tell nothing. False
// where some of the work has no such price.
func (r *reader) heldAtMost(w *work, labour decimal.Decimal) (decimal.Decimal, bool) {
	p := r.planWith(w)
	hired := func(x *work) decimal.Decimal {
		return x.stated().of(r.allThereIs(p, x.item.Measure)).Mul(x.item.Hired).Mul(decimal.NewFromInt(int64(x.item.Coats)))
	}
	var held decimal.Decimal
	for _, x := range w.holds {
		price := hired(x)
		if !price.IsPositive() {
			return held, false
		}
		held = held.Add(price)
	}
	own := hired(w)
	if !own.IsPositive() {
		return held, false
	}
	return held.Mul(labour).DivRound(own, 2).Mul(two), true
}

// planWith is the plan that work is in.
func (r *reader) planWith(w *work) *plan {
	return r.plans[slices.IndexFunc(r.plans, func(p *plan) bool { return slices.Contains(p.works, w) })]
}

// withoutQuotes is the file as it is read without the quotes for all of some work; nil where it cannot
// be.
func (r *reader) withoutQuotes() *reader {
	if !r.trial.done {
		r.trial.done = true
		x := newReader(r.name)
		x.unquoted, x.src, x.book = true, r.src, r.book
		x.allOptions, x.asked, x.open, x.ownPicks = r.allOptions, r.asked, r.open, r.ownPicks
		if x.read(r.root); !x.diags.HasErrors() {
			r.trial.read = x
		}
	}
	return r.trial.read
}
