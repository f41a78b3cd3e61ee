package chance

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/odds"
)

// A Range is how far an input of a deal may come out from the plan.
type Range struct {
	deal.Input
	Cell              *model.Cell
	Label             string          // in words
	Plan              decimal.Decimal // what the plan has
	Low, Likely, High decimal.Decimal // of cases the least, the heaviest and the greatest
	Means             odds.Meaning    // of low and high
	Spread            string          // as the deal file names it
	Cases             []deal.Case     // instead of a spread between low and high
	Assumed           bool            // the deal file does not say it
	Why               string          // what is assumed rests on
	Idle              string          // why it moves nothing here; "" where it does
	Moved             decimal.Decimal // in dollars, with the value, for another scope than the file's; 0 for none
	Pos               diag.Pos        // where the file says it
}

// Ranges are the inputs of a deal that vary: those of its file, in its order, then those
// that are assumed.
func Ranges(d *deal.Deal) ([]Range, error) {
	var out []Range
	for _, r := range d.Ranges {
		out = append(out, stated(r))
	}
	p := plan{deal: d}
	for _, usual := range []func() (*Range, error){p.sale, p.overrun, p.standstill, p.marketing} {
		r, err := usual()
		if err != nil {
			return nil, err
		}
		if r == nil {
			continue
		}
		same := func(in deal.Input) bool { return d.SameCause(in, r.Input) }
		if !slices.ContainsFunc(out, func(o Range) bool { return same(o.Input) }) && !slices.ContainsFunc(d.Steady, same) {
			out = append(out, *r)
		}
	}
	v, err := exact.Known(d.Known)
	if err != nil {
		return nil, err
	}
	for i := range out {
		r := &out[i]
		r.Label = Label(r.Input)
		if r.Cell = d.Model.Find(r.Member, r.Line); r.Cell == nil {
			return nil, fmt.Errorf("%s is not part of the deal", r.Path)
		}
		if err := v.Work(r.Cell); err != nil {
			return nil, err
		}
		r.Plan = v.Of(r.Cell)
	}
	for i := range out {
		out[i].Idle = Idle(d, out[i].Input, out...)
	}
	return out, nil
}

// Idle is why an input moves nothing, beside the ranges that are drawn with it, or "".
func Idle(d *deal.Deal, in deal.Input, with ...Range) string {
	drawn := func(line string) bool {
		return slices.ContainsFunc(with, func(x Range) bool { return x.Line == line })
	}
	switch {
	case in.Line == "lender_value" && !d.CapsByValue():
		return deal.NoValueCap
	case in.Line == "value_before_work" && d.StatesValue():
		return "what the house will be worth is stated, whatever it is before work"
	case in.Line == "value_before_work" && (drawn("after_repair_value") || drawn("sale_price")):
		return "what the house will be worth is drawn by itself, by its own range, whatever this comes to"
	case in.Line == "contingency_share" && drawn("overrun"):
		return "what the work comes to is drawn as the overrun over the bids, whatever is set aside for it"
	}
	return ""
}

// HasLikely reports whether one figure of a range is likelier than the others: the spreads of
// the rest follow from low and high alone.
func (r Range) HasLikely() bool {
	return r.Spread != deal.Normal && r.Spread != deal.LogNormal && r.Spread != deal.Even
}

// stated is a range of the file.
func stated(r deal.Range) Range {
	out := Range{Input: r.Input, Low: r.Low, Likely: r.Likely, High: r.High, Means: odds.OneInTen, Spread: r.Spread, Cases: r.Cases, Pos: r.Pos, Moved: r.Moved}
	if r.Means == deal.VeryEnds {
		out.Means = odds.AtEnds
	}
	if len(r.Cases) > 0 {
		heaviest := slices.MaxFunc(r.Cases, func(a, b deal.Case) int { return a.Weight.Cmp(b.Weight) })
		out.Low, out.Likely, out.High = r.Cases[0].Value, heaviest.Value, r.Cases[len(r.Cases)-1].Value
		out.Means, out.Spread = odds.AtEnds, ""
	}
	return out
}

// labels are the words for inputs of the deal that need other words than their key.
var labels = map[string]string{
	"after_repair_value": "what the house will be worth",
	"sale_price":         "what the house sells for",
	"overrun":            "overrun over the bids",
	"standstill":         "works at a standstill",
	"marketing":          "time on the market",
	"late_sale":          "months late on the market",
	"lead_in":            "time until work starts",
	"renovation":         "time the works take",
	"escrow":             "time from offer to closing",
	"lender_value":       "value the lender counts",
}

// Label names an input in words: first loan, rate; property tax.
func Label(i deal.Input) string {
	if words := labels[i.Line]; words != "" && i.Member.Parent == nil {
		return words
	}
	of := i.Member.Path()
	switch key := i.Key(); {
	case of == "":
		return key
	case i.Member.Set == "fee":
		return of
	default:
		return of + ", " + key
	}
}

// Draws is the spread that trials are drawn from. What the deal file would refuse, such as a
// time below nothing, is not drawn: the nearest value that it takes stands in its place.
func (r Range) Draws() (odds.Spread, error) {
	s, err := r.spread()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", r.Path, err)
	}
	least, most := r.Limits()
	return kept(s, least, most), nil
}

// oftenEnough is the normal score beyond which one case in a thousand lies.
const oftenEnough = 3.09

// Kept are the least and the most that the deal file would take, each where more than a case in
// a thousand would come out beyond and counts as just that; else nil.
func (r Range) Kept() (least, most *decimal.Decimal, err error) {
	s, err := r.spread()
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", r.Path, err)
	}
	least, most = r.Limits()
	if least != nil && s.At(-oftenEnough) >= least.InexactFloat64() {
		least = nil
	}
	if most != nil && s.At(oftenEnough) <= most.InexactFloat64() {
		most = nil
	}
	return least, most, nil
}

func (r Range) spread() (odds.Spread, error) {
	low, likely, high := r.Low.InexactFloat64(), r.Likely.InexactFloat64(), r.High.InexactFloat64()
	if len(r.Cases) > 0 {
		cases := make([]odds.Case, len(r.Cases))
		for i, c := range r.Cases {
			cases[i] = odds.Case{Value: c.Value.InexactFloat64(), Weight: c.Weight.InexactFloat64()}
		}
		return odds.Discrete(cases...)
	}
	switch r.Spread {
	case deal.Triangular:
		return odds.Triangular(r.Means, low, likely, high)
	case deal.Normal:
		return odds.Normal(r.Means, low, high)
	case deal.LogNormal:
		return odds.LogNormal(r.Means, low, high)
	case deal.Even:
		return odds.Uniform(r.Means, low, high)
	}
	return odds.PERT(r.Means, low, likely, high)
}
