package published

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// ANSI Z765 as quoted by an appraiser (ANSI-01): half of the room at 7 ft or more is
// enough. From 9 ft at the ridge to 3 ft at the knees, 4 of 6 ft lie over 5 ft, and
// 2 of 6 over 7 ft: half of them, however long the room is. By hand.
func TestHalfAtSevenFeetCounts(t *testing.T) {
	for _, length := range []int64{10, 12, 13, 20} {
		t.Run(fmt.Sprintf("%d ft long", length), func(t *testing.T) {
			s := newSite(t)
			r := s.room(length, 10, 9)
			give(r.In("section")[0], with{"low_height": 3, "two_slopes": 1})
			s.is(over(number(length*10*4), number(6)), r, "living_area")
		})
	}
}

// Thirds that come to whole packs leave nothing, and not less.
func TestNothingLeftIsNotLess(t *testing.T) {
	s := newSite(t)
	p := s.product(3)
	for range 3 {
		s.use(s.work(s.place("whole_house", nil), 2000, nil), p, with{"covers": 3})
	}
	s.is(number(2000), p, "packs")
	require.False(t, s.of(p, "left_over").IsNegative(), s.of(p, "left_over"))
}

// No paper is bought for work that is done to no part of the wall.
func TestNoPaperForNoWork(t *testing.T) {
	s := newSite(t)
	w, paper := s.work(s.room(10, 10, 8), "of walls_less_all", with{"part": 0}), s.product(1)
	u := s.use(w, paper, nil)
	give(u.Add("drop", "", "drop"), with{"drop_run": "of perimeter", "roll_wide": 2, "roll_long": 33})
	s.is(number(0), w, "quantity")
	s.is(number(0), paper, "packs")
}
