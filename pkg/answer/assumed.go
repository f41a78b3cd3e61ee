package answer

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
)

// AssumedAs are fuller words for inputs whose key says too little alone.
var AssumedAs = map[string]string{
	"container_holds": "container holds", "container_limit": "container weight limit", "container_price": "container costs",
	"tax_share": "share of profit set aside for tax", "own_hours_a_week": "own work",
}

// AssumedSaid are words for defaults that are another figure of the deal.
var AssumedSaid = map[string]string{"as_is_value": "not appraised, so the price stands in"}

// Assumption says an input's default in words: "first loan, lag: 1 month".
func (a *Answer) Assumption(c *model.Cell) string {
	name := cmp.Or(AssumedAs[c.Line.Name], deal.KeyOf(c.Line), words(c.Line.Name))
	lead := ""
	if p := c.Member.Path(); p != "" {
		lead = p + ", "
	}
	if c.Given != nil {
		return c.Member.Path() + ": of the " + c.Given.Text
	}
	if said := AssumedSaid[c.Line.Name]; said != "" {
		return lead + name + ": " + said
	}
	if c.Line.Unit != "flag" && c.Line.Unit != "choice" && a.Values.Of(c).IsZero() {
		return lead + "no " + name
	}
	return lead + name + ": " + a.AssumedValue(c) + a.byComps(c)
}

// FirstOption says of an option that the scope does not name why it is taken.
func FirstOption(o *model.Member) string {
	return fmt.Sprintf("%s: %q, %s", o.Parent.Label, o.Label, FirstWhy)
}

// FirstWhy is why an option is taken that the scope does not name.
const FirstWhy = "the first option it has"

// Assumptions says all that is assumed in words: inputs, and options that are taken.
func (a *Answer) Assumptions() (out []string) {
	for _, o := range a.Deal.Firsts {
		out = append(out, FirstOption(o))
	}
	for _, c := range a.Assumed {
		out = append(out, a.Assumption(c))
	}
	return out
}

// told leaves out bases that go without saying: of what is bought or held the price, of what
// is sold the sale price; and how high the outside walls are where no work goes by it.
func told(d *deal.Deal, all []*model.Cell) []*model.Cell {
	return slices.DeleteFunc(all, func(c *model.Cell) bool {
		if c.Line.Name == "wall_height" {
			return !d.ByWallHeight(c.Member)
		}
		return c.Given != nil && c.Member.Kind != "general_fee" && c.Member.Kind != "loan_fee"
	})
}

// byComps says of a value drawn from sold houses how many they are.
func (a *Answer) byComps(c *model.Cell) string {
	x := a.Deal.Comps
	if x == nil || x.Value == nil || c.Line.Name != "after_repair_value" && c.Line.Name != "low_value" {
		return ""
	}
	if c.Line.Name == "after_repair_value" && a.StatesValue() {
		return " (your value before work and what the options add)"
	}
	houses := quantity.Counted(len(x.Value.Rows), "sold house")
	if c.Line.Name == "low_value" && a.UnderComps() {
		return fmt.Sprintf(" (by as large a share below your value as the low end by %s is below theirs, as ledgerboard comps shows)", houses)
	}
	return fmt.Sprintf(" (by %s, as ledgerboard comps shows)", houses)
}

// StatesValue reports whether the file says what the house will be worth, or is as it is.
func (a *Answer) StatesValue() bool {
	return a.states("after_repair_value") || a.states("value_before_work")
}

// StatesLow reports whether the file says what it will be worth if things go badly.
func (a *Answer) StatesLow() bool { return a.states("low_value") }

func (a *Answer) states(line string) bool { return a.Model.Find(a.Model.Root, line).Given != nil }

// UnderComps reports whether the file states a value under that of the sold houses, with
// which their low end goes down.
func (a *Answer) UnderComps() bool {
	by := a.Line("after_repair_value").Sub(a.Line("value_by_comps"))
	return a.StatesValue() && by.LessThan(a.Line("value_added").Sub(a.Line("options_in_comps")))
}

// AssumedValue is an input's default as people write it.
func (a *Answer) AssumedValue(c *model.Cell) string {
	if c.Given != nil {
		return c.Given.Text
	}
	x := a.Values.Of(c)
	switch c.Line.Unit {
	case "$":
		return money(x)
	case "share", "share/year":
		return percent(x)
	case "month":
		return months(x)
	case "flag":
		return quantity.FormatYesNo(!x.IsZero())
	case "choice":
		return c.Line.Choices[x.IntPart()-1]
	case "count", "":
		return x.String()
	}
	return quantity.FormatCount(x, 2) + " " + strings.NewReplacer("sqft", "sq ft", "cuft", "cu ft", "hour/", "hours a ", "/", " a ").Replace(c.Line.Unit)
}

func money(x decimal.Decimal) string   { return quantity.FormatMoney(x) }
func dollars(x decimal.Decimal) string { return quantity.FormatDollars(x) }
func percent(x decimal.Decimal) string { return quantity.FormatPercent(x, 1) }
func months(x decimal.Decimal) string  { return quantity.FormatMonths(x, 1) }
func words(line string) string         { return strings.ReplaceAll(line, "_", " ") }
