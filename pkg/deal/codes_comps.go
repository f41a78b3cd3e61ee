package deal

import (
	"cmp"
	"slices"

	"ledgerboard/pkg/diag"
)

func compCodes() []Code {
	return mistakes([][2]string{
		{"bad-record", "what a record of a house cannot say"},
		{"sale-incomplete", "a sold house without its day or price"},
		{"unknown-sale", "a sale struck or added that there is not"},
		{"ambiguous-sale", "a word that names several sales to strike or add"},
		{"struck-and-added", "a sale to leave out and to use"},
		{"added-too-late", "a sale to use that was not sold before the day of the value"},
		{"unknown-extra", "a thing that a house has and no own line prices"},
		{"sales-unreadable", "a file of sales that cannot be read"},
		{"no-sales", "a table of sales with nothing in it"},
		{"table-layout", "a pasted table without the bar behind its key, or indented no further than that"},
		{"no-column", "a table of sales without the day or the price"},
		{"unknown-field", "a column said to hold what no sale has"},
		{"unknown-column", "a column that the table does not have"},
		{"column-per-area", "a column of prices per area said to hold a price, an area or another thing"},
		{"unreadable", "a table of sales that ends in the middle"},
		{"comps-no-price", "adjustments that leave nothing of a price"},
	})
}

func compDoubts() []Code {
	return codes(diag.Warning, [][2]string{
		{"bad-sale", "a row of a table left out, since its day or price cannot be read"},
		{"no-date", "a row of a table without the day of the sale"},
		{"no-price", "a row of a table without a price"},
		{"too-many-cells", "a row of a table with more cells than columns"},
		{"few-cells", "a row of a table with fewer cells than columns, of which it is not sure which is empty"},
		{"uneven-cells", "a row of a table parted by tabs, not into as many cells as there are columns"},
		{"open-quote", "a quote in a table that takes up the rows behind it"},
		{"row-of-sums", "a row of a table that holds the average or sum of the others"},
		{"bad-cell", "a cell of a table that cannot be read, and counts as not known"},
		{"doubtful-cell", "a cell of a table, or what is written of a house, that is read with a doubt"},
		{"more-bad-cells", "more cells that cannot be read than are told"},
		{"columns-unread", "columns of a table that are not read"},
		{"column-twice", "two columns that look like the same"},
		{"column-of-more", "a living area read from a column of a total or of the building, which may count a basement or garage"},
		{"doubtful-sale", "a sale that is set aside: there twice, after the day, not open, or hardly a price"},
		{"sale-far-off", "a sale passed over or doubted for a price far from its like"},
		{MistypedHouse, "a house so unlike nearly all sales, in size, lot, age, rooms or place, that it is likely mistyped"},
		{"house-beyond-sales", "a house over a quarter larger than the largest of the sales, or as much smaller, or than all but one; or with a lot three times theirs, or a third, or one and a half times where an amount prices it; or built 30 years before or after all; or in better condition than all"},
		{"house-built-lately", "a house that is renovated, or has what is old in it, and said to be built about when it is bought, or decades after all sales"},
		{"sale-odd-size", "a sale with many times or a small part of the house's living area or lot"},
		{"comps-other-type", "sales of another type than the house, which nothing adjusts for"},
		{"sale-far-away", "a sale that stands many miles from the house, or many times as far off as the others"},
		{"sale-built-later", "a sold house that was built after its sale"},
		{"sold-twice", "a house that was sold twice within a year, for much more the second time"},
		{"sale-counted-twice", "a sale that counts twice: one of its two rows was added, or they name two prices"},
		{"sale-of-the-house", "an earlier sale of the very house among the sales that say what it is worth"},
		{"garage-counts-as-one", "a garage of which the cars are not said, which counts as one for one car"},
		{"day-far-on", "a day of the value that comes from one sale long after the others"},
		{"sales-old", "sales, or a list of them, from years before the day of the value"},
		{"comps-none", "no sale that the value can be drawn from"},
		{"comps-few", "fewer than the usual three sales"},
		{"comps-not-adjusted", "a difference that nothing tells the worth of"},
		{"comps-market-untold", "sales of long ago, and nothing that tells how prices moved since"},
		{"comps-amount-unusual", "an amount, given or by pairs of sales, or a change of the market, that is hardly so"},
		{"comps-amount-unused", "an amount or an own line that adjusts no sale, since nothing says what it is for"},
		{"comps-not-compared", "a thing that is known of the sales and not of the house"},
		{"comps-not-told", "a thing that is known of the house and of none of the sales, or not of many"},
		{"comps-condition-alike", "options of several conditions, and nothing tells what condition is worth"},
		{"comps-condition-today", "a house in poor or fair condition among the sales, beside work that renovates it"},
		{"comps-condition-unused", "conditions by option beside a stated value"},
		{"value-outside-comps", "a stated value outside the range by the comparables"},
		{"low-above-comps", "a low value that is not below the value by the comparables"},
		{"low-over-comps", "a low value well above the low end of the comparables"},
		{"above-best-sale", "a value above what the best comparable sold for"},
		{"cost-above-best-sale", "a cost above what the best comparable sold for"},
		{"concessions-high", "concessions of a sale of more than a tenth of its price"},
		{"concessions-twice", "concessions both in the comparables and among the selling costs"},
	})
}

// MistypedHouse is the doubt that no figure of the value survives.
const MistypedHouse = "house-unlike-sales"

// ofSingleSales are the doubts about one row, cell or sale that does not count, which
// stand behind those about all of the value.
var ofSingleSales = []string{"bad-sale", "no-date", "no-price", "too-many-cells", "few-cells", "uneven-cells", "open-quote", "row-of-sums", "bad-cell", "doubtful-cell", "more-bad-cells", "doubtful-sale"}

// WeightyFirst orders doubts about sold houses: that the house itself is mistyped, those
// about the whole value, and those about single rows, each in the order of the file.
func WeightyFirst(found diag.List) diag.List {
	rank := func(d diag.Diag) int {
		switch {
		case d.Code == MistypedHouse:
			return 0
		case slices.Contains(ofSingleSales, d.Code):
			return 2
		}
		return 1
	}
	out := slices.Clone(found)
	slices.SortStableFunc(out, func(x, y diag.Diag) int { return cmp.Compare(rank(x), rank(y)) })
	return out
}

// AboutComps reports whether a code is about sold houses.
func AboutComps(code string) bool {
	return slices.ContainsFunc(slices.Concat(compCodes(), compDoubts()), func(c Code) bool { return c.Name == code })
}
