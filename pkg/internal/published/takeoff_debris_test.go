package published

import (
	"encoding/json"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/model"
)

// yards are cubic yards as cubic feet.
func yards(n decimal.Decimal) decimal.Decimal { return n.Mul(number(27)) }

// load is an amount of debris in cubic yards at so many pounds each.
func (s *site) load(amount, pounds decimal.Decimal) *model.Member {
	return s.work(s.place("whole_house", nil), amount, with{"debris_each": 27, "weight_each": pounds})
}

var debrisTakeoffs = map[string]func(*site, takeoff){
	// L x W x stories x 0.20 x VCM cubic yards: so much for each square foot of floor.
	"DEB-01": func(s *site, c takeoff) {
		r := s.room(c.in("length_ft"), c.in("width_ft"), 8)
		s.work(r, "of house_floor", with{"part": c.in("stories"), "debris_each": yards(dec("0.20").Mul(c.in("vcm")))})
		s.is(yards(c.want("cy")), s.root, "all_debris")
	},
	// L x W x H x 0.33 / 27 cubic yards.
	"DEB-02": func(s *site, c takeoff) {
		r := s.room(c.in("size_ft", 0), c.in("size_ft", 1), c.in("size_ft", 2))
		s.work(r, "of floor_area", with{"debris_each": c.in("size_ft", 2).Mul(dec("0.33"))})
		s.is(yards(c.want("cy")), s.root, "all_debris")
	},
	"DEB-04": func(s *site, c takeoff) {
		s.work(s.place("outside", with{"yard": c.in("sf")}), "of yard", with{"debris_each": c.in("height_ft")})
		near(s.T, yards(c.want("cy")), s.of(s.root, "all_debris"), yards(dec(c.Tolerance.String())))
	},
	// Of each kind a full container of 20 cubic yards, the default: its weight, and
	// whether the weight or the volume decides. 484 x 20 lb and 860 x 20 lb are over
	// the limit of 6,000 lb, so more containers go; the rest are not.
	"DEB-05": func(s *site, c takeoff) {
		want := map[string]int64{"mixed_cd": 2, "concrete": 3}
		for kind, pounds := range c.Expected {
			one := newSite(s.T)
			one.load(number(20), dec(pounds.(json.Number).String()))
			one.is(c.want(kind).Mul(number(20)), one.root, "all_weight")
			one.is(number(max(1, want[kind])), one.root, "containers")
		}
	},
	// "A drywall box hits its weight limit first": 12,000 lb go in two containers of
	// 6,000 lb where the volume would fit in one. The pounds of a yard are DEB-06's.
	"DEB-07": func(s *site, c takeoff) {
		for key, x := range map[string]struct{ pounds, containers int64 }{"cardboard_lb": {30, 1}, "drywall_lb": {400, 2}} {
			one := newSite(s.T)
			give(one.root, with{"container_holds": yards(c.in("box_cy")), "container_limit": 6000, "container_price": 540})
			one.load(c.in("box_cy"), number(x.pounds))
			one.is(yards(c.in("box_cy")), one.root, "all_debris")
			one.is(c.want(key), one.root, "all_weight")
			one.is(number(x.containers), one.root, "containers")
			one.is(number(540*x.containers), one.root, "disposal")
		}
	},
	// The walls and the ceiling of ROOM-01 at 1/2 in, loose.
	"DEB-09": func(s *site, c takeoff) {
		solid := inches(c.in("thickness_in"))
		for i := range c.count("bulking") {
			one := newSite(s.T)
			each := solid.Mul(c.in("bulking", i))
			var torn []*model.Member
			r := one.theRoom()
			for _, measure := range []string{"of wall_area", "of ceiling_area"} {
				torn = append(torn, one.work(r, measure, with{"debris_each": each, "weight_each": over(each.Mul(c.in("lb_per_loose_cy")), number(27))}))
			}
			one.is(c.in("sf"), torn[0].Parent.Parent, "wall_area", "ceiling_area")
			near(s.T, yards(c.want("loose_cy", i)), one.of(one.root, "all_debris"), yards(dec("0.0001")))
			c.about(s, c.want("lb_loose", i), one.of(one.root, "all_weight"))
		}
	},
}
