package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
)

// houseEdges are beyond which a fact of the house is doubted beside the sold houses that the file
// names, and how the market moves.
func (d *Deal) houseEdges(line string) []Edge {
	c := d.Comps
	if c == nil || c.Value == nil {
		return nil
	}
	switch line {
	case "market_rate":
		return []Edge{{At: decimal.NewFromFloat(-muchGiven), Least: true, Open: true}, {At: decimal.NewFromFloat(muchGiven), Open: true}}
	case "subject_area":
		return c.areaEdges()
	case "subject_condition":
		if _, best := c.ends(func(h *comps.House) comps.Fact { return h.Condition }); best > 0 {
			return []Edge{most(decimal.NewFromFloat(best))}
		}
		return nil
	}
	out := c.nearbyEdges(line)
	least, high := c.ends(lotOf)
	if line == "subject_lot" && least > 0 {
		times := float64(beyondTheLots)
		if c.priced(comps.Lot) {
			times = beyondPricedLots
		}
		out = append(out, Edge{At: edgeAt(least / times), Least: true, Open: true}, Edge{At: edgeAt(high * times), Open: true})
	}
	oldest, newest := c.ends(func(h *comps.House) comps.Fact { return h.Built })
	if line == "subject_built" && newest > 0 && c.priced(comps.Age) {
		out = append(out, Edge{At: edgeAt(oldest - builtLater), Least: true, Open: true}, Edge{At: edgeAt(newest + builtLater), Open: true})
	}
	return out
}

// edgeAt is an edge drawn from figures of sales.
func edgeAt(x float64) decimal.Decimal { return decimal.NewFromFloat(x).Round(3) }

// priced reports whether an amount of the file or of pairs of sales prices a line of the grid.
func (c *Comparables) priced(line comps.Line) bool {
	return slices.ContainsFunc(c.Value.Rates, func(x comps.Rate) bool { return x.Line == line && x.Worth != 0 && x.From != "regression" })
}

// areaEdges are beyond which the sales tell little of a house so small or so large: one alone does not.
func (c *Comparables) areaEdges() []Edge {
	all := c.byArea()
	if len(all) == 0 {
		return nil
	}
	edge := 0
	if len(all) >= usualSales {
		edge = 1
	}
	large, small := all[edge].Area.Value, all[len(all)-1-edge].Area.Value
	return []Edge{least(edgeAt(small / beyondTheSales)), most(edgeAt(large * beyondTheSales))}
}

// nearbyEdges are beyond which the house is unlike nearly all that sold nearby, as doubtHouse has it.
func (c *Comparables) nearbyEdges(line string) (out []Edge) {
	for _, x := range adjusted {
		i := slices.IndexFunc(oddFacts(), func(f oddFact) bool { return f.line == x.line })
		if x.ours != line || i < 0 {
			continue
		}
		f := oddFacts()[i]
		var all []float64
		for _, h := range c.Choice.Nearby() {
			if theirs := x.figure(h); theirs.Known {
				all = append(all, theirs.Value)
			}
		}
		n := nearlyAllOf(len(all))
		if n > len(all) {
			return nil
		}
		slices.Sort(all)
		if high := all[n-1]; f.year {
			out = append(out, Edge{At: edgeAt(high + yearsNearby), Open: true})
		} else if high > 0 {
			out = append(out, Edge{At: edgeAt(high * f.times), Open: true})
		}
		if low := all[len(all)-n]; f.year {
			out = append(out, Edge{At: edgeAt(low - yearsNearby), Least: true, Open: true})
		} else if low > 0 {
			out = append(out, Edge{At: edgeAt(low / f.times), Least: true, Open: true})
		}
	}
	return out
}
