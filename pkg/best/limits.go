package best

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/choose"
)

// Limits are what a choice must keep; nil is none.
type Limits struct {
	Cash     *decimal.Decimal // needed at most, in dollars
	Weeks    *decimal.Decimal // of the renovation
	OwnHours *decimal.Decimal
}

// keeps reports whether a choice keeps the limits.
func (l Limits) keeps(c *Choice) bool {
	within := func(x decimal.Decimal, most *decimal.Decimal) bool {
		return most == nil || x.Round(9).LessThanOrEqual(*most)
	}
	return within(c.Cash, l.Cash) && within(c.Weeks(), l.Weeks) && within(c.OwnHours, l.OwnHours)
}

// monthsAtMost is the weeks in months.
func (l Limits) monthsAtMost() (float64, bool) {
	if l.Weeks == nil {
		return 0, false
	}
	return l.Weeks.Div(weeksAMonth).InexactFloat64(), true
}

// tie is the budget, then the time, of which the smaller is better.
func (c *Choice) tie() [2]int64 {
	return [2]int64{cents(c.Budget), c.Renovation.Shift(9).Round(0).IntPart()}
}

func cents(x decimal.Decimal) int64 { return x.Shift(2).Round(0).IntPart() }

// problem is a house with limits, for a search.
type problem struct {
	*House
	limits Limits
	bounds []*sliceBound
	z      [ways]float64
	in     []float64
	out    []float64
	taken  []float64 // by pool
	more   []float64 // by pool, at the most by the open rooms
	floor  int64     // what two choices found are worth
	open   []int
	moves  bool // the time of the work moves the deal
	err    error
}

var _ choose.Problem = (*problem)(nil)

// Rooms is the number of options in each room.
func (p *problem) Rooms() []int { return p.sizes }

// Worth works a choice out exactly.
func (p *problem) Worth(choice []int) (int64, bool, [2]int64) {
	c, err := p.At(choice)
	if err != nil {
		p.err = err
		return 0, false, [2]int64{}
	}
	return cents(c.Profit), p.limits.keeps(c), c.tie()
}
