package solve

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/bound"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/fast"
	"ledgerboard/pkg/formula"
	"ledgerboard/pkg/internal/affine"
	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/model"
)

// Offers finds the maximum offers of a deal over many trials, in each of which some
// inputs have other values. Where the targets fail only once as the price rises, an
// offer is the one that MaxOffer finds, to the dollar, but for trials that turn on less
// than float64 can tell; where they fail more than once it may be a lower one of those
// at which they do. Several workers may share one.
type Offers struct {
	question *fast.Question
	price    float64   // of the plan
	start    float64   // where to look first
	edges    []float64 // by target, the least value at which it holds
	falls    []float64 // by target, how much it falls for each dollar of the price
}

// AskOffers prepares the search for stated targets while the axes vary. Changes hold for
// all trials.
func AskOffers(m *model.Model, stated []string, axes []fast.Axis, changes ...exact.Change) (*Offers, error) {
	price := m.Find(m.Root, "price")
	watched := cells(m, Targets(stated))
	held := slices.DeleteFunc(slices.Clone(changes), func(c exact.Change) bool { return c.Cell == price })
	sought := fast.Axis{Cell: price, Least: 0, Most: math.Inf(1)}
	q, err := fast.AskSeeking(m, axes, sought, append(watched[:len(watched):len(watched)], m.Find(m.Root, "after_repair_value")), held...)
	if err != nil {
		return nil, err
	}
	o := &Offers{question: q, edges: make([]float64, len(watched)), falls: make([]float64, len(watched))}
	if err := o.findEdges(m, price, watched, changes); err != nil {
		return nil, err
	}
	return o, o.findStart(m, price, watched, changes)
}

// noise is what a sum of dollars may be off in float64.
const noise = 1e-7

// findEdges finds what each target must come to: one in whole cents holds from half a
// cent under nothing on.
func (o *Offers) findEdges(m *model.Model, price *model.Cell, watched []*model.Cell, changes []exact.Change) error {
	one := decimal.NewFromInt(1)
	p, err := bound.NewPlan(m, bound.Axis{Cell: price, Least: one, Most: one, Step: one}, changes, watched...)
	if err != nil {
		return err
	}
	at, err := p.Over(one, one)
	if err != nil {
		return err
	}
	for i, x := range at {
		if o.edges[i] = -noise; x.Grain() != affine.Fine {
			o.edges[i] = -0.005
		}
	}
	return nil
}

// findStart works out how the targets fall around the plan, and so where to look first.
func (o *Offers) findStart(m *model.Model, price *model.Cell, watched []*model.Cell, changes []exact.Change) error {
	plan := exact.NewPlan(m, append([]*model.Cell{price}, watched...)...)
	v, err := plan.Evaluate(changes...)
	if err != nil {
		return err
	}
	x := v.Of(price)
	lower := x.Mul(decimal.New(9, -1))
	w, err := plan.Evaluate(append(changes[:len(changes):len(changes)], exact.Change{Cell: price, Value: lower})...)
	if err != nil {
		return err
	}
	o.price = x.InexactFloat64()
	o.start = math.Inf(1)
	for i, c := range watched {
		o.falls[i] = 1
		if d := o.price - float.Near(lower); d > 0 {
			o.falls[i] = steep(w.Of(c).Sub(v.Of(c)).InexactFloat64()/d, 1)
		}
		o.start = min(o.start, o.price+v.Of(c).InexactFloat64()/o.falls[i])
	}
	o.start = max(0, math.Floor(o.start))
	return nil
}

// steep is how much a target falls for each dollar if that is a likely figure, or else
// the one known before.
func steep(falls, known float64) float64 {
	if falls > 0.02 && falls < 50 {
		return falls
	}
	return known
}

// Worker returns a new worker.
func (o *Offers) Worker() *OfferWorker {
	return &OfferWorker{offers: o, worker: o.question.Worker(), prices: make([]float64, 0)}
}

// An OfferWorker finds the offers of trials in memory of its own, one call at a time.
type OfferWorker struct {
	offers *Offers
	worker *fast.Worker
	prices []float64
	at     []bracket
	last   []float64 // by trial and target, what it came to where it was looked at last
	falls  []float64 // by trial and target, how much it falls for each dollar
}

// A bracket is where the offer of a trial must be: from low on, at which the targets hold
// unless it is -1, and under high, at which they fail unless it is out of reach.
type bracket struct {
	low, high, reach float64
	before           float64 // the price looked at last
	looked           int
}

// Run finds an offer for each price asked for, in dollars: in has the values of each axis
// by trial. An offer is -Inf where no price will do, +Inf where none within reach misses a
// target, and no number where the trial has no answer.
func (w *OfferWorker) Run(in [][]float64, prices []float64) error {
	n, t := len(prices), len(w.offers.edges)
	if len(w.at) < n {
		w.at = make([]bracket, n)
		w.last, w.falls = make([]float64, n*t), make([]float64, n*t)
	}
	w.prices = prices
	for i := range prices {
		prices[i] = math.NaN()
	}
	return w.worker.Seek(in, n, w)
}

// Start begins a trial where the plan's offer is likely to be.
func (w *OfferWorker) Start(trial int) float64 {
	w.at[trial] = bracket{low: -1, high: math.Inf(1)}
	copy(w.falls[trial*len(w.offers.falls):], w.offers.falls)
	return w.offers.start
}

// Next narrows a trial's bracket by what was found at a price. The next price is where the
// targets should just hold, by how each fell over the last step; where that does not
// narrow the bracket soon, the middle.
func (w *OfferWorker) Next(trial int, x float64, found []float64) (float64, bool) {
	t := len(found) - 1 // the last is the value of the house
	b := &w.at[trial]
	if b.looked == 0 {
		b.reach = formula.Ceil64(max(w.offers.price, found[t])) * furthest
		b.high = b.reach + 1
	}
	last, falls := w.last[trial*t:][:t], w.falls[trial*t:][:t]
	holds, root := true, math.Inf(1)
	for i, s := range found[:t] {
		s -= w.offers.edges[i]
		holds = holds && s >= 0
		if d := x - b.before; b.looked > 0 && math.Abs(d) >= farEnough {
			falls[i] = steep((last[i]-s)/d, falls[i])
		}
		last[i] = s
		root = min(root, x+s/falls[i])
	}
	b.before = x
	b.looked++
	switch {
	case math.IsNaN(root):
		return 0, false
	case holds:
		b.low = max(b.low, min(x, b.reach))
	default:
		b.high = min(b.high, x)
	}
	if b.high-b.low <= 1 {
		w.prices[trial] = b.offer()
		return 0, false
	}
	next := math.Floor(root)
	if b.looked > quick && b.looked%2 == 0 {
		next = math.Floor((b.low + b.high) / 2)
	}
	return min(max(next, b.low+1), b.high-1), true
}

// farEnough is the least step, in dollars, over which cents do not hide how a target falls.
const farEnough = 50

// quick is how many steps usually do.
const quick = 6

func (b *bracket) offer() float64 {
	switch {
	case b.low < 0:
		return math.Inf(-1)
	case b.low == b.reach:
		return math.Inf(1)
	}
	return b.low
}
