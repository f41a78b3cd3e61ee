package pricebook_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// below is a small book to lay others over; every figure in it is invented.
const below = `
products:
  oak strip: {aisle: flooring, pack: bundle of 20 sq ft, price: $96, grade: standard}
  oak base: {aisle: trim, sticks: {8 ft: $9, 12 ft: $14}}
  vine paper: {aisle: paint, roll: 20.5 in x 33 ft, repeat: 21 in, price: $40}
  saw rental: {aisle: rental, pack: day, price: $60, tax: no}
items:
  lay oak:
    trade: flooring
    work: lay oak strip
    category: Wood floors
    measure: open floor
    hours: 0.05 per sq ft
    hours source: an old manual
    hired: $3.90 per sq ft
    materials: {oak strip: {waste: 8%, source: a manual}, saw rental: {for the job: 1}}
    brings: [oak transition if carpet below]
    debris: 0.01 cu ft per sq ft
    cautions: [dust]
    source: a manual
  oak transition:
    {trade: flooring, measure: doors, hours: 0.3 each, hired: $20 each, materials: none, brings: none, source: a manual}
`

func read(t *testing.T, text string, over *pricebook.Book) *pricebook.Book {
	b, found := pricebook.Read("mine.yaml", text, over)
	require.Empty(t, found)
	return b
}

func over(t *testing.T, text string) *pricebook.Book { return read(t, text, read(t, below, nil)) }

// A product that says its price alone is otherwise the one below, with a day and source
// of its own: the day of the old price is not that of the new one.
func TestProductTakesWhatItDoesNotSay(t *testing.T) {
	p := over(t, "products: {Oak  Strip: {price: $101.50}}").Product("oak strip")
	require.Equal(t, "flooring standard bundle of 20 sq ft 101.5", p.Aisle+" "+p.Grade+" "+p.Pack.String()+" "+p.Price.String())
	require.Equal(t, pricebook.Owners, p.Source)
	require.True(t, p.Dated.IsZero())
	require.Equal(t, "mine.yaml:1:12", p.Pos.String())

	dated := over(t, "products: {oak strip: {price: $101.50, dated: 2026-10-02, source: Fern Street}}").Product("oak strip")
	require.Equal(t, quantity.Date{Year: 2026, Month: 10, Day: 2}, dated.Dated)
	require.Equal(t, "Fern Street", dated.Source)

	other := over(t, "products: {oak strip: {pack: box of 24 sq ft, price: $120}}").Product("oak strip")
	require.Equal(t, "box of 24 sq ft", other.Pack.String())
	require.False(t, over(t, "products: {saw rental: {tax: yes}}").Product("saw rental").NoTax)
	require.True(t, over(t, "products: {saw rental: {price: $66}}").Product("saw rental").NoTax)
}

// What is kept from below without a new price keeps its day and source too.
func TestUnchangedPriceKeepsItsDay(t *testing.T) {
	book := read(t, "products: {porcelain floor tile: {aisle: my shed}}", pricebook.Starter())
	p := book.Product("porcelain floor tile")
	require.Equal(t, "my shed", p.Aisle)
	require.Equal(t, pricebook.StarterDate(), p.Dated)
	require.Equal(t, pricebook.Invented, p.Source)
}

func TestSticksAndRollsOverTheBookBelow(t *testing.T) {
	base := over(t, "products: {oak base: {sticks: {16 ft: $20, 8 ft: $10}}}").Product("oak base")
	require.Len(t, base.Sticks, 2, "the lengths said are all there are")
	require.Equal(t, "8' 16'", base.Sticks[0].Length.String()+" "+base.Sticks[1].Length.String())

	book := over(t, "products: {vine paper: {price: $44, half drop: yes}}")
	paper := book.Product("vine paper")
	require.True(t, paper.Roll.HalfDrop)
	require.Equal(t, "1' 9\"", paper.Roll.Repeat.String())
	require.Equal(t, "44", paper.Price.String())
	untouched := over(t, "").Product("vine paper")
	require.False(t, untouched.Roll.HalfDrop, "the book below stays as it was")
}

// Who says one length's price does not say those that keep the starter's.
func TestStarterLengthsAreNotBesideAQuotedSource(t *testing.T) {
	for said, source := range map[string]string{
		"sticks: {8 ft: $9}, source: Elm":                                                              "Elm",
		"sticks: {8 ft: $9, 16 ft: starter}, source: Elm":                                              "Elm; the other lengths: invented starter price",
		"sticks: {8 ft: $9, 16 ft: starter}":                                                           "your own price book; the other lengths: invented starter price",
		"sticks: {8 ft: starter, 16 ft: starter}, source: Elm":                                         "invented starter price",
		"sticks: {8 ft: $9, 16 ft: starter}, source: 'Elm; the other lengths: invented starter price'": "Elm; the other lengths: invented starter price",
	} {
		p := read(t, "products: {primed baseboard 3-1/4 in: {"+said+"}}", pricebook.Starter()).Product("primed baseboard 3-1/4 in")
		require.Equal(t, source, p.Source, said)
	}
}

