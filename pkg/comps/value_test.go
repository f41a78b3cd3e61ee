package comps

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func valued(t require.TestingT, sales []Sold, s Subject, w Wish) *Value {
	v, err := listOf(sales).Before(townDay).Choose(s, w).Value()
	require.NoError(t, err)
	return v
}

// requireSound checks what holds of every value.
func requireSound(t require.TestingT, v *Value) {
	sum, mean := 0.0, 0.0
	for i, r := range v.Rows {
		require.Positive(t, r.Weight)
		sum += r.Weight
		mean += r.Weight * r.Adjusted.InexactFloat64()
		price, gross, net := r.Price, 0.0, 0.0
		for _, l := range r.Lines {
			price = price.Add(l.Amount)
			require.True(t, l.Amount.IsInteger())
			net += l.Amount.InexactFloat64() / r.Price.InexactFloat64()
			gross += l.Amount.Abs().InexactFloat64() / r.Price.InexactFloat64()
		}
		require.True(t, price.Equal(r.Adjusted), "the lines re-add to the adjusted price")
		require.InDelta(t, net, r.Net, 1e-12)
		require.InDelta(t, gross, r.Gross, 1e-12)
		require.Less(t, r.Date.Compare(townDay), 0)
		if others := 1 - r.Weight; others > 0 {
			say := 0.0
			for j, o := range v.Rows {
				if j != i {
					say += o.Weight * o.Adjusted.InexactFloat64() / others
				}
			}
			require.InDelta(t, say/r.Adjusted.InexactFloat64()-1, r.LeftOut, 1e-6, "by the others' own sum")
		}
	}
	require.InDelta(t, 1, sum, 1e-12)
	require.InDelta(t, mean, v.Likely.InexactFloat64(), 0.51)
	require.True(t, v.Low.LessThan(v.Likely) && v.Likely.LessThan(v.High))
	require.Equal(t, NotAppraisal, v.Notes[len(v.Notes)-1])
}

func TestTownIsFoundOut(t *testing.T) {
	s := townSubject()
	v := valued(t, town(900, 0.05, 1), s, Wish{})
	requireSound(t, v)
	want := townPrice(&s.House, 0, 0).InexactFloat64()
	require.InEpsilon(t, want, v.Likely.InexactFloat64(), 0.04)
	require.InDelta(t, townMonth, v.Trend.Worth, 4*v.Trend.Error)
	require.InDelta(t, townMonth, v.Trend.Worth, 0.002)
	worth := map[string]float64{ // the town's rates at the subject's value, by hand
		"sq ft": want * townSize / 1500, "full bath": want * math.Expm1(townBath), "year newer": want * math.Expm1(-townAge), "1,000 sq ft of lot": 0,
		"house without a garage": want * math.Expm1(-townGarage),
	}
	for _, r := range v.Rates {
		if w, ok := worth[r.Unit]; ok {
			require.InDelta(t, w, r.Worth, 4*r.Error, r.Unit)
			require.Positive(t, r.Error)
			delete(worth, r.Unit)
		}
	}
	require.Empty(t, worth, "a rate for each")
}

// Where no sale says how large it is, nothing is said of a square foot.
func TestNoSaleTellsTheSize(t *testing.T) {
	sales := town(900, 0.05, 1)
	for i := range sales {
		sales[i].Area = Fact{}
	}
	for _, r := range valued(t, sales, townSubject(), Wish{}).Rates {
		require.NotEqual(t, Size, r.Line, r.Unit)
	}
}

// What baths and age, size and age, lot and age do together is shared out to both: a
// sale with as many baths as the house is not adjusted for baths.
func TestEqualBathsAreNotAdjusted(t *testing.T) {
	s, equal, other := townSubject(), 0, 0
	for _, r := range valued(t, town(900, 0.05, 1), s, Wish{Count: 40}).Rows {
		for _, l := range r.Lines {
			if l.Line == Baths {
				require.NotEqual(t, s.FullBaths, r.FullBaths, r.Name())
				other++
			}
		}
		if r.FullBaths == s.FullBaths {
			equal++
		}
	}
	require.Positive(t, equal)
	require.Positive(t, other)
}

func TestValueIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 250).Draw(t, "sales")
		sales := town(n, rapid.Float64Range(0, 0.4).Draw(t, "noise"), rapid.Uint64().Draw(t, "seed"))
		s := Subject{House: townHouse(rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "subject"), 1)))}
		v := valued(t, sales, s, Wish{})
		requireSound(t, v)

		require.Equal(t, v, valued(t, rapid.Permutation(sales).Draw(t, "order"), s, Wish{}), "order changes nothing")

		later := town(20, 1, 99)
		for i := range later {
			later[i].Date = townDay.AddDays(i)
		}
		require.Equal(t, v, valued(t, append(later, sales...), s, Wish{}), "later sales change nothing")
	})
}

