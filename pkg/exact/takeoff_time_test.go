package exact_test

import (
	"testing"

	"ledgerboard/pkg/model"
)

// 100 hours of a trained hand by own hands and 120 by a crew of two, by hand: own
// 100 x 1.75 x 1.2 = 210 hours, 10.5 weeks of 20; the crew's 120 / 80 = 1.5 weeks.
// Of the 3 days of waiting and the weeks come months of 365/12 days.
func TestTakeoffTime(t *testing.T) {
	for sequence, want := range map[string][2]string{
		"overlapping":         {"11.25", "2.687671"}, // 10.5 + 1.5 / 2; 81.75 days
		"side by side":        {"10.5", "2.515068"},  // 76.5 days
		"one after the other": {"12", "2.860274"},    // 87 days
	} {
		t.Run(sequence, func(t *testing.T) {
			root := house()
			root.Give("sequence", model.Value{Choice: sequence})
			trade := give(root.Add("trade", "", "carpenter"), map[string]string{"crew": "2", "crew_rate": "50"})
			option := root.Add("room", "whole_house", "house").Add("option", "", "done")
			own := give(option.Add("item", "", "own"), map[string]string{"measure": "100", "hours_each": "1", "by_the_hour": "1", "waiting": "3"})
			own.Give("who", model.Value{Choice: "own"})
			own.Link(trade)
			give(option.Add("item", "", "hired"), map[string]string{"measure": "59", "hours_each": "2", "set_up": "2", "by_the_hour": "1"}).Link(trade)
			within(t, root, root, map[string]string{
				"room_own_hours": "210", "room_crew_hours": "120", "own_weeks": "10.5", "crew_weeks": "1.5", "work_weeks": want[0], "scope_months": want[1],
				"rooms_cost": "6000", "rooms_at_trade_price": "11000", "own_labour": "5000",
			})
		})
	}
}
