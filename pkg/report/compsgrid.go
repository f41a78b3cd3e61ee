package report

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/comps"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// Of the grid: a column of labels, one of the house, and some of sales.
const (
	gridLabel  = 22
	gridHouse  = 14
	gridColumn = 11
	gridSales  = (Width - gridLabel - gridHouse) / gridColumn
)

// A gridRow is a row of the grid: the house's figure and one of each sale.
type gridRow struct {
	label, house string
	of           func(i int) string // of the sale, "" for nothing
	always       bool               // shown though no sale has anything in it
}

// grid writes the adjustments of each sale, some sales beside each other.
func (c compsPage) grid() {
	n := min(len(c.v.Rows), c.most)
	c.heading("The sales, and what is added to or taken off each to make it this house")
	for first := 0; first < n; first += gridSales {
		if first > 0 {
			c.line("")
		}
		c.block(first, min(first+gridSales, n))
	}
	what := "Net: all that was adjusted; gross: the same without signs."
	if len(c.v.Rows) > 1 {
		what += " The others say: by how much all other sales miss it."
	}
	c.text("", what)
	if rest := len(c.v.Rows) - n; rest > 0 {
		c.text("", fmt.Sprintf("%s, with %s of the weight; --all shows them.", quantity.Counted(rest, "more sale"), share0(c.weightFrom(n))))
	}
}

func (c compsPage) weightFrom(n int) (sum float64) {
	for _, r := range c.v.Rows[n:] {
		sum += r.Weight
	}
	return sum
}

func (c compsPage) block(first, last int) {
	heads := make([][]string, last)
	tall := 1
	for i := first; i < last; i++ {
		heads[i] = wrap(c.id(&c.v.Rows[i].Sold), gridColumn-1)
		if len(heads[i]) > 3 {
			heads[i] = append(heads[i][:2:2], strings.Join(heads[i][2:], " "))
		}
		tall = max(tall, len(heads[i]))
	}
	for k := range tall {
		row := pad("", gridLabel) + right(map[bool]string{true: "the house"}[k == tall-1], gridHouse)
		for i := first; i < last; i++ {
			word := ""
			if j := k - (tall - len(heads[i])); j >= 0 {
				word = cut(heads[i][j], gridColumn-1)
			}
			row += right(word, gridColumn)
		}
		c.line("%s", c.paint(dim, row))
	}
	for _, r := range c.rows() {
		row, some := pad(r.label, gridLabel)+right(r.house, gridHouse), r.always
		for i := first; i < last; i++ {
			cell := r.of(i)
			some = some || cell != ""
			row += right(cell, gridColumn)
		}
		if some {
			c.line("%s", row)
		}
	}
}

// figureShown is how what is compared is called and written.
var figureShown = map[comps.Line]struct {
	label string
	show  func(float64) string
}{
	comps.Size: {"living area, sq ft", figureCount}, comps.Lot: {"lot, sq ft", wholeCount}, comps.Rooms: {"bedrooms", figureCount}, comps.Baths: {"baths", figureCount},
	comps.Age: {"built", func(x float64) string { return fmt.Sprintf("%.0f", x) }}, comps.Condition: {"condition", conditionWord}, comps.Garage: {"garage, cars", figureCount},
}

// figureOf writes what a house is compared by on a line: of a garage its kind as well, for
// which it may be adjusted though it is for as many cars, and its size where it says no more.
func figureOf(f deal.Figure, h *comps.House) string {
	text := known(f.Figure(h), figureShown[f.Line].show)
	if f.Line == comps.Garage && text == "" && h.GarageArea.Known {
		return wholeCount(h.GarageArea.Value) + " sq ft"
	}
	if f.Line != comps.Garage || h.Garage == "" {
		return text
	}
	if !h.GarageCars.Known || h.Garage == "none" {
		text = ""
	}
	return cut(strings.TrimSpace(text+" "+h.Garage), gridColumn-1)
}

func figureCount(x float64) string { return quantity.FormatCount(decimal.NewFromFloat(x), 2) }

