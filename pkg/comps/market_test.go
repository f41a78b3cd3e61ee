package comps

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// A house that was likely redone between its sales says nothing of the market; what pairs
// that share a sale say is as sure as the few of them that share none.
func TestAResaleRedoneBetweenTellsNoTrend(t *testing.T) {
	s := townSubject()
	sale := func(label string, days int, price int64) Sold {
		return Sold{House: s.House, Label: label, Date: townDay.AddDays(-days), Price: usd(price)}
	}
	v := valued(t, []Sold{sale("9 Fir Rd", 300, 200_000), sale("9 Fir Road", 30, 260_000)}, s, Wish{})
	require.False(t, v.Trend.Told())
	v = valued(t, []Sold{sale("9 Fir Rd", 300, 200_000), sale("8 Fir Rd", 30, 260_000)}, s, Wish{})
	require.Positive(t, v.Trend.Worth, "of two houses")
	flat := []Sold{sale("1 Fir Rd", 30, 210_000), sale("2 Fir Rd", 180, 190_000), sale("3 Fir Rd", 330, 200_000)}
	v = valued(t, flat, s, Wish{})
	var says []float64
	for i, a := range flat {
		for _, b := range flat[i+1:] {
			p, q := a.Price.InexactFloat64(), b.Price.InexactFloat64()
			says = append(says, (p-q)/q/(b.monthsTo()-a.monthsTo())*-1)
		}
	}
	_, se := middle(says)
	require.InDelta(t, se*math.Sqrt(3), v.Trend.Error, 1e-9, "three pairs of three sales are one")
}

// A trend that is not believed has moved no price of the pairs that tell the rest: those
// months apart tell nothing then, and the others say what they sold for.
func TestATrendNotBelievedLeavesNoMark(t *testing.T) {
	s := townSubject()
	other, small := s.House, s.House
	other.Built = Known(1940)
	small.Area = Known(1360)
	sales := func(days int) []Sold {
		return []Sold{
			{House: other, Label: "1 Elm St", Date: townDay.AddDays(-400), Price: usd(200_000)}, {House: other, Label: "2 Oak St", Date: townDay.AddDays(-30), Price: usd(420_000)},
			{House: s.House, Label: "3 Ash St", Date: townDay.AddDays(-30), Price: usd(200_000)}, {House: small, Label: "4 Fir St", Date: townDay.AddDays(-days), Price: usd(186_000)},
		}
	}
	v := valued(t, sales(200), s, Wish{})
	require.Contains(t, v.Disbelieved[0].String(), "of time is not believed")
	require.Contains(t, v.Untold, Size, "the pair lies months apart")
	v = valued(t, sales(60), s, Wish{})
	require.InDelta(t, 14_000/(s.Area.Value-1360), v.Linear[Size].Worth, 0.006)
}

// How far off the trend is over the months to the day widens the range: of 80 sales of one
// month, the newest 300 days before, by nearly its error times those months.
func TestTheTrendsErrorWidensTheRange(t *testing.T) {
	s := townSubject()
	for _, n := range []int{80, 12} { // by regression and by pairs
		sales := town(n, 0.1, 3)
		for i := range sales {
			sales[i].Date = townDay.AddDays(-300 - i%30)
			if n == 12 { // alike but for their days
				sales[i].House, sales[i].Date = s.House, townDay.AddDays(-300-20*(i%6))
				sales[i].Price = usd(200_000 + 1000*int64(i*i%7))
			}
		}
		v, given := valued(t, sales, s, Wish{}), valued(t, sales, s, Wish{Given: Given{Time: 0.003}})
		mean, square := 0.0, 0.0
		for _, r := range v.Rows {
			m := r.Months / (1 + r.Months*v.Trend.Worth)
			if n == 80 {
				m = r.Months / (1 + v.Trend.Worth) // a rate of its own for each month
			}
			mean, square = mean+r.Weight*m, square+r.Weight*m*m
		}
		require.Positive(t, v.Trend.Error)
		require.InEpsilon(t, v.Trend.Error*math.Sqrt(2*mean*mean-square), v.Carried, 1e-3, "%d", n)
		require.Zero(t, given.Carried, "what is stated has no error")
		require.Greater(t, v.HighShare.Div(v.LowShare).InexactFloat64(), given.HighShare.Div(given.LowShare).InexactFloat64())
	}
	require.Less(t, valued(t, town(900, 0.05, 1), s, Wish{}).Carried, 0.01, "a list up to the day hardly needs it")
}

// Where nothing tells the trend, the range has what a market does in so many months.
func TestAnUntoldTrendWidensTheRange(t *testing.T) {
	s := townSubject()
	sales := town(2, 0.1, 3)
	for i := range sales {
		sales[i].Date = townDay.AddDays(-730) // of one day, so no pair tells a trend
	}
	v := valued(t, sales, s, Wish{})
	require.False(t, v.Trend.Told())
	require.InEpsilon(t, UsualDrift*24, v.Carried, 1e-3) // hand: 2 years of 0.5% a month, nothing between the two
	require.Zero(t, valued(t, sales, s, Wish{Given: Given{Time: 0}}).Carried, "stated as none")
	sales[1].House, sales[1].Price, sales[1].Date = sales[0].House, sales[0].Price, townDay.AddDays(-560)
	require.Equal(t, UsualDrift, valued(t, sales, s, Wish{}).Trend.Error, "one pair at one price knows no error of its own")
}
