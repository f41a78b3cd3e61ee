package published

var costTakeoffs = map[string]func(*site, takeoff){
	// Lumber by the board foot: so many for each board or post.
	"TXT-21": func(s *site, c takeoff) {
		for _, x := range []struct{ name, pieces string }{{"decking", "boards"}, {"posts", "pieces"}} {
			p := s.product(1)
			give(p, with{"pack_price": c.in(x.name, "usd_per_bf")})
			each := c.in(x.name, "size_in", 0).Mul(c.in(x.name, "size_in", 1)).Mul(c.in(x.name, "length_ft"))
			s.use(s.work(s.place("whole_house", nil), c.in(x.name, x.pieces), nil), p, with{"takes": over(each, number(12))})
		}
		for i, p := range s.root.In("product") {
			s.is(c.want("bf", i), p, "total_bought")
			cents(s.T, c.want("usd", i).String(), s.of(p, "product_cost"))
		}
		cents(s.T, c.want("total").String(), s.of(s.root, "rooms_cost"))
	},
	// The sales tax and the escalation; a unit cost and freight have no line.
	"TXT-24": func(s *site, c takeoff) {
		taxed, later := newSite(s.T), newSite(s.T)
		give(taxed.root, with{"sales_tax": "0.0665"}) // 6.65%
		p := taxed.packsOf(number(1), number(1), with{"takes": 1})
		give(p, with{"pack_price": c.in("tax", 0)})
		cents(s.T, c.in("tax", 0).Add(c.want("tax")).String(), taxed.of(p, "product_cost"))
		give(later.root, with{"material_factor": "1.055"}) // 5.5%
		q := later.packsOf(number(1), number(1), with{"takes": 1})
		give(q, with{"pack_price": c.in("escalation", 0)})
		cents(s.T, c.want("escalated").String(), later.of(q, "product_cost"))
	},
	// The factors are not meant for a takeoff, says their publisher (LOC-03): this is
	// the arithmetic of moving a price, for materials and for labour.
	"LOC-02": func(s *site, c takeoff) {
		factor := over(c.in("to"), c.in("frm"))
		give(s.root, with{"labour_factor": factor, "material_factor": factor})
		labour := s.work(s.place("whole_house", nil), 1, with{"hired_price": c.in("cost")})
		p := s.packsOf(number(1), number(1), with{"takes": 1})
		give(p, with{"pack_price": c.in("cost")})
		cents(s.T, c.want("cost").String(), s.of(labour, "labour"))
		cents(s.T, c.want("cost").String(), s.of(p, "product_cost"))
	},
	// Hours of doors and base from time cards: 8 hours for 9 doors; 240 ft of base by
	// two in 6 hours are 12 hours.
	"GOV-23": func(s *site, c takeoff) {
		doors := s.work(s.place("whole_house", nil), c.in("doors"), with{"hours_each": c.want("mh_per_door")})
		base := s.work(s.place("whole_house", nil), c.in("base_lf"), with{"hours_each": c.want("mh_per_lf_base")})
		within := dec(c.Tolerance.String())
		near(s.T, c.in("hours_doors"), s.of(doors, "crew_hours"), c.in("doors").Mul(within))
		near(s.T, c.in("hours_base").Mul(c.in("workers_base")), s.of(base, "crew_hours"), c.in("base_lf").Mul(within))
	},
	// The least and the greatest contingency of 60,000 of repairs, as shares that the
	// deal gives (10%, 15% and 20%, K203-01): no line picks the share by the age of the
	// house. All of it is one room's here.
	"K203-02": func(s *site, c takeoff) {
		for share, key := range map[string]string{"0.10": "min_age45_utilities_on", "0.15": "min_age45_utilities_off", "0.20": "max"} {
			one := newSite(s.T)
			give(one.root, with{"contingency_share": share})
			w := one.work(one.place("whole_house", nil), 1, with{"hired_price": c.in("repairs")})
			cents(s.T, c.want(key).String(), one.of(one.root, "contingency"))
			cents(s.T, c.want(key).String(), one.of(w.Parent.Parent, "contingency"))
		}
	},
}
