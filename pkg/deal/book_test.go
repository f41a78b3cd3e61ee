package deal_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// booked reads a deal with one room whose work is given, and a price book beside it.
func booked(book, work string) (*deal.Deal, diag.List) {
	open := func(string) ([]byte, error) { return []byte(book), nil }
	text := minimal + "own book: mine.yaml\nrooms: {hall: {size: 12' x 4', work: {" + work + "}}}\n"
	return deal.ReadWith(deal.Options{Open: open}, "a.yaml", []byte(text))
}

// bookSlips are price books with one mistake, and all the codes that come of it.
var bookSlips = [][2]string{
	{"book-want-group", "products: [a]"},
	{"book-want-value", "products: {wall paint: {price: [5]}}"},
	{"book-want-list", "items: {paint walls: {brings: 5}}"},
	{"book-unknown-key", "products: {wall paint: {prise: $5}}"},
	{"book-missing", "products: {gold leaf: {price: $5}}"},
	{"book-two-ways", "products: {gold leaf: {sticks: {8 ft: $5}, price: $5}}"},
	{"book-bad-value", "products: {wall paint: {price: lots}}"},
	{"book-bad-unit", "items: {paint walls: {hired: $5 each}}"},
	{"book-not-by-one", "items: {paint walls: {for each: yes}}"},
	{"book-unknown-measure", "items: {paint walls: {measure: mood}}"},
	{"book-unknown-condition", "items: {paint walls: {brings: [mask room if sunny]}}"},
	{"book-unknown-caution", "items: {paint walls: {cautions: [dragons]}}"},
	{"book-unknown-product", "items: {paint walls: {materials: {gold leaf: {takes: 1}}}}"},
	{"book-unknown-item", "items: {paint walls: {brings: [gild walls]}}"},
	{"book-house-unless", "items: {paint walls: {brings: [laminate floor in house]}}"},
	{"book-circle", "items: {mask room: {brings: [paint walls]}}"},
	// what any file can be wrong in
	{"yaml-syntax", "products: {wall paint: {price: $5}"},
	{"duplicate-key", "products: {wall paint: {price: $5, price: $6}}"},
	{"yaml-anchor", "products: {wall paint: &p {price: $5}}"},
	{"more-documents", "products: {}\n---\nitems: {}\n"},
	{"file-not-utf8", "products: {caf\xe9: {}}"},
}

func TestEachCodeOfABookIsReached(t *testing.T) {
	reached := map[string]bool{"book-unreadable": true}
	for _, s := range bookSlips {
		d, found := booked(s[1], "paint walls: hired")
		require.Nil(t, d, s[1])
		require.Len(t, found, 1, s[1])
		require.Equal(t, s[0], found[0].Code, s[1])
		require.Equal(t, "mine.yaml", found[0].Pos.File)
		readsWell(t, found[0])
		reached[s[0]] = true
	}
	for _, c := range deal.Codes() {
		require.Equal(t, strings.HasPrefix(c.Name, "book-"), strings.HasPrefix(c.Name, "book-") && reached[c.Name], c.Name)
	}
}

func TestBookThatCannotBeOpened(t *testing.T) {
	text := []byte(minimal + "own book: mine.yaml\n")
	for _, how := range []deal.Options{{}, {Open: func(string) ([]byte, error) { return nil, errors.New("it is gone") }}} {
		d, found := deal.ReadWith(how, "a.yaml", text)
		require.Nil(t, d)
		require.Equal(t, "book-unreadable", found[0].Code)
	}
}

// The price of an own book is that of the product in the model, with what it does not
// say taken from the starter book.
func TestOwnPriceReachesTheModel(t *testing.T) {
	d, found := booked("products: {Wall Paint: {price: $61}}\nitems: {paint walls: {hired: $0.75 per sq ft}}", "paint walls: hired")
	require.False(t, found.HasErrors(), "%v", found)
	i := slices.IndexFunc(d.Root.In("product"), func(m *model.Member) bool { return m.Label == "wall paint" })
	require.GreaterOrEqual(t, i, 0)
	given := d.Root.In("product")[i].Given
	require.Equal(t, "61", given.Of("pack_price").Number.String())
	require.Equal(t, "mine.yaml", given.Of("pack_price").Pos.File)
	require.Equal(t, "1", given.Of("holds").Number.String(), "a gallon, as the starter book has it")
	for m, w := range d.Work {
		if w.Item.Name == "paint walls" {
			require.Equal(t, "0.75", m.Given.Of("hired_price").Number.String())
		}
	}
}