func wholeCount(x float64) string { return quantity.FormatCount(decimal.NewFromFloat(x), 0) }

// conditionWord is a step of condition in words, with a + where it lies between two.
func conditionWord(x float64) string {
	words := comps.Conditions()
	i := min(max(int(x), 1), len(words)) - 1
	if x > float64(i+1) {
		return words[i] + "+"
	}
	return words[i]
}

func known(f comps.Fact, show func(float64) string) string {
	if !f.Known {
		return ""
	}
	return show(f.Value)
}

// rows are all rows of the grid.
func (c compsPage) rows() []gridRow {
	sale := func(i int) *comps.Row { return &c.v.Rows[i] }
	member := func(i int) *model.Member { return c.c.Members[i] }
	money := func(line string) func(int) string {
		return func(i int) string { return signed(c.a.Of(member(i), line)) }
	}
	out := []gridRow{
		{"sold", c.c.Day.String(), func(i int) string { return sale(i).Date.String() }, true},
		{"distance", "", func(i int) string { return known(sale(i).Distance, miles) }, false},
		{"price", "", func(i int) string { return dollars(c.a.Of(member(i), "sold_price")) }, true},
		{"  less concessions", "", func(i int) string { return signed(c.a.Of(member(i), "concessions").Neg()) }, false},
		{"  the market since", "", money("time_adjustment"), false},
		{"  where it stands", "", money("location_adjustment"), false},
	}
	for _, f := range deal.Compared() {
		out = append(out,
			gridRow{figureShown[f.Line].label, figureOf(f, &c.c.Subject.House), func(i int) string { return figureOf(f, &sale(i).House) }, false},
			gridRow{"  adjusted by", "", money(deal.AdjustmentOf(f.Line)), false})
	}
	out = append(out,
		gridRow{"type", cut(c.c.Subject.Kind, gridHouse-1), c.typeOf, false},
		gridRow{"  type and style", "", money("style_adjustment"), false},
	)
	for i, x := range c.a.Deal.Root.In("extra") {
		ours := map[bool]string{true: "yes", false: "no"}[c.a.Of(x, "subject_has_it").IsPositive()]
		out = append(out, gridRow{cut("  own: "+x.Label, gridLabel-1), ours, func(of int) string { return signed(c.a.Of(member(of).In("mark")[i], "extra_adjustment")) }, false})
	}
	return append(out,
		gridRow{"net, of its price", "", func(i int) string { return percent(c.a.Of(member(i), "net_share")) }, true},
		gridRow{"gross, of its price", "", func(i int) string { return percent(c.a.Of(member(i), "gross_share")) }, true},
		gridRow{"adjusted price", dollars(c.a.Line("value_by_comps")), func(i int) string { return dollars(c.a.Of(member(i), "adjusted_price")) }, true},
		gridRow{"weight", "", func(i int) string { return percent(c.a.Of(member(i), "weight")) }, true},
		gridRow{"the others say", "", func(i int) string {
			if len(c.v.Rows) == 1 {
				return "" // there are none
			}
			return signedShare(c.a.Of(member(i), "left_out"))
		}, false},
	)
}

// typeOf is the type of a sale, where that of some is known to be another than the house's.
func (c compsPage) typeOf(i int) string {
	ours := c.c.Subject.Kind
	if ours == "" || !slices.ContainsFunc(c.v.Rows, func(r comps.Row) bool { return r.Kind != "" && r.Kind != ours }) {
		return ""
	}
	return cut(c.v.Rows[i].Kind, gridColumn-1)
}

// signed writes an amount with its sign, nothing for none.
func signed(x decimal.Decimal) string {
	switch x.Sign() {
	case 0:
		return ""
	case 1:
		return "+" + dollars(x)
	}
	return dollars(x)
}

func signedShare(x decimal.Decimal) string {
	if x.IsPositive() {
		return "+" + percent(x)
	}
	return percent(x)
}

// miles writes a distance of metres; a mile is 1,609.344 m.
func miles(metres float64) string {
	return quantity.FormatCount(decimal.NewFromFloat(metres/comps.Mile).Round(2), 2) + " mi"
}
