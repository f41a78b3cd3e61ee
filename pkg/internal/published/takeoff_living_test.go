package published

import "ledgerboard/pkg/model"

// attic is a room under a gable: walls of the height of the knee on both sides, and
// a ridge along the length, so high as the slope takes it over half of the width.
func (s *site) attic(c takeoff, rise, run int64) *model.Member {
	half := c.in("width_ft").Div(number(2))
	ridge := c.in("knee_ft").Add(over(half.Mul(number(rise)), number(run)))
	r := s.root.Add("room", "inside", "attic")
	give(r, with{"room_ceiling": ridge})
	give(r.Add("section", "", "floor"), with{
		"length": c.in("length_ft"), "width": c.in("width_ft"), "low_height": c.in("knee_ft"), "two_slopes": 1,
	})
	return r
}

func (s *site) counts(c takeoff, r *model.Member) {
	c.about(s, c.want("area_ge_5ft"), s.of(r, "five"))
	c.about(s, c.want("area_ge_7ft"), s.of(r, "seven"))
	c.about(s, c.want("finished_sf"), s.of(r, "living_area"))
}

var livingTakeoffs = map[string]func(*site, takeoff){
	// The heights under beams and under stairs are left out: a room has one ceiling.
	"ANSI-01": func(s *site, c takeoff) {
		least := c.want("min_ft")
		high, low := s.room(10, 12, least), s.room(10, 12, least.Sub(dec("0.01")))
		half := s.room(10, 12, 8) // falls to 6 ft: half of it reaches 7 ft
		give(half.In("section")[0], with{"height": 8, "low_height": 6})
		under := s.room(10, 12, 10) // falls to 2 1/2 ft: a third lies under 5 ft
		give(under.In("section")[0], with{"height": 10, "low_height": "2.5"})
		s.is(number(120), high, "living_area")
		s.is(number(0), low, "living_area")
		s.is(number(120), half, "living_area")
		s.is(number(80), under, "five") // 120 x (10 - 5) / 7.5
		s.is(number(80), under, "living_area")
	},
	// Of what is left out the model knows rooms that are unfinished or below grade:
	// they do not count as living area, and are measured all the same.
	"ANSI-02": func(s *site, c takeoff) {
		excluded := int64(len(c.Expected["excluded"].([]any)))
		s.room(10, 12, 8)
		for range excluded {
			give(s.room(20, 12, 8), with{"counts_as_living": 0})
		}
		s.is(number(120), s.root, "house_living_area")
		s.is(number(120), s.root, "house_finished_floor")
		s.is(number(120+240*excluded), s.root, "house_floor")
	},
	"ANSI-04a": func(s *site, c takeoff) { s.counts(c, s.attic(c, 2, 3)) },
	"ANSI-04b": func(s *site, c takeoff) { s.counts(c, s.attic(c, 1, 2)) },
}
