package deal

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// plotSizes are what is measured of the ground around a house that it rarely has more of, in their
// units, where work of some cost goes by all of it: a lot may be larger than anyone sods; common
// practice, no source.
var plotSizes = []struct {
	line, what string
	most       int64
}{
	{"yard", "yard", 15_000}, {"driveway", "driveway", 2500}, {"walk", "walk", 500}, {"patio", "patio", 1000}, {"fence", "fence", 500},
}

// costly is the share of the price from which on work is looked at for what it goes by; common practice,
// no source.
var costly = decimal.New(5, -2)

// doubtPlot doubts sizes of the ground around a house, of a unit or a nought too many. A fence that goes
// around a large yard is let be.
func (r *reader) doubtPlot(out *model.Member) {
	yard := out.Given.Of("yard").Number
	for _, x := range plotSizes {
		v, given := out.Given.Look(x.line)
		if !given || !v.Number.GreaterThan(decimal.NewFromInt(x.most)) {
			continue
		}
		says := fmt.Sprintf("%s is %s, %s", x.what, quoted(v), sqFeet(v.Number))
		if x.line == "fence" {
			if says = "fence is " + quoted(v); yard.IsPositive() {
				if v.Number.Mul(v.Number).LessThanOrEqual(yard.Mul(eight).Mul(eight)) {
					continue // of twice what goes around a square yard
				}
				says += fmt.Sprintf(", more than goes around a yard of %s", sqFeet(yard))
			}
		}
		if w := r.costlyBy(out, x.line); w != nil {
			r.outsideSize(v, fmt.Sprintf("%s, much for a house, and %s goes by all of it", says, w.label))
		}
	}
}

// costlyBy is work without a quote that goes by all of a measure of the outside and costs much, or nil.
func (r *reader) costlyBy(out *model.Member, line string) *work {
	least := r.good("purchase.price").number.Mul(costly)
	for _, w := range r.chosenWorks() {
		if w.quoted() || w.member.Parent.Parent != out || w.member.Given.Of("measure").Refers != line {
			continue
		}
		if cost, known := r.worked(w.member, "cash_cost"); known && cost.GreaterThan(least) {
			return w
		}
	}
	return nil
}
