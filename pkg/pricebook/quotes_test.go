package pricebook_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/pricebook"
)

func table(t require.TestingT, b *pricebook.Book) string {
	var w bytes.Buffer
	require.NoError(t, pricebook.WriteTable(&w, b))
	return w.String()
}

// laid are quotes read over a book and laid over it, as the text of a new book.
func laid(t require.TestingT, csv string, b *pricebook.Book) (string, int) {
	quotes, _, found := pricebook.ReadQuotes("q.csv", csv, b)
	require.Empty(t, found)
	text, changed, err := pricebook.LayQuotes("", quotes, b, "q.csv")
	require.NoError(t, err)
	return text, changed
}

// The table of a book, read back, changes nothing: of the starter, of a small one.
func TestTableReadBackChangesNothing(t *testing.T) {
	for _, b := range []*pricebook.Book{pricebook.Starter(), read(t, below, nil), over(t, "products: {oak strip: {price: $101.50}}")} {
		text, changed := laid(t, table(t, b), b)
		require.Empty(t, text)
		require.Zero(t, changed)
	}
}

// Lengths at the starter's price stay the starter's on the way through a table, laid over
// either book, and the quoted one keeps its day.
func TestTableKeepsStarterLengths(t *testing.T) {
	own := read(t, "products: {primed baseboard 3-1/4 in: {sticks: {8 ft: $9.10, 12 ft: starter, 16 ft: starter}, dated: 2026-10-02, source: Elm Street}}", pricebook.Starter())
	text, changed := laid(t, table(t, own), own)
	require.Empty(t, text)
	require.Zero(t, changed)
	text, changed = laid(t, table(t, own), pricebook.Starter())
	require.Equal(t, 1, changed)
	again := read(t, text, pricebook.Starter()).Product("primed baseboard 3-1/4 in")
	again.Pos = own.Product("primed baseboard 3-1/4 in").Pos
	require.Equal(t, own.Product("primed baseboard 3-1/4 in"), again)
}

func TestTableHasEveryNameAndHeader(t *testing.T) {
	b := pricebook.Starter()
	rows, err := csv.NewReader(strings.NewReader(table(t, b))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows[0], len(pricebook.Columns))
	names := map[string]bool{}
	for _, row := range rows[1:] {
		names[row[1]] = true
	}
	for _, n := range append(b.Products(), b.Items()...) {
		require.True(t, names[n], n)
	}
}

// A price changed in the table is the price of the book that comes of it.
func TestQuotesBecomeTheBooksPrices(t *testing.T) {
	starter := pricebook.Starter()
	products, items := starter.Products(), starter.Items()
	rapid.Check(t, func(t *rapid.T) {
		price := decimal.New(int64(rapid.IntRange(0, 1_000_000).Draw(t, "cents")), -2)
		row := func(name, pack string) string {
			return "name,price,pack,dated,source\n\"" + name + "\"," + price.String() + "," + pack + ",2026-10-02,\"Fern: #1, Street\"\n"
		}
		name := rapid.SampledFrom(products).Draw(t, "product")
		pack := ""
		sticks := starter.Product(name).Sticks
		if len(sticks) > 0 {
			pack = "stick of " + sticks[0].Length.Feet().String() + " ft"
		}
		text, _ := laid(t, row(name, pack), starter)
		b, found := pricebook.Read("new.yaml", text, starter)
		require.Empty(t, found, text)
		p := b.Product(name)
		if len(sticks) > 0 {
			require.True(t, p.Sticks[0].Price.Equal(price), text)
		} else {
			require.True(t, p.Price.Equal(price), text)
			require.Equal(t, "2026-10-02", p.Dated.String())
		}
		want := "Fern: #1, Street"
		if len(sticks) > 1 { // the others have their price still
			want += "; the other lengths: " + pricebook.Invented
		}
		require.Equal(t, want, p.Source)
		require.Equal(t, starter.Product(name).SoldIn(), p.SoldIn())
		again, changed := laid(t, table(t, b), b)
		require.Empty(t, again)
		require.Zero(t, changed)

		work := rapid.SampledFrom(items).Draw(t, "item")
		text, _ = laid(t, row(work, ""), starter)
		b, found = pricebook.Read("new.yaml", text, starter)
		require.Empty(t, found, text)
		require.True(t, b.Item(work).Hired.Equal(price), text)
		require.Equal(t, "Fern: #1, Street", b.Item(work).HiredSource)
	})
}

