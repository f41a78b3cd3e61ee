package published

import (
	"ledgerboard/pkg/model"
)

// room01 is the room of ROOM-01, by which others go.
func room01(s *site, c takeoff) *model.Member {
	r := s.room(c.in("room_ft", 0), c.in("room_ft", 1), c.in("height_ft"))
	for kind, key := range map[string]string{"door": "doors", "window": "windows"} {
		for i := range c.count(key) {
			s.opening(r, kind, c.in(key, i, 0), c.in(key, i, 1))
		}
	}
	return r
}

// theRoom is the room of ROOM-01 for an example that is derived from it.
func (s *site) theRoom() *model.Member {
	return room01(s, published[takeoff](s.T, "takeoff.json")["ROOM-01"])
}

var roomTakeoffs = map[string]func(*site, takeoff){
	// The volume is left out: no line measures it.
	"ROOM-01": func(s *site, c takeoff) {
		r := room01(s, c)
		for key, line := range map[string]string{
			"floor_sf": "floor_area", "ceiling_sf": "ceiling_area", "perimeter_ft": "perimeter", "gross_wall_sf": "wall_area",
			"net_wall_sf": "walls_less_all", "base_net_lf": "base_run",
		} {
			s.is(c.want(key), r, line)
		}
		s.is(c.want("gross_wall_sf").Sub(c.want("openings_sf")), r, "walls_less_all")
	},
	// The rule of thumb, 20 sq ft a door and 15 a window, is not a rule of the model,
	// which deducts what openings measure.
	"ROOM-02": func(s *site, c takeoff) {
		r := s.theRoom()
		type painted struct{ work, use, paint *model.Member }
		by := map[string]painted{}
		for cover := range c.Expected["gal_exact"].(map[string]any) {
			w, p := s.work(r, "of walls_less_all", with{"coats": c.in("coats")}), s.product(1)
			by[cover] = painted{w, s.use(w, p, with{"covers": cover, "use_coats": "of coats"}), p}
		}
		for cover, p := range by {
			s.is(c.in("net_sf"), p.work, "quantity")
			s.is(c.want("gal_exact", cover), p.use, "net_use")
			s.is(c.want("gal_bought", cover), p.paint, "packs")
		}
	},
	// The model pools surfaces and rounds once, after waste: pooled_with_waste. A
	// product of its own for each surface shows the per-surface rounding; waste on
	// sheets that are rounded already is not a rule of the model.
	"ROOM-03": func(s *site, c takeoff) {
		r := s.theRoom()
		surfaces := []string{"wall_area", "ceiling_area"}
		waste := percent(c.in("waste_pct"))
		pooled, wasted := s.product(32), s.product(32)
		alone, aloneWasted := []*model.Member{}, []*model.Member{}
		for _, measure := range surfaces {
			w := s.work(r, "of "+measure, nil)
			a, b := s.product(32), s.product(32)
			s.use(w, pooled, with{"takes": 1})
			s.use(w, wasted, with{"takes": 1, "waste": waste})
			s.use(w, a, with{"takes": 1})
			s.use(w, b, with{"takes": 1, "waste": waste})
			alone, aloneWasted = append(alone, a), append(aloneWasted, b)
		}
		s.is(c.want("pooled_no_waste"), pooled, "packs")
		s.is(c.want("pooled_with_waste"), wasted, "packs")
		for i := range surfaces {
			s.is(c.want("per_surface_no_waste", i), alone[i], "packs")
			s.is(c.want("per_surface_with_waste", i), aloneWasted[i], "packs")
		}
	},
	// Tiles by layout are left out: no line lays tiles out.
	"ROOM-04": func(s *site, c takeoff) {
		r := s.room(5, 8, 8)
		w := s.work(r, "of open_floor", nil)
		var cartons, uses []*model.Member
		for i := range c.count("waste_pct") {
			p := s.product(10)
			uses = append(uses, s.use(w, p, with{"takes": 1, "waste": percent(c.in("waste_pct", i))}))
			cartons = append(cartons, p)
		}
		backer, thinset := s.product(15), s.product(1)
		s.use(w, backer, with{"takes": 1})
		s.use(w, thinset, with{"covers": 80})
		s.is(c.in("sf"), w, "quantity")
		for i := range uses {
			s.is(c.want("sf", i), uses[i], "ordered")
			s.is(c.want("cartons", i), cartons[i], "packs")
		}
		s.is(c.want("backer_3x5_sheets"), backer, "packs")
		s.is(c.want("thinset_bags_at_80"), thinset, "packs")
	},
	"ROOM-06": func(s *site, c takeoff) {
		w := s.work(s.theRoom(), "of open_floor", nil)
		var cartons, uses []*model.Member
		for i := range c.count("waste_pct") {
			p := s.product(c.in("carton_sf"))
			uses = append(uses, s.use(w, p, with{"takes": 1, "waste": percent(c.in("waste_pct", i))}))
			cartons = append(cartons, p)
		}
		s.is(c.in("sf"), w, "quantity")
		for i := range uses {
			s.is(c.want("sf", i), uses[i], "ordered")
			s.is(c.want("cartons", i), cartons[i], "packs")
		}
	},
	// Plastering: walls by their length and height, and ceilings that stand in the
	// list as an area by 1. The square yards pool over the house.
	"TXT-04": func(s *site, c takeoff) {
		plaster := s.product(9) // square feet in a square yard
		var done []*model.Member
		for i := range c.count("items") {
			run, height := c.in("items", i, 0), c.in("items", i, 1)
			r, measure := s.room(over(run, number(4)), over(run, number(4)), height), "of wall_area"
			if height.Equal(number(1)) {
				r, measure = s.room(run, 1, 9), "of ceiling_area"
			}
			w := s.work(r, measure, nil)
			s.use(w, plaster, with{"takes": 1})
			done = append(done, w)
		}
		for i, w := range done {
			s.is(c.want("sf", i), w, "quantity")
		}
		s.is(c.want("total_sf"), plaster, "total_bought")
		s.is(c.want("total_sy"), plaster, "packs")
	},
	// Cornices: the run between walls and ceiling, by how far they reach.
	"TXT-05": func(s *site, c takeoff) {
		plaster := s.product(9)
		var uses []*model.Member
		for i := range c.count("items") {
			side := over(c.in("items", i, 0), number(4))
			w := s.work(s.room(side, side, 9), "of crown_run", nil)
			uses = append(uses, s.use(w, plaster, with{"takes": c.in("items", i, 1)}))
		}
		for i, u := range uses {
			s.is(c.want("sf", i), u, "net_use")
		}
		s.is(c.want("total"), plaster, "total_bought")
	},
	"TXT-30": func(s *site, c takeoff) {
		r := s.room(c.in("room_ft", 0), c.in("room_ft", 1), c.in("height_ft"))
		var paint []*model.Member
		for i := range c.count("coats") {
			p := s.product(1)
			w := s.work(r, "of wall_area", with{"coats": c.in("coats", i)})
			s.use(w, p, with{"covers": c.in("sf_per_gal"), "use_coats": "of coats"})
			paint = append(paint, p)
		}
		s.is(c.want("wall_sf"), r, "wall_area")
		for i, p := range paint {
			s.is(c.want("gal", i), p, "packs")
		}
	},
}
