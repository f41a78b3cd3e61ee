package deal

import (
	"slices"

	"ledgerboard/pkg/diag"
)

// doubtAddsLess doubts an option of a room inside that adds under half of what another of the room
// adds, though it has all of that one's work and more. Outside, what mends may add less than what shows.
func (r *reader) doubtAddsLess() {
	options := r.items["<option>"]
	for _, o := range options {
		g := r.good(o.path + "adds")
		if g == nil || g.number.LessThan(smallAdds) || o.member.Parent.Kind != "inside" {
			continue
		}
		for _, other := range options {
			a := r.good(other.path + "adds")
			if a == nil || other.member.Parent != o.member.Parent || !g.number.Mul(two).LessThan(a.number) || !r.doesMore(o, other) {
				continue
			}
			r.say("adds-less", g.at(), "%s: %s adds %s, but %s adds %s with a part of its work", o.member.Parent.Label, diag.Quote(o.member.Label), g.dollars(), diag.Quote(other.member.Label), a.dollars())("check both, for a nought that was lost or one too many; it is used as it stands")
			break
		}
	}
}

// doesMore reports whether an option names all the work that another names, and more.
func (r *reader) doesMore(o, other scope) bool {
	more, less := r.got[o.path+"work"], r.got[other.path+"work"]
	if more == nil || less == nil || len(less.node.entries) == 0 || len(more.node.entries) <= len(less.node.entries) {
		return false
	}
	return !slices.ContainsFunc(less.node.entries, func(e entry) bool {
		return !slices.ContainsFunc(more.node.entries, func(x entry) bool { return x.name == e.name })
	})
}
