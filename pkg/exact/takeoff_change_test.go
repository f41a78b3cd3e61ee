package exact_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

// again lays a copy of a house out.
func (w worked) again(t *rapid.T, copy *model.Member) worked {
	return measured(t, &modeltest.Draw{Deal: copy})
}

// ofInside are rooms with at least one rectangle or wall.
func ofInside(w worked) []*model.Member { return w.Deal.In("inside") }

// growing are measures of a room that never fall as it grows. Those less openings
// and fixed parts are among them, since these stay as they are. Living area is not:
// where only a low part grows, less than half may reach 7 ft.
var growing = strings.Fields(`floor_area ceiling_area perimeter wall_area open_floor walls_less_all walls_less_large wet_walls tub_walls shower_walls
	base_run casing_run crown_run carpet_run cabinet_run backsplash counter five seven doors windows cased_openings tubs showers
	vanities toilets sinks closets closet_rod_run stair_treads stair_area stair_risers stair_rail_run outlets lights registers one`)

var growingHouse = strings.Fields(`house_floor house_ceiling house_walls house_perimeter house_doors house_windows house_rooms`)

// byLivingArea reports whether an input goes by what may fall.
func byLivingArea(x *model.Member) bool {
	for _, v := range x.Given {
		if strings.Contains(v.Refers, "living_area") {
			return true
		}
	}
	return false
}

// stretch makes every rectangle of a room longer, wider or both, and a walk with it.
func stretch(t *rapid.T, r *model.Member) {
	by := decimal.NewFromInt(rapid.Int64Range(16, 48).Draw(t, "sixteenths")).Div(decimal.NewFromInt(16))
	ways := rapid.SampledFrom([][]string{{"length", "walk_east"}, {"width", "walk_north"}, {"length", "walk_east", "width", "walk_north"}}).Draw(t, "ways")
	for _, x := range slices.Concat(r.In("section"), r.In("leg")) {
		for _, line := range ways {
			if v, ok := x.Given.Look(line); ok {
				x.GiveNumber(line, v.Number.Mul(by))
			}
		}
	}
}

func TestTakeoffGrowsWithTheRoom(t *testing.T) {
	modeltest.Check(t, *randomHouses/4, func(t *rapid.T) {
		w := measured(t, modeltest.RandomHouse(t))
		larger, to := modeltest.Copy(w.Deal, nil)
		r := rapid.SampledFrom(ofInside(w)).Draw(t, "room")
		stretch(t, to[r])
		now := w.again(t, larger)
		var errs []error
		grows := func(x *model.Member, line string) {
			before, after := w.at(x, line), now.at(to[x], line)
			errs = append(errs, check(after.GreaterThan(before.Sub(dust)), "%s, %s fell from %s to %s", x.Path(), line, before, after))
		}
		for _, line := range growing {
			grows(r, line)
		}
		for _, line := range growingHouse {
			grows(w.Deal, line)
		}
		for _, x := range w.all("item") {
			if !byLivingArea(x) {
				grows(x, "quantity")
			}
		}
		for _, u := range w.all("use") {
			if byLivingArea(u.Parent) || byLivingArea(u) {
				continue
			}
			for _, line := range []string{"net_use", "ordered", "bought"} {
				grows(u, line)
			}
		}
		failWith(t, errs)
	})
}

func failWith(t *rapid.T, errs []error) {
	if err := errors.Join(errs...); err != nil {
		t.Fatalf("%v", err)
	}
}

// split cuts a rectangle in two of the same height and says the joint. One under a
// slope is cut across it only, so that both parts keep the slope.
func split(t *rapid.T, s *model.Member) {
	along, across := "length", "width"
	if low, slopes := s.Given.Look("low_height"); !slopes || low.Number.Equal(s.Given.Of("height").Number) {
		if rapid.Bool().Draw(t, "the other way") {
			along, across = across, along
		}
	}
	whole := s.Given.Of(along).Number
	part := whole.Mul(decimal.NewFromInt(rapid.Int64Range(1, 15).Draw(t, "sixteenths"))).Div(decimal.NewFromInt(16))
	other := s.Parent.Add("section", "", "the other part")
	for _, g := range s.Given {
		other.Give(g.Line, *g.Value)
	}
	s.GiveNumber(along, whole.Sub(part))
	other.GiveNumber(along, part)
	other.GiveNumber("shared", s.Given.Of(across).Number)
	other.GiveNumber("closet", decimal.Zero)
}