// A sale of the subject's twin on the day before keeps its price but for one day of
// the market; with the market's trend given as none, to the dollar.
func TestTwinKeepsItsPrice(t *testing.T) {
	for _, n := range []int{0, 3, 40, 400} {
		s := townSubject()
		twin := Sold{House: s.House, Label: "twin", Date: townDay.AddDays(-1), Price: usd(234_567)}
		v := valued(t, append(town(n, 0.1, 5), twin), s, Wish{Given: Given{Time: 0}})
		found := false
		for _, r := range v.Rows {
			if r.Label == "twin" {
				requireUSD(t, 234_567, r.Adjusted)
				require.Empty(t, r.Lines)
				found = true
			}
		}
		require.True(t, found, "the twin is taken of %d", n)
	}
}

func TestNoneOneTwo(t *testing.T) {
	s := townSubject()
	_, err := listOf(nil).Before(townDay).Choose(s, Wish{}).Value()
	require.ErrorIs(t, err, ErrNoSales)
	late := town(5, 0, 1)
	for i := range late {
		late[i].Date = townDay
	}
	_, err = listOf(late).Before(townDay).Choose(s, Wish{}).Value()
	require.ErrorIs(t, err, ErrNoSales, "sales of the day itself are not used")

	width := func(n int) float64 {
		sales := make([]Sold, n)
		for i := range sales {
			sales[i] = Sold{House: s.House, Date: townDay.AddDays(-30 - i), Price: usd(200_000)}
			sales[i].Lot = Known(7000 + float64(i)) // not the same house
		}
		v := valued(t, sales, s, Wish{})
		requireSound(t, v)
		require.Contains(t, v.Notes[0], map[bool]string{true: "usual three", false: "in all"}[n < 3])
		return v.High.Sub(v.Low).Div(v.Likely).InexactFloat64()
	}
	one, two, ten := width(1), width(2), width(10)
	require.Greater(t, one, two)
	require.Greater(t, two, ten)
	require.Greater(t, one, 0.75, "one sale says little")
}

// A grid worked by hand from stated amounts; the houses are invented. Sale of
// 1,400 sq ft, 1 bath, built 1960, no garage, $200,000 with $5,000 given back, six
// months of 365/12 days before: 195,000; time 1% a month, rounded as a whole line;
// 100 sq ft at $60, a bath at $8,000, 10 years at $500 newer, a garage at $12,000.
func TestGivenAmounts(t *testing.T) {
	s := townSubject()
	h := s.House
	h.Area, h.FullBaths, h.Built, h.Garage = Known(1400), Known(1), Known(1960), "none"
	days := 73 // 2.4 months of 365/12 days
	sale := Sold{House: h, Date: townDay.AddDays(-days), Price: usd(200_000), Concessions: usd(5_000)}
	v := valued(t, []Sold{sale}, s, Wish{Given: Given{Time: 0.01, Size: 60, Baths: 8000, Age: 500, Garage: 12_000}})
	got := map[Line]string{}
	for _, l := range v.Rows[0].Lines {
		got[l.Line] = l.Amount.String()
	}
	require.Equal(t, map[Line]string{Concessions: "-5000", Time: "4680", Size: "6000", Baths: "8000", Age: "5000", Garage: "12000"}, got)
	requireUSD(t, 230_680, v.Rows[0].Adjusted)
	require.InDelta(t, 0.1534, v.Rows[0].Net, 1e-9)
	require.InDelta(t, 0.2034, v.Rows[0].Gross, 1e-9)
	require.Equal(t, []string{"net adjustment 15.3%, beyond the former guideline of 15%"}, v.Rows[0].Amber)
	require.Equal(t, "given", v.Trend.From)
}