// Columns in any order, others left alone, a mark at the start, Windows line ends,
// blank rows, a rate with its unit, and none for what no trade does.
func TestTablesAsSpreadsheetsSaveThem(t *testing.T) {
	b := read(t, below, nil)
	quotes, ignored, found := pricebook.ReadQuotes("q.csv", "\ufeffSKU, Price ,NAME,dated,pack\r\n7,\"$1,104.00\",Oak Strip,10/2/2026,box of 24 sq ft\r\n,,,,\r\n\r\n8,$4.25/sq ft,lay oak\r\n9,none,oak transition,,\r\n", b)
	require.Empty(t, found)
	require.Equal(t, []string{"SKU"}, ignored)
	require.Len(t, quotes, 3)
	require.Equal(t, "1104 2026-10-02 box of 24 sq ft", quotes[0].Price.String()+" "+quotes[0].Dated.String()+" "+quotes[0].Pack.String())
	require.Equal(t, "4.25", quotes[1].Price.String())
	require.True(t, quotes[2].None)
	text, changed, err := pricebook.LayQuotes("", quotes, b, "q.csv")
	require.NoError(t, err)
	require.Equal(t, 3, changed)
	mine := read(t, text, b)
	require.Equal(t, "box of 24 sq ft", mine.Product("oak strip").Pack.String())
	require.Equal(t, "q.csv", mine.Product("oak strip").Source)
	require.True(t, mine.Item("oak transition").Hired.IsZero())
}

// A product sold by the stick has one day: that of the oldest of its prices.
func TestSticksTogether(t *testing.T) {
	b := read(t, strings.Replace(below, "12 ft: $14}", "12 ft: $14}, dated: 2026-01-05, source: old", 1), nil)
	text, _ := laid(t, "name,pack,price,dated,source\noak base,stick of 8 ft,10,2026-10-02,a\noak base,16',20,2026-10-01,b\n", b)
	p := read(t, text, b).Product("oak base")
	require.Equal(t, "sticks of 8 ft, 12 ft, 16 ft", p.SoldIn())
	require.Equal(t, "14 20", p.Sticks[1].Price.String()+" "+p.Sticks[2].Price.String())
	require.Equal(t, "2026-01-05", p.Dated.String(), "12 ft has its old price still")
	require.Equal(t, "a; b; the other lengths: old", p.Source)
	text, _ = laid(t, "name,pack,price,dated,source\noak base,8 ft,10,2026-10-02,a\noak base,12 ft,20,2026-10-01,b\n", b)
	require.Equal(t, "2026-10-01", read(t, text, b).Product("oak base").Dated.String())
}

// A quote for one length leaves the others as the starter book has them, now and when more
// quotes are laid over it.
func TestSticksWithoutAQuoteStayTheStarters(t *testing.T) {
	b := pricebook.Starter()
	text, _ := laid(t, "name,pack,price\nprimed baseboard 3-1/4 in,stick of 8 ft,14\n", b)
	require.Contains(t, text, "sticks: {8 ft: $14.00, 12 ft: starter, 16 ft: starter}")
	b = read(t, text, b)
	p := b.Product("primed baseboard 3-1/4 in")
	require.Equal(t, "14 12.6 16.8", p.Sticks[0].Price.String()+" "+p.Sticks[1].Price.String()+" "+p.Sticks[2].Price.String())
	require.Equal(t, []bool{true, false, false}, []bool{p.Sticks[0].Own, p.Sticks[1].Own, p.Sticks[2].Own})
	quotes, _, found := pricebook.ReadQuotes("q.csv", "name,pack,price\nprimed baseboard 3-1/4 in,stick of 16 ft,16\n", b)
	require.Empty(t, found)
	text, _, err := pricebook.LayQuotes(text, quotes, b, "")
	require.NoError(t, err)
	require.Contains(t, text, "sticks: {8 ft: $14.00, 12 ft: starter, 16 ft: $16.00}")
}

// Quotes added to an own book leave the rest of it, remarks too.
func TestQuotesAddedToAnOwnBook(t *testing.T) {
	const old = "# mine\nproducts:\n  # from the barn\n  Oak strip: {price: $90, dated: 2026-02-01, source: barn}\n"
	b := over(t, old)
	quotes, _, found := pricebook.ReadQuotes("q.csv", "name,price\noak strip,95\nlay oak,5\n", b)
	require.Empty(t, found)
	text, changed, err := pricebook.LayQuotes(old, quotes, b, "")
	require.NoError(t, err)
	require.Equal(t, 2, changed)
	require.Contains(t, text, "# mine\n")
	require.Contains(t, text, "# from the barn\n")
	p := read(t, text, read(t, below, nil)).Product("oak strip")
	require.Equal(t, "95", p.Price.String())
	require.True(t, p.Dated.IsZero(), "the old day is not that of the new price")
	require.Equal(t, pricebook.Owners, p.Source)
	same, changed, err := pricebook.LayQuotes(old, nil, b, "")
	require.NoError(t, err)
	require.Equal(t, old, same)
	require.Zero(t, changed)
}