// A new price and a source of the price make it her own, to which no factor of the place
// goes; a day alone does not.
func TestWhatMakesAPriceHerOwn(t *testing.T) {
	for says, own := range map[string]bool{"price: $61": true, "source: Fern Street": true, "dated: 2026-10-02": false, "aisle: paint": false} {
		d, found := booked("products: {wall paint: {"+says+"}}", "paint walls: hired")
		require.False(t, found.HasErrors(), "%v", found)
		i := slices.IndexFunc(d.Root.In("product"), func(m *model.Member) bool { return m.Label == "wall paint" })
		require.Equal(t, own, d.Root.In("product")[i].Given.Of("own_pack_price").Number.IsPositive(), says)
	}
	for says, own := range map[string]bool{"hired: $0.50 per sq ft": true, "hired source: Elm": true, "dated: 2026-10-02": false, "source: x": false, "hours: 0.02 per sq ft": false} {
		d, found := booked("items: {paint walls: {"+says+"}}", "paint walls: hired")
		require.False(t, found.HasErrors(), "%v", found)
		for m, w := range d.Work {
			if w.Item.Name == "paint walls" {
				require.Equal(t, own, m.Given.Of("own_labour_price").Number.IsPositive(), says)
			}
		}
	}
}

// A price is far from the starter book's above 5 times of it and below a fifth, by what
// the pack holds, and where it is in use. The starter book has wall paint at $37 a
// gallon, and $0.48 per sq ft for painting walls; resilient plank at $69 a box. From 3.3 to 5.5
// times the price of a gallon is about that of a pail of five.
func TestAPriceFarFromTheStarterBooksIsDoubted(t *testing.T) {
	for _, c := range []struct {
		book, work string
		far        int
	}{
		{"products: {resilient plank: {price: $345}}", "resilient plank floor: hired", 0},
		{"products: {resilient plank: {price: $346}}", "resilient plank floor: hired", 1},
		{"products: {wall paint: {price: $185.01}}", "paint walls: hired", 1},
		{"products: {wall paint: {price: $185.01}}", "paint walls: {by: hired, price: $39}", 0},
		{"products: {wall paint: {price: $185.01}}", "paint ceiling: hired", 0},
		{"products: {wall paint: {pack: can of 5 gal, price: $185.01}}", "paint walls: hired", 0},
		{"products: {wall paint: {price: $7.40}}", "paint walls: hired", 0},
		{"products: {wall paint: {price: $7.39}}", "paint walls: hired", 1},
		{"products: {wall paint: {price: $0}}", "paint walls: hired", 1},
		{"products: {wall paint: {price: $0}}", "paint walls: {by: hired, allowance: $0}", 0},
		{"products: {wall paint: {price: $37}}", "paint walls: {by: hired, price: $0}", 1},
		{"items: {paint walls: {hired: $0 per sq ft}}", "paint walls: hired", 1},
		{"items: {paint walls: {hired: none}}", "paint walls: hired", 1},
		{"items: {paint walls: {hired: $0 per sq ft}}", "paint walls: own hands", 0},
		{"items: {paint walls: {hired: $2.40 per sq ft}}", "paint walls: hired", 0},
		{"items: {paint walls: {hired: $2.41 per sq ft}}", "paint walls: hired", 1},
		{"items: {paint walls: {hired: $2.41 per sq ft}}", "paint walls: own hands", 1},
		{"items: {paint walls: {hired: $2.41 per sq ft}}", "paint walls: $300", 0},
		{"products: {wall paint: {price: $122}}", "paint walls: hired", 0}, // the starter has it at $37 a gallon
		{"products: {wall paint: {price: $123}}", "paint walls: hired", 1},
		{"products: {wall paint: {price: $165, pack: can of 1 gal}}", "paint walls: hired", 1},
		{"products: {wall paint: {price: $165, pack: pail of 5 gal}}", "paint walls: hired", 0},
		{"products: {wall paint: {price: $37}}", "paint walls: {by: hired, price: $165}", 1},
		{"products: {wall paint: {price: $37}}", "paint walls: {by: hired, price: $120}", 0},
		{"products: {primed baseboard 3-1/4 in: {sticks: {10 ft: $52}}}", "baseboard: hired", 0},
		{"products: {primed baseboard 3-1/4 in: {sticks: {10 ft: $53}}}", "baseboard: hired", 1},
	} {
		d, found := booked(c.book, c.work)
		require.NotNil(t, d, "%s: %v", c.book, found)
		far := slices.DeleteFunc(slices.Clone(found), func(d diag.Diag) bool { return d.Code != "price-far" })
		require.Len(t, far, c.far, "%s %s", c.book, c.work)
		for _, d := range far {
			require.Contains(t, []string{"mine.yaml", "a.yaml"}, d.Pos.File)
			readsWell(t, d)
		}
	}
}