// Licence-school example: $285,000 with a garage and $270,000 without make a garage
// worth $15,000; here the subject has one.
func TestACarOfGarageIsToldForAnyGarage(t *testing.T) {
	for _, garage := range []House{{Garage: "none"}, {Garage: "attached"}, {GarageCars: Known(2)}, {Garage: "none", GarageCars: Known(0)}} {
		s := townSubject()
		s.Garage, s.GarageCars = garage.Garage, garage.GarageCars
		v := valued(t, town(5, 0.05, 3), s, Wish{Given: Given{Garage: 7000}})
		require.Contains(t, v.Rates, Rate{Garage, aCar, 7000, 0, "given", 0}, garage)
	}
	s := townSubject()
	s.Garage, s.GarageCars = "", Fact{}
	for _, r := range valued(t, town(5, 0.05, 3), s, Wish{Given: Given{Garage: 7000}}).Rates {
		require.NotEqual(t, Garage, r.Line, "nothing is known of it, so nothing is adjusted")
	}
}

// A nought too many weighs little for being so far off, and makes a good part of the value
// all the same: it alone is named. What the others say of it and of one of them is by hand:
// all alike and of nearly one day, 300,000 against 3,000,000.
func TestMistypedPriceIsNamed(t *testing.T) {
	s := townSubject()
	sales := make([]Sold, 5)
	for i := range sales {
		sales[i] = Sold{House: s.House, Line: i + 1, Label: string(rune('a' + i)), Date: townDay.AddDays(-30), Price: usd(300_000)}
	}
	sales[4].Price = usd(3_000_000)
	v := valued(t, sales, s, Wish{})
	require.Greater(t, v.Likely.InexactFloat64(), 310_000.0)
	for _, r := range v.Rows {
		require.Equal(t, r.Label == "e", r.Apart, r.Label)
		require.Equal(t, r.Label == "e", r.FarOff, r.Label)
		require.InDelta(t, map[bool]float64{true: -0.9}[r.Apart], r.Off, 1e-9)
	}

	sales[4].Price = usd(140_000) // under half of the others
	require.True(t, valued(t, sales, s, Wish{}).Rows[4].Apart)
	for _, r := range valued(t, sales[3:], s, Wish{}).Rows {
		require.False(t, r.Apart || r.FarOff, "of two nobody knows which is wrong")
	}
}

// Beside a twin of the day before, a sale that is unlike in everything weighs a millionth,
// and it alone is what the others say of the twin: 234,567 against 300,001.
func TestOthersOfASaleWithNearlyAllTheWeight(t *testing.T) {
	s := townSubject()
	h := s.House
	h.Area, h.Lot, h.Built, h.FullBaths, h.Place.X = Known(5000), Known(90_000), Known(1900), Known(7), 40_000
	v := valued(t, []Sold{
		{House: s.House, Date: townDay.AddDays(-1), Price: usd(300_001)},
		{House: h, Date: townDay.AddDays(-900), Price: usd(234_567)},
	}, s, Wish{})
	require.Equal(t, 1e-6, v.Rows[1].Weight)
	require.InDelta(t, 234_567.0/300_001-1, v.Rows[0].LeftOut, 1e-6)
	requireSound(t, v)
}

// One sale hundreds of miles off beside four near ones does not make these count alike: the
// nearest counts as many times the farthest of them as it does without.
func TestOneSaleFarAwayLeavesThePlaceOfTheOthers(t *testing.T) {
	s := townSubject()
	s.Place = Place{}
	var sales []Sold
	for i, mi := range []float64{0.1, 0.5, 0.9, 1.4, 400} {
		sales = append(sales, Sold{House: s.House, Label: string(rune('a' + i)), Date: townDay.AddDays(-30), Price: usd(300_000), Stated: Known(mi * 1609.344)})
	}
	ratio := func(sales []Sold) float64 {
		of := map[string]float64{}
		for _, r := range valued(t, sales, s, Wish{}).Rows {
			of[r.Label] = r.Weight
		}
		require.LessOrEqual(t, of["e"], 1e-6)
		return of["a"] / of["d"]
	}
	// by hand a step is 1.4 miles and 150 m: (1.4^2 - 0.1^2) / 1.493^2 = 0.875, and the bell
	// is exp(0.875 / (2 * 0.7^2)) = 2.44; prices alike weigh alike
	require.InDelta(t, 2.44, ratio(sales[:4]), 0.01)
	require.InDelta(t, 2.44, ratio(sales), 0.01)
}

