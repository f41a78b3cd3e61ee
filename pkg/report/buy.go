package report

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/takeoff"
)

// buyTail is how the right of a row of the shopping list stands.
const buyTail = " %11s %11s"

// Buy writes the shopping list by aisle, with whole packs, what is left over, and how
// sticks are cut.
func Buy(w io.Writer, a *answer.Answer, s Style) error {
	p := newPage(w, s)
	p.title(a.Deal.Name + ": what to buy")
	all := bought(a)
	var sum decimal.Decimal
	for _, m := range all {
		sum = sum.Add(a.Of(m, "product_cost"))
	}
	tax := "sales tax in it"
	if a.Line("sales_tax").IsZero() {
		tax = "no sales tax counted"
	}
	p.text("", fmt.Sprintf("%s for %s, %s. Allowances and what quotes bring are not in the list.", quantity.Counted(len(all), "thing"), money(sum), tax))
	p.text("", "Materials for hired work are in it too: hired prices are labour alone.")
	aisle := ""
	for _, m := range all {
		if next := a.Deal.Products[m].Aisle; next != aisle {
			aisle = next
			p.heading(aisle)
			p.line("%s", p.paint(dim, right("buy"+fmt.Sprintf(buyTail, "left over", "cost"), Width)))
		}
		p.split(m.Label, packs(a, m), fmt.Sprintf(buyTail, leftover(a, m), money(a.Of(m, "product_cost"))))
	}
	guessed := false
	for _, c := range a.Deal.Cuts {
		cutList(p, c)
		guessed = guessed || len(c.Plan.Sticks) > 0 && follow(c.Product, "base_run")
	}
	if guessed {
		p.text("", "Where doors, cabinets and tubs stand along the walls is guessed, for the file does not say it: measure before you cut.")
	}
	return p.flush()
}

// bought are the products that work takes, by aisle and then in the order of the file.
func bought(a *answer.Answer) []*model.Member {
	var out []*model.Member
	for _, m := range a.Model.Root.In("product") {
		if a.Of(m, "total_bought").IsPositive() {
			out = append(out, m)
		}
	}
	slices.SortStableFunc(out, func(x, y *model.Member) int {
		return cmp.Compare(a.Deal.Products[x].Aisle, a.Deal.Products[y].Aisle)
	})
	return out
}

func packs(a *answer.Answer, m *model.Member) string {
	prod := a.Deal.Products[m]
	if len(prod.Sticks) > 0 {
		var parts string
		for i, k := range m.In("stock") {
			if n := a.Of(k, "sticks"); n.IsPositive() {
				if parts != "" {
					parts += ", "
				}
				parts += count(n) + " of " + prod.Sticks[i].Length.String()
			}
		}
		return parts
	}
	n := a.Of(m, "packs")
	switch {
	case prod.Roll != nil:
		return count(n) + " " + plural("roll", n)
	case prod.Pack.Word == "cut" && prod.Pack.Unit == "ft":
		roll := "the roll"
		if follow(m, "carpet_run") {
			roll = fmt.Sprintf("a %s-ft roll", exactly(a.Line("roll_width")))
		}
		return fmt.Sprintf("%s ft off %s", exactly(n.Mul(a.Of(m, "holds"))), roll)
	}
	holds := ""
	if said := prod.Pack.String(); said != prod.Pack.Word && said != prod.Pack.Word+" of 1 each" {
		holds = strings.TrimPrefix(said, prod.Pack.Word)
	}
	return count(n) + " " + plural(prod.Pack.Word, n) + holds
}

// follow reports whether work takes a product along a measure of its room.
func follow(m *model.Member, line string) bool {
	return slices.ContainsFunc(m.In("use"), func(use *model.Member) bool {
		along, other := use.Given.Look("along")
		return along.Refers == line || !other && use.Parent.Given.Of("measure").Refers == line
	})
}

// plural is the word for so many packs, or for so many of a unit that one is.
func plural(word string, n decimal.Decimal) string {
	unit := quantity.Unit(word)
	switch _, known := unit.In(unit); {
	case n.Equal(decimal.NewFromInt(1)):
		return word
	case known && word != "each":
		return unit.Several()
	}
	return quantity.Plural(word)
}

func leftover(a *answer.Answer, m *model.Member) string {
	prod, x := a.Deal.Products[m], a.Of(m, "left_over")
	unit := unitWord(prod.Pack.Unit)
	if len(prod.Sticks) > 0 {
		unit = " ft"
	}
	if unit == "" { // of what is sold singly, no part of one is left
		x = x.Round(9).Floor()
	}
	if x.Round(2).IsZero() {
		return ""
	}
	return exactly(x.Round(1)) + unit
}

// proofs say in words what shows that a cut list costs no more than it has to.
var proofs = map[takeoff.Proof]string{
	takeoff.BySum:    "sticks that cost less are together too short for the pieces",
	takeoff.ByValues: "a price set on each length of piece shows it",
	takeoff.BySearch: "every other way was tried or ruled out",
}

// cutList writes how the sticks of a product are cut.
func cutList(p *page, c deal.CutList) {
	if len(c.Plan.Sticks) == 0 {
		return
	}
	p.heading("Cut list: " + c.Product.Label)
	for _, s := range grouped(c.Plan.Sticks) {
		said := ""
		for _, piece := range s.stick.Cuts {
			if piece.Length < leastCut {
				continue
			}
			if said != "" {
				said += ", "
			}
			said += inches(piece.Length) + " " + piece.ID
		}
		p.text(fmt.Sprintf("  %d x %-7s", s.times, inches(s.stick.Length)), said+"; left "+inches(s.stick.Offcut))
	}
	as := ""
	if c.Parted {
		as = ", with whole sticks and a rest for what is longer than a stick"
	}
	if c.Plan.Proved() {
		p.text("", "No cheaper way to cut it exists"+as+": "+proofs[c.Plan.By]+".")
		return
	}
	p.text("", fmt.Sprintf("Another way could save %s at most%s.", money(decimal.New(c.Plan.Gap(), -2)), as))
}

// leastCut is the shortest piece of trim that is worth telling: nobody cuts less than half an
// inch. Sticks are bought for it all the same.
const leastCut = takeoff.PerInch / 2

type sameSticks struct {
	stick takeoff.Stick
	times int
}

// grouped puts sticks that are cut alike together.
func grouped(all []takeoff.Stick) []sameSticks {
	var out []sameSticks
	for _, s := range all {
		i := slices.IndexFunc(out, func(g sameSticks) bool {
			return g.stick.Length == s.Length && slices.Equal(g.stick.Cuts, s.Cuts)
		})
		if i >= 0 {
			out[i].times++
			continue
		}
		out = append(out, sameSticks{s, 1})
	}
	return out
}

func inches(units int64) string {
	feet := decimal.NewFromInt(units).DivRound(decimal.NewFromInt(12*takeoff.PerInch), 12)
	return quantity.Feet(feet).String()
}