// A text that a spreadsheet would work out is led by an apostrophe, which is taken away
// again.
func TestTextIsHarmlessInASpreadsheet(t *testing.T) {
	for _, source := range []string{"=1+1", "+1", "-1", "@sum", "'=1", "'"} {
		b := read(t, "products: {thing: {pack: each, price: $5, source: \""+source+"\"}}", nil)
		rows, err := csv.NewReader(strings.NewReader(table(t, b))).ReadAll()
		require.NoError(t, err)
		cell := rows[1][len(rows[1])-1]
		require.NotContains(t, "=+-@\t\r", cell[:1], source)
		text, changed := laid(t, table(t, b), b)
		if source != "'=1" { // an apostrophe of its own before such a sign is not told from ours
			require.Empty(t, text)
			require.Zero(t, changed)
		}
	}
}

var wrongQuotes = []struct{ code, text, place, says, hint string }{
	{"quotes-header", "", "1", "the table is empty", "name,price"},
	{"quotes-header", "\n\n", "1", "the table is empty", "name,price"},
	{"quotes-header", "name;price\n", "1:1", "not parted by commas", "with commas; give a form for bids as .xlsx"},
	{"quotes-header", "naem,price\n", "1:1", `no column "naem"`, `did you mean "name"?`},
	{"quotes-header", "name,price,date\n", "1:12", `no column "date"`, `did you mean "dated"?`},
	{"quotes-header", "name,price,name\n", "1:12", "there twice", "keep one"},
	{"quotes-header", "name,cost\n", "1:1", `no column "price"`, "name,price"},
	{"quotes-not-utf8", "name,price\noak strip,5\nca\xe9,5\n", "3", "not saved as UTF-8", "UTF-8"},
	{"quotes-odd-character", "name,price,source\noak strip,5,a\u200eb\n", "2:13", "U+200E", "delete it"},
	{"quotes-odd-character", "name,price,source\noak strip,5,\"a\nb\"\n", "2:14", "U+000A", "in one line"},
	{"quotes-csv", "name,price\noak strip,5,6\n", "2:13", "more values than there are columns", "in quotes"},
	{"quotes-csv", "name,price\nlay oak,1,200\n", "2:11", "more values", "in quotes"},
	{"quotes-csv", "name,price\noak \"strip\",5\n", "2:5", "a quote stands inside", "in for inches"},
	{"quotes-csv", "name,price\n\"oak strip,5\nlay oak,6\n", "2:1", "not closed before line", "close them"},
	{"quotes-name", "name,price\n,5\n", "2:1", "no name", "write the name"},
	{"quotes-name", "name,price\noak stripe,5\n", "2:1", `no product or item "oak stripe"`, `did you mean "oak strip"?`},
	{"quotes-name", "name,price\ngold leaf,5\n", "2:1", `no product or item "gold leaf"`, "look for it with   ledgerboard prices   or"},
	{"quotes-name", "name,price,kind\nlay oak,5,product\n", "2:1", `no product "lay oak"`, "ledgerboard prices oak"},
	{"quotes-name", "name,price,kind\nlay oka,5,item\n", "2:1", `no item "lay oka"`, `did you mean "lay oak"?`},
	{"quotes-kind", "name,price,kind\nlay oak,5,thing\n", "2:11", `"thing" is no kind`, "product or item"},
	{"quotes-price", "name,price\noak strip,\n", "2:11", `"oak strip" has no price`, "24.90"},
	{"quotes-price", "name,price\noak strip\n", "2:1", `"oak strip" has no price`, "24.90"},
	{"quotes-price", "name,price\noak strip,a lot\n", "2:11", `"a lot"`, "an amount in dollars"},
	{"quotes-price", "name,price\noak strip,-5\n", "2:11", `"-5": it is below zero`, "what it costs"},
	{"quotes-price", "name,price\nlay oak,\n", "2:9", `"lay oak" has no price`, "9.50, or none"},
	{"quotes-price", "name,price\nlay oak,-$5\n", "2:9", `"-$5": it is below zero`, "what it costs"},
	{"quotes-price", "name,price\nlay oak,$5 per ft\n", "2:9", "it is for each ft", "the price for each sq ft"},
	{"quotes-price", "name,price\nlay oak,cheap\n", "2:9", `"cheap"`, "an amount in dollars"},
	{"quotes-unit", "name,price,unit\nlay oak,5,ft\n", "2:11", "priced for each sq ft, not for each \"ft\"", "each sq ft"},
	{"quotes-pack", "name,price,unit\noak strip,5,ft\n", "2:13", "is for an item", "pack"},
	{"quotes-pack", "name,price,pack\nlay oak,5,each\n", "2:11", "is work and has no pack", "each sq ft"},
	{"quotes-pack", "name,price,pack\noak strip,5,a heap\n", "2:13", `"a heap"`, "box of 10 sq ft"},
	{"quotes-pack", "name,price,pack\noak strip,5,bag of 3 lb\n", "2:13", "is in lb, but", `"bundle of 20 sq ft"`},
	{"quotes-pack", "name,price\noak base,5\n", "2:1", "sold by the stick", "stick of 8 ft"},
	{"quotes-pack", "name,price,pack\noak base,5,long\n", "2:12", `"long" is no stick`, "stick of 8 ft"},
	{"quotes-pack", "name,price,pack\nvine paper,5,long\n", "2:14", `"long" is no roll`, "20.5 in x 33 ft"},
	{"quotes-dated", "name,price,dated\noak strip,5,14/5/2026\n", "2:13", `"14/5/2026"`, "5/14/2026"},
	{"quotes-twice", "name,price\noak strip,5\n\nOak  strip,6\n", "4:1", "a row already, in line 2", "keep the one"},
	{"quotes-twice", "name,price,pack\noak base,5,8 ft\noak base,6,96 in\n", "3:1", "a row already, in line 2", "keep the one"},
}