// By stated distances two sales may stand a town apart, and are no pair then: a bath is
// worth what the near one says, 310,000 - 300,000 for half a bath.
func TestStatedDistanceGoesBeforeThePlace(t *testing.T) {
	s := Subject{House: House{Area: Known(1240), Place: Place{X: -83.55, Y: 41.66, Degrees: true, Known: true}}}
	sale := func(line int, lat float64, stated Fact) Sold {
		h := House{Area: Known(1240)}
		if lat != 0 {
			h.Place = Place{X: -83.55, Y: lat, Degrees: true, Known: true}
		}
		return Sold{House: h, Line: line, Date: townDay.AddDays(-30), Price: usd(250_000), Stated: stated}
	}
	sales := []Sold{sale(1, 41.66, Fact{}), sale(2, 41.67, Known(90)), sale(3, 0, Known(50)), sale(4, 41.661, Known(40_000))}
	got := map[int]Fact{}
	for _, k := range listOf(sales).Before(townDay).Choose(s, Wish{}).Comps {
		got[k.Line] = k.Distance
	}
	require.Equal(t, map[int]Fact{1: Known(0), 2: Known(90), 3: Known(50), 4: Known(40_000)}, got)
}

// Twice all prices are twice the value, to the rounding.
func TestScaling(t *testing.T) {
	sales := town(500, 0.1, 8)
	twice := append([]Sold(nil), sales...)
	for i := range twice {
		twice[i].Price = twice[i].Price.Mul(decimal.NewFromInt(2))
	}
	a, b := valued(t, sales, townSubject(), Wish{}), valued(t, twice, townSubject(), Wish{})
	require.InEpsilon(t, 2*a.Likely.InexactFloat64(), b.Likely.InexactFloat64(), 1e-4)
	require.InEpsilon(t, 2*a.High.InexactFloat64(), b.High.InexactFloat64(), 1e-4)
}

// Sales that the stated amounts leave nothing of tell nothing, in whatever money prices are
// written: they are counted, and the value is as without them.
func TestSalesWithoutAPriceTellNothing(t *testing.T) {
	s := townSubject()
	priced := func(times int64, huge bool) *Value {
		var sales []Sold
		for i, x := range town(300, 0.05, 3) {
			if x.Area.Value > s.Area.Value { // none of the others may lose its price
				x.Area = s.Area
			}
			if i%60 == 7 {
				if !huge {
					continue
				}
				x.Area = Known(s.Area.Value + 5000)
			}
			x.Price = x.Price.Mul(decimal.NewFromInt(times))
			sales = append(sales, x)
		}
		return valued(t, sales, s, Wish{Given: Given{Size: 100 * float64(times)}})
	}
	with, without, dear := priced(1, true), priced(1, false), priced(50, true)
	require.Equal(t, 5, with.Priceless)
	require.Zero(t, without.Priceless)
	require.Contains(t, with.Notes[0], "your amounts leave nothing of 5")
	require.InEpsilon(t, 50*with.Low.InexactFloat64(), dear.Low.InexactFloat64(), 1e-4)
	require.InEpsilon(t, 50*with.High.InexactFloat64(), dear.High.InexactFloat64(), 1e-4)
	require.InEpsilon(t, without.Low.InexactFloat64(), with.Low.InexactFloat64(), 0.02)
}

// Two rows of one sale that differ in anything say the same in whichever order they stand.
func TestTheOrderOfTwoRowsOfASalePlaysNoPart(t *testing.T) {
	base := House{Area: Known(1500), FullBaths: Known(2), GarageCars: Known(1), Bedrooms: Known(3)}
	with := func(change func(*Sold)) Sold {
		s := Sold{House: base, Label: "3 Oak St", Date: townDay.AddDays(-40), Price: usd(250_000), Stated: Known(400)}
		change(&s)
		return s
	}
	rest := []Sold{
		{House: base, Label: "5 Elm St", Date: townDay.AddDays(-50), Price: usd(240_000)},
		{House: base, Label: "7 Elm St", Date: townDay.AddDays(-60), Price: usd(262_000)},
	}
	wish := Wish{Given: Given{Garage: 9000, Condition: 15_000, Rooms: 4000, Baths: 7000}, Extras: []Extra{{"pool", usd(12_000)}, {"view", usd(5000)}}}
	house := Subject{House: House{Area: Known(1500), FullBaths: Known(2), GarageCars: Known(1), Bedrooms: Known(3), Condition: Known(4)}}
	for name, both := range map[string][2]func(*Sold){
		"garage cars":     {func(s *Sold) { s.GarageCars = Known(0) }, func(s *Sold) { s.GarageCars = Known(3) }},
		"distance":        {func(s *Sold) { s.Stated = Known(100) }, func(s *Sold) { s.Stated = Known(6000) }},
		"which are known": {func(s *Sold) { s.Bedrooms = Fact{}; s.HalfBaths = Known(0) }, func(s *Sold) {}},
		"zero or unknown": {func(s *Sold) { s.GarageCars = Fact{}; s.HalfBaths = Known(0) }, func(s *Sold) { s.GarageCars = Known(0) }},
		"own lines":       {func(s *Sold) { s.Has = []string{"pool"} }, func(s *Sold) { s.Has = []string{"view"} }},
	} {
		a, b := with(both[0]), with(both[1])
		a.Line, b.Line = 8, 9
		one := valued(t, append([]Sold{a, b}, rest...), house, wish)
		a.Line, b.Line = 9, 8
		two := valued(t, append([]Sold{b, a}, rest...), house, wish)
		require.Len(t, one.Rows, 3, name)
		require.True(t, one.Likely.Equal(two.Likely) && one.Low.Equal(two.Low), "%s: %s and %s", name, one.Likely, two.Likely)
	}
}

