package deal

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
)

// container is what people call a container for debris.
var container = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(dumpsters?|containers?|skips?|haul(ing)?|debris|roll-?offs?)\b`)
})

// doubtTwice looks for lines of the file beside rooms that price the same: a container for
// debris, and work of a trade that has work in a room.
func (r *reader) doubtTwice() {
	works := r.chosenWorks()
	if len(works) == 0 {
		return
	}
	trades := map[string]bool{}
	for _, w := range works {
		trades[w.item.Trade] = true
	}
	lines := slices.Concat(r.deal.Root.In("cost"), r.deal.Root.In("general_fee"))
	if paid, ok := r.worked(r.deal.Root, "disposal"); ok && paid.IsPositive() {
		r.twice(lines, func(m *model.Member) bool { return container().MatchString(m.Label) },
			"containers-twice", "is beside the containers that the rooms count by their debris", "leave it out, or say   local prices: {container: {costs: $0}}   if its sum is for all")
	}
	r.twice(r.deal.Root.In("cost"), func(m *model.Member) bool {
		trade, _, _ := strings.Cut(m.Label, ":")
		return trades[plainKey(trade)] && !container().MatchString(m.Label)
	}, "trade-twice", "is of a trade that rooms price too", "take out what the rooms hold already")
}

// twice tells once of all lines of a kind, where the first of them stands.
func (r *reader) twice(lines []*model.Member, is func(*model.Member) bool, code, what, remedy string) {
	var names []string
	var first *model.Member
	for _, m := range lines {
		if is(m) {
			names = append(names, diag.Quote(m.Label))
			if first == nil {
				first = m
			}
		}
	}
	if first != nil {
		r.say(code, first.Pos, "%s %s", strings.Join(names, ", "), what)("%s", remedy)
	}
}
