package deal

import (
	"slices"

	"github.com/shopspring/decimal"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// doubtAddsLess doubts an option of a room inside or of the whole house that adds under half of what another
// there adds, though it has all of that one's work and more. Outside, what mends may add less than what shows.
func (r *reader) doubtAddsLess() {
	options := r.items["<option>"]
	for _, o := range options {
		g := r.good(o.path + "adds")
		if g == nil || g.number.LessThan(smallAdds) || o.member.Parent.Kind == "outside" {
			continue
		}
		for _, other := range options {
			a := r.good(other.path + "adds")
			if a == nil || other.member.Parent != o.member.Parent || !g.number.Mul(two).LessThan(a.number) {
				continue
			}
			if both, all := r.sharedWork(o, other); all == 0 || both < all {
				continue
			}
			r.say("adds-less", g.at(), "%s: %s adds %s, but %s adds %s with a part of its work", o.member.Parent.Label, diag.Quote(o.member.Label), g.dollars(), diag.Quote(other.member.Label), a.dollars())("check both, for a nought that was lost or one too many; it is used as it stands")
			break
		}
	}
}

// muchMore is over how many times what an option adds its work costs, and another adds that names less
// work, where a nought may be lost; common practice, no source.
var muchMore = decimal.NewFromInt(3)

// doubtAddsLittle doubts an option taken of a room inside that adds under a third of what its work costs,
// and of what another of the room adds that names less work, half or more of which it has too; of the house
// too, one that has all of that work and adds less.
func (r *reader) doubtAddsLittle(p *plan, g *reading, cost decimal.Decimal) {
	least := g.number.Mul(muchMore)
	if !least.LessThan(cost) {
		return
	}
	for _, other := range r.items["<option>"] {
		a := r.good(other.path + "adds")
		if a == nil || other.member.Parent != p.room || !g.number.LessThan(a.number) {
			continue
		}
		both, all := r.sharedWork(p.scope, other)
		part := p.room.Kind == "inside" && both < all && 2*both >= all && least.LessThan(a.number)
		whole := all > 0 && both == all && !g.number.Mul(two).LessThan(a.number) // else adds-less tells of it
		if part || whole {
			r.say("adds-far", g.at(), "%s: %s adds %s, under a third of what its work costs finished by trades (%s), and %s, which names less work, adds %s", p.room.Label, diag.Quote(p.option.Label), g.dollars(), quantity.FormatDollars(cost.Round(0)), diag.Quote(other.member.Label), a.dollars())("check both, for a nought that was lost or one too many; write what the house sells for more because of the option; it is used as it stands")
			return
		}
	}
}

// sharedWork is how many of the pieces of work that another option names an option names too, and how
// many they are; none where it does not name more.
func (r *reader) sharedWork(o, other scope) (both, all int) {
	more, less := r.got[o.path+"work"], r.got[other.path+"work"]
	if more == nil || less == nil || len(more.node.entries) <= len(less.node.entries) {
		return 0, 0
	}
	for _, e := range less.node.entries {
		if slices.ContainsFunc(more.node.entries, func(x entry) bool { return x.name == e.name }) {
			both++
		}
	}
	return both, len(less.node.entries)
}
