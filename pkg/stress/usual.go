package stress

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
)

// A reach is how far an input usually comes out from the plan: by so much less and more,
// in its unit or as a share of it. Common practice, no source.
type reach struct {
	less, more float64
	share      bool
}

// reaches are those of the lines of the deal itself and of its loans.
var reaches = map[string]reach{
	"deal lead_in":           {0, 1, false},
	"deal renovation":        {0.1, 0.33, true},
	"deal escrow":            {0.25, 1, false},
	"deal expected_discount": {0.02, 0.03, false},
	"deal lender_value":      {0.1, 0, true},
	"deal as_is_value":       {0.05, 0, true},
	"loan rate":              {0.005, 0.01, false},
	"loan points_share":      {0.005, 0.01, false},
	"loan price_share":       {0.05, 0, false},
	"loan retainage_share":   {0, 0.05, false},
}

// perCharge is that of any charge.
var perCharge = reach{0.15, 0.15, true}

// usualSwing is how far an input may come out, where common practice has it.
func usualSwing(in deal.Input, plan decimal.Decimal) (low, high decimal.Decimal, ok bool) {
	r, ok := reaches[in.Member.Set+" "+in.Line]
	if in.Member.Set == "fee" {
		r, ok = perCharge, true
	}
	if !ok {
		return low, high, false
	}
	less, more := decimal.NewFromFloat(r.less), decimal.NewFromFloat(r.more)
	if r.share {
		less, more = less.Mul(plan), more.Mul(plan)
	}
	low, high = plan.Sub(less), plan.Add(more)
	least, most := in.Limits()
	low = decimal.Max(low, *least)
	if most != nil {
		high = decimal.Min(high, *most)
	}
	if in.Kind == deal.Money {
		low, high = low.Round(2), high.Round(2)
	}
	return low, high, true
}

// narrowing says what tells more about an input before the bid.
var narrowing = map[string]string{
	"deal after_repair_value": "more sold houses like it, nearby and lately, and what an agent would list it at",
	"deal sale_price":         "more sold houses like it, nearby and lately, and what an agent would list it at",
	"deal market_change":      "what houses like it sold for this month against half a year ago",
	"deal expected_discount":  "how far under their listed prices houses like it closed",
	"deal overrun":            "firm bids for the dearest lines, and a look behind what cannot be seen, before the price is fixed",
	"deal standstill":         "trades booked by date, and what takes long to deliver ordered early",
	"deal lead_in":            "how long permits take now, from the permit desk",
	"deal renovation":         "a calendar that the trades have agreed to",
	"deal marketing":          "how long houses like it stood on the market, at that price and in that season",
	"deal late_sale":          "how long houses like it stood on the market, at that price and in that season",
	"deal escrow":             "how long closings take now, from a closing agent",
	"deal lender_value":       "how the lender comes to its value, asked before the price is fixed",
	"deal as_is_value":        "how the lender comes to its value, asked before the price is fixed",
	"loan rate":               "a written quote, with the day until which it holds",
	"loan points_share":       "a written quote, with the day until which it holds",
	"loan price_share":        "a written quote, with the day until which it holds",
}

func narrows(in deal.Input) string {
	if words := narrowing[in.Member.Set+" "+in.Line]; words != "" || in.Member.Set != "fee" {
		return words
	}
	return "a written quote, or this year's bill"
}