func TestItemTakesWhatItDoesNotSay(t *testing.T) {
	it := over(t, "items: {Lay Oak: {hired: $4.40 per sq ft, dated: 2026-10-02, hired source: Elm Floors}}").Item("lay oak")
	require.Equal(t, "4.4 0.05 an old manual", it.Hired.String()+" "+it.Hours.String()+" "+it.HoursSource)
	require.Equal(t, "Elm Floors 2026-10-02", it.HiredSource+" "+it.Dated.String())
	require.Len(t, it.Uses, 2)
	require.Len(t, it.Brings, 1)
	require.Equal(t, []string{"dust"}, it.Cautions)

	bare := over(t, "items: {lay oak: {hours: none, hired: none, materials: none, brings: none, cautions: none}}").Item("lay oak")
	require.True(t, bare.Hours.IsZero() && bare.Hired.IsZero())
	require.Empty(t, bare.Uses)
	require.Empty(t, bare.Brings)
	require.Empty(t, bare.Cautions)
	require.Equal(t, "Wood floors", bare.Category)

	own := over(t, "items: {lay oak: {hours: 0.06 per sq ft}}").Item("lay oak")
	require.Equal(t, pricebook.Owners, own.HoursSource, "an old manual does not say this")
	require.Equal(t, "3.9", own.Hired.String())
}

// Figures for each square foot mean nothing for each door.
func TestAnotherMeasureTakesNoFiguresOfTheOld(t *testing.T) {
	_, found := pricebook.Read("mine.yaml", "items: {lay oak: {measure: doors}}", read(t, below, nil))
	var missing []string
	for _, d := range found {
		missing = append(missing, d.Message)
	}
	require.Equal(t, []string{`"lay oak" has no hours`, `"lay oak" has no hired`, `"lay oak" has no materials`}, missing)
	it := over(t, "items: {lay oak: {measure: doors, hours: 1 each, hired: $9 each, materials: none}}").Item("lay oak")
	require.True(t, it.Debris.IsZero())
	same := over(t, "items: {lay oak: {measure: floor}}").Item("lay oak")
	require.Equal(t, "0.05 floor", same.Hours.String()+" "+same.Measure, "both are in sq ft")
}

func TestThreeBooks(t *testing.T) {
	b := read(t, "products: {oak strip: {price: $90}, pine strip: {pack: each, price: $1}}", over(t, "products: {oak strip: {grade: better}}"))
	require.Equal(t, "better 90", b.Product("oak strip").Grade+" "+b.Product("oak strip").Price.String())
	require.Equal(t, []string{"oak strip", "oak base", "vine paper", "saw rental", "pine strip"}, b.Products())
	require.Equal(t, []string{"lay oak", "oak transition"}, b.Items())
	require.Nil(t, b.Product("elm strip"))
	require.Nil(t, b.Item("oak strip"))
	require.True(t, b.Own("oak strip"))
	require.False(t, b.Own("oak base"))
}

func TestEmptyBooks(t *testing.T) {
	for _, text := range []string{"", "# nothing\n", "~\n", "products: {}\n", "items: {}\nproducts: {}\n"} {
		b, found := pricebook.Read("mine.yaml", text, pricebook.Starter())
		require.Empty(t, found, text)
		require.Equal(t, pricebook.Starter().Items(), b.Items())
	}
}

// A unit of work takes one of what it is sold in, or so much of it in another unit of the same
// kind: a square foot 0.09290304 m2 (0.3048 m squared) or a ninth of a square yard. The starter
// book says how much wherever the units differ.
func TestOneUnitInTheProductsUnit(t *testing.T) {
	for pack, want := range map[string]string{"box of 1.1 m2": "0.09290304", "roll of 3 sq yd": "0.1111111111", "box of 20 sq ft": "1", "each": "1"} {
		b := read(t, "products: {own tile: {pack: "+pack+", price: $30}}\nitems: {lay it: {trade: tile, work: lay it, measure: open floor, hours: none, hired: none, materials: {own tile: {waste: 10%}}, brings: none, source: mine}}", pricebook.Starter())
		it := b.Item("lay it")
		require.Equal(t, want, it.Uses[0].TakesOf(b.Product("own tile"), it).Round(10).String(), pack)
	}
	b := pricebook.Starter()
	for _, name := range b.Items() {
		it := b.Item(name)
		for i := range it.Uses {
			u := &it.Uses[i]
			require.True(t, u.Takes.Equal(u.TakesOf(b.Product(u.Product), it)), "%s: %s", name, u.Product)
		}
	}
}

func TestHowOftenIsSaidAnew(t *testing.T) {
	item := "items: {take out: {trade: demolition, measure: one, hours: none, hired: none, materials: none, brings: none, source: mine, "
	base := read(t, item+"for each: yes}}\n", nil)
	require.True(t, base.Item("take out").ForEach)

	once := read(t, "items: {take out: {once: yes}}\n", base).Item("take out")
	require.True(t, once.Once)
	require.False(t, once.ForEach, "what is said last stands")

	doors := read(t, "items: {take out: {measure: doors, hours: none, hired: none}}\n", base).Item("take out")
	require.False(t, doors.ForEach, "it comes for all of the doors")
}
