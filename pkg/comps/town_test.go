package comps

import (
	"math"
	"math/rand/v2"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/quantity"
)

// The sales of these tests are invented: a town where size, age, baths, a garage and
// the west side have known worth, and prices rise by half a percent a month.
const (
	townSize   = 0.6    // of the log price, for the log of the area
	townAge    = -0.004 // for a year
	townBath   = 0.06
	townGarage = 0.08
	townMonth  = 0.005
)

var townDay = quantity.Date{Year: 2026, Month: 6, Day: 1}

func townPrice(h *House, months, noise float64) decimal.Decimal {
	v := math.Log(200_000) + townSize*math.Log(h.Area.Value/1500) + townAge*(2026-h.Built.Value-40) +
		townBath*(h.FullBaths.Value-1) + townMonth*months + noise - h.Place.X/40_000
	if h.Garage != "none" {
		v += townGarage
	}
	return dollars(math.Exp(v))
}

func townHouse(r *rand.Rand) House {
	h := House{
		Area: Known(900 + float64(r.IntN(1800))), Lot: Known(4000 + float64(r.IntN(9000))),
		Bedrooms: Known(float64(2 + r.IntN(3))), FullBaths: Known(float64(1 + r.IntN(2))), HalfBaths: Known(0),
		Built: Known(float64(1930 + r.IntN(80))), Garage: "attached", Storeys: "one",
		Place: Place{X: float64(r.IntN(8000)), Y: float64(r.IntN(8000)), Known: true},
	}
	if r.IntN(3) == 0 {
		h.Garage = "none"
	}
	if r.IntN(3) == 0 {
		h.Storeys = "two"
	}
	return h
}

// town returns n sales of the three years before townDay, prices scattered by noise.
func town(n int, noise float64, seed uint64) []Sold {
	r := rand.New(rand.NewPCG(seed, 7))
	out := make([]Sold, n)
	for i := range out {
		days := 1 + r.IntN(1000)
		h := townHouse(r)
		out[i] = Sold{House: h, Line: i + 2, Date: townDay.AddDays(-days),
			Price: townPrice(&h, -float64(days)/monthDays, noise*r.NormFloat64())}
	}
	return out
}

func townSubject() Subject {
	return Subject{Label: "the house", House: House{
		Area: Known(1500), Lot: Known(7000), Bedrooms: Known(3), FullBaths: Known(2), HalfBaths: Known(0),
		Built: Known(1970), Garage: "attached", Storeys: "one", Place: Place{X: 4000, Y: 4000, Known: true},
	}}
}

func listOf(sales []Sold) *List {
	l, _ := NewList(sales, quantity.Date{})
	return l
}
