package modeltest

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

var (
	insideMeasures = strings.Fields(`floor_area ceiling_area perimeter wall_area open_floor walls_less_all walls_less_large wet_walls tub_walls shower_walls
		base_run casing_run crown_run carpet_run cabinet_run backsplash counter living_area doors windows cased_openings tubs showers
		vanities toilets sinks closets closet_rod_run stair_treads stair_area stair_risers stair_rail_run outlets lights registers one`)
	outsideMeasures = strings.Fields(`roof eaves rakes gutters downspouts siding foundation_run soffit deck deck_rail deck_footings yard driveway
		walk patio fence trees outside_doors one`)
	houseMeasures = strings.Fields(`house_floor house_ceiling house_walls house_living_area house_finished_floor house_ground_floor house_perimeter house_doors
		house_outside_doors house_windows house_rooms house_baths house_bedrooms house_levels months_of_work one`)
)

// A worksite is the drawer with what work draws on.
type worksite struct {
	*drawer
	trade, product []*model.Member
	calledFor      []*model.Member // work on the whole house that options may call for
	house          []string        // the measures of the whole house
	items          int
}

func (w *worksite) trades() {
	for i := range 1 + w.upTo(3) {
		x := w.Deal.Add("trade", "", fmt.Sprintf("trade %d", i+1))
		w.giveMoney(10, x, "crew_rate", 0, 120)
		w.give(6, x, "crew", func() decimal.Decimal { return w.whole(1, 4) })
		w.give(6, x, "hours_a_week", func() decimal.Decimal { return w.whole(20, 60) })
		w.trade = append(w.trade, x)
	}
}

// products draws a few, so that work shares them; some are bought by the stick.
func (w *worksite) products() {
	for i := range 1 + w.upTo(4) {
		p := w.Deal.Add("product", "", fmt.Sprintf("product %d", i+1))
		w.give(10, p, "holds", func() decimal.Decimal {
			return pick(w.drawer, dec(32), dec(10), dec(23.8), dec(9), dec(0.25), dec(1000))
		})
		w.giveMoney(14, p, "pack_price", 0, 250)
		w.giveFlag(6, p, "taxed")
		w.giveFlag(3, p, "own_pack_price")
		if w.giveFlag(4, p, "by_the_stick") {
			w.use("sticks")
			w.give(8, p, "cut_away", func() decimal.Decimal { return w.whole(0, 9) })
			for range 1 + w.upTo(1) {
				s := p.Add("stock", "", "sticks")
				s.GiveNumber("stick_length", pick(w.drawer, dec(8), dec(12), dec(16)))
				w.give(13, s, "sticks", func() decimal.Decimal { return w.whole(0, 60) })
				w.giveMoney(13, s, "stick_price", 0, 40)
				w.giveFlag(4, s, "own_stick_price")
			}
		}
		w.product = append(w.product, p)
	}
}

// wholeHouse draws work on all of it, some of it only done where options call for it.
func (w *worksite) wholeHouse() {
	if !w.chance(8) {
		return
	}
	w.use("a whole house")
	r := w.Deal.Add("room", "whole_house", "whole house")
	w.give(2, r, "room_ceiling", func() decimal.Decimal { return w.ft(7, 10) })
	w.options(r, w.house)
	if w.chance(8) {
		w.use("work beside the option of the whole house")
		along := r.Add("option", "", "brought along")
		for range 1 + w.upTo(2) {
			w.item(along, w.house)
		}
	}
	for _, o := range r.In("option") {
		for _, item := range o.In("item") {
			if w.chance(8) {
				item.GiveNumber("called_for", yesNo(w.chance(13)))
				if len(w.calledFor) > 0 && w.chance(8) {
					w.use("work that calls for work")
					w.call(pick(w.drawer, w.calledFor...).Add("bringer", "", "more"), item)
				}
				w.calledFor = append(w.calledFor, item)
			}
		}
	}
}

// call lets an option, or work, call for a piece of work, or have it left undone.
func (w *worksite) call(from, item *model.Member) {
	c := from.Add("caller", "", "call")
	c.Link(item)
	w.giveFlag(5, c, "yields")
}

// options draws what could be done to a room; at most one is chosen.
func (w *worksite) options(r *model.Member, measures []string) {
	n := 1 + pick(w.drawer, 0, 1, 2)
	chosen := w.upTo(n) // n is none
	if n == 1 {
		w.use("one option")
	}
	if n == 3 {
		w.use("three options")
	}
	for i := range n {
		o := r.Add("option", "", fmt.Sprintf("option %d", i+1))
		if i != chosen || w.chance(8) {
			o.GiveNumber("chosen", yesNo(i == chosen))
		}
		w.giveMoney(6, o, "value_added", 0, 20_000)
		for range w.upTo(3) {
			w.item(o, measures)
		}
		if items := o.In("item"); len(items) > 0 && w.chance(5) {
			w.use("a rent")
			x := o.Add("rental", "", "rent")
			x.Link(pick(w.drawer, items...))
			x.GiveNumber("a_month", w.money(0, 400))
		}
		if len(w.calledFor) > 0 && w.chance(6) {
			w.drawer.use("work that is called for")
			w.call(o, pick(w.drawer, w.calledFor...))
		}
	}
	if chosen == n {
		w.use("nothing chosen")
	}
}
