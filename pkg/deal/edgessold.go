package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/model"
)

// soldFacts are the facts of a sold house of which a mark, a point or a nought may slip.
var soldFacts = []string{"comp_area", "comp_lot", "comp_bedrooms", "comp_baths", "comp_garage"}

// monthsMore is within how many months of the day that the file says a sale may well be.
var monthsMore = decimal.NewFromInt(18)

// soldEdges are beyond which a fact of a sold house is doubted: beside its sale, and beside this house.
func (d *Deal) soldEdges(c *model.Cell) (out []Edge) {
	ours := d.Comps.Subject
	switch c.Line.Name {
	case "months_before":
		if c.Given != nil {
			out = append(out, most(decimal.Max(c.Given.Number.Mul(billTimes), c.Given.Number.Add(monthsMore))))
		}
	case "comp_built":
		if row := d.Comps.rowOf(c.Member); row != nil {
			out = append(out, most(decimal.NewFromInt(int64(builtBy(row)))))
		}
	case "comp_area":
		if ours.Area.Known {
			out = append(out, Edge{At: edgeAt(ours.Area.Value / timesTheHouse), Least: true, Open: true}, Edge{At: edgeAt(ours.Area.Value * timesTheHouse), Open: true})
		}
	case "comp_bedrooms":
		if ours.Bedrooms.Value > 0 {
			out = append(out, Edge{At: edgeAt(ours.Bedrooms.Value * timesTheHouse), Open: true})
		}
	}
	return out
}

// rowOf is the sale of a member of the model, nil where it is of none.
func (c *Comparables) rowOf(m *model.Member) *comps.Row {
	if i := slices.Index(c.Members, m); i >= 0 {
		return &c.Value.Rows[i]
	}
	return nil
}

// builtBy is the last year in which a sold house was built: a new one may be sold in the year before.
func builtBy(row *comps.Row) int { return row.Date.Year + 1 }

// amountEdges are beyond which what a unit of a thing is worth is doubted beside what the sales went for.
func (c *Comparables) amountEdges(line string) []Edge {
	beside := func(share, whole float64) []Edge {
		if whole <= 0 {
			return nil
		}
		return []Edge{most(edgeAt(share * whole))}
	}
	switch line {
	case "size_rate":
		return beside(wholeSqFt, c.middlePerSqFt(livingAreaOf))
	case "lot_rate":
		return beside(mostForLand, c.middlePerSqFt(lotOf))
	}
	out := []Edge{}
	if line == "condition_rate" {
		out = append(out, least(decimal.NewFromInt(leastStep)))
	}
	for _, row := range adjusted {
		if share, ok := mostOfPrice[row.line]; ok && row.rate == line {
			out = append(out, most(c.partOfMiddle(share)))
		}
	}
	return out
}

// beyondAmount reports whether an amount is above what one of a line of the grid may well be worth.
func (c *Comparables) beyondAmount(line string, x decimal.Decimal) bool {
	return slices.ContainsFunc(c.amountEdges(line), func(e Edge) bool { return !e.Least && !e.Holds(x) })
}

// partOfMiddle is so many hundredths of the middle price of the sales, in whole dollars.
func (c *Comparables) partOfMiddle(hundredths int64) decimal.Decimal {
	return decimal.NewFromFloat(c.middlePrice()).Round(0).Mul(decimal.New(hundredths, -2))
}

// ownEdges are those of what an own line is worth, which may be below nothing: where it takes from a
// house it does not add to one.
func (c *Comparables) ownEdges(given decimal.Decimal) []Edge {
	far := c.partOfMiddle(mostOwn)
	switch out := []Edge{most(far), least(far.Neg())}; {
	case given.IsPositive():
		return append(out, most(given.Mul(billTimes)), least(given.Div(billTimes).Round(2)))
	case given.IsNegative():
		return append(out, least(given.Mul(billTimes)), most(decimal.Zero))
	default:
		return out
	}
}

// aboveBest is how a value is doubted above the most that any comparable sold for, and outsideSales how
// it is outside what they say.
func (d *Deal) aboveBest() Beside { return d.valueOver("best_comp_price", one) }

func (d *Deal) outsideSales() []Beside {
	return []Beside{d.valueOver("comps_high", one), d.valueOver("comps_low", one.Neg())}
}

// valueOver is how the after-repair value is doubted over a line of the comparables, or with -1 under it.
func (d *Deal) valueOver(line string, times decimal.Decimal) Beside {
	root := d.Model.Root
	return Beside{{Parts: []Part{{Cell: d.Model.Find(root, "after_repair_value"), Times: times}, {Cell: d.Model.Find(root, line), Times: times.Neg()}}}}
}

// hasSales reports whether sold houses say something of the value.
func (d *Deal) hasSales() bool { return d.Comps != nil && d.Comps.Value != nil }
