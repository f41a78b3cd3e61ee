package best

import "ledgerboard/pkg/model"

// notSeen adds up what is set aside for parts of the house that were not seen, and gives each
// option what it may clear by making a part new: all of it, where others do so too.
func (t *taker) notSeen() {
	for _, c := range t.Deal.Root.In("check") {
		if x := t.of(c, "set_aside"); x > 0 { // no option clears it
			t.kept += x
			continue
		}
		if v := c.Given.Of("seen").Choice; v == "good" || v == "bad" {
			continue
		}
		x := t.of(c, "if_bad")
		t.cleared += x
		if t.maybeSure(c) {
			continue
		}
		t.aside += x
		for _, n := range c.In("renewal") {
			for _, at := range t.choosing(n.Parent) {
				t.rooms[at[0]][at[1]].clears += x * min(1, t.of(n, "comes_new"))
			}
		}
	}
	t.aside += t.kept
}

// maybeSure reports whether a part of the house may be made new whatever is chosen.
func (t *taker) maybeSure(c *model.Member) bool {
	for _, n := range c.In("renewal") {
		for _, at := range t.choosing(n.Parent) {
			if at[0] < 0 && t.of(n, "comes_new") > 0 {
				return true
			}
		}
	}
	return false
}

// choosing are the options on which it depends whether work is done; room -1 is sure.
func (t *taker) choosing(it *model.Member) [][2]int {
	if at := t.callers[it]; len(at) > 0 {
		return at
	}
	room, option := t.choosable(it.Parent)
	return [][2]int{{room, option}}
}
