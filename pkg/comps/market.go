package comps

import (
	"math"
	"slices"

	"ledgerboard/pkg/internal/float"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/quantity"
)

// monthDays is the length of a month in days.
const monthDays = 365.0 / 12

// bends are how many months before the day the trend may change its pace.
var bends = []float64{12, 30}

// Market is what can be learnt of a list of sales by a day, from sales before it.
type Market struct {
	Day quantity.Date

	list    *List
	sales   []*Sold // that may be used, earliest first
	aside   []*Sold // before the day, but doubtful
	old     int     // left out, since nearer ones suffice
	flat    plane
	east    []float64 // metres
	north   []float64
	placed  []bool
	stated  []int     // those of which the list says how far off they are
	months  []float64 // before the day, so below zero
	area    []float64 // log
	lot     []float64 // log
	design  *design
	columns int       // of x: traits, then time
	x       []float64 // a row for each sale
	y       []float64 // log of the net price
	fit     *fit
	byPairs bool // there are too few sales for a regression
}

// Before returns what is known of the market by a day: of all later sales, and those
// of the day itself, nothing is used. Doubtful sales are set aside.
func (l *List) Before(day quantity.Date) *Market { return l.before(day, nil, nil) }

// Without is the market as if the list did not hold the sale of a line.
func (m *Market) Without(line int) *Market {
	l := *m.list
	l.sales = slices.DeleteFunc(slices.Clone(l.sales), func(s Sold) bool { return s.Line == line })
	return l.Before(m.Day)
}

// before is Before where the sales of some lines are used although they are doubtful, and
// those of others although they are old.
func (l *List) before(day quantity.Date, lines, keep []int) *Market {
	m := &Market{Day: day, list: l}
	for i := range l.sales {
		s := &l.sales[i]
		switch {
		case s.Date.Compare(day) >= 0:
		case s.Flags != 0 && !slices.Contains(lines, s.Line):
			m.aside = append(m.aside, s)
		default:
			m.sales = append(m.sales, s)
		}
	}
	m.old = m.withoutOld(slices.Concat(lines, keep))
	m.lay()
	m.learn()
	return m
}

// lay lays out the sales as rows of figures.
func (m *Market) lay() {
	n := len(m.sales)
	m.east, m.north, m.placed = make([]float64, n), make([]float64, n), make([]bool, n)
	m.months, m.y = make([]float64, n), make([]float64, n)
	m.area, m.lot = make([]float64, n), make([]float64, n)
	m.flat = newPlane(m.sales)
	m.design = newDesign(m.sales, m.Day)
	m.columns = len(m.design.traits) + 1 + len(bends)
	m.x = make([]float64, n*m.columns)
	for i, s := range m.sales {
		if s.Stated.Known {
			m.stated = append(m.stated, i)
		}
	}
	var parts []func() error
	half := max(1, (n+1)/2)
	for from := 0; from < n; from += half {
		parts = append(parts, func() error { m.layRows(from, min(from+half, n)); return nil })
	}
	_ = together.Run(parts...) // none fails
}

// layRows lays some of the sales out.
func (m *Market) layRows(from, to int) {
	k := len(m.design.traits)
	for i := from; i < to; i++ {
		s := m.sales[i]
		m.east[i], m.north[i], m.placed[i] = m.flat.metres(s.Place)
		m.months[i] = -float64(quantity.DaysBetween(s.Date, m.Day)) / monthDays
		m.area[i], m.lot[i] = math.Log(s.Area.Value), logLot(&s.House)
		m.y[i] = math.Log(float.Near(s.Net()))
		row := m.row(i)
		m.design.at(&s.House, row)
		timeColumns(m.months[i], row[k:])
	}
}

func (m *Market) row(i int) []float64 { return m.x[i*m.columns : (i+1)*m.columns] }

// timeColumns writes the months before the day, and those after each bend.
func timeColumns(months float64, to []float64) {
	to[0] = months
	for i, b := range bends {
		to[1+i] = max(months+b, 0)
	}
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i, v := range a {
		s += v * b[i]
	}
	return s
}

// tells reports whether the regression says what a line is worth to houses: a figure of
// it that all of them say varies in the list, and follows from no other.
func (m *Market) tells(l Line, houses ...*House) bool {
	for j, t := range m.design.traits {
		unknown := func(h *House) bool { _, known := t.of(h); return !known }
		if m.has(j, t, l) && !slices.ContainsFunc(houses, unknown) {
			return true
		}
	}
	return false
}

// has reports whether a trait is a figure of a line that the sales tell the worth of.
func (m *Market) has(j int, t trait, l Line) bool {
	return t.line == l && t.aged == nil && m.fit.kept[j]
}

// regressFrom is how many sales a regression takes, and how many for each column.
const regressFrom, eachColumn = 60, 2

// learn estimates what each trait is worth within a neighbourhood.
func (m *Market) learn() {
	cell, n := cells(m.east, m.north, m.placed, tune.CellSize)
	if k := len(m.sales); k >= regressFrom && k-n >= (1+eachColumn)*m.columns {
		m.fit = robustFit(m.x, m.columns, m.y, cell, n)
		return
	}
	m.byPairs = true
	m.fit = &fit{beta: make([]float64, m.columns), kept: make([]bool, m.columns), cov: newSymmetric(m.columns), scale: usualScatter, weight: make([]float64, len(m.sales))}
	for i := range m.fit.weight {
		m.fit.weight[i] = 1
	}
}