// Hours of an own book are doubted from five times the starter book's on, where the file does not
// say others.
func TestHoursOfABookAreDoubted(t *testing.T) {
	for _, c := range []struct {
		hours, work string
		far         bool
	}{
		{"0.5 per sq ft", "paint walls: own hands", true},
		{"0.01 per sq ft", "paint walls: own hands", false},
		{"0.5 per sq ft", "paint walls: {by: own hands, hours: 0.01 per sq ft}", false},
		{"0.5 per sq ft", "paint walls: $300", false},
	} {
		d, found := booked("items: {paint walls: {hours: "+c.hours+"}}", c.work)
		require.NotNil(t, d, "%v", found)
		i := slices.IndexFunc(found, func(x diag.Diag) bool { return x.Code == "hours-far" && x.Pos.File == "mine.yaml" })
		require.Equal(t, c.far, i >= 0, "%v", found)
		if i >= 0 {
			readsWell(t, found[i])
		}
	}
}

// Work by the run of carpet cannot be measured in a room of which only the walls are known, not
// by its closets alone.
func TestWorkByTheRunOfCarpetNeedsRectangles(t *testing.T) {
	const item = "items: {lay roll: {trade: flooring, measure: carpet run, hours: 0.2 per ft, hired: $5 per ft, materials: none, brings: none, source: mine}}"
	open := func(string) ([]byte, error) { return []byte(item), nil }
	text := strings.Replace(den, denSize, "walls: [east 12', north 10', west 12', south 10']\n    closets: 5' x 2'", 1)
	text = strings.Replace(strings.Replace(text, "paint walls: hired", "lay roll: hired", 1), "rooms:", "own book: mine.yaml\nrooms:", 1)
	_, found := deal.ReadWith(deal.Options{Open: open}, "a.yaml", []byte(text))
	require.Equal(t, []string{"rolls-of-walk"}, codesIn(found.Errors()), "%v", found)
}

// ages are the codes of old prices that come of a deal.
func ages(found diag.List) (out []string) {
	for _, d := range found {
		if strings.HasSuffix(d.Code, "-old") {
			out = append(out, d.Code+": "+d.Message)
		}
	}
	return out
}

func bought(day string) string {
	return strings.Replace("purchase: {price: $200k, date: DAY, closing: {title: $1k}}", "DAY", day, 1)
}

// A price is old from the day after the one a year on.
func TestPricesAreOldAfterAYear(t *testing.T) {
	const book = "products: {wall paint: {price: $40, dated: DAY}}"
	for _, x := range []struct {
		dated, bought string
		old           bool
	}{
		{"2025-09-14", "2026-09-14", false}, {"2025-09-13", "2026-09-14", true}, {"2027-01-01", "2026-09-14", false},
		{"2024-02-29", "2025-02-28", false}, {"2024-02-29", "2025-03-01", true},
	} {
		text := strings.Replace(minimal, "purchase: {price: $200k, closing: {title: $1k}}", bought(x.bought), 1)
		open := func(string) ([]byte, error) { return []byte(strings.Replace(book, "DAY", x.dated, 1)), nil }
		_, found := deal.ReadWith(deal.Options{Open: open}, "a.yaml", []byte(text+"own book: mine.yaml\nrooms: {hall: {size: 12' x 4', work: {paint walls: own hands}}}\n"))
		got := ages(found)
		require.Equal(t, x.old, len(got) == 1, "%v: %v", x, got)
		if x.old {
			require.Contains(t, got[0], "the price-book price for wall paint is dated "+x.dated)
		}
	}
}

