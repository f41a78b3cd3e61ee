package comps

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// NotAppraisal is the statement that goes with every value.
const NotAppraisal = "An estimate from past sales. It is not an appraisal: nobody has seen the house."

// ErrNoSales says that there is nothing to draw a value from.
var ErrNoSales = errors.New("no sale before the day can be used, so there is no value")

// Row is a sale of the grid, adjusted to the subject.
type Row struct {
	Comp
	Lines     []Adjustment    // in the order of the lines, those at zero left out
	Adjusted  decimal.Decimal // the price and its lines, whole dollars
	Weight    float64         // of all; the weights sum to one
	Alike     float64         // the same by likeness alone, where lying apart from the others takes none away
	Net       float64         // sum of the adjustments as a share of the price
	Gross     float64         // sum of their sizes as a share of the price
	LeftOut   float64         // what the others would have said of it, less 1 (an estimate's error)
	Apart     bool            // once adjusted over twice, or under half of, the middle one
	Off       float64         // LeftOut by those alone of the others that are not Apart
	Fewer     bool            // there are such among the others
	FarOff    bool            // that is far, of the usual three sales or more
	OtherType bool            // it is of another type than the house, and nothing tells what that is worth
	NotBest   string          // why it does not count as the dearest sale, as "far from the others"; "" where it may
	Unsaid    []Line          // what it does not say and the house does, so that it counts as alike in it
	Amber     []string        // marks beyond what is customary
}

// Value is what the sales say of the subject.
type Value struct {
	Likely decimal.Decimal // weights times adjusted prices, whole dollars
	Low    decimal.Decimal // one in ten sells for less
	High   decimal.Decimal // one in ten sells for more
	Rows   []Row           // the heaviest first
	Error  float64         // median size of the rows' leave-one-out errors; 0 with one sale
	Trend  Rate            // the market's change in a month
	Rates  []Rate          // what a unit of each thing is worth at the subject
	Linear map[Line]Rate   // the lines that are adjusted by one amount for each unit
	// LowShare and HighShare are the ends of the range as shares of the value, to six
	// decimals.
	LowShare, HighShare decimal.Decimal
	Carried             float64     // what the error of Trend adds to that range, a standard error as a share of the value
	MostByTrend         bool        // that error makes the larger part of the range
	Priceless           int         // sales around that adjustments leave no price of, with a regression
	Untold              []Line      // what some sales differ in and nothing that is believed tells the worth of
	GarageKinds         []string    // where garages are untold, the kinds that the sales tell the worth of and the house does not say; else none
	GarageAs            string      // where it says one that no sale tells, the usual kind that it counts as; else ""
	Disbelieved         []Disbelief // what a regression or pairs say of, which cannot be so
	Notes               []string    // what a reader should know, the statement that this is no appraisal last
}

// NoPriceError says that adjustments leave nothing of a sale's price.
type NoPriceError struct {
	Sale     Sold
	Adjusted decimal.Decimal
	Largest  Adjustment // what takes off most
	By       string     // the figures that it is for, "14,200 sq ft against 1,420"; "" for none
	Unlike   bool       // it would count for next to nothing, and what pairs say of it is to blame
}

func (e *NoPriceError) Error() string {
	says := fmt.Sprintf("%s is adjusted to %s, which is no price: %s takes off %s", e.Sale.Name(), quantity.FormatDollars(e.Adjusted), e.Largest.Line, quantity.FormatDollars(e.Largest.Amount.Neg()))
	if e.By != "" {
		says += ", for " + e.By
	}
	return says
}

func noPrice(r Row, subject *House) *NoPriceError {
	e := &NoPriceError{Sale: r.Sold, Adjusted: r.Adjusted}
	e.Largest = slices.MinFunc(r.Lines, func(a, b Adjustment) int { return a.Amount.Cmp(b.Amount) })
	if theirs, ours := figure(e.Largest.Line, &r.House), figure(e.Largest.Line, subject); theirs.Known && ours.Known {
		unit := map[Line]string{Size: " sq ft", Lot: " sq ft"}[e.Largest.Line]
		e.By = plainNumber(theirs.Value) + unit + " against " + plainNumber(ours.Value)
		if e.Largest.Line == Age {
			e.By = yearAgainst("built %.0f", r.Built.Value, subject.Built.Value)
		}
	}
	return e
}