func TestMistakesOfATable(t *testing.T) {
	b := read(t, below, nil)
	for _, m := range wrongQuotes {
		_, _, found := pricebook.ReadQuotes("q.csv", m.text, b)
		require.NotEmpty(t, found, m.text)
		require.Equal(t, m.code, found[0].Code, "%s: %s", m.text, found[0])
		require.Contains(t, found[0].Message, m.says)
		require.Contains(t, found[0].Hint, m.hint)
		require.Equal(t, "q.csv:"+m.place, found[0].Pos.String(), m.text)
	}
}

func TestOneNameOfTwoKindsNeedsItsKind(t *testing.T) {
	b := over(t, "products: {lay oak: {pack: each, price: $5}}")
	_, _, found := pricebook.ReadQuotes("q.csv", "name,price\nlay oak,5\n", b)
	require.Len(t, found, 1)
	require.Equal(t, "quotes-kind", found[0].Code)
	quotes, _, found := pricebook.ReadQuotes("q.csv", "kind,name,price\nItem,lay oak,5\nproduct,lay oak,6\n", b)
	require.Empty(t, found)
	require.True(t, quotes[0].Item)
	require.False(t, quotes[1].Item)
}

func TestMistakesOfATableHaveAnEnd(t *testing.T) {
	_, _, found := pricebook.ReadQuotes("q.csv", "name,price\n"+strings.Repeat("nothing,5\n", 1000), read(t, below, nil))
	require.Len(t, found, 200)
}

// A quote of nothing is as far from the starter book's price as one under a fifth of it.
func TestAQuoteOfNothingIsDoubted(t *testing.T) {
	b := pricebook.Starter()
	quotes, _, found := pricebook.ReadQuotes("q.csv", "name,kind,price\nwall paint,product,0\npaint walls,item,0\n", b)
	require.Empty(t, found)
	text, _, err := pricebook.LayQuotes("", quotes, b, "q.csv")
	require.NoError(t, err)
	for i, hint := range []string{"allowance: $0", "own hands"} {
		doubt, is := pricebook.Changes(quotes, b, read(t, text, b))[i].Doubt()
		require.True(t, is)
		require.Contains(t, doubt.Message, "under a fifth of")
		require.Contains(t, doubt.Hint, hint)
	}
}

// Hours that a table changes are not taken, and it says where they go.
func TestHoursOfATableAreTold(t *testing.T) {
	b := pricebook.Starter()
	for hours, told := range map[string]bool{b.Item("tile floor").Hours.String(): false, "": false, "0.3": true, "lots": true} {
		_, _, found := pricebook.ReadQuotes("q.csv", "kind,name,price,hours\nitem,tile floor,9.50,"+hours+"\n", b)
		require.False(t, found.HasErrors())
		require.Equal(t, told, len(found) > 0, hours)
		if told {
			require.Contains(t, found[0].Message, "a table changes prices alone")
			require.Contains(t, found[0].Hint, "items: {tile floor: {hours: ")
			require.Equal(t, len("item,tile floor,9.50,")+1, found[0].Pos.Col)
		}
	}
}