// Only what is in use counts: not a product that a price in the file replaces, nor the
// labour of own work, of a quote, or of an option that is not taken.
func TestOnlyPricesInUseAreOld(t *testing.T) {
	const book = "products: {wall paint: {price: $40, dated: 2025-01-01}}\nitems: {paint walls: {hired: $1 per sq ft, dated: 2025-01-02}}"
	const quote = "quote: $90, covers: all, dated: 2026-08-20"
	for work, want := range map[string]int{
		"paint walls: hired":                              2,
		"paint walls: own hands":                          1,
		"paint walls: {by: hired, price: $50}":            1,
		"paint walls: {by: own hands, price: $50}":        0,
		"paint walls: {" + quote + ", price: $50}":        0,
		"paint walls: {by: hired, hired: $2 per sq ft}":   1,
		"baseboard: own hands":                            0,
		"paint walls: {by: own hands, allowance: $25.50}": 0,
	} {
		text := strings.Replace(minimal, "purchase: {price: $200k, closing: {title: $1k}}", bought("2026-09-14"), 1)
		open := func(string) ([]byte, error) { return []byte(book), nil }
		_, found := deal.ReadWith(deal.Options{Open: open}, "a.yaml", []byte(text+"own book: mine.yaml\nrooms: {hall: {size: 12' x 4', work: {"+work+", paint ceiling: own hands}}}\n"))
		got := ages(found)
		switch want {
		case 0:
			require.Empty(t, got, work)
		case 1:
			require.Len(t, got, 1, work)
			require.Contains(t, got[0], "the price-book price for", work)
		default:
			require.Len(t, got, 1, work)
			require.Contains(t, got[0], fmt.Sprintf("%d price-book prices", want), work)
			require.Contains(t, got[0], "the oldest is of 2025-01-01, for wall paint", work)
		}
	}
	options := "rooms: {hall: {size: 12' x 4', options: {plain: {work: {baseboard: own hands}}, full: {work: {paint walls: hired}}}}}\nscope: plain\nown book: mine.yaml\n"
	for _, all := range []bool{false, true} {
		text := strings.Replace(minimal, "purchase: {price: $200k, closing: {title: $1k}}", bought("2026-09-14"), 1)
		_, found := deal.ReadWith(deal.Options{AllOptions: all, Open: func(string) ([]byte, error) { return []byte(book), nil }}, "a.yaml", []byte(text+options))
		require.False(t, found.HasErrors(), "%v", found)
		require.Empty(t, ages(found), "all options: %v", all)
	}
}

// purchaseDay is a fortnight after the starter book's prices.
var purchaseDay = quantity.Date{Year: 2026, Month: 9, Day: 14}

// Quotes are held against the purchase, or the latest day that the deal names.
func TestQuotesAreOldAfterNinetyDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		days := rapid.IntRange(0, 200).Draw(t, "days")
		quote := purchaseDay.AddDays(-days)
		text := strings.Replace(minimal, "purchase: {price: $200k, closing: {title: $1k}}", bought(purchaseDay.String()), 1)
		_, found := deal.Read("a.yaml", []byte(text+"rooms: {hall: {size: 12' x 4', work: {paint walls: {quote: $90, covers: all, dated: "+quote.String()+"}}}}\n"))
		require.Equal(t, days > 90, len(ages(found)) == 1, "%d days: %v", days, ages(found))
	})
	_, found := booked("", "paint walls: {quote: $90, dated: 2026-01-01}, baseboard: {quote: $90, dated: 2026-02-01}, paint ceiling: {quote: $90, dated: 2026-09-14}")
	require.Len(t, ages(found), 1)
	require.Contains(t, ages(found)[0], "2 quotes are dated over 90 days before the latest day in the deal (2026-09-14)")
}

// The day of the starter book is not one of the deal; one of an own book is.
func TestLatestDayOfADealWithoutAPurchaseDate(t *testing.T) {
	_, found := booked("products: {wall paint: {price: $40, dated: 2024-01-01}}", "paint walls: own hands")
	require.Empty(t, ages(found))
	_, found = booked("products: {wall paint: {price: $40, dated: 2024-01-01}, painter tape: {price: $7, dated: 2025-06-01}}", "paint walls: own hands")
	require.Len(t, ages(found), 1)
	require.Contains(t, ages(found)[0], "the latest day in the deal (2025-06-01)")
}

