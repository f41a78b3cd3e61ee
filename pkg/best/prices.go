package best

import "github.com/shopspring/decimal"

// A Price is what a limit costs: the best choice without it, the others kept.
type Price struct {
	Limit   string // cash, weeks or own hours
	Most    decimal.Decimal
	Without *Found
	Costs   decimal.Decimal // profit lost by it; 0 where Best is nil
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
		out = append(out, p)
	}
	return out, nil
}