// Value adjusts the chosen sales to the subject and reconciles them. It fails with
// ErrNoSales if there are none, and with a *NoPriceError.
func (c *Choice) Value() (*Value, error) {
	if len(c.Comps) == 0 {
		return nil, ErrNoSales
	}
	a := c.adjuster()
	near := c.adjustPool(a)
	v := &Value{}
	if !c.market.byPairs {
		v.Priceless = len(c.pool) - len(near.picks)
	}
	logs := make([]float64, len(c.Comps))
	for i, k := range c.Comps {
		r := Row{Comp: k}
		r.Lines, r.Adjusted = a.rounded(k.pick.i)
		r.OtherType = r.Kind != "" && a.s.Kind != "" && r.Kind != a.s.Kind && !(a.tellsKind(r.Kind) && a.tellsKind(a.s.Kind))
		r.Unsaid = a.unsaid(k.pick.i)
		if r.Adjusted.Sign() <= 0 {
			e := noPrice(r, &c.Subject.House)
			_, given := c.given[e.Largest.Line]
			e.Unlike = c.market.byPairs && !given && e.Largest.Line < Own && a.alike(c.picks())[i] < countTogether
			return nil, e
		}
		logs[i] = math.Log(r.Adjusted.InexactFloat64())
		v.Rows = append(v.Rows, r)
	}
	alike := c.like.alike(c.picks())
	weights := gathered(alike, logs)
	mean := decimal.Zero
	for i := range v.Rows {
		v.Rows[i].Weight, v.Rows[i].Alike = weights[i], alike[i]
		mean = mean.Add(decimal.NewFromFloat(weights[i]).Mul(v.Rows[i].Adjusted))
	}
	v.Likely = wholeDollars(mean) // the rule of the line value_by_comps
	likely := mean.InexactFloat64()
	v.shares()
	v.Carried = a.carried(weights)
	low, high := c.spread(near, math.Log(likely), weights, logs, v.Carried)
	own, _ := c.spread(near, math.Log(likely), weights, logs, 0)
	v.MostByTrend = low > math.Sqrt2*own // as the root of the sum of squares
	v.LowShare, v.HighShare = millionths(math.Exp(-low)), millionths(math.Exp(high))
	v.Low, v.High = wholeDollars(v.Likely.Mul(v.LowShare)), wholeDollars(v.Likely.Mul(v.HighShare))
	v.Trend, v.Rates, v.Linear = a.trend(), a.rates(likely), a.linearly()
	v.Untold, v.Disbelieved = a.untold(v), a.doubted
	v.GarageKinds = a.garageKinds(v)
	v.leaveOut(likely)
	v.notBest()
	for i := range v.Rows {
		v.Rows[i].Amber = amber(&v.Rows[i])
	}
	slices.SortStableFunc(v.Rows, func(a, b Row) int {
		if a.Weight != b.Weight {
			if a.Weight > b.Weight {
				return -1
			}
			return 1
		}
		return compareSales(&a.Sold, &b.Sold)
	})
	v.Notes = c.notes(v)
	return v, nil
}

// rounds of weighing anew, each with the centre of the last.
const weighings = 6

// neighbours are the sales of the pool with the logs of their adjusted prices.
type neighbours struct {
	picks []pick
	logs  []float64
}

// adjusted are the sales of the pool as adjusted, but for those of whose prices the stated
// amounts leave nothing: such a price has no log.
func (c *Choice) adjusted(a *adjuster) (out neighbours) {
	for _, p := range c.pool {
		if _, price := a.adjust(p.i); price > 0 {
			out.picks, out.logs = append(out.picks, p), append(out.logs, math.Log(price))
		}
	}
	return out
}

