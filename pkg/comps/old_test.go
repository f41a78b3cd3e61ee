package comps

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// ago is a town's sales, so many days further back, on lines of their own.
func ago(sales []Sold, days, line int) []Sold {
	for i := range sales {
		sales[i].Date, sales[i].Line = sales[i].Date.AddDays(-days), sales[i].Line+line
	}
	return sales
}

// A list that ends 28 years before the day changes nothing beside three newer sales, and
// is used where there are fewer; a sale asked for is used however old.
func TestOldSalesAreLeftOutWhileNearerOnesSuffice(t *testing.T) {
	s := townSubject()
	near, old := town(3, 0.05, 2), ago(town(400, 0.05, 1), 28*365, 10_000)
	both := append(append([]Sold{}, near...), old...)
	require.Equal(t, valued(t, near, s, Wish{}), valued(t, both, s, Wish{}))
	require.Equal(t, 400, listOf(both).Before(townDay).LeftOld())

	two := listOf(both[1:]).Before(townDay)
	require.Zero(t, two.LeftOld())
	require.Equal(t, 402, two.Len())

	v := valued(t, both, s, Wish{Add: []int{old[7].Line}})
	require.Len(t, v.Rows, 4)
	require.Contains(t, linesOf(v), old[7].Line)
}

// Five years and a day are not old, two days more are.
func TestOld(t *testing.T) {
	require.False(t, (&Sold{Date: townDay.AddDays(-5*365 - 1)}).Old(townDay))
	require.True(t, (&Sold{Date: townDay.AddDays(-5*365 - 2)}).Old(townDay))
}

// Where garages make houses cheaper, the regression is not believed: no sale is adjusted
// for its garage, no worth is told, and it is said. What the file gives stands.
func TestWrongSignIsNotBelieved(t *testing.T) {
	s := townSubject()
	s.GarageCars = Known(1)
	sales := town(400, 0.05, 4)
	for i := range sales {
		h := &sales[i].House
		h.Garage, h.GarageCars = "attached", Known(float64(i%3+1))
		sales[i].Price = townPrice(h, sales[i].monthsTo(), -0.1*h.GarageCars.Value)
	}
	v := valued(t, sales, s, Wish{})
	require.Len(t, v.Disbelieved, 1)
	require.Equal(t, Garage, v.Disbelieved[0].Line)
	require.Regexp(t, `^a car of garage would be worth -\$\d+,\d+$`, v.Disbelieved[0].Why)
	require.Contains(t, v.Notes[0], "What the regression says of garage is not believed")
	for _, r := range v.Rows {
		for _, l := range r.Lines {
			require.NotEqual(t, Garage, l.Line)
		}
	}
	for _, r := range v.Rates {
		require.NotEqual(t, Garage, r.Line)
	}
	require.Empty(t, valued(t, sales, s, Wish{Given: Given{Garage: 5000}}).Disbelieved)
	require.Empty(t, valued(t, town(900, 0.05, 1), townSubject(), Wish{}).Disbelieved)
}

// A trend of years, drawn out over 28, is not believed.
func TestTrendDrawnOutIsNotBelieved(t *testing.T) {
	v := valued(t, ago(town(400, 0.05, 1), 28*365, 0), townSubject(), Wish{})
	require.Equal(t, Time, v.Disbelieved[0].Line)
	require.Regexp(t, `^it would move the price of sale of 199\d-.* by \d+%$`, v.Disbelieved[0].Why)
	require.Zero(t, v.Trend.Worth)
	for _, r := range v.Rows {
		for _, l := range r.Lines {
			require.NotEqual(t, Time, l.Line)
		}
	}
}

func (s *Sold) monthsTo() float64 { return -MonthsBefore(s.Date, townDay).InexactFloat64() }