// What no sale of a list differs in, a regression tells nothing of: it has no worth, is not
// doubted and is named as not adjusted. Rounding makes no worth either, of prices all alike.
func TestARegressionTellsNothingOfWhatIsAllTheSame(t *testing.T) {
	s := townSubject()
	sales := town(300, 0.05, 1)
	for i := range sales {
		h := &sales[i].House
		h.FullBaths, h.Lot, h.Built = Known(1), Known(6000), Known(1960)
	}
	v := valued(t, sales, s, Wish{})
	require.Equal(t, []Line{Lot, Baths, Age}, v.Untold)
	require.Empty(t, v.Disbelieved)
	for _, r := range v.Rates {
		require.NotContains(t, v.Untold, r.Line, r.Unit)
	}
	for _, r := range v.Rows {
		for _, l := range r.Lines {
			require.NotContains(t, v.Untold, l.Line)
		}
	}
	require.Equal(t, []Line{Lot, Age}, valued(t, sales, s, Wish{Given: Given{Baths: 9000}}).Untold)

	for i := range sales {
		sales[i].Price, sales[i].Date = usd(100_000), townDay.AddDays(-77)
	}
	v = valued(t, sales, s, Wish{})
	requireUSD(t, 100_000, v.Likely)
	require.Empty(t, v.Disbelieved)
	require.False(t, v.Trend.Told(), "all of one day")
	for _, r := range v.Rates {
		require.InDelta(t, 0, r.Worth, 1e-9, r.Unit)
	}
}

// A type that the list has tells its worth by a regression; one that it has not, or that a few
// sales have, tells none.
func TestSalesOfAnotherType(t *testing.T) {
	s := townSubject()
	sales := town(300, 0.05, 1)
	for i := range sales {
		sales[i].Kind = []string{"single family", "condo"}[i%2]
	}
	other := func(kind string, sales []Sold) (n int) {
		s.Kind = kind
		for _, r := range valued(t, sales, s, Wish{}).Rows {
			if r.OtherType {
				n++
			}
		}
		return n
	}
	require.Zero(t, other("condo", sales))
	require.Zero(t, other("single family", sales))
	require.Zero(t, other("", sales))
	require.Equal(t, 16, other("duplex", sales))
	require.Equal(t, 2, other("condo", sales[:4]))
}

// Prices without any scatter leave only rounding of it: the range does not hang on that.
func TestTheRangeOfEqualPricesIsSteady(t *testing.T) {
	s := townSubject()
	var first *Value
	for seed := range uint64(4) {
		sales := town(64, 0, seed)
		for i := range sales {
			sales[i].Price, sales[i].House = usd(200_000), s.House
			sales[i].House.Area = Known(1400 + 3*float64(i))
		}
		v := valued(t, sales, s, Wish{})
		if first == nil {
			first = v
		}
		require.InDelta(t, first.LowShare.InexactFloat64(), v.LowShare.InexactFloat64(), 0.002, "%v", v.LowShare)
	}
	require.Less(t, first.LowShare.InexactFloat64(), 0.98)
}

// Prices without scatter leave only rounding to weigh by: nobody is far off, and the value goes
// with the prices.
func TestEqualPricesWeighAlike(t *testing.T) {
	s, before := townSubject(), 0.0
	for _, price := range []int64{244_000, 244_001, 244_005} {
		sales := town(60, 0.1, 3)
		for i := range sales {
			sales[i].Price = usd(price)
		}
		v := valued(t, sales, s, Wish{})
		for _, r := range v.Rows {
			require.False(t, r.Flags.Has(Outlier), r.Name())
		}
		share := v.Likely.InexactFloat64() / float64(price)
		if before != 0 {
			require.InDelta(t, before, share, 1e-5) // whole dollars
		}
		before = share
	}
}
