package deal

import (
	"strings"

	"ledgerboard/pkg/diag"
)

// doubtUnnamed doubts rooms that a scope by rooms does not name, where they leave a choice:
// their first option is taken, be it the dearest. Where the file has no scope, they would be taken anyway.
func (r *reader) doubtUnnamed() {
	all, some := r.ownPicks.all != nil, len(r.ownPicks.byRoom) > 0
	if r.picks.all != nil || len(r.picks.byRoom) == 0 || len(r.unnamed) == 0 || !all && !some {
		return
	}
	var takes []string
	for _, o := range r.unnamed {
		takes = append(takes, o.Parent.Label+" "+diag.Quote(o.Label))
	}
	first := r.unnamed[0]
	tell := r.say("rooms-unnamed", r.where("scope"), "of rooms that scope does not name the first option is taken: %s", strings.Join(takes, ", "))
	if all {
		tell("to leave the others as the file has them, set one room, e.g.   scope.%s=%s", first.Parent.Label, first.Label)
		return
	}
	tell("name each under scope, e.g.   %s: %s   or   %[1]s: %[3]s   or one for all that are not named:   all rooms: %[2]s", first.Parent.Label, first.Label, AsItIs)
}