// A rectangle that is said as two measures the same; a roll is laid in each by
// itself, and the rod of a closet goes along its longer side, so those may differ.
func TestTakeoffOfARectangleInTwo(t *testing.T) {
	modeltest.Check(t, *randomHouses/4, func(t *rapid.T) {
		w := measured(t, modeltest.RandomHouse(t))
		cut, to := modeltest.Copy(w.Deal, nil)
		all := w.all("section")
		if len(all) == 0 {
			return
		}
		s := rapid.SampledFrom(all).Draw(t, "rectangle")
		split(t, to[s])
		now := w.again(t, cut)
		var errs []error
		for _, line := range growing {
			if line != "carpet_run" && line != "closet_rod_run" {
				errs = append(errs, alike(line, w.at(s.Parent, line), now.at(to[s.Parent], line)))
			}
		}
		errs = append(errs, alike("living_area", w.at(s.Parent, "living_area"), now.at(to[s.Parent], "living_area")))
		for _, line := range growingHouse {
			errs = append(errs, alike(line, w.of(line), now.of(line)))
		}
		failWith(t, errs)
	})
}

// What is not chosen could as well not stand there: not a figure of the deal, of a
// product or of another member changes when it is left out.
func TestTakeoffWithoutWhatIsNotChosen(t *testing.T) {
	modeltest.Check(t, *randomHouses/4, func(t *rapid.T) {
		w := measured(t, modeltest.RandomHouse(t))
		rest, to := modeltest.Copy(w.Deal, func(all []*model.Member) []*model.Member {
			return slices.DeleteFunc(slices.Clone(all), func(x *model.Member) bool {
				return x.Set == "option" && w.at(x, "chosen").IsZero()
			})
		})
		failWith(t, unchanged(w, w.again(t, rest), to))
	})
}

// unchanged are the lines of members that stand in both houses and differ.
func unchanged(w, now worked, to map[*model.Member]*model.Member) (errs []error) {
	for _, c := range w.m.Cells {
		if there := to[c.Member]; there != nil && ofTakeoff(c.Line) {
			errs = append(errs, same(fmt.Sprintf("%s (%s)", c.Name(), c.Line.ID()), w.Of(c), now.Of(now.m.Cell(there, c.Line))))
		}
	}
	return errs
}

// running are lines that depend on the order by what they are: sums so far, and what
// follows from rounding them in turn.
var running = strings.Fields(`inside.cost_a_foot room.gain room.cost_so_far room.contingency_so_far room.contingency room.cash_cost room.trade_price
	option.cash_cost option.trade_price item.materials item.cash_cost item.trade_price trade.cash_cost trade.trade_price
	use.so_far use.charged_so_far use.charged`)

// The order of rooms changes no total. A charge is rounded where it begins and where
// it ends, so it may move by two cents; contingency follows the charges of a room.
func TestTakeoffInAnyOrder(t *testing.T) {
	modeltest.Check(t, *randomHouses/4, func(t *rapid.T) {
		w := measured(t, modeltest.RandomHouse(t))
		rooms := w.Deal.In("room")
		order := rapid.Permutation(rooms).Draw(t, "order")
		other, to := modeltest.Copy(w.Deal, func(all []*model.Member) []*model.Member {
			rest := slices.DeleteFunc(slices.Clone(all), func(x *model.Member) bool { return slices.Contains(rooms, x) })
			if len(rest) < len(all) {
				return slices.Concat(rest, order)
			}
			return all
		})
		now := w.again(t, other)
		var errs []error
		for _, c := range w.m.Cells {
			if !ofTakeoff(c.Line) {
				continue
			}
			before, after := w.Of(c), now.Of(now.m.Cell(to[c.Member], c.Line))
			switch id := c.Line.ID(); {
			case !slices.Contains(running, id):
				errs = append(errs, same(fmt.Sprintf("%s (%s)", c.Name(), id), before, after))
			case id == "use.charged" || id == "room.contingency":
				most := cent.Mul(decimal.NewFromInt(2))
				if id == "room.contingency" {
					most = most.Mul(decimal.NewFromInt(int64(1 + len(w.all("use")))))
				}
				errs = append(errs, check(before.Sub(after).Abs().LessThanOrEqual(most), "%s (%s): %s against %s", c.Name(), id, before, after))
			}
		}
		failWith(t, errs)
	})
}
