package comps

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"
)

// amounts are the adjustments of one sale by line, in dollars before rounding.
type amounts [lineCount]float64

// adjuster turns a sale of the market into one of the subject.
type adjuster struct {
	*likeness
	choice *Choice
	given  Given
	told   map[Line]Rate // by pairs of sales, as far as it can be believed
	local  *local
	// doubted are the lines whose estimates are not believed, so not adjusted.
	doubted []Disbelief
	at      []float64 // the subject's figures
	known   []bool    // which of them are known
}

func (c *Choice) adjuster() *adjuster {
	m, l := c.market, c.like
	k := len(m.design.traits)
	a := &adjuster{likeness: l, given: c.given, choice: c, at: make([]float64, m.columns), known: make([]bool, k)}
	m.design.at(l.s, a.at)
	for j, t := range m.design.traits {
		_, a.known[j] = t.of(l.s)
	}
	timeColumns(0, a.at[k:])
	a.byBelief()
	return a
}

// logs returns by how much each line moves the log of a sale's price.
func (a *adjuster) logs(i int) (out amounts) {
	m := a.m
	row, s := m.row(i), m.sales[i]
	k := len(m.design.traits)
	for j := range m.design.traits {
		t := &m.design.traits[j]
		if !a.known[j] || row[j] == a.at[j] && t.aged == nil {
			continue
		}
		if _, ok := t.of(&s.House); ok {
			whole, byAge := m.fit.beta[j]*(a.at[j]-row[j]), 0.0
			if t.aged != nil {
				byAge = m.fit.beta[j] * m.design.byAge(t, a.s, &s.House)
			}
			out[t.line] += whole - byAge
			out[Age] += byAge
		}
	}
	for j := k; j < m.columns; j++ {
		out[Time] += m.fit.beta[j] * (a.at[j] - row[j])
	}
	if a.local != nil {
		for j, t := range slopes {
			out[t.line] -= a.local.delta[j] * t.of(a.likeness, i)
		}
	}
	for _, d := range a.doubted {
		out[d.Line] = 0
	}
	return out
}

// adjust returns the adjustments of a sale in dollars and its adjusted price. The
// market's change since the sale comes first; all else is a sum on the price that
// leaves. What the lines do together in the log is shared out by their parts.
func (a *adjuster) adjust(i int) (out amounts, adjusted float64) {
	s := a.m.sales[i]
	price := s.Net().InexactFloat64()
	out[Concessions] = -s.Concessions.InexactFloat64()
	logs := a.logs(i)
	out[Time] = price * math.Expm1(logs[Time])
	if r, ok := a.amountOf(Time); ok {
		out[Time] = price * r.Worth * -a.m.months[i]
	}
	now := price + out[Time]
	total := 0.0
	for l := Location; l < lineCount; l++ {
		if _, ok := a.amountFor(l, i); ok {
			logs[l] = 0
		}
		total += logs[l]
	}
	share := 1.0
	if math.Abs(total) > 1e-9 {
		share = math.Expm1(total) / total
	}
	adjusted = now
	for l := Location; l < lineCount; l++ {
		out[l] = now * logs[l] * share
		if r, ok := a.amountFor(l, i); ok {
			out[l] = r.Worth * apart(figure(l, a.s), figure(l, &s.House), 1)
		}
		if l == Own {
			for _, x := range a.choice.extras {
				out[l] += a.extra(x, s).InexactFloat64()
			}
		}
		adjusted += out[l]
	}
	return out, adjusted
}

// extra is what one of them makes of a sale, in whole dollars.
func (a *adjuster) extra(x Extra, s *Sold) decimal.Decimal {
	return wholeDollars(Feature(slices.Contains(a.choice.Subject.Has, x.Name), slices.Contains(s.Has, x.Name), x.Worth))
}

// Adjustment is a line of the grid for one sale.
type Adjustment struct {
	Line   Line
	Amount decimal.Decimal // whole dollars, added to the sale's price
	Share  float64         // of the sale's price
	Extra  string          // which of the extras it is for, on the line of those
}

// rounded lays the adjustments of a sale out in whole dollars and returns the adjusted
// price, which they re-add to. Lines at zero are left out.
func (a *adjuster) rounded(i int) (lines []Adjustment, adjusted decimal.Decimal) {
	s := a.m.sales[i]
	of, _ := a.adjust(i)
	adjusted = whole(s.Price)
	add := func(l Line, d decimal.Decimal, extra string) {
		if !d.IsZero() {
			lines = append(lines, Adjustment{l, d, d.InexactFloat64() / s.Price.InexactFloat64(), extra})
			adjusted = adjusted.Add(d)
		}
	}
	for l := range Own {
		d := dollars(of[l])
		if r, ok := a.amountFor(l, i); ok {
			d = a.byUnits(l, r, i)
		}
		add(l, d, "")
	}
	for _, x := range a.choice.extras {
		add(Own, a.extra(x, s), x.Name)
	}
	return lines, adjusted
}