// A price of an own book that counts for nothing, for its name is a little off, is doubted
// with the name that the work takes.
func TestANameOfAnOwnBookThatNothingTakesIsDoubted(t *testing.T) {
	const sheet = "{price: $9.80, pack: sheet of 32 sq ft}"
	const item = "{trade: paint, measure: walls less large openings, hours: none, hired: $1 per sq ft, materials: %s, brings: none, source: x}"
	for _, c := range []struct{ book, work, near string }{
		{"products: {half inch drywall sheets: " + sheet + "}", "hang wall board: hired", `"drywall half inch"`},
		{"products: {half-inch drywall: " + sheet + "}", "hang wall board: hired", `"drywall half inch"`},
		{"products: {drywal half inch: " + sheet + "}", "hang wall board: hired", `"drywall half inch"`},
		{"products: {half inch drywall sheets: " + sheet + "}", "paint walls: hired", ""}, // no work takes drywall
		{"products: {half inch drywall sheets: " + sheet + "}", "hang wall board: {by: hired, product: half inch drywall sheets}", ""},
		{"products: {drywall half inch: {price: $9.80}, half inch drywall sheets: " + sheet + "}", "hang wall board: hired", ""}, // which has a price of hers
		{"products: {half inch drywall sheets: " + sheet + "}\nitems: {board walls: " + fmt.Sprintf(item, "{half inch drywall sheets: {takes: 1}}") + "}", "hang wall board: hired", ""},
		{"products: {marble shelf: {price: $9, pack: each}}", "hang wall board: hired", ""},
		{"items: {paint wals: " + fmt.Sprintf(item, "none") + "}", "paint walls: hired", `"paint walls"`},
		{"items: {paint wals: " + fmt.Sprintf(item, "none") + "}", "paint wals: hired", ""},
		{"items: {hang shelf: " + strings.Replace(fmt.Sprintf(item, "none"), "paint", "carpentr", 1) + "}", "hang shelf: hired", `"carpentry"`},
		{"items: {hang shelf: " + strings.Replace(fmt.Sprintf(item, "none"), "paint", "carpenters", 1) + "}", "hang shelf: hired", `"carpentry"`},
		{"items: {hang shelf: " + strings.Replace(fmt.Sprintf(item, "none"), "paint", "solar", 1) + "}", "hang shelf: hired", ""},
	} {
		d, found := booked(c.book, c.work)
		require.NotNil(t, d, "%v", found)
		i := slices.IndexFunc(found, func(x diag.Diag) bool { return x.Code == "own-name-near" })
		require.Equal(t, c.near != "", i >= 0, "%s, %s: %v", c.book, c.work, found)
		if i >= 0 {
			require.Contains(t, found[i].Message, c.near)
			require.Equal(t, "mine.yaml", found[i].Pos.File)
			readsWell(t, found[i])
		}
	}
}

// Rent that takes hours or materials for each month is refused until the months are counted,
// for those of the work are known only from all of it.
func TestRentThatTakesMoreIsCounted(t *testing.T) {
	const book = "items: {watch: {trade: general, measure: months of work, hours: 6 per month, hired: $160 per month, materials: {wall paint: {takes: 1}}, brings: none, source: mine}}"
	open := func(string) ([]byte, error) { return []byte(book), nil }
	for how, refused := range map[string]bool{"hired": true, "{by: hired, count: 4 months}": false, "$700": true, "{quote: $700, count: 4 months}": false} {
		text := strings.Replace(den, "rooms:", "own book: mine.yaml\nwhole house: {work: {watch: "+how+"}}\nrooms:", 1)
		d, found := deal.ReadWith(deal.Options{Open: open}, "a.yaml", []byte(text))
		require.Equal(t, refused, slices.Contains(codesIn(found), "rent-uncounted"), how)
		require.Equal(t, refused, d == nil, "%v", found)
		if refused {
			require.Contains(t, found.Errors()[0].Message, "takes hours", how)
			require.Contains(t, found.Errors()[0].Hint, "count: 4 months}", how)
		}
	}
}
