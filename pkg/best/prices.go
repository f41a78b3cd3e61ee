package best

import (
	"slices"

	"github.com/shopspring/decimal"
)

// A Price is what a limit costs: the best choice without it, the others kept.
type Price struct {
	Limit   string // cash, weeks or own hours
	Most    decimal.Decimal
	Without *Found
	Costs   decimal.Decimal // profit lost by it; 0 where Best is nil
	Least   *Choice         // the least cash that was found to do, where no choice keeps the limit
}

// Prices finds what each limit costs.
func (h *House) Prices(l Limits, found *Found) ([]Price, error) {
	var out []Price
	for _, x := range []struct {
		name    string
		most    *decimal.Decimal
		without Limits
	}{
		{"cash", l.Cash, Limits{nil, l.Weeks, l.OwnHours}},
		{"weeks", l.Weeks, Limits{l.Cash, nil, l.OwnHours}},
		{"own hours", l.OwnHours, Limits{l.Cash, l.Weeks, nil}},
	} {
		if x.most == nil {
			continue
		}
		f, err := h.Find(x.without)
		if err != nil {
			return nil, err
		}
		p := Price{Limit: x.name, Most: *x.most, Without: f}
		if f.Best != nil && found.Best != nil {
			p.Costs = f.Best.Profit.Sub(found.Best.Profit)
		}
		if x.name == "cash" && f.Best != nil && found.Best == nil {
			if p.Least, err = h.leastCash(x.without, f.Best.Options); err != nil {
				return nil, err
			}
		}
		out = append(out, p)
	}
	return out, nil
}

// leastCash looks for the least cash with which a choice keeps the other limits: one room at a time from
// those given, the scope of the file and doing nothing. Only where there are few choices is what it finds
// the least of all.
func (h *House) leastCash(others Limits, from []int) (least *Choice, _ error) {
	if h.choices() <= fewChoices {
		return h.leastOfAll(others)
	}
	for _, start := range [][]int{from, h.own(), make([]int, len(h.Rooms))} {
		c, err := h.cheapest(others, start)
		if err != nil {
			return nil, err
		}
		if c != nil && (least == nil || c.Cash.LessThan(least.Cash)) {
			least = c
		}
	}
	return least, nil
}

// fewChoices are soon worked out, all of them.
const fewChoices = 256

// leastOfAll tries every choice.
func (h *House) leastOfAll(others Limits) (least *Choice, _ error) {
	for at := make([]int, len(h.sizes)); ; {
		c, err := h.At(at)
		if err != nil {
			return nil, err
		}
		if others.keeps(c) && (least == nil || c.Cash.LessThan(least.Cash)) {
			least = c
		}
		i := len(at) - 1
		for ; i >= 0 && at[i] == h.sizes[i]-1; i-- {
			at[i] = 0
		}
		if i < 0 {
			return least, nil
		}
		at[i]++
	}
}

// cheapest takes a choice one room at a time to what needs less cash, as long as something does; nil where
// nothing so found keeps the limits.
func (h *House) cheapest(others Limits, start []int) (least *Choice, _ error) {
	at := slices.Clone(start)
	for better := true; better; {
		better = false
		for i, n := range h.sizes {
			was := at[i]
			for o := range n {
				at[i] = o
				c, err := h.At(at)
				if err != nil {
					return nil, err
				}
				if others.keeps(c) && (least == nil || c.Cash.LessThan(least.Cash)) {
					least, was, better = c, o, true
				}
			}
			at[i] = was
		}
	}
	return least, nil
}
