package published

import "ledgerboard/pkg/model"

// roof adds the outside with one part of a roof.
func (s *site) roof(inputs with) (outside, plane *model.Member) {
	outside = s.place("outside", nil)
	return outside, give(outside.Add("plane", "", "roof"), inputs)
}

var roofTakeoffs = map[string]func(*site, takeoff){
	// A rafter is half of what the rakes of one end come to. The feet and inches in
	// the answer are the same length, rounded.
	"GOV-15": func(s *site, c takeoff) {
		_, p := s.roof(with{"plane_length": 10, "plane_width": c.in("span_ft"), "pitch": over(c.in("rise_per_12"), number(12))})
		c.about(s, c.want("length_ft").Mul(number(2)), s.of(p, "rakes_of"))
	},
	// A pitch of 4 in 12 gives, over a run of 9 and a rise of 3, the rafter of that
	// triangle: both of one end squared are 4 x (9 x 9 + 3 x 3).
	"GOV-16": func(s *site, c takeoff) {
		_, p := s.roof(with{"plane_length": 10, "plane_width": c.in("run").Mul(number(2)), "pitch": over(c.want("rise_per_12"), number(12))})
		rafters := s.of(p, "rakes_of")
		near(s.T, number(360), rafters.Mul(rafters), dust)
	},
	// Both slopes along the rafters, so without a pitch; the overhang of the example
	// lies along the rafter and only at the eaves, where that of the model lies in
	// plan and on all sides, so it is in the width. Squares are packs of 100 sq ft.
	"GOV-17": func(s *site, c takeoff) {
		slope := feet("11 ft 4 in").Add(c.in("overhang_ft"))
		near(s.T, c.in("rafter_line_length_ft"), feet("11 ft 4 in"), dec("0.000001"))
		out, _ := s.roof(with{"plane_length": c.in("building_length_ft"), "plane_width": slope.Mul(c.in("slopes"))})
		squares := s.product(100)
		s.use(s.work(out, "of roof", nil), squares, with{"takes": 1})
		s.is(c.want("area_sf"), out, "roof")
		s.is(c.want("squares"), squares, "packs")
	},
}
