package comps

import (
	"fmt"
	"strings"
	"testing"
)

// countySize is how many sales a long list of a county holds.
const countySize = 15_129

func countyText() string {
	var b strings.Builder
	b.WriteString("sale_date,price,x_m,y_m,living_area_sqft,lot_sqft,bedrooms,full_baths,half_baths,year_built,stories,garage\n")
	for _, s := range town(countySize, 0.2, 1) {
		fmt.Fprintf(&b, "%s,%s,%.0f,%.0f,%.0f,%.0f,%.0f,%.0f,0,%.0f,%s,%s\n", s.Date, s.Price, s.Place.X, s.Place.Y,
			s.Area.Value, s.Lot.Value, s.Bedrooms.Value, s.FullBaths.Value, s.Built.Value, s.Storeys, s.Garage)
	}
	return b.String()
}

func BenchmarkRead(b *testing.B) {
	text := countyText()
	b.ReportAllocs()
	for b.Loop() {
		if l, _ := Read(strings.NewReader(text), "county.csv", Options{}); l.Len() != countySize {
			b.Fatal(l.Len())
		}
	}
}

// BenchmarkValue learns the market of a day, chooses and values.
func BenchmarkValue(b *testing.B) {
	l, _ := Read(strings.NewReader(countyText()), "county.csv", Options{})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := l.Before(townDay).Choose(townSubject(), Wish{}).Value(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkValueAgain values one more subject on a day's market.
func BenchmarkValueAgain(b *testing.B) {
	l, _ := Read(strings.NewReader(countyText()), "county.csv", Options{})
	m := l.Before(townDay)
	for b.Loop() {
		if _, err := m.Choose(townSubject(), Wish{}).Value(); err != nil {
			b.Fatal(err)
		}
	}
}
