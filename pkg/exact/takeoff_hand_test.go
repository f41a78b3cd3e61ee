package exact_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/model"
)

// within asserts lines of a member, to 6 decimals.
func within(t *testing.T, root, x *model.Member, want map[string]string) {
	t.Helper()
	m, v := laid(t, root)
	for line, w := range want {
		got := v.Of(m.Find(x, line))
		require.True(t, got.Round(6).Equal(number(w)), "%s: %s, not %s", line, got, w)
	}
}

// Under a gable of 30 x 24 ft, 4 ft at the knees and 13 ft at the ridge, by hand: the
// slope is 9 in 12, so 15 ft to each side; long walls 2 x 30 x 4, gables
// 2 x 24 x (4 + 13) / 2; over 5 ft lie 8 of 9 parts of the floor, over 7 ft 6 of 9.
func TestTakeoffOfAnAttic(t *testing.T) {
	root := house()
	r := root.Add("room", "inside", "attic")
	give(r.Add("section", "", "floor"), map[string]string{"length": "30", "width": "24", "height": "13", "low_height": "4", "two_slopes": "1"})
	within(t, root, r, map[string]string{
		"floor_area": "720", "ceiling_area": "900", "perimeter": "108", "wall_area": "648", "five": "640", "seven": "480", "living_area": "640",
	})
	basement := give(root.Add("room", "inside", "basement"), map[string]string{"counts_as_living": "0"})
	give(basement.Add("section", "", "floor"), map[string]string{"length": "20", "width": "10"})
	within(t, root, root, map[string]string{"house_floor": "920", "house_living_area": "640", "house_finished_floor": "720", "house_ground_floor": "720"})
	give(root, map[string]string{"house_levels": "2"})
	within(t, root, root, map[string]string{"house_ground_floor": "360"})
}

// Under one slope from 13 to 4 ft over 12 ft, by hand: the ceiling is 15 ft long in
// its fall; the walls are of 8.5 ft on the whole.
func TestTakeoffUnderOneSlope(t *testing.T) {
	root := house()
	r := root.Add("room", "inside", "lean-to")
	give(r.Add("section", "", "floor"), map[string]string{"length": "10", "width": "12", "height": "13", "low_height": "4"})
	within(t, root, r, map[string]string{"ceiling_area": "150", "wall_area": "374", "crown_run": "44"})
}

// An ell of 10 x 8 ft less 4 x 5 ft, walked round, at 8 ft, by hand.
func TestTakeoffOfAWalk(t *testing.T) {
	for _, round := range []string{"1", "-1"} {
		root := house()
		r := root.Add("room", "inside", "ell")
		for _, leg := range [][2]string{{"walk_east", "10"}, {"walk_north", "3"}, {"walk_east", "-4"}, {"walk_north", "5"}, {"walk_east", "-6"}, {"walk_north", "-8"}} {
			r.Add("leg", "", "wall").GiveNumber(leg[0], number(leg[1]).Mul(number(round)))
		}
		within(t, root, r, map[string]string{"floor_area": "60", "ceiling_area": "60", "perimeter": "36", "wall_area": "288", "living_area": "60", "outlets": "3"})
	}
}

// A bath of 5 x 8 ft at 8 ft: a tub of 5 x 2.5 ft in an alcove with tile to 6 ft, a
// vanity of 3 x 2 ft, a toilet, a door of 2.5 x 7 ft and a window of 2 x 3 ft. By
// hand: walls 208; surround (5 + 2 x 2.5) x 6; casing 2 x 7 + 2.5 and 2 x 3 + 2 x 2.
func TestTakeoffOfABath(t *testing.T) {
	root := house()
	r := root.Add("room", "inside", "bath")
	give(r.Add("section", "", "floor"), map[string]string{"length": "5", "width": "8"})
	for sort, x := range map[string]map[string]string{
		"tub":    {"fitting_length": "5", "fitting_depth": "2.5", "walls_touched": "3", "surround": "6"},
		"vanity": {"fitting_length": "3", "fitting_depth": "2"},
		"toilet": {"fitting_length": "1.5", "fitting_depth": "2.5"},
	} {
		f := give(r.Add("fitting", "", sort), x)
		f.Give("sort", model.Value{Choice: sort})
	}
	give(r.Add("opening", "", "door"), map[string]string{"opening_width": "2.5", "opening_height": "7"})
	w := give(r.Add("opening", "", "window"), map[string]string{"opening_width": "2", "opening_height": "3"})
	w.Give("kind", model.Value{Choice: "window"})
	within(t, root, r, map[string]string{
		"open_floor": "21.5", "wet_walls": "60", "walls_less_all": "124.5", "walls_less_large": "148", "base_run": "10.5", "casing_run": "26.5",
		"tubs": "1", "vanities": "1", "toilets": "1", "doors": "1", "windows": "1",
		"tub_walls": "60", "shower_walls": "60", // a tub with a shower over it
	})
	f := give(r.Add("fitting", "", "shower"), map[string]string{"fitting_length": "3", "fitting_depth": "3", "walls_touched": "3", "surround": "7"})
	f.Give("sort", model.Value{Choice: "shower"})
	within(t, root, r, map[string]string{"wet_walls": "123", "tub_walls": "60", "shower_walls": "63"})
}

