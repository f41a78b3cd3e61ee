package published

import (
	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// metre is how many feet a length in metres is; what is counted must not depend on
// whether lengths come as metres or as feet with 45 digits.
var metre = over(number(1), dec("0.3048"))

// hung papers a room and returns the use, its drop and the product.
func (s *site) hung(inputs with) (use, drop, paper *model.Member) {
	paper = s.product(1)
	use = s.use(s.work(s.place("whole_house", nil), 1, nil), paper, nil)
	return use, give(use.Add("drop", "", "drop"), inputs), paper
}

var rollTakeoffs = map[string]func(*site, takeoff){
	"WALL-01": func(s *site, c takeoff) {
		r, paper := s.room(c.in("room_ft", 0), c.in("room_ft", 1), c.in("height_ft")), s.product(1)
		u := s.use(s.work(r, "of walls_less_all", nil), paper, nil)
		d := give(u.Add("drop", "", "drop"), with{
			"drop_run": "of perimeter", "roll_wide": c.in("paper_width_ft"), "roll_long": c.in("roll_ft"),
		})
		s.is(c.want("strips"), d, "drops")
		s.is(c.want("strips_per_roll"), d, "drops_a_roll")
		s.is(c.want("rolls"), paper, "packs")
	},
	"WALL-06": func(s *site, c takeoff) {
		var drops, papers []*model.Member
		for _, spare := range []int{0, 1} {
			u, d, p := s.hung(with{
				"drop_run": inches(c.in("perimeter_in")), "drop_height": inches(c.in("ceiling_in")), "trim": inches(c.in("trim_in")),
				"roll_wide": inches(c.in("width_in")), "roll_long": inches(c.in("roll_in")),
			})
			give(u, with{"for_the_job": spare})
			drops, papers = append(drops, d), append(papers, p)
		}
		for _, d := range drops {
			s.is(c.want("drops"), d, "drops")
			s.is(c.want("per_roll"), d, "drops_a_roll")
		}
		s.is(c.want("rolls"), papers[0], "packs")
		s.is(c.want("with_spare"), papers[1], "packs")
	},
	// The room and the roll stand in the text of the example. A half-drop pattern is
	// counted there as rolls of one kind; the model takes two rolls in turn, which
	// comes to as many.
	"WALL-10": func(s *site, c takeoff) {
		type papered struct {
			row         int
			scale       decimal.Decimal
			drop, paper *model.Member
		}
		var all []papered
		for i := range c.count("cases") {
			for _, scale := range []decimal.Decimal{number(1), metre} {
				m := func(text string) decimal.Decimal { return dec(text).Mul(scale) }
				half := 0
				if dig(c.Inputs, []any{"cases", i, 1}) == "half" {
					half = 1
				}
				_, d, p := s.hung(with{
					"drop_run": m("15"), "drop_height": m("2.40"), "trim": m("0.10"), "roll_wide": m("0.53"), "roll_long": m("10.05"),
					"repeat": m(dig(c.Inputs, []any{"cases", i, 0})), "half_drop": half,
				})
				all = append(all, papered{i, scale, d, p})
			}
		}
		for _, p := range all {
			s.is(c.want("rows", p.row, 2).Mul(p.scale), p.drop, "drop_length")
			s.is(c.want("rows", p.row, 3), p.drop, "drops_a_roll")
			s.is(c.want("rows", p.row, 4), p.drop, "drops")
			s.is(c.want("rows", p.row, 5), p.paper, "packs")
		}
	},
	// Strips that fit a roll, and repeats that fit a height, without a remainder.
	"TRAP-03": func(s *site, c takeoff) {
		var strips [][]*model.Member
		var lengths []*model.Member
		scales := []decimal.Decimal{number(1), metre}
		for _, scale := range scales {
			var row []*model.Member
			for i := range c.count("roll_m") {
				_, d, _ := s.hung(with{
					"drop_run": 1, "roll_wide": 1, "drop_height": c.in("strip_m", i).Mul(scale), "roll_long": c.in("roll_m", i).Mul(scale),
				})
				row = append(row, d)
			}
			_, d, _ := s.hung(with{
				"drop_run": 1, "roll_wide": 1, "roll_long": 100, "drop_height": c.in("height_m").Mul(scale), "repeat": c.in("repeat_m").Mul(scale),
			})
			strips, lengths = append(strips, row), append(lengths, d)
		}
		for i, scale := range scales {
			for j, d := range strips[i] {
				s.is(c.want("strips", j), d, "drops_a_roll")
			}
			s.is(c.want("repeats").Mul(c.in("repeat_m")).Mul(scale), lengths[i], "drop_length")
		}
	},
	"CARP-01": func(s *site, c takeoff) {
		give(s.root, with{"fill_pieces": 3, "roll_width": c.in("roll_ft")})
		r, p := s.room(c.in("room_ft", 0), c.in("room_ft", 1), 8), s.product(9)
		s.use(s.work(r, "of carpet_run", nil), p, with{"takes": c.in("roll_ft")})
		s.is(c.want("net_sf"), r, "floor_area")
		s.is(c.in("room_ft", 1).Add(c.in("fill_cut_ft")), r, "carpet_run")
		s.is(c.want("bought_sf"), p, "total_bought")
		s.is(c.want("bought_sy"), p, "packs")
	},
	// Priced by the yard that comes off the roll, so by the running foot of it, and not
	// by whole yards. The default roll of 12 ft and fill of three pieces.
	"CARP-03": func(s *site, c takeoff) {
		r, p := s.room(c.in("room_ft", 0), c.in("room_ft", 1), 8), s.product(12)
		s.use(s.work(r, "of carpet_run", nil), p, with{"takes": 12})
		give(p, with{"pack_price": over(c.in("usd_per_sy").Mul(number(12)), number(9))})
		s.is(c.want("roll_sf"), p, "total_bought")
		s.is(number(0), p, "left_over")
		cents(s.T, c.Expected["roll_usd"].(string), s.of(p, "product_cost"))
		cents(s.T, c.Expected["roll_usd"].(string), s.of(s.root, "rooms_cost"))
	},
	"CARP-04": func(s *site, c takeoff) {
		give(s.root, with{"fill_pieces": c.want("pieces_across")})
		r := s.room(c.in("room_ft", 1), c.in("room_ft", 0), 8)
		floor := r.In("section")[0]
		s.is(c.in("fill_ft"), floor, "rest_across")
		s.is(c.want("total_lf"), floor, "run_along")
		s.is(c.want("total_lf"), r, "carpet_run")
	},
}
