package comps

import (
	"fmt"
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// comp describes a sale that is taken.
func (c *Choice) comp(p pick) Comp {
	m := c.market
	s := m.sales[p.i]
	k := Comp{Sold: *s, Months: -m.months[p.i], Likeness: math.Exp(-p.d / 2), Doubts: s.Doubts(), pick: p}
	if c.like.located(p.i) {
		k.Distance = Known(math.Sqrt(c.like.place[p.i]))
	}
	k.Why = c.why(&k)
	return k
}

// why says what a sale has in common with the subject and where it differs.
func (c *Choice) why(k *Comp) string {
	s := &c.Subject.House
	parts := []string{"sold " + monthsAgo(k.Months)}
	if k.Distance.Known {
		parts = append(parts, miles(k.Distance.Value)+" off")
	}
	if s.Area.Known && k.Area.Known {
		parts = append(parts, fmt.Sprintf("%s sq ft against %s", plainNumber(k.Area.Value), plainNumber(s.Area.Value)))
	}
	if s.Built.Known && k.Built.Known {
		parts = append(parts, yearAgainst("built %.0f", k.Built.Value, s.Built.Value))
	}
	if a, b := bathsOf(s), bathsOf(&k.House); a.Known && b.Known && a != b {
		parts = append(parts, fmt.Sprintf("%s against %s baths", plainNumber(b.Value), plainNumber(a.Value)))
	}
	for _, w := range [][3]string{{"type", s.Kind, k.Kind}, {"storeys", s.Storeys, k.Storeys}, {"walls", s.Wall, k.Wall}, {"garage", s.Garage, k.Garage}} {
		switch {
		case w[1] == "" || w[2] == "":
		case w[1] == w[2]:
			parts = append(parts, "same "+w[0])
		default:
			parts = append(parts, fmt.Sprintf("%s %s against %s", w[0], w[2], w[1]))
		}
	}
	return strings.Join(parts, ", ")
}

// yearAgainst sets a year beside the subject's.
func yearAgainst(format string, sale, subject float64) string {
	if sale == subject {
		return fmt.Sprintf(format, sale) + " too"
	}
	return fmt.Sprintf(format+" against %.0f", sale, subject)
}

func monthsAgo(months float64) string {
	switch n := math.Round(months); n {
	case 0:
		return "within the month before"
	case 1:
		return "1 month before"
	default:
		return fmt.Sprintf("%.0f months before", n)
	}
}

// miles says a distance, short ones in feet.
func miles(m float64) string {
	if ft := m / 0.3048; ft < 1000 {
		return fmt.Sprintf("%.0f ft", ft)
	}
	return fmt.Sprintf("%.1f miles", m/Mile)
}

func plainNumber(v float64) string {
	return quantity.FormatCount(decimal.New(int64(math.Round(v*100)), -2), 2)
}
