package best_test

import (
	"cmp"
	"flag"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"ledgerboard/pkg/best"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

var randomDeals = flag.Int("deals", 100, "random deals to try; a twentieth of them with -short")

// read works a choice out the long way: the file is read anew with that scope.
func (d *drawn) read(t *rapid.T, choice []int) *best.Choice {
	x, found := deal.ReadWith(deal.Options{Open: d.open}, "drawn.yaml", []byte(d.text), deal.Set{Path: "scope", Value: d.scope(choice)})
	if found.HasErrors() {
		t.Fatalf("%v\n%s", found.Errors(), d.text)
	}
	v, err := exact.Evaluate(x.Model)
	if err != nil {
		t.Fatalf("%v\n%s", err, d.text)
	}
	of := func(line string) decimal.Decimal { return v.Of(x.Model.Find(x.Root, line)) }
	d.asides[of("not_seen").String()] = true
	return &best.Choice{Options: slices.Clone(choice), Profit: of("owner_profit"), Cash: of("cash_needed"), Renovation: of("renovation"), OwnHours: of("own_hours"), Budget: of("budget")}
}

func (d *drawn) open(string) ([]byte, error) { return []byte(d.book), nil }

// doneOtherwise reports whether an option of the whole house does work itself that others call
// for, and that would call for more.
func doneOtherwise(x *deal.Deal) bool {
	for _, house := range x.Root.In("whole_house") {
		for _, o := range house.In("option") {
			for _, c := range o.In("caller") {
				if c.Given.Of("yields").Number.IsPositive() && len(c.Links[0].In("bringer")) > 0 {
					return true
				}
			}
		}
	}
	return false
}

// sharesPacks reports whether options of two rooms at the least call for the same work, of
// which each then bears a share, and that takes more than a pack; it is by own hands, for
// which a trade would ask more than the packs cost.
func sharesPacks(x *deal.Deal) bool {
	for _, house := range x.Root.In("whole_house") {
		for _, o := range house.In("option") {
			for _, it := range o.In("item") {
				rooms := map[*model.Member]bool{}
				for _, room := range callingRooms(it) {
					rooms[room] = true
				}
				own := it.Given.Of("who").Choice == "own"
				for _, u := range it.In("use") {
					if own && len(rooms) > 1 && u.Given.Of("takes").Number.GreaterThan(u.Links[0].Given.Of("holds").Number) {
						return true
					}
				}
			}
		}
	}
	return false
}

// callingRooms are the rooms whose options call for work, themselves or by other work.
func callingRooms(it *model.Member) (out []*model.Member) {
	for _, c := range it.In("caller") {
		if by := c.Parent; by.Set == "bringer" {
			out = append(out, callingRooms(by.Parent)...)
		} else {
			out = append(out, by.Parent)
		}
	}
	return out
}

// all is every choice, worked out the long way.
func (d *drawn) all(t *rapid.T) []*best.Choice {
	var out []*best.Choice
	choice := make([]int, len(d.rooms))
	for {
		out = append(out, d.read(t, choice))
		i := len(choice) - 1
		for ; i >= 0; i-- {
			if choice[i]++; choice[i] < len(d.names[i]) {
				break
			}
			choice[i] = 0
		}
		if i < 0 {
			return out
		}
	}
}

// better sorts the best first: by profit, then the cheaper, then the shorter, then by
// the earlier options.
func better(a, b *best.Choice) int {
	return cmp.Or(b.Profit.Cmp(a.Profit), a.Budget.Cmp(b.Budget), a.Renovation.Round(9).Cmp(b.Renovation.Round(9)), slices.Compare(a.Options, b.Options))
}

func equal(a, b *best.Choice) bool {
	if a == nil || b == nil {
		return a == b
	}
	same := func(x, y decimal.Decimal) bool { return x.Round(12).Equal(y.Round(12)) }
	return slices.Equal(a.Options, b.Options) && a.Profit.Equal(b.Profit) && a.Cash.Equal(b.Cash) && a.Budget.Equal(b.Budget) && same(a.Renovation, b.Renovation) && same(a.OwnHours, b.OwnHours)
}

// limit is none, or one that some choices keep and some do not, or one that none keeps.
func limit(t *rapid.T, label string, all []*best.Choice, of func(*best.Choice) decimal.Decimal) *decimal.Decimal {
	if !rapid.Bool().Draw(t, label) {
		return nil
	}
	x := of(all[rapid.IntRange(0, len(all)-1).Draw(t, label+" of")]).Round(6).Add(decimal.New(rapid.Int64Range(-100, 100).Draw(t, label+" off"), -1))
	x = decimal.Max(x, decimal.Decimal{})
	return &x
}

func TestBestIsThatOfAllChoices(t *testing.T) {
	proved, none, tried, deals, otherwise, packs, left, aside := 0, 0, 0, 0, 0, 0, 0, 0
	modeltest.Check(t, *randomDeals, func(t *rapid.T) {
		d := house(t)
		all := d.all(t)
		x, found := deal.ReadWith(deal.Options{AllOptions: true, Open: d.open}, "drawn.yaml", []byte(d.text))
		if found.HasErrors() {
			t.Fatalf("%v\n%s", found.Errors(), d.text)
		}
		deals++
		if doneOtherwise(x) {
			otherwise++
		}
		if sharesPacks(x) {
			packs++
		}
		if d.left {
			left++
		}
		if len(d.asides) > 1 {
			aside++
		}
		h, err := best.New(x)
		if err != nil {
			t.Fatalf("%v\n%s", err, d.text)
		}
		bounds := h.Bounds()
		for _, c := range all {
			got, err := h.At(c.Options)
			if err != nil || !equal(got, c) {
				t.Fatalf("choice %v: %v\n%+v\n%+v\n%s\n%s", c.Options, err, got, c, d.text, d.book)
			}
			if bounds == nil {
				continue
			}
			if exceeded, err := bounds.Exceeded(c.Options); err != nil || exceeded != "" {
				t.Fatalf("choice %v: %v %s\n%s\n%s", c.Options, err, exceeded, d.text, d.book)
			}
		}
		for range 3 {
			l := best.Limits{
				Cash:     limit(t, "cash", all, func(c *best.Choice) decimal.Decimal { return c.Cash }),
				Weeks:    limit(t, "weeks", all, (*best.Choice).Weeks),
				OwnHours: limit(t, "hours", all, func(c *best.Choice) decimal.Decimal { return c.OwnHours }),
			}
			tried++
			compare(t, &d, h, l, all, &proved, &none)
		}
	})
	t.Logf("%d of %d deals with work that is done otherwise, %d that share packs, %d that leave settled work as it is, %d that set aside by choice", otherwise, deals, packs, left, aside)
	t.Logf("%d searches, %d proved by bounds, %d without a choice", tried, proved, none)
	if proved*10 < tried*9 {
		t.Errorf("only %d of %d searches proved by bounds", proved, tried)
	}
	if testing.Short() {
		return // a few deals may well have none
	}
	if otherwise*10 < deals {
		t.Errorf("only %d of %d deals have the whole house do what would call for more", otherwise, deals)
	}
	if left*100 < deals {
		t.Errorf("only %d of %d deals leave work as it is that no option holds", left, deals)
	}
	if aside*10 < deals {
		t.Errorf("only %d of %d deals set more aside with some choices than with others", aside, deals)
	}
	if packs*40 < deals {
		t.Errorf("only %d of %d deals have rooms share packs for work that they call for", packs, deals)
	}
}

// keeps is written apart from the search.
func keeps(l best.Limits, c *best.Choice) bool {
	within := func(x decimal.Decimal, most *decimal.Decimal) bool {
		return most == nil || !x.Round(9).GreaterThan(*most)
	}
	return within(c.Cash, l.Cash) && within(c.Weeks(), l.Weeks) && within(c.OwnHours, l.OwnHours)
}

func compare(t *rapid.T, d *drawn, h *best.House, l best.Limits, all []*best.Choice, proved, none *int) {
	kept := slices.DeleteFunc(slices.Clone(all), func(c *best.Choice) bool { return !keeps(l, c) })
	slices.SortFunc(kept, better)
	kept = append(kept, nil, nil)
	f, err := h.Find(l)
	if err != nil {
		t.Fatalf("%v\n%s", err, d.text)
	}
	if !f.Proved || !f.SecondProved || !equal(f.Best, kept[0]) || !equal(f.RunnerUp, kept[1]) {
		t.Fatalf("limits %v %v %v\nfound %+v\n      %+v\nwant  %+v\nthen  %+v\nfor   %+v\n%s\n%s", l.Cash, l.Weeks, l.OwnHours, f, f.Best, kept[0], f.RunnerUp, kept[1], d.text, d.book)
	}
	if f.ByBounds {
		*proved++
	}
	if f.Best == nil {
		*none++
		leastCash(t, d, h, l, f, all)
	}
}

// own is the scope of the file.
func own(h *best.House) (out []int) {
	for _, r := range h.Rooms {
		out = append(out, r.Own)
	}
	return out
}

// leastCash holds the cash that is said to do against all choices.
func leastCash(t *rapid.T, d *drawn, h *best.House, l best.Limits, f *best.Found, all []*best.Choice) {
	prices, err := h.Prices(l, f)
	if err != nil {
		t.Fatalf("%v\n%s", err, d.text)
	}
	others := best.Limits{Weeks: l.Weeks, OwnHours: l.OwnHours}
	can := l.Cash != nil && slices.ContainsFunc(all, func(c *best.Choice) bool { return keeps(others, c) })
	for _, p := range prices {
		if (p.Least != nil) != (can && p.Limit == "cash") {
			t.Fatalf("limits %v %v %v: least %+v\n%s\n%s", l.Cash, l.Weeks, l.OwnHours, p.Least, d.text, d.book)
		}
		if p.Least == nil {
			continue
		}
		if !slices.ContainsFunc(all, func(c *best.Choice) bool { return keeps(others, c) && equal(c, p.Least) }) {
			t.Fatalf("limits %v %v %v: least %+v\n%s\n%s", l.Cash, l.Weeks, l.OwnHours, p.Least, d.text, d.book)
		}
		for _, c := range all { // doing nothing and the scope of the file, or any of few
			known := len(all) <= 256 || slices.Max(c.Options) == 0 || slices.Equal(c.Options, own(h))
			if known && keeps(others, c) && c.Cash.LessThan(p.Least.Cash) {
				t.Fatalf("%+v takes less than %+v\n%s\n%s", c, p.Least, d.text, d.book)
			}
		}
	}
}
