package comps

import (
	"cmp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// List is a list of sales, sorted by date. It is not changed once it is made, so
// several may work on it at once.
type List struct {
	Rows    int      // rows with anything in them
	LeftOut []string // of each of them that is no sale that can be used, why: "of sums"
	Unread  []string // headers of the columns that were not read
	sales   []Sold
}

// NewList makes a list of sales that came from elsewhere, with the doubts about
// them. today may be zero.
func NewList(sales []Sold, today quantity.Date) (*List, diag.List) {
	l := &List{Rows: len(sales), sales: slices.Clone(sales)}
	var found diag.List
	l.settle(today, "", &found)
	return l, found
}

// Len returns how many sales there are, doubtful ones included.
func (l *List) Len() int { return len(l.sales) }

// Sale returns the i-th sale, earliest first.
func (l *List) Sale(i int) Sold { return l.sales[i] }

// token is a price under which a sale is hardly one (common practice, no source).
var token = decimal.NewFromInt(1000)

// settle sorts the sales, so that the order of rows plays no part, and flags what
// is doubtful about them.
func (l *List) settle(today quantity.Date, file string, found *diag.List) {
	l.sort()
	l.onceEach()
	for i := range l.sales {
		s := &l.sales[i]
		if !today.IsZero() && s.Date.Compare(today) > 0 {
			s.Flags |= Future
		}
		if s.Terms != "" {
			s.Flags |= termsFlag(s.Terms)
		}
		s.Flags |= labelFlag(s.Label)
		if s.Price.LessThan(token) {
			s.Flags |= Token
		}
		if s.Concessions.GreaterThanOrEqual(s.Price) {
			s.Flags |= NoNet
		}
	}
	l.recordedAgain()
	for i := range l.sales {
		if s := &l.sales[i]; s.Flags != 0 && len(*found) < 2*enough {
			found.Add(diag.Warnf(diag.Pos{File: file, Line: s.Line}, "doubtful-sale", "%s: %s", s.Name(), s.Doubts()).
				WithHint("it is set aside; ask for it by its line if it should count"))
		}
	}
}

// rows are rows of sales of which several may be of one; behind has that which counts
// instead of one, and which may have another before it in turn.
type rows struct {
	sales  []Sold
	behind map[int]int
}

func (r rows) counts(i int) int {
	for {
		j, ok := r.behind[i]
		if !ok {
			return i
		}
		i = j
	}
}

// same says that two rows are of one sale: that which counts goes before the other, or else
// is the first.
func (r rows) same(i, j int) {
	a, b := r.counts(i), r.counts(j)
	if a == b {
		return
	}
	if a > b {
		a, b = b, a
	}
	if r.sales[b].before(&r.sales[a]) {
		a, b = b, a
	}
	r.behind[b] = a
}

func (r rows) flag(f Flags) {
	for i := range r.behind {
		r.sales[i].Flags |= f
	}
}

// onceEach flags all rows of one sale but that which counts.
func (l *List) onceEach() {
	all := rows{l.sales, map[int]int{}}
	for from, to := 0, 0; from < len(l.sales); from = to {
		s := &l.sales[from]
		for to = from + 1; to < len(l.sales) && l.sales[to].Date == s.Date && l.sales[to].Price.Equal(s.Price); to++ {
		}
		if to-from > 1 {
			all.once(from, to)
		}
	}
	all.flag(Duplicate)
}

// once looks for rows of one sale among those from one on and before another, which are of one day
// and price: a list may have thousands.
func (r rows) once(from, to int) {
	before := byNumber{}
	for i := from; i < to; i++ {
		s := &r.sales[i]
		for _, j := range before.with(s.Label, func(int) bool { return false }) {
			if sameSale(s, &r.sales[j]) {
				r.same(i, j)
			}
		}
		before.add(s.Label, i)
	}
}

// again is within how many days a house at the same price is the same sale, recorded twice
// (common practice, no source).
const again = 30

// recordedAgain flags the rows of one address and price that stand in the list within some
// days, the day of the contract, of the closing, of the recording, but that which counts.
// One that is doubtful for more takes none away.
func (l *List) recordedAgain() {
	all := rows{l.sales, map[int]int{}}
	last := map[string]byNumber{} // of a price, the sales of the days before
	for i := range l.sales {
		s := &l.sales[i]
		if s.Label == "" || s.Flags != 0 {
			continue
		}
		price := s.Price.String()
		near := last[price]
		if near == nil {
			near = byNumber{}
			last[price] = near
		}
		for _, j := range near.with(s.Label, func(j int) bool { return quantity.DaysBetween(l.sales[j].Date, s.Date) > again }) {
			if sameSale(s, &l.sales[j]) {
				all.same(i, j)
			}
		}
		near.add(s.Label, i)
	}
	all.flag(Again)
}

// OneSale reports whether two rows are likely of one sale, recorded twice.
func OneSale(a, b *Sold) bool {
	return soonAfter(a, b) && a.Price.Equal(b.Price) && sameSale(a, b)
}

func soonAfter(a, b *Sold) bool {
	days := quantity.DaysBetween(a.Date, b.Date)
	return -again <= days && days <= again
}

// TwoPrices reports whether two rows are likely of one sale, recorded twice at different prices:
// a house hardly sells again so soon, but for one that was likely redone between.
func TwoPrices(a, b *Sold) bool {
	return soonAfter(a, b) && !a.Price.Equal(b.Price) && SameAddress(a.Label, b.Label) && !likelyRedone(a, b)
}

// Fill takes from another row of the same sale what this one leaves unsaid of the house, its
// place and what the seller gave back, and reports whether that is anything. How it was sold stays
// as it is said here.
func (s *Sold) Fill(o *Sold) (some bool) {
	before := *s
	kind, cars, size := s.Garage, s.GarageCars, s.GarageArea
	mine, theirs := s.facts(), o.facts()
	for i, f := range mine {
		if !f.Known {
			*f = *theirs[i]
		}
	}
	if kind != "" || cars.Known || size.Known {
		s.Garage, s.GarageCars, s.GarageArea = kind, cars, size
	} else {
		s.Garage = o.Garage
	}
	s.Kind, s.Storeys, s.Wall = cmp.Or(s.Kind, o.Kind), cmp.Or(s.Storeys, o.Storeys), cmp.Or(s.Wall, o.Wall)
	if !s.Place.Known {
		s.Place = o.Place
	}
	if s.Concessions.IsZero() {
		s.Concessions = o.Concessions
	}
	if len(s.Has) == 0 {
		s.Has = o.Has
	}
	if len(s.Told) == 0 {
		s.Told = o.Told
	}
	return s.House != before.House || s.Stated != before.Stated || !s.Concessions.Equal(before.Concessions) || len(s.Has) > len(before.Has)
}

// Differs are the lines of the grid in which what is known of two rows differs.
func (s *Sold) Differs(o *Sold) (out []Line) {
	if !s.Concessions.Equal(o.Concessions) {
		out = append(out, Concessions)
	}
	for _, l := range linear[1:] {
		if apart(figure(l, &s.House), figure(l, &o.House), 1) != 0 {
			out = append(out, l)
		}
	}
	return out
}

// before reports whether of two rows of one sale this one counts: written out, or else pasted,
// or else with more known of it.
func (s *Sold) before(o *Sold) bool {
	if s.Origin != o.Origin {
		return s.Origin > o.Origin
	}
	return s.known() > o.known()
}

// known counts what is known of a sale.
func (s *Sold) known() (n int) {
	for _, f := range s.facts() {
		if f.Known {
			n++
		}
	}
	for _, w := range []string{s.Kind, s.Storeys, s.Wall, s.Garage, s.Terms} {
		if w != "" {
			n++
		}
	}
	if s.Place.Known {
		n++
	}
	if !s.Concessions.IsZero() {
		n++
	}
	return n + len(s.Has)
}

// sort sorts the sales by their index, since a sale is long to move.
func (l *List) sort() {
	order := make([]*Sold, len(l.sales))
	for i := range order {
		order[i] = &l.sales[i]
	}
	slices.SortFunc(order, compareSales)
	sorted := make([]Sold, len(order))
	for i, s := range order {
		sorted[i] = *s
	}
	l.sales = sorted
}

// Name tells a sale from others in a message: its label, or its line, day and price.
func (s *Sold) Name() string {
	if s.Label != "" {
		return s.Label
	}
	return "sale of " + s.Date.String() + " for " + quantity.FormatDollars(s.Price)
}

// compareSales orders by day, then by everything that tells sales apart: of two rows that
// differ in anything, the same one stands first in whatever order they came.
func compareSales(a, b *Sold) int {
	if c := a.Date.Compare(b.Date); c != 0 {
		return c // as nearly always
	}
	if c := a.Price.Cmp(b.Price); c != 0 {
		return c
	}
	x, y := a.facts(), b.facts()
	return cmp.Or(
		strings.Compare(a.Label, b.Label),
		cmp.Compare(yes(a.Place.Known), yes(b.Place.Known)),
		cmp.Compare(yes(a.Place.Degrees), yes(b.Place.Degrees)),
		cmp.Compare(a.Place.X, b.Place.X),
		cmp.Compare(a.Place.Y, b.Place.Y),
		slices.CompareFunc(x[:], y[:], func(f, g *Fact) int {
			return cmp.Or(cmp.Compare(yes(f.Known), yes(g.Known)), cmp.Compare(f.Value, g.Value))
		}),
		slices.Compare(a.texts(), b.texts()),
		a.Concessions.Cmp(b.Concessions),
		slices.Compare(a.Has, b.Has),
		cmp.Compare(a.Origin, b.Origin),
		cmp.Compare(a.Line, b.Line),
	)
}

// facts are all facts of a sale, and texts what it says in words, but for its label.
func (s *Sold) facts() [10]*Fact {
	return [...]*Fact{&s.Area, &s.Lot, &s.Built, &s.GarageArea, &s.GarageCars, &s.Bedrooms, &s.FullBaths, &s.HalfBaths, &s.Condition, &s.Stated}
}

func (s *Sold) texts() []string {
	return []string{s.Kind, s.Storeys, s.Wall, s.Garage, s.Terms, s.Source}
}

func yes(b bool) int {
	if b {
		return 1
	}
	return 0
}