// adjustPool estimates the local rates and returns the pool adjusted by them.
func (c *Choice) adjustPool(a *adjuster) neighbours {
	pool := c.adjusted(a)
	a.local = a.around(pool)
	a.doubted = a.disbelieve(a.middlePrice())
	return c.adjusted(a)
}

// shares works out how much was adjusted.
func (v *Value) shares() {
	for i := range v.Rows {
		r := &v.Rows[i]
		for _, l := range r.Lines {
			r.Net += l.Share
			r.Gross += math.Abs(l.Share)
		}
	}
}

// apart is how many times the middle of the adjusted prices, or what part of it, a sale
// must come to for its price to look mistyped (common practice, no source).
const times = 2

// leaveOut works out what the other sales would have said of each: the rule of the
// line comp.left_out. Those apart pull the mean, so they speak against no other sale.
func (v *Value) leaveOut(mean float64) {
	if len(v.Rows) < 2 {
		return
	}
	adjusted, sizes := make([]float64, len(v.Rows)), make([]float64, len(v.Rows))
	for i := range v.Rows {
		adjusted[i] = v.Rows[i].Adjusted.InexactFloat64()
	}
	mid, _ := middle(slices.Clone(adjusted))
	sum, weight, apart := 0.0, 0.0, 0
	for i := range v.Rows {
		r := &v.Rows[i]
		if r.Weight < 1 {
			r.LeftOut = (mean/adjusted[i] - 1) / (1 - r.Weight)
		}
		sizes[i] = math.Abs(r.LeftOut)
		if r.Apart = len(v.Rows) >= usualSales && (adjusted[i] > times*mid || adjusted[i] < mid/times); !r.Apart {
			sum, weight = sum+r.Weight*adjusted[i], weight+r.Weight
		} else {
			apart++
		}
	}
	v.Error, _ = middle(sizes)
	for i := range v.Rows {
		r := &v.Rows[i]
		s, w := sum, weight
		r.Fewer = apart > 0
		if r.Apart {
			r.Fewer = apart > 1
		} else {
			s, w = s-r.Weight*adjusted[i], w-r.Weight
		}
		if w > 0 {
			r.Off = s/w/adjusted[i] - 1
		}
		r.FarOff = len(v.Rows) >= usualSales && math.Abs(r.Off) > farOff
	}
}

// slight is the weight under which a sale weighs next to nothing, or half of its even share
// where there are so many that all may (common practice, no source).
const slight = 0.01

// Slight is the weight under which a sale of this value weighs next to nothing.
func (v *Value) Slight() float64 { return min(slight, 0.5/float64(len(v.Rows))) }

// faintMove is what a sale that weighs next to nothing may move the value by, as a share of it, and
// still have no part in it (common practice, no source).
const faintMove = 0.005

// Faint reports whether next to nothing of the value comes of a sale: it has little weight, and
// its price lies not so far off that it moves the value all the same.
func (v *Value) Faint(r *Row) bool {
	return r.Weight < v.Slight() && r.Weight*math.Abs(r.Adjusted.InexactFloat64()/v.Likely.InexactFloat64()-1) < faintMove
}

// Part is how much of the value comes of a sale: its weight times what it is adjusted to, as a
// share of the value. The parts sum to one, but for the rounding of the value.
func (v *Value) Part(r *Row) float64 {
	return r.Weight * r.Adjusted.InexactFloat64() / v.Likely.InexactFloat64()
}

// notBest marks the sales that do not say how much the neighbourhood pays at most: those that
// weigh next to nothing, and those sold for over twice what the middle one of the rest was.
func (v *Value) notBest() {
	var prices []float64
	for i := range v.Rows {
		if r := &v.Rows[i]; v.Faint(r) {
			r.NotBest = "which weighs next to nothing"
		} else {
			prices = append(prices, r.Price.InexactFloat64())
		}
	}
	if len(prices) < usualSales {
		return
	}
	mid, _ := middle(prices)
	for i := range v.Rows {
		if r := &v.Rows[i]; r.NotBest == "" && r.Price.InexactFloat64() > times*mid {
			r.NotBest = "far from the others"
		}
	}
}
