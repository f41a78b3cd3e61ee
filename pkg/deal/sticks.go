package deal

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/takeoff"
)

// A CutList is how the sticks of a product are cut.
type CutList struct {
	Product *model.Member
	Plan    takeoff.Plan
	Counts  map[*model.Cell]decimal.Decimal // of the model's cells that hold how many of each length, and what is cut away
	Parted  bool                            // a run longer than the longest stick is whole sticks and a rest
}

// CutLists works out which sticks are bought, from what the model says of the rooms and
// of the work chosen. Value returns the value of any of the [Deal.CutCells]. The model's
// lines of sticks take the counts as given: they are computed before it is worked out.
func (d *Deal) CutLists(value func(*model.Cell) decimal.Decimal) ([]CutList, error) {
	products := slices.DeleteFunc(d.Root.In("product"), func(p *model.Member) bool { return len(p.In("stock")) == 0 })
	out := make([]CutList, len(products))
	questions := make([]func() error, len(products))
	for i, p := range products {
		questions[i] = func() (err error) {
			out[i], err = d.CutListOf(p, value)
			return err
		}
	}
	if err := together.Run(questions...); err != nil {
		return nil, err
	}
	return out, nil
}

// cutLines are the lines that a cut list reads, by the set of the member that they are
// read of: [Deal.CutCells] finds them, and none else is read. Never written to.
var cutLines = map[string][]string{
	"stock":   {"stick_length", "stick_price", "stick_factor"},
	"use":     {"bought", "net_use", "takes"},
	"item":    {"quantity"},
	"section": {"length", "width", "shared", "rod"},
	"leg":     {"leg_length"},
	"opening": {"floor_width", "number", "opening_width", "opening_height", "faces"},
	"fitting": {"no_base", "walls_touched", "fitted", "fitting_length", "fitting_depth"},
}

// CutCells are the cells that cut lists are worked out from. Whoever asks for a cut list
// has to have worked out all of them.
func (d *Deal) CutCells() []*model.Cell {
	var out []*model.Cell
	seen := map[*model.Member]bool{}
	add := func(m *model.Member) {
		if seen[m] {
			return
		}
		seen[m] = true
		for _, line := range cutLines[m.Set] {
			if line == "stick_factor" && !mixedOwners(m.Parent) {
				continue
			}
			out = append(out, d.Model.Find(m, line))
		}
	}
	for _, p := range d.Root.In("product") {
		stock := p.In("stock")
		for _, k := range stock {
			add(k)
		}
		for _, use := range p.In("use") {
			if len(stock) == 0 {
				break
			}
			add(use)
			add(use.Parent)
			for _, m := range use.Parent.Parent.Parent.Children {
				add(m)
			}
		}
	}
	return out
}

// CutListOf is the cut list of one product that is bought in sticks; see [Deal.CutLists].
func (d *Deal) CutListOf(p *model.Member, value func(*model.Cell) decimal.Decimal) (CutList, error) {
	list, err := cutter{d, value}.list(p)
	if err != nil {
		return CutList{}, fmt.Errorf("cut list of %s: %w", p.Label, err)
	}
	return list, nil
}

type cutter struct {
	*Deal
	value func(*model.Cell) decimal.Decimal
}

// of is the value of a line of a member.
func (c cutter) of(m *model.Member, line string) decimal.Decimal {
	if !slices.Contains(cutLines[m.Set], line) {
		panic("a cut list reads a line that whoever asks for it may not have worked out")
	}
	return c.value(c.Model.Find(m, line))
}

var unitsAFoot = decimal.NewFromInt(12 * takeoff.PerInch)

// units is a length in the units of the cut list, rounded to the nearest.
func units(feet decimal.Decimal) int64 { return feet.Mul(unitsAFoot).Round(0).IntPart() }

// kerf is what the saw takes: an eighth of an inch, common practice, unless the file
// says otherwise.
func (d *Deal) kerf() int64 {
	if d.Kerf != nil {
		return units(*d.Kerf)
	}
	return takeoff.PerInch / 8
}

// mixedOwners reports whether some lengths of a product have a price of the owner's and some
// a starter's, of which the local factor is for these alone.
func mixedOwners(p *model.Member) bool {
	stock := p.In("stock")
	own := func(k *model.Member) bool { return !k.Given.Of("own_stick_price").Number.IsZero() }
	return slices.ContainsFunc(stock, func(k *model.Member) bool { return own(k) != own(stock[0]) })
}

func (c cutter) list(p *model.Member) (CutList, error) {
	var stock []takeoff.Stock
	var longest int64
	mixed := mixedOwners(p)
	for _, k := range p.In("stock") {
		price := c.of(k, "stick_price")
		if mixed { // else the factor is the same for all, and which sticks are cheapest does not turn on it
			price = price.Mul(c.of(k, "stick_factor"))
		}
		s := takeoff.Stock{Length: units(c.of(k, "stick_length")), Price: max(1, price.Shift(2).Round(0).IntPart())} // one given free counts as next to nothing
		stock = append(stock, s)
		longest = max(longest, s.Length)
	}
	var pieces []takeoff.Piece
	var needed int64
	parted := false
	for _, use := range p.In("use") {
		needed += units(c.of(use, "bought"))
		for _, run := range c.runs(use) {
			parts, err := takeoff.Split(run.Length, longest)
			if err != nil {
				return CutList{}, err
			}
			parted = parted || len(parts) > 1
			for _, x := range parts {
				pieces = append(pieces, takeoff.Piece{Length: x, ID: run.ID})
			}
		}
	}
	plan, err := takeoff.CutList(pieces, stock, c.kerf())
	if err != nil {
		return CutList{}, err
	}
	out := CutList{Product: p, Plan: plan, Counts: map[*model.Cell]decimal.Decimal{}, Parted: parted}
	for i, k := range p.In("stock") {
		n := 0
		for _, s := range plan.Sticks {
			if s.Length == stock[i].Length {
				n++
			}
		}
		out.Counts[c.Model.Find(k, "sticks")] = decimal.NewFromInt(int64(n))
	}
	taken := -needed
	for _, s := range plan.Sticks {
		taken += s.Length - s.Offcut
	}
	out.Counts[c.Model.Find(p, "cut_away")] = decimal.NewFromInt(max(0, taken)).DivRound(unitsAFoot, quantity.Places)
	return out, nil
}
