package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// ItemPage writes an item of work whole, and how to override it.
func ItemPage(w io.Writer, b *pricebook.Book, it *pricebook.Item, s Style) error {
	p := newPage(w, s)
	p.title(it.Name + ": an item of work")
	if it.Work != "" {
		p.text("", it.Work)
	}
	p.line("")
	p.fact("trade", it.Trade)
	p.fact("category", it.Category)
	if it.Element != "none" {
		p.fact("element", it.Element)
	}
	p.fact("measure", fmt.Sprintf("%s, in %s", it.Measure, it.Unit))
	p.fact("share", sharesOf(it))
	p.fact("done", usual(it.InPart, "to a part as a rule: the deal file says how much, with   count:   or   part:"))
	p.fact("once", usual(it.Once, "for a room where other work brings it, whatever the count of that"))
	p.fact("each", usual(it.ForEach, "one for each piece of work that brings it"))
	p.fact("floor", usual(it.NewFloor, "a new one, so that the layers of the old one are taken up"))
	p.fact("makes", it.Makes)
	p.fact("new", newPart(it))
	p.fact("takes out", it.TakesOut)
	p.fact("replaces", strings.Join(it.InsteadOf, ", "))
	each := it.AndCoat()
	if each != "" {
		p.fact("coats", fmt.Sprint(it.Coats))
	}
	p.fact("hours", hoursOf(it, each))
	if it.Hired.IsZero() {
		p.fact("hired", "no price for labour alone")
	} else {
		p.fact("hired", fmt.Sprintf("%s %s%s, labour alone; %s", unitMoney(it.Hired), per(it.Unit), each, said(it.HiredSource, it.Dated)))
	}
	for _, x := range []struct {
		label, unit string
		n           decimal.Decimal
	}{{"debris", "cu ft", it.Debris}, {"weight", "lb", it.Weight}} {
		if x.n.IsPositive() {
			p.fact(x.label, fmt.Sprintf("%s %s %s", x.n, x.unit, per(it.Unit)))
		}
	}
	if it.Waits.IsPositive() {
		p.fact("waits", quantity.FormatCount(it.Waits, 2)+" "+plural("day", it.Waits)+" in which nobody works")
	}
	p.fact("permit", usual(it.Permit, "usual; local rules decide"))
	p.fact("licence", usual(it.Licence, "a licensed trade is usual or required; local rules decide"))
	if len(it.Cautions) > 0 {
		p.fact("cautions", strings.Join(it.Cautions, ", ")+"; local codes and licensed trades come first")
	}
	p.fact("source", it.Source)
	usesPart(p, b, it)
	bringsPart(p, b, it)
	overItem(p, it)
	return p.flush()
}

// fact writes a labelled line; nothing for what there is not.
func (p *page) fact(label, text string) {
	if text != "" {
		p.text(fmt.Sprintf("  %-10s", label), text)
	}
}

// per is for each unit of work: per sq ft, each.
func per(u quantity.Unit) string {
	if u == "each" {
		return "each"
	}
	return "per " + string(u)
}

// sharesOf is how much of its measure an item is done to by the year built, or nothing.
func sharesOf(it *pricebook.Item) string {
	if it.ShareByAge == "" {
		return ""
	}
	all := it.Shares()
	var said []string
	for i, years := range pricebook.Bands() {
		said = append(said, percent(all.Rows[i])+" "+years)
	}
	return "of its measure: " + strings.Join(said, ", ") + ", and an unknown year counts as the oldest; " + all.Source
}

func usual(yes bool, words string) string {
	if yes {
		return words
	}
	return ""
}

// jobOf says for what something comes however large the work is.
func jobOf(it *pricebook.Item) string {
	switch m := pricebook.MeasureNamed(it.Measure); {
	case m != nil && m.Of == "house":
		return " once for the house"
	case m != nil && m.Of == "outside":
		return " once"
	}
	return " for each room"
}

func hoursOf(it *pricebook.Item, each string) string {
	text := "none"
	if it.Hours.IsPositive() {
		text = fmt.Sprintf("%s of a trained hand %s%s", it.Hours, per(it.Unit), each)
	}
	if it.SetUp.IsPositive() {
		text += ", and " + it.SetUp.String() + " once" + strings.TrimPrefix(jobOf(it), " once")
	}
	if it.HoursSource != "" && text != "none" {
		text += "; " + it.HoursSource
	}
	return text
}

// said is a source with its day.
func said(source string, dated quantity.Date) string {
	if dated.IsZero() {
		return source + ", undated"
	}
	return source + ", " + dated.String()
}

func usesPart(p *page, b *pricebook.Book, it *pricebook.Item) {
	p.heading("Takes")
	if len(it.Uses) == 0 {
		p.line("  no materials")
	}
	for _, u := range it.Uses {
		p.text("  ", u.Product+": "+takes(b, it, u))
		if prod := b.Product(u.Product); prod != nil {
			p.text("      ", priceOf(prod)+"; "+said(prod.Source, prod.Dated))
		}
		if u.Source != "" {
			p.text("      ", "how much: "+u.Source)
		}
	}
}

