package comps

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

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
	Lines    []Adjustment    // in the order of the lines, those at zero left out
	Adjusted decimal.Decimal // the price and its lines, whole dollars
	Weight   float64         // of all; the weights sum to one
	Net      float64         // sum of the adjustments as a share of the price
	Gross    float64         // sum of their sizes as a share of the price
	LeftOut  float64         // what the others would have said of it, less 1 (an estimate's error)
	Apart    bool            // once adjusted over twice, or under half of, the middle one
	Off      float64         // LeftOut by those alone of the others that are not Apart
	Fewer    bool            // there are such among the others
	FarOff   bool            // that is far, of the usual three sales or more
	NotBest  string          // why it does not count as the dearest sale, as "far from the others"; "" where it may
	Amber    []string        // marks beyond what is customary
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
	Untold              []Line      // what some sales differ in and nothing that is believed tells the worth of
	Disbelieved         []Disbelief // what a regression or pairs say of, which cannot be so
	Notes               []string    // what a reader should know, the statement that this is no appraisal last
}

// NoPriceError says that adjustments leave nothing of a sale's price.
type NoPriceError struct {
	Sale     Sold
	Adjusted decimal.Decimal
	Largest  Adjustment // what takes off most
	By       string     // the figures that it is for, "14,200 sq ft against 1,420"; "" for none
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
		e.By = plainNumber(math.Abs(theirs.Value)) + unit + " against " + plainNumber(math.Abs(ours.Value))
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
	pool := c.adjustPool(a)
	v := &Value{}
	logs := make([]float64, len(c.Comps))
	for i, k := range c.Comps {
		r := Row{Comp: k}
		r.Lines, r.Adjusted = a.rounded(k.pick.i)
		if r.Adjusted.Sign() <= 0 {
			return nil, noPrice(r, &c.Subject.House)
		}
		logs[i] = math.Log(r.Adjusted.InexactFloat64())
		v.Rows = append(v.Rows, r)
	}
	weights := c.like.weights(c.picks(), logs)
	mean := decimal.Zero
	for i := range v.Rows {
		v.Rows[i].Weight = weights[i]
		mean = mean.Add(decimal.NewFromFloat(weights[i]).Mul(v.Rows[i].Adjusted))
	}
	v.Likely = wholeDollars(mean) // the rule of the line value_by_comps
	likely := mean.InexactFloat64()
	v.shares()
	low, high := c.spread(pool, math.Log(likely), weights, logs)
	v.LowShare, v.HighShare = millionths(math.Exp(-low)), millionths(math.Exp(high))
	v.Low, v.High = wholeDollars(v.Likely.Mul(v.LowShare)), wholeDollars(v.Likely.Mul(v.HighShare))
	v.Trend, v.Rates, v.Linear = a.trend(), a.rates(likely), a.linearly()
	v.Untold, v.Disbelieved = a.untold(v), a.doubted
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

// picks are the sales taken.
func (c *Choice) picks() []pick {
	out := make([]pick, len(c.Comps))
	for i, k := range c.Comps {
		out[i] = k.pick
	}
	return out
}

// alike are weights by likeness, less for what the regression found far off; they sum
// to one.
func (l *likeness) alike(picks []pick) []float64 {
	out := make([]float64, len(picks))
	nearest := math.Inf(1)
	for _, p := range picks {
		nearest = min(nearest, p.d)
	}
	for i, p := range picks {
		out[i] = l.weight(pick{p.i, p.d - nearest}, tune.Narrow) // the nearest counts 1, however far
	}
	normalise(out)
	return out
}

// weights are those, less for what lies apart from the others.
func (l *likeness) weights(picks []pick, logs []float64) []float64 {
	base := l.alike(picks)
	out := slices.Clone(base)
	for range weighings {
		centre := dot(out, logs)
		for i := range out {
			out[i] = base[i] / (1 + math.Abs(logs[i]-centre)/tune.Scatter)
		}
		normalise(out)
	}
	inMillionths(out)
	return out
}

// inMillionths rounds weights to millionths, none to less than one, that still sum to
// one; what rounding leaves goes to the heaviest.
func inMillionths(w []float64) {
	const parts = 1e6
	left, heaviest := parts, 0
	for i, x := range w {
		w[i] = max(1, math.Round(x*parts))
		left -= w[i]
		if w[i] > w[heaviest] {
			heaviest = i
		}
	}
	w[heaviest] += left
	for i := range w {
		w[i] /= parts
	}
}

func millionths(x float64) decimal.Decimal { return decimal.NewFromFloat(x).Round(6) }

func normalise(w []float64) {
	sum := 0.0
	for _, v := range w {
		sum += v
	}
	for i := range w {
		w[i] /= sum
	}
}

// adjustPool estimates the local rates and returns the logs of the pool's prices,
// adjusted by them.
func (c *Choice) adjustPool(a *adjuster) []float64 {
	logs := make([]float64, len(c.pool))
	fill := func() {
		for i, p := range c.pool {
			_, price := a.adjust(p.i)
			logs[i] = math.Log(max(price, 1))
		}
	}
	fill()
	a.local = a.around(c.pool, logs)
	if !a.m.byPairs {
		fill()
	}
	if a.doubted = a.disbelieve(a.middlePrice()); len(a.doubted) > 0 {
		fill()
	}
	return logs
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

// notBest marks the sales that do not say how much the neighbourhood pays at most: those that
// weigh next to nothing, and those sold for over twice what the middle one of the rest was.
func (v *Value) notBest() {
	var prices []float64
	least := min(slight, 0.5/float64(len(v.Rows)))
	for i := range v.Rows {
		if r := &v.Rows[i]; r.Weight < least {
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

// OthersSay begins what is said of Off.
func (r *Row) OthersSay() string {
	if r.Fewer {
		return "the others that lie together say"
	}
	return "the others say"
}

// The customary limits: net 15%, gross 25% of the price, a former guideline that
// Fannie Mae withdrew on 2014-12-16; 10% for one line, a habit (from memory). Sales
// of more than 12 months ago want a reason, of more than six a word (Fannie Mae
// Selling Guide, 2005 to 2009).
const (
	customaryNet   = 0.15
	customaryGross = 0.25
	customaryLine  = 0.10
	usualMonths    = 12
	farOff         = 0.25 // from what the others say; a usual scatter, common practice, no source
)

// beyond is a share in percent, with as many decimals as tell it from the bound that it is
// beyond.
func beyond(share, bound float64) string {
	for places := 0; ; places++ {
		s := strconv.FormatFloat(100*share, 'f', places, 64)
		if places == 6 || s != strconv.FormatFloat(100*bound, 'f', places, 64) {
			return s + "%"
		}
	}
}

func amber(r *Row) (out []string) {
	if math.Abs(r.Net) > customaryNet {
		out = append(out, fmt.Sprintf("net adjustment %s, beyond the former guideline of 15%%", beyond(math.Abs(r.Net), customaryNet)))
	}
	if r.Gross > customaryGross {
		out = append(out, fmt.Sprintf("gross adjustment %s, beyond the former guideline of 25%%", beyond(r.Gross, customaryGross)))
	}
	var lines []string
	for _, l := range r.Lines {
		if math.Abs(l.Share) > customaryLine {
			lines = append(lines, cmp.Or(l.Extra, l.Line.String()))
		}
	}
	if len(lines) > 0 {
		out = append(out, "more than the customary 10% for "+strings.Join(lines, ", "))
	}
	switch months := math.Round(r.Months); {
	case months > usualMonths:
		out = append(out, fmt.Sprintf("sold %.0f months before, more than the usual 12", months))
	case r.Months > usualMonths:
		out = append(out, "sold just over the usual 12 months before")
	}
	if r.FarOff {
		out = append(out, fmt.Sprintf("%s %.0f%% %s, more than 25%% apart", r.OthersSay(), 100*math.Abs(r.Off), map[bool]string{true: "more", false: "less"}[r.Off > 0]))
	}
	return out
}

// usualSales is how many closed sales a value usually takes (Fannie Mae Selling
// Guide, comparable selection).
const usualSales = 3

func (c *Choice) notes(v *Value) (out []string) {
	if n := len(v.Rows); n < usualSales {
		out = append(out, fmt.Sprintf("Only %d of the usual three sales: the range is wide for it.", n))
	}
	if c.market.byPairs {
		out = append(out, fmt.Sprintf("With %s in all, what is not given comes from pairs of like sales; where there is no pair, nothing is adjusted.", quantity.Counted(c.market.Len(), "sale")))
	}
	for _, d := range v.Disbelieved {
		out = append(out, d.String())
	}
	if len(v.Untold) > 0 {
		out = append(out, "Some differ from the house in what is not adjusted, since nothing that can be believed tells its worth: "+Names(v.Untold)+".")
	}
	if v.Rows[0].Likeness < faint {
		out = append(out, "No sale is much like the subject: take the value with care.")
	}
	var unknown []string
	for _, f := range []struct {
		name string
		fact bool
	}{{"living area", c.Subject.Area.Known}, {"year built", c.Subject.Built.Known}, {"place", c.Subject.Place.Known || len(c.market.stated) > 0}} {
		if !f.fact {
			unknown = append(unknown, f.name)
		}
	}
	if len(unknown) > 0 {
		out = append(out, "Not known of the subject, so neither compared nor adjusted: "+strings.Join(unknown, ", ")+".")
	}
	return append(out, NotAppraisal)
}

// untold are the things in which a sale differs from the subject and of which neither an
// amount, a pair nor a regression that is believed tells the worth.
func (a *adjuster) untold(v *Value) (out []Line) {
	for _, l := range linear[1:] {
		if _, told := v.Linear[l]; told || a.m.tells(l, a.s) && !a.doubts(l) {
			continue
		}
		if slices.ContainsFunc(v.Rows, func(r Row) bool { return apart(figure(l, &r.House), figure(l, a.s), 1) != 0 }) {
			out = append(out, l)
		}
	}
	return out
}

// Names are the names of lines in a row.
func Names(lines []Line) string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = l.String()
	}
	return strings.Join(out, ", ")
}

// faint is a likeness under which sales are hardly like the subject: some three steps.
const faint = 0.01