// Stairs of 12 treads of 10 1/2 in and 13 risers of 7 1/2 in, 3 ft wide, by hand; a
// closet of 6 x 2 ft with its rod; base cabinets of 10 x 2 ft and an island.
func TestTakeoffOfPartsOfARoom(t *testing.T) {
	root := house()
	r := give(root.Add("room", "inside", "kitchen"), map[string]string{"stair_treads": "12", "outlets": "7"})
	give(r.Add("section", "", "floor"), map[string]string{"length": "20", "width": "12"})
	give(r.Add("section", "", "closet"), map[string]string{"length": "2", "width": "6", "closet": "1"})
	for sort, length := range map[string]string{"base cabinet": "10", "island": "5", "wall cabinet": "8"} {
		f := give(r.Add("fitting", "", sort), map[string]string{"fitting_length": length, "fitting_depth": "2"})
		f.Give("sort", model.Value{Choice: sort})
		if sort == "island" {
			f.GiveNumber("walls_touched", number("0"))
		}
	}
	within(t, root, r, map[string]string{
		"stair_area": "55.875", "closets": "1", "closet_rod_run": "6", "cabinet_run": "10", "backsplash": "15", "counter": "30",
		"floor_area": "252", "open_floor": "222", "base_run": "70", "outlets": "7",
	})
}

// Roll goods are rounded once, when they are bought: a room of 9 ft 6 in x 11 ft 3 in takes
// 9.5 ft across the roll, with 2% of waste 9.69, two of them 19.38, so 20 ft off the roll, not
// 10 and 10 with waste, 20.4, so 21. The strip beside a full width is sewn from pieces of
// whole feet: 15 ft 6 in wide by 10 ft, so 10 ft and 3 pieces of 4 ft, 14.
func TestTakeoffOfRollGoods(t *testing.T) {
	root := house()
	trade := root.Add("trade", "", "flooring")
	p := give(root.Add("product", "", "carpet"), map[string]string{"holds": "1", "pack_price": "25.5"})
	for _, name := range []string{"east bedroom", "west bedroom"} {
		r := root.Add("room", "inside", name)
		give(r.Add("section", "", "floor"), map[string]string{"length": "9.5", "width": "11.25"})
		i := r.Add("option", "", "the work").Add("item", "", "carpet")
		i.Link(trade)
		i.Give("measure", model.Value{Refers: "carpet_run"})
		u := give(i.Add("use", "", "carpet"), map[string]string{"takes": "1", "waste": "0.02"})
		u.Link(p)
		within(t, root, r, map[string]string{"carpet_run": "9.5"})
	}
	within(t, root, p, map[string]string{"total_bought": "19.38", "packs": "20"})
	wide := root.Add("room", "inside", "wide")
	give(wide.Add("section", "", "floor"), map[string]string{"length": "10", "width": "15.5"})
	within(t, root, wide, map[string]string{"carpet_run": "14"})
}

// A deck of 12 x 14 ft, by hand: 168 / 50 is over 3, so 4 footings; one of 7 x 8 ft has the
// fewest; one of 14 x 25 ft has 7, and what is counted stands.
func TestTakeoffOfFootings(t *testing.T) {
	for _, c := range [][3]string{{"168", "", "4"}, {"56", "", "2"}, {"350", "", "7"}, {"0", "", "0"}, {"168", "6", "6"}} {
		root := house()
		lines := map[string]string{"deck": c[0]}
		if c[1] != "" {
			lines["deck_footings"] = c[1]
		}
		r := give(root.Add("room", "outside", "outside"), lines)
		within(t, root, r, map[string]string{"deck_footings": c[2]})
	}
}

// A gable roof of 40 x 22 ft with 1 ft of overhang at 9 in 12, by hand: 42 x 24 x 1.25;
// the house is 124 ft round and 10 ft high, with two windows of 3 x 4 ft.
func TestTakeoffOfTheOutside(t *testing.T) {
	root := house()
	r := give(root.Add("room", "outside", "outside"), map[string]string{"foundation_run": "124", "wall_height": "10"})
	give(r.Add("plane", "", "roof"), map[string]string{"plane_length": "40", "plane_width": "22", "overhang": "1", "pitch": "0.75"})
	w := give(r.Add("opening", "", "windows"), map[string]string{"opening_width": "3", "opening_height": "4", "number": "2"})
	w.Give("kind", model.Value{Choice: "window"})
	within(t, root, r, map[string]string{"roof": "1260", "eaves": "84", "rakes": "60", "gutters": "84", "downspouts": "3", "siding": "1216", "outside_doors": "0"})
	within(t, root, root, map[string]string{"house_perimeter": "124", "house_floor": "0"})
}