// takes is how much of a product a unit of work takes.
func takes(b *pricebook.Book, it *pricebook.Item, u pricebook.Use) string {
	unit := u.Unit(it)
	var of quantity.Unit
	prod := b.Product(u.Product)
	if prod != nil {
		of = prod.Pack.Unit
		if len(prod.Sticks) > 0 {
			of = "ft"
		}
	}
	var text string
	switch {
	case prod != nil && prod.Roll != nil:
		text = "hung in drops around the room"
	case u.Covers.IsPositive():
		one := "one pack"
		if pack := b.PackOf(u); prod != nil && !pack.Number.Equal(prod.Pack.Number) {
			one = "one " + pack.String()
		}
		text = fmt.Sprintf("%s for %s%s", one, u.Covers, unitWord(unit))
	case u.ForJob.IsPositive():
		text = fmt.Sprintf("%s%s%s", u.ForJob, unitWord(of), jobOf(it))
	default:
		text = fmt.Sprintf("%s%s %s", u.TakesOf(prod, it).Round(6), unitWord(of), per(unit))
	}
	if u.PerCoat {
		text += ", each coat"
	}
	if u.Along != "" {
		text += ", along the " + u.Along
	}
	if u.Waste.IsPositive() {
		text += ", waste " + percent(u.Waste)
	}
	return text
}

func priceOf(p *pricebook.Product) string {
	switch {
	case len(p.Sticks) > 0:
	case p.SoldIn() == "each":
		return unitMoney(p.Price) + " each"
	case p.SoldIn() == p.Pack.Word:
		return unitMoney(p.Price) + " a " + p.Pack.Word
	default:
		return p.SoldIn() + " at " + unitMoney(p.Price)
	}
	all := make([]string, len(p.Sticks))
	for i, s := range p.Sticks {
		all[i] = s.Length.String() + " at " + unitMoney(s.Price)
	}
	return "sticks of " + strings.Join(all, ", ")
}

func bringsPart(p *page, b *pricebook.Book, it *pricebook.Item) {
	p.heading("Brings along")
	if len(it.Brings) == 0 {
		p.line("  nothing")
	}
	for _, c := range it.Brings {
		text := c.Item
		if c.If != "" {
			text += ", if " + c.If
		}
		if c.House {
			text += ", once for the whole house"
		}
		if len(c.Unless) > 0 {
			text += ", unless there is " + strings.Join(c.Unless, " or ")
			if slices.ContainsFunc(c.Unless, func(name string) bool { return b.Item(name).Thing() == pricebook.WoodFinish }) {
				text += "; what only finishes a floor that is laid new does not count"
			}
		}
		p.text("  ", text)
	}
	if by := b.BroughtBy(it.Name); len(by) > 0 {
		p.heading("Comes with")
		p.text("  ", strings.Join(by, ", "))
	}
}

func overItem(p *page, it *pricebook.Item) {
	p.heading("To override it")
	p.text("  ", "In a price book of your own, which the deal file names (own book: mine.yaml); what is not said stays:")
	p.line("    items:")
	hired := "none"
	if it.Hired.IsPositive() {
		hired = unitMoney(it.Hired) + " " + per(it.Unit) + it.AndCoat()
	}
	p.line("      %s:", it.Name)
	p.line("        hired: %s", hired)
	p.line("        dated: 2026-09-14")
	p.line("        hired source: who said so")
	p.text("  ", "Once, in the deal file, under the work of a room:")
	p.line("    %s: {by: hired, hired: %s}", it.Name, hired)
	p.line("    %s: {quote: $1,450, dated: 2026-09-14}", it.Name)
	p.line("  Without something it brings, beside the work:")
	p.line("    without: [name]")
}

// ProductPage writes a product whole, and how to override it.
func ProductPage(w io.Writer, b *pricebook.Book, prod *pricebook.Product, s Style) error {
	p := newPage(w, s)
	p.title(prod.Name + ": a product")
	p.line("")
	p.fact("aisle", prod.Aisle)
	p.fact("grade", prod.Grade)
	p.fact("sold in", priceOf(prod))
	if prod.Roll != nil && prod.Roll.Repeat.Feet().IsPositive() {
		p.fact("pattern", "repeats after "+prod.Roll.Repeat.String())
	}
	p.fact("price", said(prod.Source, prod.Dated))
	if prod.NoTax {
		p.fact("tax", "no sales tax")
	}
	if by := b.TakenBy(prod.Name); len(by) > 0 {
		p.heading("Taken by")
		p.text("  ", strings.Join(by, ", "))
	}
	p.heading("To override it")
	p.text("  ", "In a price book of your own, which the deal file names (own book: mine.yaml); what is not said stays:")
	p.line("    products:")
	p.line("      %s:", prod.Name)
	if len(prod.Sticks) > 0 {
		p.line("        sticks: {%s: %s}", prod.Sticks[0].Length, unitMoney(prod.Sticks[0].Price))
	} else {
		p.line("        price: %s", unitMoney(prod.Price))
	}
	p.line("        dated: 2026-09-14")
	p.line("        source: who said so")
	if by := b.TakenBy(prod.Name); len(by) > 0 && len(prod.Sticks) == 0 {
		p.text("  ", "Once, in the deal file, where it is the first material of some work:")
		p.line("    %s: {by: hired, price: %s}", by[0], unitMoney(prod.Price))
	}
	return p.flush()
}

// newPart says which part of the house an item makes all new, or "".
func newPart(it *pricebook.Item) string {
	part := pricebook.MadeNew(it)
	if part == "" {
		return ""
	}
	return "all of the " + part + ", for which nothing is set aside where this is done"
}
