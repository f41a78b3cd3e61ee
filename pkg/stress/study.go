package stress

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/internal/together"
)

// A Study is all that a page tells of how bad a deal can get.
type Study struct {
	Grid    *Grid
	Days    []Outcome // those of the deal file first
	Ranking []Swing
	Idle    []chance.Range // not ranked: they move nothing
}

// Study works a grid, the bad days and the ranking out.
func (p *Plan) Study(across, down Axis) (*Study, error) {
	s := &Study{}
	days := p.Days()
	s.Days = make([]Outcome, len(days))
	work := []func() error{
		func() (err error) { s.Grid, err = p.Grid(across, down); return err },
		func() (err error) { s.Ranking, err = p.Ranking(); return err },
		func() (err error) { s.Idle, err = p.Idle(); return err },
	}
	for i, d := range days {
		work = append(work, func() (err error) { s.Days[i], err = p.Run(d); return err })
	}
	return s, together.Run(work...)
}

// The values of the usual grid.
var (
	usualMonths = whole(0, 1, 2, 3, 4, 6)
	usualOvers  = hundredths(0, 5, 10, 20, 30, 40, 50)
	usualSales  = hundredths(85, 90, 95, 100, 105) // of the planned sale price, where there are no works
)

func whole(all ...int64) (out []decimal.Decimal) {
	for _, x := range all {
		out = append(out, decimal.NewFromInt(x))
	}
	return out
}

func hundredths(all ...int64) (out []decimal.Decimal) {
	for _, x := range all {
		out = append(out, decimal.New(x, -2))
	}
	return out
}

// UsualAcross is months late; ok is false for another word than those of Late. Without
// works none stand still, and the sale is late.
func (p *Plan) UsualAcross(where Late) (Axis, bool) {
	if where == LateWorks && !p.Line("renovation").IsPositive() {
		where = LateSale
	}
	return p.MonthsLate(where, usualMonths)
}

// UsualDown is the overrun over the bids or, without works, what the house sells for.
func (p *Plan) UsualDown() Axis {
	if p.Line("base_cost").IsPositive() {
		return p.Overruns(usualOvers)
	}
	in, _ := p.Deal.InputNamed("sale price")
	var values []decimal.Decimal
	for _, share := range usualSales {
		values = append(values, p.Line("sale_price").Mul(share).Round(2))
	}
	return Varying("what the house sells for", in, values)
}
